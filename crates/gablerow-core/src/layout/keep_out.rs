//! The boxes of space that hardware and fixed panels need.

use crate::job::Key;
use crate::measure::Length;

/// An interval, open at both ends: to touch is not to meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Span {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

impl Span {
    /// The interval from one length to another; an empty one, which meets nothing, when the second is smaller: a shelf may
    /// be set back deeper than its bay.
    #[must_use]
    pub fn new(from: Length, to: Length) -> Self {
        Self {
            from,
            to: to.max(from),
        }
    }

    /// The smallest interval that holds both.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self::new(self.from.min(other.from), self.to.max(other.to))
    }

    /// Halfway between its ends, downward to a whole count.
    #[must_use]
    pub fn middle(self) -> Length {
        self.from + (self.to - self.from).half()
    }

    /// How far two intervals overlap: above 0 they meet, at 0 they touch, below 0 it is the distance between them.
    #[must_use]
    pub fn overlap(self, other: Self) -> Length {
        self.to.min(other.to) - self.from.max(other.from)
    }
}

/// What needs the space.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Item {
    /// A hinge plate and its arm.
    Hinge,
    /// The hinge side of a door that stands open. No layout has one: it is before the cabinet.
    OpenDoor,
    /// A drawer runner.
    Runner,
    /// A drawer box. No layout has one: it is a part, made from it.
    Box,
    /// A loose shelf.
    Shelf,
    /// The bottom panel.
    Bottom,
    /// A whole top panel.
    Top,
    /// A stretcher.
    Stretcher,
    /// A fixed shelf.
    FixedShelf,
    /// A rail before the back panel.
    BackRail,
}

impl Item {
    /// The word of the trade.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Hinge => "hinge",
            Self::OpenDoor => "open door",
            Self::Runner => "runner",
            Self::Box => "drawer box",
            Self::Shelf => "shelf",
            Self::Bottom => "bottom",
            Self::Top => "top",
            Self::Stretcher => "stretcher",
            Self::FixedShelf => "fixed shelf",
            Self::BackRail => "back rail",
        }
    }

    /// Whether it is a panel whose end meets the face.
    #[must_use]
    pub fn is_fixed_panel(self) -> bool {
        matches!(
            self,
            Self::Bottom | Self::Top | Self::Stretcher | Self::FixedShelf | Self::BackRail
        )
    }
}

/// The box one item needs before a face, in cabinet coordinates.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct KeepOut {
    /// What needs it.
    pub item: Item,
    /// The fitting or fixed shelf it belongs to; `None` for parts of the carcass.
    pub owner: Option<Key>,
    /// Front to back, from the carcass front.
    pub x: Span,
    /// Foot to head, from the carcass underside.
    pub z: Span,
    /// Out from the face.
    pub u: Span,
}

impl KeepOut {
    /// Whether the two boxes share space in x, in z and in u at once.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        let zero = Length::ZERO;
        self.x.overlap(other.x) > zero
            && self.z.overlap(other.z) > zero
            && self.u.overlap(other.u) > zero
    }
}
