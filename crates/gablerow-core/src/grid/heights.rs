//! Heights of holes, and holes at heights.

use super::{HoleNumber, Run};
use crate::measure::Length;

/// The one grid of a cabinet: the height of hole 1.
///
/// Heights are z: upward, zero at the carcass underside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Grid {
    /// Height of hole 1 above the carcass underside.
    pub first: Length,
}

/// Where the row of an upright begins when that upright stands above the carcass underside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RowStart {
    /// Number of its first hole.
    pub hole: HoleNumber,
    /// From the upright's own foot up to that hole.
    pub offset: Length,
}

impl Grid {
    /// Height of a hole, z.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::grid::{Grid, HoleNumber};
    /// use gablerow_core::measure::Length;
    ///
    /// // 16 + 6 * 32 = 208
    /// let grid = Grid { first: Length::from_mm(16) };
    /// assert_eq!(grid.height(HoleNumber::new(7).unwrap()), Length::from_mm(208));
    /// ```
    #[must_use]
    pub fn height(self, hole: HoleNumber) -> Length {
        self.first + Length::PITCH * hole.above(HoleNumber::FIRST)
    }

    /// The hole that stands exactly at this height.
    #[must_use]
    pub fn number_at(self, z: Length) -> Option<HoleNumber> {
        let above = z - self.first;
        if above.rem_floor(Length::PITCH) != Length::ZERO {
            return None;
        }
        HoleNumber::FIRST.up(above.div_floor(Length::PITCH))
    }

    /// The hole nearest to this height; of two equally near, the lower.
    #[must_use]
    pub fn nearest(self, z: Length) -> HoleNumber {
        let above = z - self.first;
        // Half a pitch wraps to +16, so what is taken off leads to the lower hole.
        let steps = (above - above.wrap_to(Length::PITCH)).div_floor(Length::PITCH);
        HoleNumber::clamped(steps + 1)
    }

    /// The lowest hole at this height or above it; `None` above the highest number.
    #[must_use]
    pub fn first_from(self, z: Length) -> Option<HoleNumber> {
        let steps = -(self.first - z).div_floor(Length::PITCH);
        HoleNumber::FIRST.up(steps.max(0))
    }

    /// The highest hole at this height or below it; `None` below hole 1.
    #[must_use]
    pub fn last_to(self, z: Length) -> Option<HoleNumber> {
        let steps = (z - self.first).div_floor(Length::PITCH);
        (steps >= 0).then(|| HoleNumber::clamped(steps + 1))
    }

    /// The last hole of an upright whose head is at z, `end_min` being the least distance to it.
    #[must_use]
    pub fn last(self, head: Length, end_min: Length) -> Option<HoleNumber> {
        self.last_to(head - end_min)
    }

    /// The holes from one height up to another, both included.
    #[must_use]
    pub fn within(self, from: Length, to: Length) -> Option<Run> {
        Run::new(self.first_from(from)?, self.last_to(to)?)
    }

