//! The page of cards: values that are typed or stepped through, cards copied, removed and used.

use gablerow_core::cards::{Card, CardName};
use gablerow_core::edit::{Edit, New, Value};
use gablerow_core::job::{Cabinet, Job};

use super::{Effect, ask, edit};
use crate::action::Action;
use crate::app::{App, Notice, Pane, Purpose};
use crate::card_line::{self, CardLine, CardsAt, DetailLine};
use crate::shop_file::ShopFile;
use crate::size_line::{self, SizeLine};

/// Opens the page on what the line of the sizes rests on, or on the house defaults.
pub(super) fn open(app: &mut App) -> Vec<Effect> {
    let at = match app.pane {
        Some(Pane::Sizes(line)) => place_of_size(app, line),
        _ => None,
    };
    app.pane = Some(Pane::Cards(at.unwrap_or_default()));
    Vec::new()
}

/// Where the page shows what a line of the sizes is.
fn place_of_size(app: &App, line: usize) -> Option<CardsAt> {
    let job = &app.desk.job;
    let cabinet = job.cabinet(app.spot.cabinet)?;
    let item = size_line::lines(app).into_iter().nth(line)?;
    let is_board = matches!(item, SizeLine::Measure(gablerow_core::edit::Measure::Board));
    let (line_of, words) = if is_board {
        let kind = gablerow_core::cards::CardKind::Board;
        let id = cabinet.carcass.sides.board.clone();
        (CardLine::Card(CardName { kind, id }), "thickness measured")
    } else {
        (CardLine::House, item.words())
    };
    let at = card_line::place_of(job, cabinet, &line_of, words);
    Some(CardsAt {
        sizes: Some(line),
        ..at
    })
}

/// The line one is on, and what it holds.
fn here(app: &App) -> Option<(CardsAt, CardLine, Vec<DetailLine>)> {
    let Some(Pane::Cards(at)) = app.pane else {
        return None;
    };
    let job = &app.desk.job;
    let line = card_line::lines(job).into_iter().nth(at.line)?;
    let details = card_line::details(job, sight(app)?, &line);
    Some((at, line, details))
}

fn sight(app: &App) -> Option<&Cabinet> {
    app.desk.job.cabinet(app.spot.cabinet)
}

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Some((at, line, details)) = here(app) else {
        return Vec::new();
    };
    match action {
        Action::Up | Action::Down => walk(app, at, details.len(), action),
        Action::Values => go(app, at, at.detail.or(Some(0))),
        Action::List => go(app, at, None),
        Action::Leave => leave(app, at),
        Action::Enter if at.detail.is_none() => go(app, at, Some(0)),
        Action::Enter => return step_or_type(app, &line, &details, at),
        Action::Origin => return step_origin(app, &line, &details, at),
        Action::Default => return of_card(app, &line, Edit::ShopCard),
        Action::CopyCard => {
            if let Some((name, card)) = whole(&app.desk.job, &line) {
                let offered = card.title().to_string();
                ask(app, Purpose::CopyCard(name), &offered);
            } else {
                refuse_house(app);
            }
        }
        Action::RemoveCard => return of_card(app, &line, Edit::CardRemove),
        Action::KeepInShop => {
            let job = &app.desk.job;
            let kept = match whole(job, &line) {
                Some((_, card)) => ShopFile::of_card(card),
                None => ShopFile::of_house(job),
            };
            return vec![Effect::KeepInShop(Box::new(kept))];
        }
        // Another window may have kept something in the meantime.
        Action::FromShop => return vec![Effect::ReadShop],
        _ => {}
    }
    Vec::new()
}

fn go(app: &mut App, at: CardsAt, detail: Option<usize>) {
    app.pane = Some(Pane::Cards(CardsAt { detail, ..at }));
}

fn leave(app: &mut App, at: CardsAt) {
    match at.detail {
        // Who came for one value goes back from it.
        Some(_) if at.sizes.is_none() => go(app, at, None),
        _ => app.pane = at.sizes.map(Pane::Sizes),
    }
}

fn walk(app: &mut App, at: CardsAt, details: usize, action: Action) {
    let stepped = |from: usize, count: usize| match action {
        Action::Up => from.saturating_sub(1),
        _ => (from + 1).min(count.saturating_sub(1)),
    };
    let moved = match at.detail {
        Some(detail) => CardsAt {
            detail: Some(stepped(detail, details)),
            ..at
        },
        None => CardsAt {
            line: stepped(at.line, card_line::lines(&app.desk.job).len()),
            ..at
        },
    };
    app.pane = Some(Pane::Cards(moved));
}

