//! Proof of `zones`.

use super::super::fixture::*;
use super::*;
use alloc::string::String;

fn middle(height: i32, first: i16, last: i16) -> Vec<String> {
    said(Rule::ZoneOffCentre, |case| {
        case.cabinet().size.height = mm(height);
        let zone = case.pins(1, 1, 1);
        zone.first = HolePlace::middle(first);
        zone.last = HolePlace::middle(last);
    })
}

#[test]
fn zone_of_7_cannot_sit_in_the_middle_of_26() {
    assert_eq!(
        middle(832, -3, 3),
        ["pins 10-16: 7 of 26 holes sit 16.0 too low for the middle; take 6 or 8 holes"]
    );
    assert_eq!(middle(832, -2, 3), [""; 0]);
    assert_eq!(middle(832, -3, 4), [""; 0]);
}

#[test]
fn zone_of_7_sits_in_the_middle_of_25() {
    assert_eq!(middle(800, -3, 3), [""; 0]);
    assert_eq!(
        middle(800, -2, 4),
        ["pins 11-17: 7 of 25 holes sit 32.0 too high for the middle; move it 1 down"]
    );
}

#[test]
fn zone_counted_from_the_foot_is_meant_as_it_is() {
    let found = found(Rule::ZoneOffCentre, |case| {
        case.pins(1, 2, 5);
    });
    assert!(found.is_empty());
}

#[test]
fn zone_in_the_middle_is_written_either_way_round() {
    assert_eq!(middle(832, 3, -3), middle(832, -3, 3));
}
