//! Placing ten drawers and six hinges on forty holes, from plain to awkward.
//!
//! `cargo bench -p gablerow-core --bench solve` prints medians. With two arguments, `NAME REPS`, it runs one of them that
//! often, for counting instructions.

// A benchmark prints for people, and may panic where its own input is wrong.
#![allow(clippy::print_stdout, clippy::expect_used)]

use std::hint::black_box;
use std::time::{Duration, Instant};

use gablerow_core::cards::PlateShape;
use gablerow_core::grid::{Grid, HoleNumber, Run};
use gablerow_core::measure::Length;
use gablerow_core::solve::Interval;
use gablerow_core::solve::drawers::{self, Clearances, Distances, Stack};
use gablerow_core::solve::hinges::{self, Door, END_LEAST, HingeRow};

const ROUNDS: usize = 401;

/// A name, and what is run under it.
type Bench<'a> = (&'static str, Box<dyn Fn() + 'a>);

fn main() {
    let even = feet(&[0; 10]);
    let odd = feet(&[0, 7, 0, 11, 0, 5, 0, 3, 0, 9]);
    // Two drawers of each family, whose common hole is barred by turns.
    let pairs = feet(&[0, 7, 25, 11, 21, 5, 27, 3, 29, 9]);
    let barred = [run(6, 6), run(11, 11), run(18, 18), run(27, 27)];
    let wide = Distances {
        most: mm(110),
        ..USUAL
    };
    let taken = [run(9, 10), run(22, 24)];
    let fixed = [Interval::new(mm(610), mm(628))];
    let benches: Vec<Bench<'_>> = vec![
        ("drawers-even", stack(&even, &[], USUAL)),
        ("drawers-odd", stack(&odd, &barred, USUAL)),
        ("drawers-pairs-wide", stack(&pairs, &barred, wide)),
        ("drawers-refused", stack(&even, &[run(6, 6)], USUAL)),
        ("hinges", row(&[], &[], false)),
        ("hinges-barred", row(&taken, &fixed, false)),
        ("hinges-opposed", row(&taken, &fixed, true)),
    ];
    let words: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| word != "--bench")
        .collect();
    if let [name, reps] = words.as_slice() {
        let bench = benches.iter().find(|(known, _)| known == name);
        let run = &bench.expect("a bench of that name").1;
        (0..reps.parse().unwrap_or(1)).for_each(|_: u32| run());
        return;
    }
    for (name, run) in &benches {
        let mut times: Vec<Duration> = (0..ROUNDS).map(|_| time(run)).collect();
        times.sort_unstable();
        println!("{name:<20} {:>10.1?}", times[ROUNDS / 2]);
    }
}

const USUAL: Distances = Distances {
    wanted: mm(35),
    least: mm(18),
    most: mm(54),
};

const fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

fn run(first: i32, last: i32) -> Run {
    let hole = |number: i32| HoleNumber::new(number).expect("a hole");
    Run::new(hole(first), hole(last)).expect("a run")
}

fn time(work: impl Fn()) -> Duration {
    let start = Instant::now();
    work();
    start.elapsed()
}

/// Feet of ten fronts four pitches high, each moved up by so much.
fn feet(moved: &[i32; 10]) -> Vec<Length> {
    let foot = |(at, &moved): (i32, &i32)| mm(at * 128 + moved) + Length::from_um(1_500);
    (0..).zip(moved).map(foot).collect()
}

fn stack<'a>(feet: &'a [Length], barred: &[Run], distances: Distances) -> Box<dyn Fn() + 'a> {
    let barred = barred.to_vec();
    Box::new(move || {
        let stack = Stack {
            grid: Grid { first: mm(16) },
            holes: run(1, 40),
            barred: &barred,
            feet,
            line: mm(12),
            clear: Clearances {
                below: mm(15),
                between: mm(25),
                above: mm(10),
            },
            floor: mm(18),
            ceiling: mm(1_270),
            fixed: &[],
            distances,
            step: mm(8),
            box_least: mm(56),
        };
        drop(black_box(drawers::place(black_box(&stack))));
    })
}

fn row(taken: &[Run], barred: &[Interval], opposed: bool) -> Box<dyn Fn()> {
    let (taken, barred) = (taken.to_vec(), barred.to_vec());
    Box::new(move || {
        let row = HingeRow {
            grid: Grid { first: mm(16) },
            holes: run(1, 40),
            taken: &taken,
            barred: &barred,
            plate: PlateShape::AlongRow,
            half_zone: mm(28),
        };
        let door = Door {
            foot: Length::from_um(1_500),
            height: mm(1_277),
        };
        if opposed {
            drop(black_box(hinges::opposed(&row, &row, door, 6, END_LEAST)));
        } else {
            drop(black_box(hinges::place(&row, door, 6, END_LEAST)));
        }
    })
}
