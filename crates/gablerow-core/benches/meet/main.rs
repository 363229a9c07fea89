//! The search for what meets on a face, as `check` calls it, against general spatial libraries and a copy of the features.
//!
//! `cargo bench -p gablerow-core --bench meet` first asserts that all of them find the same pairs, then prints medians of
//! paired rounds, so that a noisy machine troubles all alike. With arguments, `search|rstar|parry|broccoli FEATURES REPS
//! [SHAPE]`, it runs one of them that often on one panel, for counting instructions; with any other, it leaves out the job.

// A benchmark prints for people, and may panic where its own job is wrong.
#![allow(clippy::print_stdout, clippy::expect_used)]

mod work;
mod yardsticks;

use std::hint::black_box;
use std::time::Instant;

use gablerow_core::check::meet::{Meeting, Search};
use parry2d::partitioning::BvhWorkspace;

use work::{Dice, HOSTILE, Panel};
use yardsticks::{Feature, Pair};

const PANELS: usize = 10_000;
const ROUNDS: usize = 11;

/// A way to find all pairs of a panel.
type Method = fn(&Panel, &[Feature], &mut Room, &mut Vec<Pair>);

/// Memory that a method uses again for each panel.
#[derive(Default)]
struct Room {
    search: Search,
    parry: BvhWorkspace,
    starts: Vec<u32>,
}

const METHODS: [(&str, Method); 4] = [
    ("search", |panel, _, room, found| search(panel, room, found)),
    ("rstar", |_, features, _, found| {
        yardsticks::rstar(features, found);
    }),
    ("parry", |_, features, room, found| {
        yardsticks::parry(features, found, &mut room.parry);
    }),
    ("broccoli", |_, features, _, found| {
        yardsticks::broccoli(features, found);
    }),
];

fn main() {
    let words: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| word != "--bench")
        .collect();
    if let [name, features, reps, shape @ ..] = words.as_slice() {
        let (_, method) = METHODS
            .iter()
            .find(|(known, _)| known == name)
            .expect("a method");
        let features = features.parse().expect("a count");
        let panel = match shape {
            [] => work::panel(features, &mut Dice::new(5)),
            [shape, ..] => {
                let known = HOSTILE.iter().find(|(known, _)| known == shape);
                known.expect("a shape").1(features)
            }
        };
        count(*method, &panel, reps.parse().expect("a count"));
        return;
    }
    if words.is_empty() {
        whole_job();
    }
    for features in [200, 1_000, 2_000, 20_000] {
        let ordinary = work::panel(features, &mut Dice::new(5));
        one_panel("ordinary", features, &ordinary);
        for (name, make) in HOSTILE {
            one_panel(name, features, &make(features));
        }
    }
}

/// From rows and boxes to the list of pairs: features are the holes row by row, then the boxes.
fn search(panel: &Panel, room: &mut Room, found: &mut Vec<Pair>) {
    let Room { search, starts, .. } = room;
    starts.clear();
    let mut before = 0;
    for row in &panel.holes {
        starts.push(before);
        before += row.count.unsigned_abs();
    }
    let number = |start: u32, at: i32| start + at.unsigned_abs();
    let space = |at: usize| before + u32::try_from(at).unwrap_or(u32::MAX);
    search.each(&panel.holes, &panel.spaces, |meeting| match meeting {
        Meeting::Holes {
            one,
            other,
            first,
            last,
            shift,
        } => {
            let (one, other) = (starts[one], starts[other]);
            let pairs = (first..=last).map(|at| (number(one, at), number(other, at + shift)));
            found.extend(pairs);
        }
        Meeting::HolesAndSpace {
            holes,
            space: place,
            first,
            last,
        } => {
            let (start, end) = (starts[holes], space(place));
            found.extend((first..=last).map(|at| (number(start, at), end)));
        }
        Meeting::Spaces { one, other } => found.push((space(one), space(other))),
    });
}

/// Runs one method on one panel, for counting instructions; the features are made before.
fn count(method: Method, panel: &Panel, reps: usize) {
    let (mut features, mut room, mut found) = (Vec::new(), Room::default(), Vec::new());
    yardsticks::expand(panel, &mut features);
    for _ in 0..reps {
        found.clear();
        method(
            black_box(panel),
            black_box(&features),
            &mut room,
            &mut found,
        );
        black_box(&found);
    }
}

