//! The best holes for a stack from the lowest drawer up, when each drawer may choose among some: dynamic programming, as a
//! drawer asks only the next one how high its box can be.

use alloc::vec::Vec;
use core::ops::Add;

use super::Stack;
use crate::grid::HoleNumber;
use crate::measure::Length;

/// What a choice costs; the first of them counts most, and less is better. All are sums, so that the best way to a hole
/// does not depend on how it goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) struct Key {
    /// How far distances lie outside their range.
    pub(super) outside: i64,
    /// How far they are from the wanted one.
    pub(super) off: i64,
    /// Box heights, below zero.
    pub(super) lower: i64,
    /// Hole numbers.
    pub(super) holes: i64,
}

impl Add for Key {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            outside: self.outside + other.outside,
            off: self.off + other.off,
            lower: self.lower + other.lower,
            holes: self.holes + other.holes,
        }
    }
}

/// A hole a drawer may take.
#[derive(Clone, Copy, Debug)]
pub(super) struct Candidate {
    pub(super) hole: HoleNumber,
    pub(super) underside: Length,
    pub(super) distance: Length,
    /// Underside of the lowest fixed thing above.
    pub(super) ceiling: Length,
    key: Key,
}

/// The holes each drawer may take.
pub(super) struct Chain<'a> {
    stack: &'a Stack<'a>,
    box_least: Length,
    pub(super) drawers: Vec<Vec<Candidate>>,
}

/// The best holes, and what they cost.
pub(super) struct Best {
    pub(super) key: Key,
    pub(super) places: Vec<Candidate>,
}

/// The best way to a hole: its cost, and which hole of the drawer below leads there.
type Way = Option<(Key, usize)>;

impl<'a> Chain<'a> {
    /// Every hole on which a box makes no stop by itself; with distances outside the range, or without.
    pub(super) fn new(stack: &'a Stack<'a>, box_least: Length, outside: bool) -> Self {
        let open: Vec<HoleNumber> = stack
            .holes
            .holes()
            .filter(|&hole| stack.blocked(hole).is_none())
            .collect();
        let of = |&foot: &Length| {
            let candidates = open.iter().map(|&hole| candidate(stack, foot, hole));
            candidates
                .filter(|at| outside || at.key.outside == 0)
                .collect()
        };
        Self {
            stack,
            box_least: box_least.max(Length::from_counts(1)),
            drawers: stack.feet.iter().map(of).collect(),
        }
    }

    /// The best holes among those that are allowed, told by drawer and distance; `None` when there are none.
    pub(super) fn best(&self, allowed: &dyn Fn(usize, Length) -> bool) -> Option<Best> {
        let ways = self.ways(allowed);
        let Some(top) = ways.last() else {
            return Some(Best {
                key: Key::default(),
                places: Vec::new(),
            });
        };
        let ends = top.iter().enumerate().filter_map(|(at, way)| {
            let last = &self.drawers[ways.len() - 1][at];
            Some(((*way)?.0 + self.height(last, None)?, at))
        });
        let (key, mut at) = ends.min()?;
        let mut places = Vec::new();
        for (drawer, ways) in ways.iter().enumerate().rev() {
            places.push(self.drawers[drawer][at]);
            at = ways[at]?.1;
        }
        places.reverse();
        Some(Best { key, places })
    }

    /// The best way to each hole of each drawer, from the lowest drawer up.
    fn ways(&self, allowed: &dyn Fn(usize, Length) -> bool) -> Vec<Vec<Way>> {
        let mut all: Vec<Vec<Way>> = Vec::with_capacity(self.drawers.len());
        for (drawer, candidates) in self.drawers.iter().enumerate() {
            let below = all.last().zip(drawer.checked_sub(1));
            let way = |to: &Candidate| -> Way {
                if !allowed(drawer, to.distance) {
                    return None;
                }
                let Some((ways, below)) = below else {
                    return Some((to.key, 0));
                };
                let from = ways.iter().zip(&self.drawers[below]).enumerate();
                let ways = from.filter_map(|(at, (way, from))| {
                    Some(((*way)?.0 + self.height(from, Some(to))?, at))
                });
                ways.min().map(|(key, at)| (key + to.key, at))
            };
            let ways = candidates.iter().map(way).collect();
            all.push(ways);
        }
        all
    }

    /// What a box's height counts between its hole and the next drawer's; `None` when there is no room for a box.
    fn height(&self, at: &Candidate, next: Option<&Candidate>) -> Option<Key> {
        let clear = self.stack.clear;
        let over = at.ceiling - clear.above - at.underside;
        let room = next.map_or(over, |next| {
            over.min(next.underside - clear.between - at.underside)
        });
        let height = self.stack.stepped(room);
        (height >= self.box_least).then(|| Key {
            lower: -i64::from(height.counts()),
            ..Key::default()
        })
    }

    /// The lowest drawer that no way leads to; the highest when only its own box finds no room.
    pub(super) fn stuck(&self) -> usize {
        let ways = self.ways(&|_, _| true);
        let reached = |ways: &Vec<Way>| ways.iter().any(Option::is_some);
        let last = ways.len().saturating_sub(1);
        ways.iter().position(|ways| !reached(ways)).unwrap_or(last)
    }
}

fn candidate(stack: &Stack<'_>, foot: Length, hole: HoleNumber) -> Candidate {
    let underside = stack.grid.height(hole) - stack.line;
    let distance = underside - foot;
    let off = (distance - stack.distances.wanted).abs();
    Candidate {
        hole,
        underside,
        distance,
        ceiling: stack.ceiling_above(underside),
        key: Key {
            outside: stack.outside(distance).counts().into(),
            off: off.counts().into(),
            lower: 0,
            holes: hole.get().into(),
        },
    }
}
