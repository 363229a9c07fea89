//! Where the first hole goes so that the gaps between fronts fall on holes, or between them.

use crate::measure::Length;

/// The two end offsets that suit a reveal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StartOffsets {
    /// The middle of every gap falls on a hole.
    pub registered: Length,
    /// The middle of every gap falls midway between holes.
    pub shifted: Length,
}

impl StartOffsets {
    /// Both ways to a registered offset, each raised by whole pitches to `end_min` at least.
    fn from_registered(registered: Length, end_min: Length) -> Self {
        Self {
            registered: raised(registered, end_min),
            shifted: raised(
                (registered + Length::PITCH.half()).rem_floor(Length::PITCH),
                end_min,
            ),
        }
    }
}

/// The offset, a whole number of pitches higher if it has to be to reach `end_min`.
fn raised(offset: Length, end_min: Length) -> Length {
    if offset >= end_min {
        return offset;
    }
    end_min + (offset - end_min).rem_floor(Length::PITCH)
}

/// The offsets for one end of a side, from the reveal at that end and the gap between fronts.
///
/// Offsets below `end_min` are raised by a pitch.
///
/// Source: start-hole table, bellinghambaywoodcraft.com/32mm/Basics; the formula gives each offset
/// from the reveal printed with it.
///
/// # Example
///
/// ```
/// use gablerow_core::grid::start_offsets;
/// use gablerow_core::measure::Length;
///
/// // 6 - 4 / 2 = 4, too near the end: 36;  4 + 16 = 20
/// let offsets = start_offsets(Length::from_mm(6), Length::from_mm(4), Length::from_mm(8));
/// assert_eq!(offsets.registered, Length::from_mm(36));
/// assert_eq!(offsets.shifted, Length::from_mm(20));
/// ```
#[must_use]
pub fn start_offsets(reveal: Length, gap: Length, end_min: Length) -> StartOffsets {
    let middle_of_gap = reveal - gap.half();
    StartOffsets::from_registered(middle_of_gap.rem_floor(Length::PITCH), end_min)
}

/// The offsets for inset fronts with rails of a thickness between them: the rail's middle falls on
/// a hole, or midway between holes.
///
/// Source: start-hole table, bellinghambaywoodcraft.com/32mm/Basics.
#[must_use]
pub fn railed_start_offsets(rail: Length, end_min: Length) -> StartOffsets {
    StartOffsets::from_registered(rail.half().rem_floor(Length::PITCH), end_min)
}

/// The height on which fronts of whole pitches are registered at both ends.
///
/// # Example
///
/// ```
/// use gablerow_core::grid::registered_height;
/// use gablerow_core::measure::Length;
///
/// // 24 * 32 - 4 + 6 + 6 = 776
/// let [gap, reveal] = [4, 6].map(Length::from_mm);
/// assert_eq!(registered_height(24, gap, reveal, reveal), Length::from_mm(776));
/// ```
#[must_use]
pub fn registered_height(pitches: u16, gap: Length, foot: Length, head: Length) -> Length {
    Length::PITCH * i32::from(pitches) - gap + foot + head
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grid::Ends;
    use proptest::prelude::*;

    const END_MIN: Length = Length::from_mm(8);

    fn um(um: i32) -> Length {
        Length::from_um(um)
    }

    #[track_caller]
    fn check(found: StartOffsets, registered: i32, shifted: i32) {
        let expected = StartOffsets {
            registered: um(registered),
            shifted: um(shifted),
        };
        assert_eq!(found, expected);
    }

    /// Offsets for a gap of 3.
    fn offsets(reveal: i32) -> StartOffsets {
        start_offsets(um(reveal), um(3_000), END_MIN)
    }

    // start-full, start-half, start-inset, start-4-5.
    // Source: start-hole table, bellinghambaywoodcraft.com/32mm/Basics (one page).
    #[test]
    fn published_reveals_give_the_published_offsets() {
        check(offsets(1_500), 32_000, 16_000);
        check(offsets(11_000), 9_500, 25_500);
        check(offsets(9_500), 8_000, 24_000);
        check(offsets(4_500), 35_000, 19_000);
        check(
            start_offsets(um(22_000), um(3_000), Length::ZERO),
            20_500,
            4_500,
        );
        check(offsets(22_000), 20_500, 36_500);
    }

    // start-railed. Source: start-hole table, bellinghambaywoodcraft.com/32mm/Basics (one page).
    #[test]
    fn rails_register_by_half_their_thickness() {
        check(railed_start_offsets(um(19_000), END_MIN), 9_500, 25_500);
        check(railed_start_offsets(um(16_000), END_MIN), 8_000, 24_000);
    }

    // start-3-0, start-10-0.
    // Source: start-hole table, bellinghambaywoodcraft.com/32mm/Basics (one page).
    #[test]
    fn unlike_reveals_give_each_end_its_own_offset() {
        check(offsets(3_000), 33_500, 17_500);
        check(offsets(0), 30_500, 14_500);
        check(offsets(10_000), 8_500, 24_500);
    }

    // Derived: reveals 6 and 6, gap 4, 24 pitches; the shifted 20 leaves 736 = 23 * 32 between.
    #[test]
    fn registered_height_is_balanced_on_its_offsets() {
        let found = start_offsets(um(6_000), um(4_000), END_MIN);
        check(found, 36_000, 20_000);
        let height = registered_height(24, um(4_000), um(6_000), um(6_000));
        let row = Ends::alike(height, found.shifted).balance(END_MIN).unwrap();
        assert_eq!(row.last - found.shifted, Length::PITCH * 23);
        assert!(row.mismatch.is_balanced());
    }

    // Derived: foot reveal 0, head reveal 3, gap 3; a plain 16 at both ends is 1.5 off at either.
    #[test]
    fn plain_16_puts_unlike_reveals_off_registration() {
        let plain = Length::from_mm(16);
        assert_eq!(plain - offsets(0).shifted, um(1_500));
        assert_eq!(offsets(3_000).shifted - plain, um(1_500));
        assert_eq!(offsets(3_000).shifted - offsets(0).shifted, um(3_000));
    }

    proptest! {
        #[test]
        fn offsets_keep_the_least_distance_and_the_registration(
            reveal in 0..=200_000,
            half_gap in 0..=15_000,
            end_min in 0..=40_000,
        ) {
            let found = start_offsets(um(reveal), um(2 * half_gap), um(end_min));
            prop_assert!(found.registered >= um(end_min) && found.shifted >= um(end_min));
            let middle = um(reveal - half_gap);
            prop_assert_eq!((found.registered - middle).rem_floor(Length::PITCH), Length::ZERO);
            prop_assert_eq!((found.shifted - middle).rem_floor(Length::PITCH), um(16_000));
        }
    }
}
