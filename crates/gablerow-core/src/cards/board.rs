//! A board card.

use super::{CardId, Sourced};
use crate::label::Label;
use crate::measure::Length;

/// What is known of a board.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Board {
    /// Its stable name.
    pub id: CardId,
    /// What people call it.
    pub title: Label,
    /// Thickness by name.
    pub nominal: Length,
    /// Thickness measured, by batch; every formula uses it.
    pub thickness: Sourced<Length>,
    /// Mass in kg/m3.
    pub density: Sourced<u32>,
    /// Modulus of elasticity in N/mm2, along the shelf; `None` until somebody has looked it up.
    pub stiffness: Option<Sourced<u32>>,
    /// Sag after years as a percentage of the sag at once: 200 is twice; `None` until somebody has looked it up.
    pub creep: Option<Sourced<u32>>,
}

impl Board {
    /// Whether its thickness is more than its name: a reading differs from the name, or is marked as read. A caliper may
    /// well read 18.0, and then only the mark tells.
    #[must_use]
    pub fn is_measured(&self) -> bool {
        self.thickness.value != self.nominal || !self.thickness.origin.is_unproved()
    }
}
