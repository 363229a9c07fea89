//! The findings of the cabinet.

use gablerow_core::check::Finding;
use gablerow_core::edit::Edit;

use super::{Effect, ask, edit, front, go_to, proposals};
use crate::action::Action;
use crate::app::{App, Pane, Purpose, Screen};
use crate::scene::{Scene, Spot};

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Some(Pane::Checks(at)) = app.pane else {
        return Vec::new();
    };
    let Some(scene) = Scene::at(&app.desk.job, &app.spot) else {
        return Vec::new();
    };
    let count = scene.findings.len();
    let finding = scene.findings.get(at).cloned();
    match (action, finding) {
        (Action::Up, _) => app.pane = Some(Pane::Checks(at.saturating_sub(1))),
        (Action::Down, _) => app.pane = Some(Pane::Checks((at + 1).min(count.saturating_sub(1)))),
        (Action::GoThere, Some(finding)) => {
            app.pane = None;
            go_to_place(app, &finding);
        }
        (Action::Mend, Some(finding)) => proposals::mend(app, &finding, Some(at)),
        (Action::Accept, Some(finding)) => {
            let message = finding.in_mm.clone();
            if finding.accepted.is_some() {
                return edit(
                    app,
                    &Edit::Withdraw {
                        cabinet: finding.place.cabinet,
                        message,
                    },
                );
            }
            ask(
                app,
                Purpose::Reason {
                    rule: finding.rule,
                    message,
                },
                "",
            );
        }
        (Action::NextCabinet, _) => of_cabinet(app, 1),
        (Action::PreviousCabinet, _) => of_cabinet(app, -1),
        (Action::Leave, _) => app.pane = None,
        _ => {}
    }
    Vec::new()
}

/// The checks of a cabinet farther on in the job, from their first line.
fn of_cabinet(app: &mut App, by: isize) {
    front::step_cabinets(app, by);
    app.pane = Some(Pane::Checks(0));
}

/// Goes where a finding is drawn: onto its face; what is about no face is seen from the front too, when one stands there.
pub(super) fn go_to_place(app: &mut App, finding: &Finding) {
    let place = finding.place;
    let is_seen = match app.screen {
        Screen::Face | Screen::Book => true,
        Screen::Front => place.face.is_none(),
        Screen::Job(_) => false,
    };
    if !is_seen {
        app.screen = Screen::Face;
    }
    go_to(
        app,
        Spot {
            cabinet: place.cabinet,
            face: place.face.unwrap_or(app.spot.face),
            row: place.row.unwrap_or(app.spot.row),
            hole: place.holes.map_or(app.spot.hole, |(first, _)| first),
        },
    );
}

/// After a change there may be fewer findings than the line one was on.
pub(super) fn settle(app: &mut App) {
    if let (Some(Pane::Checks(at)), Some(scene)) = (app.pane, Scene::at(&app.desk.job, &app.spot)) {
        app.pane = Some(Pane::Checks(at.min(scene.findings.len().saturating_sub(1))));
    }
}

#[cfg(test)]
mod tests;
