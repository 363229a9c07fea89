//! From a cabinet's facts to its uprights, rows, holes and keep-outs.
//!
//! ```text
//! Cabinet, Shop, Cards
//!    | carcass    the box around it all     uprights: where sides and partitions stand
//!    | space      walks the openings: bays, their walls, fixed panels between them
//!    | fronts     what closes them, and how it divides their height
//!    | fittings   what each bay asks of its two walls     rows: at which setbacks
//!    | free       what faces and joints own themselves
//!    v
//! Layout: Upright -> Face -> Row -> Run      Face -> SingleBore, KeepOut
//! ```
//!
//! Everything is in cabinet coordinates: `x` from the carcass front toward the back, `z` from the carcass underside up,
//! `u` from a face into the cabinet. Rows stay arithmetic progressions; [`Face::holes`] expands them when a list is wanted.

mod bored;
mod carcass;
mod carried;
mod face;
mod fittings;
mod fixed;
mod free;
mod fronts;
mod hole;
mod keep_out;
mod rows;
mod space;
mod upright;

use alloc::vec::Vec;

pub use carried::Carrier;
pub use face::{BoreSpec, Face, OffGrid, Row, RowName, Run, SingleBore, Use};
pub use fittings::{LIFT_ROOM, SHELF_SETBACK, SHELF_SHORTER, SHELF_TO_BACK};
pub use fixed::PanelLayout;
pub use fronts::FrontLayout;
pub(crate) use fronts::gap_of;
pub use hole::Hole;
pub use keep_out::{Item, KeepOut, Span};
pub use upright::Upright;

use crate::cards::{CardId, Cards};
use crate::grid::Grid;
use crate::job::{Bay, Cabinet, FaceId, Hand, Job, Key, Names, PanelId, Shop};
use crate::measure::Length;
use crate::sum::Sum;

/// What a cabinet comes to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layout {
    /// The cabinet's one grid.
    pub grid: Grid,
    /// The highest hole number of the grid; 0 when not one hole fits.
    pub last: i16,
    /// The uprights: left side, partitions, right side, from left to right; of openings above each other the lower first.
    pub uprights: Vec<Upright>,
    /// Every opening, outer ones first.
    pub openings: Vec<OpeningLayout>,
    /// The thickness of fronts that have none of their own.
    pub front_thickness: Length,
    /// The bays, as they are listed.
    pub bays: Vec<BayLayout>,
    /// The fronts, of outer openings first, from the foot up; both leaves of a pair.
    pub fronts: Vec<FrontLayout>,
    /// The panels that lie or stand between uprights, from the foot up.
    pub panels: Vec<PanelLayout>,
    /// What people call all of these.
    pub names: Names,
    /// What could not be computed, said openly.
    pub open_points: Vec<OpenPoint>,
}

/// The clear space of an opening, divided or not, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OpeningLayout {
    /// The opening.
    pub key: Key,
    /// From the outer face of the left side to its clear space.
    pub across: Length,
    /// Clear width.
    pub width: Length,
    /// From the carcass underside to its floor.
    pub floor: Length,
    /// From the carcass underside to what closes it above.
    pub ceiling: Length,
}

/// Where a bay is, and where its rows stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BayLayout {
    /// The bay.
    pub key: Key,
    /// From the outer face of the left side to its clear space.
    pub across: Length,
    /// The face it sees on its left.
    pub left: FaceId,
    /// The face it sees on its right.
    pub right: FaceId,
    /// Clear width between them.
    pub width: Length,
    /// From the carcass underside to its floor.
    pub floor: Sum,
    /// From the carcass underside to what closes it above.
    pub ceiling: Sum,
    /// From the carcass front to the back panel.
    pub inner_depth: Sum,
    /// From the carcass front to its front row.
    pub front_row: Sum,
    /// From the carcass front to its back row.
    pub back_row: Sum,
}

impl BayLayout {
    /// From where the hardware of the bay begins to the back panel: what a runner has to fit into.
    #[must_use]
    pub fn depth_behind_fronts(&self, shop: &Shop) -> Length {
        self.inner_depth.total() - (self.front_row.total() - shop.setback_front)
    }

    /// Its clear space, left to right.
    #[must_use]
    pub fn width_span(&self) -> Span {
        Span::new(self.across, self.across + self.width)
    }

    /// Its clear space, foot to head.
    #[must_use]
    pub fn height_span(&self) -> Span {
        Span::new(self.floor.total(), self.ceiling.total())
    }

    /// Whether a height above the carcass underside lies within it, its floor and its ceiling included.
    #[must_use]
    pub fn spans(&self, z: Length) -> bool {
        self.floor.total() <= z && z <= self.ceiling.total()
    }

    /// The face it sees on one hand.
    #[must_use]
    pub fn wall(&self, hand: Hand) -> FaceId {
        match hand {
            Hand::Left => self.left,
            Hand::Right => self.right,
        }
    }
}

/// Something a layout cannot compute, or a space that is not there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OpenPoint {
    /// A joint of a partition has bores in a panel that is not yet laid out.
    JointBores {
        /// The partition.
        owner: Key,
    },
    /// The parts of an opening are wider than it, or leave some of it over.
    Widths {
        /// The opening.
        opening: Key,
        /// What is left over; negative when it is missing.
        left_over: Length,
    },
    /// The fronts of an opening are higher than it, or leave some of it over.
    Heights {
        /// The opening.
        opening: Key,
        /// What is left over; negative when it is missing.
        left_over: Length,
    },
    /// An opening has no width, no height or no depth.
    NoSpace {
        /// The opening.
        opening: Key,
    },
    /// A card does not exist.
    NoCard {
        /// Its id.
        card: CardId,
    },
}

