//! Twins of the cards.

use gablerow_core::cards;
use gablerow_core::cards::CardId;
use gablerow_core::job::Label;
use serde::{Deserialize, Serialize};

use super::measure::Mm;
use super::text::Text;
use super::twin::{Twin, plain, record, words};
use crate::job_file::wrong::Wrong;

record! {
    /// All cards of the job.
    Cards = cards::Cards {
        /// Boards.
        #[serde(default, skip_serializing_if = "plain")]
        boards: Vec<Board>,
        /// Hinges.
        #[serde(default, skip_serializing_if = "plain")]
        hinges: Vec<Hinge>,
        /// Drawer runners.
        #[serde(default, skip_serializing_if = "plain")]
        runners: Vec<Runner>,
        /// Shelf pins.
        #[serde(default, skip_serializing_if = "plain")]
        pins: Vec<Pin>,
    }
}

words! {
    /// Where a card's value comes from.
    Origin = cards::Origin {
        /// Read from the data sheet.
        DataSheet = "data sheet",
        /// What the shop goes by until the data sheet is at hand.
        HouseGuess = "house guess",
        /// Made up, to have something to work with.
        Invented = "invented",
    }
}

/// A value and where it comes from.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(expecting = "a value and its origin, such as [18.2, \"data sheet\"]")]
pub(in crate::job_file) struct Sourced<T>(T, Origin);

impl<T: Twin> Twin for Sourced<T> {
    type Core = cards::Sourced<T::Core>;

    fn of(core: &Self::Core) -> Self {
        let cards::Sourced { value, origin } = core;
        Self(T::of(value), Origin::of(origin))
    }

    fn into_core(self) -> Result<Self::Core, Wrong> {
        let Self(value, origin) = self;
        Ok(cards::Sourced {
            value: value.into_core().map_err(|wrong| wrong.within_item(0))?,
            origin: origin.into_core().map_err(|wrong| wrong.within_item(1))?,
        })
    }
}

record! {
    /// What is known of a board.
    Board = cards::Board {
        /// Its stable name: small letters, digits and hyphens.
        id: Text<CardId>,
        /// What people call it.
        title: Text<Label>,
        /// Thickness by name, in mm.
        nominal: Mm,
        /// Thickness measured, in mm; every formula uses it.
        thickness: Sourced<Mm>,
        /// Mass in kg/m3.
        density: Sourced<u32>,
    }
}

words! {
    /// How the plate of a hinge takes its two holes.
    PlateShape = cards::PlateShape {
        /// Two neighbouring holes of one row.
        AlongRow = "along the row",
        /// Two holes of one number, in the front row and one pitch behind it.
        InLine = "in line",
    }
}

record! {
    /// What is known of a hinge and its plate.
    Hinge = cards::Hinge {
        /// Its stable name: small letters, digits and hyphens.
        id: Text<CardId>,
        /// What people call it.
        title: Text<Label>,
        /// How the plate takes its holes.
        plate: PlateShape,
        /// Half the height of the space that plate and arm need, in mm, up and down from the plate's centre.
        half_zone: Sourced<Mm>,
        /// How far that space reaches back from the bay's front, in mm.
        reach: Sourced<Mm>,
        /// How far it stands out from the face, in mm.
        proud: Sourced<Mm>,
        /// How deep the plate's screws go in, in mm.
        pen: Sourced<Mm>,
    }
}

words! {
    /// How a drawer box sits on its runners.
    RunnerKind = cards::RunnerKind {
        /// On top of them; they are hidden.
        Undermount = "undermount",
        /// Between them.
        SideMount = "side mount",
    }
}

record! {
    /// What is known of a drawer runner.
    #[cfg_attr(test, schemars(rename = "RunnerCard"))]
    Runner = cards::Runner {
        /// Its stable name: small letters, digits and hyphens.
        id: Text<CardId>,
        /// What people call it.
        title: Text<Label>,
        /// How the box sits on it.
        kind: RunnerKind,
        /// From the runner's own front end to its first hole, in mm.
        first_hole: Sourced<Mm>,
        /// How far its front end stands behind the panel's front edge, in mm.
        stand_back: Sourced<Mm>,
        /// From the box's underside up to the screw line, in mm.
        line: Sourced<Mm>,
        /// The space it needs below the screw line, in mm.
        below: Sourced<Mm>,
        /// The space it needs above the screw line, in mm.
        above: Sourced<Mm>,
        /// How far it stands out from the face, in mm.
        width: Sourced<Mm>,
        /// How deep its screws go in, in mm.
        pen: Sourced<Mm>,
        /// The lengths it comes in, shortest first; at least one.
        lengths: Vec<RunnerLength>,
    }
}

record! {
    /// One of the lengths a runner comes in.
    RunnerLength = cards::RunnerLength {
        /// The length by name, in mm.
        name: Mm,
        /// The inner depth it needs, in mm.
        need: Sourced<Mm>,
        /// Whole pitches from the first screw to each screw, the first being 0; ascending.
        steps: Vec<u8>,
    }
}

record! {
    /// What is known of a shelf pin.
    Pin = cards::Pin {
        /// Its stable name: small letters, digits and hyphens.
        id: Text<CardId>,
        /// What people call it.
        title: Text<Label>,
        /// How deep it goes in, in mm.
        pen: Sourced<Mm>,
        /// From the hole's centre up to the underside of the shelf on it, in mm.
        rise: Sourced<Mm>,
    }
}
