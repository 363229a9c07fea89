//! Proof of who is in whose way, against an R-tree of another house and against floats.
//!
//! Every run of a face is expanded into discs, and every disc and box goes into an R-tree by the box around it. What comes
//! near there is decided in whole counts, and the same by floats in mm: wherever two things are further than
//! [`TOLERANCE`] from the limit, floats have to agree, be the pair found or not. The rules are written down a second time
//! here. The checks have to find exactly these pairs. `.ci/run` tries 10,000 jobs: each of the two laws on 5,000.

use std::collections::BTreeSet;
use std::vec::Vec;

use proptest::prelude::*;
use rstar::RTree;
use rstar::primitives::{GeomWithData, Rectangle};

use super::laws::any_case;
use super::meet::Search;
use super::{Rule, Strand, joint, keep_outs, near, opposed, share};
use crate::arbitrary;
use crate::job::{Hand, Job, Limits};
use crate::layout::{BoreSpec, Face, Item, KeepOut, Layout, Span, Upright, Use};
use crate::measure::Length;

/// In mm: a hundredth of a count, and far above what a float is off in a cabinet.
const TOLERANCE: f64 = 1e-6;

/// One hole of one run, in counts.
#[derive(Clone, Copy)]
struct Disc<'a> {
    x: i64,
    z: i64,
    spec: &'a BoreSpec,
    is_of_row: bool,
}

impl Disc<'_> {
    /// Which run it is of: each has a description of its own.
    fn run(&self) -> usize {
        std::ptr::from_ref(self.spec).addr()
    }
}

fn diameter(disc: &Disc) -> i64 {
    disc.spec.diameter.counts().into()
}

/// Every run and every single bore of a face, hole by hole.
fn discs<'a>(face: &'a Face, layout: &Layout) -> Vec<Disc<'a>> {
    let mut discs = Vec::new();
    for row in &face.rows {
        for run in &row.runs {
            for number in run.first..=run.last {
                let (x, z) = (row.x.total().counts(), layout.height(number).counts());
                discs.push(Disc {
                    x: x.into(),
                    z: z.into(),
                    spec: &run.spec,
                    is_of_row: true,
                });
            }
        }
    }
    for bore in &face.bores {
        let (x, z) = (bore.x.counts(), bore.z.counts());
        discs.push(Disc {
            x: x.into(),
            z: z.into(),
            spec: &bore.spec,
            is_of_row: false,
        });
    }
    discs
}

type Boxed = GeomWithData<Rectangle<[i64; 2]>, usize>;

fn boxed(from: [i64; 2], to: [i64; 2], at: usize) -> Boxed {
    GeomWithData::new(Rectangle::from_corners(from, to), at)
}

/// The tree of discs, each so wide.
fn tree(discs: &[Disc], wide: impl Fn(&Disc) -> i64) -> RTree<Boxed> {
    let around = |(at, disc): (usize, &Disc)| {
        let half = (wide(disc) + 1) / 2;
        boxed(
            [disc.x - half, disc.z - half],
            [disc.x + half, disc.z + half],
            at,
        )
    };
    RTree::bulk_load(discs.iter().enumerate().map(around).collect())
}

/// In mm, of twice a count.
fn half_mm(twice: i64) -> f64 {
    f64::from(i32::try_from(twice).unwrap()) / 16_000.0
}

/// Whether a distance, given by its parts, is below half of `sum`; by whole numbers and, where they can tell, by floats.
fn is_below(x: i64, z: i64, sum: i64) -> bool {
    let exact = 4 * (i128::from(x).pow(2) + i128::from(z).pow(2)) < i128::from(sum).pow(2);
    let over = half_mm(2 * x).hypot(half_mm(2 * z)) - half_mm(sum);
    assert!(over.abs() <= TOLERANCE || exact == (over < 0.0));
    exact
}

