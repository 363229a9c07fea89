//! Sweep and prune: boxes and single holes in the order in which they begin along one axis.

use alloc::vec::Vec;

use super::rows::{PITCH, Row, square};
use super::{Meeting, Space};
use crate::layout::Span;

/// How wide a strip of a crowded face is: twice the pitch.
const STRIP: i32 = 2 * PITCH;

/// A box, or one hole with the box around its disc; in counts, x first and z second.
#[derive(Clone, Copy, Debug)]
pub(super) struct Item {
    /// Where it begins; of a hole as wide as an odd count half a count outward.
    pub(super) from: [i32; 2],
    /// Where it ends.
    pub(super) to: [i32; 2],
    pub(super) u: Span,
    /// The place of the box, or of the hole's row, in its list.
    place: u32,
    /// What it is of a row; `None` for a box.
    hole: Option<Hole>,
}

#[derive(Clone, Copy, Debug)]
struct Hole {
    /// Which hole of its row, from 0.
    number: i32,
    diameter: i32,
}

/// Where an item begins: the strip across the axis, then along it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Begin {
    strip: i32,
    at: i32,
    item: u32,
}

/// The things of one search, and the order they begin in.
#[derive(Clone, Debug, Default)]
pub(super) struct Sweep {
    items: Vec<Item>,
    order: Vec<Begin>,
    /// The items again, in that order: what is compared lies together.
    ordered: Vec<Item>,
    /// Room for the places, in that order, of those that come near one of them.
    near: Vec<usize>,
}

fn index(at: usize) -> u32 {
    u32::try_from(at).unwrap_or(u32::MAX)
}

impl Item {
    /// Its place in its list, when it is a box.
    pub(super) fn space(&self) -> Option<usize> {
        self.hole.is_none().then_some(self.place as usize)
    }

    fn is_empty(&self) -> bool {
        self.from[0] >= self.to[0] || self.from[1] >= self.to[1]
    }

    /// Whether it and another take the same of the face and of the thickness. All four are compared at once, since none
    /// of them is likely enough to be asked first.
    fn overlaps(&self, other: &Self, across: usize) -> bool {
        (self.from[across] < other.to[across])
            & (other.from[across] < self.to[across])
            & (self.u.from.max(other.u.from) < self.u.to.min(other.u.to))
    }
}

impl Sweep {
    pub(super) fn clear(&mut self) {
        self.items.clear();
    }

    pub(super) fn items(&self) -> &[Item] {
        &self.items
    }

    pub(super) fn put_space(&mut self, place: usize, space: &Space) {
        let Space { x, z, u } = *space;
        self.items.push(Item {
            from: [x.from.counts(), z.from.counts()],
            to: [x.to.counts(), z.to.counts()],
            u,
            place: index(place),
            hole: None,
        });
    }

    /// Every hole of a row as a thing of its own.
    pub(super) fn put_holes(&mut self, row: &Row) {
        let half = half_outward(row.diameter);
        self.items.extend((0..row.count).map(|number| {
            let centre = [row.x, row.low + PITCH * number];
            Item {
                from: centre.map(|centre| centre - half),
                to: centre.map(|centre| centre + half),
                u: row.u,
                place: index(row.place),
                hole: Some(Hole {
                    number,
                    diameter: row.diameter,
                }),
            }
        }));
    }

    /// Every two items that meet, swept along the axis they spread over most.
    pub(super) fn each(&mut self, found: &mut impl FnMut(Meeting)) {
        if self.items.len() < 2 {
            return;
        }
        let along = self.longer_axis();
        self.order.clear();
        let begins = self.items.iter().zip(0..);
        self.order.extend(begins.map(|(it, item)| Begin {
            strip: 0,
            at: it.from[along],
            item,
        }));
        self.order.sort_unstable_by_key(|begin| begin.at);
        self.sweep(along, |_, _, _| true, found);
    }

