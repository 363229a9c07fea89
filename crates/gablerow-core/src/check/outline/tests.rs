//! Proof of `outline`.

use super::super::fixture::*;
use super::*;
use crate::job::{Edge, HolePlace, Notch};

#[test]
fn zone_of_a_cabinet_that_became_shorter() {
    let found = found(Rule::HoleOffPanel, |case| {
        case.pins(1, 12, 30);
    });
    assert_eq!(
        found[0].message,
        "pins 12-30: there is no hole 30, the grid ends at hole 22; bring it 8 down"
    );
    assert_eq!((found.len(), found[0].place.holes), (2, Some((30, 30))));
}

#[test]
fn hole_counted_below_the_grid() {
    let said = said(Rule::HoleOffPanel, |case| {
        case.pins(1, 1, 8).first = HolePlace::head(24);
    });
    assert_eq!(
        said,
        ["pins -1-8: there is no hole -1, the grid begins at hole 1; bring it 2 up"]
    );
}

#[test]
fn partition_on_the_bottom_has_no_hole_1() {
    let said = said(Rule::HoleOffPanel, |case| {
        case.part_in_two();
        case.pins(1, 1, 8);
    });
    assert_eq!(
        said,
        ["hole 1 of pins 1-8 in bay 1 is 2.0 below the foot; start at hole 2"]
    );
}

#[test]
fn recessed_partition_lacks_the_front_row() {
    let said = said(Rule::HoleOffPanel, |case| {
        case.part_in_two().recess = mm(40);
        case.plate(1, RIGHT, 5);
    });
    assert_eq!(
        said,
        ["holes 5-6 of hinge plate on 5-6 in bay 1 are 3.0 before the front edge; move 13.0 back"]
    );
}

#[test]
fn free_row_of_a_partition_that_is_gone() {
    let said = said(Rule::HoleOffPanel, |case| {
        case.row(partition(LEFT), mm(60), 3, 5);
    });
    assert_eq!(
        said,
        ["free row \"cable\" is on a partition that is not there; move it, or take it out"]
    );
}

/// What is said of one free hole on the left side.
fn hole_at(rule: Rule, setback: Length, height: Length) -> Vec<String> {
    said(rule, |case| {
        case.hole(left_side(), setback, height);
    })
}

#[test]
fn centre_on_the_edge_is_on_the_panel() {
    for (setback, height) in [
        (mm(0), mm(100)),
        (mm(560), mm(100)),
        (mm(60), mm(0)),
        (mm(60), mm(704)),
    ] {
        assert_eq!(hole_at(Rule::HoleOffPanel, setback, height), [""; 0]);
    }
    for (setback, height, by) in [
        (
            um(560_001),
            mm(100),
            "~0.0 behind the back edge; move ~10.0 forward",
        ),
        (mm(60), um(-1), "~0.0 below the foot; move ~8.0 up"),
        (mm(60), um(704_001), "~0.0 above the head; move ~8.0 down"),
    ] {
        assert_eq!(
            hole_at(Rule::HoleOffPanel, setback, height),
            [format!("free hole \"lock\" is {by}")]
        );
    }
}

#[test]
fn least_distance_to_ends_and_edges_is_allowed() {
    for (setback, height) in [(mm(10), mm(100)), (mm(60), mm(8)), (mm(60), mm(696))] {
        assert_eq!(hole_at(Rule::HoleNearEdge, setback, height), [""; 0]);
    }
    for (setback, height, said) in [
        (
            um(9_999),
            mm(100),
            "~10.0 from the front edge, at least 10.0; move ~0.0 back",
        ),
        (
            mm(60),
            um(7_999),
            "~8.0 from the foot, at least 8.0; move ~0.0 up",
        ),
        (
            mm(60),
            um(696_001),
            "~8.0 from the head, at least 8.0; move ~0.0 down",
        ),
    ] {
        assert_eq!(
            hole_at(Rule::HoleNearEdge, setback, height),
            [format!("free hole \"lock\" is {said}")]
        );
    }
}

