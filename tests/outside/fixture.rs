//! One plain cabinet to lay out and make parts of, by the same ways the program goes.

use gablerow_core::cards::Cards;
use gablerow_core::check::{self, Rule};
use gablerow_core::job::{
    Bay, Division, Front, FrontHeight, FrontKind, Hand, Inset, Job, Joint, Key, Label, Opening,
    Part, PartWidth, Partition, SideBySide,
};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use gablerow_core::parts::{Parts, strength};
use gablerow_core::strength::SHELF_TESTS;

pub(crate) fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

pub(crate) fn um(um: i32) -> Length {
    Length::from_um(um)
}

/// A length that a page prints in mm, of at most three decimals.
pub(crate) fn printed(mm: f64) -> Length {
    let um = (mm * 1_000.0).round();
    assert!(
        (mm * 1_000.0 - um).abs() < 1e-6,
        "{mm} is finer than a page prints"
    );
    // A few metres in whole micrometres.
    #[allow(clippy::cast_possible_truncation)]
    Length::from_um(um as i32)
}

/// A job of one plain cabinet of the starter cards, changed.
pub(crate) fn job(change: impl FnOnce(&mut Job)) -> Job {
    let mut job = Job::plain(Label::new("glaze store").unwrap());
    change(&mut job);
    job
}

/// The one bay of such a job.
pub(crate) fn bay(job: &mut Job) -> &mut Bay {
    match &mut job.cabinets[0].opening.division {
        Division::Bay(bay) => bay,
        _ => panic!("the cabinet is divided"),
    }
}

/// Every starter board measured at a thickness.
pub(crate) fn all_boards(job: &mut Job, thickness: Length) {
    for board in &mut job.cards.boards {
        board.thickness.value = thickness;
    }
}

/// A bay with a front that takes its whole height.
pub(crate) fn closed(key: u32, kind: FrontKind) -> Opening {
    let name = Label::new(&format!("F{key}")).unwrap();
    let mut opening = Opening::empty_bay(Key(key));
    opening.fronts = vec![Front::plain(Key(key + 1), name, kind)];
    opening
}

/// Two bays beside each other, a door on each that laps over the partition.
pub(crate) fn divide(job: &mut Job) {
    let part = |key, hand| Part {
        width: PartWidth::Equal,
        opening: closed(key, FrontKind::Door(hand)),
    };
    let partition = Partition {
        key: Key(30),
        board: job.shop.board.clone(),
        recess: Length::ZERO,
        foot: Joint::default(),
        head: Joint::default(),
    };
    job.cabinets[0].opening.division = Division::SideBySide(Box::new(SideBySide {
        first: part(40, Hand::Left),
        rest: vec![(partition, part(50, Hand::Right))],
    }));
}

/// The reveal beside an inset door of a board of this thickness, its gap 3.
pub(crate) fn inset_reveal(board: i32) -> Length {
    let laid = layout(&job(|job| {
        all_boards(job, mm(board));
        job.shop.fronts.gap_inset = mm(3);
        job.cabinets[0].opening = closed(10, FrontKind::Door(Hand::Left));
        bay(job).inset = Some(Inset {
            front: Some(mm(board)),
            set_in: Length::ZERO,
        });
    }));
    laid.fronts[0].left
}

/// The load in Pa of a published test of shelves, out of the sag that the program finds for a shelf of 900 x 300 of a board of
/// 18 with 1600 N/mm2: 384*E*I / (5*L^4), a mm of depth.
pub(crate) fn tested_with(words: &str) -> f64 {
    let board = &Cards::starter().boards[0];
    let found = strength(board, [mm(900), mm(300)], None, Length::ZERO, 4);
    let tests = SHELF_TESTS.iter().zip(found.tests.unwrap());
    let mut of_load = tests.filter(|(test, _)| test.load.words.starts_with(words));
    let (_, sag) = of_load.next().unwrap();
    sag * 384.0 * 1_600.0 * 18.0_f64.powi(3) / 12.0 / (5.0 * 900.0_f64.powi(4)) * 1e6
}

/// Whether a rule finds something in the one cabinet.
pub(crate) fn finds(rule: Rule, job: &Job) -> bool {
    !check::of_rule(rule, job, &job.cabinets[0], &layout(job)).is_empty()
}

/// Fronts over its opening, from the foot up: drawers of so many modules.
pub(crate) fn fronts(modules: &[u16]) -> Vec<Front> {
    let front = |(at, &modules): (usize, &u16)| {
        let key = Key(u32::try_from(at).unwrap() + 20);
        let name = Label::new(&format!("D{at}")).unwrap();
        let mut front = Front::plain(key, name, FrontKind::Drawer);
        front.height = FrontHeight::Modules(modules);
        front
    };
    modules.iter().enumerate().map(front).collect()
}

pub(crate) fn layout(job: &Job) -> Layout {
    Layout::of(&job.cabinets[0], job)
}

pub(crate) fn parts(job: &Job) -> Parts {
    Parts::of(&job.cabinets[0], &layout(job), job)
}
