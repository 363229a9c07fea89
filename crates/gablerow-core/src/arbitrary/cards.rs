//! Any cards of a job: at least one of each kind.

use std::collections::BTreeSet;

use proptest::prelude::*;

use super::within;
use crate::cards::{
    Board, CardId, Cards, Hinge, Origin, Pin, PlateShape, Runner, RunnerKind, RunnerLength, Sourced,
};
use crate::label::Label;
use crate::measure::Length;
use crate::measure::range::{self, Range};

pub(super) fn cards() -> impl Strategy<Value = Cards> {
    let many = 1..3_usize;
    (
        prop::collection::vec(board(), many.clone()),
        prop::collection::vec(hinge(), many.clone()),
        prop::collection::vec(runner(), many.clone()),
        prop::collection::vec(pin(), many),
    )
        .prop_map(|(boards, hinges, runners, pins)| Cards {
            boards: named(boards, |card, id| card.id = id),
            hinges: named(hinges, |card, id| card.id = id),
            runners: named(runners, |card, id| card.id = id),
            pins: named(pins, |card, id| card.id = id),
        })
}

/// Gives each card of a kind an id of its own.
fn named<T>(mut list: Vec<T>, name: impl Fn(&mut T, CardId)) -> Vec<T> {
    for (at, card) in list.iter_mut().enumerate() {
        name(card, CardId::known(&format!("card-{at}")));
    }
    list
}

fn sourced<T>(value: impl Strategy<Value = T>) -> impl Strategy<Value = Sourced<T>>
where
    T: core::fmt::Debug,
{
    (value, prop::sample::select(Origin::ALL.to_vec()))
        .prop_map(|(value, origin)| Sourced { value, origin })
}

/// Most values of a card are a few centimetres; the rest are as long as a card allows.
fn value() -> impl Strategy<Value = Sourced<Length>> {
    let common = Range {
        max: Length::from_mm(60),
        ..range::CARD_VALUE
    };
    sourced(prop_oneof![4 => within(&common), 1 => within(&range::CARD_VALUE)])
}

fn board() -> impl Strategy<Value = Board> {
    let thickness = within(&range::BOARD_THICKNESS);
    (
        thickness.clone(),
        sourced(thickness),
        sourced(1..=10_000_u32),
    )
        .prop_map(|(nominal, thickness, density)| Board {
            id: CardId::known("board"),
            title: Label::known("board"),
            nominal,
            thickness,
            density,
        })
}

fn hinge() -> impl Strategy<Value = Hinge> {
    let shape = prop::sample::select(vec![PlateShape::AlongRow, PlateShape::InLine]);
    (shape, value(), value(), value(), value()).prop_map(|(plate, half_zone, reach, proud, pen)| {
        Hinge {
            id: CardId::known("hinge"),
            title: Label::known("hinge"),
            plate,
            half_zone,
            reach,
            proud,
            pen,
        }
    })
}

fn runner() -> impl Strategy<Value = Runner> {
    let kind = prop::sample::select(vec![RunnerKind::Undermount, RunnerKind::SideMount]);
    let lengths = prop::collection::btree_map(within(&range::CARD_VALUE), made(), 1..4);
    let values = prop::array::uniform7(value());
    (kind, values, lengths).prop_map(|(kind, values, lengths)| {
        let [first_hole, stand_back, line, below, above, width, pen] = values;
        let lengths = lengths
            .into_iter()
            .map(|(name, made)| RunnerLength { name, ..made });
        Runner {
            id: CardId::known("runner"),
            title: Label::known("runner"),
            kind,
            first_hole,
            stand_back,
            line,
            below,
            above,
            width,
            pen,
            lengths: lengths.collect(),
        }
    })
}

/// A length of a runner that has no name yet.
fn made() -> impl Strategy<Value = RunnerLength> {
    let steps = prop_oneof![4 => 1..20_u8, 1 => 1..=62_u8];
    (value(), prop::collection::btree_set(steps, 0..4)).prop_map(|(need, further)| {
        let steps: BTreeSet<u8> = further.into_iter().chain([0]).collect();
        RunnerLength {
            name: Length::ZERO,
            need,
            steps: steps.into_iter().collect(),
        }
    })
}

fn pin() -> impl Strategy<Value = Pin> {
    (value(), value()).prop_map(|(pen, rise)| Pin {
        id: CardId::known("pin"),
        title: Label::known("pin"),
        pen,
        rise,
    })
}