    /// The same for many items: each lies in every strip it reaches into, and a pair counts in the first strip that both
    /// are in.
    pub(super) fn each_in_strips(&mut self, found: &mut impl FnMut(Meeting)) {
        let along = self.longer_axis();
        let across = 1 - along;
        self.order.clear();
        for (it, item) in self.items.iter().zip(0..) {
            let strips = it.from[across].div_euclid(STRIP)..=it.to[across].div_euclid(STRIP);
            self.order.extend(strips.map(|strip| Begin {
                strip,
                at: it.from[along],
                item,
            }));
        }
        self.order.sort_unstable();
        let is_first = |strip, one: &Item, other: &Item| {
            one.from[across].max(other.from[across]) >= strip * STRIP
        };
        self.sweep(along, is_first, found);
    }

    fn longer_axis(&self) -> usize {
        let spread = |axis: usize| {
            let from = self.items.iter().map(|item| item.from[axis]).min();
            let to = self.items.iter().map(|item| item.to[axis]).max();
            to.unwrap_or_default() - from.unwrap_or_default()
        };
        usize::from(spread(1) >= spread(0))
    }

    /// Compares each item with those that begin before it ends; `counts` says in which strip a pair does.
    fn sweep(
        &mut self,
        along: usize,
        counts: impl Fn(i32, &Item, &Item) -> bool,
        found: &mut impl FnMut(Meeting),
    ) {
        let across = 1 - along;
        let Self {
            items,
            order,
            ordered,
            near,
        } = self;
        ordered.clear();
        ordered.extend(order.iter().map(|begin| items[begin.item as usize]));
        near.resize(near.len().max(order.len()), 0);
        for (at, (begin, one)) in order.iter().zip(&*ordered).enumerate() {
            let end = (begin.strip, one.to[along]);
            let later = order[at + 1..].iter().zip(&ordered[at + 1..]);
            // Who comes near is noted without a branch, since no guess at it would be good.
            let mut count = 0;
            for ((next, other), place) in later.zip(at + 1..) {
                if (next.strip, next.at) >= end {
                    break;
                }
                near[count] = place;
                count += usize::from(one.overlaps(other, across) & counts(begin.strip, one, other));
            }
            for &place in &near[..count] {
                meeting(one, &ordered[place], found);
            }
        }
    }
}

/// Half a diameter, of an odd count half a count too much.
fn half_outward(diameter: i32) -> i32 {
    diameter.div_euclid(2) + diameter.rem_euclid(2)
}

/// How two items meet whose boxes overlap.
fn meeting(one: &Item, other: &Item, found: &mut impl FnMut(Meeting)) {
    let meeting = match (one.hole, other.hole) {
        (None, None) => {
            // An empty box meets no other, not even one around it.
            if !one.is_empty() & !other.is_empty() {
                let (a, b) = (one.place as usize, other.place as usize);
                found(Meeting::Spaces {
                    one: a.min(b),
                    other: a.max(b),
                });
            }
            return;
        }
        (Some(hole), None) => hole_over_space((one, hole), other),
        (None, Some(hole)) => hole_over_space((other, hole), one),
        (Some(a), Some(b)) => two_holes((one, a), (other, b)),
    };
    meeting.into_iter().for_each(found);
}

/// Where the centre of a hole lies along an axis.
fn centre(item: &Item, hole: Hole, axis: usize) -> i32 {
    item.from[axis] + half_outward(hole.diameter)
}

fn hole_over_space((item, hole): (&Item, Hole), space: &Item) -> Option<Meeting> {
    let away = |axis: usize| {
        let centre = centre(item, hole, axis);
        square(
            (space.from[axis] - centre)
                .max(centre - space.to[axis])
                .max(0),
        )
    };
    (4 * (away(0) + away(1)) < square(hole.diameter)).then_some(Meeting::HolesAndSpace {
        holes: item.place as usize,
        space: space.place as usize,
        first: hole.number,
        last: hole.number,
    })
}

fn two_holes(one: (&Item, Hole), other: (&Item, Hole)) -> Option<Meeting> {
    let order = |(item, hole): (&Item, Hole)| (item.place, hole.number);
    let ((one, a), (other, b)) = if order(one) < order(other) {
        (one, other)
    } else {
        (other, one)
    };
    let away = |axis: usize| square(centre(one, a, axis) - centre(other, b, axis));
    (4 * (away(0) + away(1)) < square(a.diameter + b.diameter)).then_some(Meeting::Holes {
        one: one.place as usize,
        other: other.place as usize,
        first: a.number,
        last: a.number,
        shift: b.number - a.number,
    })
}
