//! Holes of one kind in a vertical line, and how near two such lines come. Rows are never expanded for it.

use alloc::vec::Vec;

use crate::layout::{BoreSpec, Face, Layout, RowName};
use crate::measure::Length;

/// A run of a row, or one single bore: holes one pitch apart with one purpose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Strand<'a> {
    /// Its row; `None` for a single bore.
    pub(super) row: Option<RowName>,
    /// From the carcass front to its centres.
    pub(super) x: Length,
    /// From the carcass underside to its lowest centre.
    pub(super) low: Length,
    /// From the carcass underside to its highest centre.
    pub(super) high: Length,
    /// Its first and last hole number, both included; `None` for a single bore.
    pub(super) holes: Option<(i16, i16)>,
    /// What each of its holes is.
    pub(super) spec: &'a BoreSpec,
}

/// The runs of a face's rows, then its single bores.
pub(super) fn strands<'a>(face: &'a Face, layout: &'a Layout) -> impl Iterator<Item = Strand<'a>> {
    let runs = face.rows.iter().flat_map(move |row| {
        row.runs.iter().map(move |run| Strand {
            row: Some(row.name),
            x: row.x.total(),
            low: layout.height(run.first),
            high: layout.height(run.last),
            holes: Some((run.first, run.last)),
            spec: &run.spec,
        })
    });
    let bores = face.bores.iter().map(|bore| Strand {
        row: None,
        x: bore.x,
        low: bore.z,
        high: bore.z,
        holes: None,
        spec: &bore.spec,
    });
    runs.chain(bores)
}

impl Strand<'_> {
    /// The part of it between two heights, both included.
    pub(super) fn within(self, from: Length, to: Length) -> Option<Self> {
        let steps = |to: Length| (to - self.low).div_floor(Length::PITCH);
        let first = (-(self.low - from).div_floor(Length::PITCH)).max(0);
        let last = steps(to).min(steps(self.high));
        (first <= last).then(|| self.part(first, last))
    }

    /// From one step above its lowest hole to another, both included.
    pub(super) fn part(self, first: i32, last: i32) -> Self {
        let number =
            |at: i16, steps: i32| at.saturating_add(i16::try_from(steps).unwrap_or(i16::MAX));
        Self {
            low: self.low + Length::PITCH * first,
            high: self.low + Length::PITCH * last,
            holes: self
                .holes
                .map(|(at, _)| (number(at, first), number(at, last))),
            ..self
        }
    }

    /// The parts of it whose holes' heights are wanted, as long as neighbours go together.
    pub(super) fn parts(self, wanted: impl Fn(Length) -> bool) -> Vec<Self> {
        let mut parts = Vec::new();
        let mut begun = None;
        for step in 0..self.count() {
            let here = wanted(self.low + Length::PITCH * step);
            match (here, begun) {
                (true, None) => begun = Some(step),
                (false, Some(first)) => {
                    parts.push(self.part(first, step - 1));
                    begun = None;
                }
                _ => {}
            }
        }
        parts.extend(begun.map(|first| self.part(first, self.count() - 1)));
        parts
    }

    /// Whether one of its holes has its centre there.
    pub(super) fn is_at(self, x: Length, z: Length) -> bool {
        self.x == x && self.within(z, z).is_some()
    }

    /// Half its diameter.
    pub(super) fn radius(self) -> Length {
        self.spec.diameter.half()
    }

    /// The holes of two strands whose centres are nearer than `limit`, as the part of each.
    ///
    /// Runs of one cabinet stand on one grid, so between the ends of a run each height of the other is its own.
    pub(super) fn nearer(self, other: Self, limit: Length) -> Option<(Self, Self)> {
        let reach = reach(self.x - other.x, limit)?;
        let mine = self.within(other.low - reach, other.high + reach)?;
        let theirs = other.within(mine.low - reach, mine.high + reach)?;
        Some((mine, theirs))
    }

    /// The holes two strands both have, told by their numbers where one of the two has them.
    pub(super) fn same_place(self, other: Self) -> Option<Self> {
        let (mine, theirs) = self.nearer(other, Length::from_counts(1))?;
        Some(if mine.holes.is_some() { mine } else { theirs })
    }

    /// The least distance between centres of the two, to the count below.
    pub(super) fn distance(self, other: Self) -> Length {
        let up = if self.count() == 1 {
            other.height_to(self.low)
        } else if other.count() == 1 {
            self.height_to(other.low)
        } else {
            (self.low.max(other.low) - self.high.min(other.high)).max(Length::ZERO)
        };
        let squared = square(self.x - other.x) + square(up);
        i32::try_from(squared.isqrt()).map_or(Length::MAX, Length::from_counts)
    }

    /// From a height to the nearest of its holes.
    fn height_to(self, z: Length) -> Length {
        let below = self.low.max(
            self.high
                .min(self.low + Length::PITCH * (z - self.low).div_floor(Length::PITCH)),
        );
        let above = self.high.min(below + Length::PITCH);
        (z - below).abs().min((z - above).abs())
    }

    /// How many holes it has, at least one.
    pub(super) fn count(self) -> i32 {
        (self.high - self.low).div_floor(Length::PITCH) + 1
    }
}

/// How far up or down from a hole another one `aside` of it may be and still be nearer than `limit`; `None` when it is
/// far enough aside.
pub(super) fn reach(aside: Length, limit: Length) -> Option<Length> {
    let left = square(limit) - square(aside);
    let reach = (left > 0).then(|| (left - 1).isqrt())?;
    i32::try_from(reach).ok().map(Length::from_counts)
}

/// In square counts; lengths of a job are far from the range of it.
fn square(length: Length) -> i64 {
    let counts = i64::from(length.counts());
    counts * counts
}
