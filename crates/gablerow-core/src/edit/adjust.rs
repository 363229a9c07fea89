//! One fitting, free row, free hole or fixed shelf moved or made a little otherwise, as a person asks who stands on it.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::fittings::each_fixed_shelf;
use super::{BayRun, Refusal, cabinet, change, pins};
use crate::counted::counted;
use crate::history::Step;
use crate::job::{
    Bay, Cabinet, Datum, Depth, Division, End, FreeRow, HolePlace, Job, Key, ShelfHeight, Zone,
};
use crate::layout::Layout;
use crate::measure::Length;

/// How a fitting, a free row, a free hole or a fixed shelf becomes another.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Adjust {
    /// So many holes up, or down when negative; what is counted from an end goes on being counted from it.
    Up(i16),
    /// A shelf zone or a free row without these holes: runs from a first to a last one, both included.
    Without(Vec<(i16, i16)>),
    /// How deep a shelf zone, a free row or a free hole is bored.
    Depth(Depth),
    /// So much farther from the edge that a free row, a free hole or the front of a loose shelf is measured from; nearer when
    /// negative.
    In(Length),
    /// Another of the lengths of a runner's card.
    Runner(Length),
}

/// More holes than that no place of a job can be moved by.
const MOST_HOLES: i16 = 400;

/// The step of an adjustment.
pub(super) fn apply(job: &Job, key: Key, thing: Key, adjust: &Adjust) -> Result<Step, Refusal> {
    let (_, known) = cabinet(job, key)?;
    let last = Layout::last_hole(known, &job.shop);
    let new = job.free_key(key);
    change(job, key, |edited| {
        let words = match *adjust {
            Adjust::Up(holes) => up(edited, thing, holes.clamp(-MOST_HOLES, MOST_HOLES), last),
            Adjust::Without(ref runs) => without(edited, (key, thing), runs, last, new),
            Adjust::Depth(depth) => bore(edited, thing, depth, job),
            Adjust::In(by) => set_in(edited, thing, by, job),
            Adjust::Runner(length) => runner(edited, thing, length, job),
        };
        words.ok_or_else(|| Refusal("there is nothing here that could be so".to_string()))
    })
}

/// `3-4` or `3`.
fn run((first, last): (i16, i16)) -> String {
    if first == last {
        return first.to_string();
    }
    format!("{first}-{last}")
}

fn up(edited: &mut Cabinet, thing: Key, holes: i16, last: i16) -> Option<String> {
    let mut words = None;
    let shift = |place: &mut HolePlace| {
        *place = HolePlace::of(place.number(last).saturating_add(holes), place.datum, last);
        place.number(last)
    };
    edited.opening.each_bay_mut(&mut |bay: &mut Bay| {
        for zone in bay.zones.iter_mut().filter(|zone| zone.key == thing) {
            shift(&mut zone.first);
            shift(&mut zone.last);
            words = Some(format!("pins to {}", run(zone.numbers(last))));
        }
        for shelf in bay.shelves.iter_mut().filter(|shelf| shelf.key == thing) {
            words = Some(format!("shelf to {}", shift(&mut shelf.hole)));
        }
        for plate in bay.plates.iter_mut().filter(|plate| plate.key == thing) {
            words = Some(format!("hinge plate to hole {}", shift(&mut plate.hole)));
        }
        for runner in bay.runners.iter_mut().filter(|runner| runner.key == thing) {
            words = Some(format!("runner to {}", shift(&mut runner.hole)));
        }
        bay.zones.sort_by_key(|zone| zone.numbers(last).0);
        bay.shelves.sort_by_key(|shelf| shelf.hole.number(last));
        bay.plates.sort_by_key(|plate| plate.hole.number(last));
        bay.runners.sort_by_key(|runner| runner.hole.number(last));
    });
    each_fixed_shelf(&mut edited.opening, &mut |shelf| {
        if shelf.key == thing {
            words = Some("fixed shelf moved".to_string());
            match &mut shelf.at {
                ShelfHeight::Hole(place) => _ = shift(place),
                ShelfHeight::Underside(at) => *at += Length::PITCH * i32::from(holes),
            }
        }
    });
    for row in edited.free_rows.iter_mut().filter(|row| row.key == thing) {
        let ends = (shift(&mut row.first), shift(&mut row.last));
        words = Some(format!("{} to {}", row.purpose, run(ends)));
    }
    for hole in edited.free_holes.iter_mut().filter(|it| it.key == thing) {
        let by = Length::PITCH * i32::from(holes);
        hole.height = match hole.end {
            End::Foot => hole.height + by,
            End::Head => hole.height - by,
        };
        let way = if holes < 0 { "down" } else { "up" };
        let many = counted(usize::from(holes.unsigned_abs()), "hole");
        words = Some(format!("{} {many} {way}", hole.purpose));
    }
    words
}

