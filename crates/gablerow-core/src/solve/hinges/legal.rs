//! Where on an upright a hinge plate may sit at all.

use alloc::vec::Vec;

use crate::cards::PlateShape;
use crate::grid::{Grid, HoleNumber, Run};
use crate::measure::Length;
use crate::solve::Interval;

/// The front row of one face of an upright, as a hinge sees it.
#[derive(Clone, Copy, Debug)]
pub struct HingeRow<'a> {
    /// The cabinet's grid.
    pub grid: Grid,
    /// The holes the upright has.
    pub holes: Run,
    /// Holes that are used already.
    pub taken: &'a [Run],
    /// Pieces of height that plate and arm must not meet: fixed panels, runners, unspaced boxes. To touch is allowed.
    pub barred: &'a [Interval],
    /// How the plate takes its two holes.
    pub plate: PlateShape,
    /// Half the height of the space that plate and arm need.
    pub half_zone: Length,
}

/// A door, as far as its hinges see it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Door {
    /// Height of its foot, z.
    pub foot: Length,
    /// Its height.
    pub height: Length,
}

impl Door {
    /// Height of its head, z.
    #[must_use]
    pub fn head(self) -> Length {
        self.foot + self.height
    }

    /// The height that is as far from the head as this one from the foot.
    #[must_use]
    pub fn mirror(self, z: Length) -> Length {
        self.foot + self.head() - z
    }
}

/// A place where a plate may sit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LegalCentre {
    /// The lowest hole it takes.
    pub hole: HoleNumber,
    /// The middle of the plate, z.
    pub centre: Length,
}

impl HingeRow<'_> {
    /// The places between two heights, both included, on which a plate makes no new stop; upward.
    #[must_use]
    pub fn legal(&self, from: Length, to: Length) -> Vec<LegalCentre> {
        let last = match self.plate {
            PlateShape::AlongRow => 1,
            PlateShape::InLine => 0,
        };
        let free = |hole: HoleNumber| {
            self.holes.contains(hole) && !self.taken.iter().any(|run| run.contains(hole))
        };
        let place = |hole: HoleNumber| {
            let centre = self.grid.height(hole) + self.plate.rise();
            let zone = Interval::around(centre, self.half_zone);
            let legal = (from <= centre && centre <= to)
                && free(hole)
                && hole.up(last).is_some_and(free)
                && !self.barred.iter().any(|barred| barred.meets(zone));
            legal.then_some(LegalCentre { hole, centre })
        };
        self.holes.holes().filter_map(place).collect()
    }

    /// How far apart the middles of two plates are at least: neither their holes nor their spaces meet.
    #[must_use]
    pub fn apart(&self) -> Length {
        let holes = match self.plate {
            PlateShape::AlongRow => Length::PITCH * 2,
            PlateShape::InLine => Length::PITCH,
        };
        holes.max(self.half_zone * 2)
    }
}
