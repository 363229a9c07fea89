//! Proof of `doors`.

use crate::arbitrary::*;
use crate::check::{self, Rule};
use crate::job::{Hand, Inset, Job, Key, Label};
use crate::mend::fixes;

/// The plain cabinet with a door on the left over its one bay, with plates on these holes, changed.
fn hung(holes: &[i16], change: impl FnOnce(&mut Job)) -> Job {
    let mut job = bay_with(|bay| {
        let keys = 13..;
        bay.plates = keys
            .zip(holes)
            .map(|(key, &hole)| plate(key, Hand::Left, hole))
            .collect();
    });
    put_fronts(&mut job, 1, [door(12, Hand::Left)].into());
    change(&mut job);
    job
}

/// What is offered against the first finding of a rule, but for doors and fittings less.
fn titles(job: &Job, rule: Rule) -> Vec<String> {
    let found = check::of_job(job);
    let finding = found.iter().find(|finding| finding.rule == rule).unwrap();
    let fixes = fixes(job, finding).into_iter().map(|fix| fix.title);
    fixes.filter(|title| !title.starts_with("no ")).collect()
}

// Geometry: 18 less 5 is 13 wanted; arm 11 and tab 3 on plate 2 give 12.
#[test]
fn overlay_out_of_reach_takes_another_reveal() {
    let job = hung(&[3, 19], |job| {
        job.shop.fronts.reveal_side = mm(5);
        let card = &mut job.cards.hinges[0];
        (card.arms.full.value, card.plates) = (mm(11), vec![mm(2)]);
        (card.tabs.least.value, card.tabs.most.value) = (mm(3), mm(3));
        card.adjust.value = um(500);
    });
    assert_eq!(
        titles(&job, Rule::OverlayUnreachable),
        ["hinge plates: hinge-in-line", "reveal, side 6.0"]
    );
}

#[test]
fn narrow_reveal_gets_what_the_door_needs() {
    let job = hung(&[3, 19], |job| job.shop.fronts.reveal_side = um(500));
    assert_eq!(titles(&job, Rule::RevealTooSmall), ["reveal, side 1.0"]);
}

#[test]
fn doors_flush_at_the_foot_get_split_reveals_or_offsets() {
    let job = hung(&[3, 19], |job| {
        job.shop.fronts.reveal_foot = mm(0);
        job.shop.fronts.reveal_head = mm(3);
    });
    assert_eq!(
        titles(&job, Rule::DoorHanded),
        [
            "offsets 14.5 and 17.5",
            "reveals split",
            "reveal, head 0.0",
            "reveal, foot 3.0"
        ]
    );
}

#[test]
fn middle_hinge_goes_into_the_middle() {
    let job = hung(&[3, 12, 19], |_| ());
    assert_eq!(titles(&job, Rule::DoorHanded), ["hinge plate to hole 11"]);
}

#[test]
fn hinges_are_added_and_moved_outward() {
    let few = hung(&[3, 18], |job| {
        job.cabinets[0].size.height = mm(960);
    });
    assert_eq!(
        titles(&few, Rule::HingesTooFew),
        ["D1: plates on 3-4, 15-16, 27-28"]
    );
    let close = hung(&[4, 15], |_| ());
    assert_eq!(
        titles(&close, Rule::HingesTooClose),
        ["hinge plate to hole 19", "D1: plates on 3-4, 19-20"]
    );
}

#[test]
fn other_wall_gets_the_same_plates() {
    let job = hung(&[3, 19], |_| ());
    assert_eq!(
        titles(&job, Rule::DoorSideChange),
        ["plates of D1 on both walls"]
    );
}

#[test]
fn cabinet_takes_the_front_row_of_the_first_one() {
    let mut job = hung(&[3, 19], |_| ());
    let mut second = job.cabinets[0].clone();
    (second.key, second.name) = (Key(2), Label::known("B2"));
    let bay = second.opening.bay_mut(Key(1)).unwrap();
    bay.recess = mm(5);
    job.cabinets.push(second);
    assert_eq!(titles(&job, Rule::InsetOverlayMixed), ["recess 0.0"]);
    let bay = job.cabinets[1].opening.bay_mut(Key(1)).unwrap();
    (bay.recess, bay.inset) = (mm(0), Some(Inset::default()));
    assert_eq!(
        titles(&job, Rule::InsetOverlayMixed),
        ["fronts before the edges"]
    );
}

#[test]
fn inset_bay_is_made_for_its_door() {
    let job = hung(&[3, 19], |job| {
        bay_of(job, 1).inset = Some(Inset {
            front: Some(mm(22)),
            set_in: mm(1),
        });
    });
    assert_eq!(
        titles(&job, Rule::InsetOnOverlayRow),
        ["fronts before the edges", "inset front 19.0"]
    );
}

#[test]
fn plates_back_to_back_move_apart() {
    let mut job = cabinet_x(|job| {
        bay_of(job, 11).plates = [plate(21, Hand::Right, 5), plate(22, Hand::Right, 18)].into();
        bay_of(job, 12).plates = [plate(23, Hand::Left, 5), plate(24, Hand::Left, 18)].into();
    });
    put_fronts(&mut job, 11, [door(25, Hand::Right)].into());
    put_fronts(&mut job, 12, [door(26, Hand::Left)].into());
    assert_eq!(
        titles(&job, Rule::OpposedPlates),
        [
            "hinge plate to hole 3",
            "hinge plate to hole 3",
            "hinge plate to hole 7",
            "hinge plate to hole 7",
            "D1: plates on 7-8, 20-21",
            "D1: plates on 7-8, 20-21",
        ]
    );
}
