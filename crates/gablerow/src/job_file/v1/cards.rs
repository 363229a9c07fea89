//! Twins of the cards.

use gablerow_core::cards;
use gablerow_core::cards::CardId;
use gablerow_core::job::Label;
use serde::{Deserialize, Serialize};

use super::first;
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
        /// What holds two panels together.
        #[serde(default, skip_serializing_if = "plain")]
        connectors: Vec<Connector>,
        /// What guides the drill.
        #[serde(default, skip_serializing_if = "plain")]
        rails: Vec<Rail>,
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
        /// Modulus of elasticity in N/mm2, along the shelf; left out until somebody has looked it up.
        #[serde(default, skip_serializing_if = "plain")]
        stiffness: Option<Sourced<u32>>,
        /// Sag after years as a percentage of the sag at once; left out until somebody has looked it up.
        #[serde(default, skip_serializing_if = "plain")]
        creep: Option<Sourced<u32>>,
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
        /// How far a door laps over with no tab, on a plate of height 0.
        #[serde(default = "first::arms")]
        arms: Arms,
        /// The board that may be left between cup and door edge.
        #[serde(default = "first::tabs")]
        tabs: Tabs,
        /// The heights of plates in stock, in mm; at least one.
        #[serde(default = "first::plates")]
        plates: Vec<Mm>,
        /// Diameter of the cup, in mm.
        #[serde(default = "first::cup")]
        cup: Sourced<Mm>,
        /// How deep the cup goes into the door, in mm.
        #[serde(default = "first::cup_depth")]
        cup_depth: Sourced<Mm>,
        /// How far the open door stands into the opening, in mm.
        #[serde(default = "first::intrusion")]
        intrusion: Sourced<Mm>,
        /// How far the door can be moved sideways once it hangs, either way, in mm.
        #[serde(default = "first::adjust")]
        adjust: Sourced<Mm>,
        /// Which chart says how many hinges a door takes.
        #[serde(default = "first::chart")]
        chart: CountChart,
        /// What the hinge edge of a door needs beside it, thinnest door first; none until somebody has looked it up.
        #[serde(default = "first::reveals")]
        reveals: Vec<LeastReveal>,
    }
}

record! {
    /// What the hinge edge of a door needs beside it to swing past.
    LeastReveal = cards::LeastReveal {
        /// Of doors up to this thickness, in mm, included.
        thickness: Mm,
        /// From the hinge edge to whatever stands beside it, in mm.
        least: Sourced<Mm>,
    }
}

record! {
    /// Overlay of each kind of arm; negative for a door that stands inside.
    Arms = cards::Arms {
        /// Over the whole edge of an upright, in mm.
        full: Sourced<Mm>,
        /// Over half of it, in mm.
        half: Sourced<Mm>,
        /// Inside the opening, in mm.
        inset: Sourced<Mm>,
    }
}

record! {
    /// The tabs a hinge may be set with, both ends included.
    Tabs = cards::Tabs {
        /// The least, in mm.
        least: Sourced<Mm>,
        /// The most, in mm.
        most: Sourced<Mm>,
        /// From one to the next, in mm.
        step: Mm,
    }
}

words! {
    /// A chart of how many hinges a door takes.
    CountChart = cards::CountChart {
        /// By the door's height in mm or its mass in kg.
        HeightAndMass = "height and mass",
        /// By the cabinet's height in inches or the door's mass in pounds.
        Inches = "inches",
        /// By the door's mass in kg, for widths up to 600.
        MassAndWidth = "mass and width",
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
        /// What comes off the clear width to the box, in mm: to its inside where it rides on top, else to its outside.
        #[serde(default = "first::deduct")]
        deduct: Sourced<Mm>,
        /// What comes off the length by name to the length of the box, in mm.
        #[serde(default = "first::shorter")]
        shorter: Sourced<Mm>,
        /// How far the box's bottom stands above the underside of its sides, in mm.
        #[serde(default = "first::recess")]
        recess: Sourced<Mm>,
        /// What a pair carries, in kg.
        #[serde(default = "first::load")]
        load: Sourced<u32>,
        /// The thickest side of a box that it takes, in mm; left out until somebody has looked it up.
        #[serde(default, skip_serializing_if = "plain")]
        side_most: Option<Sourced<Mm>>,
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
        /// How far it stands out of the face under the shelf, in mm; left out until somebody has looked it up.
        #[serde(default, skip_serializing_if = "plain")]
        projection: Option<Sourced<Mm>>,
    }
}

