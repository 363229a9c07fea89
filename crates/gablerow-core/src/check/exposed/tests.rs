//! Proof of `exposed`.

use super::super::fixture::*;
use super::*;
use crate::job::{Depth, FaceId};

fn left_outside() -> FaceId {
    left_side().behind()
}

#[test]
fn hole_on_an_outside_that_shows() {
    let on = |exposed| {
        said(Rule::BoredOnShowFace, |case| {
            case.cabinet().carcass.sides.exposed_left = exposed;
            case.row(left_outside(), mm(60), 3, 5);
        })
    };
    assert_eq!(
        on(true),
        [
            "holes 3-5 of free row \"cable\" are on the outside, which shows; \
          bore from the inside, or take the exposed mark off"
        ]
    );
    assert_eq!(on(false), [""; 0]);
}

/// What is said of a zone so deep with the left side exposed, in 18 board.
fn behind(rule: Rule, depth: Depth) -> Vec<String> {
    said(rule, |case| {
        case.cabinet().carcass.sides.exposed_left = true;
        case.shop().limits.skin_flat = mm(1);
        case.pins(1, 3, 8).depth = depth;
    })
}

#[test]
fn behind_a_show_face_3_are_left_whatever_the_bit() {
    assert_eq!(behind(Rule::ExposedEnd, Depth::Blind(mm(15))), [""; 0]);
    assert_eq!(
        behind(Rule::ExposedEnd, Depth::Blind(um(15_001))),
        [
            "holes 3-8 of pins 3-8 are ~15.0 deep, with ~3.0 left behind the outside, which shows, at least 3.0; \
          bore 15.0 at most"
        ]
    );
}

#[test]
fn through_hole_is_seen_from_outside() {
    assert_eq!(
        behind(Rule::ExposedEnd, Depth::Through),
        ["holes 3-8 of pins 3-8 are through to the outside, which shows; bore 15.0 at most"]
    );
}

#[test]
fn one_fault_is_said_by_one_rule() {
    let too_deep = |exposed| {
        found(Rule::DepthBreaksThrough, |case| {
            case.cabinet().carcass.sides.exposed_left = exposed;
            case.cabinet().carcass.sides.exposed_right = exposed;
            case.pins(1, 3, 8).depth = Depth::Blind(mm(16));
        })
    };
    assert!(too_deep(true).is_empty());
    assert!(!too_deep(false).is_empty());
}
