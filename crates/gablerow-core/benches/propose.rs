//! A full re-proposal of a cabinet of 40 holes with ten drawers and two doors on three hinges each, and what mends a stop in it,
//! and which holes are barred to pins.
//!
//! `cargo bench -p gablerow-core --bench propose` prints the median of its rounds. A frame has 16 ms; a frame with proposals open
//! asks for them twice, once for the list and once for the drawing.

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
use gablerow_core::mend;
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
    let proposed = median(|| propose::for_cabinet(black_box(&job), cabinet, None));
    println!(
        "{} holes, {} fronts, {} proposals; median of {ROUNDS}: {proposed:?}",
        layout.last,
        layout.fronts.len(),
        proposals.len(),
    );
    mended(job, cabinet);
}

/// Fixes of a plate that is moved onto a drawer runner's side of the partition, in the same cabinet with its hardware.
fn mended(mut job: Job, cabinet: Key) {
    let all = propose::all_in_one(&propose::for_cabinet(&job, cabinet, None));
    make(&mut job, &all.expect("hardware"));
    let layout = Layout::of(&job.cabinets[0], &job);
    let pins = BayRun {
        cabinet,
        bay: layout.bays[0].key,
        first: 2,
        last: 38,
        datum: Datum::Foot,
    };
    make(&mut job, &Edit::Pins(pins));
    let checked = median(|| check::of_job(black_box(&job)));
    let findings = check::of_job(&job);
    let stop = findings.first().expect("pins on plates");
    let fixes = mend::fixes(&job, stop).len();
    let tried = median(|| mend::fixes(black_box(&job), stop));
    println!(
        "{} findings: {checked:?}; {fixes} fixes of one: {tried:?}",
        findings.len()
    );
    // Between two partitions, as a frame of a face asks for it.
    let (cabinet, bay) = (&job.cabinets[0], layout.bays[1].key);
    let layout = Layout::of(cabinet, &job);
    let barred = || mend::barred(black_box(&job), cabinet, &layout, bay);
    println!("{} barred holes: {:?}", barred().len(), median(barred));
}

fn median<T>(work: impl Fn() -> T) -> Duration {
    let once = |_| {
        let start = Instant::now();
        black_box(work());
        start.elapsed()
    };
    let mut times: Vec<Duration> = (0..ROUNDS).map(once).collect();
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
