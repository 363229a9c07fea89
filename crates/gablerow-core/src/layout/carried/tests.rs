//! Proof of `carried`: one runner carries one drawer, and every question gets the same answer.

use crate::arbitrary::*;
use crate::job::{Front, FrontHeight, FrontKind, Job, Key, Label};

fn front(key: u32, kind: FrontKind, modules: u16) -> Front {
    Front {
        height: FrontHeight::Modules(modules),
        ..Front::plain(Key(key), Label::known("D"), kind)
    }
}

/// The plain cabinet with these fronts and runners set by hand on these holes, keys 40 and on.
fn with_runners(fronts: Vec<Front>, holes: &[i16]) -> Job {
    let runners = (40..).zip(holes);
    let runners = runners.map(|(key, &hole)| runner(key, hole, 500)).collect();
    let mut job = bay_with(|bay| bay.runners = runners);
    put_fronts(&mut job, 1, fronts);
    job
}

/// Each front with the runners that carry it.
fn carried(job: &Job) -> Vec<(u32, Vec<u32>)> {
    let layout = lay_out(job);
    let fronts = layout.fronts.iter().map(|front| {
        let carriers = layout.carriers(&job.cabinets[0], front);
        (front.key.0, carriers.iter().map(|it| it.key.0).collect())
    });
    fronts.collect()
}

#[test]
fn runners_at_the_height_of_two_drawers_carry_the_one_with_a_front() {
    let fronts = vec![
        front(30, FrontKind::Drawer, 22),
        front(31, FrontKind::Inner, 10),
    ];
    let job = with_runners(fronts, &[4]);
    assert_eq!(carried(&job), [(30, vec![40]), (31, vec![])]);
}

// Geometry: rooms of 10 and 5 modules behind a door meet at 18 + 320 = 338; with the bottom at 16, that is hole 11.
#[test]
fn runners_where_two_rooms_meet_carry_the_upper_drawer() {
    let fronts = vec![
        front(30, FrontKind::Inner, 10),
        front(31, FrontKind::Inner, 5),
    ];
    let mut job = with_runners(fronts, &[11]);
    board_18(&mut job).thickness.value = mm(16);
    assert_eq!(lay_out(&job).height(11), mm(336));
    assert_eq!(carried(&job), [(30, vec![]), (31, vec![40])]);
}

#[test]
fn a_box_runs_on_the_runners_that_say_so() {
    let mut job = with_runners(vec![front(30, FrontKind::Drawer, 22)], &[3, 9]);
    bay_of(&mut job, 1).runners[1].serves = Some(Key(30));
    let layout = lay_out(&job);
    let carrier = layout.box_carrier(&job.cabinets[0], &layout.fronts[0]);
    assert_eq!(carrier.map(|it| (it.key, it.hole)), Some((Key(41), 9)));
    bay_of(&mut job, 1).runners[1].serves = None;
    let carrier = layout.box_carrier(&job.cabinets[0], &layout.fronts[0]);
    assert_eq!(carrier.map(|it| it.hole), Some(3), "else the lowest");
}

#[test]
fn what_carries_a_front_is_carried_by_that_front() {
    let job = glaze_store();
    let (cabinet, layout) = (&job.cabinets[0], lay_out(&job));
    let mut count = 0;
    for front in &layout.fronts {
        for carrier in layout.carriers(cabinet, front) {
            let found = layout.carried_by(cabinet, carrier.key);
            assert_eq!(found, Some(front));
            count += 1;
        }
    }
    assert!(count >= 5, "{count}");
    assert_eq!(layout.carried_by(cabinet, Key(999)), None);
}
