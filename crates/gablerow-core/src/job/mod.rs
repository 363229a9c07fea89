//! The job: facts and wishes, all that is stored. Nothing in here is computed.
//!
//! ```text
//! Job --- Shop, Cards                           what every cabinet goes by
//!  +-- Cabinet --- Size, EndOffsets, Carcass    the box
//!       +-- Opening --- Bay | side by side | above each other, and its Fronts
//!       |     +-- Zone, Shelf, Plate, Runner    fittings, at their hole numbers
//!       +-- FreeRow, FreeHole                   what a face owns itself
//!       +-- Copy --- AsCut                      what is built and measured
//! Bored, Took, Trouble, Measured                what was said at the bench: only ever added to
//! Revision                                      what state of a cabinet was saved last
//! ```

mod accepted;
mod bench_rules;
mod cabinet;
mod carcass;
mod copy;
mod face;
mod fitting;
mod free;
mod front;
mod key;
mod limits;
mod mirror;
mod names;
mod opening;
mod place;
mod record;
mod seat;
mod shop;

use alloc::collections::BTreeMap;
use alloc::vec::Vec;

pub use crate::label::{Label, LabelError};
pub use accepted::Acceptance;
pub use bench_rules::{BenchRules, Gauge, Times, WorkOrder};
pub use cabinet::Cabinet;
pub use carcass::{
    Back, BackRail, Bottom, Carcass, EndOffsets, Fit, Notch, Sides, Size, Stand, Top, TopKind,
};
pub use copy::{AsCut, Copy, LENGTH_OFF};
pub use face::{FaceId, Hand, PanelId};
pub use fitting::{Depth, PinRows, Plate, Runner, Shelf, Spacers, Zone};
pub use free::{Edge, End, FreeHole, FreeRow, FreeThing};
pub use front::{Front, FrontHeight, FrontKind};
pub use key::Key;
pub(crate) use limits::CABINETS_MOST;
pub use limits::{DRAWER_LOAD_MOST, Fault, SHELF_LOAD_MOST};
pub use names::{FaceName, Names, OpeningName, PanelName};
pub use opening::{
    Bay, Division, Fastener, FixedShelf, Inset, Joint, JointBore, Opening, Part, PartWidth,
    Partition, ShelfHeight, SideBySide, Stacked,
};
pub use place::{Datum, HolePlace};
pub use record::{Bored, Measured, Revision, Span, Took, Trouble};
pub use seat::Seat;
pub use shop::{
    BackRule, Band, BandState, Bit, BoxRules, FrontRules, Limits, Reference, RevealScheme, Shop,
};

pub use crate::cards::CardId;
use crate::cards::{Cards, Rail};
use crate::measure::{Length, Unit};

/// A job: the cabinets of one room or one order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Job {
    /// What the job is called.
    pub title: Label,
    /// The unit that bare numbers are typed and shown in.
    pub unit: Unit,
    /// What every cabinet goes by.
    pub shop: Shop,
    /// Hardware and boards.
    pub cards: Cards,
    /// The cabinets, in the order a person steps through them.
    pub cabinets: Vec<Cabinet>,
    /// What has been bored.
    pub bored: Vec<Bored>,
    /// What set-ups took.
    pub took: Vec<Took>,
    /// What went wrong at the bench.
    pub troubles: Vec<Trouble>,
    /// What was measured on bored faces.
    pub measured: Vec<Measured>,
    /// The revisions of the cabinets, each cabinet once.
    pub revisions: Vec<Revision>,
    /// The face the job was left on.
    pub left_at: Option<LeftAt>,
}

/// The face a job was left on, where it opens again. It may be gone meanwhile; then the job opens at what is nearest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct LeftAt {
    /// The cabinet.
    pub cabinet: Key,
    /// Its face.
    pub face: FaceId,
}

impl Job {
    /// A job of one plain cabinet, with the starter cards.
    #[must_use]
    pub fn plain(title: Label) -> Self {
        Self::with_house(title, Shop::starter(), Cards::starter())
    }

    /// A job of one plain cabinet, with these house defaults and the cards they name.
    #[must_use]
    pub fn with_house(title: Label, shop: Shop, cards: Cards) -> Self {
        let cabinet = Cabinet::plain(Key(1), Label::known("A1"), &shop);
        Self {
            title,
            unit: Unit::Millimetre,
            shop,
            cards,
            cabinets: [cabinet].into(),
            bored: Vec::new(),
            took: Vec::new(),
            troubles: Vec::new(),
            measured: Vec::new(),
            revisions: Vec::new(),
            left_at: None,
        }
    }

