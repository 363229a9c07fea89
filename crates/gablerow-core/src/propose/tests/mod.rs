//! Proposals: worked examples, and what holds for every job.

mod doors;
mod for_bay;
mod inner;
mod laws;

use super::*;
use crate::arbitrary::*;
use crate::check::{self, Level};
use crate::job::{Bay, FrontHeight, Hand, HolePlace, Inset, Label, Plate};
use crate::parts::Parts;

const CABINET: Key = Key(1);

fn front(key: u32, kind: FrontKind, height: FrontHeight) -> Front {
    Front {
        height,
        ..Front::plain(Key(key), Label::known(&format!("F{key}")), kind)
    }
}

fn modules<const N: usize>(kind: FrontKind, counts: [u16; N]) -> Vec<Front> {
    let made = |(key, count)| front(key, kind, FrontHeight::Modules(count));
    (40..).zip(counts).map(made).collect()
}

fn put(job: &mut Job, opening: u32, fronts: &[Front]) {
    job.cabinets[0].opening.each_mut(&mut |found| {
        if found.key == Key(opening) {
            found.fronts = fronts.to_vec();
        }
    });
}

/// Everything proposed is taken at once; gives the titles.
#[track_caller]
fn take_all(job: &mut Job) -> Vec<String> {
    let proposals = for_cabinet(job, CABINET, None);
    let edit = all_in_one(&proposals).expect("something to take");
    let step = edit
        .apply(job)
        .unwrap_or_else(|refusal| panic!("{refusal}"));
    step.apply(job);
    assert_eq!(job.validate(), Ok(()));
    proposals.into_iter().map(|made| made.title).collect()
}

fn bay_in(job: &Job, key: u32) -> &Bay {
    job.cabinets[0].opening.bay(Key(key)).unwrap()
}

fn runner_holes(job: &Job, bay: u32) -> Vec<i16> {
    let last = lay_out(job).last;
    let runners = bay_in(job, bay).runners.iter();
    runners.map(|runner| runner.hole.number(last)).collect()
}

fn plate_holes(job: &Job, bay: u32) -> Vec<i16> {
    let last = lay_out(job).last;
    let plates = bay_in(job, bay).plates.iter();
    plates.map(|plate| plate.hole.number(last)).collect()
}

// Common practice and geometry: the sheet of a base 1000 x 704 x 560; plates on 3-4 and 19-20, drawers on 2, 10 and 17, each
// box 36.5 above its front.
#[test]
fn the_glaze_store_is_fitted_as_its_sheet_has_it() {
    let mut job = glaze_store();
    job.cabinets[0].opening.each_bay_mut(&mut |bay| {
        bay.plates.clear();
        bay.runners.clear();
    });
    let why = for_cabinet(&job, CABINET, None).remove(0).why;
    take_all(&mut job);
    assert_eq!(plate_holes(&job, 11), [3, 19]);
    assert_eq!(runner_holes(&job, 12), [2, 10, 17]);
    assert_eq!(why[3], "one drilling for all fronts: 36.5");
    let made = |at: usize| why[at].rsplit(' ').next().unwrap().to_string();
    assert_eq!([made(0), made(1), made(2)], ["224.0", "192.0", "152.0"]);
}

// Geometry: cabinet X, fronts of 9, 8, 8 modules; holes 48, 336, 592 less line 12 stand 34.5 above their fronts.
#[test]
fn drawers_of_modules_have_one_drilling() {
    let mut job = cabinet_x(|job| put(job, 12, &modules(FrontKind::Drawer, [9, 8, 8])));
    let proposals = for_cabinet(&job, CABINET, None);
    assert_eq!(proposals.len(), 1);
    assert_eq!(
        proposals[0].why,
        [
            "F40: box from 36.0, 34.5 above its front's foot; up to 263.0, made 256.0",
            "F41: box from 324.0, 34.5 above its front's foot; up to 231.0, made 224.0",
            "F42: box from 580.0, 34.5 above its front's foot; up to 191.4, made 184.0",
            "one drilling for all fronts: 34.5",
            "2.4 lost below the lowest box",
            "runner 500.0 needs 503.0 of 514.0",
            "18 holes, 132 fewer than whole rows",
        ]
    );
    assert_eq!(
        take_all(&mut job),
        ["F40, F41, F42: runners 500.0 on 2, 11, 19"]
    );
    assert_eq!(runner_holes(&job, 12), [2, 11, 19]);
}

