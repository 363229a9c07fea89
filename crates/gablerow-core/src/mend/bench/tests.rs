//! Proof of `bench`.

use proptest::prelude::*;
use proptest::strategy::ValueTree as _;
use proptest::test_runner::TestRunner;

use super::super::fixes;
use super::super::tests::{the_finding, titles};
use crate::arbitrary::*;
use crate::bench::{bored_by, plan, progress_of_job, recounted};
use crate::check::{self, Finding, Rule};
use crate::job::{Bit, Hand, Job, Key};
use crate::measure::Length;

#[test]
fn a_stop_that_the_rail_lacks_is_mended_by_offsets_it_has_and_habits_by_others() {
    let job = job_with(|job| {
        job.cabinets[0].offsets.foot = Length::from_um(16_200);
        job.shop.bit = Bit::Pointed;
        job.cabinets[0].opening.bay_mut(Key(1)).unwrap().zones = [zone(12, 3..=10)].into();
    });
    assert_eq!(titles(&job, Rule::EndStopValue)[0], "offsets 16.0 and 16.0");
    assert_eq!(titles(&job, Rule::BitWrongForHole), ["bit flat"]);
}

/// A stop that measures 16.2 is typed on the card of the rail, and the holes of whoever takes its offset are 0.2 higher.
#[test]
fn a_measured_stop_makes_the_offsets_that_it_gives() {
    let mut job = job_with(|job| {
        job.cabinets[0].opening.bay_mut(Key(1)).unwrap().zones = [zone(12, 3..=10)].into();
    });
    let long = job.shop.rail.clone();
    let rail = job
        .cards
        .rails
        .iter_mut()
        .find(|rail| Some(&rail.id) == long.as_ref());
    rail.unwrap().stops[0] = Length::from_um(16_200);
    let fixes = fixes(&job, &the_finding(&job, Rule::EndStopValue));
    let fix = fixes
        .iter()
        .find(|fix| fix.title == "offsets 16.2 and 16.2");
    let step = fix.unwrap().edit.as_ref().unwrap().apply(&job).unwrap();
    step.apply(&mut job);
    let plan = plan(&job, &[job.cabinets[0].key], &job.shop.bench.times);
    let stops: Vec<_> = plan.set_ups.iter().map(|it| it.rest.stop).collect();
    assert_eq!(stops, [Length::from_um(16_200); 4]);
}

/// Plates on 3-4 and 19-20 of the left side, and pins on 11 to 16, measured so many holes off there.
fn measured(holes: i32) -> Job {
    let mut job = bay_with(|bay| {
        bay.zones = [zone(12, 11..=16)].into();
        bay.plates = [plate(13, Hand::Left, 3), plate(14, Hand::Left, 19)].into();
    });
    let off = Length::PITCH * holes;
    measure_faces(&mut job, |face| (face == LEFT_INSIDE).then_some(off));
    job
}

#[test]
fn a_plate_goes_to_where_its_holes_were_bored() {
    assert_eq!(
        titles(&measured(1), Rule::MiscountedHole)[..2],
        ["hinge plate to hole 20", "hinge plate to hole 2"]
    );
    assert_eq!(
        titles(&measured(-1), Rule::MiscountedHole)[..2],
        ["hinge plate to hole 18", "hinge plate to hole 4"]
    );
    let fix = &fixes(
        &measured(1),
        &the_finding(&measured(1), Rule::MiscountedHole),
    )[0];
    assert_eq!(
        fix.why[1],
        "as it was bored; its other holes, and every other copy, go with it"
    );
}

/// Wanted at 3-4 and 19-20, and a hole too far apart: bored at 20-21 above, or at 2-3 below. Once that plate is moved nothing is
/// left or stale.
#[test]
fn what_was_bored_by_a_miscount_is_on_record_where_it_is() {
    for (fix, numbers) in [(0, [20, 21]), (1, [2, 3])] {
        let mut job = measured(1);
        let cabinet = job.cabinets[0].key;
        for set_up in plan(&job, &[cabinet], &job.shop.bench.times).set_ups {
            job.bored.extend(bored_by(&set_up, &job));
        }
        let fixes = fixes(&job, &the_finding(&job, Rule::MiscountedHole));
        let stale = |why: &String| why.contains("wanted no longer");
        assert!(!fixes[fix].why.iter().any(stale), "{:?}", fixes[fix].why);
        let mut after = job.clone();
        let step = fixes[fix].edit.as_ref().unwrap().apply(&job).unwrap();
        step.apply(&mut after);
        assert!(progress_of_job(&after).iter().any(|it| it.left > 0));
        let found = recounted(&job, &after, cabinet);
        let there = found.iter().filter(|it| !it.taken_back);
        let there: Vec<u16> = there.map(|it| it.hole.unwrap().get()).collect();
        assert_eq!(there, numbers);
        after.bored.extend(found);
        let is_done = |job: &Job| {
            let panels = progress_of_job(job);
            panels.iter().all(|it| (it.left, it.stale.len()) == (0, 0))
        };
        assert!(is_done(&after));
        // Taken back and made again: the record says already where the holes are.
        let mut again = after.clone();
        step.revert(&mut again);
        let before = again.clone();
        step.apply(&mut again);
        assert_eq!(recounted(&before, &again, cabinet), []);
        assert!(is_done(&again));
    }
}

/// Pins that are measured from their own first hole to their own last one are wrong inside, wherever they go.
#[test]
fn a_row_that_is_wrong_inside_loses_a_hole_or_is_accepted_and_moves_nowhere() {
    let mut job = bay_with(|bay| bay.zones = [zone(12, 11..=16)].into());
    measure_faces(&mut job, |_| Some(Length::PITCH));
    let less = [
        "pins 11-16 without 11",
        "pins 11-16 without 16",
        "no pins 11-16",
    ];
    assert_eq!(titles(&job, Rule::MiscountedHole), less);
}

/// The laws of all fixes are held over jobs in which rows were miscounted, and some of those are mended.
#[test]
fn laws_meet_rows_that_were_miscounted_and_mend_some() {
    let mut runner = TestRunner::deterministic();
    let mut mended = 0;
    for _ in 0..200 {
        let job = measured_job().new_tree(&mut runner).unwrap().current();
        let found = check::of_job(&job);
        let of_it = |it: &&Finding| it.rule == Rule::MiscountedHole;
        mended += found
            .iter()
            .filter(of_it)
            .map(|it| fixes(&job, it).len())
            .sum::<usize>();
    }
    assert!(mended > 10, "{mended}");
}
