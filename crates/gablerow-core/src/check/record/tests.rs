//! Proof of `record`.

use super::super::fixture::*;
use super::*;
use crate::bench::{Times, bored_by, plan};
use crate::job::{Hand, HolePlace, Key};

/// Pins on 5 to 8 of the plain cabinet, bored as planned on every copy.
fn bored(case: &mut Case) {
    case.pins(1, 5, 8);
    record(case);
}

fn record(case: &mut Case) {
    let cabinet = case.cabinet().key;
    let plan = plan(&case.job, &[cabinet], &Times::default());
    let record = plan.set_ups.iter().flat_map(|it| bored_by(it, &case.job));
    case.job.bored = record.collect();
}

fn shorten(case: &mut Case) {
    case.bay(1).zones[0].last = HolePlace::foot(7);
}

#[test]
fn what_is_bored_as_planned_is_no_finding() {
    for rule in [Rule::SheetOutOfDate, Rule::BackTypeChanged] {
        assert_eq!(said(rule, bored), [""; 0]);
    }
}

#[test]
fn holes_that_are_wanted_no_longer_are_named_for_each_panel() {
    let found = said(Rule::SheetOutOfDate, |case| {
        bored(case);
        shorten(case);
    });
    assert_eq!(
        found,
        ["left", "right"].map(|side| format!(
            "the {side} side of copy 1: 2 holes are on record and wanted no longer; plug what is in the way, and \
             bore by a new sheet"
        ))
    );
}

#[test]
fn one_row_of_them_is_said_by_number() {
    let found = said(Rule::SheetOutOfDate, |case| {
        case.door(1, Hand::Left, 1, &[5]);
        record(case);
        case.bay(1).plates[0].hole = HolePlace::foot(6);
    });
    assert_eq!(
        found,
        [
            "the left side of copy 1: hole 5 37.0 from the front is on record and wanted no longer; plug what is in \
             the way, and bore by a new sheet"
        ]
    );
}

#[test]
fn a_back_row_for_another_back_says_both_setbacks() {
    let change = |case: &mut Case| {
        bored(case);
        case.shop().setback_back = mm(41);
    };
    assert_eq!(
        said(Rule::BackTypeChanged, change),
        ["left", "right"].map(|side| format!(
            "the {side} side of copy 1: 4 holes of the back row bored 503.0 from the front edge, which is 499.0 now; bore \
             again, or keep the old back"
        ))
    );
    assert_eq!(said(Rule::SheetOutOfDate, change), [""; 0]);
}

#[test]
fn a_mirrored_copy_is_held_against_its_own_sides() {
    let mirrored = |case: &mut Case| {
        case.cabinet().copies[0].mirrored = true;
        case.door(1, Hand::Left, 1, &[5]);
        record(case);
    };
    assert_eq!(said(Rule::SheetOutOfDate, mirrored), [""; 0]);
    let found = said(Rule::SheetOutOfDate, |case| {
        mirrored(case);
        case.bay(1).plates[0].hole = HolePlace::foot(9);
    });
    assert!(
        found[0].starts_with("the right side of copy 1: holes 5, 6"),
        "{found:?}"
    );
}

#[test]
fn the_record_of_another_cabinet_is_none_of_this_one() {
    let found = said(Rule::SheetOutOfDate, |case| {
        bored(case);
        shorten(case);
        case.job
            .bored
            .iter_mut()
            .for_each(|it| it.cabinet = Key(90));
    });
    assert_eq!(found, [""; 0]);
}

/// A runner's third hole is behind the middle, and its number is one of the pins that come instead: no back row was bored there.
#[test]
fn a_runner_that_gave_way_to_pins_is_no_back_row() {
    let change = |case: &mut Case| {
        case.runner(1, 8, 500);
        record(case);
        case.bay(1).runners.clear();
        case.pins(1, 6, 10);
    };
    assert_eq!(said(Rule::BackTypeChanged, change), [""; 0]);
    let gone = said(Rule::SheetOutOfDate, change);
    assert!(
        gone.len() == 2 && gone.iter().all(|it| it.contains("wanted no longer")),
        "{gone:?}"
    );
}