/// Asserts that all methods find what `brute` or the first of them finds, each pair once; gives how many pairs.
fn assert_same(panel: &Panel, features: &[Feature], room: &mut Room) -> usize {
    let sorted = |mut found: Vec<Pair>| {
        found.sort_unstable();
        found
    };
    let mut right = Vec::new();
    if features.len() <= 2_000 {
        yardsticks::brute(features, &mut right);
    } else {
        yardsticks::rstar(features, &mut right);
    }
    let right = sorted(right);
    for (name, method) in METHODS {
        let mut found = Vec::new();
        method(panel, features, room, &mut found);
        assert!(sorted(found) == right, "{name} finds other pairs");
    }
    right.len()
}

/// Seconds of each method and of one copy of the features, once.
fn round(
    panels: &[Panel],
    features: &[Vec<Feature>],
    room: &mut Room,
    (pairs, whole): (usize, &[Feature]),
) -> [f64; 5] {
    // Memory for the pairs is there before, so that nobody pays for it.
    let mut found = vec![(0, 0); pairs];
    let mut took = METHODS.map(|(_, method)| {
        let start = Instant::now();
        for (panel, features) in panels.iter().zip(features) {
            found.clear();
            method(panel, features, room, &mut found);
            black_box(&found);
        }
        start.elapsed().as_secs_f64()
    });
    let mut copy = vec![whole[0]; whole.len()];
    let start = Instant::now();
    copy.copy_from_slice(black_box(whole));
    black_box(&copy);
    let copied = start.elapsed().as_secs_f64();
    took.reverse();
    let [broccoli, parry, rstar, search] = took;
    [search, rstar, parry, broccoli, copied]
}

/// The median of what `of` gives for each round.
fn median(rounds: &[[f64; 5]], of: impl Fn(&[f64; 5]) -> f64) -> f64 {
    let mut all: Vec<f64> = rounds.iter().map(of).collect();
    all.sort_by(f64::total_cmp);
    all[all.len() / 2]
}

fn whole_job() {
    let panels = work::job(PANELS);
    let expanded = |panel: &Panel| {
        let mut features = Vec::new();
        yardsticks::expand(panel, &mut features);
        features
    };
    let features: Vec<Vec<Feature>> = panels.iter().map(expanded).collect();
    let mut room = Room::default();
    let all = panels.iter().zip(&features);
    let pairs: usize = all
        .map(|(panel, features)| assert_same(panel, features, &mut room))
        .sum();
    let whole: Vec<Feature> = features.concat();
    let things = |panel: &Panel| panel.holes.len() + panel.spaces.len();
    let things: usize = panels.iter().map(things).sum();
    let rounds: Vec<_> = (0..ROUNDS)
        .map(|_| round(&panels, &features, &mut room, (pairs, &whole)))
        .collect();
    println!(
        "{PANELS} panels, {} features in {things} rows and boxes, {pairs} pairs; medians of {ROUNDS} paired rounds",
        whole.len()
    );
    let nanos = |at: usize| median(&rounds, |round| round[at]) * 1e9 / to_float(whole.len());
    println!("search    {:>8.2} ns a feature", nanos(0));
    for (at, name) in ["search", "rstar", "parry2d", "broccoli", "one copy"]
        .iter()
        .enumerate()
        .skip(1)
    {
        let times = median(&rounds, |round| round[at] / round[0]);
        println!(
            "{name:<9} {:>8.2} ns a feature, {times:.2} times the search; the search is {:.4} of it",
            nanos(at),
            1.0 / times
        );
    }
}

fn to_float(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}

/// The ratio to rstar on one panel, warm.
fn one_panel(name: &str, count: i32, panel: &Panel) {
    let mut features = Vec::new();
    yardsticks::expand(panel, &mut features);
    let mut room = Room::default();
    let pairs = assert_same(panel, &features, &mut room);
    let again = (40_000 / features.len().max(1)).clamp(1, 100);
    let panels = vec![panel.clone(); again];
    let all = vec![features; again];
    let rounds: Vec<_> = (0..ROUNDS)
        .map(|_| round(&panels, &all, &mut room, (pairs, &all[0])))
        .collect();
    let share = median(&rounds, |round| round[0] / round[1]);
    let nanos = median(&rounds, |round| round[0]) * 1e9 / to_float(all[0].len() * again);
    println!(
        "{count:>6} {name:<30} {pairs:>8} pairs  {share:.3} of rstar  {nanos:>7.1} ns a feature"
    );
}
