//! What the search finds, in the order in which the checks asked, and as parts of strands.

use alloc::vec::Vec;

use super::Strand;
use super::meet::{Holes, Meeting, Search, Space};
use crate::layout::Span;
use crate::measure::Length;

/// Of things that only meet on the face: the same thickness for all of them.
pub(super) const ON_FACE: Span = Span {
    from: Length::ZERO,
    to: Length::from_mm(1),
};

/// Further than anything of a job reaches, and half of what a length can be.
pub(super) const FAR: Length = Length::from_mm(100_000);

/// Neighbouring holes of one strand of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Part {
    /// The strand's place in the list.
    pub(super) place: usize,
    /// The lowest, counted from 0.
    first: i32,
    /// The highest.
    last: i32,
}

impl Part {
    /// It, of the strands the list was made of.
    pub(super) fn of<'a>(self, all: &[Strand<'a>]) -> Strand<'a> {
        all[self.place].part(self.first, self.last)
    }

    /// The smallest that holds both, of one strand.
    fn with(self, other: Self) -> Self {
        Self {
            first: self.first.min(other.first),
            last: self.last.max(other.last),
            ..self
        }
    }
}

impl Strand<'_> {
    /// Its holes for a search, as wide and as deep as it matters there.
    pub(super) fn shape(self, diameter: Length, u: Span) -> Holes {
        Holes {
            x: self.x,
            low: self.low,
            count: self.count(),
            diameter,
            u,
        }
    }
}

/// Everything that meets, by the first thing's place in its list, then by the second's.
fn meetings(search: &mut Search, holes: &[Holes], spaces: &[Space]) -> Vec<Meeting> {
    let mut found = Vec::new();
    search.each(holes, spaces, |meeting| found.push(meeting));
    found.sort_unstable();
    found
}

/// Merges neighbours of one pair of places. What meets between the ends of a part does so without gaps: the runs of a
/// cabinet stand on one grid.
fn merged(met: impl Iterator<Item = [Part; 2]>) -> Vec<[Part; 2]> {
    let mut pairs: Vec<[Part; 2]> = Vec::new();
    for [one, other] in met {
        match pairs.last_mut() {
            Some([a, b]) if (a.place, b.place) == (one.place, other.place) => {
                (*a, *b) = (a.with(one), b.with(other));
            }
            _ => pairs.push([one, other]),
        }
    }
    pairs
}

/// Every two strands of a list that have holes which meet, and which holes of each.
///
/// A strand that meets itself is no pair: no two uses want one hole of it.
pub(super) fn strands_that_meet(search: &mut Search, all: &[Holes]) -> Vec<[Part; 2]> {
    let found = meetings(search, all, &[]);
    merged(found.into_iter().filter_map(|meeting| match meeting {
        Meeting::Holes {
            one,
            other,
            first,
            last,
            shift,
        } if one != other => Some([
            Part {
                place: one,
                first,
                last,
            },
            Part {
                place: other,
                first: first + shift,
                last: last + shift,
            },
        ]),
        _ => None,
    }))
}

/// Every strand of a list that has holes over some box of another list, which holes, and the box's place.
pub(super) fn lying_over(
    search: &mut Search,
    all: &[Holes],
    spaces: &[Space],
) -> Vec<(Part, usize)> {
    let found = meetings(search, all, spaces);
    let met = found.into_iter().filter_map(|meeting| match meeting {
        Meeting::HolesAndSpace {
            holes,
            space,
            first,
            last,
        } => Some([
            Part {
                place: holes,
                first,
                last,
            },
            Part {
                place: space,
                first: 0,
                last: 0,
            },
        ]),
        _ => None,
    });
    let pairs = merged(met);
    pairs
        .iter()
        .map(|[holes, space]| (*holes, space.place))
        .collect()
}

/// Every two boxes of a list that meet, by their places.
pub(super) fn spaces_that_meet(search: &mut Search, all: &[Space]) -> Vec<(usize, usize)> {
    let found = meetings(search, &[], all);
    let pair = |meeting| match meeting {
        Meeting::Spaces { one, other } => Some((one, other)),
        _ => None,
    };
    found.into_iter().filter_map(pair).collect()
}
