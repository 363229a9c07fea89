//! The clear spaces of a cabinet: bays, openings side by side, openings above each other.
//!
//! ```text
//!   side by side                     above each other
//!   +------+ +------+ +------+       +--------------+
//!   | part | | part | | part |       |     part     |  listed from the foot up
//!   +------+ +------+ +------+       +== fixed =====+
//!           partitions between       |     part     |
//!                                    +--------------+
//! ```

use alloc::boxed::Box;
use alloc::vec::Vec;

use super::{CardId, Datum, Front, HolePlace, Key, PinRows, Plate, Runner, Shelf, Zone};
use crate::measure::Length;

/// A clear space, and the fronts that close it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opening {
    /// Its name in the cabinet.
    pub key: Key,
    /// What is in it.
    pub division: Division,
    /// Doors and drawers over it; wishes. A door over two bays belongs to the opening that holds both.
    pub fronts: Vec<Front>,
}

/// How an opening is divided.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Division {
    /// Not at all: one bay.
    Bay(Bay),
    /// Into parts from left to right.
    SideBySide(Box<SideBySide>),
    /// Into parts from the foot up.
    Stacked(Box<Stacked>),
}

/// The clear space between two walls, and what it owns.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Bay {
    /// From the carcass front to the front of this bay: its rows and hardware move back by it.
    pub recess: Length,
    /// Set when the fronts stand inside the opening.
    pub inset: Option<Inset>,
    /// Which rows carry pins.
    pub pin_rows: PinRows,
    /// Runs of pin holes.
    pub zones: Vec<Zone>,
    /// Loose shelves.
    pub shelves: Vec<Shelf>,
    /// Hinge plates.
    pub plates: Vec<Plate>,
    /// Drawer runners.
    pub runners: Vec<Runner>,
}

/// Fronts that stand inside the opening.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Inset {
    /// Thickness of the front; `None` is that of the shop's front board, as measured.
    pub front: Option<Length>,
    /// How far its face stands behind the front of the bay, which a recess moves back.
    pub set_in: Length,
}

/// Openings from left to right, with a partition between each two.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SideBySide {
    /// The leftmost opening and its width.
    pub first: Part,
    /// Each further partition and the opening on its right.
    pub rest: Vec<(Partition, Part)>,
}

/// One of the openings side by side.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// How its clear width is found.
    pub width: PartWidth,
    /// The opening itself.
    pub opening: Opening,
}

/// How the clear width of one of several openings is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PartWidth {
    /// So wide. When every part is fixed, what they leave over is said.
    Fixed(Length),
    /// An equal share of what the fixed ones leave.
    Equal,
}

/// An upright between two openings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Partition {
    /// Its name in the cabinet.
    pub key: Key,
    /// The board it is made of.
    pub board: CardId,
    /// From the carcass front to its front edge.
    pub recess: Length,
    /// How its foot meets what it stands on.
    pub foot: Joint,
    /// How its head meets what is above.
    pub head: Joint,
}

/// How the end of one panel meets the face of another. A joint owns the bores of its own fasteners.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Joint {
    /// How deep the end is let into the face; 0 is a butt joint.
    pub housing: Length,
    /// The end runs past that panel to its far face, so that the joint is no end at all.
    pub runs_past: bool,
    /// Bores for dowels and connectors, at the middle of the board's thickness.
    pub bores: Vec<JointBore>,
}

/// One bore of a joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct JointBore {
    /// From the carcass front to its centre.
    pub x: Length,
    /// Its diameter.
    pub diameter: Length,
    /// How deep it goes into the face; `None` is through.
    pub depth: Option<Length>,
    /// What it takes.
    pub fastener: Fastener,
}

/// What a joint is held by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fastener {
    /// A dowel.
    Dowel,
    /// A screw or a screwed connector.
    Connector,
}

/// Openings from the foot up, with a fixed shelf between each two.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stacked {
    /// The lowest opening.
    pub first: Opening,
    /// Each further fixed shelf and the opening above it.
    pub rest: Vec<(FixedShelf, Opening)>,
}

/// A shelf that is fixed between two uprights.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FixedShelf {
    /// Its name in the cabinet.
    pub key: Key,
    /// The board it is made of.
    pub board: CardId,
    /// Where its underside is.
    pub at: ShelfHeight,
    /// From the carcass front to its front edge.
    pub recess: Length,
    /// How its ends meet the walls.
    pub joint: Joint,
}

/// The height of a fixed shelf; its joint owns it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ShelfHeight {
    /// The middle of its thickness at a hole.
    Hole(HolePlace),
    /// Its underside at any height above the carcass underside.
    Underside(Length),
}

impl Opening {
    /// A bay with nothing in it yet.
    #[must_use]
    pub fn empty_bay(key: Key) -> Self {
        Self {
            key,
            division: Division::Bay(Bay::default()),
            fronts: Vec::new(),
        }
    }

    /// Calls `visit` with every opening of this tree, outer ones first, left to right and from the foot up.
    pub fn each<'a>(&'a self, visit: &mut impl FnMut(&'a Opening)) {
        visit(self);
        match &self.division {
            Division::Bay(_) => {}
            Division::SideBySide(parts) => {
                parts.first.opening.each(visit);
                parts
                    .rest
                    .iter()
                    .for_each(|(_, part)| part.opening.each(visit));
            }
            Division::Stacked(parts) => {
                parts.first.each(visit);
                parts
                    .rest
                    .iter()
                    .for_each(|(_, opening)| opening.each(visit));
            }
        }
    }

