//! Holes less, holes at another depth, rows and holes at another setback.

use alloc::vec::Vec;

use super::trial::{Reach, Trial};
use crate::check::{Level, Rule};
use crate::edit::{Adjust, Edit, FreeEdit, Measure};
use crate::job::{BackRule, Cabinet, Depth, Division, Edge, Key, Zone};
use crate::layout::{BoreSpec, Face, RowName, Upright};
use crate::measure::Length;

/// Rules that another depth may mend.
const DEPTH: &[Rule] = &[
    Rule::DepthShortForScrew,
    Rule::DepthBreaksThrough,
    Rule::OpposedHolesMeet,
    Rule::ThroughIntoFreeBay,
    Rule::ExposedEnd,
];

/// Rules that another setback may mend.
const SETBACK: &[Rule] = &[
    Rule::NearMissRows,
    Rule::HoleOffPanel,
    Rule::HoleNearEdge,
    Rule::ToeNotchEatsRow,
    Rule::BackRowInGroove,
    Rule::SharedHole,
];

pub(super) fn offer(trial: &mut Trial) {
    for thing in trial.about() {
        less(trial, thing);
        away(trial, thing);
    }
    if trial.is_of(DEPTH) {
        depth(trial);
    }
    if trial.is_of(SETBACK) {
        setback(trial);
    }
}

fn adjust(trial: &Trial, thing: Key, adjust: Adjust) -> Edit {
    Edit::Adjust {
        cabinet: trial.cabinet.key,
        thing,
        adjust,
    }
}

/// The first and the last hole of a zone or a free row.
fn run_of(trial: &Trial, thing: Key) -> Option<(i16, i16)> {
    let last = trial.layout.last;
    let mut found = zone_of(trial.cabinet, thing).map(|zone| zone.numbers(last));
    if let Some(row) = trial.cabinet.free_rows.iter().find(|row| row.key == thing) {
        let (first, top) = (row.first.number(last), row.last.number(last));
        found = Some((first.min(top), first.max(top)));
    }
    found
}

fn zone_of(cabinet: &Cabinet, thing: Key) -> Option<&Zone> {
    let mut found = None;
    cabinet.opening.each(&mut |opening| {
        if let Division::Bay(bay) = &opening.division {
            found = found.or(bay.zones.iter().find(|zone| zone.key == thing));
        }
    });
    found
}

/// A zone or a free row without the holes that are in the way, or begun above them, or ended below them.
fn less(trial: &mut Trial, thing: Key) {
    let Some((first, last)) = run_of(trial, thing) else {
        return;
    };
    let (from, to) = match trial.finding.place.holes {
        Some((from, to)) if from <= last && first <= to => (from.max(first), to.min(last)),
        _ => (first, first),
    };
    for (from, to) in [
        (from, to),
        (first, to),
        (from, last),
        (first, first),
        (last, last),
    ] {
        if (from, to) != (first, last) {
            let edit = adjust(trial, thing, Adjust::Without([(from, to)].into()));
            trial.offer(Reach::Fitting, edit);
        }
    }
    let all = runs_in_the_way(trial, thing, (first, last));
    if all.len() > 1 {
        let edit = adjust(trial, thing, Adjust::Without(all));
        trial.offer(Reach::Fitting, edit);
    }
}

/// The holes of a zone or a free row of which the checks say what the finding says, on whatever face and of whatever else it
/// is about; runs that touch are one.
fn runs_in_the_way(trial: &Trial, thing: Key, (first, last): (i16, i16)) -> Vec<(i16, i16)> {
    let said = trial.said_of(thing).filter_map(|it| it.place.holes);
    let mut said: Vec<_> = said
        .filter(|(from, to)| *from <= last && first <= *to)
        .map(|(from, to)| (from.max(first), to.min(last)))
        .collect();
    said.sort_unstable();
    let mut runs: Vec<(i16, i16)> = Vec::new();
    for (from, to) in said {
        match runs.last_mut() {
            Some((_, end)) if from <= *end + 1 => *end = to.max(*end),
            _ => runs.push((from, to)),
        }
    }
    runs
}

/// The thing taken away, whole; no front for a note, which nobody gives up a door for.
fn away(trial: &mut Trial, thing: Key) {
    let cabinet = trial.cabinet.key;
    let is_front = trial.cabinet.opening.front(thing).is_some();
    if is_front && trial.finding.level == Level::Note {
        return;
    }
    let edit = if trial.cabinet.free_thing(thing).is_some() {
        let change = FreeEdit::TakeAway(thing);
        Edit::Free { cabinet, change }
    } else if let Some((first, last)) = run_of(trial, thing) {
        adjust(trial, thing, Adjust::Without([(first, last)].into()))
    } else if is_front {
        Edit::NoFront {
            cabinet,
            front: thing,
        }
    } else {
        Edit::NoFitting {
            cabinet,
            fitting: thing,
            hole: 0,
        }
    };
    trial.offer(Reach::Away, edit);
}

