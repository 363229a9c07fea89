//! Proof of `keep_outs`.

use super::super::fixture::*;
use super::*;
use crate::cards::Origin;

/// Height 800, board 18.6: 25 holes a row.
fn tall(case: &mut Case) {
    case.cabinet().size.height = mm(800);
    *case.board() = um(18_600);
    proved(case);
}

/// What hinge and runner need in height stands on their data sheets.
fn proved(case: &mut Case) {
    case.hinge_card().half_zone.origin = Origin::DataSheet;
    case.runner_card().below.origin = Origin::DataSheet;
    case.runner_card().above.origin = Origin::DataSheet;
}

#[test]
fn stop_that_leans_on_a_guess_sends_to_the_data_sheet() {
    let said = said(Rule::PlateOnFixedPanel, |case| {
        case.plate(1, LEFT, 1);
    });
    assert!(said[0].starts_with("check the data sheet: hinge plate on 1-2 needs"));
}

#[test]
fn lowest_plate_sits_on_the_bottom() {
    let said = said(Rule::PlateOnFixedPanel, |case| {
        proved(case);
        case.plate(1, LEFT, 1);
    });
    // Centre 16 + 16 = 32, so 4-60; two holes up it is 36-92.
    assert_eq!(
        said,
        [
            "hinge plate on 1-2 needs 4.0-60.0, the bottom takes 0.0-18.0: 14.0 too much; clear on 2-3"
        ]
    );
}

#[test]
fn plate_between_two_clear_places_of_a_fixed_shelf() {
    let said = said(Rule::PlateOnFixedPanel, |case| {
        proved(case);
        case.fixed_shelf(mm(330));
        case.plate(1, LEFT, 10);
    });
    assert_eq!(
        said,
        [
            "hinge plate on 10-11 in bay 1 needs 292.0-348.0, fixed shelf 1 takes 330.0-348.0: 18.0 too much; \
          clear on 9-10 and on 12-13"
        ]
    );
}

#[test]
fn hinge_that_touches_a_fixed_shelf_is_clear_of_it() {
    let at = |underside| {
        found(Rule::PlateOnFixedPanel, |case| {
            case.fixed_shelf(underside);
            case.plate(1, LEFT, 9);
        })
    };
    // Centre 288, zone up to 316.
    assert!(at(mm(316)).is_empty());
    assert_eq!(at(um(315_999)).len(), 1);
}

#[test]
fn hinge_at_96_bars_holes_2_to_4_to_a_shelf() {
    let on = |hole| {
        said(Rule::ShelfAtHinge, |case| {
            tall(case);
            case.plate(1, LEFT, 3);
            case.shelf(1, hole);
        })
    };
    assert_eq!(
        on(4),
        [
            "shelf on 4 (114.5-133.1) meets hinge plate on 3-4 (68.0-124.0); holes 2-4 are lost to it, or set it back 70.0"
        ]
    );
    assert_eq!(on(5), [""; 0]);
    assert_eq!(on(1), [""; 0]);
}

#[test]
fn shelf_set_back_70_clears_the_hinge() {
    let back = |setback| {
        found(Rule::ShelfAtHinge, |case| {
            case.plate(1, LEFT, 3);
            case.shelf(1, 4).setback_front = setback;
        })
    };
    assert!(back(mm(70)).is_empty());
    assert_eq!(back(um(69_999)).len(), 1);
}

/// Hinges at 96 and 704, a drawer behind the door on a spacer of 18.
fn drawer_behind_door(hole: i16) -> Vec<Finding> {
    found(Rule::InnerDrawerFouls, |case| {
        tall(case);
        case.plate(1, LEFT, 3);
        case.plate(1, LEFT, 22);
        case.runner(1, hole, 450).spacers.left = mm(18);
    })
}

#[test]
fn drawer_behind_a_door_is_barred_from_holes_2_to_4_and_21_to_23() {
    let barred: Vec<i16> = (1..=25)
        .filter(|&hole| !drawer_behind_door(hole).is_empty())
        .collect();
    assert_eq!(barred, [2, 3, 4, 21, 22, 23]);
    assert_eq!(
        drawer_behind_door(4)[0].message,
        "runner on 4 needs 98.0-134.0, hinge plate on 3-4 68.0-124.0: 26.0 too much; clear on 1 and on 5"
    );
}

#[test]
fn runner_zone_may_touch_the_hinge() {
    let below = |below| {
        found(Rule::InnerDrawerFouls, |case| {
            case.runner_card().below.value = below;
            case.plate(1, LEFT, 3);
            case.runner(1, 5, 450);
        })
    };
    // Line at 144, hinge up to 124.
    assert!(below(mm(20)).is_empty());
    assert_eq!(below(um(20_001)).len(), 1);
}

#[test]
fn shelves_that_need_one_space() {
    let shelves = |thickness| {
        said(Rule::KeepOutsMeet, |case| {
            *case.board() = thickness;
            case.shelf(1, 8);
            case.shelf(1, 9);
        })
    };
    assert_eq!(shelves(mm(32)), [""; 0]);
    assert_eq!(shelves(um(32_001)).len(), 1);
    assert_eq!(
        shelves(mm(40)),
        ["shelf on 8 and shelf on 9 need the same space, 8.0 in height; move one of them"]
    );
}

#[test]
fn shelf_against_the_stretcher() {
    let said = said(Rule::KeepOutsMeet, |case| {
        case.shelf(1, 21);
    });
    // Underside 16 + 20 * 32 + 2.5 = 658.5, so up to 676.5; on 22 up to 708.5.
    assert_eq!(said, [""; 0]);
    let said = super::super::fixture::said(Rule::KeepOutsMeet, |case| {
        case.shelf(1, 22);
    });
    assert_eq!(
        said,
        ["shelf on 22 and the stretcher need the same space, 13.5 in height; move one of them"]
    );
}

#[test]
fn shelf_of_either_wall_beside_a_runner() {
    let said = said(Rule::KeepOutsMeet, |case| {
        proved(case);
        case.shelf(1, 6);
        case.runner(1, 6, 450);
    });
    assert_eq!(
        said,
        ["runner on 6 and shelf on 6 need the same space, 18.0 in height; move one of them"]
    );
}

#[test]
fn little_room_is_noted_and_touching_is_not() {
    let shelves = |apart: Length| {
        said(Rule::KeepOutsClose, |case| {
            *case.board() = mm(32) - apart;
            case.shelf(1, 8);
            case.shelf(1, 9);
        })
    };
    assert_eq!(shelves(mm(2)), [""; 0]);
    assert_eq!(
        shelves(um(1_999)),
        ["shelf on 8 and shelf on 9 are ~2.0 apart in height"]
    );
    assert_eq!(shelves(um(1)).len(), 1);
    assert_eq!(shelves(mm(0)), [""; 0]);
}

#[test]
fn parts_of_the_carcass_are_silent_among_each_other() {
    for rule in [Rule::KeepOutsMeet, Rule::KeepOutsClose] {
        let found = found(rule, |case| {
            case.fixed_shelf(mm(10));
        });
        assert!(found.is_empty());
    }
}
