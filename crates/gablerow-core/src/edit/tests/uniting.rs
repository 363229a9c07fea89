//! Two bays made one: their pins and shelves come on the same walls, no hole twice, and one undo parts them again.

use super::make;
use crate::arbitrary::*;
use crate::edit::Edit;
use crate::history::History;
use crate::job::{Bay, Datum, Depth, HolePlace, Job, Key, PinRows, Shelf, ShelfHeight, Zone};
use crate::layout::Layout;

const CABINET: Key = Key(1);

/// Bays 11 and 12 beside each other with these zones, partition 9 between.
fn two_bays(left: Vec<Zone>, right: Vec<Zone>) -> Job {
    cabinet_with(|cabinet| {
        let left = bay(11, |bay| bay.zones = left);
        let right = bay(12, |bay| bay.zones = right);
        cabinet.opening = side_by_side(1, left, [(partition(9), right)]);
    })
}

fn unite(divider: u32) -> Edit {
    Edit::Unite {
        cabinet: CABINET,
        divider: Key(divider),
    }
}

/// The one bay that is left; one undo has been tried.
#[track_caller]
fn united(job: &Job, divider: u32) -> Bay {
    let mut after = job.clone();
    let mut history = History::of_saved();
    history.make(unite(divider).apply(job).unwrap(), &mut after);
    assert_eq!(after.validate(), Ok(()));
    let bay = after.cabinets[0].opening.bay(Key(1)).unwrap().clone();
    history.undo(&mut after);
    assert_eq!(after, *job);
    bay
}

/// The zones of the bay that two become: key, first and last hole.
#[track_caller]
fn zones(left: Vec<Zone>, right: Vec<Zone>) -> Vec<(u32, i16, i16)> {
    let job = two_bays(left, right);
    let last = Layout::last_hole(&job.cabinets[0], &job.shop);
    let of = |zone: &Zone| {
        let (first, top) = zone.numbers(last);
        (zone.key.0, first, top)
    };
    united(&job, 9).zones.iter().map(of).collect()
}

#[test]
fn zones_alike_become_one_where_they_touch() {
    assert_eq!(
        zones(vec![zone(30, 5..=9)], vec![zone(31, 5..=9)]),
        [(30, 5, 9)]
    );
    assert_eq!(
        zones(vec![zone(30, 5..=9)], vec![zone(31, 8..=12)]),
        [(30, 5, 12)]
    );
    assert_eq!(
        zones(vec![zone(30, 5..=9)], vec![zone(31, 10..=12)]),
        [(30, 5, 12)]
    );
    let two = vec![zone(30, 3..=5), zone(31, 9..=11)];
    assert_eq!(zones(two, vec![zone(32, 5..=9)]), [(30, 3, 11)]);
}

#[test]
fn zones_apart_stay_two_from_the_foot_up() {
    let found = zones(vec![zone(30, 12..=15)], vec![zone(31, 5..=9)]);
    assert_eq!(found, [(31, 5, 9), (30, 12, 15)]);
}

#[test]
fn zones_bored_or_counted_otherwise_keep_the_holes_that_nobody_has() {
    let mut deep = zone(31, 3..=12);
    deep.depth = Depth::Blind(mm(11));
    let found = zones(vec![zone(30, 5..=9)], vec![deep]);
    assert_eq!(found, [(31, 3, 4), (30, 5, 9), (32, 10, 12)]);
    let mut from_head = zone(31, 7..=11);
    from_head.first = HolePlace::of(7, Datum::Head, 22);
    from_head.last = HolePlace::of(11, Datum::Head, 22);
    let found = zones(vec![zone(30, 5..=9)], vec![from_head]);
    assert_eq!(found, [(30, 5, 9), (31, 10, 11)]);
}

#[test]
fn shelves_on_the_same_holes_become_one() {
    let mut job = two_bays(Vec::new(), Vec::new());
    bay_of(&mut job, 11).shelves = vec![shelf(30, 12), shelf(31, 17)];
    bay_of(&mut job, 12).shelves = vec![shelf(32, 6), shelf(33, 12)];
    bay_of(&mut job, 12).pin_rows = PinRows::Three;
    let bay = united(&job, 9);
    let keys: Vec<Key> = bay.shelves.iter().map(|it: &Shelf| it.key).collect();
    assert_eq!(keys, [32, 30, 31].map(Key));
    assert_eq!(bay.pin_rows, PinRows::Three, "no shelf loses pins");
}

#[test]
fn openings_above_each_other_join_what_both_have() {
    let job = cabinet_with(|cabinet| {
        let lower = bay(11, |bay| bay.zones = vec![zone(30, 5..=11)]);
        let upper = bay(12, |bay| bay.zones = vec![zone(31, 12..=18)]);
        let shelf = fixed_shelf(9, ShelfHeight::Hole(HolePlace::foot(11)));
        cabinet.opening = stacked(1, lower, shelf, upper);
    });
    let zones = united(&job, 9).zones;
    assert_eq!(zones, [zone(30, 5..=18)]);
}

#[test]
fn no_hole_of_a_wall_is_asked_for_twice_by_pins() {
    let mut job = two_bays(
        vec![zone(30, 2..=6), zone(31, 10..=14)],
        vec![zone(32, 4..=12), zone(33, 14..=20)],
    );
    make(&mut job, &unite(9));
    let layout = lay_out(&job);
    let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
    let mut numbers: Vec<i16> = Vec::new();
    for zone in &bay.zones {
        let (first, top) = zone.numbers(layout.last);
        numbers.extend(first..=top);
    }
    assert_eq!(numbers, (2..=20).collect::<Vec<i16>>());
}