impl Layout {
    /// Lays out one cabinet of a job.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::job::{Job, Label};
    /// use gablerow_core::layout::Layout;
    /// use gablerow_core::measure::Length;
    ///
    /// // 600 x 704 x 560 of 18 board, its back in a groove 20 from the back edge:
    /// // 600 - 2 * 18 = 564 clear; 560 - 20 - 37 = 503 to the back row
    /// let job = Job::plain(Label::new("glaze store").unwrap());
    /// let layout = Layout::of(&job.cabinets[0], &job);
    /// assert_eq!(layout.bays[0].width, Length::from_mm(564));
    /// assert_eq!(layout.bays[0].back_row.total(), Length::from_mm(503));
    /// ```
    #[must_use]
    pub fn of(cabinet: &Cabinet, job: &Job) -> Self {
        space::lay_out(
            cabinet,
            House {
                shop: &job.shop,
                cards: &job.cards,
            },
        )
    }

    /// The highest hole of a cabinet's grid; 0 when not one fits.
    #[must_use]
    pub fn last_hole(cabinet: &Cabinet, shop: &Shop) -> i16 {
        let row = cabinet
            .offsets
            .ends(cabinet.size.height)
            .balance(shop.limits.to_end);
        row.map_or(0, |row| i16::try_from(row.count).unwrap_or(i16::MAX))
    }

    /// The clear space of an opening.
    #[must_use]
    pub fn opening(&self, key: Key) -> Option<&OpeningLayout> {
        self.openings.iter().find(|opening| opening.key == key)
    }

    /// The number of the hole nearest to a height above the carcass underside, the lower of two; at least 1.
    #[must_use]
    pub fn nearest_hole(&self, z: Length) -> i16 {
        let half = Length::from_counts(Length::PITCH.counts() / 2 - 1);
        let pitches = (z - self.grid.first + half).div_floor(Length::PITCH);
        i16::try_from(pitches.saturating_add(1)).map_or(1, |number| number.min(self.last).max(1))
    }

    /// The upright with this name.
    #[must_use]
    pub fn upright(&self, id: PanelId) -> Option<&Upright> {
        self.uprights.iter().find(|upright| upright.id == id)
    }

    /// The face with this name.
    #[must_use]
    pub fn face(&self, id: FaceId) -> Option<&Face> {
        Some(self.upright(id.panel)?.face(id.toward))
    }

    /// The bays that see a face, lowest first; none for an outside.
    pub fn bays_at(&self, face: FaceId) -> impl Iterator<Item = (&BayLayout, Hand)> {
        self.bays.iter().filter_map(move |bay| match face {
            _ if bay.left == face => Some((bay, Hand::Left)),
            _ if bay.right == face => Some((bay, Hand::Right)),
            _ => None,
        })
    }

    /// The bay that sees a face at a height above the carcass underside, or the nearest one above or below, and the hand
    /// it has the face on; `None` for an outside.
    #[must_use]
    pub fn bay_at(&self, face: FaceId, z: Length) -> Option<(&BayLayout, Hand)> {
        let away = |bay: &BayLayout| {
            let (below, above) = (bay.floor.total() - z, z - bay.ceiling.total());
            below.max(above).max(Length::ZERO)
        };
        self.bays_at(face).min_by_key(|(bay, _)| away(bay))
    }

    /// The mate of a face at a height: the face that carries the other ends of the shelves there.
    #[must_use]
    pub fn mate(&self, face: FaceId, z: Length) -> Option<FaceId> {
        self.bay_at(face, z)
            .map(|(bay, hand)| bay.wall(hand.other()))
    }

    /// The faces that bays see, from left to right, in the order a person steps through them.
    pub fn inner_faces(&self) -> impl Iterator<Item = FaceId> {
        let faces = self
            .uprights
            .iter()
            .flat_map(|upright| upright.faces.iter().map(|face| face.id));
        faces.filter(|face| !face.is_outside())
    }

    /// The height of a hole number above the carcass underside; the number may lie off the grid.
    #[must_use]
    pub fn height(&self, number: i16) -> Length {
        self.grid.first + Length::PITCH * (i32::from(number) - 1)
    }

    /// The hole number that stands exactly at a height above the carcass underside; `None` off the grid.
    #[must_use]
    pub fn number_at(&self, z: Length) -> Option<i16> {
        let number = i16::try_from(self.grid.number_at(z)?.get()).ok()?;
        (number <= self.last).then_some(number)
    }
}

/// From the carcass front to the front row of a bay, wherever in the job it is.
#[must_use]
pub fn front_row(bay: &Bay, job: &Job) -> Sum {
    rows::front_row(
        bay,
        House {
            shop: &job.shop,
            cards: &job.cards,
        },
    )
}

/// What every cabinet of the job goes by.
#[derive(Clone, Copy)]
struct House<'a> {
    shop: &'a Shop,
    cards: &'a Cards,
}

impl House<'_> {
    /// The thickness of a front: as typed, or that of the shop's front board as measured.
    fn front_thickness(self, typed: Option<Length>) -> Length {
        let measured = || Some(self.cards.board(self.shop.front_board())?.thickness.value);
        typed.or_else(measured).unwrap_or(Length::ZERO)
    }
}

#[cfg(test)]
mod tests;