    /// Calls `visit` with the openings this one is divided into, left to right or from the foot up.
    pub fn each_part<'a>(&'a self, visit: &mut impl FnMut(&'a Opening)) {
        match &self.division {
            Division::Bay(_) => {}
            Division::SideBySide(parts) => parts.parts().for_each(|part| visit(&part.opening)),
            Division::Stacked(parts) => {
                visit(&parts.first);
                parts.rest.iter().for_each(|(_, opening)| visit(opening));
            }
        }
    }

    /// Calls `change` with every opening of this tree, to be changed, outer ones first.
    pub fn each_mut(&mut self, change: &mut impl FnMut(&mut Opening)) {
        change(self);
        match &mut self.division {
            Division::Bay(_) => {}
            Division::SideBySide(parts) => {
                parts
                    .openings_mut()
                    .for_each(|opening| opening.each_mut(change));
            }
            Division::Stacked(parts) => parts
                .openings_mut()
                .for_each(|opening| opening.each_mut(change)),
        }
    }

    /// The bay with this key.
    #[must_use]
    pub fn bay(&self, key: Key) -> Option<&Bay> {
        let mut found = None;
        self.each(&mut |opening| {
            if let (true, Division::Bay(bay)) = (opening.key == key, &opening.division) {
                found = Some(bay);
            }
        });
        found
    }

    /// The front with this key, in this opening or one within it.
    #[must_use]
    pub fn front(&self, key: Key) -> Option<&Front> {
        let mut found = None;
        self.each(&mut |opening| {
            found = found.or(opening.fronts.iter().find(|front| front.key == key));
        });
        found
    }

    /// Where the places of a fitting are counted from; `None` when no bay has it. A zone says it by its lowest hole.
    #[must_use]
    pub fn datum_of(&self, fitting: Key) -> Option<Datum> {
        let mut found = None;
        self.each(&mut |opening| {
            let Division::Bay(bay) = &opening.division else {
                return;
            };
            let zones = bay.zones.iter().map(|zone| (zone.key, zone.first));
            let shelves = bay.shelves.iter().map(|shelf| (shelf.key, shelf.hole));
            let plates = bay.plates.iter().map(|plate| (plate.key, plate.hole));
            let runners = bay.runners.iter().map(|runner| (runner.key, runner.hole));
            let mut places = zones.chain(shelves).chain(plates).chain(runners);
            found = found.or(places
                .find(|(key, _)| *key == fitting)
                .map(|(_, place)| place.datum));
        });
        found
    }

    /// The bay with this key, to be changed.
    pub fn bay_mut(&mut self, key: Key) -> Option<&mut Bay> {
        let mine = self.key == key;
        match &mut self.division {
            Division::Bay(bay) => mine.then_some(bay),
            Division::SideBySide(parts) => parts
                .openings_mut()
                .find_map(|opening| opening.bay_mut(key)),
            Division::Stacked(parts) => parts
                .openings_mut()
                .find_map(|opening| opening.bay_mut(key)),
        }
    }

    /// Calls `change` with every bay of this tree, to be changed.
    pub fn each_bay_mut(&mut self, change: &mut impl FnMut(&mut Bay)) {
        match &mut self.division {
            Division::Bay(bay) => change(bay),
            Division::SideBySide(parts) => parts
                .openings_mut()
                .for_each(|opening| opening.each_bay_mut(change)),
            Division::Stacked(parts) => parts
                .openings_mut()
                .for_each(|opening| opening.each_bay_mut(change)),
        }
    }
}

impl Bay {
    /// Whether hinges or pins ask for holes in its front row.
    #[must_use]
    pub fn has_front_row(&self) -> bool {
        !(self.plates.is_empty() && self.zones.is_empty() && self.shelves.is_empty())
    }

    /// Whether no zone, shelf, plate or runner is in it.
    #[must_use]
    pub fn holds_nothing(&self) -> bool {
        self.zones.is_empty()
            && self.shelves.is_empty()
            && self.plates.is_empty()
            && self.runners.is_empty()
    }
}

impl SideBySide {
    /// The parts from left to right.
    pub fn parts(&self) -> impl Iterator<Item = &Part> {
        core::iter::once(&self.first).chain(self.rest.iter().map(|(_, part)| part))
    }

    /// The part so many from the left, the first being 0.
    #[must_use]
    pub fn part(&self, at: usize) -> Option<&Part> {
        self.parts().nth(at)
    }

    /// The parts from left to right, to be changed.
    pub fn parts_mut(&mut self) -> impl Iterator<Item = &mut Part> {
        core::iter::once(&mut self.first).chain(self.rest.iter_mut().map(|(_, part)| part))
    }

    fn openings_mut(&mut self) -> impl Iterator<Item = &mut Opening> {
        self.parts_mut().map(|part| &mut part.opening)
    }
}

impl Stacked {
    /// The openings from the foot up, to be changed.
    pub fn openings_mut(&mut self) -> impl Iterator<Item = &mut Opening> {
        core::iter::once(&mut self.first).chain(self.rest.iter_mut().map(|(_, opening)| opening))
    }
}
