//! Short words for things of the job, as the screens name them.

use gablerow_core::check::{Finding, Level};
use gablerow_core::job::{Cabinet, Datum, Division, HolePlace, Key};
use gablerow_core::layout::Layout;

use crate::theme::Role;

/// What owns a hole: `hinge plate 19-20, from the head`.
pub(super) fn owner(cabinet: &Cabinet, layout: &Layout, key: Key) -> String {
    let mut words = None;
    let at = |place: HolePlace| place.number(layout.last);
    cabinet.opening.each(&mut |opening| {
        let Division::Bay(bay) = &opening.division else {
            return;
        };
        if let Some(zone) = bay.zones.iter().find(|zone| zone.key == key) {
            words = Some(format!(
                "shelf zone {}-{}{}",
                at(zone.first),
                at(zone.last),
                counted(zone.first)
            ));
        }
        if let Some(shelf) = bay.shelves.iter().find(|shelf| shelf.key == key) {
            words = Some(format!(
                "loose shelf on {}{}",
                at(shelf.hole),
                counted(shelf.hole)
            ));
        }
        if let Some(plate) = bay.plates.iter().find(|plate| plate.key == key) {
            words = Some(format!(
                "hinge plate on {}{}",
                at(plate.hole),
                counted(plate.hole)
            ));
        }
        if let Some(runner) = bay.runners.iter().find(|runner| runner.key == key) {
            let (length, hole) = (runner.length.exact_mm(), at(runner.hole));
            words = Some(format!("runner {length} on {hole}{}", counted(runner.hole)));
        }
    });
    let free_row = cabinet
        .free_rows
        .iter()
        .find(|row| row.key == key)
        .map(|row| row.purpose.to_string());
    let free_hole = cabinet
        .free_holes
        .iter()
        .find(|hole| hole.key == key)
        .map(|hole| hole.purpose.to_string());
    words
        .or(free_row)
        .or(free_hole)
        .unwrap_or_else(|| format!("joint {key}"))
}

/// Said only where it is not the foot, which is the usual way.
fn counted(place: HolePlace) -> String {
    match place.datum {
        Datum::Foot => String::new(),
        other => format!(", from {}", other.word()),
    }
}

/// How the weight of a finding looks.
pub(super) fn level_role(level: Level) -> Role {
    match level {
        Level::Stop => Role::Stop,
        Level::Warn => Role::Warn,
        Level::Note => Role::Note,
    }
}

/// The findings of a weight that nobody accepted.
pub(super) fn open_findings(findings: &[Finding], level: Level) -> impl Iterator<Item = &Finding> {
    findings
        .iter()
        .filter(move |finding| finding.accepted.is_none() && finding.level == level)
}
