//! Proof of `runners`.

use super::super::fixture::*;
use super::*;
use crate::cards::Origin;
use crate::job::{Back, Inset};

/// Inner depth 514, needs from data sheets: length and 3.
fn depth_514(case: &mut Case) {
    case.cabinet().size.depth = mm(530);
    case.cabinet().carcass.back = Back::Groove {
        to_front_wall: mm(16),
        cut: mm(8),
    };
    let lengths = &mut case.runner_card().lengths;
    lengths
        .iter_mut()
        .for_each(|length| length.need.origin = Origin::DataSheet);
}

#[test]
fn runner_of_500_fits_514() {
    let found = found(Rule::RunnerTooLong, |case| {
        depth_514(case);
        case.runner(1, 6, 500);
    });
    assert!(found.is_empty());
}

#[test]
fn runner_of_550_does_not() {
    let said = said(Rule::RunnerTooLong, |case| {
        depth_514(case);
        case.runner(1, 6, 550);
    });
    assert_eq!(
        said,
        ["runner on 6: 550.0 long needs 553.0 and has 514.0, 39.0 too little; 500.0 fits"]
    );
}

#[test]
fn need_may_be_all_there_is() {
    let need = |need| {
        found(Rule::RunnerTooLong, |case| {
            depth_514(case);
            case.runner_card().lengths[5].need.value = need;
            case.runner(1, 6, 500);
        })
    };
    assert!(need(mm(514)).is_empty());
    assert_eq!(need(um(514_001)).len(), 1);
}

#[test]
fn inset_front_and_set_back_take_from_the_depth() {
    let said = said(Rule::RunnerTooLong, |case| {
        depth_514(case);
        case.bay(1).inset = Some(Inset {
            front: Some(mm(22)),
            set_in: mm(1),
        });
        case.runner(1, 6, 500).set_back = 1;
    });
    // 514 - 23 - 32
    assert_eq!(
        said,
        ["runner on 6: 500.0 long needs 503.0 and has 459.0, 44.0 too little; 450.0 fits"]
    );
}

#[test]
fn set_back_by_one_pitch_takes_450_in_514() {
    let found = found(Rule::RunnerTooLong, |case| {
        depth_514(case);
        case.runner(1, 6, 450).set_back = 1;
    });
    assert!(found.is_empty());
}

#[test]
fn guessed_need_sends_to_the_data_sheet_and_a_shallow_cabinet_takes_none() {
    let said = said(Rule::RunnerTooLong, |case| {
        case.cabinet().size.depth = mm(260);
        case.runner(1, 6, 250);
    });
    assert_eq!(
        said,
        [
            "check the data sheet: runner on 6: 250.0 long needs 253.0 and has 240.0, 13.0 too little; \
          no length of the card fits"
        ]
    );
}

#[test]
fn runner_flush_with_the_edge() {
    let stand_back = |stand_back| {
        said(Rule::RunnerRowFlush, |case| {
            case.runner_card().stand_back.value = stand_back;
            case.runner(1, 6, 450);
        })
    };
    assert_eq!(stand_back(um(1)), [""; 0]);
    assert_eq!(
        stand_back(mm(0)),
        [
            "check the data sheet: runner on 6: its row is 35.0 + stand-back 0.0 = 35.0, \
          the front will not pull up tight; give the card its stand-back"
        ]
    );
}

/// Runners on hole 6 have screws at 37, 261 and 453; a free row on the left side.
fn with_row(setback: i32, first: i16, last: i16, set_back: u8) -> Vec<String> {
    said(Rule::RunnerRowsWhole, move |case| {
        case.runner(1, 6, 500).set_back = set_back;
        case.row(left_side(), mm(setback), first, last);
    })
}

#[test]
fn a_whole_row_on_the_line_of_screws_is_more_than_runners_need() {
    assert_eq!(
        with_row(261, 1, 22, 0),
        [
            "free row \"cable\": 22 holes where runners need 1; 21 fewer to bore on this face without the row"
        ]
    );
    assert_eq!(with_row(261, 6, 6, 0), [""; 0]);
    assert_eq!(with_row(261, 6, 7, 0).len(), 1);
}

#[test]
fn a_row_that_passes_no_runner_or_stands_elsewhere_is_for_something_else() {
    assert_eq!(with_row(261, 7, 22, 0), [""; 0]);
    assert_eq!(with_row(262, 1, 22, 0), [""; 0]);
    let other_side = said(Rule::RunnerRowsWhole, |case| {
        case.runner(1, 6, 500);
        case.row(left_side().behind(), mm(261), 1, 22);
    });
    assert_eq!(other_side, [""; 0]);
}

#[test]
fn a_whole_front_row_is_more_than_runners_need_that_are_set_back() {
    assert_eq!(
        with_row(37, 1, 22, 1),
        [
            "free row \"cable\": 22 holes where runners need 0; 22 fewer to bore on this face without the row"
        ]
    );
}
