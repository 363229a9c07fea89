//! The cabinet that benchmarks have in common.

use gablerow_core::edit::{BayRun, Edit};
use gablerow_core::job::{Datum, Hand, Job, Key};
use gablerow_core::label::Label;

/// Holes of the one bay of the plain cabinet.
pub(crate) fn run(first: i16, last: i16, datum: Datum) -> BayRun {
    BayRun {
        cabinet: Key(1),
        bay: Key(1),
        first,
        last,
        datum,
    }
}

/// A job of one plain cabinet with a door on two plates, a shelf zone, three drawers, and what these edits add.
pub(crate) fn furnished(more: &[Edit]) -> Job {
    let mut job = Job::plain(Label::new("bench").expect("a name"));
    let plate = |hole, datum| Edit::Plates {
        wall: Hand::Left,
        run: run(hole, hole, datum),
    };
    let edits = [
        plate(3, Datum::Foot),
        plate(19, Datum::Head),
        Edit::Pins(run(6, 10, Datum::Foot)),
        Edit::Runners(run(2, 2, Datum::Foot)),
        Edit::Runners(run(11, 12, Datum::Foot)),
    ];
    for edit in edits.iter().chain(more) {
        edit.apply(&job).expect("an edit that fits").apply(&mut job);
    }
    job
}
