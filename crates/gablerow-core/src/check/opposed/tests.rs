//! Proof of `opposed`.

use super::super::fixture::*;
use super::*;
use crate::cards::Origin;
use crate::job::{Depth, FreeHole};

/// Zones so deep on both faces of a partition of 16 board.
fn pins_opposed(left: Depth, right: Depth) -> impl Fn(&mut Case) {
    move |case| {
        *case.board() = mm(16);
        case.part_in_two();
        case.pins(1, 3, 8).depth = left;
        case.pins(12, 5, 10).depth = right;
    }
}

fn blind(depth: Length) -> Depth {
    Depth::Blind(depth)
}

#[test]
fn two_holes_of_9_in_16_board() {
    let found = found(
        Rule::OpposedHolesMeet,
        pins_opposed(blind(mm(9)), blind(mm(9))),
    );
    assert_eq!(
        found[0].message,
        "pins 3-8 in bay 1 and pins 5-10 in bay 2 are back to back at holes 5-8: \
         9.0 + 9.0 deep leave 0.0 of 16.0, at least 1.0; they need 8.5 and 8.5, so shift one"
    );
    assert_eq!(
        (found[0].place.face, found[0].place.holes),
        (Some(partition(LEFT)), Some((5, 8)))
    );
}

#[test]
fn depths_are_advised_that_what_goes_in_can_take() {
    let advised = |left, right| {
        let said = said(Rule::OpposedHolesMeet, |case| {
            *case.board() = mm(18);
            case.pin_card().pen.value = left;
            case.hinge_card().pen.value = right;
            case.part_in_two();
            case.pins(1, 3, 6).depth = blind(mm(12));
            case.plate(12, LEFT, 3);
        });
        let (_, cure) = said[0].split_once("; ").unwrap();
        cure.to_string()
    };
    assert_eq!(advised(mm(8), mm(8)), "8.5 each at most, or shift one");
    assert_eq!(advised(mm(6), mm(10)), "6.5 and 10.5 do, or shift one");
    assert_eq!(advised(mm(10), mm(6)), "10.5 and 6.5 do, or shift one");
    assert_eq!(advised(mm(5), mm(9)), "7.5 and 9.5 do, or shift one");
    assert_eq!(
        advised(um(6_001), mm(10)),
        "they need ~6.5 and 10.5, so shift one"
    );
}

#[test]
fn a_hole_two_share_is_as_deep_as_the_more_demanding_needs() {
    let found = found(Rule::OpposedHolesMeet, |case| {
        *case.board() = mm(18);
        case.pin_card().pen.value = mm(5);
        case.hinge_card().pen.value = mm(10);
        case.part_in_two();
        case.pins(1, 3, 3).depth = blind(mm(12));
        case.pins(12, 3, 3).depth = blind(mm(12));
        case.plate(12, LEFT, 3);
    });
    // The plate takes holes of the front row alone.
    let front = found.iter().filter_map(|it| it.place.row).min();
    let (front, back): (Vec<_>, Vec<_>) = found.iter().partition(|it| it.place.row == front);
    assert_eq!(
        (front.len(), back.len()),
        (2, 1),
        "pins and pins, pins and plate"
    );
    let cure = |finding: &&Finding, cure: &str| finding.message.ends_with(cure);
    assert!(
        front
            .iter()
            .all(|it| cure(it, "; 6.5 and 10.5 do, or shift one"))
    );
    assert!(
        back.iter()
            .all(|it| cure(it, "; 8.5 each at most, or shift one"))
    );
}

#[test]
fn web_of_1_is_allowed() {
    let found = |depth| {
        found(
            Rule::OpposedHolesMeet,
            pins_opposed(blind(um(7_500)), blind(depth)),
        )
    };
    assert!(found(um(7_500)).is_empty());
    assert!(!found(um(7_501)).is_empty());
}

#[test]
fn through_hole_has_no_web() {
    assert!(
        found(
            Rule::OpposedHolesMeet,
            pins_opposed(Depth::Through, blind(mm(9)))
        )
        .is_empty()
    );
}

#[test]
fn discs_that_only_overlap_meet_too() {
    let apart = |apart| {
        found(Rule::OpposedHolesMeet, |case| {
            case.part_in_two();
            case.hole(partition(LEFT), mm(100), mm(200));
            case.hole(partition(RIGHT), mm(100) + apart, mm(200));
        })
    };
    assert!(apart(mm(5)).is_empty());
    assert_eq!(apart(um(4_999)).len(), 1);
}

