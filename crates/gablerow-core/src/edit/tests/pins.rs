//! Shelf zones as runs of pin holes.

use super::{make, refused, run};
use crate::arbitrary::{bay_with, mm, zone};
use crate::edit::{BayRun, Edit};
use crate::job::{Datum, Depth, HolePlace, Job, Key, Zone};

fn pins(first: i16, last: i16) -> Edit {
    Edit::Pins(run(first, last))
}

/// The plain cabinet, which has holes 1-22, with these zones.
fn with(zones: impl IntoIterator<Item = Zone>) -> Job {
    bay_with(|bay| bay.zones = zones.into_iter().collect())
}

fn zones(job: &Job) -> Vec<Zone> {
    job.cabinets[0].opening.bay(Key(1)).unwrap().zones.clone()
}

/// First and last hole of each zone, as numbers.
fn runs(job: &Job) -> Vec<(i16, i16)> {
    zones(job).iter().map(|zone| zone.numbers(22)).collect()
}

#[test]
fn run_of_pins_is_set_and_taken_away() {
    let mut job = with([]);
    assert_eq!(make(&mut job, &pins(11, 16)), "pins on 11-16");
    assert_eq!(zones(&job), [zone(3, 11..=16)]);
    assert_eq!(make(&mut job, &pins(11, 16)), "no pins on 11-16");
    assert_eq!(runs(&job), []);
}

#[test]
fn run_of_which_one_hole_is_missing_is_filled() {
    let mut job = with([zone(3, 5..=6), zone(4, 8..=9)]);
    make(&mut job, &pins(5, 9));
    assert_eq!(zones(&job), [zone(3, 5..=9)], "one zone, by the older name");
}

#[test]
fn neighbouring_run_makes_the_zone_longer() {
    let mut job = with([zone(3, 11..=16)]);
    assert_eq!(make(&mut job, &pins(17, 17)), "pins on 17");
    assert_eq!(zones(&job), [zone(3, 11..=17)]);
    make(&mut job, &pins(19, 19));
    assert_eq!(runs(&job), [(11, 17), (19, 19)], "18 lies between");
    make(&mut job, &pins(9, 10));
    assert_eq!(runs(&job), [(9, 17), (19, 19)]);
}

#[test]
fn zones_of_another_depth_or_another_count_stay_apart() {
    let deep = Zone {
        depth: Depth::Blind(mm(8)),
        ..zone(3, 5..=6)
    };
    let from_head = Zone {
        first: HolePlace::head(14),
        last: HolePlace::head(13),
        ..zone(4, 9..=10)
    };
    let mut job = with([deep.clone(), from_head.clone()]);
    make(&mut job, &pins(7, 8));
    assert_eq!(zones(&job), [deep, zone(5, 7..=8), from_head]);
}

#[test]
fn hole_taken_out_of_the_middle_leaves_two_zones() {
    let mut job = with([zone(3, 11..=16)]);
    assert_eq!(make(&mut job, &pins(13, 14)), "no pins on 13-14");
    assert_eq!(zones(&job), [zone(3, 11..=12), zone(4, 15..=16)]);
}

#[test]
fn what_is_left_of_a_zone_is_counted_as_it_was_meant() {
    let both_ways = Zone {
        last: HolePlace::head(7),
        ..zone(3, 11..=16)
    };
    let mut job = with([both_ways]);
    make(&mut job, &pins(13, 14));
    let ends: Vec<_> = zones(&job)
        .iter()
        .map(|zone| (zone.first, zone.last))
        .collect();
    // 12 is the eleventh from the head of 22 holes, 16 the seventh.
    assert_eq!(
        ends,
        [
            (HolePlace::foot(11), HolePlace::head(11)),
            (HolePlace::foot(15), HolePlace::head(7)),
        ]
    );
}

#[test]
fn zone_whose_ends_have_passed_each_other_is_edited_as_it_is_bored() {
    // foot 17 to head 8, which is 15 on 22 holes
    let crossed = Zone {
        last: HolePlace::head(8),
        ..zone(3, 17..=17)
    };
    let mut job = with([crossed]);
    assert_eq!(make(&mut job, &pins(16, 16)), "no pins on 16");
    assert_eq!(runs(&job), [(15, 15), (17, 17)]);
}

#[test]
fn new_places_are_counted_from_where_the_user_counts() {
    let mut job = with([]);
    let from_middle = BayRun {
        datum: Datum::Middle,
        ..run(9, 13)
    };
    make(&mut job, &Edit::Pins(from_middle));
    let zone = &zones(&job)[0];
    // the lower of the middle two of 22 holes is 11
    assert_eq!(
        (zone.first, zone.last),
        (HolePlace::middle(-2), HolePlace::middle(2))
    );
}

#[test]
fn run_outside_the_grid_is_refused() {
    let job = with([]);
    assert_eq!(
        refused(&job, &pins(20, 23)),
        "holes 20-23, but this cabinet has holes 1-22"
    );
    assert_eq!(
        refused(&job, &pins(0, 3)),
        "holes 0-3, but this cabinet has holes 1-22"
    );
    assert_eq!(
        refused(&job, &pins(5, 4)),
        "holes 5-4, but this cabinet has holes 1-22"
    );
    let elsewhere = BayRun {
        bay: Key(99),
        ..run(3, 4)
    };
    assert_eq!(refused(&job, &Edit::Pins(elsewhere)), "there is no bay 99");
    let elsewhere = BayRun {
        cabinet: Key(99),
        ..run(3, 4)
    };
    assert_eq!(
        refused(&job, &Edit::Pins(elsewhere)),
        "there is no cabinet 99"
    );
}
