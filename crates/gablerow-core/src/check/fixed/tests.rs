//! Proof of `fixed`.

use std::string::String;
use std::vec;

use super::super::fixture::*;
use super::*;
use crate::job::{BackRail, Joint, Part, PartWidth, Partition, ShelfHeight, SideBySide, Stacked};

/// What is said of a fixed shelf with its underside at this height, in the plain cabinet: 18-686 inside.
fn at(underside: i32, change: impl FnOnce(&mut Case)) -> Vec<String> {
    said(Rule::ShelfThroughBoard, |case| {
        case.fixed_shelf(mm(underside));
        change(case);
    })
}

#[test]
fn a_shelf_lies_between_the_bottom_and_what_is_at_the_head() {
    assert_eq!(
        at(18, |_| ()),
        Vec::<String>::new(),
        "it touches the bottom"
    );
    assert_eq!(
        at(668, |_| ()),
        Vec::<String>::new(),
        "it touches the stretchers"
    );
    assert_eq!(
        at(10, |_| ()),
        [
            "fixed shelf 1 lies at 10.0-28.0, and runs into the bottom at 0.0-18.0; move one of them, or let it in less"
        ]
    );
    assert_eq!(
        at(680, |_| ()),
        [
            "fixed shelf 1 lies at 680.0-698.0, and runs into the stretcher at 686.0-704.0; move one of them, or let it in less"
        ]
    );
}

#[test]
fn a_shelf_clears_the_rail_under_the_top() {
    let rail = |case: &mut Case| {
        let board = card("board-18");
        let height = mm(80);
        case.cabinet().carcass.rail = Some(BackRail { board, height });
    };
    // The rail hangs from 686 to 606.
    assert_eq!(at(588, rail), Vec::<String>::new());
    assert_eq!(
        at(600, rail),
        [
            "fixed shelf 1 lies at 600.0-618.0, and runs into the back rail at 606.0-686.0; move one of them, or let it in less"
        ]
    );
}

#[test]
fn a_shelf_has_a_depth() {
    let recessed = |recess| at(300, |case| case.fixed_shelf(mm(300)).recess = mm(recess));
    assert_eq!(recessed(539), Vec::<String>::new());
    assert_eq!(
        recessed(540),
        ["fixed shelf 1 is recessed 540.0, but it is 540.0 deep inside; recess it less"]
    );
}

/// A fixed shelf on hole 11 over one bay, and over it a row parted by a partition whose foot meets it so.
fn under_a_partition(foot: Joint) -> Vec<String> {
    said(Rule::ShelfThroughBoard, |case| {
        let part = |key| Part {
            width: PartWidth::Equal,
            opening: Opening::empty_bay(Key(key)),
        };
        let partition = Partition {
            key: Key(21),
            board: card("board-18"),
            recess: Length::ZERO,
            foot,
            head: Joint::default(),
        };
        let mut row = Opening::empty_bay(Key(20));
        row.division = Division::SideBySide(
            SideBySide {
                first: part(22),
                rest: vec![(partition, part(23))],
            }
            .into(),
        );
        let shelf = FixedShelf {
            key: Key(11),
            board: card("board-18"),
            at: ShelfHeight::Underside(mm(343)),
            recess: Length::ZERO,
            joint: Joint::default(),
        };
        let stack = Stacked {
            first: Opening::empty_bay(Key(1)),
            rest: vec![(shelf, row)],
        };
        let opening = &mut case.cabinet().opening;
        (opening.key, opening.division) = (Key(10), Division::Stacked(stack.into()));
    })
}

#[test]
fn a_partition_ends_on_a_shelf_or_in_it() {
    let housed = |depth| Joint {
        housing: mm(depth),
        ..Joint::default()
    };
    assert_eq!(under_a_partition(housed(0)), Vec::<String>::new());
    assert_eq!(under_a_partition(housed(9)), Vec::<String>::new());
    let through = Joint {
        runs_past: true,
        ..Joint::default()
    };
    assert_eq!(
        under_a_partition(through),
        ["fixed shelf 1 lies where partition 1 runs past it; let the partition end on the shelf"]
    );
}

#[test]
fn ends_let_in_stay_in_their_walls() {
    let let_in = |depth| {
        at(300, move |case| {
            case.fixed_shelf(mm(300)).joint.housing = mm(depth);
        })
    };
    assert_eq!(let_in(18), Vec::<String>::new());
    assert_eq!(
        let_in(20),
        [
            "fixed shelf 1 runs 2.0 past the left side; let its ends in less",
            "fixed shelf 1 runs 2.0 past the right side; let its ends in less"
        ]
    );
}
