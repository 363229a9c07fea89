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
        panel: '━',
        gap: '▁',
        hatch: '╲',
        grips: ['▌', '▐'],
        ..Self::of(&Signs::UNICODE)
    };

    /// For whoever can show ASCII and nothing else.
    pub const ASCII: Self = Self {
        panel: '#',
        gap: '_',
        hatch: '\\',
        grips: ['[', ']'],
        ..Self::of(&Signs::ASCII)
    };

    /// What a face has too.
    const fn of(signs: &Signs) -> Self {
        let [_, _, left, right] = signs.corners;
        Self {
            upright: signs.edge_front,
            panel: signs.fixed_panel,
            shelf: signs.edge_level,
            edge: signs.edge_back,
            gap: signs.edge_level,
            hatch: signs.fixed_panel,
            dots: signs.hole_empty,
            grips: [signs.edge_front; 2],
            corners: [left, right],
            plate: signs.hole_plate,
            runner: signs.hole_runner,
        }
    }

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
