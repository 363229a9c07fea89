//! Free rows, free holes, and taking away whatever owns a hole.

use super::{make, refused, run};
use crate::arbitrary::{LEFT_INSIDE, job_with};
use crate::edit::{Edit, FaceRun, FreeChoice, FreeEdit, FreeMeasure, FreePlace};
use crate::job::{Datum, Depth, Edge, End, Hand, Job, Key, Label, PanelId};
use crate::layout::Layout;
use crate::measure::Length;

const MM: fn(i32) -> Length = Length::from_mm;

fn edit(change: FreeEdit) -> Edit {
    Edit::Free {
        cabinet: Key(1),
        change,
    }
}

/// On the outside of the left side, which no bay sees.
fn outside(edge: Edge, setback: i32) -> FreePlace {
    FreePlace {
        face: LEFT_INSIDE.behind(),
        edge,
        setback: MM(setback),
    }
}

fn row(place: FreePlace, first: i16, last: i16) -> Edit {
    let datum = Datum::Foot;
    edit(FreeEdit::Row(place, FaceRun { first, last, datum }))
}

fn hole(place: FreePlace, end: End, height: i32) -> Edit {
    edit(FreeEdit::Hole(place, end, MM(height)))
}

/// From the front edge and from the foot to each hole of the outside.
fn holes(job: &Job) -> Vec<(Length, Length)> {
    let layout = Layout::of(&job.cabinets[0], job);
    let face = layout.face(LEFT_INSIDE.behind()).unwrap();
    let holes = face.holes(&layout);
    holes.iter().map(|hole| (hole.x, hole.z)).collect()
}

#[test]
fn free_row_lies_on_grid_holes_of_an_outside_and_on_no_other_face() {
    let mut job = job_with(|_| ());
    assert_eq!(
        make(&mut job, &row(outside(Edge::Back, 100), 3, 4)),
        "free row 100 from the back on holes 3-4"
    );
    // 560 deep: 560 - 100 = 460; hole 3 is at 16 + 2 * 32 = 80.
    assert_eq!(holes(&job), [(MM(460), MM(80)), (MM(460), MM(112))]);
    let layout = Layout::of(&job.cabinets[0], &job);
    assert!(layout.face(LEFT_INSIDE).unwrap().rows.is_empty());
    assert_eq!(
        refused(&job, &row(outside(Edge::Back, 100), 3, 4)),
        "there is a free row 100 from the back on holes 3-4 already"
    );
}

#[test]
fn free_row_off_its_panel_is_refused_with_what_there_is() {
    let job = job_with(|_| ());
    for (place, first, last, why) in [
        (
            outside(Edge::Front, 600),
            3,
            3,
            "setback 600, but this panel is 560 deep",
        ),
        (
            outside(Edge::Front, -1),
            3,
            3,
            "setback -1, but this panel is 560 deep",
        ),
        (
            outside(Edge::Front, 37),
            0,
            3,
            "holes 0-3, but this cabinet has holes 1-22",
        ),
        (
            outside(Edge::Front, 37),
            23,
            23,
            "hole 23, but this cabinet has holes 1-22",
        ),
    ] {
        assert_eq!(refused(&job, &row(place, first, last)), why);
    }
    let mut gone = outside(Edge::Front, 37);
    gone.face.panel = PanelId::Partition(Key(99));
    assert_eq!(
        refused(&job, &row(gone, 3, 3)),
        "this cabinet has no such panel"
    );
}

#[test]
fn free_hole_is_measured_from_either_edge_and_either_end() {
    let mut job = job_with(|_| ());
    assert_eq!(
        make(&mut job, &hole(outside(Edge::Front, 50), End::Head, 100)),
        "free hole 50 from the front, 100 from the head"
    );
    assert_eq!(holes(&job), [(MM(50), MM(604))]);
    assert_eq!(
        refused(&job, &hole(outside(Edge::Front, 50), End::Head, 705)),
        "height 705, but this panel is 704 long"
    );
    assert_eq!(
        refused(&job, &hole(outside(Edge::Front, 50), End::Head, 100)),
        "there is a free hole 50 from the front, 100 from the head already"
    );
}

