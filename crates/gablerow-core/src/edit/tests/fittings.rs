//! Plates, runners, shelves, and where their places are counted from.

use super::{make, refused, run};
use crate::arbitrary::{
    LEFT_INSIDE, bay_with, bored_hole, cabinet_with, empty, fixed_shelf, mm, plate, runner, stacked,
};
use crate::edit::{BayRun, Edit, Measure};
use crate::job::{
    Bored, CardId, Datum, Depth, Division, Edge, FaceId, FreeRow, Hand, HolePlace, Inset, Job, Key,
    Label, PanelId, Plate, ShelfHeight,
};
use crate::measure::Length;

fn plates(first: i16, last: i16) -> Edit {
    Edit::Plates {
        wall: Hand::Left,
        run: run(first, last),
    }
}

fn lower_holes(job: &Job) -> Vec<(Hand, i16)> {
    let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
    bay.plates
        .iter()
        .map(|plate| (plate.wall, plate.hole.number(22)))
        .collect()
}

fn runners(job: &Job) -> Vec<(i16, Length)> {
    let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
    bay.runners
        .iter()
        .map(|runner| (runner.hole.number(22), runner.length))
        .collect()
}

const LEFT: Hand = Hand::Left;

#[test]
fn plates_follow_one_another_along_the_run() {
    let mut job = bay_with(|_| ());
    assert_eq!(make(&mut job, &plates(3, 6)), "hinge plate on 3-6");
    assert_eq!(lower_holes(&job), [(LEFT, 3), (LEFT, 5)]);
    assert_eq!(make(&mut job, &plates(4, 4)), "no hinge plate on 3-4");
    assert_eq!(lower_holes(&job), [(LEFT, 5)]);
}

#[test]
fn plate_set_on_one_hole_takes_the_next_one_too() {
    let mut job = bay_with(|_| ());
    assert_eq!(make(&mut job, &plates(3, 3)), "hinge plate on 3-4");
    assert_eq!(lower_holes(&job), [(LEFT, 3)]);
}

#[test]
fn hole_too_few_for_a_further_plate_stays_free() {
    let mut job = bay_with(|_| ());
    assert_eq!(make(&mut job, &plates(3, 5)), "hinge plate on 3-4");
    assert_eq!(lower_holes(&job), [(LEFT, 3)]);
}

#[test]
fn plate_in_line_takes_one_hole() {
    let mut job = bay_with(|_| ());
    job.shop.hinge = CardId::known("hinge-in-line");
    assert_eq!(make(&mut job, &plates(22, 22)), "hinge plate on 22");
    assert_eq!(lower_holes(&job), [(LEFT, 22)]);
    job.shop.hinge = CardId::known("hinge-plain");
    assert_eq!(make(&mut job, &plates(21, 21)), "hinge plate on 21-22");
    assert_eq!(
        lower_holes(&job),
        [(LEFT, 21), (LEFT, 22)],
        "the plate in line is not on 21"
    );
}

#[test]
fn plate_with_half_a_place_is_refused() {
    let job = bay_with(|_| ());
    assert_eq!(
        refused(&job, &plates(22, 22)),
        "a hinge plate takes holes 22-23, but this cabinet has holes 1-22"
    );
}

#[test]
fn plates_of_the_other_wall_stay() {
    let mut job = bay_with(|bay| bay.plates = vec![plate(3, Hand::Right, 3)]);
    make(&mut job, &plates(3, 4));
    assert_eq!(lower_holes(&job), [(Hand::Right, 3), (LEFT, 3)]);
    make(&mut job, &plates(3, 4));
    assert_eq!(lower_holes(&job), [(Hand::Right, 3)]);
}

#[test]
fn new_runner_is_the_longest_that_fits() {
    let mut job = bay_with(|_| ());
    // 560 - 20 = 540 inside; a 500 needs 503, a 550 would need 553
    assert_eq!(make(&mut job, &Edit::Runners(run(4, 4))), "runner 500 on 4");
    let mut inset = bay_with(|bay| {
        bay.inset = Some(Inset {
            front: Some(mm(22)),
            set_in: mm(16),
        });
    });
    // 540 - 38 = 502
    assert_eq!(
        make(&mut inset, &Edit::Runners(run(4, 4))),
        "runner 450 on 4"
    );
    let mut shallow = bay_with(|_| ());
    shallow.cabinets[0].size.depth = mm(200);
    assert_eq!(
        make(&mut shallow, &Edit::Runners(run(4, 4))),
        "runner 250 on 4"
    );
}

#[test]
fn run_of_runners_is_filled_before_it_is_taken_away() {
    let mut job = bay_with(|bay| bay.runners = vec![runner(3, 5, 300)]);
    assert_eq!(
        make(&mut job, &Edit::Runners(run(4, 6))),
        "runner 500 on 4-6"
    );
    assert_eq!(runners(&job), [(4, mm(500)), (5, mm(300)), (6, mm(500))]);
    assert_eq!(
        make(&mut job, &Edit::Runners(run(5, 6))),
        "no runner on 5-6"
    );
    assert_eq!(runners(&job), [(4, mm(500))]);
}

