//! How a door hangs: the plates it hangs on, what it weighs, how many hinges it takes, which arm, tab and plate suit it.
//!
//! Parts, proposals and checks ask here, so that none of them counts or weighs in a way of its own.

use alloc::vec::Vec;

use crate::cards::{CardId, Cards, Hinge, Sourced};
use crate::job::{Cabinet, Job, Key, Plate};
use crate::layout::{Carrier, FrontLayout, Layout};
use crate::measure::Length;
use crate::solve::hinges::{
    Count, Door, DoorFacts, OverlayCard, OverlayFit, chart_of, count, fit_overlay,
};
use crate::strength::mass_kg;

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

/// One front, or one leaf of a pair, and what it hangs in.
#[derive(Clone, Copy, Debug)]
pub struct Leaf<'a> {
    /// The cabinet.
    pub cabinet: &'a Cabinet,
    /// What that comes to.
    pub layout: &'a Layout,
    /// The cards of the job.
    pub cards: &'a Cards,
    /// The board that fronts are made of.
    pub board: &'a CardId,
    /// The front itself.
    pub front: &'a FrontLayout,
}

/// A plate that a door hangs on.
#[derive(Clone, Copy, Debug)]
pub struct DoorPlate<'a> {
    /// The plate.
    pub key: Key,
    /// The bay it is in.
    pub bay: Key,
    /// Its hinge.
    pub card: &'a Hinge,
    /// Its hole; of a plate along the row the lower of its two.
    pub hole: i16,
    /// From the carcass underside up to its middle.
    pub middle: Length,
}

impl<'a> Leaf<'a> {
    /// A front of a cabinet of a job.
    #[must_use]
    pub fn of(
        job: &'a Job,
        cabinet: &'a Cabinet,
        layout: &'a Layout,
        front: &'a FrontLayout,
    ) -> Self {
        Self {
            cabinet,
            layout,
            cards: &job.cards,
            board: job.shop.front_board(),
            front,
        }
    }

    /// The plates it hangs on, from the foot up, whether or not their cards are there.
    pub(super) fn hung_on(&self) -> Vec<(Carrier, &'a Plate)> {
        if !self.front.kind.is_hung() {
            return Vec::new();
        }
        let opening = &self.cabinet.opening;
        let carriers = self.layout.carriers(self.cabinet, self.front).into_iter();
        let plates = carriers.filter_map(|carrier| {
            let mut plates = opening.bay(carrier.bay)?.plates.iter();
            let plate = plates.find(|plate| plate.key == carrier.key)?;
            Some((carrier, plate))
        });
        plates.collect()
    }

    /// The plates it hangs on whose cards are there, from the foot up.
    #[must_use]
    pub fn plates(&self) -> Vec<DoorPlate<'a>> {
        let plates = self.hung_on().into_iter();
        let known = plates.filter_map(|(carrier, plate)| {
            Some(self.plate(carrier, self.cards.hinge(&plate.card)?))
        });
        known.collect()
    }

    pub(super) fn plate(&self, carrier: Carrier, card: &'a Hinge) -> DoorPlate<'a> {
        DoorPlate {
            key: carrier.key,
            bay: carrier.bay,
            card,
            hole: carrier.hole,
            middle: self.layout.height(carrier.hole) + card.plate.rise(),
        }
    }

    /// Where it stands, foot to head.
    #[must_use]
    pub fn door(&self) -> Door {
        Door {
            foot: self.front.foot,
            height: self.front.height.total(),
        }
    }

    /// What it weighs, in kg; `None` when the board's card is not there.
    #[must_use]
    pub fn mass_kg(&self) -> Option<f64> {
        let density = f64::from(self.cards.board(self.board)?.density.value);
        let (width, height) = (self.front.width.total(), self.front.height.total());
        Some(mass_kg(width, height, self.front.thickness, density))
    }

    /// How many hinges the card's chart asks for; `None` without a mass.
    #[must_use]
    pub fn asked(&self, card: &Hinge) -> Option<Count> {
        let facts = DoorFacts {
            width: self.front.width.total(),
            height: self.front.height.total(),
            cabinet_height: self.cabinet.size.height,
            mass_kg: self.mass_kg()?,
        };
        Some(count(chart_of(card.chart), &facts))
    }

    /// The arm it takes, and that arm's overlay with no tab on a plate of height 0.
    ///
    /// A door that laps over half the edge of its upright, or less, shares it: one that shares leaves half a gap there, and
    /// a gap may be 0.
    #[must_use]
    pub fn arm(&self, card: &Hinge) -> (Arm, Sourced<Length>) {
        let wall = self.front.wall_hung();
        let upright = wall.and_then(|wall| self.layout.upright(wall.panel));
        let lap = self.front.lap_hung().unwrap_or_default().total();
        match upright {
            _ if self.front.set_in.is_some() => (Arm::Inset, card.arms.inset),
            Some(upright) if lap * 2 <= upright.thickness => (Arm::Half, card.arms.half),
            _ => (Arm::Full, card.arms.full),
        }
    }

    /// The tab and the plate that come nearest to how far it shall lap over; `None` when no plate is in stock, or it does
    /// not hang.
    #[must_use]
    pub fn fit(&self, card: &Hinge) -> Option<OverlayFit> {
        let overlay = OverlayCard {
            arm: self.arm(card).1.value,
            tab_least: card.tabs.least.value,
            tab_most: card.tabs.most.value,
            tab_step: card.tabs.step,
            plates: &card.plates,
            cup: card.cup.value,
        };
        fit_overlay(&overlay, self.front.lap_hung()?.total())
    }
}
