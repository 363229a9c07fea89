//! The holes with the fewest different box-to-front distances: branch and bound over which distances are allowed.
//!
//! Fronts whose feet are whole pitches apart, a *family*, have the same distances to choose from; fronts of different
//! families have none in common. So each family needs one distance at least, and no drawer alone in its family can save
//! one. What a branch may still reach is bounded by the chain without the open families' limits, which is solved at once.

use alloc::vec;
use alloc::vec::Vec;

use super::chain::{Best, Candidate, Chain, Key};
use crate::measure::Length;

/// The drawers of a chain by family.
struct Families<'a> {
    chain: &'a Chain<'a>,
    /// Family of each drawer.
    of: Vec<usize>,
    /// Every distance a family can have, ascending.
    distances: Vec<Vec<Length>>,
}

/// The best holes for a stack; `None` when there are none.
pub(super) fn fewest(chain: &Chain<'_>) -> Option<Vec<Candidate>> {
    let best = chain.best(&|_, _| true)?;
    let families = Families::new(chain);
    let counts = families.used(&best.places);
    let extra: usize = counts.iter().map(|used| used.len() - 1).sum();
    let fewer = (0..extra).find_map(|extra| {
        let mut search = Search {
            families: &families,
            limits: vec![None; families.distances.len()],
            best: None,
        };
        search.descend(extra);
        search.best
    });
    Some(fewer.unwrap_or(best).places)
}

impl<'a> Families<'a> {
    fn new(chain: &'a Chain<'a>) -> Self {
        let mut residues: Vec<Length> = Vec::new();
        let (mut of, mut distances) = (Vec::new(), Vec::new());
        for candidates in &chain.drawers {
            let all = || candidates.iter().map(|at| at.distance);
            let residue = all().next().unwrap_or_default().rem_floor(Length::PITCH);
            let family = residues.iter().position(|&known| known == residue);
            let family = family.unwrap_or_else(|| {
                residues.push(residue);
                distances.push(Vec::new());
                residues.len() - 1
            });
            of.push(family);
            distances[family].extend(all());
        }
        for family in &mut distances {
            family.sort_unstable();
            family.dedup();
        }
        Self {
            chain,
            of,
            distances,
        }
    }

    /// The different distances of each family.
    fn used(&self, places: &[Candidate]) -> Vec<Vec<Length>> {
        let mut used = vec![Vec::new(); self.distances.len()];
        for (&family, place) in self.of.iter().zip(places) {
            let used: &mut Vec<Length> = &mut used[family];
            if !used.contains(&place.distance) {
                used.push(place.distance);
            }
        }
        used
    }
}

struct Search<'a> {
    families: &'a Families<'a>,
    /// The distances a family may have; open where nothing was decided yet.
    limits: Vec<Option<Vec<Length>>>,
    best: Option<Best>,
}

impl Search<'_> {
    /// Looks for something better with so many distances more than one for each open family.
    fn descend(&mut self, extra: usize) {
        let limits = &self.limits;
        let of = &self.families.of;
        let allowed = |drawer: usize, distance: Length| {
            let limit = limits[of[drawer]].as_ref();
            limit.is_none_or(|limit| limit.contains(&distance))
        };
        let Some(found) = self.families.chain.best(&allowed) else {
            return;
        };
        if self.bound().is_some_and(|best| found.key >= best) {
            return;
        }
        let used = self.families.used(&found.places);
        let open = |family: &usize| self.limits[*family].is_none();
        let more = |family: usize| used[family].len() - 1;
        let families = || (0..used.len()).filter(open);
        if families().map(more).sum::<usize>() <= extra {
            self.best = Some(found);
            return;
        }
        let Some(family) = families().find(|&family| more(family) > 0) else {
            return;
        };
        for spent in 0..=extra.min(self.families.distances[family].len() - 1) {
            self.choose(family, 0, &mut Vec::new(), spent + 1, extra - spent);
        }
    }

    fn bound(&self) -> Option<Key> {
        self.best.as_ref().map(|best| best.key)
    }

    /// Descends once for every choice of so many distances of a family, from one of them on.
    fn choose(
        &mut self,
        family: usize,
        from: usize,
        chosen: &mut Vec<Length>,
        count: usize,
        extra: usize,
    ) {
        if chosen.len() == count {
            self.limits[family] = Some(chosen.clone());
            self.descend(extra);
            self.limits[family] = None;
            return;
        }
        for at in from..self.families.distances[family].len() {
            chosen.push(self.families.distances[family][at]);
            self.choose(family, at + 1, chosen, count, extra);
            chosen.pop();
        }
    }
}
