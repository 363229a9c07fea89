//! Proof of `rise`.

use super::super::fixture::*;
use super::*;
use crate::cards::Origin;
use crate::job::{FrontHeight, Key};

/// One drawer over the plain bay, on runners at a hole: its front starts at 1.5, and a hole less the line of 12 is its box.
fn one_drawer(case: &mut Case, hole: i16) {
    case.cabinet().opening.fronts = vec![front(30, FrontKind::Drawer, SHARE)];
    case.runner(1, hole, 500);
    case.runner_card().line.origin = Origin::DataSheet;
}

#[test]
fn a_hole_at_the_foot_of_the_front_has_no_line() {
    let said = |line: i32| {
        said(Rule::RunnerLineIgnored, move |case| {
            one_drawer(case, 1);
            case.runner_card().line.value = mm(line);
        })
    };
    assert_eq!(
        said(12),
        [
            "runner on 1: taken at the foot of F without its line of 12.0; its box stands 2.5 above that, \
            18.0-54.0 above is meant; hole 2 suits it"
        ]
    );
    // At hole 2 the box would stand at 22, 4 over the bottom, and the shop keeps 15 clear.
    assert_eq!(
        said(26),
        [
            "runner on 1: taken at the foot of F without its line of 26.0; its box stands 11.5 below that, \
            18.0-54.0 above is meant; hole 3 suits it"
        ]
    );
}

#[test]
fn a_guessed_line_sends_to_the_data_sheet_and_no_hole_may_suit() {
    let said = said(Rule::RunnerLineIgnored, |case| {
        one_drawer(case, 1);
        let line = &mut case.runner_card().line;
        (line.value, line.origin) = (mm(700), Origin::HouseGuess);
    });
    assert_eq!(
        said,
        [
            "check the data sheet: runner on 1: taken at the foot of F without its line of 700.0; \
            its box stands 685.5 below that, 18.0-54.0 above is meant; no hole suits it"
        ]
    );
}

#[test]
fn a_rise_that_the_shop_has_is_no_line_left_out() {
    let found = |least| {
        found(Rule::RunnerLineIgnored, move |case| {
            one_drawer(case, 1);
            case.shop().boxes.rise_least = least;
        })
        .len()
    };
    assert_eq!((found(um(2_500)), found(um(2_501))), (0, 1));
}

// Geometry: hole 1 at 17 is 16 above a front that starts at 1: half a pitch, and of two holes as near it is the lower.
#[test]
fn half_a_pitch_from_the_foot_is_the_nearest_hole_still() {
    let rules = |foot: Length| {
        [Rule::RunnerLineIgnored, Rule::BoxOffFront].map(|rule| {
            found(rule, move |case| {
                one_drawer(case, 1);
                case.cabinet().offsets.foot = mm(17);
                case.shop().fronts.reveal_foot = foot;
            })
            .len()
        })
    };
    assert_eq!(rules(mm(1)), [1, 0]);
    assert_eq!(rules(um(999)), [0, 1]);
}

#[test]
fn a_box_stands_a_little_above_the_foot_of_its_front() {
    let said = |hole| said(Rule::BoxOffFront, move |case| one_drawer(case, hole));
    assert_eq!(said(1), [""; 0]);
    assert_eq!(said(2), [""; 0]);
    assert_eq!(
        said(3),
        [
            "runner on 3: its box stands 66.5 above the foot of F, but 18.0-54.0 above it is what the shop has; \
            move it, or stand on the front and take what is proposed"
        ]
    );
}

// Geometry: 64 higher, the lowest front takes all of it, and D2 starts at 561.5 where its box stands at 548.
#[test]
fn a_box_below_its_front_is_said_after_the_height_has_changed() {
    let said = |height| {
        said(Rule::BoxOffFront, move |case| {
            case.cabinet().size.height = mm(height);
            let modules = FrontHeight::Modules(11);
            case.cabinet().opening.fronts = vec![
                front(30, FrontKind::Drawer, modules),
                front(31, FrontKind::Drawer, modules),
            ];
            case.runner(1, 2, 500).serves = Some(Key(30));
            case.runner(1, 13, 500).serves = Some(Key(31));
        })
    };
    assert_eq!(said(704), [""; 0]);
    assert_eq!(said(768).len(), 1);
    assert!(said(768)[0].starts_with("runner on 13: its box stands 29.5 below the foot of F"));
}

