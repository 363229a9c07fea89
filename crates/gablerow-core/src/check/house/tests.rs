//! Proof of `house`.

use super::super::fixture::*;
use super::super::of_job;
use super::*;
use crate::cards::{Origin, RunnerLength};
use crate::job::{Cabinet, FixedShelf, HolePlace, Inset, Job, Label, Stacked};

/// A second cabinet like the first, called B2, changed.
fn second(case: &mut Case, change: impl FnOnce(&mut Case)) {
    let first = case.job.cabinets[0].clone();
    change(case);
    let second = Cabinet {
        key: Key(2),
        name: Label::new("B2").unwrap(),
        ..core::mem::replace(&mut case.job.cabinets[0], first)
    };
    case.job.cabinets.push(second);
}

fn inset(case: &mut Case, set_in: Length) {
    case.bay(1).inset = Some(Inset {
        front: Some(mm(19)),
        set_in,
    });
}

fn mixed_rows(job: &Job) -> Vec<(Key, String)> {
    let found = of_job(job).into_iter();
    let mixed = found.filter(|finding| finding.rule == Rule::InsetOverlayMixed);
    mixed.map(|it| (it.place.cabinet, it.message)).collect()
}

#[test]
fn each_cabinet_that_departs_says_both_setbacks() {
    let mut case = Case::new();
    case.pins(1, 3, 8);
    second(&mut case, |case| inset(case, mm(1)));
    assert_eq!(
        mixed_rows(&case.job),
        [(
            Key(2),
            "the front row of bay 1 is at 57.0, but at 37.0 in A1, the first cabinet with holes; \
             it takes a setting of its own"
                .into()
        )]
    );
}

#[test]
fn a_cabinet_without_hinges_or_pins_departs_from_nothing_and_sets_nothing() {
    let mut case = Case::new();
    inset(&mut case, mm(1));
    second(&mut case, |case| {
        case.bay(1).inset = None;
        case.pins(1, 3, 8);
    });
    assert_eq!(mixed_rows(&case.job), [], "A1 has no hole");
    case.runner(1, 12, 500);
    assert_eq!(mixed_rows(&case.job), [], "runners have rows of their own");
    case.plate(1, LEFT, 3);
    assert_eq!(mixed_rows(&case.job).len(), 1);
}

#[test]
fn a_count_of_difference_is_another_setting() {
    let found = |set_in| {
        let mut case = Case::new();
        inset(&mut case, mm(1));
        case.pins(1, 3, 8);
        second(&mut case, |case| inset(case, set_in));
        mixed_rows(&case.job).len()
    };
    assert_eq!((found(mm(1)), found(um(1_001))), (0, 1));
}

#[test]
fn one_cabinet_of_two_setbacks_says_it_once() {
    let said = said(Rule::InsetOverlayMixed, |case| {
        case.part_in_two();
        case.pins(1, 3, 8);
        case.pins(12, 3, 8);
        case.bay(12).recess = mm(5);
    });
    assert_eq!(
        said,
        ["the front row of bay 2 is at 42.0, but at 37.0 in bay 1; it takes a setting of its own"]
    );
}

/// A cabinet in two with pins on its partition, changed.
fn partition_on(change: impl FnOnce(&mut Case)) -> Vec<String> {
    said(Rule::PartitionNominalThickness, |case| {
        case.part_in_two();
        case.pins(1, 3, 8);
        change(case);
    })
}

#[test]
fn a_partition_stands_on_a_board_that_is_measured() {
    assert_eq!(
        partition_on(|_| ()),
        [
            "partition 1 stands on the bottom, 18.0 by name and not measured: each 0.1 more puts its holes 0.1 high; \
             measure that board, or lay an off-cut of it as packer between stop and foot"
        ]
    );
    let read = |thickness| partition_on(|case| *case.board() = thickness).len();
    assert_eq!(
        (read(mm(18)), read(um(18_001)), read(um(17_999))),
        (1, 0, 0)
    );
    let marked = |origin| {
        let mark = |case: &mut Case| case.job.cards.boards[0].thickness.origin = origin;
        partition_on(mark).len()
    };
    assert_eq!(Origin::ALL.map(marked), [0, 1, 1]);
}

