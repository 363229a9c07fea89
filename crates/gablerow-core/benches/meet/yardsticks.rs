//! The same pairs by general spatial libraries: features one by one, boxes around them, an exact test of what comes near.

use broccoli::{Tree, rect};
use gablerow_core::measure::Length;
use parry2d::bounding_volume::Aabb;
use parry2d::math::Vector;
use parry2d::partitioning::{Bvh, BvhBuildStrategy, BvhWorkspace};
use rstar::RTree;
use rstar::primitives::{GeomWithData, Rectangle};

use crate::work::Panel;

/// One bore or one rectangle: its box, its depth, and of a bore its diameter; all in counts, x first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Feature {
    from: [i32; 2],
    to: [i32; 2],
    u: [i32; 2],
    /// 0 for a rectangle.
    diameter: i32,
}

/// Two features by their places, the lower first.
pub(crate) type Pair = (u32, u32);

pub(crate) fn pair(a: u32, b: u32) -> Pair {
    (a.min(b), a.max(b))
}

/// The holes of a panel row by row, then its rectangles.
pub(crate) fn expand(panel: &Panel, into: &mut Vec<Feature>) {
    for row in &panel.holes {
        let (x, half) = (row.x.counts(), row.diameter.half().counts());
        let u = [row.u.from.counts(), row.u.to.counts()];
        into.extend((0..row.count).map(|number| {
            let z = row.low.counts() + Length::PITCH.counts() * number;
            Feature {
                from: [x - half, z - half],
                to: [x + half, z + half],
                u,
                diameter: row.diameter.counts(),
            }
        }));
    }
    into.extend(panel.spaces.iter().map(|space| Feature {
        from: [space.x.from.counts(), space.z.from.counts()],
        to: [space.x.to.counts(), space.z.to.counts()],
        u: [space.u.from.counts(), space.u.to.counts()],
        diameter: 0,
    }));
}

impl Feature {
    /// Whether two features take the same space; to touch is not to meet.
    pub(crate) fn meets(&self, other: &Self) -> bool {
        let overlap = |a: [i32; 2], b: [i32; 2]| a[0] < b[1] && b[0] < a[1];
        let along = |axis: usize| {
            overlap(
                [self.from[axis], self.to[axis]],
                [other.from[axis], other.to[axis]],
            )
        };
        if !overlap(self.u, other.u) || !along(0) || !along(1) {
            return false;
        }
        let middle = |it: &Self, axis: usize| it.from[axis] + it.diameter / 2;
        let squared = |away: [i32; 2]| {
            away.map(|it| i64::from(it) * i64::from(it))
                .iter()
                .sum::<i64>()
        };
        match (self.diameter, other.diameter) {
            (0, 0) => true,
            (0, diameter) | (diameter, 0) => {
                let (hole, space) = if self.diameter == 0 {
                    (other, self)
                } else {
                    (self, other)
                };
                let away = [0, 1].map(|axis| {
                    let centre = middle(hole, axis);
                    (space.from[axis] - centre)
                        .max(centre - space.to[axis])
                        .max(0)
                });
                4 * squared(away) < i64::from(diameter).pow(2)
            }
            (a, b) => {
                let away = [0, 1].map(|axis| middle(self, axis) - middle(other, axis));
                4 * squared(away) < i64::from(a + b).pow(2)
            }
        }
    }
}

fn number(at: usize) -> u32 {
    u32::try_from(at).unwrap_or(u32::MAX)
}

fn keep(features: &[Feature], a: u32, b: u32, found: &mut Vec<Pair>) {
    if features[a as usize].meets(&features[b as usize]) {
        found.push(pair(a, b));
    }
}

/// Every feature against every other.
pub(crate) fn brute(features: &[Feature], found: &mut Vec<Pair>) {
    for a in 0..features.len() {
        for b in a + 1..features.len() {
            keep(features, number(a), number(b), found);
        }
    }
}

/// An R-tree, loaded at once and joined with itself.
pub(crate) fn rstar(features: &[Feature], found: &mut Vec<Pair>) {
    let corner = |at: [i32; 2]| at.map(f64::from);
    let boxes = features.iter().enumerate().map(|(at, it)| {
        let around = Rectangle::from_corners(corner(it.from), corner(it.to));
        GeomWithData::new(around, number(at))
    });
    let tree = RTree::bulk_load(boxes.collect());
    for (a, b) in tree.intersection_candidates_with_other_tree(&tree) {
        if a.data < b.data {
            keep(features, a.data, b.data, found);
        }
    }
}

/// A tree of bounding boxes, built by bins and walked against itself; in 32-bit floats, so its boxes are a little larger.
pub(crate) fn parry(features: &[Feature], found: &mut Vec<Pair>, room: &mut BvhWorkspace) {
    // A micrometre is more than such a float is off at 4 m.
    let corner = |at: [i32; 2], by: f64| {
        let [x, z] = at.map(|it| f64::from(it) / 8_000.0 + by);
        // That a float is cut to 32 bits is what the library asks for.
        #[allow(clippy::cast_possible_truncation)]
        Vector::new(x as f32, z as f32)
    };
    let boxes = features.iter().enumerate();
    let boxes =
        boxes.map(|(at, it)| (at, Aabb::new(corner(it.from, -0.001), corner(it.to, 0.001))));
    let tree = Bvh::from_iter(BvhBuildStrategy::Binned, boxes);
    tree.traverse_bvtt_single_tree::<false>(room, &mut |a, b| keep(features, a, b, found));
}

/// A tree of halves, swept at each node.
pub(crate) fn broccoli(features: &[Feature], found: &mut Vec<Pair>) {
    let boxes = features.iter().enumerate();
    let mut boxes: Vec<_> = boxes
        .map(|(at, it)| (rect(it.from[0], it.to[0], it.from[1], it.to[1]), number(at)))
        .collect();
    Tree::new(&mut boxes).find_colliding_pairs(|a, b| {
        keep(features, *a.unpack_inner(), *b.unpack_inner(), found);
    });
}
