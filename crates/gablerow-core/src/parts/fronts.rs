//! Doors and drawer fronts: sizes, mass, and how doors hang.

use alloc::vec::Vec;

use super::{Banded, Grain, Make, Missing, Piece};
use crate::cards::{Board, CardId, CountChart, Hinge};
use crate::job::{FrontKind, Hand, Key, Label};
use crate::layout::{FrontLayout, Layout};
use crate::measure::Length;
use crate::solve::hinges::{
    Count, Door, DoorCups, DoorFacts, OverlayCard, OverlayFit, chart_of, count, cups, fit_overlay,
};
use crate::strength::mass_kg;
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
    /// How deep they go in.
    pub cup_depth: Length,
    /// How many hinges the card's chart asks for; `None` without a mass.
    pub asked: Option<Count>,
    /// That chart.
    pub chart: CountChart,
}

/// The arm of a hinge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Arm {
    /// For a door over the whole edge of an upright.
    Full,
    /// For a door over half of it.
    Half,
    /// For a door inside the opening.
    Inset,
}

impl Arm {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Full, Self::Half, Self::Inset];

    /// The word of the trade.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Full => "full",
            Self::Half => "half",
            Self::Inset => "inset",
        }
    }
}

/// A plate that a door hangs on: its hole, and its middle above the carcass underside.
struct Found<'a> {
    card: &'a Hinge,
    hole: i16,
    middle: Length,
}

/// The arm that a door takes, and its overlay with no tab on a plate of height 0. A door that laps over less than half the
/// edge of its upright shares it.
#[must_use]
pub fn arm_of(card: &Hinge, layout: &Layout, front: &FrontLayout) -> (Arm, Length) {
    let upright = front
        .wall_hung()
        .and_then(|wall| layout.upright(wall.panel));
    let lap = front.lap_hung().unwrap_or_default().total();
    match upright {
        _ if front.set_in.is_some() => (Arm::Inset, card.arms.inset.value),
        Some(upright) if lap * 2 < upright.thickness => (Arm::Half, card.arms.half.value),
        _ => (Arm::Full, card.arms.full.value),
    }
}

/// What a front of this board weighs, in kg.
#[must_use]
pub fn front_mass_kg(front: &FrontLayout, board: &Board) -> f64 {
    let density = f64::from(board.density.value);
    let (width, height) = (front.width.total(), front.height.total());
    mass_kg(width, height, front.thickness, density)
}

impl<'a> Make<'a> {
    /// Every front that is seen.
    pub(super) fn fronts(&mut self) -> Vec<FrontPart> {
        let layout = self.layout;
        let seen = layout.fronts.iter().filter(|front| front.kind.is_seen());
        seen.filter_map(|front| self.front(front)).collect()
    }

    fn front(&mut self, front: &FrontLayout) -> Option<FrontPart> {
        let name = self.cabinet.opening.front(front.key)?.name.clone();
        let board = self.shop.front_board();
        let size = [front.height, front.width];
        let mut piece = self.piece(board, size, Banded::All, Grain::Up);
        piece.thickness = piece.thickness.map(|_| front.thickness);
        let mass_kg = self
            .cards
            .board(board)
            .map(|card| front_mass_kg(front, card));
        let hanging = front.hung.and_then(|_| self.hanging(front, mass_kg));
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

    fn hanging(&mut self, front: &FrontLayout, mass: Option<f64>) -> Option<Hanging> {
        let found = self.plates(front);
        let Some(&Found { card, .. }) = found.first() else {
            self.miss(Missing::Plates { front: front.key });
            return None;
        };
        let wanted = front.lap_hung()?;
        let (arm, reach) = arm_of(card, self.layout, front);
        let overlay = OverlayCard {
            arm: reach,
            tab_least: card.tabs.least.value,
            tab_most: card.tabs.most.value,
            tab_step: card.tabs.step,
            plates: &card.plates,
            cup: card.cup.value,
        };
        let fit = fit_overlay(&overlay, wanted.total());
        let door = Door {
            foot: front.foot,
            height: front.height.total(),
        };
        let middles: Vec<Length> = found.iter().map(|plate| plate.middle).collect();
        let facts = |mass_kg| DoorFacts {
            width: front.width.total(),
            height: front.height.total(),
            cabinet_height: self.cabinet.size.height,
            mass_kg,
        };
        let hanging = Hanging {
            card: card.id.clone(),
            holes: found.iter().map(|plate| plate.hole).collect(),
            arm,
            wanted,
            fit,
            cups: cups(door, &middles),
            cup_depth: card.cup_depth.value,
            asked: mass.map(|mass| count(chart_of(card.chart), &facts(mass))),
            chart: card.chart,
        };
        if fit.is_none() {
            self.miss(Missing::Stock { front: front.key });
        }
        Some(hanging)
    }

    /// The plates a door hangs on, upward.
    fn plates(&mut self, front: &FrontLayout) -> Vec<Found<'a>> {
        let (layout, cards, cabinet) = (self.layout, self.cards, self.cabinet);
        let mut found = Vec::new();
        for carrier in layout.carriers(cabinet, front) {
            let bay = cabinet.opening.bay(carrier.bay);
            let mut plates = bay.into_iter().flat_map(|bay| &bay.plates);
            let Some(plate) = plates.find(|plate| plate.key == carrier.key) else {
                continue;
            };
            match cards.hinge(&plate.card) {
                Some(card) => found.push(Found {
                    card,
                    hole: carrier.hole,
                    middle: layout.height(carrier.hole) + card.plate.rise(),
                }),
                None => self.no_card(&plate.card),
            }
        }
        found
    }
}
