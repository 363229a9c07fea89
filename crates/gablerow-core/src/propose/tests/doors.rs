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

/// Cabinet X of a height, a door in each bay, both hung on the partition, proposed; the board may be changed.
fn on_one_partition(height: i32, thickness: Option<i32>) -> (Job, Vec<Proposal>) {
    let mut job = cabinet_x(|job| {
        job.cabinets[0].size.height = mm(height);
        if let Some(thickness) = thickness {
            board_18(job).thickness.value = mm(thickness);
        }
        put(job, 11, &[door(39, Hand::Right)]);
        put(job, 12, &[door(40, Hand::Left)]);
    });
    let proposals = for_cabinet(&job, CABINET, None);
    take_all(&mut job);
    (job, proposals)
}

/// The plates of the right bay as they would be on the left, turned end for end: a plate on n comes to rest on `height / 32` - n.
fn turned(job: &Job, height: i32) -> Vec<i16> {
    let pitches = i16::try_from(height / 32).unwrap();
    let right = plate_holes(job, 12).into_iter().rev();
    right.map(|lower| pitches - lower).collect()
}

fn claims(proposals: &[Proposal], start: &str) -> Vec<bool> {
    let claims = |made: &Proposal| made.why.iter().any(|line| line.contains(start));
    proposals.iter().map(claims).collect()
}

// Geometry: heights on which the second door's best places are not the first one's turned end for end.
#[test]
fn the_door_behind_takes_the_other_sides_places_so_that_one_drilling_serves_both() {
    for height in [800, 1056, 1248, 1280, 1312, 1600, 1632, 1920, 2080] {
        let (job, proposals) = on_one_partition(height, None);
        assert_eq!(plate_holes(&job, 11), turned(&job, height), "{height}");
        let can = claims(&proposals, "one drilling can serve the door behind it");
        let does = claims(&proposals, "one drilling serves the door behind it");
        assert_eq!((can, does), (vec![true, false], vec![false, true]));
    }
}

// Geometry: 11.5 + 11.5 go in, a 25 board takes 24.5; depths of 13 would leave nothing of the web, 11 do.
#[test]
fn doors_are_not_staggered_where_nothing_meets() {
    for height in [800, 1248] {
        let (mut job, proposals) = on_one_partition(height, Some(25));
        let alone = {
            put(&mut job, 12, &[]);
            job.cabinets[0]
                .opening
                .each_bay_mut(&mut |bay| bay.plates.clear());
            take_all(&mut job);
            plate_holes(&job, 11)
        };
        let (job, _) = on_one_partition(height, Some(25));
        assert_eq!(plate_holes(&job, 11), alone, "{height}");
        assert_eq!(alone, turned(&job, height), "{height}");
        assert_eq!(claims(&proposals, "staggered"), [false, false]);
        assert_eq!(claims(&proposals, "one drilling"), [false, true]);
        assert_eq!(stops(&job), Vec::<Stop>::new());
    }
}

// Geometry: a door 1 mm thicker, or with more hinges for its width, is no door for the same drilling.
#[test]
fn one_drilling_is_claimed_only_for_doors_alike() {
    let claimed = |change: &dyn Fn(&mut Job)| {
        let mut job = cabinet_x(|job| {
            put(job, 11, &[door(39, Hand::Right)]);
            put(job, 12, &[door(40, Hand::Left)]);
        });
        change(&mut job);
        let proposals = for_cabinet(&job, CABINET, None);
        let before = stops(&job);
        take_all(&mut job);
        assert_eq!(stops(&job), before);
        claims(&proposals, "one drilling")
    };
    assert_eq!(claimed(&|_| ()), [true, true]);
    let thicker = |job: &mut Job| {
        let thick = Front {
            thickness: Some(mm(20)),
            ..door(40, Hand::Left)
        };
        put(job, 12, &[thick]);
    };
    assert_eq!(claimed(&thicker), [false, false]);
    let wider = |job: &mut Job| job.cabinets[0].size.width = mm(1_600);
    assert_eq!(claimed(&wider), [true, true]);
}

// Geometry: the lower bay's row is at 37, the upper one's at 77; each is bored where the other is free.
#[test]
fn a_door_over_stacked_bays_takes_each_bays_own_row() {
    let mut job = cabinet_with(|cabinet| {
        let lower = bay(11, |bay| bay.zones.push(zone(51, 1..=4)));
        let upper = bay(12, |bay| {
            bay.recess = mm(40);
            bay.zones.push(zone(50, 17..=20));
        });
        let shelf = fixed_shelf(9, crate::job::ShelfHeight::Underside(mm(340)));
        cabinet.opening = stacked(1, lower, shelf, upper);
        cabinet.opening.fronts = vec![door(40, Hand::Left)];
    });
    let before = stops(&job);
    take_all(&mut job);
    assert_eq!(stops(&job), before);
    assert_eq!(
        (plate_holes(&job, 11), plate_holes(&job, 12)),
        (vec![5], vec![15])
    );
}
