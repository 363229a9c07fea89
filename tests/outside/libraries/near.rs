//! Holes that nearly are one, found by a general index of points in the plane.

use std::collections::BTreeSet;

use gablerow_core::check::{Rule, of_cabinet};
use gablerow_core::job::{
    Depth, Edge, End, FaceId, FreeHole, FreeRow, Hand, HolePlace, Job, Key, Label, PanelId,
};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use proptest::prelude::*;
use rstar::RTree;
use rstar::primitives::GeomWithData;

use crate::fixture::{job, layout, mm};

/// The outside of the left side, where nothing else is bored.
const FACE: FaceId = FaceId {
    panel: PanelId::Side(Hand::Left),
    toward: Hand::Left,
};

/// Two things, the lower key first.
type Pair = (Key, Key);

/// A purpose for each: one sentence that holds of two pairs is said once. Of rows no purpose is said, so there are two at most.
fn purpose(key: u32) -> Label {
    Label::new(&format!("lock {key}")).unwrap()
}

fn hole(key: u32, [x, z]: [Length; 2]) -> FreeHole {
    FreeHole {
        key: Key(key),
        face: FACE,
        purpose: purpose(key),
        edge: Edge::Front,
        setback: x,
        end: End::Foot,
        height: z,
        diameter: mm(5),
        depth: Depth::Shop,
    }
}

fn row(key: u32, x: Length, [first, last]: [i16; 2]) -> FreeRow {
    FreeRow {
        key: Key(key),
        face: FACE,
        purpose: purpose(key),
        edge: Edge::Front,
        setback: x,
        first: HolePlace::foot(first.min(last)),
        last: HolePlace::foot(first.max(last)),
        diameter: mm(5),
        depth: Depth::Shop,
    }
}

/// The pairs that the checks find too near each other.
fn by_checks(job: &Job, laid: &Layout) -> BTreeSet<Pair> {
    let found = of_cabinet(job, &job.cabinets[0], laid);
    let near = found
        .iter()
        .filter(|finding| finding.rule == Rule::NearMissRows);
    near.map(|finding| (finding.about[0].unwrap(), finding.about[1].unwrap()))
        .collect()
}

/// The pairs with two centres nearer than the least spacing and none in common, by an R-tree of all centres in counts.
fn by_index(job: &Job, laid: &Layout) -> BTreeSet<Pair> {
    let face = laid.face(FACE);
    let holes = face.map(|face| face.holes(laid)).unwrap_or_default();
    let point = |x: Length, z: Length| [i64::from(x.counts()), i64::from(z.counts())];
    let points = holes.iter().flat_map(|hole| {
        let owners = hole.users.iter().map(|&(_, owner)| owner);
        owners.map(|owner| GeomWithData::new(point(hole.x, hole.z), owner))
    });
    let tree = RTree::bulk_load(points.collect());
    let near = i64::from(job.shop.limits.near.counts());
    let (mut nearly, mut shared) = (BTreeSet::new(), BTreeSet::new());
    for one in &tree {
        for other in tree.locate_within_distance(*one.geom(), near * near) {
            let [x, z] = [0, 1].map(|axis| one.geom()[axis] - other.geom()[axis]);
            let apart = x * x + z * z;
            let pair = (one.data, other.data);
            if pair.0 < pair.1 && apart == 0 {
                shared.insert(pair);
            } else if pair.0 < pair.1 && apart < near * near {
                nearly.insert(pair);
            }
        }
    }
    &nearly - &shared
}

fn of(holes: &[[Length; 2]], rows: &[(Length, [i16; 2])]) -> (BTreeSet<Pair>, BTreeSet<Pair>) {
    let keys = 100..;
    let job = job(|job| {
        let cabinet = &mut job.cabinets[0];
        cabinet.free_holes = keys
            .clone()
            .zip(holes)
            .map(|(key, at)| hole(key, *at))
            .collect();
        let keys = 200..;
        cabinet.free_rows = keys
            .zip(rows)
            .map(|(key, (x, run))| row(key, *x, *run))
            .collect();
    });
    let laid = layout(&job);
    (by_checks(&job, &laid), by_index(&job, &laid))
}

#[test]
fn centres_10_apart_are_far_enough_and_a_micrometre_less_is_not() {
    let aslant = |um: i32| {
        of(
            &[[mm(100), mm(200)], [mm(106), mm(200) + Length::from_um(um)]],
            &[],
        )
    };
    // 6 aside and 8 up are 10.
    assert_eq!(aslant(8_000), (BTreeSet::new(), BTreeSet::new()));
    let one = BTreeSet::from([(Key(100), Key(101))]);
    assert_eq!(aslant(7_999), (one.clone(), one));
}

proptest! {
    // Within a field so narrow that many are near: 100 by 100 in steps of 0.5, and rows in it on holes 5 to 9.
    #[test]
    fn an_index_of_points_finds_the_same_pairs(
        holes in prop::collection::vec(prop::array::uniform2(0..200), 0..12),
        rows in prop::collection::vec((0..200, prop::array::uniform2(5..10_i16)), 0..3),
    ) {
        let half = |steps: i32, from: i32| mm(from) + Length::from_um(steps * 500);
        let holes: Vec<_> = holes.into_iter().map(|[x, z]| [half(x, 100), half(z, 160)]).collect();
        let rows: Vec<_> = rows.into_iter().map(|(x, run)| (half(x, 100), run)).collect();
        let (checks, index) = of(&holes, &rows);
        prop_assert_eq!(checks, index);
    }
}
