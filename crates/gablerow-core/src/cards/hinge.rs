//! A hinge card.

use alloc::vec::Vec;

use super::{CardId, Sourced};
use crate::label::Label;
use crate::measure::Length;

/// How the plate of a hinge takes its two holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PlateShape {
    /// Two neighbouring holes of one row; its centre is midway between them.
    AlongRow,
    /// Two holes of one number, in the front row and a second row one pitch behind; its centre is on them.
    InLine,
}

impl PlateShape {
    /// From its hole, of two the lower, up to its centre.
    #[must_use]
    pub fn rise(self) -> Length {
        match self {
            Self::AlongRow => Length::PITCH.half(),
            Self::InLine => Length::ZERO,
        }
    }
}

/// What is known of a hinge and its plate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hinge {
    /// Its stable name.
    pub id: CardId,
    /// What people call it.
    pub title: Label,
    /// How the plate takes its holes.
    pub plate: PlateShape,
    /// Half the height of the space that plate and arm need, up and down from the plate's centre.
    pub half_zone: Sourced<Length>,
    /// How far that space reaches back from the bay's front.
    pub reach: Sourced<Length>,
    /// How far it stands out from the face.
    pub proud: Sourced<Length>,
    /// How deep the plate's screws go in.
    pub pen: Sourced<Length>,
    /// How far a door laps over with no tab, on a plate of height 0.
    pub arms: Arms,
    /// The board that may be left between cup and door edge.
    pub tabs: Tabs,
    /// The heights of plates in stock, lowest first; never empty.
    pub plates: Vec<Length>,
    /// Diameter of the cup.
    pub cup: Sourced<Length>,
    /// How deep the cup goes into the door.
    pub cup_depth: Sourced<Length>,
    /// How far the open door stands into the opening, at the angle it opens to.
    pub intrusion: Sourced<Length>,
    /// How far the door can be moved sideways once it hangs, either way.
    pub adjust: Sourced<Length>,
    /// Which chart says how many hinges a door takes.
    pub chart: CountChart,
    /// What the hinge edge of a door needs beside it, by the thickness of the door, thinnest first; empty until somebody
    /// has looked it up.
    pub reveals: Vec<LeastReveal>,
}

/// What the hinge edge of a door needs beside it to swing past.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct LeastReveal {
    /// Of doors up to this thickness, included.
    pub thickness: Length,
    /// From the hinge edge to whatever stands beside it.
    pub least: Sourced<Length>,
}

impl Hinge {
    /// What the hinge edge of a door so thick needs beside it; of a door thicker than any that is known, what the thickest
    /// known needs. `None` when none is known.
    #[must_use]
    pub fn least_reveal(&self, thickness: Length) -> Option<Sourced<Length>> {
        let up_to = |reveal: &&LeastReveal| thickness <= reveal.thickness;
        let row = self.reveals.iter().find(up_to).or(self.reveals.last());
        row.map(|reveal| reveal.least)
    }
}

/// Overlay of each kind of arm; negative for a door that stands inside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Arms {
    /// Over the whole edge of an upright.
    pub full: Sourced<Length>,
    /// Over half of it.
    pub half: Sourced<Length>,
    /// Inside the opening.
    pub inset: Sourced<Length>,
}

/// The tabs a hinge may be set with, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Tabs {
    /// The least.
    pub least: Sourced<Length>,
    /// The most.
    pub most: Sourced<Length>,
    /// From one to the next.
    pub step: Length,
}

/// A chart of how many hinges a door takes. Makers disagree, so the sheet names the one in use.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CountChart {
    /// The door's height in mm or its mass in kg, whichever asks for more.
    HeightAndMass,
    /// The cabinet's height in inches or the door's mass in pounds.
    Inches,
    /// The door's mass in kg, for widths up to 600.
    MassAndWidth,
}

impl CountChart {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::HeightAndMass, Self::Inches, Self::MassAndWidth];

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::HeightAndMass => "by height and mass",
            Self::Inches => "by height in inches and pounds",
            Self::MassAndWidth => "by mass and width",
        }
    }
}