#[test]
fn shelves_are_set_and_taken_away_hole_by_hole() {
    let mut job = bay_with(|_| ());
    assert_eq!(
        make(&mut job, &Edit::Shelves(run(11, 12))),
        "shelf on 11-12"
    );
    assert_eq!(
        make(&mut job, &Edit::Shelves(run(12, 12))),
        "no shelf on 12"
    );
    let shelves = &job.cabinets[0].opening.bay(Key(1)).unwrap().shelves;
    assert_eq!(shelves.len(), 1);
    assert_eq!(
        (shelves[0].hole, shelves[0].setback_front),
        (HolePlace::foot(11), mm(12))
    );
}

#[test]
fn plate_counted_from_the_head_goes_up_with_it() {
    let mut job = bay_with(|_| ());
    let run = BayRun {
        datum: Datum::Head,
        ..run(19, 20)
    };
    make(&mut job, &Edit::Plates { wall: LEFT, run });
    make(&mut job, &plates(3, 4));
    let taller = Edit::Measure {
        cabinet: Key(1),
        measure: Measure::Height,
        value: mm(768),
    };
    make(&mut job, &taller);
    let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
    let holes: Vec<i16> = bay
        .plates
        .iter()
        .map(|plate| plate.hole.number(24))
        .collect();
    assert_eq!(holes, [3, 21]);
}

#[test]
fn recount_names_the_same_hole_from_another_end() {
    let mut job = bay_with(|bay| bay.plates = vec![plate(3, LEFT, 19)]);
    let recount = |datum| Edit::Recount {
        cabinet: Key(1),
        fitting: Key(3),
        datum,
    };
    assert_eq!(
        make(&mut job, &recount(Datum::Head)),
        "counted from the head"
    );
    let hole = |job: &Job| -> HolePlace {
        let plates: &[Plate] = &job.cabinets[0].opening.bay(Key(1)).unwrap().plates;
        plates[0].hole
    };
    assert_eq!(hole(&job), HolePlace::head(4));
    assert_eq!(refused(&job, &recount(Datum::Head)), "nothing would change");
    make(&mut job, &recount(Datum::Middle));
    assert_eq!(hole(&job), HolePlace::middle(8));
    let datum_of = |key| job.cabinets[0].opening.datum_of(Key(key));
    assert_eq!((datum_of(3), datum_of(99)), (Some(Datum::Middle), None));
}

#[test]
fn new_fitting_is_not_what_an_old_plate_serves() {
    let mut job = bay_with(|bay| {
        let stale = Plate {
            serves: Some(Key(70)),
            ..plate(23, LEFT, 3)
        };
        bay.plates = vec![stale];
    });
    make(&mut job, &Edit::Runners(run(12, 12)));
    let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
    assert_eq!(bay.runners[0].key, Key(71));
}

#[test]
fn new_fitting_is_not_a_copy_or_a_partition_that_was_bored() {
    let mut job = bay_with(|_| ());
    let panel = PanelId::Partition(Key(40));
    let face = FaceId {
        panel,
        toward: LEFT,
    };
    job.bored = vec![Bored {
        copy: Key(30),
        ..bored_hole(face)
    }];
    make(&mut job, &Edit::Shelves(run(12, 12)));
    let key = |job: &Job| job.cabinets[0].opening.bay(Key(1)).unwrap().shelves[0].key;
    assert_eq!(key(&job), Key(41));
    make(&mut job, &Edit::Shelves(run(12, 12)));
    job.bored[0].copy = Key(50);
    make(&mut job, &Edit::Shelves(run(12, 12)));
    assert_eq!(key(&job), Key(51));
}

#[test]
fn free_rows_and_fixed_shelves_are_recounted_as_well() {
    let mut job = cabinet_with(|cabinet| {
        let shelf = fixed_shelf(26, ShelfHeight::Hole(HolePlace::foot(11)));
        cabinet.opening = stacked(1, empty(11), shelf, empty(12));
        cabinet.free_rows = vec![FreeRow {
            key: Key(31),
            face: LEFT_INSIDE,
            purpose: Label::known("cable"),
            edge: Edge::Front,
            setback: mm(60),
            first: HolePlace::foot(3),
            last: HolePlace::foot(20),
            diameter: mm(5),
            depth: Depth::Shop,
        }];
    });
    for (thing, datum) in [(26, Datum::Middle), (31, Datum::Head)] {
        let recount = Edit::Recount {
            cabinet: Key(1),
            fitting: Key(thing),
            datum,
        };
        make(&mut job, &recount);
        assert_eq!(job.cabinets[0].datum_of(Key(thing)), Some(datum));
        assert_eq!(refused(&job, &recount), "nothing would change");
    }
    let row = &job.cabinets[0].free_rows[0];
    // Of 22 holes the 3rd and the 20th are the 20th and the 3rd from the head.
    assert_eq!(
        (row.first, row.last),
        (HolePlace::head(20), HolePlace::head(3))
    );
    let Division::Stacked(parts) = &job.cabinets[0].opening.division else {
        panic!("no shelf");
    };
    assert_eq!(parts.rest[0].0.at, ShelfHeight::Hole(HolePlace::middle(0)));
}

#[test]
fn cabinet_without_a_hole_says_so() {
    let mut job = bay_with(|_| ());
    job.cabinets[0].size.height = mm(100);
    job.cabinets[0].offsets.foot = mm(200);
    assert_eq!(
        refused(&job, &Edit::Shelves(run(1, 1))),
        "hole 1, but not one hole fits the height of this cabinet"
    );
    assert_eq!(
        refused(&job, &Edit::Shelves(run(1, 4))),
        "holes 1-4, but not one hole fits the height of this cabinet"
    );
}
