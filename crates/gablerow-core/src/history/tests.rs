//! The way back, held against a list of whole jobs.

use proptest::prelude::*;

use super::History;
use crate::arbitrary::{self, Wish, job_with, mm, wish};
use crate::edit::{Edit, Measure};
use crate::job::{Job, Key};

#[derive(Clone, Debug)]
enum Press {
    Edit(Wish),
    Undo,
    Redo,
    Save,
}

fn press() -> impl Strategy<Value = Press> {
    prop_oneof![
        4 => wish().prop_map(Press::Edit),
        2 => Just(Press::Undo),
        2 => Just(Press::Redo),
        1 => Just(Press::Save),
    ]
}

/// A history that keeps every state whole.
struct Naive {
    states: Vec<Job>,
    at: usize,
    saved: Option<usize>,
}

impl Naive {
    fn since_saved(&self) -> Option<isize> {
        let [at, saved] = [self.at, self.saved?].map(|at| isize::try_from(at).unwrap());
        Some(at - saved)
    }

    fn press(&mut self, press: &Press) {
        match press {
            Press::Edit(wish) => {
                let job = &self.states[self.at];
                let Ok(step) = wish.of(job).apply(job) else {
                    return;
                };
                let mut next = job.clone();
                step.apply(&mut next);
                self.states.truncate(self.at + 1);
                self.saved = self.saved.filter(|&saved| saved <= self.at);
                self.states.push(next);
                self.at += 1;
            }
            Press::Undo => self.at = self.at.saturating_sub(1),
            Press::Redo => self.at = (self.at + 1).min(self.states.len() - 1),
            Press::Save => self.saved = Some(self.at),
        }
    }
}

fn real(press: &Press, history: &mut History, job: &mut Job) {
    match press {
        Press::Edit(wish) => {
            if let Ok(step) = wish.of(job).apply(job) {
                history.make(step, job);
            }
        }
        Press::Undo => drop(history.undo(job)),
        Press::Redo => drop(history.redo(job)),
        Press::Save => history.mark_saved(),
    }
}

proptest! {
    #[test]
    fn history_is_a_list_of_whole_jobs(
        start in arbitrary::job(),
        presses in prop::collection::vec(press(), 0..24),
    ) {
        let (mut job, mut history) = (start.clone(), History::of_saved());
        let mut naive = Naive { states: vec![start], at: 0, saved: Some(0) };
        for press in &presses {
            naive.press(press);
            real(press, &mut history, &mut job);
            prop_assert_eq!(&job, &naive.states[naive.at], "after {:?}", press);
            prop_assert_eq!(history.undoable(), naive.at);
            prop_assert_eq!(history.redoable(), naive.states.len() - 1 - naive.at);
            prop_assert_eq!(history.is_saved(), naive.saved == Some(naive.at));
            prop_assert_eq!(history.since_saved(), naive.since_saved());
            prop_assert_eq!(history.steps().len(), naive.states.len() - 1);
        }
    }

    #[test]
    fn history_without_a_job_keeps_pace_with_one_that_has_it(
        start in arbitrary::job(),
        presses in prop::collection::vec(press(), 0..24),
    ) {
        let (mut job, mut with_job) = (start, History::of_saved());
        let mut without = History::of_saved();
        for press in &presses {
            match press {
                Press::Edit(wish) => {
                    if let Ok(step) = wish.of(&job).apply(&job) {
                        without.push(step);
                    }
                }
                Press::Undo => drop(without.step_back()),
                Press::Redo => drop(without.step_forward()),
                Press::Save => without.mark_saved(),
            }
            real(press, &mut with_job, &mut job);
            prop_assert_eq!(&without, &with_job);
        }
    }

    #[test]
    fn redo_after_undo_is_identity(
        start in arbitrary::job(),
        wishes in prop::collection::vec(wish(), 1..12),
    ) {
        let (mut job, mut history) = (start.clone(), History::of_saved());
        for wish in wishes {
            real(&Press::Edit(wish), &mut history, &mut job);
        }
        let end = job.clone();
        while history.undo(&mut job).is_some() {}
        prop_assert_eq!(&job, &start);
        while history.redo(&mut job).is_some() {}
        prop_assert_eq!(job, end);
    }
}

fn height(job: &Job, value: i32) -> super::Step {
    let edit = Edit::Measure {
        cabinet: Key(1),
        measure: Measure::Height,
        value: mm(value),
    };
    edit.apply(job).unwrap()
}

#[test]
fn undo_and_redo_give_the_step_they_moved_over() {
    let (mut job, mut history) = (job_with(|_| ()), History::of_saved());
    history.make(height(&job, 736), &mut job);
    assert_eq!(
        history.undo(&mut job).map(|step| step.label.as_str()),
        Some("height 736")
    );
    assert_eq!(history.undo(&mut job), None);
    assert_eq!(
        history.redo(&mut job).map(|step| step.label.as_str()),
        Some("height 736")
    );
    assert_eq!(history.redo(&mut job), None);
    assert_eq!(job.cabinets[0].size.height, mm(736));
}

#[test]
fn state_on_disk_that_was_written_over_cannot_be_reached_again() {
    let (mut job, mut history) = (job_with(|_| ()), History::of_saved());
    assert!(history.is_saved());
    history.make(height(&job, 736), &mut job);
    assert!(!history.is_saved());
    history.mark_saved();
    assert!(history.is_saved());
    history.undo(&mut job);
    assert!(!history.is_saved());
    history.make(height(&job, 800), &mut job);
    history.undo(&mut job);
    assert!(
        !history.is_saved(),
        "736 was saved, and no step leads there"
    );
    assert_eq!((history.undoable(), history.redoable()), (0, 1));
}

#[test]
fn history_of_a_job_that_is_on_no_disk_is_not_saved() {
    assert!(!History::default().is_saved());
}
