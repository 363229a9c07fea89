//! Proof of `sag`.

use super::super::fixture::*;
use super::*;
use crate::cards::{Origin, Sourced};

/// What is said of one shelf of 562 x 526 x 18 that weighs 3.46 kg.
fn sags(change: impl FnOnce(&mut Case)) -> Vec<String> {
    said(Rule::ShelfSags, |case| {
        case.shelf(1, 9);
        change(case);
    })
}

fn load(case: &mut Case, grams: u32) {
    case.bay(1).shelves[0].load_grams = Some(grams);
}

// 5 * 9.81 * (25 + 3.46) * 562^3 / (32 * 1600 * 526 * 18^3) = 1.58, twice that after years; 562 / 200 = 2.81;
// 562 * cbrt(2.81 / 3.155) = 540.7.
// Source of the formula: Wood Handbook FPL-GTR-190, eq. 9-2 to 9-4; of 1 + kdef: EN 1995-1-1, 2.2.3.
#[test]
fn shelf_whose_load_is_not_typed_is_reckoned_with_that_of_the_house() {
    assert_eq!(
        sags(|_| ()),
        [
            "shelf on 9: sags 1.6, 3.2 after years, by 25.0 kg (house guess) + own 3.5; limit 2.8 (L/200); E 1600, creep 2 (house guess); 540.0 long would do"
        ]
    );
}

// 2.81 / 3.1551 * 28.4587 - 3.4587 = 21.887
#[test]
fn sag_after_years_may_be_all_of_the_limit() {
    assert_eq!(sags(|case| load(case, 0)), [""; 0]);
    assert_eq!(sags(|case| load(case, 21_886)), [""; 0]);
    assert_eq!(
        sags(|case| load(case, 21_887)),
        [
            "shelf on 9: sags 1.4, 2.8 after years, by 21.9 kg + own 3.5; limit 2.8 (L/200); E 1600, creep 2 (house guess); 561.0 long would do"
        ]
    );
}

// 900 long: 98.1 * (1.1 + 5.54) * 900^3 / (32 * 1600 * 526 * 18^3) = 3.02, where a two-hundredth would be 4.5.
#[test]
fn long_shelf_keeps_3_mm() {
    let wide = |grams| {
        sags(|case| {
            case.cabinet().size.width = mm(938);
            load(case, grams);
        })
    };
    assert_eq!(wide(1_000), [""; 0]);
    assert_eq!(
        wide(1_100),
        [
            "shelf on 9: sags 1.5, 3.0 after years, by 1.1 kg + own 5.5; limit 3.0; E 1600, creep 2 (house guess); 898.0 long would do"
        ]
    );
}

#[test]
fn each_value_says_where_it_comes_from() {
    assert_eq!(
        sags(|case| {
            let board = &mut case.job.cards.boards[0];
            board.stiffness = Some(Sourced {
                value: 1_100,
                origin: Origin::DataSheet,
            });
            board.creep = Some(Sourced {
                value: 325,
                origin: Origin::Invented,
            });
        }),
        [
            "shelf on 9: sags 2.3, 7.5 after years, by 25.0 kg (house guess) + own 3.5; limit 2.8 (L/200); E 1100 (data sheet), creep 3.25 (invented); 405.0 long would do"
        ]
    );
}

#[test]
fn unknown_stiffness_is_passed_over_and_unknown_creep_only_while_the_sag_at_once_will_do() {
    let without = |stiff: bool, grams| {
        sags(|case| {
            load(case, grams);
            let board = &mut case.job.cards.boards[0];
            board.creep = None;
            board.stiffness = board.stiffness.filter(|_| stiff);
        })
    };
    assert_eq!(without(false, 90_000), [""; 0]);
    assert_eq!(without(true, 25_000), [""; 0]);
    assert_eq!(
        without(true, 90_000),
        [
            "shelf on 9: sags 5.2, more after years, by 90.0 kg + own 3.5; limit 2.8 (L/200); E 1600 (house guess), creep not known; 458.0 long would do"
        ]
    );
}

#[test]
fn finding_is_about_its_shelf_at_its_hole() {
    let found = found(Rule::ShelfSags, |case| {
        case.part_in_two();
        case.shelf(12, 9).load_grams = Some(900_000);
    });
    let [finding] = &found[..] else {
        panic!("{found:?}")
    };
    assert_eq!(finding.place.face, Some(partition(RIGHT)));
    assert_eq!(finding.place.holes, Some((9, 9)));
    assert_eq!(finding.about, [Some(crate::job::Key(13)), None]);
}