#[test]
fn partition_too_near_to_its_own_back_edge() {
    let setback = |setback| {
        said(Rule::HoleNearEdge, |case| {
            case.part_in_two();
            case.row(partition(LEFT), setback, 3, 5).edge = Edge::Back;
        })
    };
    assert_eq!(setback(mm(10)), [""; 0]);
    assert_eq!(
        setback(um(9_500)),
        [
            "holes 3-5 of free row \"cable\" are 9.5 from the back edge, at least 10.0; move 0.5 forward"
        ]
    );
}

#[test]
fn head_of_a_partition_ends_a_run_lower() {
    let said = said(Rule::HoleNearEdge, |case| {
        case.part_in_two().head.housing = mm(5);
        case.pins(1, 18, 22);
    });
    assert_eq!(
        said,
        ["hole 22 of pins 18-22 in bay 1 is 3.0 from the head, at least 8.0; end at hole 21"]
    );
}

/// Notch 90 high and 55 deep: the front row is free from 100 up. Grid 16 + 32k: hole 3 at 80, hole 4 at 112.
fn notched(case: &mut Case) {
    case.cabinet().carcass.sides.notch = Some(Notch {
        height: mm(90),
        depth: mm(55),
    });
}

#[test]
fn front_row_over_a_toe_notch() {
    let found = found(Rule::ToeNotchEatsRow, |case| {
        notched(case);
        case.pins(1, 1, 8);
    });
    assert_eq!(
        found[0].message,
        "holes 1-3 of pins 1-8 are in the toe notch, 55.0 deep and 90.0 high, or under 10.0 from it; start at hole 4"
    );
    assert_eq!(found[0].place.holes, Some((1, 3)));
}

#[test]
fn row_over_a_notch_is_free_from_100_up() {
    let hole = |setback, height| {
        said(Rule::ToeNotchEatsRow, |case| {
            notched(case);
            case.hole(left_side(), setback, height);
        })
    };
    assert_eq!(hole(mm(37), mm(100)), [""; 0]);
    assert_eq!(hole(mm(37), um(99_999)).len(), 1);
    assert_eq!(hole(mm(65), mm(50)), [""; 0]);
    assert_eq!(
        hole(um(64_999), mm(50)),
        [
            "free hole \"lock\" is in the toe notch, 55.0 deep and 90.0 high, or under 10.0 from it; move 50.0 up"
        ]
    );
    // Off the corner by 6 and 8 it is 10 away.
    assert_eq!(hole(mm(61), mm(98)), [""; 0]);
    assert_eq!(hole(mm(61), um(97_999)).len(), 1);
}

#[test]
fn groove_16_from_the_back_edge_with_the_row_20_from_it() {
    let row = |to_edge| {
        said(Rule::BackRowInGroove, |case| {
            case.cabinet().carcass.back = Back::Groove {
                to_front_wall: mm(16),
                cut: mm(8),
            };
            case.row(left_side(), to_edge, 3, 5).edge = Edge::Back;
        })
    };
    assert_eq!(row(mm(21)), [""; 0]);
    assert_eq!(row(um(20_999)).len(), 1);
    assert_eq!(
        row(mm(20)),
        [
            "holes 3-5 of free row \"cable\" are 20.0 from the back edge, the groove takes 16.0: \
          4.0 left, at least 5.0; move 1.0 forward"
        ]
    );
    assert_eq!(
        row(mm(12)),
        [
            "holes 3-5 of free row \"cable\" are 12.0 from the back edge, the groove takes 16.0: \
          4.0 inside it; move 9.0 forward"
        ]
    );
}

#[test]
fn planted_back_takes_nothing() {
    let row = |rule| {
        said(rule, |case| {
            case.cabinet().carcass.back = Back::Planted;
            case.row(left_side(), mm(7), 3, 3).edge = Edge::Back;
        })
    };
    assert_eq!(row(Rule::BackRowInGroove), [""; 0]);
    assert_eq!(
        row(Rule::HoleNearEdge),
        ["hole 3 of free row \"cable\" is 7.0 from the back edge, at least 10.0; move 3.0 forward"]
    );
}
