//! Where a fitting sits, counted as the user meant it.

use core::fmt;

use crate::grid::HoleNumber;

/// The end of the grid a place is counted from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Datum {
    /// Upward from the lowest hole, which is 1.
    Foot,
    /// Downward from the highest hole, which is 1.
    Head,
    /// Up or down from the middle hole, which is 0; of an even number of holes the lower of the middle two.
    Middle,
}

impl Datum {
    /// All three, in the order a user steps through them.
    pub const ALL: [Self; 3] = [Self::Foot, Self::Head, Self::Middle];

    /// The word of the trade: `foot`, `head` or `middle`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Foot => "foot",
            Self::Head => "head",
            Self::Middle => "middle",
        }
    }
}

/// A height on the cabinet's grid, counted from foot, head or middle, so that a taller cabinet takes its top hinge along.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct HolePlace {
    /// Where counting starts.
    pub datum: Datum,
    /// Holes from there: 1 is the first hole at foot and head, 0 the middle hole; upward from foot and middle, downward
    /// from the head.
    pub count: i16,
}

impl HolePlace {
    /// Hole `count`, counted up from the lowest, which is 1.
    #[must_use]
    pub fn foot(count: i16) -> Self {
        Self {
            datum: Datum::Foot,
            count,
        }
    }

    /// The `count`th hole from the highest, which is 1.
    #[must_use]
    pub fn head(count: i16) -> Self {
        Self {
            datum: Datum::Head,
            count,
        }
    }

    /// `count` holes above (or, negative, below) the middle hole.
    #[must_use]
    pub fn middle(count: i16) -> Self {
        Self {
            datum: Datum::Middle,
            count,
        }
    }

    /// The place of hole `number` on a grid of `last` holes, counted from `datum`.
    #[must_use]
    pub fn of(number: i16, datum: Datum, last: i16) -> Self {
        let count = match datum {
            Datum::Foot => number,
            Datum::Head => last + 1 - number,
            Datum::Middle => number - (last + 1) / 2,
        };
        Self { datum, count }
    }

    /// The hole number on a grid of `last` holes. It may lie off the grid (0 or less, or above `last`) when the cabinet
    /// has become shorter; that is a finding, not an error.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::job::HolePlace;
    ///
    /// // On 25 holes the third from the head is 25 + 1 - 3 = 23, and the middle is (25 + 1) / 2 = 13.
    /// assert_eq!(HolePlace::head(3).number(25), 23);
    /// assert_eq!(HolePlace::middle(0).number(25), 13);
    /// ```
    #[must_use]
    pub fn number(self, last: i16) -> i16 {
        match self.datum {
            Datum::Foot => self.count,
            Datum::Head => last + 1 - self.count,
            Datum::Middle => (last + 1) / 2 + self.count,
        }
    }

    /// The hole on a grid of `last` holes, or `None` when it lies off that grid.
    #[must_use]
    pub fn hole(self, last: i16) -> Option<HoleNumber> {
        let number = self.number(last);
        if number > last {
            return None;
        }
        HoleNumber::new(number).ok()
    }
}

impl fmt::Display for HolePlace {
    /// `foot 3`, `head 4` or `middle -2`: what the job file writes.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.datum.word(), self.count)
    }
}
