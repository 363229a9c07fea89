//! Twins of openings: bays, openings side by side, openings above each other.

use gablerow_core::job;
use gablerow_core::job::CardId;
use serde::{Deserialize, Serialize};

use super::carcass::Joint;
use super::fitting::{PinRows, Plate, Runner, Shelf, Zone};
use super::front::Front;
use super::measure::{Measure, Mm};
use super::text::Text;
use super::twin::{Key, Twin, plain, record};
use crate::job_file::wrong::Wrong;

/// A clear space, and the fronts that close it. It is a bay, or is divided in one of two ways.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[cfg_attr(test, schemars(extend("oneOf" = super::schema::one_division())))]
#[serde(deny_unknown_fields)]
pub(in crate::job_file) struct Opening {
    /// Its name in the cabinet.
    key: Key,
    /// Not divided: one bay.
    #[serde(default, skip_serializing_if = "plain")]
    bay: Option<Bay>,
    /// Divided into parts from left to right.
    #[serde(default, skip_serializing_if = "plain")]
    side_by_side: Option<Box<SideBySide>>,
    /// Divided into parts from the foot up.
    #[serde(default, skip_serializing_if = "plain")]
    stacked: Option<Box<Stacked>>,
    /// Doors and drawers over it; wishes.
    #[serde(default, skip_serializing_if = "plain")]
    fronts: Vec<Front>,
}

impl Twin for Opening {
    type Core = job::Opening;

    fn of(core: &job::Opening) -> Self {
        let job::Opening {
            key,
            division,
            fronts,
        } = core;
        let mut twin = Self {
            key: Key::of(key),
            bay: None,
            side_by_side: None,
            stacked: None,
            fronts: Twin::of(fronts),
        };
        match division {
            job::Division::Bay(bay) => twin.bay = Some(Bay::of(bay)),
            job::Division::SideBySide(parts) => twin.side_by_side = Some(Twin::of(parts)),
            job::Division::Stacked(parts) => twin.stacked = Some(Twin::of(parts)),
        }
        twin
    }

    fn into_core(self) -> Result<job::Opening, Wrong> {
        let Self {
            key,
            bay,
            side_by_side,
            stacked,
            fronts,
        } = self;
        let division = match (bay, side_by_side, stacked) {
            (Some(bay), None, None) => bay
                .into_core()
                .map(job::Division::Bay)
                .map_err(|wrong| wrong.within("bay")),
            (None, Some(parts), None) => parts
                .into_core()
                .map(job::Division::SideBySide)
                .map_err(|wrong| wrong.within("side_by_side")),
            (None, None, Some(parts)) => parts
                .into_core()
                .map(job::Division::Stacked)
                .map_err(|wrong| wrong.within("stacked")),
            _ => Err(Wrong::new(
                "an opening has one of the fields \"bay\", \"side_by_side\" and \"stacked\", no more and no less",
            )),
        };
        Ok(job::Opening {
            key: key.into_core()?,
            division: division?,
            fronts: fronts.into_core().map_err(|wrong| wrong.within("fronts"))?,
        })
    }
}

record! {
    /// The clear space between two walls, and what it owns.
    Bay = job::Bay {
        /// From the carcass front to the front of this bay, in mm; left out when they are one.
        #[serde(default, skip_serializing_if = "plain")]
        recess: Mm,
        /// Set when the fronts stand inside the opening.
        #[serde(default, skip_serializing_if = "plain")]
        inset: Option<Inset>,
        /// Which rows carry pins; left out for two.
        #[serde(default, skip_serializing_if = "plain")]
        pin_rows: PinRows,
        /// Runs of pin holes.
        #[serde(default, skip_serializing_if = "plain")]
        zones: Vec<Zone>,
        /// Loose shelves.
        #[serde(default, skip_serializing_if = "plain")]
        shelves: Vec<Shelf>,
        /// Hinge plates.
        #[serde(default, skip_serializing_if = "plain")]
        plates: Vec<Plate>,
        /// Drawer runners.
        #[serde(default, skip_serializing_if = "plain")]
        runners: Vec<Runner>,
    }
}

