//! Proof of `idle`.

use super::super::fixture::*;
use super::*;
use crate::job::{Front, FrontKind, Hand, Label};
use std::string::String;

fn front(key: u32, kind: FrontKind) -> Front {
    Front::plain(Key(key), Label::new("door 1").unwrap(), kind)
}

const HUNG_LEFT: FrontKind = FrontKind::Door(Hand::Left);

#[test]
fn a_plate_on_the_other_wall_carries_nothing() {
    let said = said(Rule::IdleHardware, |case| {
        case.cabinet().opening.fronts = vec![front(30, HUNG_LEFT)];
        case.plate(1, LEFT, 3);
        case.plate(1, RIGHT, 18);
    });
    assert_eq!(
        said,
        [
            "hinge plate on 18-19 carries nothing: no door hangs on this wall at its height; take it away, or make a front for it"
        ]
    );
}

#[test]
fn a_plate_across_from_one_that_carries_waits_for_the_door() {
    let found = |hole| {
        found(Rule::IdleHardware, |case| {
            case.cabinet().opening.fronts = vec![front(30, HUNG_LEFT)];
            case.plate(1, LEFT, 3);
            case.plate(1, RIGHT, hole);
        })
        .len()
    };
    assert_eq!((found(3), found(4)), (0, 1));
}

#[test]
fn what_was_set_for_a_front_that_is_gone_carries_nothing() {
    let said = said(Rule::IdleHardware, |case| {
        case.plate(1, LEFT, 3).serves = Some(Key(31));
        case.runner(1, 9, 500).serves = Some(Key(31));
    });
    assert_eq!(
        said,
        [
            "hinge plate on 3-4 carries nothing: the door it was set for does not hang on this wall; take it away, or make a front for it",
            "runner on 9 carries nothing: the drawer it was set for is not there; take it away, or make a front for it"
        ]
    );
}

#[test]
fn runners_where_only_a_door_is_carry_nothing() {
    let found = found(Rule::IdleHardware, |case| {
        case.cabinet().opening.fronts = vec![front(30, HUNG_LEFT)];
        case.runner(1, 9, 500);
    });
    let places: Vec<_> = found
        .iter()
        .map(|it| (it.place.face, it.place.holes))
        .collect();
    assert_eq!(places, [(Some(left_side()), Some((9, 9)))]);
}

#[test]
fn what_carries_is_not_idle_nor_is_what_is_set_before_any_front() {
    let carrying = said(Rule::IdleHardware, |case| {
        case.cabinet().opening.fronts = vec![front(30, FrontKind::Pair)];
        case.plate(1, LEFT, 3);
        case.plate(1, RIGHT, 3).serves = Some(Key(30));
    });
    let no_front = said(Rule::IdleHardware, |case| {
        case.plate(1, LEFT, 3);
        case.runner(1, 9, 500);
    });
    assert_eq!([carrying, no_front], [Vec::<String>::new(), Vec::new()]);
}
