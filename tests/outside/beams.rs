//! Sag, solved in ways that share nothing with the program's closed form.
//!
//! ```text
//! elements   the shelf as 40 stiff pieces: their stiffness matrices (Hermite), a band of equations, Gauss
//! Python     indeterminatebeam, where Python and that library are there; it is said when they are not
//! ```

use gablerow_core::measure::Length;
use gablerow_core::strength::{Section, Strip, line_load_of_pressure, sag};
use proptest::prelude::*;

use crate::fixture::{mm, um};
use crate::handbooks::NO_CREEP;
use crate::python;

const PIECES: usize = 40;

/// The sag in the middle of a beam on two supports, by finite elements: `ei` in N*mm2, `load` in N/mm, `span` in mm.
fn by_elements(ei: f64, load: f64, span: f64) -> f64 {
    let unknowns = 2 * (PIECES + 1);
    let l = span / PIECES as f64;
    let k = ei / l.powi(3);
    let piece = [
        [12.0, 6.0 * l, -12.0, 6.0 * l],
        [6.0 * l, 4.0 * l * l, -6.0 * l, 2.0 * l * l],
        [-12.0, -6.0 * l, 12.0, -6.0 * l],
        [6.0 * l, 2.0 * l * l, -6.0 * l, 4.0 * l * l],
    ];
    let force = [
        load * l / 2.0,
        load * l * l / 12.0,
        load * l / 2.0,
        -load * l * l / 12.0,
    ];
    // The last column is what bears down.
    let mut system = vec![vec![0.0; unknowns + 1]; unknowns];
    for at in 0..PIECES {
        for row in 0..4 {
            for column in 0..4 {
                system[2 * at + row][2 * at + column] += k * piece[row][column];
            }
            system[2 * at + row][unknowns] += force[row];
        }
    }
    // Neither end moves; both turn freely.
    for held in [0, 2 * PIECES] {
        system[held].fill(0.0);
        system[held][held] = 1.0;
    }
    gauss(&mut system)[PIECES]
}

/// The solution of a square system, the right side in its last column, by elimination with the largest pivot.
fn gauss(system: &mut [Vec<f64>]) -> Vec<f64> {
    let n = system.len();
    for at in 0..n {
        let pivot = (at..n)
            .max_by(|a, b| system[*a][at].abs().total_cmp(&system[*b][at].abs()))
            .unwrap();
        system.swap(at, pivot);
        let (done, rest) = system.split_at_mut(at + 1);
        let top = &done[at];
        for row in rest {
            let factor = row[at] / top[at];
            for column in at..=n {
                row[column] -= factor * top[column];
            }
        }
    }
    let mut solution = vec![0.0; n];
    for at in (0..n).rev() {
        let known: f64 = (at + 1..n)
            .map(|column| system[at][column] * solution[column])
            .sum();
        solution[at] = (system[at][n] - known) / system[at][at];
    }
    solution
}

fn by_program(section: Section, span: Length, load: f64) -> f64 {
    sag(section, span, load, &NO_CREEP).now
}

#[track_caller]
fn same(one: f64, other: f64) {
    assert!((one / other - 1.0).abs() < 1e-6, "{one} and {other}");
}

#[test]
fn elements_bend_as_the_program_says() {
    // E, thickness and span of seven shelves 300 deep, under 718.2 Pa.
    for (e, t, span) in [
        (1_600.0, 18, 764),
        (2_200.0, 18, 764),
        (1_600.0, 18, 534),
        (12_500.0, 19, 900),
        (1_600.0, 16, 672),
        (1_500.0, 25, 1_028),
        (1_600.0, 19, 2_400),
    ] {
        let section = Section::board(mm(300), mm(t), e);
        let ei = e * 300.0 * f64::from(t).powi(3) / 12.0;
        let load = line_load_of_pressure(718.2, mm(300));
        same(
            by_program(section, mm(span), load),
            by_elements(ei, load, f64::from(span)),
        );
    }
}

#[test]
fn elements_see_a_formula_that_is_1_percent_wrong() {
    let section = Section::board(mm(300), mm(18), 1_600.0 * 1.01);
    let load = line_load_of_pressure(718.2, mm(300));
    let ei = 1_600.0 * 300.0 * 18.0_f64.powi(3) / 12.0;
    let off = by_program(section, mm(764), load) / by_elements(ei, load, 764.0) - 1.0;
    assert!((off + 0.0099).abs() < 1e-4, "{off}");
}

/// E*I of strips by summing thin layers about the axis on which they balance, each layer of a strip `height / LAYERS` high.
fn by_layers(strips: &[Strip]) -> f64 {
    const LAYERS: usize = 2_000;
    let layers: Vec<(f64, f64)> = strips
        .iter()
        .flat_map(|strip| {
            let high = strip.height.mm() / LAYERS as f64;
            let stiff = strip.elasticity * strip.width.mm() * high;
            (0..LAYERS).map(move |at| (stiff, strip.down.mm() + (at as f64 + 0.5) * high))
        })
        .collect();
    let whole: f64 = layers.iter().map(|(stiff, _)| stiff).sum();
    let axis = layers.iter().map(|(stiff, down)| stiff * down).sum::<f64>() / whole;
    layers
        .iter()
        .map(|(stiff, down)| stiff * (down - axis).powi(2))
        .sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_lipped_shelf_is_as_stiff_as_its_layers(
        [depth, thickness, wide, high] in [100_000..900_000, 6_000..40_000, 5_000..60_000, 6_000..90_000],
        down in 0..20_000,
        [board, lipping] in [500.0..4_000.0, 4_000.0..16_000.0],
    ) {
        let strips = [
            Strip { width: um(depth), height: um(thickness), down: Length::ZERO, elasticity: board },
            Strip { width: um(wide), height: um(high), down: um(down), elasticity: lipping },
        ];
        let (found, layers) = (Section::of(&strips).stiffness(), by_layers(&strips));
        prop_assert!((found / layers - 1.0).abs() < 1e-5, "{} and {}", found, layers);
    }
}

/// Prints the sag in the middle.
const SCRIPT: &str = include_str!("beam.py");

#[test]
fn a_beam_library_says_the_same_where_there_is_one() {
    let judge = "the beam library of Python";
    let [e, span, load] = [1_600.0, 764.0, 718.2e-6 * 300.0];
    let inertia = 300.0 * 18.0_f64.powi(3) / 12.0;
    let figures = [e, inertia, span, load].map(|figure| figure.to_string());
    let Some(said) = python::run(judge, SCRIPT, &figures) else {
        return;
    };
    let found: f64 = said.text.trim().parse().unwrap();
    let section = Section::board(mm(300), mm(18), e);
    same(found.abs(), by_program(section, mm(764), load));
    python::agrees(judge);
}
