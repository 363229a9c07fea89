//! Cards: what data sheets say of boards, hinges, runners and pins. Every value knows where it comes from.

mod board;
mod hinge;
mod id;
mod origin;
mod pin;
mod runner;
mod starter;

use alloc::vec::Vec;

pub use board::Board;
pub use hinge::{Arms, CountChart, Hinge, PlateShape, Tabs};
pub use id::{CardId, CardIdError};
pub use origin::{Origin, Sourced};
pub use pin::Pin;
pub use runner::{Runner, RunnerKind, RunnerLength};

/// All cards of a job, each kind in the order they were added.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cards {
    /// Boards.
    pub boards: Vec<Board>,
    /// Hinges.
    pub hinges: Vec<Hinge>,
    /// Drawer runners.
    pub runners: Vec<Runner>,
    /// Shelf pins.
    pub pins: Vec<Pin>,
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
}

#[cfg(test)]
mod tests;
