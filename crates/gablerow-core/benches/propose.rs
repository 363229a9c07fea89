//! A full re-proposal of a cabinet of 40 holes with ten drawers and two doors on three hinges each.
//!
//! `cargo bench -p gablerow-core --bench propose` prints the median of its rounds. A frame has 16 ms; a frame with proposals open
//! asks for them twice, once for the list and once for the drawing.

// A benchmark prints for people, and may panic where its own job is wrong.
#![allow(clippy::print_stdout, clippy::expect_used)]

use std::hint::black_box;
use std::time::{Duration, Instant};

use gablerow_core::edit::{Edit, Measure, Way};
use gablerow_core::job::{Job, Key};
use gablerow_core::label::Label;
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use gablerow_core::propose;

const ROUNDS: usize = 201;

fn main() {
    let job = job();
    let cabinet = job.cabinets[0].key;
    let proposals = propose::for_cabinet(&job, cabinet, None);
    for proposal in &proposals {
        assert!(proposal.edit.is_some(), "{proposal:#?}");
    }
    let layout = Layout::of(&job.cabinets[0], &job);
    let mut times: Vec<Duration> = (0..ROUNDS)
        .map(|_| {
            let start = Instant::now();
            black_box(propose::for_cabinet(black_box(&job), cabinet, None));
            start.elapsed()
        })
        .collect();
    times.sort();
    println!(
        "{} holes, {} fronts, {} proposals; median of {ROUNDS}: {:?}",
        layout.last,
        layout.fronts.len(),
        proposals.len(),
        times[ROUNDS / 2]
    );
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
