//! The proposed hardware: one at a time, or all of it.

use gablerow_core::propose;

use super::{Effect, edit};
use crate::action::Action;
use crate::app::{App, Notice, Pane};
use crate::hardware::proposals;
use crate::scene::{Thing, front_spot};

/// Opens the proposals of the cabinet; for a front one stands on that is carried already, anew for that.
pub(super) fn open(app: &mut App) {
    let front = front_spot(app).and_then(|spot| match spot.at {
        Thing::Front(key) => Some(key),
        _ => None,
    });
    for also in [None, front] {
        app.pane = Some(Pane::Hardware { line: 0, also });
        if !proposals(app).is_empty() {
            return;
        }
    }
    app.pane = None;
    app.notice = Some(Notice::refused(
        "nothing here waits for hardware; set a door or drawers first, or stand on a front to ask anew",
    ));
}

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Some(Pane::Hardware { line, also }) = app.pane else {
        return Vec::new();
    };
    let open = proposals(app);
    let last = open.len().saturating_sub(1);
    match action {
        Action::Up => {
            let line = line.saturating_sub(1);
            app.pane = Some(Pane::Hardware { line, also });
        }
        Action::Down => {
            let line = (line + 1).min(last);
            app.pane = Some(Pane::Hardware { line, also });
        }
        Action::Leave => app.pane = None,
        Action::Enter => match open.into_iter().nth(line).map(|proposal| proposal.edit) {
            Some(Some(taken)) => {
                let effects = edit(app, &taken);
                settle(app);
                return effects;
            }
            _ => {
                app.notice = Some(Notice::refused(
                    "this cannot be had; its reasons say what would work",
                ));
            }
        },
        Action::TakeAll => match propose::all_in_one(&open) {
            Some(all) => {
                let effects = edit(app, &all);
                settle(app);
                return effects;
            }
            None => {
                app.notice = Some(Notice::refused(
                    "none of these can be had; their reasons say what would work",
                ));
            }
        },
        _ => {}
    }
    Vec::new()
}

/// After a change there may be fewer proposals, or none.
pub(super) fn settle(app: &mut App) {
    let Some(Pane::Hardware { line, .. }) = app.pane else {
        return;
    };
    // What was asked anew has been answered.
    app.pane = Some(Pane::Hardware { line, also: None });
    let count = proposals(app).len();
    app.pane = (count > 0).then(|| Pane::Hardware {
        line: line.min(count - 1),
        also: None,
    });
}
