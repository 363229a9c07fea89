//! Drawers behind a door: spacers, and runners that are set back.

use super::*;
use crate::job::Spacers;

/// The plain cabinet, 704 high, with so many drawers behind one door hung on the left.
fn behind_a_door(drawers: u32, change: impl FnOnce(&mut Job)) -> Job {
    let mut job = cabinet_with(|cabinet| {
        let mut fronts: Vec<Front> = (40..40 + drawers)
            .map(|key| front(key, FrontKind::Inner, FrontHeight::Ratio(1)))
            .collect();
        fronts.push(front(
            60,
            FrontKind::Door(Hand::Left),
            FrontHeight::Ratio(1),
        ));
        cabinet.opening.fronts = fronts;
    });
    change(&mut job);
    job
}

fn spacers(job: &Job) -> Spacers {
    bay_in(job, 1).runners[0].spacers
}

// Geometry: a door that stands 110 in wants 113; a spacer is 100 at most. The door is taken all the same.
#[test]
fn a_spacer_that_no_job_can_hold_is_said_and_left_out_of_all() {
    let mut job = behind_a_door(1, |job| job.cards.hinges[0].intrusion.value = mm(110));
    let proposals = for_cabinet(&job, CABINET, None);
    assert_eq!(
        proposals[1].title,
        "F40: cannot be taken, spacer: 113, but it is 0 to 100 mm"
    );
    assert_eq!(
        proposals[1].why,
        [
            "spacer 113.0 on the left: the open door stands 110.0 in, and 3.0 clear",
            "a hinge whose door stands 97.0 in at most would work, or a wall of its own for the drawers",
        ]
    );
    assert_eq!(proposals[1].edit, None);
    take_all(&mut job);
    assert_eq!(plate_holes(&job, 1).len(), 2);
    assert_eq!(runner_holes(&job, 1), []);
}

// Source: trade rules of drawers behind doors: past the door s >= intrusion + 3; beside the hinge s + 21 - t >= proud + 3.
// Geometry: deduct 42, sides 15: gap 6; 25 proud wants 22; 15 proud with 15 of intrusion wants 18.
#[test]
fn a_spacer_clears_the_hinge_beside_the_box_too() {
    let with = |proud: i32, intrusion: i32| {
        let mut job = behind_a_door(1, |job| {
            let card = &mut job.cards.hinges[0];
            (card.proud.value, card.intrusion.value) = (mm(proud), mm(intrusion));
        });
        let why = for_cabinet(&job, CABINET, None)[1].why.clone();
        take_all(&mut job);
        let said = why.into_iter().find(|line| line.starts_with("spacer"));
        (spacers(&job).left, said.unwrap())
    };
    let (spacer, said) = with(25, 15);
    assert_eq!(spacer, mm(22), "{said}");
    assert_eq!(
        said,
        "spacer 22.0 on the left: the hinge stands 25.0 out, and 3.0 clear, less 6.0 that is beside the box"
    );
    assert_eq!(with(15, 15).0, mm(18));
}

// Geometry: the shop's hinge stands 15 in, the one the door hangs on 30.
#[test]
fn a_spacer_is_for_the_hinges_the_door_hangs_on() {
    let mut job = behind_a_door(1, |job| job.cards.hinges[1].intrusion.value = mm(30));
    let house = job.shop.hinge.clone();
    job.shop.hinge = job.cards.hinges[1].id.clone();
    let door = for_cabinet(&job, CABINET, None).remove(0);
    door.edit.unwrap().apply(&job).unwrap().apply(&mut job);
    job.shop.hinge = house;
    take_all(&mut job);
    assert_eq!(spacers(&job).left, mm(33));
}

// Geometry: hinges that reach 30 back and need 300 up and down leave no hole; set back 32 runners begin at 34.
#[test]
fn drawers_that_find_no_hole_between_hinges_are_set_back_by_one_pitch() {
    let mut job = behind_a_door(2, |job| {
        let card = &mut job.cards.hinges[0];
        (card.half_zone.value, card.reach.value) = (mm(150), mm(30));
    });
    let proposals = for_cabinet(&job, CABINET, None);
    assert!(
        proposals[1].title.contains("set back 32.0"),
        "{proposals:#?}"
    );
    assert!(proposals[1].why.contains(
        &"set back 32.0, still on the grid: the runners begin behind the hinges".to_string()
    ));
    let before = stops(&job);
    take_all(&mut job);
    assert_eq!(stops(&job), before);
    assert!(bay_in(&job, 1).runners.iter().all(|it| it.set_back == 1));
}
