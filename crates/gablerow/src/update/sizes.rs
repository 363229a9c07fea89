//! The list of sizes: lengths that are typed, and choices that are stepped through.

use gablerow_core::edit::Edit;

use super::{Effect, ask, edit};
use crate::action::Action;
use crate::app::{App, Notice, Pane, Purpose};
use crate::size_line::{SizeLine, lines};

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Some(Pane::Sizes(at)) = app.pane else {
        return Vec::new();
    };
    let last = lines().count() - 1;
    match action {
        // The list is long, and both its ends are wanted often: it goes round.
        Action::Up => app.pane = Some(Pane::Sizes(at.checked_sub(1).unwrap_or(last))),
        Action::Down => app.pane = Some(Pane::Sizes(if at < last { at + 1 } else { 0 })),
        Action::Leave => app.pane = None,
        Action::Enter => match lines().nth(at) {
            Some(SizeLine::Choice(choice)) => {
                return edit(
                    app,
                    &Edit::Choose {
                        cabinet: app.spot.cabinet,
                        choice,
                    },
                );
            }
            _ => begin(app),
        },
        _ => {}
    }
    Vec::new()
}

/// Begins typing the length one is on, with its value to start from.
pub(super) fn begin(app: &mut App) {
    let Some(Pane::Sizes(at)) = app.pane else {
        return;
    };
    let Some(SizeLine::Measure(measure)) = lines().nth(at) else {
        app.notice = Some(Notice::refused(
            "Enter steps through the ways this can be made",
        ));
        return;
    };
    let job = &app.desk.job;
    let value = job
        .cabinet(app.spot.cabinet)
        .and_then(|cabinet| measure.read(job, cabinet));
    match value {
        Some(value) => {
            let offered = value.exact(job.unit).to_string();
            ask(app, Purpose::Measure(measure), &offered);
        }
        None => {
            app.notice = Some(Notice::refused(measure.missing()));
        }
    }
}
