//! Twins of what was said at the bench, and of revisions.

use gablerow_core::job;
use gablerow_core::job::{FaceId, Label};
use gablerow_core::measure::Length;
use serde::{Deserialize, Serialize};

use super::free::End;
use super::measure::{Measure, Mm};
use super::text::Text;
use super::twin::{Hole, Key, Twin, plain, record};
use crate::job_file::wrong::Wrong;

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
    /// A distance that was measured on a bored face.
    Measured = job::Measured {
        /// The key of the cabinet.
        cabinet: Key,
        /// The key of the copy.
        copy: Key,
        /// The face, as the copy has it.
        face: Text<FaceId>,
        /// From where to where.
        span: Span,
        /// What it should be by the layout of that day, in mm.
        want: Mm,
        /// What it is, in mm.
        is: Mm,
        /// Takes back what earlier entries say of this distance, since its panel was cut anew; left out when it was measured.
        #[serde(default, skip_serializing_if = "plain")]
        taken_back: bool,
    }
}

/// A distance on a face. Rows stand so far from the panel's front edge, as finished, in mm.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(in crate::job_file) enum Span {
    /// Along a row, from one hole to another.
    Holes {
        /// The row, in mm.
        row: Mm,
        /// The lower hole.
        first: Hole,
        /// The higher one.
        last: Hole,
    },
    /// From a hole of a row to an end of the panel.
    ToEnd {
        /// The row, in mm.
        row: Mm,
        /// The hole.
        hole: Hole,
        /// The end.
        end: End,
    },
    /// Across, from one row to another.
    Rows {
        /// The row nearest to the front edge, in mm.
        first: Mm,
        /// The other row, in mm.
        last: Mm,
    },
}

impl Twin for Span {
    type Core = job::Span;

    fn of(core: &job::Span) -> Self {
        match core {
            job::Span::Holes { row, first, last } => Self::Holes {
                row: Mm::of(row),
                first: Hole::of(first),
                last: Hole::of(last),
            },
            job::Span::ToEnd { row, hole, end } => Self::ToEnd {
                row: Mm::of(row),
                hole: Hole::of(hole),
                end: End::of(end),
            },
            job::Span::Rows { first, last } => Self::Rows {
                first: Mm::of(first),
                last: Mm::of(last),
            },
        }
    }

    fn into_core(self) -> Result<job::Span, Wrong> {
        Ok(match self {
            Self::Holes { row, first, last } => job::Span::Holes {
                row: row.into_core()?,
                first: first.into_core()?,
                last: last.into_core()?,
            },
            Self::ToEnd { row, hole, end } => job::Span::ToEnd {
                row: row.into_core()?,
                hole: hole.into_core()?,
                end: end.into_core()?,
            },
            Self::Rows { first, last } => job::Span::Rows {
                first: first.into_core()?,
                last: last.into_core()?,
            },
        })
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