/// The depths that its panel, its bit and its fasteners suggest.
fn depth(trial: &mut Trial) {
    let mut wanted = depths(trial);
    wanted.sort();
    wanted.dedup();
    let measure = Measure::BoreDepth;
    for thing in trial.about() {
        let ways = wanted.iter().map(|&depth| Depth::Blind(depth));
        for depth in ways.chain([Depth::Shop, Depth::Through]) {
            let edit = adjust(trial, thing, Adjust::Depth(depth));
            trial.offer(Reach::Fitting, edit);
        }
    }
    for value in wanted {
        let edit = Edit::Measure {
            cabinet: trial.cabinet.key,
            measure,
            value,
        };
        trial.offer(Reach::Job, edit);
    }
}

fn depths(trial: &Trial) -> Vec<Length> {
    let Some(upright) = upright(trial) else {
        return Vec::new();
    };
    let (limits, thickness) = (&trial.job.shop.limits, upright.thickness);
    let mut wanted: Vec<Length> = [
        thickness - limits.skin(trial.job.shop.bit),
        thickness - limits.skin_flat,
        (thickness - limits.web).half(),
    ]
    .into();
    for spec in upright.faces.iter().flat_map(specs) {
        wanted.push(spec.pen + limits.spare);
        wanted.extend(spec.depth.map(|other| thickness - limits.web - other));
    }
    wanted.retain(|depth| *depth > Length::ZERO);
    wanted
}

fn upright<'a>(trial: &'a Trial) -> Option<&'a Upright> {
    trial.layout.upright(trial.finding.place.face?.panel)
}

fn specs(face: &Face) -> impl Iterator<Item = &BoreSpec> {
    let runs = face.rows.iter().flat_map(|row| &row.runs);
    let bores = face.bores.iter().map(|bore| &bore.spec);
    runs.map(|run| &run.spec).chain(bores)
}

/// Free rows and holes brought onto another row, far enough from it, or far enough from edges and groove; the back row of the
/// whole job likewise.
fn setback(trial: &mut Trial) {
    let Some(upright) = upright(trial) else {
        return;
    };
    let limits = trial.job.shop.limits;
    let (front, back) = (upright.front.total(), upright.back.total());
    let mut lines = [
        front + limits.to_edge,
        back - limits.to_edge,
        back - upright.back_taken - limits.to_back,
    ]
    .to_vec();
    lines.extend(
        upright
            .notch
            .map(|notch| front + notch.depth + limits.to_edge),
    );
    for x in upright.faces.iter().flat_map(centres) {
        lines.extend([x, x - limits.near, x + limits.near]);
    }
    let cabinet = trial.cabinet.key;
    for thing in trial.about() {
        let Some(free) = trial.cabinet.free_thing(thing) else {
            continue;
        };
        let (edge, now) = match free.edge {
            Edge::Front => (front, free.setback),
            Edge::Back => (back, -free.setback),
        };
        nearest(trial, Reach::Fitting, &lines, edge + now, |trial, by| {
            let by = if free.edge == Edge::Front { by } else { -by };
            adjust(trial, thing, Adjust::In(by))
        });
    }
    let face = trial
        .finding
        .place
        .face
        .and_then(|face| trial.layout.face(face));
    let mut rows = face.iter().flat_map(|face| &face.rows);
    let back_row = rows
        .find(|row| row.name == RowName::Back)
        .map(|row| row.x.total());
    if let (Some(now), true) = (back_row, trial.job.shop.back_rule != BackRule::OnPitch) {
        nearest(trial, Reach::Job, &lines, now, |trial, by| Edit::Measure {
            cabinet,
            measure: Measure::SetbackBack,
            value: trial.job.shop.setback_back - by,
        });
    }
}

/// Offers the nearest line before and the nearest behind that helps; the edit is made of how far back that is.
fn nearest(
    trial: &mut Trial,
    reach: Reach,
    lines: &[Length],
    now: Length,
    edit: impl Fn(&Trial, Length) -> Edit,
) {
    let mut steps: Vec<Length> = lines.iter().map(|line| *line - now).collect();
    steps.sort_by_key(|by| by.abs());
    steps.dedup();
    for behind in [false, true] {
        let mut way = steps.iter().filter(|by| (**by > Length::ZERO) == behind);
        _ = way.any(|&by| {
            let edit = edit(trial, by);
            trial.offer(reach, edit)
        });
    }
}

fn centres(face: &Face) -> impl Iterator<Item = Length> {
    let rows = face.rows.iter().map(|row| row.x.total());
    rows.chain(face.bores.iter().map(|bore| bore.x))
}
