//! Short words for things of the job, as the screens name them.

use gablerow_core::check::{Finding, Level};
use gablerow_core::job::{Cabinet, Datum, Division, HolePlace, Key, PanelId};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Unit;

use crate::app::App;
use crate::theme::Role;

/// What owns a hole: `hinge plate on 19-20, from head`.
pub(super) fn owner(cabinet: &Cabinet, layout: &Layout, key: Key, unit: Unit) -> String {
    let mut words = None;
    let holes = holes_of(layout, key);
    cabinet.opening.each(&mut |opening| {
        let Division::Bay(bay) = &opening.division else {
            return;
        };
        if let Some(zone) = bay.zones.iter().find(|zone| zone.key == key) {
            words = Some(format!("shelf zone {holes}{}", counted(zone.first)));
        }
        if let Some(shelf) = bay.shelves.iter().find(|shelf| shelf.key == key) {
            words = Some(format!("loose shelf on {holes}{}", counted(shelf.hole)));
        }
        if let Some(plate) = bay.plates.iter().find(|plate| plate.key == key) {
            words = Some(format!("hinge plate on {holes}{}", counted(plate.hole)));
        }
        if let Some(runner) = bay.runners.iter().find(|runner| runner.key == key) {
            let length = runner.length.exact(unit);
            words = Some(format!(
                "runner {length} on {holes}{}",
                counted(runner.hole)
            ));
        }
    });
    let row = cabinet.free_rows.iter().find(|row| row.key == key);
    let hole = cabinet.free_holes.iter().find(|hole| hole.key == key);
    let purpose = row
        .map(|row| &row.purpose)
        .or(hole.map(|hole| &hole.purpose));
    words
        .or(purpose.map(ToString::to_string))
        .unwrap_or_else(|| "joint".to_owned())
}

/// What a part of the cabinet is called: `bay 2`, `partition 1`, `fixed shelf 1`, `D3`.
pub(super) fn part(cabinet: &Cabinet, layout: &Layout, key: Key) -> String {
    let mut front = None;
    cabinet.opening.each(&mut |opening| {
        let found = opening.fronts.iter().find(|front| front.key == key);
        front = front.take().or(found.map(|front| front.name.to_string()));
    });
    let opening = || layout.names.opening(key).map(|name| name.to_string());
    let shelf = || {
        layout
            .names
            .shelf(key)
            .map(|at| format!("fixed shelf {at}"))
    };
    front
        .or_else(opening)
        .or_else(shelf)
        .unwrap_or_else(|| layout.names.panel(PanelId::Partition(key)).to_string())
}

/// The hole numbers of a fitting, from the lowest to the highest.
fn holes_of(layout: &Layout, key: Key) -> String {
    let faces = layout.uprights.iter().flat_map(|upright| &upright.faces);
    let runs = faces.flat_map(|face| &face.rows).flat_map(|row| &row.runs);
    let own = || runs.clone().filter(|run| run.spec.owner == key);
    match (
        own().map(|run| run.first).min(),
        own().map(|run| run.last).max(),
    ) {
        (Some(first), Some(last)) if first != last => format!("{first}-{last}"),
        (Some(hole), _) => hole.to_string(),
        (None, _) => "no hole".to_owned(),
    }
}

/// Said only where it is not the foot, which is the usual way.
fn counted(place: HolePlace) -> String {
    match place.datum {
        Datum::Foot => String::new(),
        other => format!(", from {}", other.word()),
    }
}

/// Whether the job is saved: `saved`, `new` or `not saved`, and how that looks.
pub(super) fn saved(app: &App) -> (&'static str, Role) {
    match (app.desk.history.is_saved(), app.desk.has_file) {
        (true, true) => ("saved", Role::Good),
        (true, false) => ("new", Role::Dim),
        (false, _) => ("not saved", Role::Note),
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
