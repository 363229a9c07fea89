//! Strength: how far a shelf sags now and after years, what tips it, what a pin bears, what a part weighs.
//!
//! ```text
//! tables    elasticity, creep, limits, loads: each with where it comes from
//! section   board and lipping -> E*I
//! sag       E*I, span, load -> sag, longest span
//! load      mass, tip load, load on a pin
//! ```
//!
//! Floats: this is physics, no geometry. Masses are kg, forces N, elasticity N/mm2, sag mm.

mod load;
mod sag;
mod section;
mod tables;

pub use crate::source::Standing;
pub use load::{PinLoads, TIP_LEAST_KG, load_on_pin, mass_kg, pin_loads, tip_load_kg};
pub use sag::{Sag, line_load_of_mass, line_load_of_pressure, longest_span, sag};
pub use section::{Section, Strip};
pub use tables::{
    CREEPS, Creep, ELASTICITIES, Elasticity, LIMITS, LOADS, Limit, ShelfLoad, elasticity,
};

/// What one kilogram weighs, in N.
pub const GRAVITY: f64 = 9.81;

#[cfg(test)]
mod tests;
