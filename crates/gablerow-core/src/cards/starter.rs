//! The generic cards each new job starts from. All of them are house guesses, to be replaced from a data sheet.

use alloc::vec;
use alloc::vec::Vec;

use super::{
    Arms, Bed, Board, CardId, Cards, Connector, ConnectorBore, CountChart, Hinge, LeastReveal, Pin,
    PlateShape, Rail, RailKind, Runner, RunnerKind, RunnerLength, Sourced, Tabs,
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
            runners: vec![runner(), side_runner()],
            pins: vec![pin()],
            connectors: connectors(),
            rails: rails(),
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
        stiffness: Some(Sourced::guess(1600)),
        creep: Some(Sourced::guess(200)),
    };
    // 1600 N/mm2 is the least that EN 312 asks of furniture particleboard over 13 to 20 thick (type P2), as board makers'
    // sheets quote it. It judges a product; for a shelf the data sheet of the board decides.
    vec![
        board("board-18", "18 board", 18, 650),
        board("board-16", "16 board", 16, 660),
        board("board-19", "19 board for fronts", 19, 750),
        board("board-15", "15 board for boxes", 15, 680),
    ]
}

/// What hinge edges need beside them, roughly: 1 for a door of 19, more for thicker ones. House guesses.
pub(crate) fn least_reveals() -> Vec<LeastReveal> {
    [(19, 1_000), (22, 1_500), (26, 2_500)]
        .map(|(thickness, least)| LeastReveal {
            thickness: Length::from_mm(thickness),
            least: um(least),
        })
        .to_vec()
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
        arms: Arms {
            full: mm(15),
            half: mm(6),
            inset: mm(-3),
        },
        tabs: Tabs {
            least: mm(3),
            most: mm(7),
            step: Length::from_um(500),
        },
        plates: [0, 2, 4].map(Length::from_mm).to_vec(),
        cup: mm(35),
        cup_depth: mm(13),
        intrusion: mm(15),
        adjust: mm(2),
        chart: CountChart::HeightAndMass,
        reveals: least_reveals(),
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
        deduct: mm(42),
        shorter: mm(10),
        recess: mm(13),
        load: Sourced::guess(30),
        side_most: Some(mm(16)),
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

/// 12.7 on either side of the box, as box makers' measuring pages have it; the box as long as its runner.
fn side_runner() -> Runner {
    Runner {
        id: CardId::known("runner-side"),
        title: Label::known("side runner"),
        kind: RunnerKind::SideMount,
        line: mm(23),
        below: mm(23),
        above: mm(23),
        width: um(12_700),
        deduct: um(25_400),
        shorter: mm(0),
        recess: mm(0),
        side_most: None,
        ..runner()
    }
}

fn pin() -> Pin {
    Pin {
        id: CardId::known("pin-5"),
        title: Label::known("5 mm shelf pin"),
        pen: mm(8),
        rise: um(2_500),
        projection: Some(mm(8)),
    }
}

fn connectors() -> Vec<Connector> {
    let connector =
        |id: &str, title: &str, bore: ConnectorBore, [diameter, depth, edge]: [i32; 3]| Connector {
            id: CardId::known(id),
            title: Label::known(title),
            bore,
            diameter: um(diameter),
            depth: um(depth),
            edge: um(edge),
        };
    vec![
        connector(
            "connector-cam",
            "cam connector",
            ConnectorBore::Blind,
            [15_000, 13_000, 34_000],
        ),
        connector(
            "connector-screw",
            "screw through the side",
            ConnectorBore::Through,
            [7_000, 50_000, 9_000],
        ),
    ]
}

fn rails() -> Vec<Rail> {
    let rail = Rail {
        id: CardId::known("rail-long"),
        title: Label::known("long rail"),
        kind: RailKind::IndexedRail,
        index_holes: Sourced::guess(30),
        pitch: mm(32),
        stops: [16, 32].map(Length::from_mm).to_vec(),
        reach_least: mm(20),
        reach_most: mm(300),
        width: mm(60),
        support: mm(40),
        play: um(100),
        bed: Bed::default(),
    };
    let jig = Rail {
        id: CardId::known("jig-short"),
        title: Label::known("short hand jig"),
        kind: RailKind::HandJig,
        index_holes: Sourced::guess(8),
        stops: [16].map(Length::from_mm).to_vec(),
        reach_most: mm(100),
        ..rail.clone()
    };
    let bed = Rail {
        id: CardId::known("bed-plain"),
        title: Label::known("plain machine bed"),
        kind: RailKind::MachineBed,
        ..rail.clone()
    };
    vec![rail, jig, bed]
}
