//! What was said at the bench and of the papers: lists that are only ever added to, and that undo never touches.

use alloc::format;
use alloc::string::String;
use core::iter;

use super::{End, FaceId, Key, Label};
use crate::grid::HoleNumber;
use crate::measure::{Length, Unit};

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

/// A distance on a face, centre to centre or to an end of its panel, that shows whether it was bored as it should be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Span {
    /// Along a row, from one hole to another.
    Holes {
        /// From the panel's front edge, as finished, to the row.
        row: Length,
        /// The lower hole.
        first: HoleNumber,
        /// The higher one.
        last: HoleNumber,
    },
    /// From a hole of a row to an end of the panel.
    ToEnd {
        /// From the panel's front edge, as finished, to the row.
        row: Length,
        /// The hole.
        hole: HoleNumber,
        /// The end.
        end: End,
    },
    /// Across, from the row nearest to the front to another.
    Rows {
        /// From the panel's front edge, as finished, to the nearest row.
        first: Length,
        /// The same of the other.
        last: Length,
    },
}

impl Span {
    /// The rows it is about, the nearest to the front first: one, or two.
    pub(crate) fn rows(self) -> impl Iterator<Item = Length> {
        let (near, far) = match self {
            Self::Holes { row, .. } | Self::ToEnd { row, .. } => (row, None),
            Self::Rows { first, last } => (first, Some(last)),
        };
        iter::once(near).chain(far)
    }

    /// In words, its row so far from the front edge: `hole 3 to hole 20 in row 37.0`.
    #[must_use]
    pub fn show(&self, unit: Unit) -> String {
        match self {
            Self::Holes { row, first, last } => {
                format!("hole {first} to hole {last} in row {}", row.show(unit))
            }
            Self::ToEnd { row, hole, end } => {
                let end = end.word();
                format!("hole {hole} in row {} to the {end}", row.show(unit))
            }
            Self::Rows { first, last } => {
                format!("row {} to {}", first.show(unit), last.show(unit))
            }
        }
    }
}

/// A distance that was measured on a bored face. The last entry on a span is what holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Measured {
    /// The cabinet.
    pub cabinet: Key,
    /// Which of its copies.
    pub copy: Key,
    /// The face, as the copy has it.
    pub face: FaceId,
    /// From where to where.
    pub span: Span,
    /// What it should be by the layout of that day.
    pub want: Length,
    /// What it is.
    pub is: Length,
    /// Takes back what earlier entries say of this distance: its panel was cut anew.
    pub taken_back: bool,
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
