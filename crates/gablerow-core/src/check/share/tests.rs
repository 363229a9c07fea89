//! Proof of `share`.

use super::super::fixture::*;
use super::*;
use crate::layout::Use;

#[test]
fn plate_in_a_zone_is_named_with_its_holes() {
    let found = found(Rule::PlateOnPinHole, |case| {
        case.pins(1, 1, 8);
        case.plate(1, LEFT, 3);
    });
    assert_eq!(
        found[0].message,
        "pins 1-8 and hinge plate on 3-4 want the same holes 3-4; move the plate, or end the pins short of it"
    );
    assert_eq!((found.len(), found[0].place.face), (1, Some(left_side())));
}

#[test]
fn zone_that_passes_a_drawer_takes_its_hole() {
    let said = said(Rule::PinAndRunnerShare, |case| {
        case.pins(1, 4, 9);
        case.runner(1, 6, 500);
    });
    assert_eq!(
        said,
        [
            "pins 4-9 and runner on 6 want the same hole 6; end the pins short of it, or move the runner"
        ]
    );
}

#[test]
fn zone_that_ends_below_shares_nothing() {
    for rule in [
        Rule::PlateOnPinHole,
        Rule::PinAndRunnerShare,
        Rule::SharedHole,
    ] {
        let found = found(rule, |case| {
            case.pins(1, 2, 4);
            case.plate(1, LEFT, 5);
            case.runner(1, 7, 500);
        });
        assert!(found.is_empty());
    }
}

#[test]
fn shelf_and_zone_of_one_bay_share_their_pins() {
    let found = found(Rule::SharedHole, |case| {
        case.pins(1, 4, 9);
        case.shelf(1, 6);
    });
    assert!(found.is_empty());
}

#[test]
fn zones_of_two_bays_on_one_wall_do_not_share() {
    let said = said(Rule::SharedHole, |case| {
        case.fixed_shelf(mm(330));
        case.pins(1, 4, 13);
        case.pins(12, 13, 18);
    });
    assert_eq!(
        said,
        ["pins 4-13 in bay 1 and pins 13-18 in bay 2 want the same hole 13; move one of them"]
    );
}

#[test]
fn rows_of_one_runner_on_another_are_said_once_a_face() {
    let found = found(Rule::SharedHole, |case| {
        case.runner(1, 6, 500);
        case.runner(1, 6, 500);
    });
    assert_eq!(found.len(), 2);
    assert_eq!(
        found[0].message,
        "runner on 6 and runner on 6 want the same hole 6; move one of them"
    );
}

#[test]
fn single_bore_shares_a_hole_of_a_row_only_at_its_very_centre() {
    let hole = |height| {
        said(Rule::SharedHole, |case| {
            case.pins(1, 4, 9);
            case.hole(left_side(), mm(37), height);
        })
    };
    assert_eq!(
        hole(mm(16 + 4 * 32)),
        ["pins 4-9 and free hole \"lock\" want the same hole 5; move one of them"]
    );
    assert_eq!(hole(um(144_001)), [""; 0]);
}

#[test]
fn only_pins_of_one_bay_share() {
    let spec = |use_, owner, bay| BoreSpec {
        use_,
        owner: crate::job::Key(owner),
        bay: Some(crate::job::Key(bay)),
        diameter: mm(5),
        depth: None,
        pen: mm(8),
        pen_unproved: false,
    };
    for a in Use::ALL {
        for b in Use::ALL {
            let (one, other, away) = (spec(a, 1, 1), spec(b, 2, 1), spec(b, 2, 9));
            let both_pins = (a, b) == (Use::Pin, Use::Pin);
            assert_eq!(broken(&one, &other).is_none(), both_pins, "{a:?} {b:?}");
            assert_eq!(broken(&one, &other), broken(&other, &one));
            assert!(broken(&one, &away).is_some());
            assert_eq!(broken(&one, &spec(b, 1, 1)), None);
        }
    }
}