// Geometry: equal fronts of 263.7 need holes 2, 10, 19 and three drillings: 34.5, 23.8, 45.2.
#[test]
fn equal_fronts_need_three_drillings() {
    let share = |key| front(key, FrontKind::Drawer, FrontHeight::Ratio(1));
    let mut job = cabinet_x(|job| put(job, 12, &[share(40), share(41), share(42)]));
    take_all(&mut job);
    assert_eq!(runner_holes(&job, 12), [2, 10, 19]);
}

// Geometry: H 1248, three hinges: ends at 96 and 1152, target 624, a tie of 608 and 640, so 640: holes 20-21.
#[test]
fn three_hinges_of_a_tall_door() {
    let mut job = cabinet_with(|cabinet| {
        cabinet.size.height = mm(1248);
        cabinet.opening.fronts = vec![front(
            40,
            FrontKind::Door(Hand::Left),
            FrontHeight::Ratio(1),
        )];
    });
    assert_eq!(take_all(&mut job), ["F40: plates on 3-4, 20-21, 36-37"]);
    let door = Key(40);
    let plates = &bay_in(&job, 1).plates;
    assert!(
        plates
            .iter()
            .all(|plate| plate.serves == Some(door) && plate.wall == Hand::Left)
    );
    // The top hinge is counted from the head: a taller cabinet takes it along.
    job.cabinets[0].size.height = mm(1280);
    assert_eq!(plate_holes(&job, 1), [3, 20, 37]);
}

#[test]
fn a_pair_of_doors_hangs_on_both_walls() {
    let mut job = cabinet_with(|cabinet| {
        cabinet.opening.fronts = vec![front(40, FrontKind::Pair, FrontHeight::Ratio(1))];
    });
    take_all(&mut job);
    let on = |wall| {
        let plates = bay_in(&job, 1).plates.iter();
        plates.filter(|plate| plate.wall == wall).count()
    };
    assert_eq!((on(Hand::Left), on(Hand::Right)), (2, 2));
}

// Geometry: leaves that hang on like walls are bored alike; where a runner is in the way on one wall alone, both are named.
#[test]
fn leaves_of_a_pair_are_named_where_they_differ() {
    let mut job = cabinet_with(|cabinet| {
        cabinet.opening.fronts = [front(39, FrontKind::Pair, FrontHeight::Ratio(1))].into();
    });
    let proposed = |job: &Job| for_cabinet(job, CABINET, None)[0].clone();
    let alike = proposed(&job);
    assert_eq!(alike.title, "F39: both leaves, plates on 3-4, 19-20");
    let starts = |made: &Proposal, start| {
        made.why
            .iter()
            .filter(|line| line.starts_with(start))
            .count()
    };
    assert_eq!(starts(&alike, "cups"), 1);

    let hinge = job.cards.hinges[0].id.clone();
    job.cabinets[0].opening.bay_mut(Key(1)).unwrap().plates = [Plate {
        key: Key(70),
        wall: Hand::Left,
        hole: HolePlace::foot(3),
        card: hinge,
        serves: Some(Key(71)),
    }]
    .into();
    let differ = proposed(&job);
    assert!(
        differ.title.contains("left leaf, plates on"),
        "{}",
        differ.title
    );
    assert!(differ.title.ends_with("right leaf, plates on 3-4, 19-20"));
    assert_eq!(starts(&differ, "cups"), 2);
}

