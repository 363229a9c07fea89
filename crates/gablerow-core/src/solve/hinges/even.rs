//! Where hinges would stand if they were spaced evenly.

use alloc::vec;
use alloc::vec::Vec;

use super::{Door, LegalCentre};
use crate::measure::Length;

/// One target for each hinge, exact: in parts of a count.
#[derive(Clone, Debug)]
pub(super) struct Even {
    targets: Vec<i64>,
    parts: i64,
}

impl Even {
    /// Even spacing from the lowest place to the one nearest to its mirror in the door, the higher one on a tie. One
    /// hinge alone goes to the door's middle.
    pub(super) fn between(legal: &[LegalCentre], door: Door, count: usize) -> Self {
        let (Some(first), 2..) = (legal.first(), count) else {
            return Self {
                targets: vec![wide(door.foot) + wide(door.head()); count],
                parts: 2,
            };
        };
        let mirror = door.mirror(first.centre);
        let upward = legal.iter().rev();
        let last = upward.min_by_key(|place| (place.centre - mirror).abs());
        let (first, last) = (wide(first.centre), wide(last.unwrap_or(first).centre));
        let parts = i64::try_from(count - 1).unwrap_or(i64::MAX);
        let target = |hinge| first * parts + (last - first) * hinge;
        Self {
            targets: (0..=parts).map(target).collect(),
            parts,
        }
    }

    /// How many hinges there are.
    pub(super) fn count(&self) -> usize {
        self.targets.len()
    }

    /// The target of a hinge, z, to the count below.
    pub(super) fn target(&self, hinge: usize) -> Length {
        let counts = self.targets[hinge].div_euclid(self.parts);
        Length::from_counts(i32::try_from(counts).unwrap_or(i32::MAX))
    }

    /// How far a place is from the target of a hinge, in parts of a count.
    pub(super) fn off(&self, hinge: usize, place: Length) -> i64 {
        (wide(place) * self.parts - self.targets[hinge]).abs()
    }
}

pub(super) fn wide(length: Length) -> i64 {
    i64::from(length.counts())
}
