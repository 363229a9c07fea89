//! The search behind [`place`](super::place): dynamic programming, first along the door, then from both its ends inward.
//!
//! ```text
//! 1  upward and downward along the door: the least sum of deviations, and for each place of each hinge whether it is
//!    part of such a best answer
//! 2  the same again with large deviations left out, halving: the least largest one that keeps the sum
//! 3  among what is left, pair by pair from the ends inward: equal distances from both ends, then the higher holes
//! ```

use alloc::vec;
use alloc::vec::Vec;

use super::even::{Even, wide};
use super::{Door, LegalCentre};
use crate::measure::Length;

/// More than any sum of deviations, and still far from the end of the numbers.
const NEVER: i64 = i64::MAX / 4;

/// Deviation, how unlike the two ends are, and hole numbers below zero: less is better.
type Key = (i64, i64, i64);

/// One search.
pub(super) struct Search<'a> {
    legal: &'a [LegalCentre],
    door: Door,
    count: usize,
    apart: Length,
    /// Deviation of each hinge at each place, hinge by hinge.
    off: Vec<i64>,
}

/// A pair of hinges, equally many from both ends, at two places; the middle hinge is a pair with itself.
struct Pair {
    low: usize,
    high: usize,
    key: Key,
    /// Which of the pairs outside it leads here.
    outside: usize,
}

impl<'a> Search<'a> {
    /// A search for a place for each target; the places are upward, and that many find room.
    pub(super) fn new(legal: &'a [LegalCentre], door: Door, even: &Even, apart: Length) -> Self {
        let hinges = 0..even.count();
        let off = hinges.flat_map(|hinge| legal.iter().map(move |at| even.off(hinge, at.centre)));
        Self {
            legal,
            door,
            count: even.count(),
            apart,
            off: off.collect(),
        }
    }

    /// The best places, upward; none when that many find no room.
    pub(super) fn best(&self) -> Vec<LegalCentre> {
        if self.count == 0 || self.legal.is_empty() {
            return Vec::new();
        }
        let (least, _) = self.through(NEVER);
        if least >= NEVER {
            return Vec::new();
        }
        let through = self.least_largest(least);
        let open: Vec<Vec<usize>> = (0..self.count)
            .map(|hinge| {
                let row = &through[hinge * self.legal.len()..][..self.legal.len()];
                (0..row.len()).filter(|&at| row[at] == least).collect()
            })
            .collect();
        self.inward(&open)
    }

    /// What the best answer through each place of each hinge costs, and what the best of all does, when no deviation is
    /// larger than the limit.
    fn through(&self, limit: i64) -> (i64, Vec<i64>) {
        let n = self.legal.len();
        let cost = |at: usize| {
            if self.off[at] <= limit {
                self.off[at]
            } else {
                NEVER
            }
        };
        let mut below = vec![NEVER; n * self.count];
        let mut above = below.clone();
        for hinge in 0..self.count {
            let (mut near, mut best) = (0, NEVER);
            for at in 0..n {
                while self.fits(near, at) {
                    best = best.min(if hinge == 0 {
                        0
                    } else {
                        below[(hinge - 1) * n + near]
                    });
                    near += 1;
                }
                let before = if hinge == 0 { 0 } else { best };
                below[hinge * n + at] = (before + cost(hinge * n + at)).min(NEVER);
            }
        }
        for hinge in (0..self.count).rev() {
            let (mut near, mut best) = (n, NEVER);
            for at in (0..n).rev() {
                while near > 0 && self.fits(at, near - 1) {
                    near -= 1;
                    best = best.min(above.get((hinge + 1) * n + near).copied().unwrap_or(0));
                }
                let after = if hinge + 1 == self.count { 0 } else { best };
                above[hinge * n + at] = (after + cost(hinge * n + at)).min(NEVER);
            }
        }
        let least = above[..n].iter().copied().min().unwrap_or(NEVER);
        let both = below.iter().zip(&above).enumerate();
        let both = both.map(|(at, (below, above))| below + above - cost(at).min(NEVER));
        (least, both.collect())
    }

    /// What goes through each place when the largest deviation is as small as the least sum allows.
    fn least_largest(&self, least: i64) -> Vec<i64> {
        let mut limits = self.off.clone();
        limits.sort_unstable();
        limits.dedup();
        let holds = |limit: i64| self.through(limit).0 == least;
        let at = limits.partition_point(|&limit| !holds(limit));
        self.through(limits.get(at).copied().unwrap_or(NEVER)).1
    }

    /// Whether a plate at the first place leaves room for one at the second, above it.
    fn fits(&self, low: usize, high: usize) -> bool {
        low < high && self.legal[low].centre + self.apart <= self.legal[high].centre
    }

    /// The best of the open places, from both ends inward.
    fn inward(&self, open: &[Vec<usize>]) -> Vec<LegalCentre> {
        let mut rings: Vec<Vec<Pair>> = Vec::new();
        for ring in 0..self.count.div_ceil(2) {
            let opposite = self.count - 1 - ring;
            let mut pairs = Vec::new();
            for &low in &open[ring] {
                for &high in &open[opposite] {
                    let fits = if ring == opposite {
                        low == high
                    } else {
                        self.fits(low, high)
                    };
                    if let Some(pair) = self.pair(ring, low, high, rings.last()).filter(|_| fits) {
                        pairs.push(pair);
                    }
                }
            }
            rings.push(pairs);
        }
        self.outward(&rings)
    }

    /// A pair at two places with the best of the pairs outside it; `None` where it goes with none of them.
    fn pair(
        &self,
        ring: usize,
        low: usize,
        high: usize,
        outer: Option<&Vec<Pair>>,
    ) -> Option<Pair> {
        let opposite = self.count - 1 - ring;
        let n = self.legal.len();
        let [l, h] = [low, high].map(|at| self.legal[at]);
        let unlike =
            wide(l.centre) + wide(h.centre) - wide(self.door.foot) - wide(self.door.head());
        let mut key = (
            self.off[ring * n + low],
            unlike.abs(),
            -i64::from(l.hole.get()),
        );
        if ring != opposite {
            key.0 += self.off[opposite * n + high];
            key.2 -= i64::from(h.hole.get());
        }
        let goes = |pair: &Pair| self.fits(pair.low, low) && self.fits(high, pair.high);
        let (outside, before) = match outer {
            None => (0, (0, 0, 0)),
            Some(outer) => {
                let going = outer.iter().enumerate().filter(|(_, pair)| goes(pair));
                let best = going.min_by_key(|(_, pair)| pair.key)?;
                (best.0, best.1.key)
            }
        };
        let key = (before.0 + key.0, before.1 + key.1, before.2 + key.2);
        Some(Pair {
            low,
            high,
            key,
            outside,
        })
    }

    /// Follows the best innermost pair back outward, and puts the places in order.
    fn outward(&self, rings: &[Vec<Pair>]) -> Vec<LegalCentre> {
        let innermost = rings.last().map(|ring| ring.iter().enumerate());
        let best = innermost.and_then(|ring| ring.min_by_key(|(_, pair)| pair.key));
        let mut at = best.map_or(0, |(at, _)| at);
        let mut places = Vec::new();
        for ring in rings.iter().rev() {
            let Some(pair) = ring.get(at) else {
                return Vec::new();
            };
            places.extend([pair.low, pair.high]);
            at = pair.outside;
        }
        places.sort_unstable();
        places.dedup();
        places.into_iter().map(|at| self.legal[at]).collect()
    }
}
