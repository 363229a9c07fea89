//! Loose shelves: stiffer boards, shorter spans, edges nearer to the pins, more clear above, pins that stand out farther.

use alloc::format;
use alloc::vec::Vec;

use super::trial::{Reach, Trial};
use crate::cards::{CardId, CardKind};
use crate::check::Rule;
use crate::edit::{
    Adjust, Content, Edit, Measure, New, Quantity, Value, ValueName, Way, shelf_values, shop_values,
};
use crate::job::Key;
use crate::layout::SHELF_SHORTER;
use crate::measure::{Length, range};
use crate::parts::{ShelfPart, loose_shelves};
use crate::strength::{TIP_LEAST_KG, length_down, tip_overhang, tip_set_back};

/// The most bays that a partition more or two may make of one for a shelf's sake.
const BAYS_MOST: u16 = 4;

pub(super) fn offer(trial: &mut Trial) {
    match trial.finding.rule {
        Rule::ShelfSags => {
            each(trial, thicker);
            each(trial, parted);
        }
        Rule::ShelfTips => each(trial, nearer_to_the_pins),
        Rule::ShelfLength => {
            each(trial, as_long_as_usual);
            other_pins(trial);
        }
        Rule::ClearOpeningShort => each(trial, upper_one_up),
        _ => {}
    }
}

/// Offers for every loose shelf that the finding is about.
fn each(trial: &mut Trial, offer: impl Fn(&mut Trial, &ShelfPart)) {
    let shelves = loose_shelves(trial.cabinet, &trial.layout, trial.job);
    for thing in trial.about() {
        let found = shelves.iter().find(|shelf| shelf.key == thing);
        found.into_iter().for_each(|shelf| offer(trial, shelf));
    }
}

/// The thinnest board of all that are thicker on which it does not sag. A board of unknown stiffness would only leave the
/// sag untold, and mends nothing.
fn thicker(trial: &mut Trial, shelf: &ShelfPart) {
    let cards = &trial.job.cards;
    let known = cards
        .boards
        .iter()
        .filter(|board| board.stiffness.is_some());
    let thicker = known.filter(|board| shelf.piece.thickness < Some(board.thickness.value));
    let mut boards: Vec<(Length, CardId)> = thicker
        .map(|board| (board.thickness.value, board.id.clone()))
        .collect();
    boards.sort();
    _ = boards.into_iter().any(|(_, board)| {
        let edit = with(trial, shelf.key, is_board, Content::Card(Some(board)));
        edit.is_some_and(|edit| trial.offer(Reach::Fitting, edit))
    });
}

fn is_board(quantity: Quantity) -> bool {
    matches!(quantity, Quantity::Card(CardKind::Board, _))
}

fn is_shorter(quantity: Quantity) -> bool {
    matches!(quantity, Quantity::Length(of) if *of == range::SHELF_SHORTER)
}

fn is_pin(quantity: Quantity) -> bool {
    matches!(quantity, Quantity::Card(CardKind::Pin, _))
}

/// A loose shelf with another content of the value that is of this kind.
fn with(trial: &Trial, shelf: Key, kind: fn(Quantity) -> bool, to: Content) -> Option<Edit> {
    let of = trial.cabinet.loose_shelf(shelf)?;
    Some(Edit::OwnValue {
        cabinet: trial.cabinet.key,
        thing: shelf,
        value: name(&shelf_values(of), kind)?,
        new: New::To(to),
    })
}

fn name(values: &[Value], kind: fn(Quantity) -> bool) -> Option<ValueName> {
    let found = values.iter().find(|value| kind(value.quantity));
    found.map(|value| value.name)
}

/// The fewest partitions in its bay that make it short enough. It stays in the first part with all it bears, since nobody
/// but who loads it knows what goes where.
fn parted(trial: &mut Trial, shelf: &ShelfPart) {
    let cabinet = trial.cabinet.key;
    let load = shelf.strength.map_or(0.0, |strength| strength.load_kg);
    _ = (2..=BAYS_MOST).any(|parts| {
        let edit = Edit::Divide {
            cabinet,
            opening: shelf.bay,
            way: Way::SideBySide,
            parts,
        };
        let also = format!(
            "the shelf stays in the leftmost of {parts} bays and bears all of its {load:.1} kg there; set shelves in the others, \
             and lower its load to its part"
        );
        trial.offer_saying(Reach::Cabinet, edit, also)
    });
}

/// Its own edge farther back, or the front rows of the whole job farther to the front; each by whole mm.
fn nearer_to_the_pins(trial: &mut Trial, shelf: &ShelfPart) {
    let Some(strength) = shelf.strength else {
        return;
    };
    let (depth, overhang) = (shelf.piece.width.total(), shelf.overhang);
    let (cabinet, thing) = (trial.cabinet.key, shelf.key);
    if let Some(by) = tip_set_back(strength.mass_kg, depth, overhang, TIP_LEAST_KG) {
        let adjust = Adjust::In(by);
        let edit = Edit::Adjust {
            cabinet,
            thing,
            adjust,
        };
        trial.offer(Reach::Fitting, edit);
    }
    let most = tip_overhang(strength.mass_kg, depth, TIP_LEAST_KG);
    let setback = trial.job.shop.setback_front;
    let value = length_down((setback - overhang).mm() + most, Length::from_mm(1));
    let edit = Edit::Measure {
        cabinet,
        measure: Measure::SetbackFront,
        value,
    };
    trial.offer(Reach::Job, edit);
}

/// As much shorter than its bay as is usual.
fn as_long_as_usual(trial: &mut Trial, shelf: &ShelfPart) {
    let edit = with(trial, shelf.key, is_shorter, Content::Length(SHELF_SHORTER));
    if let Some(edit) = edit {
        trial.offer(Reach::Fitting, edit);
    }
}

/// Every other pin of the cards for the whole job.
fn other_pins(trial: &mut Trial) {
    let Some(value) = name(&shop_values(&trial.job.shop), is_pin) else {
        return;
    };
    let known = trial.job.cards.pins.iter().map(|pin| pin.id.clone());
    let others: Vec<CardId> = known.filter(|id| *id != trial.job.shop.pin).collect();
    for pin in others {
        let new = New::To(Content::Card(Some(pin)));
        trial.offer(Reach::Job, Edit::ShopValue { value, new });
    }
}

/// The next loose shelf over it in its bay on the nearest higher hole that gives what was asked for.
fn upper_one_up(trial: &mut Trial, shelf: &ShelfPart) {
    let shelves = loose_shelves(trial.cabinet, &trial.layout, trial.job);
    let over = shelves.iter().filter(|other| other.bay == shelf.bay);
    let over = over.filter(|other| other.hole > shelf.hole);
    let next: Option<Key> = over.min_by_key(|other| other.hole).map(|other| other.key);
    if let Some(next) = next {
        super::moves::nearest(trial, next, 1);
    }
}
