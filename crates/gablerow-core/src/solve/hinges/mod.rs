//! Hinges of a door: how many, which tab and plate, which holes, where the cups go.
//!
//! ```text
//! count      height, mass and width of a door -> how many, by a named chart
//! overlay    wanted overlay -> tab, plate, what is left over, cup centre
//! place      count, free holes -> one hole for each hinge
//! cups       holes -> cups from both ends of the door, handed or not
//! opposed    two doors on one partition -> one drilling pattern for both, no hole shared
//! ```

mod count;
mod cups;
mod even;
mod legal;
mod opposed;
mod overlay;
mod place;
mod search;

pub use count::{
    Beyond, CHARTS, Chart, ChartHeight, ChartRow, Count, DoorFacts, Widening, chart_of, count,
};
pub use cups::{Cup, DoorCups, HANDED_OVER, cups};
pub use legal::{Door, HingeRow, LegalCentre};
pub use opposed::{NoOpposed, Opposed, opposed};
pub use overlay::{CUP_DIAMETER, Mount, OverlayCard, OverlayFit, fit_overlay, overlay_wanted};
pub use place::{END_LEAST, Placed, Placement, place};

#[cfg(test)]
mod tests;
