//! Cards and house defaults: values, origins, cards added and removed, which card is used where.

use alloc::boxed::Box;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::values::{self, Content, New, Quantity, Value, ValueName, told};
use super::{Refusal, cabinet, change, nothing};
use crate::cards::{Card, CardId, CardName, Cards, Runner};
use crate::history::{Change, Step};
use crate::job::{Cabinet, Division, Job, Key, Seat, Shop};
use crate::label::Label;
use crate::measure::Length;

pub(super) fn set_value(
    job: &Job,
    name: &CardName,
    value: ValueName,
    new: &New,
) -> Result<Step, Refusal> {
    let mut card = found(job, name)?;
    values::set_on_card(&mut card, value, new, &job.cards)?;
    let label = format!("{name}: {}", told(&values::card_values(&card), value));
    keep_lengths(job, &card)?;
    with_card(job, card, label)
}

pub(super) fn step_origin(job: &Job, name: &CardName, value: ValueName) -> Result<Step, Refusal> {
    let mut card = found(job, name)?;
    let origin = values::step_origin(&mut card, value)?;
    let label = format!("{name}: {value} {}", origin.words());
    with_card(job, card, label)
}

pub(super) fn add(job: &Job, like: &CardName, title: &Label) -> Result<Step, Refusal> {
    let card = found(job, like)?;
    let name = CardName {
        kind: like.kind,
        id: CardId::of_title(title.as_str()),
    };
    if job.cards.has(&name) {
        return Err(Refusal(format!(
            "there is a {name} already; take another title"
        )));
    }
    let label = format!("copy {like} as {}", name.id);
    with_card(job, card.renamed(name.id, title.clone()), label)
}

pub(super) fn put(job: &Job, card: &Card) -> Result<Step, Refusal> {
    keep_lengths(job, card)?;
    with_card(job, card.clone(), format!("take {}", card.name()))
}

pub(super) fn remove(job: &Job, name: &CardName) -> Result<Step, Refusal> {
    found(job, name)?;
    let resting = job.resting_on(name);
    if !resting.is_empty() {
        return Err(Refusal(format!(
            "{name} stays: {} on it",
            rest(&listed(&resting), resting.len())
        )));
    }
    if job.is_default(name) {
        return Err(Refusal(format!(
            "{name} stays: it is a house default; make another card that first"
        )));
    }
    with_cards(job, format!("remove {name}"), |cards| cards.remove(name))
}

pub(super) fn set_in_shop(job: &Job, value: ValueName, new: &New) -> Result<Step, Refusal> {
    let mut shop = job.shop.clone();
    values::set_in_shop(&mut shop, value, new, &job.cards)?;
    let label = told(&values::shop_values(&shop), value);
    put_shop(job, shop, label)
}

pub(super) fn take_shop(job: &Job, shop: &Shop) -> Result<Step, Refusal> {
    put_shop(job, shop.clone(), "take the house defaults".to_string())
}

pub(super) fn use_card(
    job: &Job,
    key: Key,
    seat: Seat,
    card: Option<&CardId>,
) -> Result<Step, Refusal> {
    let (_, seen) = cabinet(job, key)?;
    let now = seat.cards(seen);
    if now.is_empty() {
        return Err(Refusal(format!("this cabinet has no {}", seat.words())));
    }
    let next = || values::next_card(now.first(), seat.kind(), &job.cards);
    let wanted = card.cloned().or_else(next);
    let name = wanted.map(|id| CardName {
        kind: seat.kind(),
        id,
    });
    let name = name.ok_or_else(nothing)?;
    found(job, &name)?;
    change(job, key, |cabinet| {
        seat.each_mut(cabinet, &mut |id| *id = name.id.clone());
        if let (Seat::Runners, Some(runner)) = (seat, job.cards.runner(&name.id)) {
            fit_lengths(cabinet, runner);
        }
        Ok(format!("{}: {}", seat.words(), name.id))
    })
}

/// Another card comes in other lengths: the same, else the longest that is not longer, else the shortest.
fn fit_lengths(cabinet: &mut Cabinet, card: &Runner) {
    let names: Vec<Length> = card.lengths.iter().map(|length| length.name).collect();
    let fitting = |wanted: Length| {
        let shorter = names.iter().filter(|&&name| name <= wanted).max();
        shorter.or(names.iter().min()).copied()
    };
    cabinet.opening.each_bay_mut(&mut |bay| {
        for runner in &mut bay.runners {
            runner.length = fitting(runner.length).unwrap_or(runner.length);
        }
    });
}

/// Refuses to lose a length of a runner that a cabinet has drawers on.
fn keep_lengths(job: &Job, card: &Card) -> Result<(), Refusal> {
    let Card::Runner(card) = card else {
        return Ok(());
    };
    for cabinet in &job.cabinets {
        let mut lost = None;
        cabinet.opening.each(&mut |opening| {
            if let Division::Bay(bay) = &opening.division {
                let mut own = bay.runners.iter().filter(|runner| runner.card == card.id);
                let missing = own.find(|runner| card.length(runner.length).is_none());
                lost = lost.or(missing.map(|runner| runner.length));
            }
        });
        if let Some(length) = lost {
            return Err(Refusal(format!(
                "the length {} stays: {} has drawers on it",
                length.exact_mm(),
                cabinet.name
            )));
        }
    }
    Ok(())
}

fn found(job: &Job, name: &CardName) -> Result<Card, Refusal> {
    let none = || Refusal(format!("there is no card {name}"));
    job.cards.card(name).ok_or_else(none)
}

fn listed(names: &[&Label]) -> String {
    let names: Vec<&str> = names.iter().map(|name| name.as_str()).collect();
    names.join(", ")
}

fn rest(names: &str, count: usize) -> String {
    let verb = if count == 1 { "rests" } else { "rest" };
    format!("{names} {verb}")
}

fn with_card(job: &Job, card: Card, label: String) -> Result<Step, Refusal> {
    with_cards(job, label, |cards| cards.put(card))
}

fn with_cards(job: &Job, label: String, edit: impl FnOnce(&mut Cards)) -> Result<Step, Refusal> {
    let mut after = job.cards.clone();
    edit(&mut after);
    if after == job.cards {
        return Err(nothing());
    }
    after.validate().map_err(|fault| Refusal(fault.problem))?;
    Ok(Step {
        label,
        change: Change::Cards {
            before: Box::new(job.cards.clone()),
            after: Box::new(after),
        },
    })
}

fn put_shop(job: &Job, after: Shop, label: String) -> Result<Step, Refusal> {
    if after == job.shop {
        return Err(nothing());
    }
    after
        .validate(&job.cards)
        .map_err(|fault| Refusal(fault.problem))?;
    Ok(Step {
        label,
        change: Change::Shop {
            before: Box::new(job.shop.clone()),
            after: Box::new(after),
        },
    })
}

/// Makes a card the first house default of its kind: of boards that of carcasses.
pub(super) fn make_default(job: &Job, name: &CardName) -> Result<Step, Refusal> {
    let values = values::shop_values(&job.shop);
    let of_kind =
        |value: &&Value| matches!(value.quantity, Quantity::Card(kind, _) if kind == name.kind);
    let first = values.iter().find(of_kind).ok_or_else(nothing)?;
    let new = New::To(Content::Card(Some(name.id.clone())));
    set_in_shop(job, first.name, &new)
}
