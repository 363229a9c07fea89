//! Proof of `boxes`.

use super::super::fixture::*;
use super::*;
use crate::job::{FrontHeight, Hand, Key, TopKind};

/// What runner cards say stands on their data sheets.
fn proved(case: &mut Case) {
    let card = case.runner_card();
    for made in &mut card.lengths {
        made.need.origin = Origin::DataSheet;
    }
    for value in [&mut card.line, &mut card.deduct] {
        value.origin = Origin::DataSheet;
    }
}

// Geometry: inner depth 520, a rail of 18 leaves 502; the rail from 486 up and the box from 580.
fn before_a_rail(case: &mut Case, rail: i32) {
    proved(case);
    case.cabinet().size.depth = mm(540);
    case.back_rail(mm(rail));
    case.drawer(19, 500);
}

#[test]
fn a_rail_at_the_back_takes_from_the_depth_of_a_box_at_its_height() {
    let said = said(Rule::BoxBehindBlocked, |case| before_a_rail(case, 200));
    assert_eq!(
        said,
        [
            "runner on 19: the back rail at 486.0-686.0 leaves 502.0 of depth, 500.0 long needs 503.0, 1.0 too little; \
            450.0 fits"
        ]
    );
    let found = |need| {
        found(Rule::BoxBehindBlocked, move |case| {
            before_a_rail(case, 200);
            case.runner_card().lengths[5].need.value = need;
        })
        .len()
    };
    assert_eq!((found(mm(502)), found(um(502_001))), (0, 1));
    // Longer than the cabinet is another rule's.
    assert_eq!((found(mm(520)), found(um(520_001))), (1, 0));
}

#[test]
fn a_box_passes_under_a_rail() {
    // From 626 up; the box ends at 580 + 32.
    let found = found(Rule::BoxBehindBlocked, |case| before_a_rail(case, 60));
    assert_eq!(found, []);
}

#[test]
fn set_back_takes_from_the_depth_before_a_rail() {
    let said = said(Rule::BoxBehindBlocked, |case| {
        before_a_rail(case, 200);
        case.cabinet().size.depth = mm(560);
        case.bay(1).runners[0].set_back = 1;
    });
    // 540 - 18 - 32
    assert_eq!(
        said,
        [
            "runner on 19: the back rail at 486.0-686.0 leaves 490.0 of depth, 500.0 long needs 503.0, 13.0 too little; \
            450.0 fits"
        ]
    );
}

#[test]
fn a_guess_of_need_sends_to_the_data_sheet() {
    let said = said(Rule::BoxBehindBlocked, |case| {
        before_a_rail(case, 200);
        case.runner_card().lengths[5].need.origin = Origin::HouseGuess;
    });
    assert!(said[0].starts_with("check the data sheet: runner on 19: the back rail"));
}

// Geometry: front 597 x 701 x 19 of 750, 5.96 kg; box 490 x 522 inside, 640 high of 15 board at 680, 13.21 kg; its bottom
// 537 x 475 x 8, 1.39 kg: 20.56. Of 30 kg 80 % are 24, so 3.436 kg may go in.
#[test]
fn a_drawer_weighs_four_fifths_of_what_its_runners_carry_at_most() {
    let said = |grams| {
        said(Rule::RunnerOverloaded, move |case| {
            case.drawer(2, 500);
            case.cabinet().opening.fronts[0].load_grams = grams;
        })
    };
    assert_eq!(said(None), [""; 0]);
    assert_eq!(said(Some(3_436)), [""; 0]);
    assert_eq!(said(Some(3_437)).len(), 1);
    assert_eq!(
        said(Some(10_000)),
        [
            "check the data sheet: runner on 2: 10.0 kg in a drawer of 20.6 kg is 30.6, 102 % of the 30 kg it carries; \
            80 % is the most"
        ]
    );
}

#[test]
fn a_drawer_behind_a_door_has_no_front_to_carry() {
    let said = said(Rule::RunnerOverloaded, |case| {
        case.drawer(2, 500);
        let inner = &mut case.cabinet().opening.fronts[0];
        (inner.kind, inner.load_grams) = (FrontKind::Inner, Some(10_000));
    });
    assert!(said[0].contains("10.0 kg in a drawer of 14.6 kg is 24.6, 82 % of the 30 kg"));
}

#[test]
fn sides_of_a_box_are_no_thicker_than_their_runners_take() {
    let said = said(Rule::BoxWidth, |case| {
        case.shop().box_board = Some(card("board-18"));
        case.runner(1, 6, 500);
    });
    assert_eq!(
        said,
        [
            "check the data sheet: runner on 6: sides of board-18 are 18.0 thick, but it takes 16.0 at most, 2.0 too much; \
            make boxes of a thinner board"
        ]
    );
    let found = |thick, known: bool| {
        found(Rule::BoxWidth, move |case| {
            case.job.cards.boards[3].thickness.value = thick;
            if !known {
                case.runner_card().side_most = None;
            }
            case.runner(1, 6, 500);
        })
        .len()
    };
    assert_eq!((found(mm(16), true), found(um(16_001), true)), (0, 1));
    assert_eq!(found(mm(30), false), 0);
}

#[test]
fn a_bay_is_wider_than_its_runners() {
    let said = |deduct| {
        said(Rule::BoxWidth, move |case| {
            proved(case);
            case.job.cards.boards[3].thickness.origin = Origin::DataSheet;
            case.runner_card().deduct.value = deduct;
            case.runner(1, 6, 500);
        })
    };
    assert_eq!(said(um(563_999)), [""; 0]);
    assert_eq!(
        said(mm(564)),
        [
            "runner on 6: a bay of 564.0 leaves its box 30.0 over both sides and 0.0 inside; \
            a wider bay has room for one"
        ]
    );
}

