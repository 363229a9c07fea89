//! Where cabinets use cards: the seats of a cabinet, and which cabinets rest on a card.

use alloc::vec::Vec;

use super::{Cabinet, CardId, Division, Job};
use crate::cards::{CardKind, CardName};
use crate::label::Label;

/// A part of a cabinet that is made of a card or screwed on as one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Seat {
    /// The board of the sides.
    Sides,
    /// The board of the bottom.
    Bottom,
    /// The board of the top or the stretchers.
    Top,
    /// The board of the back rail.
    BackRail,
    /// The boards of the partitions.
    Partitions,
    /// The boards of the fixed shelves.
    FixedShelves,
    /// The boards of the loose shelves.
    LooseShelves,
    /// The hinges of the plates.
    Plates,
    /// The drawer runners.
    Runners,
}

impl Seat {
    /// All of them, in the order a person meets them.
    pub const ALL: [Self; 9] = [
        Self::Sides,
        Self::Bottom,
        Self::Top,
        Self::BackRail,
        Self::Partitions,
        Self::FixedShelves,
        Self::LooseShelves,
        Self::Plates,
        Self::Runners,
    ];

    /// What it is called.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Sides => "sides",
            Self::Bottom => "bottom",
            Self::Top => "top",
            Self::BackRail => "back rail",
            Self::Partitions => "partitions",
            Self::FixedShelves => "fixed shelves",
            Self::LooseShelves => "loose shelves",
            Self::Plates => "hinge plates",
            Self::Runners => "runners",
        }
    }

    /// The kind of card it takes.
    #[must_use]
    pub fn kind(self) -> CardKind {
        match self {
            Self::Plates => CardKind::Hinge,
            Self::Runners => CardKind::Runner,
            _ => CardKind::Board,
        }
    }

    /// The cards it holds in a cabinet, each once, in the order they are met; none where the cabinet has no such part.
    #[must_use]
    pub fn cards(self, cabinet: &Cabinet) -> Vec<CardId> {
        let mut found = Vec::new();
        self.each_mut(&mut cabinet.clone(), &mut |id| {
            if !found.contains(id) {
                found.push(id.clone());
            }
        });
        found
    }

    /// Calls `change` with every card it holds, to be changed.
    pub fn each_mut(self, cabinet: &mut Cabinet, change: &mut impl FnMut(&mut CardId)) {
        let carcass = &mut cabinet.carcass;
        match self {
            Self::Sides => change(&mut carcass.sides.board),
            Self::Bottom => change(&mut carcass.bottom.board),
            Self::Top => change(&mut carcass.top.board),
            Self::BackRail => carcass
                .rail
                .iter_mut()
                .for_each(|rail| change(&mut rail.board)),
            _ => cabinet
                .opening
                .each_mut(&mut |opening| self.each_of(&mut opening.division, change)),
        }
    }

    /// The cards it holds in an opening itself, not in those inside it.
    fn each_of(self, division: &mut Division, change: &mut impl FnMut(&mut CardId)) {
        match (self, division) {
            (Self::Partitions, Division::SideBySide(parts)) => {
                parts
                    .rest
                    .iter_mut()
                    .for_each(|(partition, _)| change(&mut partition.board));
            }
            (Self::FixedShelves, Division::Stacked(parts)) => parts
                .rest
                .iter_mut()
                .for_each(|(shelf, _)| change(&mut shelf.board)),
            (Self::LooseShelves, Division::Bay(bay)) => bay
                .shelves
                .iter_mut()
                .for_each(|shelf| change(&mut shelf.board)),
            (Self::Plates, Division::Bay(bay)) => bay
                .plates
                .iter_mut()
                .for_each(|plate| change(&mut plate.card)),
            (Self::Runners, Division::Bay(bay)) => bay
                .runners
                .iter_mut()
                .for_each(|runner| change(&mut runner.card)),
            _ => {}
        }
    }
}

impl Job {
    /// Whether the house defaults name a card.
    #[must_use]
    pub fn is_default(&self, card: &CardName) -> bool {
        let shop = &self.shop;
        let named: [Option<&CardId>; 3] = match card.kind {
            CardKind::Board => [
                Some(&shop.board),
                shop.front_board.as_ref(),
                shop.box_board.as_ref(),
            ],
            CardKind::Hinge => [Some(&shop.hinge), None, None],
            CardKind::Runner => [Some(&shop.runner), None, None],
            CardKind::Pin => [Some(&shop.pin), None, None],
            CardKind::Connector => [shop.connector.as_ref(), None, None],
            CardKind::Rail => [shop.rail.as_ref(), None, None],
        };
        named.contains(&Some(&card.id))
    }

    /// The names of the cabinets that rest on a card: by a part of their own, or by fronts, boxes or pins that go by the
    /// house defaults.
    #[must_use]
    pub fn resting_on(&self, card: &CardName) -> Vec<&Label> {
        let rests = |cabinet: &&Cabinet| {
            let by_part = Seat::ALL
                .iter()
                .any(|seat| seat.kind() == card.kind && seat.cards(cabinet).contains(&card.id));
            by_part || self.rests_by_default(cabinet, card)
        };
        let resting = self.cabinets.iter().filter(rests);
        resting.map(|cabinet| &cabinet.name).collect()
    }

    /// Whether something in the cabinet goes by this card because the house defaults say so.
    fn rests_by_default(&self, cabinet: &Cabinet, card: &CardName) -> bool {
        let (mut has_fronts, mut has_drawers, mut has_pins) = (false, false, false);
        cabinet.opening.each(&mut |opening| {
            has_fronts |= !opening.fronts.is_empty();
            if let Division::Bay(bay) = &opening.division {
                has_drawers |= !bay.runners.is_empty();
                has_pins |= !bay.zones.is_empty() || !bay.shelves.is_empty();
            }
        });
        let id = &card.id;
        match card.kind {
            CardKind::Board => {
                (has_fronts && self.shop.front_board() == id)
                    || (has_drawers && self.shop.box_board() == id)
            }
            CardKind::Pin => has_pins && self.shop.pin == *id,
            _ => false,
        }
    }
}
