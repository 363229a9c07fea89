//! The characters a face is written with.

use crate::text::run_words;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::layout::{Hole, Use};

/// One character for each thing of a face, each one column wide; all of them differ, but for the corners.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Signs {
    /// A hole of the grid that nothing asks for.
    pub hole_empty: char,
    /// A hole of the grid on which a pin would be wrong.
    pub hole_barred: char,
    /// A hole for a shelf pin.
    pub hole_pin: char,
    /// A hole for the screw of a hinge plate.
    pub hole_plate: char,
    /// A hole for the screw of a drawer runner.
    pub hole_runner: char,
    /// A hole of a joint, or of the face itself.
    pub hole_free: char,
    /// One hole of several uses.
    pub hole_shared: char,
    /// The board's foot and head; a loose shelf.
    pub edge_level: char,
    /// The board's back edge, and where the back panel begins.
    pub edge_back: char,
    /// The board's front edge.
    pub edge_front: char,
    /// The corners of the board, as it is seen: head left, head right, foot left, foot right.
    pub corners: [char; 4],
    /// What a fixed panel covers.
    pub fixed_panel: char,
    /// The space that a fitting needs.
    pub keep_out: char,
    /// Stands before a diameter.
    pub diameter: char,
}

impl Signs {
    /// For whoever can show Unicode.
    pub const UNICODE: Self = Self {
        hole_empty: '·',
        hole_barred: '×',
        hole_pin: '●',
        hole_plate: '◆',
        hole_runner: '■',
        hole_free: '○',
        hole_shared: '◈',
        edge_level: '─',
        edge_back: '│',
        edge_front: '┃',
        corners: ['┌', '┐', '└', '┘'],
        fixed_panel: '╱',
        keep_out: '┆',
        diameter: '⌀',
    };

    /// For whoever can show ASCII and nothing else.
    pub const ASCII: Self = Self {
        hole_empty: '.',
        hole_barred: '!',
        hole_pin: 'o',
        hole_plate: 'x',
        hole_runner: '=',
        hole_free: 'c',
        hole_shared: '%',
        edge_level: '-',
        edge_back: '|',
        edge_front: '#',
        corners: ['+', '+', '+', '+'],
        fixed_panel: '/',
        keep_out: ':',
        diameter: 'D',
    };

    /// The sign of a use; of several uses at once when it is `None`.
    #[must_use]
    pub fn of_use(&self, only_use: Option<Use>) -> char {
        match only_use {
            Some(Use::Pin) => self.hole_pin,
            Some(Use::Plate) => self.hole_plate,
            Some(Use::Runner) => self.hole_runner,
            Some(Use::Dowel | Use::Connector | Use::Free) => self.hole_free,
            None => self.hole_shared,
        }
    }

    /// What the sign of a use stands for.
    pub(crate) fn meaning(only_use: Option<Use>) -> &'static str {
        match only_use {
            Some(Use::Dowel | Use::Connector | Use::Free) => "joint or free",
            Some(one) => one.word(),
            None => "shared",
        }
    }

    /// Holes of one row as runs, each after the sign of its use: `x3-4 o11-16`.
    #[must_use]
    pub fn runs<'a>(&self, holes: impl Iterator<Item = &'a Hole>) -> String {
        let mut runs: Vec<(char, i16, i16)> = Vec::new();
        for hole in holes {
            let Some(number) = hole.number else { continue };
            let sign = self.of_use(hole.only_use());
            match runs.last_mut() {
                Some((before, _, last)) if *before == sign && *last + 1 == number => *last = number,
                _ => runs.push((sign, number, number)),
            }
        }
        let text = |&(sign, first, last): &(char, i16, i16)| {
            alloc::format!("{sign}{}", run_words((first, last)))
        };
        runs.iter().map(text).collect::<Vec<_>>().join(" ")
    }
}
