//! Any cards of a job: at least one of each kind.

use std::collections::BTreeSet;

use proptest::option::weighted;
use proptest::prelude::*;

use super::within;
use crate::cards::{
    Across, Along, Arms, Bed, Board, CardId, Cards, Connector, ConnectorBore, Corner, CountChart,
    Hinge, LeastReveal, Origin, Pin, PlateShape, Rail, RailKind, Runner, RunnerKind, RunnerLength,
    Sourced, Tabs,
};
use crate::label::Label;
use crate::measure::Length;
use crate::measure::range::{self, Range};

pub(super) fn cards() -> impl Strategy<Value = Cards> {
    let many = 1..3_usize;
    (
        prop::collection::vec(board().boxed(), many.clone()),
        prop::collection::vec(hinge().boxed(), many.clone()),
        prop::collection::vec(runner().boxed(), many.clone()),
        prop::collection::vec(pin(), many.clone()),
        prop::collection::vec(connector(), many.clone()),
        prop::collection::vec(rail().boxed(), many),
    )
        .prop_map(|(boards, hinges, runners, pins, connectors, rails)| Cards {
            boards: named(boards, |card, id| card.id = id),
            hinges: named(hinges, |card, id| card.id = id),
            runners: named(runners, |card, id| card.id = id),
            pins: named(pins, |card, id| card.id = id),
            connectors: named(connectors, |card, id| card.id = id),
            rails: named(rails, |card, id| card.id = id),
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
    let looked_up = || proptest::option::of(sourced(any::<u32>()));
    (
        thickness.clone(),
        sourced(thickness),
        sourced(1..=10_000_u32),
        looked_up(),
        looked_up(),
    )
        .prop_map(|(nominal, thickness, density, stiffness, creep)| Board {
            id: CardId::known("board"),
            title: Label::known("board"),
            nominal,
            thickness,
            density,
            stiffness,
            creep,
        })
}

fn hinge() -> impl Strategy<Value = Hinge> {
    let shape = prop::sample::select(vec![PlateShape::AlongRow, PlateShape::InLine]);
    let wall = prop::array::uniform4(value());
    let arms = prop::array::uniform3(sourced(within(&range::SIGNED_CARD_VALUE)));
    let tabs = (
        sourced(within(&range::TAB)),
        sourced(within(&range::TAB)),
        prop::sample::select(vec![Length::from_um(500), Length::from_mm(1)]),
    )
        .prop_map(|(least, most, step)| Tabs { least, most, step });
    let plates = prop::collection::vec(within(&range::SIGNED_CARD_VALUE), 1..4);
    let cup = (
        sourced(within(&range::HOLE_DIAMETER)),
        sourced(within(&range::BORE_DEPTH)),
        value(),
        value(),
    );
    let chart = prop::sample::select(CountChart::ALL.to_vec());
    let least = sourced(within(&range::REVEAL));
    let reveals = prop::collection::btree_map(within(&range::BOARD_THICKNESS), least, 0..4);
    (shape, wall, arms, tabs, plates, cup, (chart, reveals)).prop_map(
        |(plate, wall, arms, tabs, plates, cup, (chart, reveals))| {
            let ([half_zone, reach, proud, pen], [full, half, inset]) = (wall, arms);
            let reveals = reveals.into_iter();
            let reveals = reveals.map(|(thickness, least)| LeastReveal { thickness, least });
            let (cup, cup_depth, intrusion, adjust) = cup;
            Hinge {
                id: CardId::known("hinge"),
                title: Label::known("hinge"),
                plate,
                half_zone,
                reach,
                proud,
                pen,
                arms: Arms { full, half, inset },
                tabs,
                plates,
                cup,
                cup_depth,
                intrusion,
                adjust,
                chart,
                reveals: reveals.collect(),
            }
        },
    )
}

fn runner() -> impl Strategy<Value = Runner> {
    let kind = prop::sample::select(vec![RunnerKind::Undermount, RunnerKind::SideMount]);
    let lengths = prop::collection::btree_map(within(&range::CARD_VALUE), made(), 1..4);
    let values = prop::array::uniform10(value());
    let load = sourced(any::<u32>());
    let side = weighted(0.5, value());
    (kind, values, load, side, lengths).prop_map(|(kind, values, load, side_most, lengths)| {
        let [
            first_hole,
            stand_back,
            line,
            below,
            above,
            width,
            pen,
            deduct,
            shorter,
            recess,
        ] = values;
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
            deduct,
            shorter,
            recess,
            load,
            side_most,
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
    (value(), value(), weighted(0.5, value())).prop_map(|(pen, rise, projection)| Pin {
        id: CardId::known("pin"),
        title: Label::known("pin"),
        pen,
        rise,
        projection,
    })
}

fn connector() -> impl Strategy<Value = Connector> {
    let bore = prop::sample::select(vec![ConnectorBore::Blind, ConnectorBore::Through]);
    let hole = (
        sourced(within(&range::HOLE_DIAMETER)),
        sourced(within(&range::BORE_DEPTH)),
    );
    (bore, hole, value()).prop_map(|(bore, (diameter, depth), edge)| Connector {
        id: CardId::known("connector"),
        title: Label::known("connector"),
        bore,
        diameter,
        depth,
        edge,
    })
}

fn rail() -> impl Strategy<Value = Rail> {
    let kind = prop::sample::select(RailKind::ALL.to_vec());
    let holes = u32::from(range::INDEX_HOLES.min)..=u32::from(range::INDEX_HOLES.max);
    let stops = prop::collection::vec(within(&range::END_OFFSET), 1..4);
    let pitch = sourced(within(&range::RAIL_PITCH));
    let values = prop::array::uniform5(value());
    (kind, sourced(holes), pitch, stops, values, bed()).prop_map(
        |(
            kind,
            index_holes,
            pitch,
            stops,
            [reach_least, reach_most, width, support, play],
            bed,
        )| Rail {
            id: CardId::known("rail"),
            title: Label::known("rail"),
            kind,
            index_holes,
            pitch,
            stops,
            reach_least,
            reach_most,
            width,
            support,
            play,
            bed,
        },
    )
}

fn bed() -> impl Strategy<Value = Bed> {
    let side = || sourced(within(&range::BED));
    let zero = prop::sample::select(Corner::ALL.to_vec());
    let along = prop::sample::select(Along::ALL.to_vec());
    let across = prop::sample::select(Across::ALL.to_vec());
    (side(), side(), zero, along, across).prop_map(|(length, width, zero, along, across)| Bed {
        length,
        width,
        zero,
        along,
        across,
    })
}
