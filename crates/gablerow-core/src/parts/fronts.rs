//! Doors and drawer fronts: sizes, mass, and how doors hang.

use alloc::vec::Vec;

use super::{Arm, Banded, DoorPlate, Grain, Leaf, Make, Missing, Piece};
use crate::cards::{CardId, CountChart};
use crate::job::{FrontKind, Hand, Key, Label};
use crate::layout::FrontLayout;
use crate::measure::Length;
use crate::solve::hinges::{Count, DoorCups, OverlayFit, cups};
use crate::sum::Sum;

/// A door, a drawer front or a false front.
#[derive(Clone, Debug, PartialEq)]
pub struct FrontPart {
    /// The wish it comes from; both leaves of a pair have the same.
    pub key: Key,
    /// What it is called at the bench.
    pub name: Label,
    /// What it is.
    pub kind: FrontKind,
    /// The hand it is hung on; `None` when it does not hang.
    pub hung: Option<Hand>,
    /// The piece of board: its length is its height.
    pub piece: Piece,
    /// What it weighs, in kg; `None` when the board's card is not there.
    pub mass_kg: Option<f64>,
    /// How it hangs; `None` when it does not hang, or has nothing to hang on.
    pub hanging: Option<Hanging>,
}

/// How a door hangs.
#[derive(Clone, Debug, PartialEq)]
pub struct Hanging {
    /// The hinge; of several cards the one of the lowest plate.
    pub card: CardId,
    /// The hole of each plate, upward; of a plate along the row the lower of its two.
    pub holes: Vec<i16>,
    /// Which arm the hinge has.
    pub arm: Arm,
    /// How far the door shall lap over the upright it is hung on; negative for one that stands inside.
    pub wanted: Sum,
    /// The tab and the plate that come nearest to it; `None` when no plate is in stock.
    pub fit: Option<OverlayFit>,
    /// Where the cups go, and whether the door is handed.
    pub cups: DoorCups,
    /// How wide they are.
    pub cup_diameter: Length,
    /// How deep they go in.
    pub cup_depth: Length,
    /// How many hinges the card's chart asks for; `None` without a mass.
    pub asked: Option<Count>,
    /// That chart.
    pub chart: CountChart,
}

impl<'a> Make<'a> {
    /// Every front that is seen.
    pub(super) fn fronts(&mut self) -> Vec<FrontPart> {
        let layout = self.layout;
        let seen = layout.fronts.iter().filter(|front| front.kind.is_seen());
        seen.filter_map(|front| self.front(front)).collect()
    }

    fn front(&mut self, front: &'a FrontLayout) -> Option<FrontPart> {
        let name = self.cabinet.opening.front(front.key)?.name.clone();
        let board = self.shop.front_board();
        let size = [front.height, front.width];
        let mut piece = self.piece(board, size, Banded::All, Grain::Up);
        piece.thickness = piece.thickness.map(|_| front.thickness);
        let mass_kg = self.leaf(front).mass_kg();
        let hanging = front.hung.and_then(|_| self.hanging(front));
        Some(FrontPart {
            key: front.key,
            name,
            kind: front.kind,
            hung: front.hung,
            piece,
            mass_kg,
            hanging,
        })
    }

    fn leaf(&self, front: &'a FrontLayout) -> Leaf<'a> {
        Leaf {
            cabinet: self.cabinet,
            layout: self.layout,
            cards: self.cards,
            board: self.shop.front_board(),
            front,
        }
    }

    fn hanging(&mut self, front: &'a FrontLayout) -> Option<Hanging> {
        let leaf = self.leaf(front);
        let found = self.plates(leaf);
        let Some(&DoorPlate { card, .. }) = found.first() else {
            self.miss(Missing::Plates { front: front.key });
            return None;
        };
        let wanted = front.lap_hung()?;
        let fit = leaf.fit(card);
        let middles: Vec<Length> = found.iter().map(|plate| plate.middle).collect();
        let hanging = Hanging {
            card: card.id.clone(),
            holes: found.iter().map(|plate| plate.hole).collect(),
            arm: leaf.arm(card).0,
            wanted,
            fit,
            cups: cups(leaf.door(), &middles),
            cup_diameter: card.cup.value,
            cup_depth: card.cup_depth.value,
            asked: leaf.asked(card),
            chart: card.chart,
        };
        if fit.is_none() {
            self.miss(Missing::Stock { front: front.key });
        }
        Some(hanging)
    }

    /// The plates a door hangs on, upward; a card that is not there is said.
    fn plates(&mut self, leaf: Leaf<'a>) -> Vec<DoorPlate<'a>> {
        let mut found = Vec::new();
        for (carrier, plate) in leaf.hung_on() {
            match self.cards.hinge(&plate.card) {
                Some(card) => found.push(leaf.plate(carrier, card)),
                None => self.no_card(&plate.card),
            }
        }
        found
    }
}
