//! What the shop's rail does not do at once: panels longer than it, rows beyond its arms, offsets its stop does not have.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::bench::{Held, Outlook, Position, SetUp, is_reached, outlook, stops};
use crate::cards::{Rail, RailKind};
use crate::job::{End, FaceId};
use crate::layout::Upright;
use crate::measure::Length;

/// Panels longer than the rail.
pub(super) fn rail_re_index(cx: &Context, found: &mut Vec<Finding>) {
    let Some(rail) = cx.job.rail() else { return };
    let covered = Length::PITCH * i32::from(rail.covers());
    // Most panels are covered, and then nothing has to be worked out.
    if cx.layout.uprights.iter().any(|it| it.length() > covered) {
        let outlook = outlook(cx.job, cx.cabinet, cx.layout);
        moved_on(cx, rail, &outlook, found);
        from_both_ends(cx, rail, &outlook, found);
    }
}

/// Faces whose rows take more places of the rail than one.
fn moved_on(cx: &Context, rail: &Rail, outlook: &Outlook, found: &mut Vec<Finding>) {
    let mut longest: BTreeMap<FaceId, &SetUp> = BTreeMap::new();
    for it in outlook.set_ups.iter().filter(|it| it.positions.len() > 1) {
        let most = longest.entry(it.face).or_insert(it);
        if (it.positions.len(), it.row) > (most.positions.len(), most.row) {
            *most = it;
        }
    }
    for it in longest.into_values() {
        let places = i32::try_from(it.positions.len()).unwrap_or(i32::MAX);
        let moves: Vec<String> = it
            .positions
            .iter()
            .filter_map(|at| moved(cx, it, at))
            .collect();
        let message = format!(
            "the rail covers {} holes, so a row takes {places} places of it: {}; drift {} at worst, {} likely",
            rail.covers(),
            moves.join(", then "),
            (rail.play.value * (places - 1)).show(cx.unit),
            root_times(rail.play.value, places - 1).show(cx.unit)
        );
        found.push(Finding::new(
            Rule::RailReIndex,
            cx.here().on(it.face),
            message,
        ));
    }
}

/// Copies that are bored from both ends.
fn from_both_ends(cx: &Context, rail: &Rail, outlook: &Outlook, found: &mut Vec<Finding>) {
    let parted = outlook.set_ups.iter().filter(|it| it.is_parted);
    let numbers = parted.flat_map(|it| {
        it.positions
            .iter()
            .flat_map(move |at| at.runs.iter().map(move |run| (it.rest.end, *run)))
    });
    let from_foot = numbers.filter(|(end, _)| *end == End::Foot);
    if let Some(last) = from_foot.map(|(_, run)| run.1).max() {
        let message = format!(
            "the rail covers {} holes and has nothing to be pinned in, so holes above {last} are bored from the head: measure \
             the panels first, or those are off by what they were cut longer",
            rail.covers()
        );
        found.push(Finding::new(Rule::RailReIndex, cx.here(), message));
    }
}

/// What of a panel longer than the rail is bored from one end or the other.
fn parted(cx: &Context, rail: &Rail) -> Vec<SetUp> {
    let covered = Length::PITCH * i32::from(rail.covers());
    if cx.layout.uprights.iter().all(|it| it.length() <= covered) {
        return Vec::new();
    }
    let mut set_ups = outlook(cx.job, cx.cabinet, cx.layout).set_ups;
    set_ups.retain(|it| it.is_parted);
    set_ups
}

/// How the rail comes to a place; nothing where it lies against the stop.
fn moved(cx: &Context, it: &SetUp, at: &Position) -> Option<String> {
    match at.held {
        Held::Stop => None,
        Held::Pins([near, far]) => Some(format!("pins in {near} and {far}")),
        Held::Tape(from_end) => {
            let end = it.rest.end.word();
            Some(format!("by tape {} from the {end}", from_end.show(cx.unit)))
        }
    }
}

/// A length times the root of a number, rounded down to a thousandth of a millimetre.
fn root_times(length: Length, number: i32) -> Length {
    let square = i64::from(length.counts()) * i64::from(length.counts()) * i64::from(number);
    let root = square.unsigned_abs().isqrt();
    Length::from_um(i32::try_from(root / 8).unwrap_or(i32::MAX))
}

/// Rows that no arm reaches from either edge, or from the one that has the end on the stop that it has to have there.
pub(super) fn arm_reach(cx: &Context, found: &mut Vec<Finding>) {
    let Some(rail) = cx.job.rail() else { return };
    for (upright, face) in cx.faces() {
        for row in face.rows.iter().map(|row| row.x.total()) {
            if is_reached(cx.job, rail, upright, row) {
                continue;
            }
            let message = format!(
                "a row {} from the front and {} from the back: the arms reach {} to {}, with {} of panel beyond",
                (row - upright.front.total()).show(cx.unit),
                (upright.back.total() - row).show(cx.unit),
                rail.reach().start().show(cx.unit),
                rail.reach().end().show(cx.unit),
                rail.support_needed().show(cx.unit)
            );
            found.push(Finding::new(Rule::ArmReach, cx.here().on(face.id), message));
        }
    }
    for far in parted(cx, rail).iter().filter(|it| !it.is_reached) {
        let Some(upright) = cx.layout.upright(far.face.panel) else {
            continue;
        };
        // From neither edge: said already.
        if !is_reached(cx.job, rail, upright, upright.front.total() + far.row) {
            continue;
        }
        let message = format!(
            "a row {} from the front is worked from the {} edge, {} away, for only so its {} is on the stop: the arms reach {} to {}",
            far.row.show(cx.unit),
            far.edge.word(),
            far.setting.total().show(cx.unit),
            far.rest.end.word(),
            rail.reach().start().show(cx.unit),
            rail.reach().end().show(cx.unit)
        );
        found.push(Finding::new(
            Rule::ArmReach,
            cx.here().on(far.face),
            message,
        ));
    }
}

/// Stops that are asked for, and the rail does not have.
pub(super) fn end_stop_value(cx: &Context, found: &mut Vec<Finding>) {
    let Some(rail) = cx.job.rail().filter(|it| it.kind != RailKind::MachineBed) else {
        return;
    };
    let is_bored = |upright: &&Upright| upright.faces.iter().any(|face| !face.rows.is_empty());
    let bored = cx.layout.uprights.iter().filter(is_bored);
    let parted = parted(cx, rail);
    let of_parted = parted.iter().map(|it| (it.rest.end, it.rest.stop));
    let asked: BTreeSet<(End, Length)> = bored
        .flat_map(|upright| stops(cx.job, cx.cabinet, cx.layout, upright))
        .chain(of_parted)
        .filter(|(_, stop)| !rail.stops.contains(stop))
        .collect();
    let has: Vec<String> = rail
        .stops
        .iter()
        .map(|it| it.show(cx.unit).to_string())
        .collect();
    for (end, stop) in asked {
        let message = format!(
            "rows at the {} rest on a stop of {}, but that of the rail has {}",
            end.word(),
            stop.show(cx.unit),
            has.join(" and ")
        );
        found.push(Finding::new(Rule::EndStopValue, cx.here(), message));
    }
}

#[cfg(test)]
mod tests;
