//! What is said of a unit with drawers that stands free: it can fall on children.

use crate::measure::Length;

/// The height from which on a unit with drawers carries the note: 27 in, 685.8 mm.
///
/// Source: 16 CFR 1261, the scope of ASTM F2057-23.
pub const TIP_OVER_HEIGHT: Length = Length::from_inch_64ths(27 * 64);

/// Whether a unit carries the note ([`crate::cautions::TIP_OVER`]): it has drawers, and it is so high or higher, from the
/// floor to its top.
///
/// How it is fixed is not asked: the job does not say, and the note tells both cases apart.
#[must_use]
pub fn may_tip_over(height: Length, has_drawers: bool) -> bool {
    has_drawers && height >= TIP_OVER_HEIGHT
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn drawers_and_27_inches_carry_the_note() {
        let um = Length::from_um;
        assert!(may_tip_over(um(685_800), true) && may_tip_over(um(686_000), true));
        assert!(!may_tip_over(um(685_700), true) && !may_tip_over(um(2_000_000), false));
    }
}
