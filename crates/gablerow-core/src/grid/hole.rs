//! Hole numbers, and runs of neighbouring ones.

use core::fmt;

use crate::measure::range::{self, NumberOutOfRange};

/// A height on the grid, counted upward from the foot of the sides; the lowest is 1.
///
/// It means one and the same height on each panel of a cabinet: a partition that stands on the
/// bottom panel begins at hole 2, not at a hole 1 of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct HoleNumber(u16);

impl HoleNumber {
    /// Hole 1, the lowest.
    pub const FIRST: Self = Self(range::HOLE_NUMBER.min);
    /// The highest number there is, far above any panel.
    pub const LAST: Self = Self(range::HOLE_NUMBER.max);

    /// The hole with this number.
    ///
    /// # Errors
    ///
    /// - [`NumberOutOfRange`] outside [`range::HOLE_NUMBER`].
    pub fn new(number: impl Into<i64>) -> Result<Self, NumberOutOfRange> {
        range::HOLE_NUMBER.check(number.into()).map(Self)
    }

    /// The number, from 1.
    #[must_use]
    pub const fn get(self) -> u16 {
        self.0
    }

    /// The hole so many above this one, or below for a negative count; `None` where there is none.
    #[must_use]
    pub fn up(self, holes: i32) -> Option<Self> {
        Self::new(i64::from(self.0) + i64::from(holes)).ok()
    }

    /// How many holes this one stands above the other, negative below it.
    #[must_use]
    pub fn above(self, other: Self) -> i32 {
        i32::from(self.0) - i32::from(other.0)
    }

    /// The nearest hole there is to this count, which may lie outside the numbers.
    pub(super) fn clamped(number: i32) -> Self {
        let (first, last) = (i32::from(Self::FIRST.0), i32::from(Self::LAST.0));
        Self::new(number.clamp(first, last)).unwrap_or(Self::LAST)
    }
}

impl fmt::Display for HoleNumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// Neighbouring hole numbers, first and last included, written `11-16`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Run {
    first: HoleNumber,
    last: HoleNumber,
}

impl Run {
    /// The run from one hole up to another, both included; `None` when the last is below the first.
    #[must_use]
    pub fn new(first: HoleNumber, last: HoleNumber) -> Option<Self> {
        (first <= last).then_some(Self { first, last })
    }

    /// Its lowest hole.
    #[must_use]
    pub const fn first(self) -> HoleNumber {
        self.first
    }

    /// Its highest hole.
    #[must_use]
    pub const fn last(self) -> HoleNumber {
        self.last
    }

    /// How many holes it has, at least one.
    #[must_use]
    pub const fn count(self) -> u16 {
        self.last.0 - self.first.0 + 1
    }

    /// Whether the hole is one of the run.
    #[must_use]
    pub fn contains(self, hole: HoleNumber) -> bool {
        self.first <= hole && hole <= self.last
    }

    /// Its holes, upward.
    pub fn holes(self) -> impl DoubleEndedIterator<Item = HoleNumber> + ExactSizeIterator {
        let first = self.first.0;
        (0..self.count()).map(move |step| HoleNumber(first + step))
    }
}

impl fmt::Display for Run {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.first, self.last)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hole(number: i32) -> HoleNumber {
        HoleNumber::new(number).unwrap()
    }

    #[test]
    fn numbers_begin_at_one_and_end() {
        assert_eq!(HoleNumber::FIRST, hole(1));
        assert_eq!(HoleNumber::LAST, hole(400));
        assert!(HoleNumber::new(0).is_err());
        assert_eq!(
            HoleNumber::new(401).unwrap_err().to_string(),
            "hole number: 401, but it is 1 to 400"
        );
        assert_eq!(
            (HoleNumber::clamped(-5), HoleNumber::clamped(9_999)),
            (hole(1), hole(400))
        );
    }

    #[test]
    fn steps_lead_up_and_down() {
        assert_eq!(hole(11).up(2), Some(hole(13)));
        assert_eq!(hole(11).up(-10), Some(hole(1)));
        assert_eq!(hole(11).up(-11), None);
        assert_eq!((hole(9).above(hole(15)), hole(15).above(hole(9))), (-6, 6));
    }

    #[test]
    fn run_is_written_first_to_last() {
        let run = Run::new(hole(11), hole(16)).unwrap();
        assert_eq!(run.to_string(), "11-16");
        assert_eq!(run.count(), 6);
        assert!(run.contains(hole(11)) && run.contains(hole(16)));
        assert!(!run.contains(hole(10)) && !run.contains(hole(17)));
        assert_eq!(Run::new(hole(16), hole(11)), None);
    }

    // rule-blank: of 21 holes the first three and the last three stay blank. Common practice.
    #[test]
    fn blanked_ends_leave_the_middle_in_the_middle() {
        let run = Run::new(hole(1 + 3), hole(21 - 3)).unwrap();
        assert_eq!(run.to_string(), "4-18");
        assert_eq!(run.count(), 15);
        assert_eq!(run.holes().nth(8 - 1), Some(hole(11)));
        assert_eq!(run.holes().rev().nth(8 - 1), Some(hole(11)));
    }
}
