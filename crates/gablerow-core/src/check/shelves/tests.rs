//! Proof of `shelves`.

use super::super::fixture::*;
use super::*;
use crate::cards::{Origin, Sourced};
use crate::job::BackRail;

/// A shelf of 562 x 526 x 18 that weighs 3.46 kg, its edge so far before its front pins.
fn tips(overhang: Length) -> Vec<String> {
    said(Rule::ShelfTips, |case| {
        case.shop().setback_front = mm(12) + overhang;
        case.shelf(1, 9);
    })
}

// 3.4586 * 263 / (20 + 3.4586) = 38.775
#[test]
fn shelf_tips_under_20_kg() {
    assert_eq!(tips(mm(0)), [""; 0]);
    assert_eq!(tips(um(38_775)), [""; 0]);
    assert_eq!(
        tips(um(38_776)),
        [
            "shelf on 9: 20.0 kg on its front edge tip it, under 20 (house default); the edge stands ~38.8 before its front pins, 38.5 would do: a smaller setback of the pins"
        ]
    );
}

#[test]
fn shelf_whose_pins_stand_behind_its_middle_tips_by_itself() {
    assert_eq!(
        tips(mm(263)),
        [
            "shelf on 9: it tips by itself; the edge stands 263.0 before its front pins, 38.5 would do: a smaller setback of the pins"
        ]
    );
}

/// A shelf 2 shorter than its bay.
fn slips(projection: Option<Sourced<Length>>) -> Vec<String> {
    said(Rule::ShelfLength, |case| {
        case.pin_card().projection = projection;
        case.shelf(1, 9);
    })
}

#[test]
fn far_pins_bear_4() {
    let typed = |out| {
        slips(Some(Sourced {
            value: out,
            origin: Origin::DataSheet,
        }))
    };
    assert_eq!(typed(mm(6)), [""; 0]);
    assert_eq!(
        typed(um(5_999)),
        [
            "shelf on 9: pushed to one side, its far pins bear ~4.0: they stand out ~6.0 less 2.0 it is short; 4.0 (house default) take pins that stand out 6.0"
        ]
    );
    assert_eq!(
        typed(mm(5)),
        [
            "shelf on 9: pushed to one side, its far pins bear 3.0: they stand out 5.0 less 2.0 it is short; 4.0 (house default) take pins that stand out 6.0"
        ]
    );
}

/// Pins that stand out 6, and a shelf so much shorter than its bay, which is 564 wide.
fn short_by(shorter: Length) -> Vec<String> {
    said(Rule::ShelfLength, |case| {
        case.pin_card().projection = Some(Sourced {
            value: mm(6),
            origin: Origin::DataSheet,
        });
        case.shelf(1, 9).shorter = shorter;
    })
}

#[test]
fn shelf_is_2_shorter_than_its_bay() {
    assert_eq!(short_by(mm(2)), [""; 0]);
    assert_eq!(
        short_by(um(1_999)),
        [
            "shelf on 9: ~2.0 shorter than its bay, and goes in where sides bow with 2.0 (common practice): 562.0 long"
        ]
    );
    assert_eq!(
        short_by(um(2_001)),
        [
            "shelf on 9: pushed to one side, its far pins bear ~4.0: they stand out 6.0 less ~2.0 it is short; 4.0 (house default) take a shelf 562.0 long"
        ]
    );
    // 6 - 3 = 3
    assert_eq!(
        short_by(mm(3)),
        [
            "shelf on 9: pushed to one side, its far pins bear 3.0: they stand out 6.0 less 3.0 it is short; 4.0 (house default) take a shelf 562.0 long"
        ]
    );
}

#[test]
fn guessed_pins_send_to_the_data_sheet_and_unknown_ones_say_nothing() {
    assert_eq!(
        slips(Some(Sourced::guess(mm(1)))),
        [
            "check the data sheet: shelf on 9: pushed to one side, its far pins bear -1.0: they stand out 1.0 less 2.0 it is short; 4.0 (house default) take pins that stand out 6.0"
        ]
    );
    assert_eq!(slips(None), [""; 0]);
}

/// Boards of 18.6 in a cabinet 800 high: the stretcher begins at 781.4.
fn tall(case: &mut Case) {
    case.cabinet().size.height = mm(800);
    *case.board() = um(18_600);
}

// Hole 9 at 272, 15 at 464: 466.5 - 272 - 2.5 - 18.6 = 173.4; 781.4 - 464 - 2.5 - 18.6 = 296.3.
#[test]
fn clear_height_is_that_up_to_the_next_shelf_or_the_ceiling() {
    let short = |low, high| {
        said(Rule::ClearOpeningShort, |case| {
            tall(case);
            case.shelf(1, 15).clear = Some(high);
            case.shelf(1, 9).clear = Some(low);
        })
    };
    assert_eq!(short(um(173_400), um(296_300)), [""; 0]);
    assert_eq!(
        short(um(173_401), um(296_300)),
        [
            "shelf on 9: 173.4 clear over it (shelf at 466.5 less hole 272.0, rise 2.5, board 18.6), ~173.4 asked: ~0.0 short; hole 8 gives it, or 16 for the one above"
        ]
    );
    assert_eq!(
        short(mm(100), um(296_301)),
        [
            "shelf on 15: 296.3 clear over it (ceiling at 781.4 less hole 464.0, rise 2.5, board 18.6), ~296.3 asked: ~0.0 short; hole 14 gives it"
        ]
    );
    assert_eq!(
        short(mm(206), mm(100)),
        [
            "shelf on 9: 173.4 clear over it (shelf at 466.5 less hole 272.0, rise 2.5, board 18.6), 206.0 asked: 32.6 short; hole 7 gives it, or 17 for the one above"
        ]
    );
}

