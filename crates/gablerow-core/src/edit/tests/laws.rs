//! Laws of every edit of every job.

use std::collections::BTreeSet;

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

use crate::arbitrary::{self, datum, hand, wish};
use crate::cards::PlateShape;
use crate::edit::{Adjust, BayRun, Edit};
use crate::job::{Bay, Cabinet, Datum, Division, Job, Key};
use crate::layout::Layout;

/// A run of holes that the cabinet has, in its first bay.
fn any_run(job: &Job, first: i16, more: i16, datum: Datum) -> Option<BayRun> {
    let cabinet = &job.cabinets[0];
    let last = Layout::last_hole(cabinet, &job.shop);
    let mut bay = None;
    cabinet.opening.each(&mut |opening| {
        if let (None, Division::Bay(_)) = (bay, &opening.division) {
            bay = Some(opening.key);
        }
    });
    let first = first.min(last);
    (last > 0).then_some(BayRun {
        cabinet: cabinet.key,
        bay: bay.unwrap(),
        first,
        last: (first + more).min(last),
        datum,
    })
}

/// Makes an edit when it is not refused.
fn made(edit: &Edit, job: &Job) -> Option<Job> {
    let mut after = job.clone();
    edit.apply(job).ok()?.apply(&mut after);
    Some(after)
}

fn change_bay(job: &mut Job, key: Key, change: impl FnOnce(&mut Bay)) {
    change(job.cabinets[0].opening.bay_mut(key).unwrap());
}

proptest! {
    #[test]
    fn undo_after_edit_is_identity(start in arbitrary::job(), wishes in prop::collection::vec(wish(), 1..10)) {
        let mut job = start;
        for wish in wishes {
            let before = job.clone();
            if let Ok(step) = wish.of(&job).apply(&job) {
                step.apply(&mut job);
                prop_assert_ne!(&job, &before, "{:?} changed nothing and was not refused", step.label);
                let after = job.clone();
                step.revert(&mut job);
                prop_assert_eq!(&job, &before);
                step.apply(&mut job);
                prop_assert_eq!(&job, &after);
            }
            prop_assert_eq!(job.bored.len(), before.bored.len(), "no edit touches what was bored");
        }
    }

    #[test]
    fn every_edit_gives_a_job_that_validates(start in arbitrary::job(), wishes in prop::collection::vec(wish(), 1..10)) {
        let mut job = start;
        for wish in wishes {
            let edit = wish.of(&job);
            if let Ok(step) = edit.apply(&job) {
                step.apply(&mut job);
                prop_assert_eq!(job.validate(), Ok(()), "{:?}", edit);
                prop_assert!(!step.label.is_empty());
            }
        }
    }

    #[test]
    fn refusals_say_why(job in arbitrary::job(), wish in wish()) {
        if let Err(refusal) = wish.of(&job).apply(&job) {
            prop_assert!(refusal.0.len() > 10, "{}", refusal);
        }
    }

    #[test]
    fn recount_leaves_every_hole_where_it_is(job in arbitrary::job(), datum in datum()) {
        let cabinet = &job.cabinets[0];
        let mut keys = Vec::new();
        cabinet.each_key(&mut |key| keys.push(key));
        let holes = |cabinet: &Cabinet| {
            let layout = Layout::of(cabinet, &job);
            let faces = layout.uprights.iter().flat_map(|upright| &upright.faces);
            faces.map(|face| face.holes(&layout)).collect::<Vec<_>>()
        };
        for fitting in keys {
            let edit = Edit::Recount { cabinet: cabinet.key, fitting, datum };
            if let Some(after) = made(&edit, &job) {
                prop_assert_eq!(holes(cabinet), holes(&after.cabinets[0]));
            }
        }
    }

    #[test]
    fn pins_toggled_twice_on_empty_ground_are_as_before(
        mut job in arbitrary::job(), first in 1..30_i16, more in 0..9_i16, datum in datum(),
    ) {
        let Some(run) = any_run(&job, first, more, datum) else { return Ok(()) };
        let last = Layout::last_hole(&job.cabinets[0], &job.shop);
        change_bay(&mut job, run.bay, |bay| bay.zones.retain(|zone| {
            let (first, top) = zone.numbers(last);
            top < run.first - 1 || first > run.last + 1
        }));
        toggles_back(&job, &Edit::Pins(run))?;
    }

    #[test]
    fn plates_toggled_twice_on_empty_ground_are_as_before(
        mut job in arbitrary::job(), first in 1..30_i16, more in 0..9_i16, datum in datum(), wall in hand(),
    ) {
        let Some(run) = any_run(&job, first, more, datum) else { return Ok(()) };
        let last = Layout::last_hole(&job.cabinets[0], &job.shop);
        change_bay(&mut job, run.bay, |bay| {
            bay.plates.retain(|plate| plate.wall != wall);
            bay.plates.sort_by_key(|plate| plate.hole.number(last));
        });
        let edit = Edit::Plates { wall, run };
        let card = job.cards.hinge(&job.shop.hinge).unwrap();
        if card.plate == PlateShape::AlongRow && run.first == last {
            prop_assert!(edit.apply(&job).is_err(), "a plate along the row has no room on the highest hole");
        } else {
            toggles_back(&job, &edit)?;
        }
    }

    #[test]
    fn runners_and_shelves_toggled_twice_on_empty_ground_are_as_before(
        mut job in arbitrary::job(), first in 1..30_i16, more in 0..9_i16, datum in datum(),
    ) {
        let Some(run) = any_run(&job, first, more, datum) else { return Ok(()) };
        let last = Layout::last_hole(&job.cabinets[0], &job.shop);
        change_bay(&mut job, run.bay, |bay| {
            let clear = |number: i16| number < run.first || number > run.last;
            bay.runners.retain(|runner| clear(runner.hole.number(last)));
            bay.runners.sort_by_key(|runner| runner.hole.number(last));
            bay.shelves.retain(|shelf| clear(shelf.hole.number(last)));
            bay.shelves.sort_by_key(|shelf| shelf.hole.number(last));
        });
        toggles_back(&job, &Edit::Runners(run))?;
        toggles_back(&job, &Edit::Shelves(run))?;
    }

    #[test]
    fn after_toggling_pins_the_whole_run_is_there_or_none_of_it(
        job in arbitrary::job(), first in 1..30_i16, more in 0..9_i16, datum in datum(),
    ) {
        let Some(run) = any_run(&job, first, more, datum) else { return Ok(()) };
        let last = Layout::last_hole(&job.cabinets[0], &job.shop);
        let pinned = |job: &Job, number: i16| {
            let bay = job.cabinets[0].opening.bay(run.bay).unwrap();
            let mut zones = bay.zones.iter().map(|zone| zone.numbers(last));
            zones.any(|(first, top)| (first..=top).contains(&number))
        };
        let all_there = (run.first..=run.last).all(|number| pinned(&job, number));
        let after = made(&Edit::Pins(run), &job);
        let after = after.ok_or_else(|| TestCaseError::fail("refused"))?;
        for number in -400..530 {
            let expected = match (run.first..=run.last).contains(&number) {
                true => !all_there,
                false => pinned(&job, number),
            };
            prop_assert_eq!(pinned(&after, number), expected, "hole {}", number);
        }
    }
}

