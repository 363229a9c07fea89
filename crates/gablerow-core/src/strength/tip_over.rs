//! What is said of a unit with drawers that stands free: it can fall on children.
//!
//! The note is for every unit of a height that has drawers. Whether a unit that stands free and is for clothes is within the
//! scope of the rule of the US is a matter of three figures.

use super::POUND;
use crate::measure::Length;

/// The height from which on a unit with drawers carries the note: 27 in, 685.8 mm.
///
/// Source: 16 CFR 1261, the scope of ASTM F2057-23.
pub const TIP_OVER_HEIGHT: Length = Length::from_inch_64ths(27 * 64);

/// The mass from which on a unit is in that scope, in kg: 30 lb, 13.6 kg. Source: the same.
pub const TIP_OVER_MASS_KG: f64 = 30.0 * POUND;

/// The closed storage from which on a unit is in that scope, in dm3: 3.2 cubic feet of 3.048 dm each way, 90.6 dm3. Source:
/// the same.
pub const TIP_OVER_STORAGE_DM3: f64 = 3.2 * 3.048 * 3.048 * 3.048;

/// What the scope asks of a unit, but for what only its owner knows: that it stands free, and is for clothes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScopeUnit {
    /// From the floor to its top.
    pub height: Length,
    /// What it weighs, in kg.
    pub mass_kg: f64,
    /// What its drawers hold, in dm3.
    pub drawers_dm3: f64,
    /// What is closed by doors beside that, in dm3.
    pub behind_doors_dm3: f64,
}

impl ScopeUnit {
    /// Its closed storage in dm3: drawers count full, other closed space half.
    ///
    /// Source: the storage of ASTM F2057-23, by cpsc.gov.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::measure::Length;
    /// use gablerow_core::strength::{ScopeUnit, TIP_OVER_STORAGE_DM3};
    ///
    /// // 900 x 400 x 500 behind doors are 180 dm3, and count 90: just under 3.2 cubic feet.
    /// let unit = ScopeUnit {
    ///     height: Length::from_mm(700),
    ///     mass_kg: 20.0,
    ///     drawers_dm3: 0.0,
    ///     behind_doors_dm3: 180.0,
    /// };
    /// assert!(unit.storage_dm3() == 90.0 && unit.storage_dm3() < TIP_OVER_STORAGE_DM3);
    /// ```
    #[must_use]
    pub fn storage_dm3(&self) -> f64 {
        self.drawers_dm3 + self.behind_doors_dm3 / 2.0
    }

    /// Whether it reaches the height, the mass and the storage of the scope, each by itself; the ends are included.
    #[must_use]
    pub fn reaches(&self) -> [bool; 3] {
        [
            self.height >= TIP_OVER_HEIGHT,
            self.mass_kg >= TIP_OVER_MASS_KG,
            self.storage_dm3() >= TIP_OVER_STORAGE_DM3,
        ]
    }
}

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

    #[test]
    fn each_end_of_the_scope_is_in_it() {
        let unit = ScopeUnit {
            height: TIP_OVER_HEIGHT,
            mass_kg: TIP_OVER_MASS_KG,
            drawers_dm3: TIP_OVER_STORAGE_DM3 - 50.0,
            behind_doors_dm3: 100.0,
        };
        assert_eq!(unit.reaches(), [true; 3]);
        let under = ScopeUnit {
            height: TIP_OVER_HEIGHT - Length::from_counts(1),
            mass_kg: TIP_OVER_MASS_KG - 0.001,
            behind_doors_dm3: 99.999,
            ..unit
        };
        assert_eq!(under.reaches(), [false; 3]);
    }
}
