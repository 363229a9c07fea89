//! Twins of the box: sides, bottom, top, back, and joints.

use gablerow_core::job;
use gablerow_core::job::CardId;
use gablerow_core::measure::Length;
use serde::{Deserialize, Serialize};

use super::measure::{Measure, Mm};
use super::text::Text;
use super::twin::{Twin, plain, record, words};
use crate::job_file::wrong::Wrong;

record! {
    /// Outer sizes of a carcass, without fronts and without plinth.
    #[derive(Copy)]
    Size = job::Size {
        /// Over both sides, in mm.
        width: Mm,
        /// From the carcass underside to its top, in mm.
        height: Mm,
        /// From the front edge of the sides, band included, to their back edge, in mm.
        depth: Mm,
    }
}

record! {
    /// Distance from each end of the sides to the first hole counted from there.
    #[derive(Copy)]
    EndOffsets = job::EndOffsets {
        /// From the carcass underside up to hole 1, in mm; it sets the grid.
        foot: Mm,
        /// From the carcass top down to the first hole counted from there, in mm.
        head: Mm,
    }
}

record! {
    /// The carcass, panel by panel.
    Carcass = job::Carcass {
        /// The two sides.
        sides: Sides,
        /// What is at the foot.
        bottom: Bottom,
        /// What is at the head.
        top: Top,
        /// The back panel.
        back: Back,
        /// A rail behind, under the top; left out where there is none.
        #[serde(default, skip_serializing_if = "plain")]
        rail: Option<BackRail>,
        /// What the carcass stands on; left out where it hangs, or its sides run to the floor.
        #[serde(default, skip_serializing_if = "plain")]
        stand: Option<Stand>,
    }
}

record! {
    /// A rail on edge before the back panel, right under the top.
    BackRail = job::BackRail {
        /// The board it is made of.
        board: Text<CardId>,
        /// How high it is, in mm.
        height: Mm,
    }
}

/// What a carcass stands on.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub(in crate::job_file) enum Stand {
    /// Feet under the bottom, so high in mm.
    Feet(Mm),
    /// A loose plinth, so high in mm.
    Plinth(Mm),
}

impl Twin for Stand {
    type Core = job::Stand;

    fn of(core: &job::Stand) -> Self {
        match core {
            job::Stand::Feet(height) => Self::Feet(Mm::of(height)),
            job::Stand::Plinth(height) => Self::Plinth(Mm::of(height)),
        }
    }

    fn into_core(self) -> Result<job::Stand, Wrong> {
        Ok(match self {
            Self::Feet(height) => job::Stand::Feet(height.into_core()?),
            Self::Plinth(height) => job::Stand::Plinth(height.into_core()?),
        })
    }
}

record! {
    /// Both sides of a carcass.
    Sides = job::Sides {
        /// The board they are made of.
        board: Text<CardId>,
        /// How far they run below the carcass underside, in mm; left out when they end there.
        #[serde(default, skip_serializing_if = "plain")]
        below: Mm,
        /// The cut-out for the toes at the lower front corner, if there is one.
        #[serde(default, skip_serializing_if = "plain")]
        notch: Option<Notch>,
        /// The outside of the left side will be seen; left out when it will not.
        #[serde(default, skip_serializing_if = "plain")]
        exposed_left: bool,
        /// The outside of the right side will be seen; left out when it will not.
        #[serde(default, skip_serializing_if = "plain")]
        exposed_right: bool,
    }
}

record! {
    /// A cut-out at the lower front corner of a side.
    #[derive(Copy)]
    Notch = job::Notch {
        /// Up from the foot of the side, in mm.
        height: Mm,
        /// Back from its front edge, in mm.
        depth: Mm,
    }
}

words! {
    /// How a horizontal panel meets the ends of the sides.
    Fit = job::Fit {
        /// Between the sides, which run past it.
        Between = "between",
        /// Across the ends of the sides, which stop at it.
        Across = "across",
    }
}

record! {
    /// The bottom panel.
    Bottom = job::Bottom {
        /// The board it is made of.
        board: Text<CardId>,
        /// Between the sides, or under them.
        fit: Fit,
        /// How its ends meet the sides; left out for a plain butt joint.
        #[serde(default, skip_serializing_if = "plain")]
        joint: Joint,
    }
}

