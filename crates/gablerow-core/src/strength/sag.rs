//! Sag of a shelf on its pins: a simply supported beam under an even load, shear left out.

use super::{Creep, GRAVITY, LIMITS, Limit, Section};
use crate::measure::Length;

/// How far a shelf sags in its middle, in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sag {
    /// On the day it is loaded.
    pub now: f64,
    /// After years under the same load.
    pub later: f64,
}

/// An even load of a mass along a span, in N/mm. Whether the shelf's own weight is in the mass is for the caller to say.
#[must_use]
pub fn line_load_of_mass(mass_kg: f64, span: Length) -> f64 {
    mass_kg * GRAVITY / span.mm()
}

/// An even load of a pressure in Pa on a shelf of a depth, in N/mm.
#[must_use]
pub fn line_load_of_pressure(pressure: f64, depth: Length) -> f64 {
    pressure * 1e-6 * depth.mm()
}

/// The sag under a line load in N/mm: 5*w*L^4 / (384*E*I), and what creep makes of it. A section of no stiffness gives
/// way without end.
///
/// Source: Wood Handbook FPL-GTR-190, eq. 9-2 to 9-4 and Table 9-1; for creep EN 1995-1-1, 2.2.3.
#[must_use]
pub fn sag(section: Section, span: Length, line_load: f64, creep: &Creep) -> Sag {
    let l = span.mm();
    let now = 5.0 * line_load * (l * l) * (l * l) / (384.0 * section.stiffness());
    Sag {
        now,
        later: now * creep.factor,
    }
}

/// The longest span in mm on which the later sag under a line load in N/mm stays within a limit; without a load there
/// is no longest.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::Length;
/// use gablerow_core::strength::{CREEPS, LIMITS, Section, line_load_of_mass, longest_span};
///
/// // 25 kg on 880, board 420 x 19, E 1600, creep 2.0, L/200: the cube root of 384*E*I / (5*w*2*200) is 642
/// let [span, depth, thickness] = [880, 420, 19].map(Length::from_mm);
/// let section = Section::board(depth, thickness, 1_600.0);
/// let longest = longest_span(section, line_load_of_mass(25.0, span), &CREEPS[5], &LIMITS[0]);
/// assert_eq!(longest.floor(), 642.0);
/// ```
#[must_use]
pub fn longest_span(section: Section, line_load: f64, creep: &Creep, limit: &Limit) -> f64 {
    let bent = 384.0 * section.stiffness() / (5.0 * line_load * creep.factor);
    let by_share = limit
        .ratio
        .map_or(f64::INFINITY, |ratio| libm::cbrt(bent / ratio));
    let by_most = limit
        .most
        .map_or(f64::INFINITY, |most| libm::sqrt(libm::sqrt(bent * most)));
    by_share.min(by_most)
}

/// The longest span in mm on which the later sag under a line load in N/mm keeps both limits of the house, and the limit
/// that ends it.
#[must_use]
pub fn longest_in_house(section: Section, line_load: f64, creep: &Creep) -> (f64, &'static Limit) {
    let [share, most, ..] = &LIMITS;
    let of = |limit| (longest_span(section, line_load, creep, limit), limit);
    let [by_share, by_most] = [share, most].map(of);
    if by_most.0 < by_share.0 {
        by_most
    } else {
        by_share
    }
}
