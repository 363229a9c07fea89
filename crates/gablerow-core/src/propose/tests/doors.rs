//! Doors: what bars their plates, two on one partition, one over stacked bays.

use super::*;
use crate::job::{Depth, Edge, End, FreeHole};

/// The plain cabinet behind one door hung on the left.
fn one_door(change: impl FnOnce(&mut Job)) -> Job {
    let mut job = cabinet_with(|cabinet| {
        cabinet.opening.fronts = vec![door(40, Hand::Left)];
    });
    change(&mut job);
    job
}

fn door(key: u32, hand: Hand) -> Front {
    front(key, FrontKind::Door(hand), FrontHeight::Ratio(1))
}

// Geometry: 37 from the front and 80 up is hole 3 of the front row; plates on 3-4 would take it.
#[test]
fn a_free_hole_bars_its_place_for_plates() {
    let mut job = one_door(|job| {
        job.cabinets[0].free_holes.push(FreeHole {
            key: Key(77),
            face: LEFT_INSIDE,
            purpose: Label::known("lock"),
            edge: Edge::Front,
            setback: mm(37),
            end: End::Foot,
            height: mm(80),
            diameter: mm(5),
            depth: Depth::Shop,
        });
    });
    let before = stops(&job);
    take_all(&mut job);
    assert_eq!(stops(&job), before);
    let plates = plate_holes(&job, 1);
    assert!(plates.iter().all(|&lower| lower != 2 && lower != 3));
}

#[test]
fn what_has_changed_since_is_refused_in_words() {
    let job = one_door(|_| ());
    let edit = for_cabinet(&job, CABINET, None).remove(0).edit.unwrap();
    let refused = |change: &dyn Fn(&mut Job)| {
        let mut later = job.clone();
        change(&mut later);
        edit.apply(&later).unwrap_err().0
    };
    let taken_out = |job: &mut Job| {
        let (cabinet, front) = (CABINET, Key(40));
        let step = Edit::NoFront { cabinet, front }.apply(job).unwrap();
        step.apply(job);
    };
    let again = "ask again what would carry the fronts";
    assert_eq!(
        refused(&taken_out),
        format!("a front of it is gone; {again}")
    );
    let turned = |job: &mut Job| job.cabinets[0].opening.fronts = vec![door(40, Hand::Right)];
    assert_eq!(refused(&turned), format!("F40 hangs elsewhere; {again}"));
    let carried = |job: &mut Job| edit.apply(&job.clone()).unwrap().apply(job);
    assert_eq!(
        refused(&carried),
        format!("F40 is carried by something else now; {again}")
    );
}
