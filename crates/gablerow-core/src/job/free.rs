//! What a face owns itself: free rows and free holes.

use super::{Depth, FaceId, HolePlace, Key, Label};
use crate::measure::Length;

/// The long edge a setback starts from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Edge {
    /// The front edge of the panel, as finished.
    Front,
    /// The back edge of the panel.
    Back,
}

/// The end of a panel a height starts from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum End {
    /// The foot.
    Foot,
    /// The head.
    Head,
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
