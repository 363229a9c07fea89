//! What was said at the bench and of the papers: lists that are only ever added to, and that undo never touches.

use super::{FaceId, Key, Label};
use crate::grid::HoleNumber;
use crate::measure::Length;

/// One hole that has been bored, or was said to be by mistake.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Bored {
    /// The cabinet.
    pub cabinet: Key,
    /// Which of its copies.
    pub copy: Key,
    /// The face it was bored from, as the copy has it.
    pub face: FaceId,
    /// From the panel's front edge, as finished.
    pub from_front: Length,
    /// Its number on the grid of that day; `None` off the grid.
    pub hole: Option<HoleNumber>,
    /// From the panel's foot.
    pub from_foot: Length,
    /// How deep; `None` is through.
    pub depth: Option<Length>,
    /// Its diameter.
    pub diameter: Length,
    /// Not bored after all: takes back what an earlier entry says of this hole.
    pub taken_back: bool,
}

/// What a set-up took at the bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Took {
    /// What the plan said it would, in seconds.
    pub planned: u32,
    /// What it did, in seconds.
    pub seconds: u32,
}

/// What went wrong at the bench, in the words of whoever stood there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trouble {
    /// The cabinet.
    pub cabinet: Key,
    /// Which of its copies.
    pub copy: Key,
    /// The face that lay there, as the copy has it.
    pub face: FaceId,
    /// What was said.
    pub words: Label,
}

/// The state of a cabinet that was saved last: how many there were, and the word of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Revision {
    /// The cabinet.
    pub cabinet: Key,
    /// Counted from 1.
    pub number: u32,
    /// The word made from the content it had.
    pub word: Label,
}
