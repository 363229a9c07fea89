//! Which panel, which of its faces.
//!
//! ```text
//!            left side            partition 4           right side
//!        outside | inside     left face | right face   inside | outside
//! hand     Left  |  Right        Left   |  Right        Left  |  Right
//! ```

use super::{Edge, Key};

/// Left or right, seen from the front of the cabinet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hand {
    /// To the left.
    Left,
    /// To the right.
    Right,
}

impl Hand {
    /// The other hand; twice is none at all.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }

    /// The word of the trade: `left` or `right`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }
}

/// An upright panel of a cabinet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PanelId {
    /// The outer panel on the given hand.
    Side(Hand),
    /// A partition, by its key.
    Partition(Key),
}

impl PanelId {
    /// The key of a partition; sides have none.
    #[must_use]
    pub fn partition(self) -> Option<Key> {
        match self {
            Self::Side(_) => None,
            Self::Partition(key) => Some(key),
        }
    }
}

/// One wide surface of an upright: the panel, and the hand it looks toward.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FaceId {
    /// The panel.
    pub panel: PanelId,
    /// The hand it looks toward, seen from the front of the cabinet.
    pub toward: Hand,
}

impl FaceId {
    /// The inside of a side panel.
    #[must_use]
    pub fn inside(side: Hand) -> Self {
        Self {
            panel: PanelId::Side(side),
            toward: side.other(),
        }
    }

    /// The other face of the same panel.
    #[must_use]
    pub fn behind(self) -> Self {
        Self {
            toward: self.toward.other(),
            ..self
        }
    }

    /// Whether this is the outside of a side panel, which no bay sees.
    #[must_use]
    pub fn is_outside(self) -> bool {
        self.panel == PanelId::Side(self.toward)
    }

    /// The hand the foot of its panel is on when it lies with this face up and this edge toward whoever bores. Geometry.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::job::{Edge, FaceId, Hand};
    ///
    /// assert_eq!(FaceId::inside(Hand::Left).foot_to(Edge::Front), Hand::Right);
    /// ```
    #[must_use]
    pub fn foot_to(self, edge: Edge) -> Hand {
        match edge {
            Edge::Front => self.toward,
            Edge::Back => self.toward.other(),
        }
    }

    /// The word of the trade: `inside` or `outside` of a side, `left face` or `right face` of a partition.
    #[must_use]
    pub fn word(self) -> &'static str {
        match (self.panel, self.toward) {
            (PanelId::Side(_), _) if self.is_outside() => "outside",
            (PanelId::Side(_), _) => "inside",
            (PanelId::Partition(_), Hand::Left) => "left face",
            (PanelId::Partition(_), Hand::Right) => "right face",
        }
    }
}