/// Cuts runs out of a zone or a free row, the highest first, since the part below a cut keeps the key; says what is left over
/// of it, or that it is gone.
fn without(
    edited: &mut Cabinet,
    (cabinet, thing): (Key, Key),
    runs: &[(i16, i16)],
    last: i16,
    mut new: Key,
) -> Option<String> {
    let mut runs = runs.to_vec();
    runs.sort_unstable();
    let name = name_of_run(edited, thing, last)?;
    for &(first, top) in runs.iter().rev() {
        let cut = BayRun {
            cabinet,
            bay: thing,
            first,
            last: top,
            datum: Datum::Foot,
        };
        edited
            .opening
            .each_bay_mut(&mut |bay: &mut Bay| pins::cut_zone(bay, thing, cut, last, new));
        let at = edited.free_rows.iter().position(|row| row.key == thing);
        if let Some(at) = at {
            let row = edited.free_rows.remove(at);
            let parts = parts_of(&row, (first, top), last, new);
            parts
                .into_iter()
                .flatten()
                .for_each(|part| edited.free_rows.insert(at, part));
        }
        new = new.next();
    }
    Some(match name_of_run(edited, thing, last) {
        None => format!("no {name}"),
        Some(_) => {
            let runs: Vec<String> = runs.into_iter().map(run).collect();
            format!("{name} without {}", runs.join(" and "))
        }
    })
}

/// What a zone or a free row is called: `pins 3-10`, or what it is for; `None` when there is none of this key.
fn name_of_run(cabinet: &Cabinet, thing: Key, last: i16) -> Option<String> {
    let row = cabinet.free_rows.iter().find(|row| row.key == thing);
    let mut name = row.map(|row| row.purpose.to_string());
    cabinet.opening.each(&mut |opening| {
        if let Division::Bay(bay) = &opening.division
            && let Some(zone) = bay.zones.iter().find(|zone| zone.key == thing)
        {
            name = Some(format!("pins {}", run(zone.numbers(last))));
        }
    });
    name
}

/// What is left of a free row below and above the holes that go, the upper part first; both ends as they were meant.
fn parts_of(row: &FreeRow, (first, top): (i16, i16), last: i16, new: Key) -> [Option<FreeRow>; 2] {
    let mut row = row.clone();
    if row.first.number(last) > row.last.number(last) {
        (row.first, row.last) = (row.last, row.first);
    }
    let below = (row.first.number(last) < first).then(|| FreeRow {
        last: HolePlace::of(first - 1, row.last.datum, last),
        ..row.clone()
    });
    let above = (row.last.number(last) > top).then(|| FreeRow {
        key: if below.is_some() { new } else { row.key },
        first: HolePlace::of(top + 1, row.first.datum, last),
        ..row
    });
    [above, below]
}

fn bore(edited: &mut Cabinet, thing: Key, depth: Depth, job: &Job) -> Option<String> {
    let mut what = None;
    edited.opening.each_bay_mut(&mut |bay: &mut Bay| {
        let of_key = |zone: &&mut Zone| zone.key == thing;
        for zone in bay.zones.iter_mut().filter(of_key) {
            zone.depth = depth;
            what = Some("pins".to_string());
        }
    });
    for row in edited.free_rows.iter_mut().filter(|row| row.key == thing) {
        row.depth = depth;
        what = Some(row.purpose.to_string());
    }
    for hole in edited.free_holes.iter_mut().filter(|it| it.key == thing) {
        hole.depth = depth;
        what = Some(hole.purpose.to_string());
    }
    what.map(|what| match depth {
        Depth::Shop => format!("{what} bored as the shop does"),
        Depth::Blind(depth) => format!("{what} bored {}", depth.exact(job.unit)),
        Depth::Through => format!("{what} bored through"),
    })
}

fn set_in(edited: &mut Cabinet, thing: Key, by: Length, job: &Job) -> Option<String> {
    let mut words = None;
    let said = |what: &str, setback: Length| format!("{what} {} in", setback.exact(job.unit));
    edited.opening.each_bay_mut(&mut |bay: &mut Bay| {
        for shelf in bay.shelves.iter_mut().filter(|shelf| shelf.key == thing) {
            shelf.setback_front = farther(shelf.setback_front, by);
            words = Some(said("shelf", shelf.setback_front));
        }
    });
    for row in edited.free_rows.iter_mut().filter(|row| row.key == thing) {
        row.setback = farther(row.setback, by);
        words = Some(said(row.purpose.as_str(), row.setback));
    }
    for hole in edited.free_holes.iter_mut().filter(|it| it.key == thing) {
        hole.setback = farther(hole.setback, by);
        words = Some(said(hole.purpose.as_str(), hole.setback));
    }
    words
}

/// A sum that is no length of a job is refused as one that is too long.
fn farther(setback: Length, by: Length) -> Length {
    setback.checked_add(by).unwrap_or(Length::MAX)
}

fn runner(edited: &mut Cabinet, thing: Key, length: Length, job: &Job) -> Option<String> {
    let mut words = None;
    edited.opening.each_bay_mut(&mut |bay: &mut Bay| {
        for runner in bay.runners.iter_mut().filter(|runner| runner.key == thing) {
            let known = job.cards.runner(&runner.card);
            if known.is_some_and(|card| card.length(length).is_some()) {
                runner.length = length;
                words = Some(format!("runner {}", length.exact(job.unit)));
            }
        }
    });
    words
}
