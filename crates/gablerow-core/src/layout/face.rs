//! One face of an upright: its rows, single bores and keep-outs.

use alloc::vec::Vec;

use super::KeepOut;
use crate::job::{FaceId, HolePlace, Key};
use crate::measure::Length;
use crate::sum::Sum;

/// What a hole is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Use {
    /// A shelf pin.
    Pin,
    /// A hinge plate's screw.
    Plate,
    /// A runner's screw.
    Runner,
    /// A dowel of a joint.
    Dowel,
    /// A connector of a joint.
    Connector,
    /// What a free row or a free hole is for.
    Free,
}

impl Use {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::Pin,
        Self::Plate,
        Self::Runner,
        Self::Dowel,
        Self::Connector,
        Self::Free,
    ];

    /// The word of the trade.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Pin => "pin",
            Self::Plate => "plate",
            Self::Runner => "runner",
            Self::Dowel => "dowel",
            Self::Connector => "connector",
            Self::Free => "free",
        }
    }
}

/// Which row of a face. Where two rows fall on one line they are one row, named by the first of these.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RowName {
    /// The front row: pins, plates, and the first screws of most runners.
    Front,
    /// The back row of pins.
    Back,
    /// The third row of pins, midway.
    Middle,
    /// The second row of in-line plates.
    InLine,
    /// A row of runner screws.
    Runner,
    /// A free row.
    Free,
}

impl RowName {
    /// All of them, first ones first.
    pub const ALL: [Self; 6] = [
        Self::Front,
        Self::Back,
        Self::Middle,
        Self::InLine,
        Self::Runner,
        Self::Free,
    ];

    /// The word of the trade.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Back => "back",
            Self::Middle => "middle",
            Self::InLine => "in line",
            Self::Runner => "runner",
            Self::Free => "free",
        }
    }
}

/// What one bore is: width, depth, and the fastener that goes in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct BoreSpec {
    /// What it is for.
    pub use_: Use,
    /// The fitting, joint, row or hole it belongs to.
    pub owner: Key,
    /// The bay that asked for it; `None` when the face owns it itself.
    pub bay: Option<Key>,
    /// Its diameter.
    pub diameter: Length,
    /// How deep it is bored; `None` is through.
    pub depth: Option<Length>,
    /// How deep its fastener goes in.
    pub pen: Length,
    /// Whether that depth still is a guess.
    pub pen_unproved: bool,
}

/// Neighbouring holes of a row with one owner and one use, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Run {
    /// The lowest hole number.
    pub first: i16,
    /// The highest hole number.
    pub last: i16,
    /// What each of its holes is.
    pub spec: BoreSpec,
}

/// A vertical line of holes at one setback.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Which row it is.
    pub name: RowName,
    /// From the carcass front, with its terms.
    pub x: Sum,
    /// Its runs, in the order they were asked for; two may cover one hole.
    pub runs: Vec<Run>,
}

/// A bore that is on no row, or on no hole number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct SingleBore {
    /// From the carcass front to its centre.
    pub x: Length,
    /// From the carcass underside to its centre.
    pub z: Length,
    /// What it is.
    pub spec: BoreSpec,
}

/// Holes asked for at numbers the grid does not have.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct OffGrid {
    /// What they were for.
    pub use_: Use,
    /// Who asked.
    pub owner: Key,
    /// The place, as it was meant.
    pub place: HolePlace,
    /// The number that place would have.
    pub number: i16,
}

/// All that lies on and before one face of an upright.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Face {
    /// Which face.
    pub id: FaceId,
    /// Its rows, front to back; no two at one setback.
    pub rows: Vec<Row>,
    /// Its single bores.
    pub bores: Vec<SingleBore>,
    /// The space that is taken before it.
    pub keep_outs: Vec<KeepOut>,
    /// What could not be placed.
    pub off_grid: Vec<OffGrid>,
}

impl Face {
    pub(super) fn new(id: FaceId) -> Self {
        Self {
            id,
            // Room for what an ordinary face has: growing step by step costs more than all the rest of a layout.
            rows: Vec::with_capacity(8),
            bores: Vec::new(),
            keep_outs: Vec::with_capacity(16),
            off_grid: Vec::new(),
        }
    }

    /// Adds a run to the row at `x`, which is made when there is none.
    pub(super) fn ask(&mut self, name: RowName, x: Sum, run: Run) {
        match self
            .rows
            .binary_search_by_key(&x.total(), |row| row.x.total())
        {
            Ok(at) => {
                let row = &mut self.rows[at];
                row.runs.push(run);
                if name < row.name {
                    (row.name, row.x) = (name, x);
                }
            }
            Err(at) => self.rows.insert(
                at,
                Row {
                    name,
                    x,
                    runs: [run].into(),
                },
            ),
        }
    }
}