/// Board 18.6; pins go in 7.5, screws 11, both from data sheets.
fn measured(case: &mut Case) {
    *case.board() = um(18_600);
    case.hinge_card().pen.value = mm(11);
    case.hinge_card().pen.origin = Origin::DataSheet;
    case.pin_card().pen.value = um(7_500);
    case.pin_card().pen.origin = Origin::DataSheet;
    case.part_in_two();
}

#[test]
fn screw_opposite_screw_is_22_over_18_1() {
    let said = said(Rule::OpposedPlates, |case| {
        measured(case);
        case.plate(1, RIGHT, 5);
        case.plate(12, LEFT, 6);
    });
    assert_eq!(
        said,
        [
            "hinge plate on 5-6 in bay 1 and hinge plate on 6-7 in bay 2 are back to back at hole 6: \
          11.0 + 11.0 go in, 18.6 takes 18.1; stagger them by 2 holes"
        ]
    );
}

// Geometry: 11 and 11 go in; board of 22.5 takes 22.
#[test]
fn plates_that_share_a_hole_need_board_for_both_screws() {
    let found = |board, lower| {
        found(Rule::OpposedPlates, |case| {
            measured(case);
            *case.board() = board;
            case.plate(1, RIGHT, 5);
            case.plate(12, LEFT, lower);
        })
        .len()
    };
    assert_eq!((found(um(22_500), 5), found(um(22_499), 5)), (0, 1));
    assert_eq!((found(mm(18), 6), found(mm(18), 7)), (1, 0), "by 2 holes");
}

#[test]
fn screw_opposite_pin_is_18_5_over_18_1() {
    let said = said(Rule::OpposedFastenersMeet, |case| {
        measured(case);
        case.plate(1, RIGHT, 5);
        case.pins(12, 5, 8);
    });
    assert_eq!(
        said,
        [
            "hinge plate on 5-6 in bay 1 and pins 5-8 in bay 2 are back to back at holes 5-6: \
          11.0 + 7.5 go in, 18.6 takes 18.1; move one of them"
        ]
    );
}

#[test]
fn pins_opposite_pins_pass_in_18_6_and_plates_staggered_by_2() {
    let found = found(Rule::OpposedFastenersMeet, |case| {
        measured(case);
        case.pins(1, 9, 12);
        case.pins(12, 9, 12);
        case.plate(1, RIGHT, 4);
        case.plate(12, LEFT, 6);
    });
    assert!(found.is_empty());
}

#[test]
fn fasteners_leave_half_a_millimetre() {
    let pins = |pen| {
        found(Rule::OpposedFastenersMeet, |case| {
            measured(case);
            case.pin_card().pen.value = pen;
            case.pins(1, 9, 12);
            case.pins(12, 9, 12);
        })
    };
    assert!(pins(um(9_050)).is_empty());
    assert_eq!(pins(um(9_051)).len(), 1);
}

#[test]
fn through_hole_only_one_bay_asks_for() {
    let said = |other: Option<i16>| {
        said(Rule::ThroughIntoFreeBay, |case| {
            case.part_in_two();
            case.pins(1, 3, 8).depth = Depth::Through;
            if let Some(last) = other {
                case.pins(12, 3, last);
            }
        })
    };
    assert_eq!(
        said(None),
        [
            "holes 3-8 of pins 3-8 in bay 1 come out in bay 2, which has no use there; bore 15.0 at most"
        ]
    );
    assert_eq!(
        said(Some(7)),
        [
            "hole 8 of pins 3-8 in bay 1 comes out in bay 2, which has no use there; bore 15.0 at most"
        ]
    );
    assert_eq!(said(Some(8)), [""; 0]);
}

#[test]
fn through_hole_beside_the_bottom_is_seen_by_no_bay() {
    let hole = |height| {
        found(Rule::ThroughIntoFreeBay, |case| {
            let outside = left_side().behind();
            let hole: &mut FreeHole = case.hole(outside, mm(60), height);
            hole.depth = Depth::Through;
        })
    };
    assert!(hole(um(17_999)).is_empty());
    assert_eq!(hole(mm(18)).len(), 1);
}

#[test]
fn blind_holes_of_8_back_to_back_in_18_6_board_are_fine() {
    let found = found(Rule::OpposedHolesMeet, |case| {
        measured(case);
        case.pins(1, 9, 12).depth = blind(mm(8));
        case.pins(12, 9, 12).depth = blind(mm(8));
    });
    assert!(found.is_empty());
}
