//! Uprights: where each stands in the cabinet, and its two faces.

use super::Face;
use crate::grid::{Ends, Grid, Mismatch};
use crate::job::{Cabinet, FaceId, Hand, Notch, PanelId, Shop};
use crate::measure::Length;
use crate::sum::Sum;

/// A side or a partition, in cabinet coordinates.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Upright {
    /// Which panel.
    pub id: PanelId,
    /// Its measured thickness.
    pub thickness: Length,
    /// From the outer face of the left side to its own left face.
    pub across: Length,
    /// From the carcass front to its front edge.
    pub front: Sum,
    /// From the carcass front to its back edge.
    pub back: Sum,
    /// From the carcass underside to its foot; negative when it runs below.
    pub foot: Sum,
    /// From the carcass underside to its head.
    pub head: Sum,
    /// What the back panel takes from its depth, measured from its own back edge.
    pub back_taken: Length,
    /// The cut-out at its lower front corner.
    pub notch: Option<Notch>,
    /// The outside will be seen.
    pub exposed: bool,
    /// The lowest and the highest hole number of the cabinet's grid that this panel has, its ends kept clear; the second
    /// is below the first when it has none.
    pub holes: (i16, i16),
    /// How the holes counted from either end agree: of a side by the offsets of both ends, of a partition by the one offset
    /// that its lowest hole has.
    pub mismatch: Mismatch,
    /// The face toward the left, the face toward the right.
    pub faces: [Face; 2],
}

impl Upright {
    /// The face toward one hand.
    #[must_use]
    pub fn face(&self, toward: Hand) -> &Face {
        match toward {
            Hand::Left => &self.faces[0],
            Hand::Right => &self.faces[1],
        }
    }

    pub(super) fn face_mut(&mut self, toward: Hand) -> &mut Face {
        match toward {
            Hand::Left => &mut self.faces[0],
            Hand::Right => &mut self.faces[1],
        }
    }

    /// Finds the holes that the panel has, once it stands in its place.
    pub(super) fn number(&mut self, cabinet: &Cabinet, shop: &Shop, grid: Grid, last: i16) {
        let (foot, head) = (self.foot.total(), self.head.total());
        // A cabinet may have offsets smaller than the shop likes; its end holes are holes all the same.
        let clear = shop
            .limits
            .to_end
            .min(cabinet.offsets.foot)
            .min(cabinet.offsets.head);
        let number = |pitches: i32| i16::try_from(pitches + 1).unwrap_or(i16::MAX);
        let lowest = -(grid.first - foot - clear).div_floor(Length::PITCH);
        let highest = (head - clear - grid.first).div_floor(Length::PITCH);
        self.holes = (number(lowest).max(1), number(highest).min(last));
        self.mismatch = match self.id {
            PanelId::Side(_) => cabinet.offsets.ends(cabinet.size.height).mismatch(),
            PanelId::Partition(_) => Ends::alike(self.length(), self.first_hole(grid)).mismatch(),
        };
    }

    /// From its foot up to its lowest hole.
    #[must_use]
    pub fn first_hole(&self, grid: Grid) -> Length {
        grid.first + Length::PITCH * (i32::from(self.holes.0) - 1) - self.foot.total()
    }

    /// How many hole numbers it has.
    #[must_use]
    pub fn hole_count(&self) -> i16 {
        (self.holes.1 - self.holes.0 + 1).max(0)
    }

    /// Foot to head.
    #[must_use]
    pub fn length(&self) -> Length {
        self.head.total() - self.foot.total()
    }

    /// Front edge to back edge.
    #[must_use]
    pub fn depth(&self) -> Length {
        self.back.total() - self.front.total()
    }

    pub(super) fn faces_of(id: PanelId) -> [Face; 2] {
        [Hand::Left, Hand::Right].map(|toward| Face::new(FaceId { panel: id, toward }))
    }
}
