//! Proof of `joint`.

use super::super::fixture::*;
use super::*;
use crate::job::{Fastener, JointBore};

/// An 8 dowel in the middle of the bottom's thickness, in line with the front row.
fn dowel(case: &mut Case) {
    case.cabinet().carcass.bottom.joint.bores.push(JointBore {
        x: mm(37),
        diameter: mm(8),
        depth: Some(mm(12)),
        fastener: Fastener::Dowel,
    });
}

#[test]
fn first_hole_at_16_over_a_bottom_of_17_5() {
    let found = found(Rule::HoleInJoint, |case| {
        *case.board() = um(17_500);
        dowel(case);
        case.pins(1, 1, 8);
    });
    assert_eq!(
        found[0].message,
        "hole 1, disc 13.5-18.5, meets the bottom 0.0-17.5, 1.0 above it, ~0.8 of wood to its dowel; \
         leave it out, or accept it"
    );
    assert_eq!(found[0].place.holes, Some((1, 1)));
}

#[test]
fn end_without_dowels_says_what_is_left_of_it() {
    let said = said(Rule::HoleInJoint, |case| {
        case.pins(1, 20, 22);
    });
    assert_eq!(
        said,
        [
            "hole 22, disc 685.5-690.5, meets the stretcher 686.0-704.0, 0.5 below it, 13.5 of its end left; \
          leave it out, or accept it"
        ]
    );
}

#[test]
fn disc_that_touches_the_zone_stays_out_of_it() {
    // Bottom of 18: a hole of 5 whose centre is at 20.5 touches it.
    let hole = |height| {
        found(Rule::HoleInJoint, |case| {
            case.hole(left_side(), mm(60), height);
        })
    };
    assert!(hole(um(20_500)).is_empty());
    assert_eq!(hole(um(20_499)).len(), 1);
}

#[test]
fn end_on_edge_is_met_by_several_holes_at_once() {
    let found = found(Rule::HoleInJoint, |case| {
        case.cabinet().carcass.top.kind = crate::job::TopKind::EdgeStretchers(mm(100));
        case.row(left_side(), mm(12), 15, 22);
    });
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].place.holes, Some((20, 22)));
}

#[test]
fn bottom_under_the_sides_has_no_end_on_them() {
    let found = found(Rule::HoleInJoint, |case| {
        case.cabinet().carcass.bottom.fit = crate::job::Fit::Across;
        case.pins(1, 1, 3);
    });
    assert!(found.is_empty());
}