    /// The cabinet with this key.
    #[must_use]
    pub fn cabinet(&self, key: Key) -> Option<&Cabinet> {
        self.cabinets.iter().find(|cabinet| cabinet.key == key)
    }

    /// The rail that holes are bored with; `None` until one is chosen.
    #[must_use]
    pub fn rail(&self) -> Option<&Rail> {
        self.cards.rail(self.shop.rail.as_ref()?)
    }

    /// The first cabinet with hinges or pins in a front row: others are compared with it.
    #[must_use]
    pub fn first_with_front_row(&self) -> Option<&Cabinet> {
        let mut cabinets = self.cabinets.iter();
        cabinets.find(|cabinet| !cabinet.front_rows().is_empty())
    }

    /// How many entries the records of the bench have.
    #[must_use]
    pub fn records(&self) -> usize {
        self.bored.len() + self.took.len() + self.troubles.len() + self.measured.len()
    }

    /// What a distance on a face of a copy of a cabinet was measured to be, the last time; `None` when it never was.
    #[must_use]
    pub fn measured(&self, cabinet: Key, copy: Key, face: FaceId, span: Span) -> Option<Length> {
        let of_it =
            |it: &&Measured| (it.cabinet, it.copy, it.face, it.span) == (cabinet, copy, face, span);
        let last = self.measured.iter().rev().find(of_it);
        last.filter(|it| !it.taken_back).map(|it| it.is)
    }

    /// Every distance that was measured on a copy of a cabinet, as it holds: the last entry on each, unless it takes the earlier back.
    #[must_use]
    pub fn measured_of(&self, cabinet: Key, copy: Key) -> BTreeMap<(FaceId, Span), Measured> {
        let mut latest = BTreeMap::new();
        let own = |it: &&Measured| (it.cabinet, it.copy) == (cabinet, copy);
        for measured in self.measured.iter().filter(own) {
            let place = (measured.face, measured.span);
            match measured.taken_back {
                true => drop(latest.remove(&place)),
                false => drop(latest.insert(place, *measured)),
            }
        }
        latest
    }

    /// The position in the list of the cabinet with this key.
    #[must_use]
    pub fn position(&self, key: Key) -> Option<usize> {
        self.cabinets.iter().position(|cabinet| cabinet.key == key)
    }

    /// A key that no cabinet of this job has, nor ever had as far as the records of the bench, the revisions and the face the
    /// job was left on know.
    #[must_use]
    pub fn free_cabinet_key(&self) -> Key {
        let built = self.cabinets.iter().map(|cabinet| cabinet.key);
        let bored = self.bored.iter().map(|bored| bored.cabinet);
        let troubles = self.troubles.iter().map(|trouble| trouble.cabinet);
        let measured = self.measured.iter().map(|it| it.cabinet);
        let revisions = self.revisions.iter().map(|revision| revision.cabinet);
        let left = self.left_at.iter().map(|left| left.cabinet);
        built
            .chain(bored)
            .chain(troubles)
            .chain(measured)
            .chain(revisions)
            .chain(left)
            .max()
            .unwrap_or(Key(0))
            .next()
    }

    /// A key that nothing in that cabinet has or names, nor the record of what was bored of it.
    #[must_use]
    pub fn free_key(&self, cabinet: Key) -> Key {
        let free = self.cabinet(cabinet).map_or(Key(1), Cabinet::free_key);
        let bored = self.bored.iter().filter(|bored| bored.cabinet == cabinet);
        let left = self.left_at.iter().filter(|left| left.cabinet == cabinet);
        let troubles = self.troubles.iter().filter(|it| it.cabinet == cabinet);
        let measured = self.measured.iter().filter(|it| it.cabinet == cabinet);
        let faces = bored.clone().map(|bored| bored.face);
        faces
            .chain(troubles.clone().map(|trouble| trouble.face))
            .chain(measured.clone().map(|it| it.face))
            .chain(left.map(|left| left.face))
            .filter_map(|face| face.panel.partition())
            .chain(bored.map(|bored| bored.copy))
            .chain(troubles.map(|trouble| trouble.copy))
            .chain(measured.map(|it| it.copy))
            .fold(free, |free, named| free.max(named.next()))
    }
}

#[cfg(test)]
mod tests;
