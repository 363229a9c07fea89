//! A full re-proposal of a cabinet of 40 holes with ten drawers and two doors on three hinges each.
//!
//! `cargo bench -p gablerow-core --bench propose` prints the medians of its rounds. A frame has 16 ms. With all of it taken the
//! holes that are barred are asked for, of a bay between two partitions, as every frame of a face does; and what would mend a
//! zone drawn over all of that bay, as every frame with fixes open does.

// A benchmark prints for people, and may panic where its own job is wrong.
#![allow(clippy::print_stdout, clippy::expect_used)]

use std::hint::black_box;
use std::time::{Duration, Instant};

use gablerow_core::check;
use gablerow_core::edit::{BayRun, Edit, Measure, Way};
use gablerow_core::job::{Datum, Job, Key};
use gablerow_core::label::Label;
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use gablerow_core::{mend, propose};

const ROUNDS: usize = 201;

fn main() {
    let job = job();
    let cabinet = job.cabinets[0].key;
    let proposals = propose::for_cabinet(&job, cabinet, None);
    for proposal in &proposals {
        assert!(proposal.edit.is_some(), "{proposal:#?}");
    }
    let layout = Layout::of(&job.cabinets[0], &job);
    println!(
        "{} holes, {} fronts, {} proposals; medians of {ROUNDS}: {:?}",
        layout.last,
        layout.fronts.len(),
        proposals.len(),
        median(|| drop(black_box(propose::for_cabinet(
            black_box(&job),
            cabinet,
            None
        ))))
    );
    let mut full = job.clone();
    make(
        &mut full,
        &propose::all_in_one(&proposals).expect("an edit"),
    );
    let bay = layout.bays[1].key;
    let laid = Layout::of(&full.cabinets[0], &full);
    let barred = || mend::barred(black_box(&full), &full.cabinets[0], &laid, bay);
    println!(
        "{} barred holes: {:?}",
        barred().len(),
        median(|| drop(barred()))
    );
    let run = BayRun {
        cabinet,
        bay,
        first: 2,
        last: laid.last - 1,
        datum: Datum::Foot,
    };
    make(&mut full, &Edit::Pins(run));
    let found = check::of_job(&full);
    let stop = found.iter().find(|it| it.is_open_stop()).expect("a stop");
    let fixes = || mend::fixes(black_box(&full), stop);
    println!(
        "{} findings, {} fixes of the first: {:?}",
        found.len(),
        fixes().len(),
        median(|| drop(fixes()))
    );
}

fn median(of: impl Fn()) -> Duration {
    let mut times: Vec<Duration> = (0..ROUNDS)
        .map(|_| {
            let start = Instant::now();
            of();
            start.elapsed()
        })
        .collect();
    times.sort();
    times[ROUNDS / 2]
}

fn make(job: &mut Job, edit: &Edit) {
    edit.apply(job).expect("an edit of this bench").apply(job);
}

/// Doors on the outer bays, ten drawers on the one between.
fn job() -> Job {
    let mut job = Job::plain(Label::new("kiln room").expect("a name"));
    let cabinet = job.cabinets[0].key;
    for (measure, value) in [(Measure::Height, 1280), (Measure::Width, 1500)] {
        let value = Length::from_mm(value);
        make(
            &mut job,
            &Edit::Measure {
                cabinet,
                measure,
                value,
            },
        );
    }
    let opening = job.cabinets[0].opening.key;
    make(
        &mut job,
        &Edit::Divide {
            cabinet,
            opening,
            way: Way::SideBySide,
            parts: 3,
        },
    );
    let layout = Layout::of(&job.cabinets[0], &job);
    let bays: Vec<Key> = layout.bays.iter().map(|bay| bay.key).collect();
    for opening in [bays[0], bays[2]] {
        make(&mut job, &Edit::Door { cabinet, opening });
    }
    make(
        &mut job,
        &Edit::Drawers {
            cabinet,
            opening: bays[1],
            count: 10,
        },
    );
    job
}
