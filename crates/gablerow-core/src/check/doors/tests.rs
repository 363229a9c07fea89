//! Proof of `doors`.

use super::super::fixture::*;
use super::*;
use crate::job::{Depth, HolePlace, Inset};

const TWO: &[i16] = &[3, 19];

// Geometry: flush at the foot and 3 at the head: cups at 96 from the foot, 701 - 608 = 93 from the head.
#[test]
fn a_door_with_uneven_reveals_is_handed() {
    let said = |foot, head| {
        said(Rule::DoorHanded, |case| {
            case.door(1, LEFT, 1, TWO);
            case.shop().fronts.reveal_foot = foot;
            case.shop().fronts.reveal_head = head;
        })
    };
    assert_eq!(
        said(mm(0), mm(3)),
        [
            "door 1 is handed: its cups stand 3.0 further from the foot than from the head; its label marks the FOOT END"
        ]
    );
    assert_eq!(
        said(mm(3), mm(0)),
        [
            "door 1 is handed: its cups stand 3.0 nearer to the foot than to the head; its label marks the FOOT END"
        ]
    );
    assert_eq!(said(mm(1), um(1_500)), Vec::<String>::new());
    assert_eq!(said(um(999), um(1_500)).len(), 1);
}

// Geometry: the middle of the door is at 352; a third plate on 12 has its middle at 384.
#[test]
fn a_third_hinge_out_of_the_middle_makes_a_door_handed() {
    let said = |holes| {
        said(Rule::DoorHanded, |case| {
            case.door(1, LEFT, 1, holes);
        })
    };
    assert_eq!(said(&[3, 11, 19]), Vec::<String>::new());
    assert_eq!(said(&[19]), Vec::<String>::new(), "it hangs on two");
    assert_eq!(
        said(&[3, 12, 19]),
        [
            "door 1 is handed: its cups stand 64.0 further from the foot than from the head; its label marks the FOOT END"
        ]
    );
}

#[test]
fn leaves_of_a_pair_are_named() {
    let said = said(Rule::DoorHanded, |case| {
        case.door(1, LEFT, 1, TWO).kind = FrontKind::Pair;
        case.plate(1, RIGHT, 4);
        case.plate(1, RIGHT, 19);
    });
    assert_eq!(
        said,
        [
            "the right leaf of door 1 is handed: its cups stand 32.0 further from the foot than from the head; \
             its label marks the FOOT END"
        ]
    );
}

/// What is said of a door on the left of the plain cabinet, changed.
fn side_change(change: impl FnOnce(&mut Case)) -> Vec<Finding> {
    found(Rule::DoorSideChange, |case| {
        case.door(1, LEFT, 1, TWO);
        change(case);
    })
}

#[test]
fn the_other_wall_would_take_as_many_holes() {
    let [finding] = side_change(|_| ()).try_into().unwrap();
    assert_eq!(
        finding.message,
        "the plates of door 1 are on its left alone; 4 more holes in the right side would let it hang there too"
    );
    assert_eq!(finding.place.face, Some(right_side()));
}

#[test]
fn a_partition_on_the_other_hand_is_told_by_its_number() {
    let found = found(Rule::DoorSideChange, |case| {
        case.part_in_two();
        case.door(1, LEFT, 1, TWO);
    });
    assert_eq!(
        found[0].message,
        "the plates of door 1 are on its left alone; 4 more holes in partition 1 would let it hang there too"
    );
}

#[test]
fn in_line_plates_take_two_holes_as_well() {
    // Their middles are at their holes: 80 and 624, as far from the foot as from the head.
    let [finding] = side_change(|case| {
        case.bay(1).plates[1].hole = HolePlace::foot(20);
        for plate in &mut case.bay(1).plates {
            plate.card = card("hinge-in-line");
        }
    })
    .try_into()
    .unwrap();
    assert!(finding.message.contains("; 4 more holes"), "{finding:?}");
}

#[test]
fn a_door_with_plates_on_both_walls_hangs_on_either() {
    let found = side_change(|case| {
        case.plate(1, RIGHT, 3);
        case.plate(1, RIGHT, 19);
    });
    assert_eq!(found, []);
}

#[test]
fn a_door_over_two_bays_a_handed_one_and_a_pair_change_no_side() {
    let two_bays = found(Rule::DoorSideChange, |case| {
        case.part_in_two();
        case.door(10, LEFT, 1, TWO);
    });
    let handed = side_change(|case| case.shop().fronts.reveal_foot = mm(0));
    let pair = found(Rule::DoorSideChange, |case| {
        case.door(1, LEFT, 1, TWO).kind = FrontKind::Pair;
    });
    assert_eq!((two_bays, handed, pair), (vec![], vec![], vec![]));
}

// Geometry: the front row is at 37; a row at 47 is just far enough from it.
#[test]
fn holes_near_by_are_in_the_way() {
    let rows = |setback| side_change(|case| _ = case.row(right_side(), setback, 3, 3)).len();
    assert_eq!((rows(mm(47)), rows(um(46_999))), (1, 0));
    assert_eq!(rows(mm(37)), 0, "the very holes");
}

// Geometry: holes and fasteners from both faces of 18 board: 12 + 5 deep leave a web of 1; 11.5 goes in on either.
#[test]
fn holes_behind_the_other_wall_are_in_the_way_when_they_meet() {
    let behind = |depth| {
        found(Rule::DoorSideChange, |case| {
            case.part_in_two();
            case.door(1, LEFT, 1, TWO);
            case.row(partition(RIGHT), mm(37), 3, 3).depth = Depth::Blind(depth);
        })
        .len()
    };
    assert_eq!((behind(mm(5)), behind(um(5_001))), (1, 0));
    let plates = found(Rule::DoorSideChange, |case| {
        case.part_in_two();
        case.door(1, LEFT, 1, TWO);
        case.plate(12, LEFT, 3);
    });
    assert_eq!(plates, []);
}

// Geometry: a runner's zone from 14 below its line: one on hole 2 at 48 takes 34 to 70, the hinge 68 to 124.
#[test]
fn hardware_on_the_other_wall_is_in_the_way() {
    let runner = side_change(|case| _ = case.runner(1, 2, 500)).len();
    assert_eq!(runner, 0);
    let higher = side_change(|case| _ = case.runner(1, 8, 500)).len();
    assert_eq!(higher, 1);
}

// Geometry: a partition that stands back 28 leaves 9 before the front row, 27 leave 10.
#[test]
fn edges_of_the_other_wall_are_kept_clear() {
    let recess = |recess| {
        found(Rule::DoorSideChange, |case| {
            case.part_in_two().recess = recess;
            case.door(1, LEFT, 1, TWO);
        })
        .len()
    };
    assert_eq!((recess(mm(27)), recess(um(27_001))), (1, 0));
}

// Geometry: half of a partition wants 7.5; a half arm of 12 with tab 3 on plate 4 gives 11, which is 3.5 over.
#[test]
fn a_hinge_that_does_not_reach_there_changes_no_side() {
    let found = |half| {
        found(Rule::DoorSideChange, |case| {
            case.part_in_two();
            case.door(1, LEFT, 1, TWO);
            case.door(12, RIGHT, 12, TWO);
            case.hinge_card().arms.half.value = half;
        })
        .len()
    };
    assert_eq!((found(mm(6)), found(mm(12))), (2, 0));
}

#[test]
fn a_door_that_stands_inside_changes_its_side_too() {
    let found = side_change(|case| case.bay(1).inset = Some(Inset::default()));
    assert_eq!(found.len(), 1);
}
