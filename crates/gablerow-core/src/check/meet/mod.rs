//! What gets in each other's way on a panel: holes that lie over each other, boxes of space that overlap.
//!
//! ```text
//! holes, boxes --Search--> rows --------- rows beside rows, by intervals of hole numbers    (rows)
//!                      |     \-- boxes -- holes of a row over a box, by division            (rows)
//!                      \-> short runs and boxes: one sweep along the longer axis            (sweep)
//!                          a crowd: the same sweep over every hole, in strips of 64 mm      (sweep)
//! ```
//!
//! A row is never expanded, unless a face is crowded beyond anything that is built. The search knows geometry alone, in
//! whole counts; who may share a hole is decided by those who ask. They widen what they look for: holes nearer than a
//! least spacing are holes as wide as that spacing which lie over each other, and boxes nearer than a gap are boxes so
//! much longer that overlap.

mod rows;
mod sweep;

use alloc::vec::Vec;

use crate::layout::Span;
use crate::measure::Length;
use rows::Row;
use sweep::Sweep;

/// Holes of one width one pitch apart in a vertical line, or one hole alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Holes {
    /// From the carcass front to the centres.
    pub x: Length,
    /// From the carcass underside to the lowest centre.
    pub low: Length,
    /// How many there are, one pitch apart; none meet anything below 1.
    pub count: i32,
    /// How wide each is.
    pub diameter: Length,
    /// What they take of the thickness, open at both ends.
    pub u: Span,
}

/// A box of space, open on all sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Space {
    /// Front to back.
    pub x: Span,
    /// Foot to head.
    pub z: Span,
    /// What it takes of the thickness, or before the face.
    pub u: Span,
}

/// Two things that are in each other's way, by their places in the lists that were searched.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Meeting {
    /// Hole `at` of `one` lies over hole `at + shift` of `other`, for each `at` from `first` to `last`, both included;
    /// holes are counted from 0. `one` is not above `other`; where both are one row, `shift` is above 0.
    Holes {
        /// The first in the list.
        one: usize,
        /// The second in the list.
        other: usize,
        /// The lowest such hole of the first.
        first: i32,
        /// The highest such hole of the first.
        last: i32,
        /// From the number of a hole of the first to that of the hole of the second.
        shift: i32,
    },
    /// Holes `first` to `last` of a row, both included, lie over a box: their centres are nearer to it than half their
    /// diameter.
    HolesAndSpace {
        /// The row.
        holes: usize,
        /// The box.
        space: usize,
        /// The lowest such hole, counted from 0.
        first: i32,
        /// The highest such hole.
        last: i32,
    },
    /// Two boxes overlap in x, z and u; `one` is below `other`.
    Spaces {
        /// The first in the list.
        one: usize,
        /// The second in the list.
        other: usize,
    },
}

/// Rows shorter than this are looked at hole by hole, among the boxes.
const SHORT: i32 = 4;
/// More rows than this within one diameter front to back are a crowd; one setback of a full face has about a dozen runs.
const CROWD_OF_ROWS: usize = 32;
/// More boxes and holes of short rows than this are a crowd.
const CROWD: usize = 1_000;

/// A search, and the room it works in: one serves many faces, and then asks for no more memory.
#[derive(Clone, Debug, Default)]
pub struct Search {
    /// The rows, front to back.
    rows: Vec<Row>,
    /// Those that are too short to be worth it.
    short: Vec<Row>,
    /// The holes of the short ones, and the boxes.
    sweep: Sweep,
}

impl Search {
    /// Calls `found` with every two things that are in each other's way, each pair once, in no order: two holes when they
    /// overlap in the thickness and their centres are nearer than half the sum of their diameters; a hole and a box when
    /// they overlap in the thickness and the disc lies over the box; two boxes when they overlap in x, z and u. What only
    /// touches does not meet.
    ///
    /// Lengths are within the ranges of a job, so that a square of a sum of two fits 64 bits.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::check::meet::{Holes, Meeting, Search};
    /// use gablerow_core::layout::Span;
    /// use gablerow_core::measure::Length;
    ///
    /// let mm = Length::from_mm;
    /// let u = Span::new(mm(0), mm(13));
    /// let row = Holes { x: mm(37), low: mm(10), count: 20, diameter: mm(5), u };
    /// // Centres at 106 and 111: holes 3 and 0 of the two, 4 mm apart where 5 are too near.
    /// let lock = Holes { x: mm(37), low: mm(110), count: 1, ..row };
    /// let mut found = Vec::new();
    /// Search::default().each(&[row, lock], &[], |meeting| found.push(meeting));
    /// assert_eq!(found, [Meeting::Holes { one: 0, other: 1, first: 3, last: 3, shift: -3 }]);
    /// ```
    pub fn each(&mut self, holes: &[Holes], spaces: &[Space], mut found: impl FnMut(Meeting)) {
        self.rows.clear();
        self.short.clear();
        self.sweep.clear();
        for (place, row) in holes.iter().enumerate() {
            let row = Row::new(place, row);
            if row.count >= SHORT {
                self.rows.push(row);
            } else {
                self.short.push(row);
                self.sweep.put_holes(&row);
            }
        }
        for (place, space) in spaces.iter().enumerate() {
            self.sweep.put_space(place, space);
        }
        self.rows.sort_unstable_by_key(|row| row.x);
        let widest = holes.iter().map(|row| row.diameter.counts()).max();
        let widest = widest.unwrap_or_default();
        if self.is_crowd(widest) {
            self.rows.iter().for_each(|row| self.sweep.put_holes(row));
            self.sweep.each_in_strips(&mut found);
            return;
        }
        rows::beside_each_other(&self.rows, widest, &mut found);
        for row in &self.short {
            rows::beside_short(&self.rows, row, widest, &mut found);
        }
        for item in self.sweep.items() {
            rows::over_space(&self.rows, item, widest, &mut found);
        }
        self.sweep.each(&mut found);
    }

    /// Whether there are so many things, or so many rows at one place, that to compare all that is near front to back is
    /// slow.
    fn is_crowd(&self, widest: i32) -> bool {
        let mut crowds = self.rows.windows(CROWD_OF_ROWS + 1);
        self.sweep.items().len() > CROWD
            || crowds.any(|crowd| crowd[CROWD_OF_ROWS].x - crowd[0].x < widest)
    }
}

#[cfg(test)]
mod tests;
