//! Proof of `near`.

use super::super::fixture::*;
use super::*;
use crate::job::{Back, Depth, FaceId};

/// Depth 449, groove 16 from the back edge: back row 449 - 16 - 37 = 396. Runner of 400: third screw at 37 + 11 * 32 = 389.
fn shallow(case: &mut Case) {
    case.cabinet().size.depth = mm(449);
    case.cabinet().carcass.back = Back::Groove {
        to_front_wall: mm(16),
        cut: mm(8),
    };
    case.pins(1, 4, 8);
    case.runner(1, 6, 400);
}

#[test]
fn back_row_7_behind_a_runner_row() {
    assert_eq!(
        said(Rule::NearMissRows, shallow),
        [
            "runner row at 389.0 and back row at 396.0 are 7.0 apart at hole 6, at least 10.0; \
          a back setback of 44.0 makes them one row"
        ]
    );
    let mended = |case: &mut Case| {
        shallow(case);
        case.shop().setback_back = mm(44);
    };
    assert!(said(Rule::NearMissRows, mended).is_empty());
}

#[test]
fn rows_are_near_up_to_the_least_spacing() {
    let rows = |apart| {
        found(Rule::NearMissRows, |case| {
            case.row(FaceId::inside(LEFT), mm(100), 3, 5);
            case.row(FaceId::inside(LEFT), mm(100) + apart, 5, 9);
        })
    };
    assert_eq!(rows(um(9_999))[0].place.holes, Some((5, 5)));
    assert!(rows(mm(10)).is_empty());
}

#[test]
fn rows_on_pitch_do_not_follow_their_setback() {
    let said = said(Rule::NearMissRows, |case| {
        case.shop().back_rule = BackRule::OnPitch;
        case.pins(1, 4, 8);
        case.row(left_side(), mm(522), 5, 6);
    });
    // The back row stands at 37 + 15 * 32 = 517.
    assert_eq!(
        said,
        [
            "back row at 517.0 and free row at 522.0 are 5.0 apart at holes 5-6, at least 10.0; drop the holes from one row"
        ]
    );
}

#[test]
fn single_bore_near_a_row_is_measured_aslant() {
    let hole = |aside, up| {
        said(Rule::NearMissRows, |case| {
            case.pins(1, 4, 9);
            case.hole(left_side(), mm(37) + aside, mm(144) + up);
        })
    };
    // 6 aside and 8 up are 10.
    assert_eq!(hole(mm(6), mm(8)), [""; 0]);
    assert_eq!(hole(mm(6), um(7_999)).len(), 1);
    assert_eq!(
        hole(mm(3), mm(4)),
        [
            "pins 4-9 and free hole \"lock\" are 5.0 apart at hole 5, at least 10.0; move one of them"
        ]
    );
    assert_eq!(hole(mm(0), mm(0)), [""; 0]);
}

/// Through pins at 37 and another hole on the face behind.
fn through(change: impl FnOnce(&mut Case)) -> Vec<Finding> {
    found(Rule::NearMissRows, |case| {
        case.part_in_two();
        case.pins(1, 3, 8).depth = Depth::Through;
        change(case);
    })
}

#[test]
fn a_through_hole_is_near_what_it_comes_out_beside() {
    let behind = |aside, depth| {
        through(|case| {
            // Hole 5 is at 144, and the partition stands on a bottom of 18.
            let hole = case.hole(partition(RIGHT), mm(37) + aside, mm(144 - 18));
            hole.depth = depth;
        })
    };
    let blind = behind(mm(6), Depth::Shop);
    assert_eq!(
        blind[0].message,
        "pins 3-8 in bay 1 and free hole \"lock\" are 6.0 apart at hole 5, and one comes through beside the other, at \
         least 10.0; bore it blind, or move one of them"
    );
    assert_eq!(blind[0].place.face, Some(partition(LEFT)));
    assert_eq!(blind[0].place.holes, Some((5, 5)));
    // Both through: once, and not on either face.
    assert_eq!(behind(mm(6), Depth::Through).len(), 1);
    assert!(behind(mm(10), Depth::Shop).is_empty());
    assert!(behind(mm(0), Depth::Shop).is_empty());
}

#[test]
fn a_through_hole_is_near_what_it_comes_out_beside_from_either_face() {
    let from = |hand: Hand| {
        found(Rule::NearMissRows, |case| {
            case.part_in_two();
            case.hole(partition(hand), mm(100), mm(200)).depth = Depth::Through;
            case.hole(partition(hand.other()), mm(104), mm(200));
        })
    };
    assert_eq!((from(LEFT).len(), from(RIGHT).len()), (1, 1));
    let blind = said(Rule::NearMissRows, |case| {
        case.part_in_two();
        case.hole(partition(LEFT), mm(100), mm(200));
        case.hole(partition(RIGHT), mm(104), mm(200));
    });
    assert_eq!(blind, [""; 0]);
}

#[test]
fn single_bores_near_each_other() {
    let holes = |up| {
        said(Rule::NearMissRows, |case| {
            case.hole(left_side(), mm(100), mm(200));
            case.hole(left_side(), mm(106), mm(200) + up);
        })
    };
    assert_eq!(holes(mm(8)), [""; 0]);
    assert_eq!(
        holes(um(7_500)),
        [
            "free hole \"lock\" and free hole \"lock\" are ~9.6 apart at the hole at x 100.0, z 200.0, at least 10.0; \
          move one of them"
        ]
    );
}

#[test]
fn wide_spacing_reaches_the_next_hole_of_a_row_beside() {
    let found = found(Rule::NearMissRows, |case| {
        case.shop().limits.near = mm(40);
        case.row(left_side(), mm(100), 3, 5);
        case.row(left_side(), mm(120), 6, 9);
    });
    // 20 aside and 32 up: 37.7.
    assert_eq!(found[0].place.holes, Some((5, 5)));
    assert!(found[0].message.contains("37.7 apart"));
}
