//! Proposals: one at a time, or all that go together.

use gablerow_core::propose::{self, Proposal};

use super::{Effect, edit};
use crate::action::Action;
use crate::app::{App, Asking, Notice, Pane};
use crate::proposals::proposals;
use crate::scene::{Thing, front_spot};

/// Opens what would carry the fronts of the cabinet; for a front one stands on that is carried already, anew for that.
pub(super) fn open_hardware(app: &mut App) {
    let front = front_spot(app).and_then(|spot| match spot.at {
        Thing::Front(key) => Some(key),
        _ => None,
    });
    for also in [None, front] {
        if open(app, Asking::Hardware(also)) {
            return;
        }
    }
    app.notice = Some(Notice::refused(
        "nothing waits for hardware here; stand on a front to ask anew",
    ));
}

/// Opens what the bay one stands in and its cabinet could have.
pub(super) fn open_bay(app: &mut App) {
    if !open(app, Asking::Bay) {
        app.notice = Some(Notice::refused(
            "nothing to propose: balanced, and the bay has its shelf holes",
        ));
    }
}

/// Whether there is anything to show.
fn open(app: &mut App, wish: Asking) -> bool {
    app.pane = Some(Pane::Proposals { line: 0, wish });
    let found = !proposals(app).is_empty();
    if !found {
        app.pane = None;
    }
    found
}

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Some(Pane::Proposals { line, wish }) = app.pane else {
        return Vec::new();
    };
    let open = proposals(app);
    let last = open.len().saturating_sub(1);
    let at = |line| Some(Pane::Proposals { line, wish });
    match action {
        Action::Up => app.pane = at(line.saturating_sub(1)),
        Action::Down => app.pane = at((line + 1).min(last)),
        Action::Leave => app.pane = None,
        Action::Enter => match open.into_iter().nth(line) {
            Some(Proposal {
                edit: Some(taken), ..
            }) => {
                let effects = edit(app, &taken);
                answered(app);
                return effects;
            }
            Some(Proposal {
                already: true,
                title,
                ..
            }) => refuse(app, &title),
            _ => refuse(app, "this cannot be had; its reasons say what would work"),
        },
        Action::TakeAll => match (wish, propose::all_in_one(&open)) {
            (Asking::Bay, _) => refuse(app, "these are one or the other; take them one by one"),
            (_, Some(all)) => {
                let effects = edit(app, &all);
                answered(app);
                return effects;
            }
            (_, None) => refuse(
                app,
                "none of these can be had; their reasons say what would work",
            ),
        },
        _ => {}
    }
    Vec::new()
}

fn refuse(app: &mut App, text: &str) {
    app.notice = Some(Notice::refused(text));
}

/// What was asked anew has been answered; the rest stays open.
fn answered(app: &mut App) {
    if let Some(Pane::Proposals {
        wish: Asking::Hardware(also),
        ..
    }) = &mut app.pane
    {
        *also = None;
    }
    settle(app);
}

/// After a change there may be fewer proposals, or none.
pub(super) fn settle(app: &mut App) {
    let Some(Pane::Proposals { line, wish }) = app.pane else {
        return;
    };
    let count = proposals(app).len();
    app.pane = (count > 0).then(|| Pane::Proposals {
        line: line.min(count - 1),
        wish,
    });
}

#[cfg(test)]
mod tests;