words! {
    /// Whether a connector's hole goes through the panel.
    ConnectorBore = cards::ConnectorBore {
        /// To a depth, from one face.
        Blind = "blind",
        /// Through the panel.
        Through = "through",
    }
}

record! {
    /// What is known of a connector.
    #[cfg_attr(test, schemars(rename = "ConnectorCard"))]
    Connector = cards::Connector {
        /// Its stable name: small letters, digits and hyphens.
        id: Text<CardId>,
        /// What people call it.
        title: Text<Label>,
        /// Whether its hole goes through the panel.
        bore: ConnectorBore,
        /// Diameter of its hole in the face, in mm.
        diameter: Sourced<Mm>,
        /// Depth of that hole where it is blind, in mm.
        depth: Sourced<Mm>,
        /// From the edge that meets the other panel to the centre of the hole, in mm.
        edge: Sourced<Mm>,
    }
}

words! {
    /// What guides the drill.
    RailKind = cards::RailKind {
        /// A rail with index holes.
        IndexedRail = "indexed rail",
        /// A jig held in the hand: a short rail.
        HandJig = "hand jig",
        /// A machine's bed, with a zero corner.
        MachineBed = "machine bed",
    }
}

words! {
    /// A corner of a machine's bed, seen by whoever stands before it.
    Corner = cards::Corner {
        /// Near and left.
        NearLeft = "near left",
        /// Near and right.
        NearRight = "near right",
        /// Far and left.
        FarLeft = "far left",
        /// Far and right.
        FarRight = "far right",
    }
}

words! {
    /// Which axis runs along a bed, from left to right, and which way it grows.
    Along = cards::Along {
        /// x, growing to the right.
        XRight = "x right",
        /// x, growing to the left.
        XLeft = "x left",
        /// y, growing to the right.
        YRight = "y right",
        /// y, growing to the left.
        YLeft = "y left",
    }
}

words! {
    /// Which way the axis grows that runs across a bed.
    Across = cards::Across {
        /// Away from whoever stands before it.
        Away = "away",
        /// Toward them.
        Toward = "toward",
    }
}

record! {
    /// Where a machine counts from, and which way.
    Bed = cards::Bed {
        /// The longest panel that lies on it, from left to right, in mm.
        length: Sourced<Mm>,
        /// The widest, in mm.
        width: Sourced<Mm>,
        /// The corner where both axes are zero, and the panel lies.
        zero: Corner,
        /// The axis along it.
        along: Along,
        /// The axis across it.
        across: Across,
    }
}

record! {
    /// What is known of a rail.
    Rail = cards::Rail {
        /// Its stable name: small letters, digits and hyphens.
        id: Text<CardId>,
        /// What people call it.
        title: Text<Label>,
        /// What it is.
        kind: RailKind,
        /// How many index holes it has.
        index_holes: Sourced<u32>,
        /// From one index hole to the next, in mm.
        pitch: Sourced<Mm>,
        /// The end offsets its stop gives, one for each of the stop's faces, in mm; at least one.
        stops: Vec<Mm>,
        /// The least setback its arm reaches, in mm from the edge on the fence.
        reach_least: Sourced<Mm>,
        /// The most, in mm.
        reach_most: Sourced<Mm>,
        /// How wide it is, across the rows, in mm.
        width: Sourced<Mm>,
        /// How much panel must lie under it beyond the row, in mm.
        support: Sourced<Mm>,
        /// How far a pin moves in an index hole, in mm.
        play: Sourced<Mm>,
        /// A machine's bed; of other rails it says nothing.
        #[serde(default = "first::bed")]
        bed: Bed,
    }
}