// Geometry: hole 21 at 656, box at 644; the stretchers at 686, so 42 with nothing clear, and a box is 8 at least.
#[test]
fn a_box_has_room_of_one_step_under_what_is_above_it() {
    let said = |above| {
        said(Rule::TopBoxBlocked, move |case| {
            proved(case);
            case.drawer(21, 500);
            case.shop().boxes.above = above;
        })
    };
    assert_eq!(said(mm(34)), [""; 0]);
    assert_eq!(said(um(34_001)).len(), 1);
    assert_eq!(
        said(mm(50)),
        [
            "runner on 21: its box stands at 644.0 under the stretcher at 686.0, less 50.0 clear -8.0 is left; \
            the lowest box is 8.0"
        ]
    );
}

#[test]
fn a_box_is_blocked_by_the_next_a_shelf_a_rail_and_the_head_of_its_room() {
    let said = |change: fn(&mut Case)| {
        said(Rule::TopBoxBlocked, |case| {
            proved(case);
            change(case);
        })
    };
    // Boxes at 36 and 68: 32 less 25.
    assert_eq!(
        said(|case| {
            case.drawer(2, 500);
            case.drawer(3, 500);
        }),
        [
            "runner on 2: its box stands at 36.0 under the drawer box on 3 at 68.0, less 25.0 clear 7.0 is left; \
            the lowest box is 8.0"
        ]
    );
    // Shelf 50.5 up.
    assert_eq!(
        said(|case| {
            case.drawer(2, 500);
            case.shelf(1, 2);
        }),
        [
            "runner on 2: its box stands at 36.0 under shelf on 2 at 50.5, less 10.0 clear 4.5 is left; \
            the lowest box is 8.0"
        ]
    );
    assert_eq!(
        said(|case| {
            case.cabinet().size.depth = mm(540);
            case.back_rail(mm(90));
            case.drawer(19, 500);
        }),
        [
            "runner on 19: its box stands at 580.0 under the back rail at 596.0, less 10.0 clear 6.0 is left; \
            the lowest box is 8.0"
        ]
    );
    // A room from the floor at 18 up to 48.
    assert_eq!(
        said(|case| {
            case.drawer(2, 500);
            let inner = &mut case.cabinet().opening.fronts[0];
            inner.kind = FrontKind::Inner;
            inner.height = FrontHeight::Fixed(mm(30));
        }),
        [
            "runner on 2: its box stands at 36.0 under the head of F at 48.0, less 10.0 clear 2.0 is left; \
            the lowest box is 8.0"
        ]
    );
}

#[test]
fn a_blocked_box_is_about_its_runners_and_what_is_above() {
    let found = found(Rule::TopBoxBlocked, |case| {
        case.drawer(2, 500).key = Key(40);
        case.shelf(1, 2).key = Key(41);
    });
    assert_eq!(found[0].about, [Some(Key(40)), Some(Key(41))]);
}

// Geometry: a floor of 18, 15 clear and a line of 12 are 45; hole 2 is at 48.
#[test]
fn the_lowest_box_stands_clear_of_the_floor() {
    let said = |hole, below| {
        said(Rule::BottomBoxLow, move |case| {
            proved(case);
            case.drawer(hole, 500);
            case.shop().boxes.below = below;
        })
    };
    assert_eq!(said(2, mm(18)), [""; 0]);
    assert_eq!(said(2, um(18_001)).len(), 1);
    assert_eq!(
        said(1, mm(15)),
        [
            "runner on 1: with a line of 12.0 and 15.0 clear under its box it is 29.0 too low at 16.0; \
            hole 2 does, and wastes 3.0"
        ]
    );
}

// Geometry: 18.6 and 15 and a line of 24 are 57.6: hole 3 at 80.
#[test]
fn a_higher_line_wastes_more_of_the_grid() {
    let said = said(Rule::BottomBoxLow, |case| {
        case.cabinet().size.height = mm(800);
        *case.board() = um(18_600);
        case.runner_card().line.value = mm(24);
        case.drawer(2, 500);
    });
    assert_eq!(
        said,
        [
            "check the data sheet: runner on 2: with a line of 24.0 and 15.0 clear under its box it is 9.6 too low at 48.0; \
            hole 3 does, and wastes 22.4"
        ]
    );
}

#[test]
fn stretchers_on_edge_take_height_that_flat_ones_leave() {
    let said = |kind| {
        said(Rule::StretcherInBox, move |case| {
            case.cabinet().carcass.top.kind = kind;
            case.drawer(15, 500);
        })
    };
    assert_eq!(said(TopKind::FlatStretchers(mm(100))), [""; 0]);
    assert_eq!(
        said(TopKind::EdgeStretchers(mm(80))),
        [
            "runner on 15: the stretchers on edge take 80.0 of height over its box, 62.0 more than laid flat; \
            turn them"
        ]
    );
    let found = |high| {
        found(Rule::StretcherInBox, move |case| {
            *case.board() = mm(30);
            case.cabinet().carcass.top.kind = TopKind::EdgeStretchers(high);
            case.drawer(15, 500);
        })
        .len()
    };
    assert_eq!((found(mm(30)), found(um(30_001))), (0, 1));
}

#[test]
fn the_drawer_under_another_has_no_stretcher_over_it() {
    let found = found(Rule::StretcherInBox, |case| {
        case.cabinet().carcass.top.kind = TopKind::EdgeStretchers(mm(80));
        case.front_over(1, FrontKind::Door(Hand::Left), SHARE);
        case.drawer(3, 500);
        case.drawer(13, 500);
    });
    let holes: Vec<_> = found.iter().map(|it| it.place.holes).collect();
    assert_eq!(holes, [Some((13, 13))]);
}
