//! The four pins of a shelf: rock and slope.

use crate::measure::Length;

/// Heights of the four pins a shelf lies on, each against the height it should have.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct FourPins {
    /// On the left wall, in the front row.
    pub left_front: Length,
    /// On the left wall, in the back row.
    pub left_back: Length,
    /// On the right wall, in the front row.
    pub right_front: Length,
    /// On the right wall, in the back row.
    pub right_back: Length,
}

impl FourPins {
    /// How far the four are from lying in one plane; its size is the [`rock`](Self::rock).
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::grid::FourPins;
    /// use gablerow_core::measure::Length;
    ///
    /// // 0 - (-0.4) - (-0.5) + 0 = 0.9
    /// let pins = FourPins {
    ///     left_back: Length::from_um(-400),
    ///     right_front: Length::from_um(-500),
    ///     ..FourPins::default()
    /// };
    /// assert_eq!(pins.twist(), Length::from_um(900));
    /// ```
    #[must_use]
    pub fn twist(self) -> Length {
        self.left_front - self.left_back - self.right_front + self.right_back
    }

    /// How far the fourth corner hangs free when the shelf lies on the other three.
    #[must_use]
    pub fn rock(self) -> Length {
        self.twist().abs()
    }

    /// How much higher the right end lies than the left, front and back taken together.
    #[must_use]
    pub fn slope_side_to_side(self) -> Length {
        (self.right_front + self.right_back - self.left_front - self.left_back).half()
    }

    /// How much higher the back lies than the front, left and right taken together.
    #[must_use]
    pub fn slope_front_to_back(self) -> Length {
        (self.left_back + self.right_back - self.left_front - self.right_front).half()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Pin heights in micrometres: left front, left back, right front, right back.
    fn pins(heights: [i32; 4]) -> FourPins {
        let [left_front, left_back, right_front, right_back] = heights.map(Length::from_um);
        FourPins {
            left_front,
            left_back,
            right_front,
            right_back,
        }
    }

    #[track_caller]
    fn check(heights: [i32; 4], rock: i32, side_to_side: i32, front_to_back: i32) {
        let pins = pins(heights);
        assert_eq!(pins.rock(), Length::from_um(rock));
        assert_eq!(pins.slope_side_to_side(), Length::from_um(side_to_side));
        assert_eq!(pins.slope_front_to_back(), Length::from_um(front_to_back));
    }

    /// The slope as an angle, in degrees, between pins so many mm apart.
    fn degrees(slope: Length, apart: f64) -> f64 {
        (slope.mm() / apart).atan().to_degrees()
    }

    // pins-side, pins-16. Derived, pins 548 apart.
    #[test]
    fn one_whole_side_from_the_head_slopes_and_does_not_rock() {
        check([-3_000, -3_000, 0, 0], 0, 3_000, 0);
        assert!((degrees(Length::from_mm(3), 548.0) - 0.314).abs() < 0.0005);
        check([16_000, 16_000, 0, 0], 0, -16_000, 0);
        assert!((degrees(Length::from_mm(16), 548.0) - 1.672).abs() < 0.0005);
    }

    // pins-backs. Derived, pins 480 apart.
    #[test]
    fn both_back_rows_from_the_head_pitch_the_shelf() {
        check([0, -3_000, 0, -3_000], 0, 0, -3_000);
        assert!((degrees(Length::from_mm(3), 480.0) - 0.358).abs() < 0.0005);
    }

    // pins-one, pins-diag. Derived.
    #[test]
    fn one_row_rocks_by_the_mismatch_and_two_opposite_ones_by_both() {
        check([0, -3_000, 0, 0], 3_000, 1_500, -1_500);
        check([0, -3_000, -3_000, 0], 6_000, 0, 0);
    }

    // pins-cut. Derived: planned 800, cut 799.6 left and 799.5 right.
    #[test]
    fn length_errors_rock_by_what_was_turned() {
        check([0, -400, -500, 0], 900, -50, 50);
        check([0, -400, 0, -500], 100, -50, -450);
        check([0, 0, 0, 0], 0, 0, 0);
    }

    proptest! {
        // pins-random. Derived.
        #[test]
        fn holes_off_by_e_rock_at_most_four_e(errors in prop::array::uniform4(-100..=100)) {
            prop_assert!(pins(errors).rock() <= Length::from_um(400));
        }

        #[test]
        fn planes_do_not_rock(z in -9_000..9_000, across in -900..900, back in -900..900) {
            let plane = pins([z, z + back, z + across, z + across + back]);
            prop_assert_eq!(plane.rock(), Length::ZERO);
        }
    }

    #[test]
    fn worst_holes_rock_four_times_their_error() {
        check([100, -100, -100, 100], 400, 0, 0);
    }
}
