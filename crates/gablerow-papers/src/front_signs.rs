//! The characters a cabinet is written with, as it is seen from the front.

use gablerow_core::job::Hand;

use crate::Signs;
use crate::front::{Cell, Ink};

/// One character for each thing seen from the front, each one column wide; where a face has the thing too, it is the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FrontSigns {
    /// The front edge of an upright; the edge a door hangs on.
    pub upright: char,
    /// The front edge of a panel.
    pub panel: char,
    /// The front edge of a loose shelf; the bottom of a box.
    pub shelf: char,
    /// The edge of a front; the wall of a box.
    pub edge: char,
    /// The gap below a front, at the foot of its cell.
    pub gap: char,
    /// The surface of a front that does not open.
    pub hatch: char,
    /// The outline of a drawer behind a front.
    pub dots: char,
    /// A grip at the left edge, at the right edge.
    pub grips: [char; 2],
    /// The lower corners of a box, left and right.
    pub corners: [char; 2],
    /// A hinge plate.
    pub plate: char,
    /// A runner.
    pub runner: char,
}

impl FrontSigns {
    /// For whoever can show Unicode.
    pub const UNICODE: Self = Self {
        upright: Signs::UNICODE.edge_front,
        panel: '━',
        shelf: Signs::UNICODE.edge_level,
        edge: Signs::UNICODE.edge_back,
        gap: '▁',
        hatch: '╲',
        dots: Signs::UNICODE.hole_empty,
        grips: ['▌', '▐'],
        corners: ['└', '┘'],
        plate: Signs::UNICODE.hole_plate,
        runner: Signs::UNICODE.hole_runner,
    };

    /// For whoever can show ASCII and nothing else.
    pub const ASCII: Self = Self {
        upright: Signs::ASCII.edge_front,
        panel: Signs::ASCII.edge_front,
        shelf: Signs::ASCII.edge_level,
        edge: Signs::ASCII.edge_back,
        gap: '_',
        hatch: '\\',
        dots: Signs::ASCII.hole_empty,
        grips: ['[', ']'],
        corners: ['+'; 2],
        plate: Signs::ASCII.hole_plate,
        runner: Signs::ASCII.hole_runner,
    };

    /// The sign of a cell.
    #[must_use]
    pub fn of_cell(&self, cell: Cell) -> char {
        let by_hand = |[left, right]: [char; 2], hand| match hand {
            Hand::Left => left,
            Hand::Right => right,
        };
        match cell.ink {
            Ink::Blank => ' ',
            Ink::Upright | Ink::HungEdge => self.upright,
            Ink::Panel => self.panel,
            Ink::Shelf | Ink::BoxFloor => self.shelf,
            Ink::Edge | Ink::BoxWall => self.edge,
            Ink::Gap => self.gap,
            Ink::Hatch => self.hatch,
            Ink::Dots => self.dots,
            Ink::Grip(hand) => by_hand(self.grips, hand),
            Ink::BoxCorner(hand) => by_hand(self.corners, hand),
            Ink::Plate => self.plate,
            Ink::Runner => self.runner,
        }
    }
}
