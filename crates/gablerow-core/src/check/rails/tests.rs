//! Proof of `rails`.

use super::super::fixture::*;
use super::*;
use crate::job::Reference;

/// The plain cabinet, 2368 high, its left front row bored from one hole to another, the rail covering 30.
fn long(case: &mut Case, first: i16, last: i16) {
    case.cabinet().size.height = mm(2_368);
    case.row(FaceId::inside(LEFT), mm(37), first, last);
}

/// 74 holes, a rail of 30 with two overlapped: 3 places, 0.1 and 0.2 of drift, 0.1 * sqrt(2) likely. By hand.
#[test]
fn a_panel_longer_than_the_rail_says_its_places_and_the_drift() {
    let said = said(Rule::RailReIndex, |case| long(case, 1, 74));
    assert_eq!(
        said,
        [
            "the rail covers 30 holes, so a row takes 3 places of it: pins in 29 and 30, then pins in 57 and 58; drift 0.2 at \
             worst, ~0.1 likely"
        ]
    );
    let none = super::super::fixture::said(Rule::RailReIndex, |case| long(case, 1, 30));
    assert_eq!(none, [""; 0]);
}

#[test]
fn offsets_that_the_stop_does_not_have_are_said() {
    let with = |offset| {
        said(Rule::EndStopValue, |case| {
            case.cabinet().offsets.foot = um(offset);
            case.pins(1, 4, 6);
        })
    };
    assert_eq!(with(16_000), [""; 0]);
    assert_eq!(with(32_000), [""; 0]);
    assert_eq!(
        with(16_200),
        ["rows at the foot rest on a stop of 16.2, but that of the rail has 16.0 and 32.0"]
    );
}

/// Depth 800: a row at 380 is beyond 300 from either edge.
#[test]
fn a_row_in_the_middle_of_a_deep_panel_is_beyond_the_arms() {
    let said = said(Rule::ArmReach, |case| {
        case.cabinet().size.depth = mm(800);
        case.row(FaceId::inside(LEFT), mm(380), 3, 5);
    });
    assert_eq!(
        said,
        [
            "a row 380.0 from the front and 420.0 from the back: the arms reach 20.0 to 300.0, with 40.0 of panel beyond"
        ]
    );
}

/// Holes 1 and 70 of a panel of 74 holes, a rail of 30: nothing to pin it in, so 70 comes from the head, where a stop of 25 is asked for.
/// With one stop that is the edge with the head on the left: 523 of a panel 560 deep, where the arms reach 300.
#[test]
fn what_comes_from_the_head_for_a_short_rail_asks_for_a_stop_and_an_arm() {
    let parted = |case: &mut Case| {
        long(case, 1, 1);
        case.row(left_side(), mm(37), 70, 70);
    };
    let stops = said(Rule::EndStopValue, |case| {
        parted(case);
        case.cabinet().size.height = mm(2_377);
        case.cabinet().offsets.head = mm(25);
    });
    assert_eq!(
        stops,
        ["rows at the head rest on a stop of 25.0, but that of the rail has 16.0 and 32.0"]
    );
    let reach = said(Rule::ArmReach, |case| {
        parted(case);
        case.shop().reference = Reference::OneStop;
    });
    assert_eq!(
        reach,
        [
            "a row 37.0 from the front is worked from the back edge, 523.0 away, for only so its foot is on the stop: the arms reach 20.0 \
             to 300.0"
        ]
    );
}

#[test]
fn without_a_rail_nothing_is_asked_of_it() {
    for rule in [Rule::RailReIndex, Rule::EndStopValue, Rule::ArmReach] {
        let said = said(rule, |case| {
            long(case, 1, 74);
            case.cabinet().offsets.foot = um(16_200);
            case.shop().rail = None;
        });
        assert_eq!(said, [""; 0]);
    }
}
