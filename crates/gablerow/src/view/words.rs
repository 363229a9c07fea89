//! Short words for things of the job, as the screens name them.

use gablerow_core::check::{Finding, Level};
use gablerow_core::job::{Cabinet, Key, PanelId};
use gablerow_core::layout::Layout;

use crate::app::App;
use crate::theme::Role;

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

/// Whether the job is saved: `saved`, `new` or `not saved`, and how that looks.
pub(super) fn saved(app: &App) -> (&'static str, Role) {
    match (app.desk.is_saved(), app.desk.has_file) {
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
