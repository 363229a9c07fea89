//! The findings of the cabinet.

use gablerow_core::edit::Edit;

use super::{Effect, ask, edit, go_to};
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
            if !matches!(app.screen, Screen::Face | Screen::Book) {
                app.screen = Screen::Face;
            }
            let place = finding.place;
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
                    rule: finding.rule_name().to_owned(),
                    message,
                },
                "",
            );
        }
        (Action::Leave, _) => app.pane = None,
        _ => {}
    }
    Vec::new()
}

/// After a change there may be fewer findings than the line one was on.
pub(super) fn settle(app: &mut App) {
    if let (Some(Pane::Checks(at)), Some(scene)) = (app.pane, Scene::at(&app.desk.job, &app.spot)) {
        app.pane = Some(Pane::Checks(at.min(scene.findings.len().saturating_sub(1))));
    }
}
