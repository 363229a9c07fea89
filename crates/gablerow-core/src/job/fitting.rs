//! What a bay owns: shelf zones, shelves, hinge plates and runners, each at its hole numbers.

use super::{CardId, Hand, HolePlace, Key};
use crate::measure::Length;

/// How deep holes of a zone or a free row are bored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Depth {
    /// As deep as the shop's default depth.
    Shop,
    /// So deep, from the face.
    Blind(Length),
    /// Through the panel.
    Through,
}

/// Which rows of a bay carry its pins.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum PinRows {
    /// Front row and back row: four pins a shelf.
    #[default]
    Two,
    /// A third row midway, for deep shelves: six pins a shelf.
    Three,
}

/// A run of pin holes on both walls of a bay, both ends included.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Zone {
    /// Its name in the cabinet.
    pub key: Key,
    /// The lowest hole.
    pub first: HolePlace,
    /// The highest hole.
    pub last: HolePlace,
    /// How deep its holes are.
    pub depth: Depth,
}

impl Zone {
    /// The numbers of its lowest and its highest hole on a grid of `last` holes, where that grid has them or not.
    ///
    /// When the height changes, two ends that are counted from different places may pass each other; the zone then runs
    /// between them all the same.
    #[must_use]
    pub fn numbers(&self, last: i16) -> (i16, i16) {
        let (first, top) = (self.first.number(last), self.last.number(last));
        (first.min(top), first.max(top))
    }
}

/// A loose shelf on the pins of one hole number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shelf {
    /// Its name in the cabinet.
    pub key: Key,
    /// The hole its pins stand in.
    pub hole: HolePlace,
    /// The board it is made of.
    pub board: CardId,
    /// From the bay's front to the shelf's front edge.
    pub setback_front: Length,
    /// How much shorter it is than its bay is wide.
    pub shorter: Length,
    /// The load it shall carry, in grams; a wish.
    pub load_grams: Option<u32>,
    /// The clear height wanted over it; a wish.
    pub clear: Option<Length>,
}

/// A hinge plate on one wall of a bay.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plate {
    /// Its name in the cabinet.
    pub key: Key,
    /// The wall it is screwed to.
    pub wall: Hand,
    /// Its hole; of a plate along the row the lower of its two.
    pub hole: HolePlace,
    /// The hinge card.
    pub card: CardId,
    /// The door it was set for, with which it goes; `None` when it was set for none.
    pub serves: Option<Key>,
}

/// A pair of drawer runners, one on each wall of a bay.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Runner {
    /// Its name in the cabinet.
    pub key: Key,
    /// The hole of its screw line.
    pub hole: HolePlace,
    /// The runner card.
    pub card: CardId,
    /// Which of the card's lengths, by its name.
    pub length: Length,
    /// Whole pitches it is set back from the usual place.
    pub set_back: u8,
    /// Packing between the wall and the runner: left, right.
    pub spacers: Spacers,
    /// The drawer it was set for, with which it goes; `None` when it was set for none.
    pub serves: Option<Key>,
}

/// Packing between each wall and the runner on it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Spacers {
    /// On the left wall.
    pub left: Length,
    /// On the right wall.
    pub right: Length,
}

impl Spacers {
    /// The spacer on one wall.
    #[must_use]
    pub fn on(self, wall: Hand) -> Length {
        match wall {
            Hand::Left => self.left,
            Hand::Right => self.right,
        }
    }
}