/// The card of a line, whole.
fn whole(job: &Job, line: &CardLine) -> Option<(CardName, Card)> {
    let name = line.card()?;
    Some((name.clone(), job.cards.card(name)?))
}

fn refuse_house(app: &mut App) {
    app.notice = Some(Notice::refused("this is for a card; go to one in the list"));
}

/// An edit of the card of the line.
fn of_card(app: &mut App, line: &CardLine, to: impl FnOnce(CardName) -> Edit) -> Vec<Effect> {
    match line.card() {
        Some(card) => edit(app, &to(card.clone())),
        None => {
            refuse_house(app);
            Vec::new()
        }
    }
}

fn step_origin(app: &mut App, line: &CardLine, details: &[DetailLine], at: CardsAt) -> Vec<Effect> {
    match (line, at.detail.and_then(|detail| details.get(detail))) {
        (CardLine::Card(card), Some(DetailLine::Value(value))) => edit(
            app,
            &Edit::CardOrigin {
                card: card.clone(),
                value: value.name,
            },
        ),
        _ => {
            let text = "an origin is said of a card's value; go to one first";
            app.notice = Some(Notice::refused(text));
            Vec::new()
        }
    }
}

fn step_or_type(
    app: &mut App,
    line: &CardLine,
    details: &[DetailLine],
    at: CardsAt,
) -> Vec<Effect> {
    match at.detail.and_then(|detail| details.get(detail)) {
        Some(DetailLine::Value(value)) if value.is_typed() => {
            ask_for(app, line, value);
            Vec::new()
        }
        Some(DetailLine::Value(value)) => edit(app, &of_value(line, value, New::Next)),
        Some(DetailLine::Seat(seat, _)) => edit(
            app,
            &Edit::UseCard {
                cabinet: app.spot.cabinet,
                seat: *seat,
                card: None,
            },
        ),
        None => Vec::new(),
    }
}

/// The edit that puts something in the place of a value.
fn of_value(line: &CardLine, value: &Value, new: New) -> Edit {
    let value = value.name;
    match line {
        CardLine::House => Edit::ShopValue { value, new },
        CardLine::Card(card) => Edit::Card {
            card: card.clone(),
            value,
            new,
        },
    }
}

fn ask_for(app: &mut App, line: &CardLine, value: &Value) {
    let offered = value.offered(app.desk.job.unit);
    let purpose = Purpose::Value {
        card: line.card().cloned(),
        value: value.name,
    };
    ask(app, purpose, &offered);
}

/// Begins typing the value one is on, with its text to start from.
pub(super) fn begin(app: &mut App) {
    let Some((at, line, details)) = here(app) else {
        return;
    };
    let said = match at.detail.and_then(|detail| details.get(detail)) {
        Some(DetailLine::Value(value)) if value.is_typed() => return ask_for(app, &line, value),
        Some(_) => "Enter steps through the ways this can be made",
        None => "go to a value first",
    };
    app.notice = Some(Notice::refused(said));
}

/// After a change there may be fewer cards or values than the line one was on.
pub(super) fn settle(app: &mut App) {
    let Some(Pane::Cards(at)) = app.pane else {
        return;
    };
    let last = card_line::lines(&app.desk.job).len().saturating_sub(1);
    let line = at.line.min(last);
    app.pane = Some(Pane::Cards(CardsAt { line, ..at }));
    let Some((_, _, details)) = here(app) else {
        return;
    };
    let last = details.len().saturating_sub(1);
    let detail = at.detail.map(|detail| detail.min(last));
    app.pane = Some(Pane::Cards(CardsAt { line, detail, ..at }));
}

/// Goes to the line of a card, if the page is open.
pub(super) fn show(app: &mut App, card: &CardName) {
    let Some(Pane::Cards(at)) = app.pane else {
        return;
    };
    let lines = card_line::lines(&app.desk.job);
    let found = lines.iter().position(|line| line.card() == Some(card));
    if let Some(line) = found {
        app.pane = Some(Pane::Cards(CardsAt { line, ..at }));
    }
}
