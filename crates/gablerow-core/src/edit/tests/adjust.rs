//! Fittings, free rows and free holes moved and made a little otherwise.

use super::{make, refused};
use crate::arbitrary::*;
use crate::edit::{Adjust, Edit};
use crate::job::{Datum, Depth, Edge, FreeRow, Hand, HolePlace, Job, Key, Label};

fn adjust(thing: u32, adjust: Adjust) -> Edit {
    Edit::Adjust {
        cabinet: Key(1),
        thing: Key(thing),
        adjust,
    }
}

/// The plain cabinet, which has holes 1-22, with one of everything.
fn with_all() -> Job {
    let mut job = bay_with(|bay| {
        bay.zones = [zone(11, 5..=9)].into();
        bay.shelves = [shelf(12, 7)].into();
        bay.plates = [plate(13, Hand::Left, 3)].into();
        bay.runners = [runner(14, 2, 500)].into();
        bay.plates[0].hole = HolePlace::head(2);
    });
    job.cabinets[0].free_rows = [FreeRow {
        key: Key(15),
        face: LEFT_INSIDE,
        purpose: Label::known("cable"),
        edge: Edge::Back,
        setback: mm(120),
        first: HolePlace::foot(4),
        last: HolePlace::foot(12),
        diameter: mm(5),
        depth: Depth::Shop,
    }]
    .into();
    job
}

#[test]
fn each_kind_of_fitting_moves_up_and_down() {
    let mut job = with_all();
    for (thing, holes, label) in [
        (11, 2, "pins to 7-11"),
        (12, -1, "shelf to 6"),
        (13, -1, "hinge plate to hole 20"),
        (14, 3, "runner to 5"),
        (15, -3, "cable to 1-9"),
    ] {
        assert_eq!(make(&mut job, &adjust(thing, Adjust::Up(holes))), label);
    }
    let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
    assert_eq!(bay.plates[0].hole.datum, Datum::Head, "still counted so");
}

#[test]
fn run_loses_holes_at_its_ends_and_within() {
    let mut job = with_all();
    assert_eq!(
        make(&mut job, &adjust(15, Adjust::Without([(6, 7)].into()))),
        "cable without 6-7"
    );
    let rows = &job.cabinets[0].free_rows;
    let runs: Vec<_> = rows
        .iter()
        .map(|row| (row.first.count, row.last.count))
        .collect();
    assert_eq!(runs, [(4, 5), (8, 12)]);
    assert_eq!(rows[0].key, Key(15), "the lower part keeps the name");
    make(&mut job, &adjust(11, Adjust::Without([(5, 6)].into())));
    let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
    assert_eq!(bay.zones[0].numbers(22), (7, 9));
    assert_eq!(
        make(&mut job, &adjust(11, Adjust::Without([(1, 22)].into()))),
        "no pins 7-9"
    );
    let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
    assert!(bay.zones.is_empty());
}

#[test]
fn depth_setback_and_runner_length_change_in_place() {
    let mut job = with_all();
    for (thing, change, label) in [
        (11, Adjust::Depth(Depth::Blind(um(9_500))), "pins bored 9.5"),
        (15, Adjust::Depth(Depth::Through), "cable bored through"),
        (15, Adjust::In(mm(-20)), "cable 100 in"),
        (12, Adjust::In(mm(8)), "shelf 20 in"),
        (14, Adjust::Runner(mm(450)), "runner 450"),
    ] {
        assert_eq!(make(&mut job, &adjust(thing, change)), label);
    }
}

#[test]
fn what_cannot_be_is_refused() {
    let job = with_all();
    let nothing = "there is nothing here that could be so";
    assert_eq!(refused(&job, &adjust(99, Adjust::Up(1))), nothing);
    assert_eq!(
        refused(&job, &adjust(13, Adjust::Without([(1, 2)].into()))),
        nothing
    );
    assert_eq!(refused(&job, &adjust(14, Adjust::Runner(mm(451)))), nothing);
    let far = refused(&job, &adjust(15, Adjust::In(crate::measure::Length::MAX)));
    assert!(far.contains("but it is"), "{far}");
}
