//! What was set for a front goes when the front does, is hung elsewhere or becomes another; one undo gives all back.

use super::{make, run};
use crate::arbitrary::*;
use crate::edit::{Edit, PartChoice, Way};
use crate::history::History;
use crate::job::{FrontKind, Hand, Job, Key};
use crate::propose;

const CABINET: Key = Key(1);

/// The plain cabinet closed by `edits`, with all that is proposed for it.
fn furnished(edits: &[Edit]) -> Job {
    let mut job = job_with(|_| ());
    edits.iter().for_each(|edit| _ = make(&mut job, edit));
    furnish(&mut job);
    job
}

/// Takes what is proposed, one after the other, until nothing more is.
fn furnish(job: &mut Job) {
    loop {
        let proposals = propose::for_cabinet(job, CABINET, None).into_iter();
        let Some(edit) = proposals.filter(|it| !it.already).find_map(|it| it.edit) else {
            return;
        };
        make(job, &edit);
    }
}

fn a_door() -> Edit {
    Edit::Door {
        cabinet: CABINET,
        opening: Key(1),
    }
}

fn drawers(count: u16) -> Edit {
    Edit::Drawers {
        cabinet: CABINET,
        opening: Key(1),
        count,
    }
}

fn next_kind(job: &mut Job) -> (String, (usize, usize)) {
    let edit = Edit::PartChoose {
        cabinet: CABINET,
        part: job.cabinets[0].opening.fronts[0].key,
        choice: PartChoice::FrontKind,
    };
    made(job, &edit)
}

fn count(job: &Job) -> (usize, usize) {
    let layout = lay_out(job);
    let bays = layout.bays.iter();
    let bays = bays.filter_map(|made| job.cabinets[0].opening.bay(made.key));
    bays.fold((0, 0), |(plates, runners), bay| {
        (plates + bay.plates.len(), runners + bay.runners.len())
    })
}

/// Makes the edit as a person does: its label, the counts after it, and that one undo is the job before.
#[track_caller]
fn made(job: &mut Job, edit: &Edit) -> (String, (usize, usize)) {
    let before = job.clone();
    let step = edit.apply(job).unwrap();
    let label = step.label.clone();
    let mut history = History::of_saved();
    history.make(step, job);
    assert_eq!(job.validate(), Ok(()));
    let mut back = job.clone();
    history.undo(&mut back);
    assert_eq!(back, before);
    (label, count(job))
}

#[test]
fn plates_go_with_a_door_that_is_hung_on_the_other_hand() {
    let mut job = furnished(&[a_door()]);
    assert_eq!(count(&job), (2, 0));
    let (label, left) = made(&mut job, &a_door());
    assert_eq!(label, "door, hung right on bay 1; 2 hinge plates less");
    assert_eq!(left, (0, 0));
}

#[test]
fn plates_stay_on_the_wall_where_the_door_still_hangs() {
    let mut job = furnished(&[a_door(), a_door()]);
    let (label, left) = made(&mut job, &a_door());
    assert_eq!(label, "pair of doors on bay 1");
    assert_eq!(left, (2, 0));
    let (label, left) = made(&mut job, &a_door());
    assert_eq!(label, "no door on bay 1; 2 hinge plates less");
    assert_eq!(left, (0, 0));
}

#[test]
fn plates_go_when_a_door_becomes_a_drawer_and_runners_when_that_becomes_a_false_front() {
    let mut job = furnished(&[a_door(), a_door()]);
    // Hung right, a pair, a drawer.
    next_kind(&mut job);
    let (label, left) = next_kind(&mut job);
    assert_eq!(label, "is a drawer; 2 hinge plates less");
    assert_eq!(left, (0, 0));
    let mut job = furnished(&[drawers(1)]);
    let (_, left) = next_kind(&mut job);
    assert_eq!(left, (0, 1), "a drawer behind has the same runners");
    let (label, left) = next_kind(&mut job);
    assert_eq!(label, "is a false front; 1 runner less");
    assert_eq!(left, (0, 0));
}

#[test]
fn one_front_less_takes_its_own_fittings_and_no_others() {
    let mut job = furnished(&[a_door(), drawers(2)]);
    let (plates, runners) = count(&job);
    assert_eq!((plates, runners), (2, 2));
    let key = |job: &Job, wanted: FrontKind| {
        let fronts = &job.cabinets[0].opening.fronts;
        fronts
            .iter()
            .find(|front| front.kind == wanted)
            .unwrap()
            .key
    };
    let front = key(&job, FrontKind::Drawer);
    let cabinet = CABINET;
    let (label, left) = made(&mut job, &Edit::NoFront { cabinet, front });
    assert_eq!(label, "no D1; 1 runner less");
    assert_eq!(left, (plates, 1));
    let front = key(&job, FrontKind::Door(Hand::Left));
    let (_, left) = made(&mut job, &Edit::NoFront { cabinet, front });
    assert_eq!(left, (0, 1));
}

#[test]
fn another_number_of_drawers_takes_the_runners_of_the_old_ones() {
    let mut job = furnished(&[drawers(3)]);
    let (label, left) = made(&mut job, &drawers(4));
    assert_eq!(label, "4 times drawer on bay 1; 3 runners less");
    assert_eq!(left, (0, 0));
    let mut job = furnished(&[drawers(3)]);
    let (label, left) = made(&mut job, &drawers(3));
    assert_eq!(label, "no drawers on bay 1; 3 runners less");
    assert_eq!(left, (0, 0));
}

#[test]
fn what_was_set_by_hand_for_no_front_stays_and_is_said() {
    let mut job = job_with(|_| ());
    make(&mut job, &a_door());
    for hole in [3, 18] {
        let wall = Hand::Left;
        make(
            &mut job,
            &Edit::Plates {
                wall,
                run: run(hole, hole),
            },
        );
    }
    let (label, left) = made(&mut job, &a_door());
    assert_eq!(
        label,
        "door, hung right on bay 1; 2 hinge plates set by hand left"
    );
    assert_eq!(left, (2, 0));
}

#[test]
fn what_another_front_is_carried_by_now_stays() {
    let mut job = job_with(|_| ());
    make(&mut job, &drawers(2));
    make(&mut job, &Edit::Runners(run(2, 2)));
    let (label, left) = made(&mut job, &drawers(3));
    assert_eq!(label, "3 times drawer on bay 1");
    assert_eq!(left, (0, 1));
}

#[test]
fn doors_of_neighbours_keep_their_plates() {
    let mut job = job_with(|_| ());
    let divide = Edit::Divide {
        cabinet: CABINET,
        opening: Key(1),
        way: Way::SideBySide,
        parts: 2,
    };
    make(&mut job, &divide);
    let bays: Vec<Key> = lay_out(&job).bays.iter().map(|bay| bay.key).collect();
    let door = |opening| Edit::Door {
        cabinet: CABINET,
        opening,
    };
    bays.iter().for_each(|&bay| _ = make(&mut job, &door(bay)));
    furnish(&mut job);
    let (plates, _) = count(&job);
    made(&mut job, &door(bays[0]));
    let left = job.cabinets[0].opening.bay(bays[1]).unwrap().plates.len();
    assert_eq!(count(&job), (left, 0));
    assert!(0 < left && left < plates);
}
