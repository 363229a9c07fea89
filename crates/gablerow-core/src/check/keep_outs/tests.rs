//! Proof of `keep_outs`.

use super::super::fixture::*;
use super::*;
use crate::cards::Origin;
use crate::job::FrontKind;

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

/// A drawer behind a door that is hung on the left, on plates at holes 3 and 19, with packing on the left.
fn behind_door(packing: Length, change: fn(&mut Case)) -> Vec<String> {
    said(Rule::InnerDrawerFouls, move |case| {
        proved(case);
        let card = case.hinge_card();
        for value in [&mut card.proud, &mut card.intrusion] {
            value.origin = Origin::DataSheet;
        }
        case.runner_card().deduct.origin = Origin::DataSheet;
        let door = case.front_over(1, FrontKind::Door(LEFT), SHARE);
        case.plate(1, LEFT, 3).serves = Some(door);
        case.plate(1, LEFT, 19).serves = Some(door);
        let inner = case.front_over(1, FrontKind::Inner, SHARE);
        let runner = case.runner(1, 5, 450);
        (runner.serves, runner.spacers.left) = (Some(inner), packing);
        change(case);
    })
}

// Geometry: the box stands 21 - 15 beyond its packing, from 132 up past the hinge at 580-636.
#[test]
fn drawer_behind_a_door_passes_its_hinges_and_the_open_door() {
    assert_eq!(
        behind_door(mm(0), |_| ()),
        [
            "runner on 5 stands 0.0 off the wall, open door F needs 15.0 and 3.0 clear of it: 18.0 too little; \
            pack it out",
            "drawer box on 5 stands 6.0 off the wall, hinge plate on 19-20 needs 15.0 and 3.0 clear of it: 12.0 too little; \
            pack it out",
        ]
    );
    assert_eq!(behind_door(mm(18), |_| ()), [""; 0]);
}

#[test]
fn three_millimetres_clear_of_the_open_door_are_enough() {
    let past = |packing| behind_door(packing, |case| case.hinge_card().proud.value = mm(0));
    assert_eq!(past(mm(18)), [""; 0]);
    assert_eq!(past(um(17_999)).len(), 1);
}

#[test]
fn three_millimetres_clear_of_the_hinge_are_enough() {
    let beside = |packing| behind_door(packing, |case| case.hinge_card().intrusion.value = mm(8));
    assert_eq!(beside(mm(12)), [""; 0]);
    assert_eq!(beside(um(11_999)).len(), 1);
}

#[test]
fn set_back_drawers_pass_the_open_door_too() {
    let said = behind_door(mm(12), |case| {
        // Beyond the reach of the hinge.
        case.bay(1).runners[0].set_back = 3;
        case.bay(1).runners[0].length = mm(400);
    });
    assert_eq!(
        said,
        [
            "runner on 5 stands 12.0 off the wall, open door F needs 15.0 and 3.0 clear of it: 6.0 too little; pack it out"
        ]
    );
}

#[test]
fn guesses_of_what_stands_in_send_to_the_data_sheet() {
    let said = behind_door(mm(0), |case| {
        case.hinge_card().proud.origin = Origin::HouseGuess;
        case.hinge_card().intrusion.origin = Origin::HouseGuess;
    });
    assert_eq!(said.len(), 2);
    let doubted = |it: &String| it.starts_with("check the data sheet: ");
    assert!(said.iter().all(doubted));
}

#[test]
fn doors_that_stand_open_are_in_the_way_of_no_shelf() {
    for rule in [Rule::KeepOutsMeet, Rule::KeepOutsClose, Rule::ShelfAtHinge] {
        let found = found(rule, |case| {
            case.front_over(1, FrontKind::Door(LEFT), SHARE);
            case.shelf(1, 8);
        });
        assert_eq!(found, []);
    }
}

// Geometry: runners on hole 6 whose own zone ends above 166, their box at 164; the shelf on 5 is 146.5 up.
#[test]
fn loose_shelf_that_crosses_a_drawer_box() {
    let crossing = |thickness| {
        said(Rule::KeepOutsMeet, |case| {
            proved(case);
            *case.board() = thickness;
            case.runner_card().below.value = mm(10);
            case.drawer(6, 500);
            case.shelf(1, 5);
        })
    };
    assert_eq!(
        crossing(mm(18)),
        ["drawer box on 6 and shelf on 5 need the same space, 0.5 in height; move one of them"]
    );
    assert_eq!(crossing(um(17_500)), [""; 0]);
    assert_eq!(crossing(um(17_501)).len(), 1);
}

#[test]
fn a_box_is_silent_where_its_runners_are_in_the_way_already() {
    let said = said(Rule::KeepOutsMeet, |case| {
        proved(case);
        case.drawer(6, 500);
        case.shelf(1, 5);
    });
    assert_eq!(
        said,
        ["runner on 6 and shelf on 5 need the same space, 2.5 in height; move one of them"]
    );
}

// Geometry: hole 2 at 48 less a line of 36 is 12, and the bottom ends at 18.
#[test]
fn drawer_box_in_the_bottom() {
    let with = |line| {
        said(Rule::KeepOutsMeet, |case| {
            proved(case);
            case.runner_card().below.value = mm(0);
            case.runner_card().line.value = line;
            case.drawer(2, 500);
        })
    };
    assert_eq!(
        with(mm(36)),
        ["drawer box on 2 and the bottom need the same space, 6.0 in height; move one of them"]
    );
    assert_eq!(with(mm(30)), [""; 0]);
    assert_eq!(with(um(30_001)).len(), 1);
}

// Geometry: 1 above the bottom.
#[test]
fn drawer_box_close_to_the_bottom() {
    let said = said(Rule::KeepOutsClose, |case| {
        case.runner_card().below.value = mm(0);
        case.runner_card().line.value = mm(29);
        case.drawer(2, 500);
    });
    assert_eq!(
        said,
        ["drawer box on 2 and the bottom are 1.0 apart in height"]
    );
}

// Geometry: both boxes from 164 up, the lower one to 10 under the head of its front at 350; their runners have no zone of
// their own here.
#[test]
fn two_drawer_boxes_on_one_hole() {
    let said = said(Rule::KeepOutsMeet, |case| {
        proved(case);
        (
            case.runner_card().below.value,
            case.runner_card().above.value,
        ) = (mm(0), mm(0));
        case.drawer(6, 500);
        case.drawer(6, 500);
    });
    assert_eq!(
        said,
        [
            "drawer box on 6 and drawer box on 6 need the same space, 176.0 in height; move one of them"
        ]
    );
}

#[test]
fn drawer_box_before_a_rail_is_said_by_its_own_rule_alone() {
    let found = |rule| {
        found(rule, |case| {
            case.cabinet().size.depth = mm(540);
            case.runner_card().lengths[5].need.value = mm(503);
            case.back_rail(mm(200));
            case.drawer(19, 500);
        })
        .len()
    };
    assert_eq!(
        (found(Rule::BoxBehindBlocked), found(Rule::KeepOutsMeet)),
        (1, 0)
    );
}
