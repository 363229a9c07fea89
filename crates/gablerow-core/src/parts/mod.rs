//! Parts: what of a cabinet is cut and bought. Computed from its layout, never stored.
//!
//! ```text
//! Layout, Cabinet, Shop, Cards
//!    | piece      a cut piece of board: finished size less bands is what the saw makes
//!    | panels     sides, partitions, bottom, top, rail, fixed shelves, back
//!    | hang       how a door hangs: plates, mass, count of hinges, arm, tab and plate
//!    | fronts     doors and drawer fronts; cups of doors, tab and plate of their hinges
//!    | box_fit    drawer boxes in their place     boxes: what of them is cut
//!    | shelves    loose shelves: clear openings, sag, what tips them
//!    | bag        hardware by kind, and what to take
//!    | storage    what the unit weighs and holds closed, for the scope of tip-over
//!    | needs      of several cabinets: how much of each board, and of band
//!    v
//! Parts, with what is missing said openly
//! ```
//!
//! Sizes are those of one cabinet as it is drawn; [`Built`] says how often it is built, and how often as its mirror image.

mod bag;
mod box_fit;
mod boxes;
mod fronts;
mod hang;
mod needs;
mod panels;
mod piece;
mod shelves;
mod storage;

use alloc::vec::Vec;

pub use bag::{BagKind, BagLine};
pub(crate) use bag::{FEET, MORE_OF_EACH, WIDE};
pub(crate) use box_fit::{BOTTOM_SHORTER, BOTTOM_THICKNESS};
pub use box_fit::{BoxFit, CLEAR_OF_DOOR, Over, box_fits, box_widths};
pub use boxes::BoxPart;
pub use fronts::{FrontPart, Hanging};
pub use hang::{Arm, DoorPlate, Leaf};
pub use needs::{BAND_MORE, BAND_OVER, BOARD_MORE};
pub use needs::{BoardNeed, board_needs};
pub(crate) use panels::BACK_SHORTER;
pub use panels::{BackPart, PanelName, PanelPart};
pub use piece::{Banded, Grain, Piece};
pub use shelves::{ShelfPart, Strength, strength};

use crate::cards::{CardId, Cards};
use crate::job::{Bay, Cabinet, Job, Key, Shop};
use crate::layout::{BayLayout, Layout};

/// What one cabinet is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct Parts {
    /// How often the cabinet is built.
    pub built: Built,
    /// The uprights from left to right, then what lies between them from the foot up.
    pub panels: Vec<PanelPart>,
    /// The back panel; `None` where the cabinet is open behind.
    pub back: Option<BackPart>,
    /// Doors, drawer fronts and false fronts, as they are laid out; both leaves of a pair.
    pub fronts: Vec<FrontPart>,
    /// Drawer boxes, in the order of their fronts.
    pub boxes: Vec<BoxPart>,
    /// Loose shelves, bay by bay, from the foot up.
    pub shelves: Vec<ShelfPart>,
    /// The hardware of all that is built of the cabinet.
    pub bag: Vec<BagLine>,
    /// What could not be made, or has nothing to hang on or run on.
    pub missing: Vec<Missing>,
}

/// How often a cabinet is built.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Built {
    /// As it is drawn.
    pub plain: u32,
    /// As its mirror image.
    pub mirrored: u32,
}

impl Built {
    /// All of them.
    #[must_use]
    pub fn total(self) -> u32 {
        self.plain + self.mirrored
    }

    fn of(cabinet: &Cabinet) -> Self {
        let count = |mirrored| {
            let copies = cabinet
                .copies
                .iter()
                .filter(|copy| copy.mirrored == mirrored);
            u32::try_from(copies.count()).unwrap_or(u32::MAX)
        };
        Self {
            plain: count(false),
            mirrored: count(true),
        }
    }
}

