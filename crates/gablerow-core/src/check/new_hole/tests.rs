//! Proof of `new_hole`: one more hole is stopped where it says, and nowhere else.

use proptest::prelude::*;

use super::super::fixture::*;
use super::super::{Rule, of_job};
use super::*;
use crate::job::{Depth, Edge, FreeHole, FreeRow, HolePlace, Label};
use crate::layout::Use;

/// What stops a hole because of another one.
const RULES: [Rule; 4] = [
    Rule::SharedHole,
    Rule::NearMissRows,
    Rule::OpposedHolesMeet,
    Rule::OpposedFastenersMeet,
];

/// The holes of the row at 37 of the left side on which a hole is stopped, by trying each.
fn tried(case: &Case, depth: Depth) -> Vec<u16> {
    let stopped = |&number: &u16| {
        let mut job = case.job.clone();
        let hole = HolePlace::foot(i16::try_from(number).unwrap());
        job.cabinets[0].free_rows.push(FreeRow {
            key: Key(99),
            face: left_side(),
            purpose: Label::new("new").unwrap(),
            edge: Edge::Front,
            setback: mm(37),
            first: hole,
            last: hole,
            diameter: job.shop.diameter,
            depth,
        });
        of_job(&job).iter().any(|it| RULES.contains(&it.rule))
    };
    (1..=22).filter(stopped).collect()
}

fn said(case: &Case, depth: Depth) -> Vec<u16> {
    let job = &case.job;
    let layout = Layout::of(&job.cabinets[0], job);
    let bore = BoreSpec {
        use_: Use::Free,
        owner: Key(99),
        bay: None,
        diameter: job.shop.diameter,
        depth: (depth == Depth::Shop).then_some(job.shop.depth),
        pen: Length::ZERO,
        pen_unproved: false,
    };
    let runs = stopped_holes(&layout, &job.shop, (left_side(), mm(37)), &bore, &[]);
    let holes = runs.iter().flat_map(|run| run.holes());
    let mut holes: Vec<u16> = holes
        .map(crate::grid::HoleNumber::get)
        .filter(|&it| it <= 22)
        .collect();
    holes.sort_unstable();
    holes.dedup();
    holes
}

fn left_side() -> FaceId {
    let case = Case::new();
    Layout::of(&case.job.cabinets[0], &case.job).bays[0].left
}

// Geometry: the row's hole 3 is at 37 and 80; from 40 and 82 it is 3.6 away.
#[test]
fn a_free_hole_stops_its_own_place_and_the_holes_too_near() {
    let with = |setback: i32, height: i32| {
        let mut case = Case::new();
        case.hole(left_side(), mm(setback), mm(height));
        said(&case, Depth::Shop)
    };
    assert_eq!(with(37, 80), [3]);
    assert_eq!(with(40, 82), [3]);
    assert_eq!(with(90, 80), []);
}

proptest! {
    #[test]
    fn a_hole_is_stopped_exactly_where_the_checks_stop_it(
        setback in prop_oneof![Just(37_000), 20_000..60_000_i32],
        height in 16_000..690_000_i32,
        on_grid in any::<bool>(),
        behind in any::<bool>(),
        depth in prop::option::weighted(0.7, 4..16_i32),
        through in prop::bool::weighted(0.3),
        row in any::<bool>(),
        near in prop::sample::select(vec![0, 5, 8, 30, 50]),
    ) {
        let mut case = Case::new();
        case.shop().limits.near = mm(near);
        let face = if behind { left_side().behind() } else { left_side() };
        let depth = depth.map_or(Depth::Through, |depth| Depth::Blind(mm(depth)));
        let number = 1 + (height / 32_000);
        if row {
            let first = i16::try_from(number).unwrap();
            case.row(face, um(setback), first, first + 2).depth = depth;
        } else {
            let height = if on_grid { um(16_000 + (number - 1) * 32_000) } else { um(height) };
            let made: &mut FreeHole = case.hole(face, um(setback), height);
            made.depth = depth;
        }
        let own = if through { Depth::Through } else { Depth::Shop };
        prop_assert_eq!(said(&case, own), tried(&case, own));
    }
}
