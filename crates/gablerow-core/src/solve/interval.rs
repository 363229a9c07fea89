//! A piece of height that something else needs.

use crate::grid::{Grid, Run};
use crate::measure::Length;

/// From one height up to another. Two that only touch do not meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Interval {
    /// Its lower end, z.
    pub from: Length,
    /// Its upper end, z.
    pub to: Length,
}

impl Interval {
    /// The piece between two heights, whichever comes first.
    #[must_use]
    pub fn new(a: Length, b: Length) -> Self {
        Self {
            from: a.min(b),
            to: a.max(b),
        }
    }

    /// The piece around a height.
    #[must_use]
    pub fn around(middle: Length, half: Length) -> Self {
        Self::new(middle - half, middle + half)
    }

    /// Whether the two have some height in common.
    #[must_use]
    pub fn meets(self, other: Self) -> bool {
        self.from < other.to && other.from < self.to
    }

    /// The holes on which a fitting that needs so much below and above its hole would meet this piece.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::grid::Grid;
    /// use gablerow_core::measure::Length;
    /// use gablerow_core::solve::Interval;
    ///
    /// // A hinge at 96 needs 68 to 124; a runner 14 below its hole and 22 above: 46 < hole < 138
    /// let [first, at, half, below, above] = [16, 96, 28, 14, 22].map(Length::from_mm);
    /// let barred = Interval::around(at, half).bars(Grid { first }, below, above).unwrap();
    /// assert_eq!(barred.to_string(), "2-4");
    /// ```
    #[must_use]
    pub fn bars(self, grid: Grid, below: Length, above: Length) -> Option<Run> {
        let one = Length::from_counts(1);
        grid.within(self.from - above + one, self.to + below - one)
    }
}