/// Every two discs of two lists whose centres are nearer than half of what they are wide together, by their places. With
/// one list, the first place is the lower.
fn near_discs(
    one: &[Disc],
    other: Option<&[Disc]>,
    wide: impl Fn(&Disc) -> i64,
) -> BTreeSet<(usize, usize)> {
    let first = tree(one, &wide);
    let second = other.map(|other| tree(other, &wide));
    let (second, others) = (second.as_ref().unwrap_or(&first), other.unwrap_or(one));
    let is_pair = |a: usize, b: usize| other.is_some() || a < b;
    let below = |a: usize, b: usize| {
        let (a, b) = (&one[a], &others[b]);
        is_below(a.x - b.x, a.z - b.z, wide(a) + wide(b))
    };
    let candidates = first.intersection_candidates_with_other_tree(second);
    let found: BTreeSet<_> = candidates
        .map(|(a, b)| (a.data, b.data))
        .filter(|&(a, b)| is_pair(a, b) && below(a, b))
        .collect();
    // The tree must not have missed any either.
    for (a, disc) in one.iter().enumerate() {
        for (b, with) in others.iter().enumerate() {
            let over = half_mm(2 * (disc.x - with.x)).hypot(half_mm(2 * (disc.z - with.z)))
                - half_mm(wide(disc) + wide(with));
            let is_found = !is_pair(a, b) || found.contains(&(a, b));
            assert!(over > -TOLERANCE || is_found, "the tree misses a pair");
        }
    }
    found
}

/// A hole of one run that is in the way of some hole of another, by run and height, and the other run.
type InWay = (usize, i32, usize);

/// What strands of a pair say, hole by hole, both ways.
fn said(one: Strand, other: Strand) -> Vec<InWay> {
    let run = |strand: Strand| std::ptr::from_ref(strand.spec).addr();
    let holes = |a: Strand, b: Strand| {
        let heights = (0..a.count()).map(move |at| (a.low + Length::PITCH * at).counts());
        heights
            .map(move |z| (run(a), z, run(b)))
            .collect::<Vec<_>>()
    };
    [holes(one, other), holes(other, one)].concat()
}

/// The same of two discs.
fn in_way(a: &Disc, b: &Disc) -> [InWay; 2] {
    let z = |disc: &Disc| i32::try_from(disc.z).unwrap();
    [(a.run(), z(a), b.run()), (b.run(), z(b), a.run())]
}

fn share_rule(a: &BoreSpec, b: &BoreSpec) -> Option<Rule> {
    let of = |x, y| (a.use_, b.use_) == (x, y) || (b.use_, a.use_) == (x, y);
    if a.owner == b.owner || of(Use::Pin, Use::Pin) && a.bay == b.bay {
        None
    } else if of(Use::Pin, Use::Plate) {
        Some(Rule::PlateOnPinHole)
    } else if of(Use::Pin, Use::Runner) {
        Some(Rule::PinAndRunnerShare)
    } else {
        Some(Rule::SharedHole)
    }
}

fn same_place(face: &Face, layout: &Layout) {
    let all = discs(face, layout);
    let mut right = BTreeSet::new();
    for (a, b) in near_discs(&all, None, |_| 1) {
        let (a, b) = (&all[a], &all[b]);
        let rule = share_rule(a.spec, b.spec).filter(|_| a.run() != b.run());
        right.extend(
            rule.into_iter()
                .flat_map(|rule| in_way(a, b).map(|it| (rule, it))),
        );
    }
    let found = share::shared(&mut Search::default(), face, layout);
    let found = found
        .into_iter()
        .flat_map(|(rule, one, other)| said(one, other).into_iter().map(move |it| (rule, it)));
    assert_eq!(found.collect::<BTreeSet<_>>(), right);
}

fn near_miss(face: &Face, layout: &Layout, limits: &Limits) {
    let all = discs(face, layout);
    let runs = |&(a, b): &(usize, usize)| {
        let (a, b) = (all[a].run(), all[b].run());
        (a.min(b), a.max(b))
    };
    let same: BTreeSet<_> = near_discs(&all, None, |_| 1).iter().map(runs).collect();
    let near = near_discs(&all, None, |_| limits.near.counts().into());
    let mut right = BTreeSet::new();
    for pair in near.into_iter().filter(|pair| !same.contains(&runs(pair))) {
        let (a, b) = (&all[pair.0], &all[pair.1]);
        let is_one_row = a.is_of_row && b.is_of_row && a.x == b.x;
        if a.run() != b.run() && !is_one_row {
            right.extend(in_way(a, b));
        }
    }
    let found = near::near_misses(&mut Search::default(), face, layout, limits.near);
    let found = found.into_iter().flat_map(|(one, other)| said(one, other));
    assert_eq!(found.collect::<BTreeSet<_>>(), right);
}