/// Twice is not at all, and once is something.
fn toggles_back(job: &Job, edit: &Edit) -> Result<(), TestCaseError> {
    let once = made(edit, job).ok_or_else(|| TestCaseError::fail("refused"))?;
    prop_assert_ne!(&once, job);
    let twice = made(edit, &once).ok_or_else(|| TestCaseError::fail("refused the second time"))?;
    prop_assert_eq!(&twice, job);
    Ok(())
}

/// What an edit of fittings is called, and how it adjusts them.
fn kind_of_fitting_edit(edit: &Edit) -> Option<&'static str> {
    Some(match edit {
        Edit::NoFitting { .. } => "less",
        Edit::Furnish(_) => "furnish",
        Edit::Adjust { adjust, .. } => match adjust {
            Adjust::Up(_) => "up",
            Adjust::Without(..) => "without",
            Adjust::Depth(_) => "depth",
            Adjust::In(_) => "in",
            Adjust::Runner(_) => "runner",
        },
        _ => return None,
    })
}

#[test]
fn edits_at_random_are_made_and_refused_of_every_kind_of_fitting_edit() {
    let job = arbitrary::glaze_store();
    let mut runner = TestRunner::deterministic();
    let [mut made, mut refused] = [BTreeSet::new(), BTreeSet::new()];
    for _ in 0..3_000 {
        let edit = wish().new_tree(&mut runner).unwrap().current().of(&job);
        if let Some(kind) = kind_of_fitting_edit(&edit) {
            let kinds = match edit.apply(&job) {
                Ok(_) => &mut made,
                Err(_) => &mut refused,
            };
            kinds.insert(kind);
        }
    }
    let all = ["depth", "furnish", "in", "less", "runner", "up", "without"];
    assert_eq!(made, BTreeSet::from(all));
    assert_eq!(refused, BTreeSet::from(all));
}