// Geometry: hinges at 96 and 704 bar holes 2-4 and 21-23 for runners; a door that stands 15 in asks for a spacer of 18.
#[test]
fn drawers_behind_a_door_pass_it_on_a_spacer() {
    let mut job = cabinet_x(|job| {
        let mut fronts = vec![front(
            39,
            FrontKind::Door(Hand::Left),
            FrontHeight::Ratio(1),
        )];
        fronts.extend(modules(FrontKind::Inner, [7, 7, 7]));
        put(job, 11, &fronts);
    });
    let titles = take_all(&mut job);
    assert_eq!(titles.len(), 2);
    let runners = &bay_in(&job, 11).runners;
    assert_eq!(runners.len(), 3);
    for runner in runners {
        assert_eq!((runner.spacers.left, runner.spacers.right), (mm(18), mm(0)));
    }
    for hole in runner_holes(&job, 11) {
        assert!(
            !(2..=4).contains(&hole) && !(21..=23).contains(&hole),
            "{hole}"
        );
    }
}

// Geometry: 220 deep less 20 behind the back leaves 200; the shortest runner of the card, 250, needs 253.
#[test]
fn no_runner_is_proposed_that_does_not_fit() {
    let mut job = cabinet_with(|cabinet| {
        cabinet.size.depth = mm(220);
        cabinet.opening.fronts = modules(FrontKind::Drawer, [11, 11]);
    });
    job.cabinets[0].carcass.back = crate::job::Back::Groove {
        to_front_wall: mm(20),
        cut: mm(8),
    };
    let proposals = for_cabinet(&job, CABINET, None);
    assert_eq!(proposals[0].title, "F40, F41: no runner is short enough");
    assert_eq!(proposals[0].why[0], "runner 250.0 needs 253.0 of 200.0");
    assert_eq!(proposals[0].edit, None);
}

// Geometry: a box as high as the proposal says, for the highest one inside an opening, under a false front, behind a door.
#[test]
fn boxes_are_made_as_high_as_proposed() {
    let inset = |job: &mut Job| {
        job.cabinets[0].opening.bay_mut(Key(1)).unwrap().inset = Some(Inset::default());
    };
    let false_front = |job: &mut Job| {
        let fronts = &mut job.cabinets[0].opening.fronts;
        fronts.pop();
        fronts.push(front(60, FrontKind::False, FrontHeight::Modules(7)));
    };
    let behind = |job: &mut Job| {
        let fronts = &mut job.cabinets[0].opening.fronts;
        *fronts = modules(FrontKind::Inner, [6, 6, 6]);
        fronts.push(front(
            60,
            FrontKind::Door(Hand::Left),
            FrontHeight::Ratio(1),
        ));
    };
    let changes: [fn(&mut Job); 3] = [inset, false_front, behind];
    for change in changes {
        let mut job = cabinet_with(|cabinet| {
            cabinet.opening.fronts = modules(FrontKind::Drawer, [8, 7, 7]);
        });
        change(&mut job);
        let proposals = for_cabinet(&job, CABINET, None);
        take_all(&mut job);
        let cabinet = &job.cabinets[0];
        let parts = Parts::of(cabinet, &lay_out(&job), &job);
        assert!(parts.boxes.len() >= 2);
        for made in &parts.boxes {
            let said = format!(
                "up to {}, made {}",
                made.room.total().show(job.unit),
                made.height.show(job.unit)
            );
            let mut lines = proposals.iter().flat_map(|proposal| &proposal.why);
            let start = format!("{}: box", made.name);
            let line = lines.find(|line| line.starts_with(&start)).unwrap();
            assert!(line.ends_with(&said), "{line}, {said}");
        }
    }
}

// Geometry: plates back to back at one place would meet in an 18.6 board; staggered, one drilling serves both doors.
#[test]
fn doors_on_one_partition_are_staggered() {
    let mut job = cabinet_x(|job| {
        let door = |key, hand| vec![front(key, FrontKind::Door(hand), FrontHeight::Ratio(1))];
        put(job, 11, &door(40, Hand::Right));
        put(job, 12, &door(41, Hand::Left));
    });
    take_all(&mut job);
    let (left, right) = (plate_holes(&job, 11), plate_holes(&job, 12));
    assert_eq!(left.len(), 2);
    for hole in &left {
        assert!(
            right.iter().all(|other| (hole - other).abs() >= 2),
            "{left:?} {right:?}"
        );
    }
    let mirrored: Vec<i16> = left.iter().rev().map(|hole| 25 - hole).collect();
    assert_eq!(right, mirrored, "one drilling, upside down");
}