    /// The first hole of an upright whose foot is at `z_foot`, at least `end_min` above it, and its
    /// distance from that foot. Holes below hole 1 do not count, as the sides lack them.
    ///
    /// `None` when no number is high enough.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::grid::Grid;
    /// use gablerow_core::measure::Length;
    ///
    /// // A partition on an 18.6 bottom: 16 is below it, 16 + 32 - 18.6 = 29.4
    /// let grid = Grid { first: Length::from_mm(16) };
    /// let start = grid.start_above(Length::from_um(18_600), Length::from_mm(8)).unwrap();
    /// assert_eq!((start.hole.get(), start.offset), (2, Length::from_um(29_400)));
    /// ```
    #[must_use]
    pub fn start_above(self, z_foot: Length, end_min: Length) -> Option<RowStart> {
        let hole = self.first_from(z_foot + end_min)?;
        Some(RowStart {
            hole,
            offset: self.height(hole) - z_foot,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grid::Ends;
    use proptest::prelude::*;

    const END_MIN: Length = Length::from_mm(8);

    fn grid(first_um: i32) -> Grid {
        Grid {
            first: Length::from_um(first_um),
        }
    }

    fn hole(number: i32) -> HoleNumber {
        HoleNumber::new(number).unwrap()
    }

    #[track_caller]
    fn check_start(first_um: i32, z_foot_um: i32, number: i32, offset_um: i32) {
        let start = grid(first_um).start_above(Length::from_um(z_foot_um), END_MIN);
        let expected = RowStart {
            hole: hole(number),
            offset: Length::from_um(offset_um),
        };
        assert_eq!(start, Some(expected));
    }

    // grid-inch. Derived: 32 - 31.75 a pitch.
    #[test]
    fn inch_and_a_quarter_taken_for_a_pitch_runs_short() {
        let inch_and_a_quarter = Length::from_inch_64ths(80);
        for (pitches, short_um) in [(1, 250), (4, 1_000), (20, 5_000), (64, 16_000)] {
            let short = (Length::PITCH - inch_and_a_quarter) * pitches;
            assert_eq!(short, Length::from_um(short_um));
        }
    }

    #[test]
    fn heights_between_holes_have_no_number() {
        let grid = grid(16_000);
        assert_eq!(grid.number_at(Length::from_mm(208)), Some(hole(7)));
        assert_eq!(grid.number_at(Length::from_counts(208 * 8_000 + 1)), None);
        assert_eq!(grid.number_at(Length::from_mm(16 - 32)), None);
    }

    #[test]
    fn of_two_equally_near_holes_the_lower_is_nearest() {
        let grid = grid(16_000);
        assert_eq!(grid.nearest(Length::from_mm(224)), hole(7));
        assert_eq!(grid.nearest(Length::from_counts(224 * 8_000 + 1)), hole(8));
        assert_eq!(grid.nearest(Length::from_mm(193)), hole(7));
        assert_eq!(grid.nearest(Length::from_mm(-500)), hole(1));
        assert_eq!(grid.nearest(Length::from_mm(20_000)), hole(400));
    }

    #[test]
    fn span_of_heights_includes_both_ends() {
        let grid = grid(16_000);
        let run = |from, to| grid.within(Length::from_mm(from), Length::from_mm(to));
        assert_eq!(run(48, 112), Run::new(hole(2), hole(4)));
        assert_eq!(run(49, 111), Run::new(hole(3), hole(3)));
        assert_eq!(run(-300, 16), Run::new(hole(1), hole(1)));
        assert_eq!(run(49, 79), None);
        assert_eq!(run(-300, 15), None);
        assert_eq!(run(20_000, 30_000), None);
    }

    #[test]
    fn last_hole_keeps_the_least_distance_from_the_head() {
        // 811 - 784 = 27; a hole at 816 - 8 = 808 is just allowed
        let grid = grid(16_000);
        assert_eq!(grid.last(Length::from_mm(811), END_MIN), Some(hole(25)));
        assert_eq!(grid.last(Length::from_mm(824), END_MIN), Some(hole(26)));
        assert_eq!(grid.last(Length::from_um(823_999), END_MIN), Some(hole(25)));
        assert_eq!(grid.last(Length::from_mm(23), END_MIN), None);
    }

    // part-19. Source: davelers.com/32mm/Drawers prints 22.5 as 32 - t/2 (one page).
    #[test]
    fn partition_on_a_19_bottom_starts_at_22_5() {
        check_start(9_500, 19_000, 2, 22_500);
        let offset = Length::from_um(22_500);
        assert_eq!(
            offset + Length::PITCH * 20 + offset,
            Length::from_mm(723 - 2 * 19)
        );
    }

    // part-18, part-toe, part-32, part-zero, part-18-6, part-housed. Derived.
    #[test]
    fn partitions_start_at_the_first_hole_clear_of_their_foot() {
        check_start(46_500, 18_000, 1, 28_500);
        check_start(46_500, 118_000, 4, 24_500);
        check_start(32_000, 19_000, 1, 13_000);
        check_start(16_000, 16_000, 2, 32_000);
        check_start(16_000, 18_600, 2, 29_400);
        check_start(16_000, 13_600, 2, 34_400);
    }

    // Derived: carcass 800 high, bottom and top of 18.6 in butt joints, then housed 5 at both ends.
    #[test]
    fn partition_of_a_balanced_side_is_balanced() {
        for (housing_um, length_um, margin_um) in [(0, 762_800, 29_400), (5_000, 772_800, 34_400)] {
            let z_foot = Length::from_um(18_600 - housing_um);
            let z_head = Length::from_um(800_000 - 18_600 + housing_um);
            let start = grid(16_000).start_above(z_foot, END_MIN).unwrap();
            let last = grid(16_000).last(z_head, END_MIN).unwrap();
            assert_eq!(z_head - z_foot, Length::from_um(length_um));
            assert_eq!(Run::new(start.hole, last).unwrap().to_string(), "2-24");
            assert_eq!(
                z_head - grid(16_000).height(last),
                Length::from_um(margin_um)
            );
            assert_eq!(start.offset, Length::from_um(margin_um));
        }
    }

    // Derived: the sides' 16 stop sits 13.4 low; a nominal 18 in the formula ends 0.6 high.
    #[test]
    fn partition_on_the_wrong_stop_is_off() {
        let offset = |t_um| {
            grid(16_000)
                .start_above(Length::from_um(t_um), END_MIN)
                .unwrap()
                .offset
        };
        assert_eq!(
            offset(18_600) - Length::from_mm(16),
            Length::from_um(13_400)
        );
        assert_eq!(offset(18_000) - offset(18_600), Length::from_um(600));
    }

    proptest! {
        // part-packer. Derived: the stop stays at the sides' offset, with a packer of the bottom's
        // thickness before the foot.
        #[test]
        fn packer_of_the_bottom_stands_in_for_the_partition_offset(t_um in 3_000..=60_000) {
            let thickness = Length::from_um(t_um);
            let start = grid(16_000).start_above(thickness, END_MIN).unwrap();
            let from_packer = grid(16_000).height(start.hole);
            prop_assert_eq!(from_packer - thickness, start.offset);
            prop_assert!(start.offset >= END_MIN && start.offset < END_MIN + Length::PITCH
                || start.hole == HoleNumber::FIRST);
        }

        #[test]
        fn balanced_side_and_like_joints_give_a_balanced_partition(
            first_um in 8_000..=60_000,
            pitches in 4..=60,
            foot_um in 0..=60_000,
        ) {
            let grid = grid(first_um);
            let foot = Length::from_um(foot_um);
            let side = grid.first + Length::PITCH * pitches + grid.first;
            let start = grid.start_above(foot, END_MIN).unwrap();
            let partition = Ends::alike(side - foot - foot, start.offset);
            prop_assert_eq!(partition.mismatch().wrapped(), Length::ZERO);
        }

        #[test]
        fn number_at_undoes_height(first in -80_000..=1_600_000, number in 1..=400) {
            let grid = Grid { first: Length::from_counts(first) };
            let z = grid.height(hole(number));
            prop_assert_eq!(grid.number_at(z), Some(hole(number)));
            prop_assert_eq!(grid.nearest(z), hole(number));
            prop_assert_eq!(grid.within(z, z), Run::new(hole(number), hole(number)));
        }

        #[test]
        fn no_hole_is_nearer_than_the_nearest(z in -8_000_000..=110_000_000) {
            let (grid, z) = (grid(16_000), Length::from_counts(z));
            let distance = |hole| (grid.height(hole) - z).abs();
            let nearest = grid.nearest(z);
            for other in [nearest.up(-1), nearest.up(1)].into_iter().flatten() {
                prop_assert!(distance(nearest) <= distance(other));
            }
        }
    }
}
