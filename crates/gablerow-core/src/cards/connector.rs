//! A connector card.

use super::{CardId, Sourced};
use crate::label::Label;
use crate::measure::Length;

/// Whether a connector's hole goes through the panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ConnectorBore {
    /// To a depth, from one face.
    Blind,
    /// Through the panel.
    Through,
}

impl ConnectorBore {
    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Blind => "blind",
            Self::Through => "through",
        }
    }
}

/// What is known of what holds two panels together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Connector {
    /// Its stable name.
    pub id: CardId,
    /// What people call it.
    pub title: Label,
    /// Whether its hole goes through the panel.
    pub bore: ConnectorBore,
    /// Diameter of its hole in the face.
    pub diameter: Sourced<Length>,
    /// Depth of that hole where it is blind, from the face.
    pub depth: Sourced<Length>,
    /// From the edge that meets the other panel to the centre of the hole.
    pub edge: Sourced<Length>,
}