/// What comes through beside a hole of the other face.
fn near_through(upright: &Upright, layout: &Layout, limits: &Limits) {
    let [left, right] = [Hand::Left, Hand::Right].map(|hand| discs(upright.face(hand), layout));
    let runs = |&(a, b): &(usize, usize)| (left[a].run(), right[b].run());
    let same = near_discs(&left, Some(&right), |_| 1);
    let same: BTreeSet<_> = same.iter().map(runs).collect();
    let near = near_discs(&left, Some(&right), |_| limits.near.counts().into());
    let mut expected = BTreeSet::new();
    for pair in near.into_iter().filter(|pair| !same.contains(&runs(pair))) {
        let (a, b) = (&left[pair.0], &right[pair.1]);
        let is_one_row = a.is_of_row && b.is_of_row && a.x == b.x;
        if !is_one_row && (a.spec.depth.is_none() || b.spec.depth.is_none()) {
            expected.extend(in_way(a, b));
        }
    }
    let found = near::coming_through(&mut Search::default(), upright, layout, limits.near);
    let found = found.into_iter().flat_map(|(one, other)| said(one, other));
    assert_eq!(found.collect::<BTreeSet<_>>(), expected);
}

fn both_faces(upright: &Upright, layout: &Layout, limits: &Limits) {
    let [left, right] = [Hand::Left, Hand::Right].map(|hand| discs(upright.face(hand), layout));
    let over = near_discs(&left, Some(&right), diameter);
    let expect = |deep: &dyn Fn(&BoreSpec) -> Option<Length>, least: Length| {
        let mut expected = BTreeSet::new();
        for &(a, b) in &over {
            let (a, b) = (&left[a], &right[b]);
            let depths = deep(a.spec).zip(deep(b.spec));
            if depths.is_some_and(|(a, b)| a + b > upright.thickness - least) {
                expected.extend(in_way(a, b));
            }
        }
        expected
    };
    let search = &mut Search::default();
    let find = |found: Vec<(Strand, Strand)>| -> BTreeSet<InWay> {
        found
            .into_iter()
            .flat_map(|(one, other)| said(one, other))
            .collect()
    };
    let holes = opposed::back_to_back(search, upright, layout, limits.web, |spec| spec.depth);
    assert_eq!(find(holes), expect(&|spec| spec.depth, limits.web));
    let fasteners = opposed::back_to_back(search, upright, layout, limits.spare, opposed::fastener);
    let pen = |spec: &BoreSpec| {
        let none = spec.pen == Length::ZERO || spec.use_ == Use::Connector && spec.depth.is_none();
        if none { None } else { Some(spec.pen) }
    };
    assert_eq!(find(fasteners), expect(&pen, limits.spare));
}

fn counts(span: Span) -> (i64, i64) {
    (span.from.counts().into(), span.to.counts().into())
}

fn boxes_of(face: &Face, limits: &Limits) {
    let close = i64::from(limits.close.counts());
    let around = |(at, it): (usize, &KeepOut)| {
        let ((x, x_to), (z, z_to)) = (counts(it.x), counts(it.z));
        boxed([x, z], [x_to + close, z_to + close], at)
    };
    let tree = RTree::bulk_load(face.keep_outs.iter().enumerate().map(around).collect());
    let mut right = BTreeSet::new();
    for (a, b) in tree.intersection_candidates_with_other_tree(&tree) {
        let rule = (a.data < b.data)
            .then(|| box_rule(&face.keep_outs[a.data], &face.keep_outs[b.data], close));
        right.extend(rule.flatten().map(|rule| (rule, a.data, b.data)));
    }
    let place = |it: &KeepOut| {
        let same = |other: &KeepOut| std::ptr::eq(it, other);
        face.keep_outs.iter().position(same).unwrap()
    };
    let found =
        keep_outs::in_each_others_way(&mut Search::default(), &face.keep_outs, limits.close);
    let found = found.into_iter().map(|(rule, a, b)| {
        let (a, b) = (place(a), place(b));
        (rule, a.min(b), a.max(b))
    });
    assert_eq!(found.collect::<BTreeSet<_>>(), right);
}

