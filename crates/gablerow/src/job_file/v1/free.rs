//! Twins of what a face owns itself: free rows and free holes.

use gablerow_core::job;
use gablerow_core::job::{FaceId, HolePlace, Label};

use super::measure::{Measure, Mm};
use super::text::Text;
use super::twin::{Key, record, words};

words! {
    /// The long edge a setback starts from.
    Edge = job::Edge {
        /// The front edge of the panel, as finished.
        Front = "front",
        /// The back edge of the panel.
        Back = "back",
    }
}

words! {
    /// The end of a panel a height starts from.
    End = job::End {
        /// The foot.
        Foot = "foot",
        /// The head.
        Head = "head",
    }
}

record! {
    /// A row of grid holes that belongs to a face.
    FreeRow = job::FreeRow {
        /// Its name in the cabinet.
        key: Key,
        /// The face it is on.
        face: Text<FaceId>,
        /// What it is for.
        purpose: Text<Label>,
        /// The edge its setback starts from.
        edge: Edge,
        /// From that edge of the panel to the row, in mm.
        setback: Mm,
        /// The lowest hole.
        first: Text<HolePlace>,
        /// The highest hole.
        last: Text<HolePlace>,
        /// Diameter of its holes, in mm.
        diameter: Mm,
        /// How deep they are, in mm.
        depth: Measure<job::Depth>,
    }
}

record! {
    /// One hole anywhere on a face.
    FreeHole = job::FreeHole {
        /// Its name in the cabinet.
        key: Key,
        /// The face it is on.
        face: Text<FaceId>,
        /// What it is for.
        purpose: Text<Label>,
        /// The edge its setback starts from.
        edge: Edge,
        /// From that edge of the panel to its centre, in mm.
        setback: Mm,
        /// The end its height starts from.
        end: End,
        /// From that end of the panel to its centre, in mm.
        height: Mm,
        /// Its diameter, in mm.
        diameter: Mm,
        /// How deep it is, in mm.
        depth: Measure<job::Depth>,
    }
}
