//! Twins of what was said at the bench, and of revisions.

use gablerow_core::job;
use gablerow_core::job::{FaceId, Label};
use gablerow_core::measure::Length;

use super::measure::{Measure, Mm};
use super::text::Text;
use super::twin::{Hole, Key, plain, record};

record! {
    /// One hole that has been bored, or was said to be by mistake.
    Bored = job::Bored {
        /// The key of the cabinet.
        cabinet: Key,
        /// The key of the copy.
        copy: Key,
        /// The face it was bored from, as the copy has it.
        face: Text<FaceId>,
        /// From the panel's front edge, as finished, in mm.
        from_front: Mm,
        /// Its number on the grid of that day; left out off the grid.
        #[serde(default, skip_serializing_if = "plain")]
        hole: Option<Hole>,
        /// From the panel's foot, in mm.
        from_foot: Mm,
        /// How deep, in mm.
        depth: Measure<Option<Length>>,
        /// Its diameter, in mm.
        diameter: Mm,
        /// Takes back what an earlier entry says of this hole; left out when it was bored.
        #[serde(default, skip_serializing_if = "plain")]
        taken_back: bool,
    }
}

record! {
    /// What a set-up took at the bench.
    #[derive(Copy)]
    Took = job::Took {
        /// What was planned, in seconds.
        planned: u32,
        /// What it took, in seconds.
        seconds: u32,
    }
}

record! {
    /// What went wrong at the bench.
    Trouble = job::Trouble {
        /// The key of the cabinet.
        cabinet: Key,
        /// The key of the copy.
        copy: Key,
        /// The face that lay there, as the copy has it.
        face: Text<FaceId>,
        /// What was said.
        words: Text<Label>,
    }
}

record! {
    /// The state of a cabinet that was saved last.
    Revision = job::Revision {
        /// The key of the cabinet.
        cabinet: Key,
        /// Counted from 1.
        number: u32,
        /// The word made from the content it had.
        word: Text<Label>,
    }
}