record! {
    /// Fronts that stand inside the opening.
    #[derive(Copy)]
    Inset = job::Inset {
        /// Thickness of the front, in mm; left out for that of the shop's front board.
        #[serde(default, skip_serializing_if = "plain")]
        front: Option<Mm>,
        /// How far its face stands behind the carcass front, in mm; left out when flush.
        #[serde(default, skip_serializing_if = "plain")]
        set_in: Mm,
    }
}

record! {
    /// Openings from left to right, with a partition between each two.
    SideBySide = job::SideBySide {
        /// The leftmost opening and its width.
        first: Part,
        /// Each further partition and the opening on its right.
        rest: Vec<NextPart>,
    }
}

/// A partition and the opening on its right.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(in crate::job_file) struct NextPart {
    /// The partition.
    partition: Partition,
    /// The opening on its right and its width.
    part: Part,
}

/// A fixed shelf and the opening above it.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(in crate::job_file) struct NextOpening {
    /// The fixed shelf.
    shelf: FixedShelf,
    /// The opening above it.
    opening: Opening,
}

/// A pair of core is a record here, so that both halves have names.
macro_rules! pair {
    ($name:ident = ($first:ident: $first_core:ident, $second:ident: $second_core:ident)) => {
        impl Twin for $name {
            type Core = (job::$first_core, job::$second_core);

            fn of(($first, $second): &Self::Core) -> Self {
                Self {
                    $first: Twin::of($first),
                    $second: Twin::of($second),
                }
            }

            fn into_core(self) -> Result<Self::Core, Wrong> {
                let Self { $first, $second } = self;
                Ok((
                    $first
                        .into_core()
                        .map_err(|wrong| wrong.within(stringify!($first)))?,
                    $second
                        .into_core()
                        .map_err(|wrong| wrong.within(stringify!($second)))?,
                ))
            }
        }
    };
}

pair!(NextPart = (partition: Partition, part: Part));
pair!(NextOpening = (shelf: FixedShelf, opening: Opening));

record! {
    /// One of the openings side by side.
    Part = job::Part {
        /// Its clear width in mm, or an equal share of what the others leave.
        width: Measure<job::PartWidth>,
        /// The opening itself.
        opening: Opening,
    }
}

record! {
    /// An upright between two openings.
    Partition = job::Partition {
        /// Its name in the cabinet.
        key: Key,
        /// The board it is made of.
        board: Text<CardId>,
        /// From the carcass front to its front edge, in mm; left out when flush.
        #[serde(default, skip_serializing_if = "plain")]
        recess: Mm,
        /// How its foot meets what it stands on; left out for a plain butt joint.
        #[serde(default, skip_serializing_if = "plain")]
        foot: Joint,
        /// How its head meets what is above; left out for a plain butt joint.
        #[serde(default, skip_serializing_if = "plain")]
        head: Joint,
    }
}

record! {
    /// Openings from the foot up, with a fixed shelf between each two.
    Stacked = job::Stacked {
        /// The lowest opening.
        first: Opening,
        /// Each further fixed shelf and the opening above it.
        rest: Vec<NextOpening>,
    }
}

record! {
    /// A shelf that is fixed between two uprights.
    FixedShelf = job::FixedShelf {
        /// Its name in the cabinet.
        key: Key,
        /// The board it is made of.
        board: Text<CardId>,
        /// The hole its middle is at, or the height of its underside above the carcass underside in mm.
        at: Measure<job::ShelfHeight>,
        /// From the carcass front to its front edge, in mm; left out when flush.
        #[serde(default, skip_serializing_if = "plain")]
        recess: Mm,
        /// How its ends meet the walls; left out for a plain butt joint.
        #[serde(default, skip_serializing_if = "plain")]
        joint: Joint,
    }
}
