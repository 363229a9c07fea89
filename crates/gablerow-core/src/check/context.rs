//! What every check looks at, and how it names things.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::door::Door;
use super::{Place, Strand, strands};
use crate::cards::{Hinge, PlateShape, Runner as RunnerCard};
use crate::job::{
    Bay, Cabinet, Copy, Division, HolePlace, Job, Key, Limits, Names, PanelId, Plate, Shop,
};
use crate::layout::{BayLayout, BoreSpec, Face, Layout, Upright, Use};
use crate::measure::{Length, Unit};
use crate::parts::{BoxFit, ShelfPart, loose_shelves};

/// One cabinet, what it goes by, and what it comes to.
#[derive(Clone, Copy)]
pub(super) struct Context<'a> {
    pub(super) job: &'a Job,
    pub(super) cabinet: &'a Cabinet,
    pub(super) layout: &'a Layout,
    /// The doors that hang.
    pub(super) doors: &'a [Door<'a>],
    /// The boxes of its drawers.
    pub(super) boxes: &'a [BoxFit<'a>],
    /// What lengths are said in.
    pub(super) unit: Unit,
}

/// Something of a cabinet in words, and the bay it belongs to.
struct Named {
    words: String,
    bay: Option<Key>,
    /// First and last hole number, on the grid or off it.
    holes: Option<(i16, i16)>,
}

impl Named {
    fn unnumbered(words: String) -> Self {
        Self {
            words,
            bay: None,
            holes: None,
        }
    }
}

