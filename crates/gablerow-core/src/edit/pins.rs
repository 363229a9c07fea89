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
    for zone in bay.zones.drain(..) {
        if !is_meant(zone.key) {
            left.push(zone);
            continue;
        }
        let mut parts = without(zone, (run.first, run.last), last);
        if let [Some(_), Some(above)] = &mut parts {
            above.key = new;
            new = new.next();
        }
        left.extend(parts.into_iter().flatten());
    }
    bay.zones = left;
}

/// What is left of a zone below and above the holes that go, both ends included, as they were meant; both of its key.
fn without(mut zone: Zone, (from, to): (i16, i16), last: i16) -> [Option<Zone>; 2] {
    let (first, top) = zone.numbers(last);
    if top < from || first > to {
        return [Some(zone), None];
    }
    if zone.first.number(last) > first {
        (zone.first, zone.last) = (zone.last, zone.first);
    }
    let below = (first < from).then(|| Zone {
        last: HolePlace::of(from - 1, zone.last.datum, last),
        ..zone.clone()
    });
    let above = (top > to).then(|| Zone {
        first: HolePlace::of(to + 1, zone.first.datum, last),
        ..zone
    });
    [below, above]
}

/// Adds the zones of another bay, once the walls are the same: no hole twice. Zones that touch and are bored and counted alike
/// become one; of others the holes stay whose they were.
pub(super) fn join(bay: &mut Bay, others: &[Zone], last: i16, new: &mut dyn FnMut() -> Key) {
    for other in others {
        let mut parts = Vec::from([other.clone()]);
        for own in bay.zones.iter().filter(|own| !alike(own, other)) {
            let cut = |zone| without(zone, own.numbers(last), last);
            parts = parts.into_iter().flat_map(cut).flatten().collect();
        }
        for (at, mut part) in parts.into_iter().enumerate() {
            if at > 0 {
                part.key = new();
            }
            join_one(bay, part, last);
        }
    }
    bay.zones.sort_by_key(|zone| zone.numbers(last));
}

/// Whether two zones are bored alike, and all of their ends are counted from one place.
fn alike(one: &Zone, other: &Zone) -> bool {
    let ends = [one.last, other.first, other.last];
    one.depth == other.depth && ends.iter().all(|end| end.datum == one.first.datum)
}

/// Adds a zone, which takes up the zones alike that it touches; of their names the first one stays.
fn join_one(bay: &mut Bay, mut zone: Zone, last: i16) {
    let (from, to) = zone.numbers(last);
    let touches = |own: &Zone| {
        let (first, top) = own.numbers(last);
        alike(own, &zone) && first <= to.saturating_add(1) && top >= from.saturating_sub(1)
    };
    let touched: Vec<Zone> = bay
        .zones
        .iter()
        .filter(|own| touches(own))
        .cloned()
        .collect();
    bay.zones.retain(|own| !touched.contains(own));
    if let Some(key) = touched.iter().map(|own| own.key).min() {
        let numbers = touched.iter().map(|own| own.numbers(last));
        let ends = numbers.fold((from, to), |(low, high), (first, top)| {
            (low.min(first), high.max(top))
        });
        let datum = zone.first.datum;
        zone = Zone {
            key,
            first: HolePlace::of(ends.0, datum, last),
            last: HolePlace::of(ends.1, datum, last),
            depth: zone.depth,
        };
    }
    bay.zones.push(zone);
}
