//! A card of what guides the drill: an indexed rail, a hand jig, a machine's bed.

use alloc::vec::Vec;

use super::{CardId, Sourced};
use crate::label::Label;
use crate::measure::Length;

/// What guides the drill.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RailKind {
    /// A rail with index holes.
    IndexedRail,
    /// A jig held in the hand: a short rail.
    HandJig,
    /// A machine's bed, with a zero corner.
    MachineBed,
}

impl RailKind {
    /// All three, in the order a user steps through them.
    pub const ALL: [Self; 3] = [Self::IndexedRail, Self::HandJig, Self::MachineBed];

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::IndexedRail => "indexed rail",
            Self::HandJig => "hand jig",
            Self::MachineBed => "machine bed",
        }
    }
}

/// What is known of a rail.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rail {
    /// Its stable name.
    pub id: CardId,
    /// What people call it.
    pub title: Label,
    /// What it is.
    pub kind: RailKind,
    /// How many index holes it has.
    pub index_holes: Sourced<u32>,
    /// From one index hole to the next.
    pub pitch: Sourced<Length>,
    /// The end offsets its stop gives, one for each of the stop's faces; never empty.
    pub stops: Vec<Length>,
    /// The least setback its arm reaches, from the edge on the fence.
    pub reach_least: Sourced<Length>,
    /// The most.
    pub reach_most: Sourced<Length>,
    /// How wide it is, across the rows.
    pub width: Sourced<Length>,
    /// How much panel must lie under it beyond the row.
    pub support: Sourced<Length>,
    /// How far a pin moves in an index hole.
    pub play: Sourced<Length>,
}
