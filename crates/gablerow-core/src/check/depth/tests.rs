//! Proof of `depth`.

use super::super::fixture::*;
use super::*;
use crate::cards::Origin;
use crate::job::Depth;

/// A plate whose screw goes in 11, as its data sheet says, in holes so deep.
fn screw_11(depth: Length) -> Vec<String> {
    said(Rule::DepthShortForScrew, |case| {
        case.shop().depth = depth;
        case.hinge_card().pen.value = mm(11);
        case.hinge_card().pen.origin = Origin::DataSheet;
        case.plate(1, LEFT, 3);
    })
}

#[test]
fn depth_10_serves_no_screw_of_11() {
    assert_eq!(
        screw_11(mm(10)),
        [
            "holes 3-4 of hinge plate on 3-4 are 10.0 deep, the screw goes in 11.0 and needs 11.5; bore 11.5"
        ]
    );
    assert_eq!(screw_11(um(11_500)), [""; 0]);
    assert_eq!(screw_11(um(11_499)).len(), 1);
}

#[test]
fn depth_10_serves_a_pin_of_7_5() {
    let found = found(Rule::DepthShortForScrew, |case| {
        case.shop().depth = mm(10);
        case.pin_card().pen.value = um(7_500);
        case.pins(1, 3, 8);
    });
    assert!(found.is_empty());
}

#[test]
fn house_guess_sends_to_the_data_sheet() {
    let said = said(Rule::DepthShortForScrew, |case| {
        case.pins(1, 3, 8).depth = Depth::Blind(mm(8));
    });
    assert_eq!(
        said,
        [
            "check the data sheet: holes 3-8 of pins 3-8 are 8.0 deep, the pin goes in 8.0 and needs 8.5; bore 8.5"
        ]
    );
}

#[test]
fn screw_longer_than_the_board_takes() {
    let said = said(Rule::DepthShortForScrew, |case| {
        case.runner_card().pen.value = mm(15);
        case.runner(1, 6, 500);
    });
    assert_eq!(
        said,
        [
            "check the data sheet: hole 6 of runner on 6 is 12.0 deep, the screw goes in 15.0 and needs 15.5; \
          the board takes 15.0, so use a shorter screw"
        ]
    );
}

#[test]
fn hole_that_is_shared_is_as_deep_as_the_deeper_asks() {
    let found = found(Rule::DepthShortForScrew, |case| {
        case.pins(1, 3, 8).depth = Depth::Blind(mm(8));
        case.shelf(1, 5);
    });
    let holes: Vec<_> = found
        .iter()
        .filter_map(|finding| finding.place.holes)
        .collect();
    assert_eq!(holes[..2], [(3, 4), (6, 8)]);
}

#[test]
fn through_hole_is_deep_enough() {
    let found = found(Rule::DepthShortForScrew, |case| {
        case.pins(1, 3, 8).depth = Depth::Through;
    });
    assert!(found.is_empty());
}

/// A zone so deep in 16 board.
fn in_16_board(bit: Bit, depth: Length) -> Vec<String> {
    said(Rule::DepthBreaksThrough, |case| {
        *case.board() = mm(16);
        case.shop().bit = bit;
        case.pins(1, 3, 8).depth = Depth::Blind(depth);
    })
}

#[test]
fn pointed_bit_12_5_deep_in_16_board() {
    assert_eq!(
        in_16_board(Bit::Pointed, um(12_500)),
        [
            "holes 3-8 of pins 3-8 are 12.5 deep and leave 3.5 of the 16.0 board, a pointed bit needs 4.0; \
          bore 12.0 at most, or with a flat bit"
        ]
    );
    assert_eq!(in_16_board(Bit::Pointed, mm(12)), [""; 0]);
    assert_eq!(in_16_board(Bit::Pointed, um(12_001)).len(), 1);
}

#[test]
fn flat_bit_leaves_3() {
    assert_eq!(in_16_board(Bit::Flat, mm(13)), [""; 0]);
    assert_eq!(
        in_16_board(Bit::Flat, um(13_001)),
        [
            "holes 3-8 of pins 3-8 are ~13.0 deep and leave ~3.0 of the 16.0 board, a flat bit needs 3.0; bore 13.0 at most"
        ]
    );
    assert_eq!(
        in_16_board(Bit::Flat, mm(20)),
        [
            "holes 3-8 of pins 3-8 are 20.0 deep and leave 0.0 of the 16.0 board, a flat bit needs 3.0; bore 13.0 at most"
        ]
    );
}

#[test]
fn screw_hole_of_11_5_in_18_6_board_has_skin_enough() {
    for rule in [Rule::DepthBreaksThrough, Rule::DepthShortForScrew] {
        let found = found(rule, |case| {
            *case.board() = um(18_600);
            case.shop().depth = um(11_500);
            case.hinge_card().pen.value = mm(11);
            case.plate(1, LEFT, 3);
        });
        assert!(found.is_empty());
    }
}
