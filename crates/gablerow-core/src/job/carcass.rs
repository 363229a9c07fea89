//! The box itself: sides, bottom, top, back.

use super::{CardId, Joint};
use crate::grid::Ends;
use crate::measure::Length;

/// Outer sizes of a carcass, without fronts and without plinth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Size {
    /// Over both sides.
    pub width: Length,
    /// From the carcass underside to its top.
    pub height: Length,
    /// From the front edge of the sides, band included, to their back edge.
    pub depth: Length,
}

/// Distance from each end of the sides to the first hole counted from there.
///
/// The offset at the foot sets the grid of the cabinet; the one at the head is what a stop at the head gives, and takes
/// part only in balance.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct EndOffsets {
    /// From the carcass underside up to hole 1.
    pub foot: Length,
    /// From the carcass top down to the first hole counted from there.
    pub head: Length,
}

impl EndOffsets {
    /// The ends of a panel of this height that is bored with these offsets.
    #[must_use]
    pub fn ends(self, height: Length) -> Ends {
        Ends {
            height,
            foot: self.foot,
            head: self.head,
        }
    }
}

/// The carcass, panel by panel.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Carcass {
    /// The two sides.
    pub sides: Sides,
    /// What is at the foot.
    pub bottom: Bottom,
    /// What is at the head.
    pub top: Top,
    /// The back panel.
    pub back: Back,
    /// A rail behind, under the top; `None` where there is none.
    pub rail: Option<BackRail>,
    /// What the carcass stands on; `None` where it hangs, or its sides run to the floor.
    pub stand: Option<Stand>,
}

/// A rail on edge before the back panel, right under the top.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BackRail {
    /// The board it is made of.
    pub board: CardId,
    /// How high it is.
    pub height: Length,
}

/// What a carcass stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stand {
    /// Feet under the bottom, so high.
    Feet(Length),
    /// A loose plinth, so high.
    Plinth(Length),
}

/// Both sides of a carcass.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sides {
    /// The board they are made of.
    pub board: CardId,
    /// How far they run below the carcass underside, to the floor; 0 when they end there.
    pub below: Length,
    /// The cut-out for the toes at the lower front corner.
    pub notch: Option<Notch>,
    /// The outside of the left side will be seen.
    pub exposed_left: bool,
    /// The outside of the right side will be seen.
    pub exposed_right: bool,
}

/// A cut-out at the lower front corner of a side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Notch {
    /// Up from the foot of the side.
    pub height: Length,
    /// Back from its front edge.
    pub depth: Length,
}

/// How a horizontal panel meets the ends of the sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fit {
    /// Between the sides, which run past it.
    Between,
    /// Across the ends of the sides, which stop at it.
    Across,
}

/// The bottom panel.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bottom {
    /// The board it is made of.
    pub board: CardId,
    /// Between the sides, or under them.
    pub fit: Fit,
    /// How its ends meet the sides.
    pub joint: Joint,
}

/// What closes or holds the carcass at its head.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Top {
    /// The board it is made of.
    pub board: CardId,
    /// A whole panel, or stretchers.
    pub kind: TopKind,
    /// How its ends meet the sides.
    pub joint: Joint,
}

/// The kinds of top.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TopKind {
    /// A whole panel.
    Panel(Fit),
    /// Two stretchers between the sides, lying flat: front and back, so wide.
    FlatStretchers(Length),
    /// Two stretchers between the sides, on edge: front and back, so high.
    EdgeStretchers(Length),
}

/// How the back panel meets the carcass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Back {
    /// In a groove whose front wall is so far from the back edge.
    Groove {
        /// Back edge of the side to the groove's front wall.
        to_front_wall: Length,
        /// How deep the groove is cut into the side.
        cut: Length,
    },
    /// In a rabbet that runs in so far from the back edge.
    Rabbet {
        /// From the back edge forward.
        run: Length,
    },
    /// Planted on the back edges.
    Planted,
    /// None.
    Open,
}

impl Back {
    /// How much of the depth lies behind the front face of the back panel (0 when it is planted on or absent).
    #[must_use]
    pub fn taken(self) -> Length {
        match self {
            Self::Groove { to_front_wall, .. } => to_front_wall,
            Self::Rabbet { run } => run,
            Self::Planted | Self::Open => Length::ZERO,
        }
    }

    /// The words for that distance.
    #[must_use]
    pub fn taken_words(self) -> &'static str {
        match self {
            Self::Groove { .. } => "back edge to the groove's front wall",
            Self::Rabbet { .. } => "depth of the rabbet",
            Self::Planted => "back planted on",
            Self::Open => "no back",
        }
    }
}