record! {
    /// What closes or holds the carcass at its head.
    Top = job::Top {
        /// The board it is made of.
        board: Text<CardId>,
        /// A whole panel, or stretchers.
        kind: TopKind,
        /// How its ends meet the sides; left out for a plain butt joint.
        #[serde(default, skip_serializing_if = "plain")]
        joint: Joint,
    }
}

/// The kinds of top.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub(in crate::job_file) enum TopKind {
    /// A whole panel.
    Panel(Fit),
    /// Two stretchers between the sides, lying flat: front and back, so wide in mm.
    FlatStretchers(Mm),
    /// Two stretchers between the sides, on edge: front and back, so high in mm.
    EdgeStretchers(Mm),
}

impl Twin for TopKind {
    type Core = job::TopKind;

    fn of(core: &job::TopKind) -> Self {
        match core {
            job::TopKind::Panel(fit) => Self::Panel(Fit::of(fit)),
            job::TopKind::FlatStretchers(width) => Self::FlatStretchers(Mm::of(width)),
            job::TopKind::EdgeStretchers(height) => Self::EdgeStretchers(Mm::of(height)),
        }
    }

    fn into_core(self) -> Result<job::TopKind, Wrong> {
        Ok(match self {
            Self::Panel(fit) => job::TopKind::Panel(fit.into_core()?),
            Self::FlatStretchers(width) => job::TopKind::FlatStretchers(width.into_core()?),
            Self::EdgeStretchers(height) => job::TopKind::EdgeStretchers(height.into_core()?),
        })
    }
}

/// How the back panel meets the carcass.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(in crate::job_file) enum Back {
    /// In a groove.
    Groove {
        /// Back edge of the side to the groove's front wall, in mm.
        to_front_wall: Mm,
        /// How deep the groove is cut into the side, in mm.
        cut: Mm,
    },
    /// In a rabbet.
    Rabbet {
        /// How far it runs in from the back edge, in mm.
        run: Mm,
    },
    /// Planted on the back edges.
    Planted,
    /// None.
    Open,
}

impl Twin for Back {
    type Core = job::Back;

    fn of(core: &job::Back) -> Self {
        match core {
            job::Back::Groove { to_front_wall, cut } => Self::Groove {
                to_front_wall: Mm::of(to_front_wall),
                cut: Mm::of(cut),
            },
            job::Back::Rabbet { run } => Self::Rabbet { run: Mm::of(run) },
            job::Back::Planted => Self::Planted,
            job::Back::Open => Self::Open,
        }
    }

    fn into_core(self) -> Result<job::Back, Wrong> {
        Ok(match self {
            Self::Groove { to_front_wall, cut } => job::Back::Groove {
                to_front_wall: to_front_wall.into_core()?,
                cut: cut.into_core()?,
            },
            Self::Rabbet { run } => job::Back::Rabbet {
                run: run.into_core()?,
            },
            Self::Planted => job::Back::Planted,
            Self::Open => job::Back::Open,
        })
    }
}

record! {
    /// How the end of one panel meets the face of another.
    #[derive(Default)]
    Joint = job::Joint {
        /// How deep the end is let into the face, in mm; left out for a butt joint.
        #[serde(default, skip_serializing_if = "plain")]
        housing: Mm,
        /// The end runs past that panel to its far face; left out when it does not.
        #[serde(default, skip_serializing_if = "plain")]
        runs_past: bool,
        /// Bores for dowels and connectors, at the middle of the board's thickness.
        #[serde(default, skip_serializing_if = "plain")]
        bores: Vec<JointBore>,
    }
}

record! {
    /// One bore of a joint.
    #[derive(Copy)]
    JointBore = job::JointBore {
        /// From the carcass front to its centre, in mm.
        x: Mm,
        /// Its diameter, in mm.
        diameter: Mm,
        /// How deep it goes into the face, in mm.
        depth: Measure<Option<Length>>,
        /// What it takes.
        fastener: Fastener,
    }
}

words! {
    /// What a joint is held by.
    Fastener = job::Fastener {
        /// A dowel.
        Dowel = "dowel",
        /// A screw or a screwed connector.
        Connector = "connector",
    }
}