#[test]
fn a_partition_without_holes_and_one_that_runs_past_need_no_thickness() {
    let bare = partition_on(|case| case.bay(1).zones.clear());
    assert_eq!(bare, Vec::<String>::new());
    let past = said(Rule::PartitionNominalThickness, |case| {
        case.part_in_two().foot.runs_past = true;
        case.pins(1, 3, 8);
    });
    assert_eq!(past, Vec::<String>::new());
}

/// The partition of two bays stands on fixed shelf 20 of 16 board, the bottom of 18 board being measured.
fn on_fixed_shelf(at: ShelfHeight) -> Vec<String> {
    partition_on(|case| {
        case.job.cards.boards[0].thickness.origin = Origin::DataSheet;
        let above = case.cabinet().opening.clone();
        let shelf = FixedShelf {
            key: Key(20),
            board: card("board-16"),
            at,
            recess: Length::ZERO,
            joint: crate::job::Joint::default(),
        };
        let parts = Stacked {
            first: Opening::empty_bay(Key(21)),
            rest: [(shelf, above)].into(),
        };
        let opening = &mut case.cabinet().opening;
        (opening.key, opening.division) = (Key(22), Division::Stacked(parts.into()));
    })
}

#[test]
fn a_partition_on_a_fixed_shelf_asks_for_the_board_of_that() {
    assert_eq!(
        on_fixed_shelf(ShelfHeight::Underside(mm(60))),
        [
            "partition 1 stands on fixed shelf 1, 16.0 by name and not measured: each 0.1 more puts its holes 0.1 high; \
             measure that board, or lay an off-cut of it as packer between stop and foot"
        ]
    );
    // With its middle at a hole, a thicker shelf grows by half of it upward.
    assert_eq!(
        on_fixed_shelf(ShelfHeight::Hole(HolePlace::foot(2))),
        [
            "partition 1 stands on fixed shelf 1, 16.0 by name and not measured: each 0.2 more puts its holes 0.1 high; \
             measure that board"
        ]
    );
}

/// A runner on a card that has this length beside its tens of millimetres.
fn with_length(name: Length) -> Vec<String> {
    said(Rule::UnitsMixed, |case| {
        case.runner(1, 3, 500);
        let lengths = &mut case.runner_card().lengths;
        let new = RunnerLength {
            name,
            ..lengths[0].clone()
        };
        lengths.push(new);
        lengths.sort_by_key(|length| length.name);
    })
}

// Geometry: 12 inches are 304.8.
#[test]
fn whole_inches_beside_tens_of_millimetres() {
    assert_eq!(
        with_length(um(304_800)),
        [
            "runner card runner-under has 304.8 beside 300.0, which reads as 12 inches beside mm; keep one unit on it"
        ]
    );
    let found = |um_| with_length(um(um_)).len();
    assert_eq!((found(305_300), found(305_301)), (1, 0));
    assert_eq!((found(304_300), found(304_299)), (1, 0));
    assert_eq!(found(510_000), 0, "a ten, though 20 inches are 508");
}

#[test]
fn a_card_in_inches_alone_and_one_that_is_not_used_mix_nothing() {
    let inches = said(Rule::UnitsMixed, |case| {
        for (at, length) in (12..).zip(&mut case.runner_card().lengths) {
            length.name = Length::from_inch_64ths(at * 64);
        }
        case.runner(1, 3, 500).length = Length::from_inch_64ths(12 * 64);
    });
    assert_eq!(inches, Vec::<String>::new());
    let unused = said(Rule::UnitsMixed, |case| {
        case.runner_card().lengths[1].name = um(304_800);
    });
    assert_eq!(unused, Vec::<String>::new());
}
