//! Cards: what data sheets say of boards, hinges, runners, pins, connectors and rails. Every value knows where it comes from.

mod board;
mod connector;
mod hinge;
mod id;
mod kind;
mod origin;
mod pin;
mod rail;
mod runner;
mod starter;

use alloc::vec::Vec;

pub use board::Board;
pub use connector::{Connector, ConnectorBore};
pub use hinge::{Arms, CountChart, Hinge, LeastReveal, PlateShape, Tabs};
pub use id::{CardId, CardIdError};
pub use kind::{Card, CardKind, CardName};
pub use origin::{Origin, Sourced};
pub use pin::Pin;
pub use rail::{Across, Along, Bed, Corner, Rail, RailKind};
pub use runner::{Runner, RunnerKind, RunnerLength};
pub(crate) use starter::least_reveals;

/// All cards of a job, each kind in the order they were added.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cards {
    /// Boards.
    pub boards: Vec<Board>,
    /// Hinges.
    pub hinges: Vec<Hinge>,
    /// Drawer runners.
    pub runners: Vec<Runner>,
    /// Shelf pins.
    pub pins: Vec<Pin>,
    /// What holds two panels together.
    pub connectors: Vec<Connector>,
    /// What guides the drill.
    pub rails: Vec<Rail>,
}

impl Cards {
    /// The board with this id.
    #[must_use]
    pub fn board(&self, id: &CardId) -> Option<&Board> {
        self.boards.iter().find(|card| card.id == *id)
    }

    /// The hinge with this id.
    #[must_use]
    pub fn hinge(&self, id: &CardId) -> Option<&Hinge> {
        self.hinges.iter().find(|card| card.id == *id)
    }

    /// The runner with this id.
    #[must_use]
    pub fn runner(&self, id: &CardId) -> Option<&Runner> {
        self.runners.iter().find(|card| card.id == *id)
    }

    /// The pin with this id.
    #[must_use]
    pub fn pin(&self, id: &CardId) -> Option<&Pin> {
        self.pins.iter().find(|card| card.id == *id)
    }

    /// The rail with this id.
    #[must_use]
    pub fn rail(&self, id: &CardId) -> Option<&Rail> {
        self.rails.iter().find(|card| card.id == *id)
    }
}

#[cfg(test)]
mod tests;
