//! Planning the bench for many cabinets, no two of the first 200 alike in depth.
//!
//! `cargo bench -p gablerow-core --bench plan` prints medians; a frame has 16 ms. With `CABINETS REPS` it plans so many that
//! often, for counting instructions; with a third word half of it is bored.

// A benchmark prints for people, and may panic where its own job is wrong.
#![allow(clippy::print_stdout, clippy::expect_used)]

mod shared;

use std::hint::black_box;
use std::time::{Duration, Instant};

use gablerow_core::bench::{Plan, bored_by, plan_left};
use gablerow_core::job::{Cabinet, Job, Key};
use gablerow_core::label::Label;
use gablerow_core::measure::Length;

use shared::furnished;

const ROUNDS: usize = 21;

fn main() {
    let words: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| word != "--bench")
        .collect();
    if let [cabinets, reps, bored @ ..] = words.as_slice() {
        let mut job = job(cabinets.parse().expect("a count"));
        if !bored.is_empty() {
            half_bored(&mut job);
        }
        for _ in 0..reps.parse().expect("a count") {
            drop(black_box(planned(&job)));
        }
        return;
    }
    for cabinets in [1, 10, 40, 400] {
        let job = job(cabinets);
        let holes: usize = planned(&job)
            .set_ups
            .iter()
            .map(|it| it.holes.count())
            .sum();
        println!(
            "{cabinets:>4} cabinets, {holes:>6} holes: {:>10.1?}",
            median(|| planned(&job))
        );
    }
}

fn planned(job: &Job) -> Plan {
    let keys: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
    plan_left(black_box(job), &job.bored, &keys, &job.shop.bench.times)
}

/// Every second set-up is on record.
fn half_bored(job: &mut Job) {
    let holes = planned(job).set_ups.into_iter().step_by(2);
    job.bored = holes.flat_map(|it| bored_by(&it, job)).collect();
}

fn median<T>(work: impl Fn() -> T) -> Duration {
    let round = |_| {
        let start = Instant::now();
        let made = black_box(work());
        let took = start.elapsed();
        drop(made);
        took
    };
    let mut times: Vec<Duration> = (0..ROUNDS).map(round).collect();
    times.sort_unstable();
    times[times.len() / 2]
}

/// Cabinets with a door, a shelf zone and three drawers each.
fn job(cabinets: usize) -> Job {
    let mut job = furnished(&[]);
    let first = job.cabinets[0].clone();
    let cabinet = |at: u32| -> Cabinet {
        let mut cabinet = first.clone();
        cabinet.key = Key(at + 1);
        cabinet.name = Label::new(&format!("A{}", at + 1)).expect("a name");
        let deeper = i32::try_from(at % 200).expect("a depth");
        cabinet.size.depth += Length::from_mm(1) * deeper;
        cabinet
    };
    let count = u32::try_from(cabinets).expect("a count");
    job.cabinets = (0..count).map(cabinet).collect();
    job
}
