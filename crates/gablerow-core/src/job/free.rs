//! What a face owns itself: free rows and free holes.

use super::{Cabinet, Depth, FaceId, HolePlace, Key, Label};
use crate::measure::Length;

/// The long edge a setback starts from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Edge {
    /// The front edge of the panel, as finished.
    Front,
    /// The back edge of the panel.
    Back,
}

impl Edge {
    /// The word of the trade: `front` or `back`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Back => "back",
        }
    }

    /// The other long edge.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Front => Self::Back,
            Self::Back => Self::Front,
        }
    }
}

/// The end of a panel a height starts from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum End {
    /// The foot.
    Foot,
    /// The head.
    Head,
}

impl End {
    /// The word of the trade: `foot` or `head`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Foot => "foot",
            Self::Head => "head",
        }
    }

    /// The other end.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Foot => Self::Head,
            Self::Head => Self::Foot,
        }
    }
}

/// A row of grid holes that belongs to a face, on either surface of any upright.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FreeRow {
    /// Its name in the cabinet.
    pub key: Key,
    /// The face it is on.
    pub face: FaceId,
    /// What it is for.
    pub purpose: Label,
    /// The edge its setback starts from.
    pub edge: Edge,
    /// From that edge of the panel to the row.
    pub setback: Length,
    /// The lowest hole.
    pub first: HolePlace,
    /// The highest hole.
    pub last: HolePlace,
    /// Diameter of its holes.
    pub diameter: Length,
    /// How deep they are.
    pub depth: Depth,
}

/// One hole anywhere on a face: a lock, a cable, a screw from the outside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FreeHole {
    /// Its name in the cabinet.
    pub key: Key,
    /// The face it is on.
    pub face: FaceId,
    /// What it is for.
    pub purpose: Label,
    /// The edge its setback starts from.
    pub edge: Edge,
    /// From that edge of the panel to its centre.
    pub setback: Length,
    /// The end its height starts from.
    pub end: End,
    /// From that end of the panel to its centre.
    pub height: Length,
    /// Its diameter.
    pub diameter: Length,
    /// How deep it is.
    pub depth: Depth,
}

/// What a free row and a free hole have in common, as it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FreeThing<'a> {
    /// The face it is on.
    pub face: FaceId,
    /// What it is for.
    pub purpose: &'a Label,
    /// The edge its setback starts from.
    pub edge: Edge,
    /// From that edge of the panel to it.
    pub setback: Length,
    /// The end its height starts from, and its height; a row has neither.
    pub height: Option<(End, Length)>,
    /// Diameter.
    pub diameter: Length,
    /// How deep it is bored.
    pub depth: Depth,
}

impl Cabinet {
    /// The free row or free hole of this key.
    #[must_use]
    pub fn free_thing(&self, key: Key) -> Option<FreeThing<'_>> {
        let row = self.free_rows.iter().find(|row| row.key == key);
        let row = row.map(|row| FreeThing {
            face: row.face,
            purpose: &row.purpose,
            edge: row.edge,
            setback: row.setback,
            height: None,
            diameter: row.diameter,
            depth: row.depth,
        });
        row.or_else(|| {
            let hole = self.free_holes.iter().find(|hole| hole.key == key)?;
            Some(FreeThing {
                face: hole.face,
                purpose: &hole.purpose,
                edge: hole.edge,
                setback: hole.setback,
                height: Some((hole.end, hole.height)),
                diameter: hole.diameter,
                depth: hole.depth,
            })
        })
    }
}
