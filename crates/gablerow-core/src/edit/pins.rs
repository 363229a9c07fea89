//! Shelf zones as runs of pin holes.

use alloc::format;
use alloc::vec::Vec;

use super::fittings::{bay, change_bay};
use super::{BayRun, Refusal};
use crate::history::Step;
use crate::job::{Bay, Depth, HolePlace, Job, Key, Zone};

/// Sets the pin holes of a run, or takes them away when all of them are there.
pub(super) fn toggle(job: &Job, run: BayRun) -> Result<Step, Refusal> {
    let (found, last) = bay(job, run)?;
    let covered = |number: i16| {
        let mut numbers = found.zones.iter().map(|zone| zone.numbers(last));
        numbers.any(|(first, top)| (first..=top).contains(&number))
    };
    let all_there = (run.first..=run.last).all(covered);
    change_bay(job, run, |bay, key| {
        if all_there {
            take_away(bay, run, last, key);
            format!("no pins on {run}")
        } else {
            set(bay, run, last, key);
            format!("pins on {run}")
        }
    })
}

/// A new zone, which takes up the zones it touches when they are counted the same way.
fn set(bay: &mut Bay, run: BayRun, last: i16, new: Key) {
    let mut made = Zone {
        key: new,
        first: HolePlace::of(run.first, run.datum, last),
        last: HolePlace::of(run.last, run.datum, last),
        depth: Depth::Shop,
    };
    let touched = |zone: &Zone| {
        let alike = zone.depth == Depth::Shop
            && zone.first.datum == run.datum
            && zone.last.datum == run.datum;
        let (first, top) = zone.numbers(last);
        alike && first <= run.last + 1 && top >= run.first - 1
    };
    let (mut lower, mut upper) = (run.first, run.last);
    for zone in bay.zones.iter().filter(|zone| touched(zone)) {
        let (first, top) = zone.numbers(last);
        (lower, upper) = (lower.min(first), upper.max(top));
        made.key = made.key.min(zone.key);
    }
    made.first = HolePlace::of(lower, run.datum, last);
    made.last = HolePlace::of(upper, run.datum, last);
    bay.zones.retain(|zone| !touched(zone));
    let at = bay
        .zones
        .partition_point(|zone| zone.numbers(last).0 <= lower);
    bay.zones.insert(at, made);
}

/// Cuts the run out of the zone of this key, if the bay has it.
pub(super) fn cut_zone(bay: &mut Bay, zone: Key, run: BayRun, last: i16, new: Key) {
    cut(bay, run, last, new, |other| other == zone);
}

/// Cuts the run out of every zone.
fn take_away(bay: &mut Bay, run: BayRun, last: i16, new: Key) {
    cut(bay, run, last, new, |_| true);
}

/// Cuts the run out of the zones that are meant; what is left of a zone keeps its ends as they were meant.
fn cut(bay: &mut Bay, run: BayRun, last: i16, mut new: Key, is_meant: impl Fn(Key) -> bool) {
    let mut left = Vec::with_capacity(bay.zones.len() + 1);
    for mut zone in bay.zones.drain(..) {
        let (first, top) = zone.numbers(last);
        if !is_meant(zone.key) || top < run.first || first > run.last {
            left.push(zone);
            continue;
        }
        if zone.first.number(last) > first {
            (zone.first, zone.last) = (zone.last, zone.first);
        }
        let below = (first < run.first).then(|| Zone {
            last: HolePlace::of(run.first - 1, zone.last.datum, last),
            ..zone.clone()
        });
        let mut above = (top > run.last).then(|| Zone {
            first: HolePlace::of(run.last + 1, zone.first.datum, last),
            ..zone
        });
        if let (Some(_), Some(above)) = (&below, &mut above) {
            above.key = new;
            new = new.next();
        }
        left.extend(below.into_iter().chain(above));
    }
    bay.zones = left;
}
