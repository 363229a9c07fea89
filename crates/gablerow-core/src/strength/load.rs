//! What a part weighs, what tips a shelf, what its pins bear.

use crate::measure::Length;

/// The least load at the front edge that may tip a loose shelf, in kg: a house guess.
pub const TIP_LEAST_KG: f64 = 20.0;

/// What a loose shelf is reckoned with while nobody has typed its load, in kg: a house guess.
pub const SHELF_LOAD_KG: f64 = 25.0;

/// What a board part weighs in kg: width * height * thickness * density, the density in kg/m3.
#[must_use]
pub fn mass_kg(width: Length, height: Length, thickness: Length, density: f64) -> f64 {
    width.mm() * height.mm() * thickness.mm() * 1e-9 * density
}

/// The load at the very front edge that tips a loose shelf of its own mass, in kg: mass * (d/2 - a) / a, with a from the
/// shelf's front edge back to the front pins. `None` when no load there can tip it, the pins being at the edge.
///
/// Zero and less is a shelf that falls by itself.
#[must_use]
pub fn tip_load_kg(shelf_kg: f64, depth: Length, pins_behind_edge: Length) -> Option<f64> {
    let a = pins_behind_edge.mm();
    (a > 0.0).then(|| shelf_kg * (depth.mm() / 2.0 - a) / a)
}

/// How far behind its front edge the front pins of a loose shelf may stand so that no less than a load in kg at that edge
/// tips it, in mm: mass * d/2 / (load + mass).
///
/// # Example
///
/// ```
/// use gablerow_core::measure::Length;
/// use gablerow_core::strength::{tip_load_kg, tip_overhang};
///
/// // 3 kg, 500 deep, 20 kg: 3 * 250 / 23 = 32.6
/// let most = tip_overhang(3.0, Length::from_mm(500), 20.0);
/// assert_eq!(format!("{most:.1}"), "32.6");
/// let tips = |behind| tip_load_kg(3.0, Length::from_mm(500), Length::from_mm(behind)).unwrap();
/// assert!(tips(32) > 20.0 && tips(33) < 20.0);
/// ```
#[must_use]
pub fn tip_overhang(shelf_kg: f64, depth: Length, load_kg: f64) -> f64 {
    shelf_kg * depth.mm() / 2.0 / (load_kg + shelf_kg)
}

/// How much farther back the front edge of a loose shelf has to be, in whole mm, so that no less than a load in kg at that edge
/// tips it: it then stands less far before its pins, but is shallower and so lighter too. `None` where only a shelf of no
/// depth would do.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::Length;
/// use gablerow_core::strength::{tip_load_kg, tip_set_back};
///
/// // 3 kg, 500 deep, its edge 38 before its pins. 6 back: 2.964 * (247 - 32) / 32 = 19.9; 7: 2.958 * (246.5 - 31) / 31 = 20.6.
/// let mm = Length::from_mm;
/// assert_eq!(tip_set_back(3.0, mm(500), mm(38), 20.0), Some(mm(7)));
/// ```
#[must_use]
pub fn tip_set_back(
    shelf_kg: f64,
    depth: Length,
    pins_behind_edge: Length,
    load_kg: f64,
) -> Option<Length> {
    let kg_of = |left: Length| shelf_kg * (left.mm() / depth.mm());
    let steps = (0..).map(Length::from_mm);
    let mut steps = steps.take_while(|by| *by < depth);
    steps.find(|&by| {
        let left = depth - by;
        let tip = tip_load_kg(kg_of(left), left, pins_behind_edge - by);
        tip.is_none_or(|tip| tip >= load_kg)
    })
}

/// What each pin bears in kg when goods stand evenly: (load + shelf) / pins. `None` without pins.
#[must_use]
pub fn load_on_pin(load_kg: f64, shelf_kg: f64, pins: u8) -> Option<f64> {
    (pins > 0).then(|| (load_kg + shelf_kg) / f64::from(pins))
}
