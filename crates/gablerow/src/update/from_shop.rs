//! What the shop keeps and the job lacks, to be taken.

use super::{Effect, cards, edit};
use crate::action::Action;
use crate::app::{App, Notice, Pane};
use crate::shop_file::Offer;

/// Opens the list over the cards, when there is something in it.
pub(super) fn open(app: &mut App) {
    let Some(Pane::Cards(cards)) = app.pane else {
        return;
    };
    if app.shop_file.offers(&app.desk.job).is_empty() {
        let text = "the shop keeps nothing that this job lacks";
        app.notice = Some(Notice::refused(text));
        return;
    }
    app.pane = Some(Pane::FromShop { line: 0, cards });
}

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Some(Pane::FromShop { line, cards }) = app.pane else {
        return Vec::new();
    };
    let offers = app.shop_file.offers(&app.desk.job);
    let last = offers.len().saturating_sub(1);
    let at = |line| Some(Pane::FromShop { line, cards });
    match action {
        Action::Up => app.pane = at(line.saturating_sub(1)),
        Action::Down => app.pane = at((line + 1).min(last)),
        Action::Leave => app.pane = Some(Pane::Cards(cards)),
        Action::Enter => match offers.into_iter().nth(line) {
            Some(offer) => return take(app, offer),
            None => app.pane = Some(Pane::Cards(cards)),
        },
        _ => {}
    }
    Vec::new()
}

fn take(app: &mut App, offer: Offer) -> Vec<Effect> {
    let name = match &offer {
        Offer::Missing(card) | Offer::Other(card) => Some(card.name()),
        Offer::House(_) => None,
    };
    let effects = edit(app, &offer.edit());
    // The list ends with its last line; then the cards show what was taken.
    if let (false, Some(name)) = (effects.is_empty(), name) {
        cards::show(app, &name);
    }
    effects
}

/// After a change the list may be shorter, or at its end.
pub(super) fn settle(app: &mut App) {
    let Some(Pane::FromShop { line, cards }) = app.pane else {
        return;
    };
    let count = app.shop_file.offers(&app.desk.job).len();
    app.pane = Some(match count {
        0 => Pane::Cards(cards),
        _ => Pane::FromShop {
            line: line.min(count - 1),
            cards,
        },
    });
}