#[test]
fn counted_from_the_other_edge_and_end_a_hole_stays_where_it_is() {
    let mut job = job_with(|_| ());
    make(&mut job, &hole(outside(Edge::Front, 50), End::Head, 100));
    let key = job.cabinets[0].free_holes[0].key;
    let before = holes(&job);
    let choose = |choice| edit(FreeEdit::Choose(key, choice));
    assert_eq!(
        make(&mut job, &choose(FreeChoice::Edge)),
        "measured from the back edge"
    );
    assert_eq!(
        make(&mut job, &choose(FreeChoice::End)),
        "measured from the foot"
    );
    assert_eq!(holes(&job), before);
    let made = &job.cabinets[0].free_holes[0];
    assert_eq!((made.setback, made.height), (MM(510), MM(604)));
}

#[test]
fn values_of_a_free_row_are_changed_afterwards() {
    let mut job = job_with(|_| ());
    make(&mut job, &row(outside(Edge::Front, 37), 3, 9));
    let key = job.cabinets[0].free_rows[0].key;
    let set = |measure, value| edit(FreeEdit::Measure(key, measure, MM(value)));
    assert_eq!(make(&mut job, &set(FreeMeasure::Setback, 60)), "setback 60");
    assert_eq!(make(&mut job, &set(FreeMeasure::Diameter, 8)), "diameter 8");
    assert_eq!(
        make(&mut job, &set(FreeMeasure::Depth, 10)),
        "bore depth 10"
    );
    assert_eq!(job.cabinets[0].free_rows[0].depth, Depth::Blind(MM(10)));
    let bored = edit(FreeEdit::Choose(key, FreeChoice::Depth));
    assert_eq!(make(&mut job, &bored), "bored through");
    assert_eq!(make(&mut job, &bored), "bored as the shop bores");
    let purpose = edit(FreeEdit::Purpose(key, Label::new("hooks").unwrap()));
    assert_eq!(make(&mut job, &purpose), "for hooks");
    assert_eq!(refused(&job, &purpose), "nothing would change");
    assert_eq!(
        refused(&job, &set(FreeMeasure::Height, 10)),
        "a free row lies at holes and has no height of its own"
    );
    assert_eq!(
        refused(&job, &set(FreeMeasure::Diameter, 90)),
        "hole diameter: 90, but it is 1 to 60 mm"
    );
    let away = edit(FreeEdit::TakeAway(key));
    assert_eq!(make(&mut job, &away), "no hooks");
    assert_eq!(
        refused(&job, &away),
        format!("there is no free row or free hole {key}")
    );
}

#[test]
fn a_fitting_goes_by_its_key_and_of_a_zone_one_hole() {
    let mut job = job_with(|_| ());
    let plain = job.clone();
    let away = |fitting, hole| Edit::NoFitting {
        cabinet: Key(1),
        fitting,
        hole,
    };
    make(&mut job, &Edit::Pins(run(3, 7)));
    let zone = job.cabinets[0].opening.bay(Key(1)).unwrap().zones[0].key;
    assert_eq!(make(&mut job, &away(zone, 5)), "no pins on 5");
    let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
    let zones: Vec<_> = bay.zones.iter().map(|zone| zone.numbers(22)).collect();
    assert_eq!(zones, [(3, 4), (6, 7)]);
    assert_eq!(
        refused(&job, &away(zone, 5)),
        "no fitting of a bay has a hole here"
    );

    for (set, said) in [
        (
            Edit::Plates {
                wall: Hand::Right,
                run: run(3, 4),
            },
            "no hinge plate on 3",
        ),
        (Edit::Runners(run(9, 9)), "no runner on 9"),
        (Edit::Shelves(run(6, 6)), "no shelf on 6"),
    ] {
        let mut job = plain.clone();
        make(&mut job, &set);
        let mut key = None;
        let bay = job.cabinets[0].opening.bay(Key(1)).unwrap();
        key = key.or(bay.plates.first().map(|plate| plate.key));
        key = key.or(bay.runners.first().map(|runner| runner.key));
        key = key.or(bay.shelves.first().map(|shelf| shelf.key));
        assert_eq!(make(&mut job, &away(key.unwrap(), 3)), said);
        assert_eq!(job, plain);
    }
}
