//! The record against the layout: whatever was bored is done, whatever was changed since is stale.

use super::*;
use crate::edit::{Edit, Measure};
use crate::job::Bored;
use proptest::prelude::*;
use proptest::sample::Index;

fn all_left(job: &Job) -> Plan {
    let cabinets: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
    plan_left(job, &job.bored, &cabinets, &Times::default())
}

/// Done, left and stale holes of every copy.
fn counts(job: &Job) -> (usize, usize, usize) {
    let all = progress_of_job(job).into_iter();
    all.fold((0, 0, 0), |all, it| {
        (all.0 + it.done, all.1 + it.left, all.2 + it.stale.len())
    })
}

fn without_record(mut job: Job) -> Job {
    job.bored.clear();
    job
}

proptest! {
    #[test]
    fn set_up_by_set_up_all_is_done_once_and_nothing_is_left(job in job()) {
        let mut job = without_record(job);
        let all = counts(&job).1;
        for set_up in all_left(&job).set_ups {
            let record = bored_by(&set_up, &job);
            prop_assert_eq!(record.len(), set_up.holes.count());
            job.bored.extend(record);
        }
        prop_assert_eq!(counts(&job), (all, 0, 0));
        prop_assert_eq!(all_left(&job).set_ups, []);
    }

    #[test]
    fn what_is_taken_back_is_left_again(job in job()) {
        let mut job = without_record(job);
        let before = all_left(&job);
        for set_up in &before.set_ups {
            job.bored.extend(bored_by(set_up, &job));
        }
        let back: Vec<Bored> = job.bored.iter().map(|it| Bored { taken_back: true, ..*it }).collect();
        job.bored.extend(back);
        prop_assert_eq!(all_left(&job), before);
    }

    #[test]
    fn row_by_row_all_is_taken_back_and_no_more(job in job()) {
        let mut job = without_record(job);
        let before = all_left(&job);
        for set_up in &before.set_ups {
            job.bored.extend(bored_by(set_up, &job));
        }
        // Parts of one row that come one after the other are taken back as one.
        let row = |it: &Bored| (it.cabinet, it.copy, it.face, it.from_front, it.diameter, it.depth);
        let back = |it: &Bored| Bored { taken_back: true, ..*it };
        let rows: Vec<Vec<Bored>> = job.bored.chunk_by(|a, b| row(a) == row(b))
            .map(|of_row| of_row.iter().rev().map(back).collect())
            .collect();
        for of_row in rows.into_iter().rev() {
            let last = last_taken_back(&job);
            prop_assert_eq!(&last, &of_row);
            job.bored.extend(last);
        }
        prop_assert_eq!(last_taken_back(&job), []);
        prop_assert_eq!(all_left(&job), before);
    }

    #[test]
    fn of_a_panel_cut_anew_all_is_left_and_of_the_others_nothing_more(job in job(), index in any::<Index>()) {
        let mut job = without_record(job);
        let before = progress_of_job(&job);
        for set_up in all_left(&job).set_ups {
            job.bored.extend(bored_by(&set_up, &job));
        }
        if before.is_empty() {
            return Ok(());
        }
        let at = index.index(before.len());
        let panel = &before[at];
        job.bored.extend(cut_anew(&job, panel.cabinet, panel.copy, panel.panel).0);
        let after = progress_of_job(&job);
        for (place, (was, is)) in before.iter().zip(&after).enumerate() {
            prop_assert_eq!((is.left, is.stale.len()), if place == at { (was.left, 0) } else { (0, 0) });
        }
        prop_assert_eq!(cut_anew(&job, panel.cabinet, panel.copy, panel.panel).0, []);
    }

    #[test]
    fn a_record_of_half_the_work_leaves_the_other_half(job in job(), half in 0..40_usize) {
        let mut job = without_record(job);
        let all = counts(&job).1;
        for set_up in all_left(&job).set_ups.iter().step_by(half + 1) {
            job.bored.extend(bored_by(set_up, &job));
        }
        let left: usize = all_left(&job).set_ups.iter().map(|it| it.holes.count()).sum();
        prop_assert_eq!((job.bored.len(), left), (all - left, counts(&job).1));
    }
}

#[test]
fn what_was_bored_before_a_change_is_stale_and_bored_again() {
    let mut job = without_record(glaze_store());
    let all = counts(&job).1;
    for set_up in all_left(&job).set_ups {
        job.bored.extend(bored_by(&set_up, &job));
    }
    let edit = Edit::Measure {
        cabinet: job.cabinets[0].key,
        measure: Measure::SetbackBack,
        value: Length::from_mm(40),
    };
    edit.apply(&job).unwrap().apply(&mut job);
    let (done, left, stale) = counts(&job);
    assert_eq!(
        left, stale,
        "the back rows, where they were and where they are now"
    );
    assert!(left > 0 && done > 0 && done + left == all, "{done} {left}");
    assert!(
        all_left(&job)
            .set_ups
            .iter()
            .all(|it| it.edge == Edge::Back)
    );
}

#[test]
fn a_panel_that_is_gone_is_stale_as_a_whole() {
    let mut job = without_record(glaze_store());
    for set_up in all_left(&job).set_ups {
        job.bored.extend(bored_by(&set_up, &job));
    }
    let gone = PanelId::Partition(Key(4_000));
    let mut of_gone = job.bored[0];
    of_gone.face.panel = gone;
    job.bored.push(of_gone);
    let cabinet = &job.cabinets[0];
    let last = progress_of_cabinet(&job, cabinet).pop().unwrap();
    assert_eq!((last.panel, last.stale), (gone, [of_gone].into()));
}
