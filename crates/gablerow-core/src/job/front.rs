//! Fronts: wishes for doors and drawers over an opening.

use super::{Hand, Key, Label};
use crate::measure::Length;

/// A wish for what closes an opening, or for a drawer behind what closes it.
///
/// The fronts of one opening stand above each other and are listed from the foot up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Front {
    /// Its name in the cabinet.
    pub key: Key,
    /// What it is called at the bench: `D1`.
    pub name: Label,
    /// What it is.
    pub kind: FrontKind,
    /// How its height is found.
    pub height: FrontHeight,
    /// Its thickness; `None` is what its opening is made for, or that of the shop's front board, as measured.
    pub thickness: Option<Length>,
    /// What a drawer shall hold, in grams; a wish.
    pub load_grams: Option<u32>,
}

/// What a front is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FrontKind {
    /// One door, hung on this hand.
    Door(Hand),
    /// Two doors side by side, hung on either hand.
    Pair,
    /// A drawer and its front.
    Drawer,
    /// A front that neither opens nor pulls.
    False,
    /// A drawer behind a door: a box without a front of its own. Its height is the room it has in the opening.
    Inner,
}

/// How the height of one of several fronts is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FrontHeight {
    /// Whole pitches, less one gap.
    Modules(u16),
    /// So high.
    Fixed(Length),
    /// A share of what is left, in this proportion to the other shares.
    Ratio(u16),
}

impl Front {
    /// A front that takes what the others leave, of the shop's front board.
    #[must_use]
    pub fn plain(key: Key, name: Label, kind: FrontKind) -> Self {
        Self {
            key,
            name,
            kind,
            height: FrontHeight::Ratio(1),
            thickness: None,
            load_grams: None,
        }
    }
}

impl FrontKind {
    /// Whether it is seen from the front, closed.
    #[must_use]
    pub fn is_seen(self) -> bool {
        self != Self::Inner
    }

    /// Whether a box runs on a pair of runners.
    #[must_use]
    pub fn is_drawer(self) -> bool {
        matches!(self, Self::Drawer | Self::Inner)
    }

    /// Whether it hangs on hinges.
    #[must_use]
    pub fn is_hung(self) -> bool {
        matches!(self, Self::Door(_) | Self::Pair)
    }

    /// The words of the trade: `door, hung left`, `pair of doors`, `drawer`, `false front`, `drawer behind`.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Door(Hand::Left) => "door, hung left",
            Self::Door(Hand::Right) => "door, hung right",
            Self::Pair => "pair of doors",
            Self::Drawer => "drawer",
            Self::False => "false front",
            Self::Inner => "drawer behind",
        }
    }
}