impl<'a> Context<'a> {
    pub(super) fn shop(&self) -> &'a Shop {
        &self.job.shop
    }

    pub(super) fn limits(&self) -> &'a Limits {
        &self.job.shop.limits
    }

    /// From one length to another: `330.0-348.0`. Inches have blanks and signs of their own, so they take a word between.
    pub(super) fn span(&self, from: Length, to: Length) -> String {
        let [from, to] = [from, to].map(|length| length.show(self.unit));
        match self.unit {
            Unit::Millimetre => format!("{from}-{to}"),
            Unit::Inch => format!("{from} to {to}"),
        }
    }

    /// The whole cabinet as a place.
    pub(super) fn here(&self) -> Place {
        Place::of(self.cabinet.key)
    }

    /// A panel by the name it has on its copy: `the left side of copy 2`.
    pub(super) fn panel_of(&self, copy: &Copy, panel: PanelId) -> String {
        let names = Names::of(&self.cabinet.built_as(copy).opening);
        format!("the {} of copy {}", names.panel(panel), copy.name)
    }

    /// Every face, and the upright it is on.
    pub(super) fn faces(&self) -> impl Iterator<Item = (&'a Upright, &'a Face)> {
        let of = |upright: &'a Upright| upright.faces.iter().map(move |face| (upright, face));
        self.layout.uprights.iter().flat_map(of)
    }

    /// Every hole of every face, as strands.
    pub(super) fn strands(&self) -> impl Iterator<Item = (&'a Upright, &'a Face, Strand<'a>)> {
        let layout = self.layout;
        self.faces().flat_map(move |(upright, face)| {
            strands(face, layout).map(move |strand| (upright, face, strand))
        })
    }

    /// Every bay, laid out and as it is asked for.
    pub(super) fn bays(&self) -> impl Iterator<Item = (&'a BayLayout, &'a Bay)> {
        let opening = &self.cabinet.opening;
        self.layout
            .bays
            .iter()
            .filter_map(move |made| Some((made, opening.bay(made.key)?)))
    }

    /// Every loose shelf as it is made, bay by bay, from the foot up.
    pub(super) fn loose_shelves(&self) -> Vec<ShelfPart> {
        loose_shelves(self.cabinet, self.layout, self.job)
    }

    /// A bay as it is laid out.
    pub(super) fn bay(&self, key: Key) -> Option<&'a BayLayout> {
        self.layout.bays.iter().find(|bay| bay.key == key)
    }

    /// At a hole of a bay where the grid has it: on its left wall, where a person looks first; the right one is alike.
    pub(super) fn at_hole(&self, bay: Key, number: i16) -> Place {
        let here = self.here();
        let place = self.bay(bay).map_or(here, |bay| here.on(bay.left));
        if (1..=self.layout.last).contains(&number) {
            place.holes((number, number))
        } else {
            place
        }
    }

    /// Whose hole it is: `pins 1-8`, `hinge plate on 3-4`, and of which bay when there are several.
    pub(super) fn owner(&self, spec: &BoreSpec) -> String {
        self.with_bay(self.owner_named(spec))
    }

    /// Whose holes two are, the bay said once when it is the same.
    pub(super) fn owners(&self, a: &BoreSpec, b: &BoreSpec) -> String {
        self.both(self.owner_named(a), self.owner_named(b))
    }

    /// A fitting by its key.
    pub(super) fn fitting(&self, key: Key) -> String {
        self.with_bay(self.named(key))
    }

    /// Two fittings by their keys, the bay said once when it is the same.
    pub(super) fn fittings(&self, a: Key, b: Key) -> String {
        self.both(self.named(a), self.named(b))
    }

    fn both(&self, a: Named, b: Named) -> String {
        if a.bay == b.bay {
            let words = format!("{} and {}", a.words, b.words);
            return self.with_bay(Named { words, ..a });
        }
        format!("{} and {}", self.with_bay(a), self.with_bay(b))
    }

    /// A cabinet of one bay need not name it.
    fn with_bay(&self, named: Named) -> String {
        match named.bay {
            Some(bay) if self.layout.names.bays() > 1 => {
                format!("{} in {}", named.words, self.opening(bay))
            }
            _ => named.words,
        }
    }

    /// A bay or another opening by its key: `bay 2`, `bays 1-3`.
    pub(super) fn opening(&self, key: Key) -> String {
        let name = self.layout.names.opening(key);
        name.map_or_else(|| "a bay that is not there".into(), |name| name.to_string())
    }

    fn owner_named(&self, spec: &BoreSpec) -> Named {
        match spec.use_ {
            Use::Dowel => Named::unnumbered("joint dowel".to_string()),
            Use::Connector => Named::unnumbered("joint connector".to_string()),
            Use::Pin | Use::Plate | Use::Runner | Use::Free => self.named(spec.owner),
        }
    }

    /// The hole numbers a fitting of a bay has; they may lie off the grid.
    pub(super) fn fitting_holes(&self, key: Key) -> Option<(i16, i16)> {
        self.named(key).holes
    }

    /// The drawer box on a pair of runners, by the key of those: `drawer box on 5`.
    pub(super) fn drawer_box(&self, runner: Key) -> String {
        self.with_bay(self.named_box(runner))
    }

    /// A drawer box by its runners and another thing by its key, the bay said once when it is the same.
    pub(super) fn drawer_box_and(&self, runner: Key, other: Key, other_is_box: bool) -> String {
        let other = if other_is_box {
            self.named_box(other)
        } else {
            self.named(other)
        };
        self.both(self.named_box(runner), other)
    }

    fn named_box(&self, runner: Key) -> Named {
        let named = self.named(runner);
        let (first, last) = named.holes.unwrap_or_default();
        Named {
            words: format!("drawer box on {}", range(first, last)),
            ..named
        }
    }

    /// What a front is called.
    pub(super) fn front(&self, key: Key) -> &'a str {
        let front = self.cabinet.opening.front(key);
        front.map_or("its front", |front| front.name.as_str())
    }

    /// Whether a value of the card of a hinge plate, or of one of a runner, still is a guess.
    pub(super) fn is_guess(
        &self,
        key: Key,
        of_hinge: impl Fn(&Hinge) -> bool,
        of_runner: impl Fn(&RunnerCard) -> bool,
    ) -> bool {
        let cards = &self.job.cards;
        self.bays().any(|(_, bay)| {
            let plate = bay.plates.iter().find(|plate| plate.key == key);
            let runner = bay.runners.iter().find(|runner| runner.key == key);
            let hinge = plate.and_then(|plate| cards.hinge(&plate.card));
            let slide = runner.and_then(|runner| cards.runner(&runner.card));
            hinge.is_some_and(&of_hinge) || slide.is_some_and(&of_runner)
        })
    }

    /// A place at the holes of a fitting, where they are on the grid.
    pub(super) fn at_fitting(&self, place: Place, fitting: Key) -> Place {
        let on_grid = |&(first, last): &(i16, i16)| first >= 1 && last <= self.layout.last;
        let holes = self.fitting_holes(fitting).filter(on_grid);
        holes.map_or(place, |holes| place.holes(holes))
    }

    /// Whether the height a hinge or a runner needs still is a guess.
    pub(super) fn height_is_guess(&self, key: Key) -> bool {
        self.is_guess(
            key,
            |hinge| hinge.half_zone.origin.is_unproved(),
            |runner| runner.below.origin.is_unproved() || runner.above.origin.is_unproved(),
        )
    }

    fn named(&self, key: Key) -> Named {
        let mut found = None;
        self.cabinet
            .opening
            .each(&mut |opening| match &opening.division {
                Division::Bay(bay) => found = found.take().or(self.in_bay(bay, opening.key, key)),
                Division::Stacked(parts) => {
                    if parts.rest.iter().any(|(shelf, _)| shelf.key == key) {
                        let number = self.layout.names.shelf(key).unwrap_or_default();
                        found = Some(Named::unnumbered(format!("fixed shelf {number}")));
                    }
                }
                Division::SideBySide(_) => {}
            });
        found.unwrap_or_else(|| Named::unnumbered(self.free(key)))
    }

    fn in_bay(&self, bay: &Bay, bay_key: Key, key: Key) -> Option<Named> {
        let number = |place: HolePlace| place.number(self.layout.last);
        let one = |words: &'static str, place| (words, number(place), number(place));
        let zone = bay.zones.iter().find(|zone| zone.key == key);
        let shelf = bay.shelves.iter().find(|shelf| shelf.key == key);
        let plate = bay.plates.iter().find(|plate| plate.key == key);
        let runner = bay.runners.iter().find(|runner| runner.key == key);
        let (words, a, b) = zone
            .map(|zone| ("pins", number(zone.first), number(zone.last)))
            .or(shelf.map(|shelf| one("shelf on", shelf.hole)))
            .or(plate.map(|plate| self.plate(plate)))
            .or(runner.map(|runner| one("runner on", runner.hole)))?;
        Some(Named {
            words: format!("{words} {}", range(a, b)),
            bay: Some(bay_key),
            holes: Some((a.min(b), a.max(b))),
        })
    }

    fn plate(&self, plate: &Plate) -> (&'static str, i16, i16) {
        let first = plate.hole.number(self.layout.last);
        let card = self.job.cards.hinge(&plate.card);
        let along = card.is_some_and(|card| card.plate == PlateShape::AlongRow);
        ("hinge plate on", first, first + i16::from(along))
    }

    fn free(&self, key: Key) -> String {
        if let Some(row) = self.cabinet.free_rows.iter().find(|row| row.key == key) {
            return format!("free row \"{}\"", row.purpose);
        }
        let hole = self.cabinet.free_holes.iter().find(|hole| hole.key == key);
        hole.map_or_else(
            || "joint".to_string(),
            |hole| format!("free hole \"{}\"", hole.purpose),
        )
    }

    /// A hole, holes or a single bore, and whose they are: `hole 1 of pins 1-8`, `free hole "lock"`.
    pub(super) fn subject(&self, strand: &Strand) -> String {
        let owner = self.owner(strand.spec);
        match strand.holes {
            Some(_) => format!("{} of {owner}", holes(self, strand)),
            None => owner,
        }
    }
}

/// `3-4`, or `3` when both are one; in whichever order they come.
pub(super) fn range(a: i16, b: i16) -> String {
    if a == b {
        a.to_string()
    } else {
        format!("{}-{}", a.min(b), a.max(b))
    }
}

/// `hole 3`, `holes 3-4`, or where a single bore is.
pub(super) fn holes(cx: &Context, strand: &Strand) -> String {
    match strand.holes {
        Some((first, last)) if first == last => format!("hole {first}"),
        Some((first, last)) => format!("holes {}", range(first, last)),
        None => {
            let [x, z] = [strand.x, strand.low].map(|length| length.show(cx.unit));
            format!("the hole at x {x}, z {z}")
        }
    }
}

/// `is` or `are`.
pub(super) fn is(strand: &Strand) -> &'static str {
    if strand.count() == 1 { "is" } else { "are" }
}

/// What a sentence that leans on a card begins with, while that value still is a guess.
pub(super) fn doubt(unproved: bool) -> &'static str {
    if unproved {
        "check the data sheet: "
    } else {
        ""
    }
}
