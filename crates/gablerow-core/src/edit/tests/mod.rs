//! What each edit does, what it refuses, and the laws all of them keep.

mod adjust;
mod cabinets;
mod cards;
mod contents;
mod copies;
mod fittings;
mod free;
mod laws;
mod measures;
mod openings;
mod pins;
mod served;
mod shelves;
mod uniting;

use super::{BayRun, Edit, Refusal};
use crate::history::Step;
use crate::job::{Datum, Job, Key};

/// A run of the one bay of the plain cabinet, counted from the foot.
fn run(first: i16, last: i16) -> BayRun {
    BayRun {
        cabinet: Key(1),
        bay: Key(1),
        first,
        last,
        datum: Datum::Foot,
    }
}

/// Makes the edit and gives the label of its step.
#[track_caller]
fn make(job: &mut Job, edit: &Edit) -> String {
    let Step { label, change } = edit.apply(job).unwrap();
    Step {
        label: label.clone(),
        change,
    }
    .apply(job);
    assert_eq!(job.validate(), Ok(()));
    label
}

/// What a refused edit says.
#[track_caller]
fn refused(job: &Job, edit: &Edit) -> String {
    let Refusal(why) = edit.apply(job).unwrap_err();
    why
}