/// Which rule two boxes break: by how far they lie apart, below 0 where they overlap.
fn box_rule(one: &KeepOut, other: &KeepOut, close: i64) -> Option<Rule> {
    let is_fixed = |it: &KeepOut| {
        matches!(
            it.item,
            Item::Bottom | Item::Top | Item::Stretcher | Item::FixedShelf | Item::BackRail
        )
    };
    if one.owner.is_some() && one.owner == other.owner || is_fixed(one) && is_fixed(other) {
        return None;
    }
    let apart = [(one.x, other.x), (one.z, other.z), (one.u, other.u)].map(|(a, b)| {
        let ((from, to), (other_from, other_to)) = (counts(a), counts(b));
        let apart = (from - other_to).max(other_from - to);
        // An empty interval meets nothing, not even what is all around it.
        let is_empty = from == to || other_from == other_to;
        apart.max(if is_empty { 0 } else { i64::MIN })
    });
    let with = if one.item == Item::Hinge { other } else { one };
    let has_hinge = one.item == Item::Hinge || other.item == Item::Hinge;
    if has_hinge && apart[0] < 0 && apart[1] < 0 {
        if is_fixed(with) {
            return Some(Rule::PlateOnFixedPanel);
        }
        if with.item == Item::Runner {
            return Some(Rule::InnerDrawerFouls);
        }
    }
    let clear: Vec<i64> = apart.into_iter().filter(|&apart| apart >= 0).collect();
    match clear[..] {
        [] if has_hinge && with.item == Item::Shelf => Some(Rule::ShelfAtHinge),
        [] => Some(Rule::KeepOutsMeet),
        [gap] if 0 < gap && gap < close => Some(Rule::KeepOutsClose),
        _ => None,
    }
}

fn ends(upright: &Upright, face: &Face, layout: &Layout) {
    let mut all = discs(face, layout);
    all.retain(|disc| !matches!(disc.spec.use_, Use::Dowel | Use::Connector));
    let tree = tree(&all, diameter);
    let mut right = BTreeSet::new();
    for panel in &face.keep_outs {
        let (x, x_to) = counts(panel.x);
        let z = counts(panel.z).0.max(upright.foot.total().counts().into());
        let z_to = counts(panel.z).1.min(upright.head.total().counts().into());
        if !panel.item.is_fixed_panel() || z >= z_to {
            continue;
        }
        let end = rstar::AABB::from_corners([x, z], [x_to, z_to]);
        for near in tree.locate_in_envelope_intersecting(end) {
            let disc = &all[near.data];
            let (aside, up) = (
                disc.x.clamp(x, x_to) - disc.x,
                disc.z.clamp(z, z_to) - disc.z,
            );
            if is_below(aside, up, diameter(disc)) {
                right.insert((std::ptr::from_ref(panel).addr(), disc.run(), disc.z));
            }
        }
    }
    let mut found = BTreeSet::new();
    for (panel, _, part) in joint::holes_in_ends(&mut Search::default(), upright, face, layout) {
        for at in 0..part.count() {
            let z = i64::from((part.low + Length::PITCH * at).counts());
            let run = std::ptr::from_ref(part.spec).addr();
            found.insert((std::ptr::from_ref(panel).addr(), run, z));
        }
    }
    assert_eq!(found, right);
}

/// Everything of every cabinet of a job that can be in the way of something.
fn compare(job: &Job) {
    let limits = &job.shop.limits;
    for cabinet in &job.cabinets {
        let layout = Layout::of(cabinet, job);
        for upright in &layout.uprights {
            both_faces(upright, &layout, limits);
            near_through(upright, &layout, limits);
            for face in &upright.faces {
                same_place(face, &layout);
                near_miss(face, &layout, limits);
                boxes_of(face, limits);
                ends(upright, face, &layout);
            }
        }
    }
}

proptest! {
    #[test]
    fn cabinets_as_people_make_them_meet_as_an_r_tree_says(case in any_case()) {
        compare(&case.job);
    }

    #[test]
    fn any_job_meets_as_an_r_tree_says(job in arbitrary::job()) {
        compare(&job);
    }
}
