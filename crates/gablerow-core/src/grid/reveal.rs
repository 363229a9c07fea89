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