// Geometry: a drawer's screws go in back to back with a plate's on an 18 board only where their holes differ.
#[test]
fn a_door_makes_way_for_the_drawers_behind_its_partition() {
    let mut job = cabinet_x(|job| {
        put(job, 11, &modules(FrontKind::Drawer, [5, 5, 5, 5, 5]));
        put(
            job,
            12,
            &[front(
                39,
                FrontKind::Door(Hand::Left),
                FrontHeight::Ratio(1),
            )],
        );
    });
    take_all(&mut job);
    let (runners, plates) = (runner_holes(&job, 11), plate_holes(&job, 12));
    assert_eq!((runners.len(), plates.len()), (5, 2));
    for lower in plates {
        assert!(
            !runners.contains(&lower) && !runners.contains(&(lower + 1)),
            "{runners:?} {lower}"
        );
    }
}

#[test]
fn what_cannot_be_had_says_what_would_work() {
    let low = || {
        let drawers = [40, 41, 42].map(|key| front(key, FrontKind::Drawer, FrontHeight::Ratio(1)));
        cabinet_with(|cabinet| {
            cabinet.size.height = mm(192);
            cabinet.opening.fronts = drawers.into();
        })
    };
    let job = low();
    let proposals = for_cabinet(&job, CABINET, None);
    assert_eq!(proposals.len(), 1);
    assert_eq!(proposals[0].edit, None);
    assert!(
        proposals[0].title.ends_with("no hole serves it"),
        "{}",
        proposals[0].title
    );
    assert!(!proposals[0].why.is_empty());
    assert_eq!(all_in_one(&proposals), None);
}

#[test]
fn a_front_that_is_carried_is_proposed_anew_when_asked() {
    let mut job = cabinet_with(|cabinet| {
        cabinet.opening.fronts = vec![front(
            40,
            FrontKind::Door(Hand::Left),
            FrontHeight::Ratio(1),
        )];
    });
    take_all(&mut job);
    assert_eq!(for_cabinet(&job, CABINET, None), []);
    let again = for_cabinet(&job, CABINET, Some(Key(40)));
    assert_eq!(again.len(), 1);
    assert_eq!(again[0].title, "F40: already so, plates on 3-4, 19-20");
    assert_eq!((again[0].already, &again[0].edit), (true, &None));
}

// Geometry: of plates on 3-4 and 15-16 the lower is where it is proposed; it stays, key, datum and all, and now says whom it serves.
#[test]
fn a_plate_that_is_where_it_is_proposed_stays() {
    let mut job = cabinet_with(|cabinet| {
        cabinet.opening = bay(1, |bay| {
            bay.plates = vec![plate(31, Hand::Left, 3), plate(32, Hand::Left, 15)];
        });
        cabinet.opening.fronts = vec![front(
            40,
            FrontKind::Door(Hand::Left),
            FrontHeight::Ratio(1),
        )];
    });
    let lower = bay_in(&job, 1).plates[0].clone();
    let again = for_cabinet(&job, CABINET, Some(Key(40))).remove(0);
    again.edit.unwrap().apply(&job).unwrap().apply(&mut job);
    assert_eq!(plate_holes(&job, 1), [3, 19]);
    let kept = Plate {
        serves: Some(Key(40)),
        ..lower
    };
    assert_eq!(bay_in(&job, 1).plates[0], kept);
    assert_ne!(bay_in(&job, 1).plates[1].key, Key(32));
}

/// What a stop is told by. Its words will not do: plates on the line of a free row make it the front row by name.
type Stop = (check::Rule, check::Place, [Option<Key>; 2]);

fn stops(job: &Job) -> Vec<Stop> {
    let layout = Layout::of(&job.cabinets[0], job);
    let found = check::of_cabinet(job, &job.cabinets[0], &layout);
    let stops = found.into_iter().filter(|it| it.level == Level::Stop);
    // Where the front row of a bay stands is the bay's own, whatever hangs there.
    let stops = stops.filter(|it| it.rule != check::Rule::InsetOnOverlayRow);
    stops.map(|it| (it.rule, it.place, it.about)).collect()
}
