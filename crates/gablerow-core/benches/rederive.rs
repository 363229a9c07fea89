//! Laying out and checking a job of 300 cabinets from nothing, against cloning all its holes.
//!
//! `cargo bench -p gablerow-core` prints medians of interleaved rounds, so that a noisy machine troubles both alike. With two
//! arguments, `layout|check|clone REPS`, it runs one of them that often, for counting instructions; with `edit CABINETS REPS`
//! it edits and checks one cabinet of so many that often.

// A benchmark prints for people, and may panic where its own job is wrong.
#![allow(clippy::print_stdout, clippy::expect_used)]

mod shared;

use std::hint::black_box;
use std::time::{Duration, Instant};

use gablerow_core::check::{self, Checked};
use gablerow_core::edit::{BayRun, Edit};
use gablerow_core::job::{Datum, Job, Key};
use gablerow_core::label::Label;
use gablerow_core::layout::{Hole, Layout};

use shared::{furnished, run};

const CABINETS: usize = 300;
const ROUNDS: usize = 41;

fn main() {
    let words: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| word != "--bench")
        .collect();
    if let [what, cabinets, reps] = words.as_slice() {
        assert_eq!(what, "edit");
        edit(
            cabinets.parse().expect("a count"),
            reps.parse().expect("a count"),
        );
        return;
    }
    let job = job(CABINETS);
    let holes = holes(&job);
    if let [what, reps] = words.as_slice() {
        for _ in 0..reps.parse().unwrap_or(1) {
            match what.as_str() {
                "layout" => lay_out(&job),
                "check" => drop(black_box(check::of_job(&job))),
                _ => drop(black_box(holes.clone())),
            }
        }
        return;
    }
    let (mut layout, mut checked, mut cloned) = (Vec::new(), Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        layout.push(time(|| lay_out(&job)));
        checked.push(time(|| check::of_job(&job)));
        cloned.push(time(|| holes.clone()));
    }
    let count: usize = holes.iter().map(Vec::len).sum();
    let [layout, checked, cloned] = [layout, checked, cloned].map(median);
    println!("{CABINETS} cabinets, {count} holes; medians of {ROUNDS} rounds");
    println!("clone the holes        {cloned:>10.1?}");
    println!(
        "lay out                {layout:>10.1?}  {:.2} times the clone",
        ratio(layout, cloned)
    );
    println!(
        "lay out and check      {checked:>10.1?}  {:.2} times the clone",
        ratio(checked, cloned)
    );
}

fn ratio(a: Duration, b: Duration) -> f64 {
    a.as_secs_f64() / b.as_secs_f64()
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

fn time<T>(work: impl FnOnce() -> T) -> Duration {
    let start = Instant::now();
    let made = black_box(work());
    let took = start.elapsed();
    drop(made);
    took
}

/// Every cabinet from nothing, one after the other, as the program does: the whole job is never held at once.
fn lay_out(job: &Job) {
    for cabinet in &job.cabinets {
        drop(black_box(Layout::of(cabinet, job)));
    }
}

/// The holes of every face, expanded.
fn holes(job: &Job) -> Vec<Vec<Hole>> {
    let of = |layout: &Layout| -> Vec<Vec<Hole>> {
        let faces = layout.uprights.iter().flat_map(|upright| &upright.faces);
        faces.map(|face| face.holes(layout)).collect()
    };
    let layouts = job.cabinets.iter().map(|cabinet| Layout::of(cabinet, job));
    layouts.flat_map(|layout| of(&layout)).collect()
}

/// One fitting more in the last cabinet of a job, checked, and taken back again, so often.
fn edit(cabinets: usize, reps: usize) {
    let mut job = job(cabinets);
    let mut checked = Checked::of(&job);
    let last = job.cabinets.last().expect("a cabinet").key;
    for _ in 0..reps {
        let edit = Edit::Pins(BayRun {
            cabinet: last,
            bay: Key(1),
            first: 7,
            last: 9,
            datum: Datum::Foot,
        });
        let step = edit.apply(black_box(&job)).expect("an edit that fits");
        step.apply(&mut job);
        checked.follow(&job, &step.change);
        step.revert(&mut job);
        checked.follow(&job, &step.change.reversed());
        black_box(&checked);
    }
}

/// Cabinets with a door, two shelf zones and four drawers each: what a full panel carries.
fn job(cabinets: usize) -> Job {
    let mut job = furnished(&[
        Edit::Pins(run(13, 17, Datum::Foot)),
        Edit::Runners(run(5, 5, Datum::Foot)),
    ]);
    for at in 1..cabinets {
        let name = Label::new(&format!("A{}", at + 1)).expect("a name");
        Edit::Duplicate {
            cabinet: Key(1),
            name,
        }
        .apply(&job)
        .expect("a copy")
        .apply(&mut job);
    }
    job
}
