//! Places counted from foot, head and middle.

use proptest::prelude::*;

use crate::arbitrary::{datum, place};
use crate::grid::HoleNumber;
use crate::job::{Datum, HolePlace};

#[test]
fn places_on_25_holes() {
    assert_eq!(HolePlace::foot(3).number(25), 3);
    assert_eq!(HolePlace::head(3).number(25), 23);
    assert_eq!(HolePlace::middle(0).number(25), 13);
    assert_eq!(HolePlace::middle(-2).number(25), 11);
}

#[test]
fn middle_of_an_even_number_of_holes_is_the_lower_of_two() {
    assert_eq!(HolePlace::middle(0).number(22), 11);
    assert_eq!(HolePlace::middle(1).number(22), 12);
}

#[test]
fn place_off_the_grid_has_a_number_but_no_hole() {
    let hole = |place: HolePlace| place.hole(22).map(HoleNumber::get);
    assert_eq!(HolePlace::head(23).number(22), 0);
    assert_eq!(hole(HolePlace::head(23)), None);
    assert_eq!(hole(HolePlace::foot(23)), None);
    assert_eq!(
        (hole(HolePlace::foot(22)), hole(HolePlace::head(22))),
        (Some(22), Some(1))
    );
    assert_eq!(HolePlace::middle(0).hole(0), None);
}

#[test]
fn place_is_written_as_it_is_counted() {
    let written = [
        HolePlace::foot(3),
        HolePlace::head(4),
        HolePlace::middle(-2),
    ];
    assert_eq!(
        written.map(|place| place.to_string()),
        ["foot 3", "head 4", "middle -2"]
    );
}

proptest! {
    #[test]
    fn place_and_number_are_inverse(number in -400..530_i16, datum in datum(), last in 0..126_i16) {
        let place = HolePlace::of(number, datum, last);
        prop_assert_eq!((place.datum, place.number(last)), (datum, number));
    }

    #[test]
    fn number_and_place_are_inverse(place in place(), last in 0..126_i16) {
        prop_assert_eq!(HolePlace::of(place.number(last), place.datum, last), place);
    }

    #[test]
    fn two_holes_more_move_the_middle_by_one(count in -60..60_i16, last in 0..120_i16) {
        let moved = |place: HolePlace| place.number(last + 2) - place.number(last);
        let places = Datum::ALL.map(|datum| HolePlace { datum, count });
        prop_assert_eq!(places.map(moved), [0, 2, 1]);
    }
}