/// What a part would need and does not have.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Missing {
    /// A door has no plate on the wall it is hung on.
    Plates {
        /// The door.
        front: Key,
    },
    /// No plate of a hinge is in stock.
    Stock {
        /// The door.
        front: Key,
    },
    /// A drawer has no runners.
    Runners {
        /// Its front.
        front: Key,
    },
    /// A drawer's front closes more than the one bay its box can be in.
    Bay {
        /// Its front.
        front: Key,
    },
    /// A drawer's box would have no width, no length or no height.
    Room {
        /// Its front.
        front: Key,
    },
    /// A card, or the length of a runner, is not there.
    Card {
        /// The card.
        card: CardId,
    },
}

impl Missing {
    /// The words a person reads.
    #[must_use]
    pub fn words(&self) -> &'static str {
        match self {
            Self::Plates { .. } => "door without plates",
            Self::Stock { .. } => "hinge without a plate in stock",
            Self::Runners { .. } => "drawer without runners",
            Self::Bay { .. } => "drawer front wider than its bay",
            Self::Room { .. } => "no room for the drawer box",
            Self::Card { .. } => "card that is not there",
        }
    }

    /// The front it is about; `None` for a card.
    #[must_use]
    pub fn front(&self) -> Option<Key> {
        match self {
            Self::Plates { front }
            | Self::Stock { front }
            | Self::Runners { front }
            | Self::Bay { front }
            | Self::Room { front } => Some(*front),
            Self::Card { .. } => None,
        }
    }
}

impl Parts {
    /// What a cabinet of a job is made of, from its layout.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::job::{Job, Label};
    /// use gablerow_core::layout::Layout;
    /// use gablerow_core::measure::Length;
    /// use gablerow_core::parts::Parts;
    ///
    /// // A side of 704 x 560 with a band of 1.0 on its front edge is cut 704 x 559.
    /// let job = Job::plain(Label::new("glaze store").unwrap());
    /// let layout = Layout::of(&job.cabinets[0], &job);
    /// let side = &Parts::of(&job.cabinets[0], &layout, &job).panels[0].piece;
    /// assert_eq!(side.length.total(), Length::from_mm(704));
    /// assert_eq!(side.cut_width.total(), Length::from_mm(559));
    /// ```
    #[must_use]
    pub fn of(cabinet: &Cabinet, layout: &Layout, job: &Job) -> Self {
        let mut make = Make::new(cabinet, layout, job);
        let panels = make.panels();
        let back = make.back();
        let fronts = make.fronts();
        let boxes = make.boxes();
        let shelves = make.shelves();
        let built = Built::of(cabinet);
        let bag = make.bag(built);
        Self {
            built,
            panels,
            back,
            fronts,
            boxes,
            shelves,
            bag,
            missing: make.missing,
        }
    }
}

/// The loose shelves of a cabinet alone, bay by bay, from the foot up: as [`Parts`] has them.
#[must_use]
pub fn loose_shelves(cabinet: &Cabinet, layout: &Layout, job: &Job) -> Vec<ShelfPart> {
    Make::new(cabinet, layout, job).shelves()
}

/// What parts are made from, and what was found missing on the way.
struct Make<'a> {
    cabinet: &'a Cabinet,
    layout: &'a Layout,
    shop: &'a Shop,
    cards: &'a Cards,
    missing: Vec<Missing>,
}

impl<'a> Make<'a> {
    fn new(cabinet: &'a Cabinet, layout: &'a Layout, job: &'a Job) -> Self {
        Self {
            cabinet,
            layout,
            shop: &job.shop,
            cards: &job.cards,
            missing: Vec::new(),
        }
    }

    /// Every bay, where it is and what it owns.
    fn bays(&self) -> impl Iterator<Item = (&'a BayLayout, &'a Bay)> + use<'a> {
        let opening = &self.cabinet.opening;
        let of = |made: &'a BayLayout| Some((made, opening.bay(made.key)?));
        self.layout.bays.iter().filter_map(of)
    }

    /// Keeps what is missing, once.
    fn miss(&mut self, missing: Missing) {
        if !self.missing.contains(&missing) {
            self.missing.push(missing);
        }
    }

    fn no_card(&mut self, card: &CardId) {
        self.miss(Missing::Card { card: card.clone() });
    }
}

#[cfg(test)]
mod tests;