// Geometry: hole 0 would be at -16, its box 29.5 below the front; what is on no hole is found on no hole.
#[test]
fn runners_below_the_first_hole_are_found_at_their_wall() {
    let found = found(Rule::BoxOffFront, |case| {
        one_drawer(case, 0);
        case.bay(1).runners[0].serves = Some(Key(30));
    });
    let [one] = &found[..] else {
        panic!("one finding");
    };
    assert_eq!((one.place.face, one.place.holes), (Some(left_side()), None));
}

/// Three drawers in a cabinet 800 high, their runners on holes 2, 10 or 11, and 19.
fn three_drawers(case: &mut Case, height: FrontHeight, middle: i16) {
    case.cabinet().size.height = mm(800);
    let drawer = |key| front(key, FrontKind::Drawer, height);
    case.cabinet().opening.fronts = vec![drawer(30), drawer(31), drawer(32)];
    for (hole, key) in [(2, 30), (middle, 31), (19, 32)] {
        case.runner(1, hole, 500).serves = Some(Key(key));
    }
}

// Geometry: of 791 each share is 263.5, the lowest 264; feet 1.5, 268.5, 535 and boxes 36, 292, 580. Of 8 modules, 253, the
// lowest takes what is left, 285; feet 1.5, 289.5, 545.5 and boxes 36, 324, 580.
#[test]
fn equal_fronts_need_a_drilling_each_and_modules_one() {
    let said = |height, middle| {
        said(Rule::FrontsOffGrid, move |case| {
            three_drawers(case, height, middle);
        })
    };
    assert_eq!(said(FrontHeight::Modules(8), 11), [""; 0]);
    assert_eq!(
        said(SHARE, 10),
        [
            "the boxes of bay 1 stand 23.5, 34.5 and 45.0 above the feet of their fronts: 3 drillings; \
            fronts of whole modules need one"
        ]
    );
}

// Geometry: 20 more than whole modules; the lowest front is 20 higher, and the feet above it stand 20 nearer to their boxes.
#[test]
fn what_whole_modules_leave_over_is_in_the_lowest_front() {
    let said = said(Rule::FrontsOffGrid, |case| {
        three_drawers(case, FrontHeight::Modules(8), 11);
        case.cabinet().size.height = mm(820);
    });
    assert_eq!(
        said,
        [
            "the boxes of bay 1 stand 14.5 and 34.5 above the feet of their fronts: 2 drillings; \
            the lowest front has what whole modules leave over"
        ]
    );
}

#[test]
fn distances_a_hair_apart_are_two_drillings() {
    let found = |lowest| {
        found(Rule::FrontsOffGrid, move |case| {
            case.cabinet().opening.fronts = vec![
                front(30, FrontKind::Drawer, FrontHeight::Fixed(lowest)),
                front(31, FrontKind::Drawer, SHARE),
            ];
            case.runner(1, 2, 500).serves = Some(Key(30));
            case.runner(1, 13, 500).serves = Some(Key(31));
        })
    };
    // 11 modules less the gap of 3.
    assert_eq!(found(mm(349)), []);
    let [one] = &found(um(349_001))[..] else {
        panic!("one finding");
    };
    assert_eq!(one.about, [Some(Key(1)), None]);
}

#[test]
fn of_many_distances_the_first_are_listed() {
    let said = said(Rule::FrontsOffGrid, |case| {
        let of = |key| front(key, FrontKind::Drawer, FrontHeight::Fixed(mm(100)));
        case.cabinet().opening.fronts = (30..36).map(of).collect();
        for (key, hole) in (30..36).zip([2, 5, 8, 11, 14, 17]) {
            case.runner(1, hole, 500).serves = Some(Key(key));
        }
    });
    // Fronts of 103 and holes of 96 apart: each box 7 lower behind its front than the one below.
    assert_eq!(
        said,
        [
            "the boxes of bay 1 stand -0.5, 6.5, 13.5, 20.5 and 2 more above the feet of their fronts: 6 drillings; \
            fronts of whole modules need one"
        ]
    );
}
