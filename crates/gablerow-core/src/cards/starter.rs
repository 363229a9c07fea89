//! The generic cards each new job starts from. All of them are house guesses, to be replaced from a data sheet.

use alloc::vec;
use alloc::vec::Vec;

use super::{
    Board, CardId, Cards, Hinge, Pin, PlateShape, Runner, RunnerKind, RunnerLength, Sourced,
};
use crate::label::Label;
use crate::measure::Length;

const fn mm(value: i32) -> Sourced<Length> {
    Sourced::guess(Length::from_mm(value))
}

const fn um(value: i32) -> Sourced<Length> {
    Sourced::guess(Length::from_um(value))
}

impl Cards {
    /// One generic card or two of each kind, all values marked as house guesses.
    #[must_use]
    pub fn starter() -> Self {
        Self {
            boards: boards(),
            hinges: hinges(),
            runners: vec![runner()],
            pins: vec![pin()],
        }
    }
}

fn boards() -> Vec<Board> {
    let board = |id: &str, title: &str, nominal: i32, density: u32| Board {
        id: CardId::known(id),
        title: Label::known(title),
        nominal: Length::from_mm(nominal),
        thickness: mm(nominal),
        density: Sourced::guess(density),
    };
    vec![
        board("board-18", "18 board", 18, 650),
        board("board-16", "16 board", 16, 660),
    ]
}

fn hinges() -> Vec<Hinge> {
    let hinge = |id: &str, title: &str, plate: PlateShape| Hinge {
        id: CardId::known(id),
        title: Label::known(title),
        plate,
        half_zone: mm(28),
        reach: mm(70),
        proud: mm(15),
        pen: um(11_500),
    };
    vec![
        hinge(
            "hinge-plain",
            "cup hinge, plate along the row",
            PlateShape::AlongRow,
        ),
        hinge(
            "hinge-in-line",
            "cup hinge, plate in line",
            PlateShape::InLine,
        ),
    ]
}

/// Screw rows at 37, 165, 261 and on, as common practice has them: steps of whole pitches from the first.
fn runner() -> Runner {
    let length = |name: i32, steps: &[u8]| RunnerLength {
        name: Length::from_mm(name),
        need: mm(name + 3),
        steps: steps.to_vec(),
    };
    Runner {
        id: CardId::known("runner-under"),
        title: Label::known("undermount runner"),
        kind: RunnerKind::Undermount,
        first_hole: mm(35),
        stand_back: mm(2),
        line: mm(12),
        below: mm(14),
        above: mm(22),
        width: mm(21),
        pen: um(11_500),
        lengths: vec![
            length(250, &[0, 4]),
            length(300, &[0, 4, 7]),
            length(350, &[0, 4, 7]),
            length(400, &[0, 4, 11]),
            length(450, &[0, 4, 11]),
            length(500, &[0, 7, 13]),
            length(550, &[0, 7, 15]),
        ],
    }
}

fn pin() -> Pin {
    Pin {
        id: CardId::known("pin-5"),
        title: Label::known("5 mm shelf pin"),
        pen: mm(8),
        rise: um(2_500),
    }
}
