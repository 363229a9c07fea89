//! Two doors on one partition, bored from one pattern: the right one's plates are the left one's, upside down, and no
//! plate meets a plate behind it.

use alloc::vec::Vec;

use super::even::{Even, wide};
use super::{Door, DoorCups, HingeRow, LegalCentre, cups};
use crate::cards::PlateShape;
use crate::measure::Length;

/// Plates of two doors alike, on both faces of one partition.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opposed {
    /// Those on the left face, upward.
    pub left: Vec<LegalCentre>,
    /// Those on the right face, upward: the left ones, counted from the head.
    pub right: Vec<LegalCentre>,
    /// The one drilling of both doors, as the left one has it; the right one is turned end for end.
    pub cups: DoorCups,
}

/// Why two doors cannot have one pattern.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoOpposed {
    /// Counted from the head, plates fall this much above the nearest holes.
    OffGrid {
        /// Above -16 mm, up to +16 mm.
        by: Length,
    },
    /// Not that many plates find room; so many do.
    NoRoom {
        /// The most that do, maybe none.
        most: u8,
    },
}

/// Plates for two doors alike on one partition: staggered, mirrored, with the least deviation from even spacing, then the
/// least largest one, then the lower holes on the left. Both rows have one grid and one kind of plate, that of the left.
///
/// # Errors
/// - [`NoOpposed::OffGrid`] when the door's middle falls neither on a hole nor midway between two;
/// - [`NoOpposed::NoRoom`] when not that many plates find room.
pub fn opposed(
    left: &HingeRow<'_>,
    right: &HingeRow<'_>,
    door: Door,
    count: u8,
    end_least: Length,
) -> Result<Opposed, NoOpposed> {
    let (from, to) = (door.foot + end_least, door.head() - end_least);
    let by = (door.mirror(left.grid.first) - left.grid.first).wrap_to(Length::PITCH);
    if by != Length::ZERO {
        return Err(NoOpposed::OffGrid { by });
    }
    let behind = right.legal(from, to);
    let mirror = |place: &LegalCentre| {
        let z = door.mirror(place.centre);
        let found = behind.binary_search_by_key(&z, |place| place.centre);
        found.ok().map(|at| behind[at])
    };
    let mut legal = left.legal(from, to);
    legal.retain(|place| mirror(place).is_some());
    let shared = match left.plate {
        PlateShape::AlongRow => Length::PITCH * 2,
        PlateShape::InLine => Length::PITCH,
    };
    let search = |count: usize| {
        Search {
            legal: &legal,
            door,
            even: Even::between(&legal, door, count),
            apart: left.apart(),
            shared,
            best: None,
        }
        .run()
    };
    let Some(best) = search(usize::from(count)) else {
        let most = (1..count).rev().find(|&less| search(less.into()).is_some());
        return Err(NoOpposed::NoRoom {
            most: most.unwrap_or(0),
        });
    };
    let left: Vec<LegalCentre> = best.iter().map(|&at| legal[at]).collect();
    let centres: Vec<Length> = left.iter().map(|place| place.centre).collect();
    Ok(Opposed {
        right: left.iter().rev().filter_map(mirror).collect(),
        left,
        cups: cups(door, &centres),
    })
}

/// All deviation, the largest, and the heights: less is better.
type Key = (i64, i64, i64);

/// Places for two hinges, equally many from both ends; for the middle one, twice the same.
struct Pair {
    low: usize,
    high: usize,
    key: Key,
}

/// Branch and bound, pair by pair from the ends inward.
struct Search<'a> {
    legal: &'a [LegalCentre],
    door: Door,
    even: Even,
    apart: Length,
    /// Two plates back to back share a hole when their middles are nearer than this.
    shared: Length,
    best: Option<(Key, Vec<usize>)>,
}

impl Search<'_> {
    /// The best places, upward.
    fn run(mut self) -> Option<Vec<usize>> {
        let count = self.even.count();
        let rings: Vec<Vec<Pair>> = (0..count.div_ceil(2))
            .map(|ring| self.pairs(ring))
            .collect();
        let mut rest: Vec<i64> = rings
            .iter()
            .map(|ring| ring.first().map_or(0, |pair| pair.key.0))
            .collect();
        rest.push(0);
        for at in (0..rings.len()).rev() {
            rest[at] += rest[at + 1];
        }
        self.descend(&rings, &rest, (0, 0, 0), &mut Vec::new());
        let mut places = self.best?.1;
        places.sort_unstable();
        places.dedup();
        Some(places)
    }

    /// The places for a pair that leave room for the hinges between and do not meet their own mirrors, best first.
    fn pairs(&self, ring: usize) -> Vec<Pair> {
        let opposite = self.even.count() - 1 - ring;
        let between = i32::try_from(opposite - ring).unwrap_or(i32::MAX);
        let mut pairs = Vec::new();
        for (low, l) in self.legal.iter().enumerate() {
            for (high, h) in self.legal.iter().enumerate().skip(low) {
                let room = if between == 0 {
                    low == high
                } else {
                    h.centre - l.centre >= self.apart * between
                };
                if !room || self.meet(low, low) || self.meet(high, high) || self.meet(low, high) {
                    continue;
                }
                let offs = [
                    self.even.off(ring, l.centre),
                    self.even.off(opposite, h.centre),
                ];
                let both = if between == 0 { 1 } else { 2 };
                let heights = [wide(l.centre), wide(h.centre)];
                let key = (
                    offs[..both].iter().sum(),
                    offs[0].max(offs[1]),
                    heights[..both].iter().sum(),
                );
                pairs.push(Pair { low, high, key });
            }
        }
        pairs.sort_by_key(|pair| pair.key);
        pairs
    }

    /// Whether a plate meets the mirror of another one, or of itself, behind it.
    fn meet(&self, a: usize, b: usize) -> bool {
        let (a, b) = (self.legal[a].centre, self.legal[b].centre);
        (a - self.door.mirror(b)).abs() < self.shared
    }

    fn descend(&mut self, rings: &[Vec<Pair>], rest: &[i64], so_far: Key, taken: &mut Vec<usize>) {
        let ring = taken.len() / 2;
        let Some(pairs) = rings.get(ring) else {
            if self.best.as_ref().is_none_or(|(best, _)| so_far < *best) {
                self.best = Some((so_far, taken.clone()));
            }
            return;
        };
        for pair in pairs {
            let key = (
                so_far.0 + pair.key.0,
                so_far.1.max(pair.key.1),
                so_far.2 + pair.key.2,
            );
            let bound = key.0 + rest[ring + 1];
            if self.best.as_ref().is_some_and(|(best, _)| bound > best.0) {
                break;
            }
            if self.goes(taken, pair) {
                taken.extend([pair.low, pair.high]);
                self.descend(rings, rest, key, taken);
                taken.truncate(ring * 2);
            }
        }
    }

    /// Whether a pair stands inside the pairs taken before it and meets none of their mirrors.
    fn goes(&self, taken: &[usize], pair: &Pair) -> bool {
        let inside = taken.last_chunk().is_none_or(|&[low, high]| {
            let [low, high] = [low, high].map(|at| self.legal[at].centre);
            self.legal[pair.low].centre - low >= self.apart
                && high - self.legal[pair.high].centre >= self.apart
        });
        let met = |&at: &usize| self.meet(at, pair.low) || self.meet(at, pair.high);
        inside && !taken.iter().any(met)
    }
}
