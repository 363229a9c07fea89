//! Strength: how far a shelf sags now and after years, what tips it, what a pin bears, what a part weighs.
//!
//! ```text
//! tables    elasticity, creep, limits, loads: each with where it comes from
//! section   board and lipping -> E*I
//! sag       E*I, span, load -> sag, longest span
//! load      mass, tip load, load on a pin
//! tip_over  which units may fall on children, and what is said of them
//! rests     what all of that rests on, in words
//! ```
//!
//! Floats: this is physics, no geometry. Masses are kg, forces N, elasticity N/mm2, sag mm.

mod load;
mod rests;
mod sag;
mod section;
mod tables;
mod tip_over;

pub use crate::source::Standing;
pub use load::{
    SHELF_LOAD_KG, TIP_LEAST_KG, load_on_pin, mass_kg, tip_load_kg, tip_overhang, tip_set_back,
};
pub use rests::{board_rests_on, sag_rests_on, tip_rests_on};
pub use sag::{Sag, line_load_of_mass, line_load_of_pressure, longest_in_house, longest_span, sag};
pub use section::{Section, Strip};
pub use tables::{
    CREEPS, Creep, ELASTICITIES, Elasticity, LIMITS, LOADS, Limit, SHELF_TESTS, ShelfLoad,
    ShelfTest, elasticity, house_limit,
};
pub use tip_over::{
    ScopeUnit, TIP_OVER_HEIGHT, TIP_OVER_MASS_KG, TIP_OVER_STORAGE_DM3, may_tip_over,
};

use crate::measure::Length;

/// What one kilogram weighs, in N.
pub const GRAVITY: f64 = 9.81;

/// One pound in kg. Source: international yard and pound agreement, US Federal Register notice of 1 July 1959.
pub const POUND: f64 = 0.453_592_37;

/// A sag or a span in mm as a length to be said, to the nearest tenth of a mm; 268 m where it is more.
#[must_use]
pub fn length(mm: f64) -> Length {
    tenths(libm::round(mm * 10.0))
}

/// The longest length of whole steps that is no more than this in mm; 268 m or a step less where it is more.
#[must_use]
pub fn length_down(mm: f64, step: Length) -> Length {
    let most = tenths(libm::floor(mm * 10.0));
    most - most.rem_floor(step)
}

fn tenths(number: f64) -> Length {
    const MOST: f64 = 2_680_000.0;
    // Within the clamp every tenth is a whole number of 32 bits.
    #[allow(clippy::cast_possible_truncation)]
    let tenths = number.clamp(-MOST, MOST) as i32;
    Length::from_um(100) * tenths
}

#[cfg(test)]
mod tests;
