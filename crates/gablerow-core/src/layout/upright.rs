//! Uprights: where each stands in the cabinet, and its two faces.

use super::Face;
use crate::job::{FaceId, Hand, Notch, PanelId};
use crate::measure::Length;
use crate::sum::Sum;

/// A side or a partition, in cabinet coordinates.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Upright {
    /// Which panel.
    pub id: PanelId,
    /// Its measured thickness.
    pub thickness: Length,
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