#[test]
fn cure_is_a_hole_that_gives_it_where_there_is_one() {
    let asked = |low: i16, high: i16, clear| {
        said(Rule::ClearOpeningShort, |case| {
            tall(case);
            case.shelf(1, low).clear = Some(mm(clear));
            case.shelf(1, high);
        })
    };
    assert_eq!(
        asked(2, 5, 100),
        [
            "shelf on 2: 77.4 clear over it (shelf at 146.5 less hole 48.0, rise 2.5, board 18.6), 100.0 asked: 22.6 short; hole 6 for the one above gives it"
        ]
    );
    assert_eq!(
        asked(20, 23, 100),
        [
            "shelf on 20: 77.4 clear over it (shelf at 722.5 less hole 624.0, rise 2.5, board 18.6), 100.0 asked: 22.6 short; hole 19 gives it"
        ]
    );
    assert_eq!(
        asked(2, 5, 700),
        [
            "shelf on 2: 77.4 clear over it (shelf at 146.5 less hole 48.0, rise 2.5, board 18.6), 700.0 asked: 622.6 short; no hole gives it"
        ]
    );
}

fn lift(change: impl FnOnce(&mut Case)) -> Vec<String> {
    said(Rule::NoLiftRoom, |case| {
        tall(case);
        change(case);
    })
}

// 781.4 - (752 + 2.5 + 18.6) = 8.3
#[test]
fn shelf_on_the_highest_hole_cannot_be_lifted_in() {
    assert_eq!(
        lift(|case| _ = case.shelf(1, 24)),
        [
            "shelf on 24: 8.3 from its top to the stretcher over it, and lifting it in takes 25.0 (house default); hole 23 has room"
        ]
    );
    assert_eq!(lift(|case| _ = case.shelf(1, 23)), [""; 0]);
    let high = |height| {
        lift(|case| {
            case.shelf(1, 24);
            case.cabinet().size.height = height;
        })
    };
    assert_eq!(high(um(816_700)), [""; 0]);
    assert_eq!(
        high(um(816_699)),
        [
            "shelf on 24: ~25.0 from its top to the stretcher over it, and lifting it in takes 25.0 (house default); hole 23 has room"
        ]
    );
    // Touching still is no more than no room; in the stretcher it is in the way, which another rule says.
    assert_eq!(
        high(um(791_700)),
        [
            "shelf on 24: 0.0 from its top to the stretcher over it, and lifting it in takes 25.0 (house default); hole 23 has room"
        ]
    );
    assert_eq!(high(um(791_699)), [""; 0]);
}

#[test]
fn lower_hole_is_no_cure_where_it_is_not_free() {
    let low = |hole, underside| {
        lift(|case| {
            case.cabinet().offsets.foot = mm(19);
            case.fixed_shelf(mm(underside));
            case.shelf(1, hole);
        })
    };
    assert_eq!(
        low(1, 60),
        [
            "shelf on 1 in bay 1: 19.9 from its top to the fixed shelf over it, and lifting it in takes 25.0 (house default); no lower hole is free"
        ]
    );
    assert_eq!(
        low(2, 92),
        [
            "shelf on 2 in bay 1: 19.9 from its top to the fixed shelf over it, and lifting it in takes 25.0 (house default); hole 1 has room"
        ]
    );
}

#[test]
fn zone_loses_the_holes_without_room_for_a_shelf() {
    assert_eq!(lift(|case| _ = case.pins(1, 9, 23)), [""; 0]);
    assert_eq!(
        lift(|case| _ = case.pins(1, 9, 24)),
        [
            "pins 9-24: a shelf on 24 has 8.3 to the stretcher over it, and lifting one in takes 25.0 (house default); drop hole 24"
        ]
    );
    assert_eq!(
        lift(|case| _ = case.pins(1, 24, 99)),
        [
            "pins 24-99: a shelf on 24 has 8.3 to the stretcher over it, and lifting one in takes 25.0 (house default); drop hole 24"
        ]
    );
    let found = found(Rule::NoLiftRoom, |case| {
        tall(case);
        case.pins(1, 9, 24);
    });
    assert_eq!(found[0].place.holes, Some((24, 24)));
    assert_eq!(found[0].about, [Some(case_zone()), None]);
}

// The rail hangs from 781.4 down to 681.4: hole 21 ends 656 + 2.5 + 18.6 = 677.1, and 20 leaves 36.3.
#[test]
fn rail_before_the_back_takes_holes_too() {
    let rail = |first| {
        lift(|case| {
            case.cabinet().carcass.rail = Some(BackRail {
                board: card("board-18"),
                height: mm(100),
            });
            case.pins(1, first, 24);
        })
    };
    assert_eq!(
        rail(9),
        [
            "pins 9-24: a shelf on 24 would be 91.7 in the back rail, and lifting one in takes 25.0 (house default); drop holes 21-24"
        ]
    );
    assert_eq!(
        rail(23),
        [
            "pins 23-24: a shelf on 24 would be 91.7 in the back rail, and lifting one in takes 25.0 (house default); drop holes 23-24"
        ]
    );
}

fn case_zone() -> crate::job::Key {
    crate::job::Key(3)
}
