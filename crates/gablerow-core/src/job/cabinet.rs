//! One cabinet: its facts and its wishes.

use alloc::vec::Vec;

use super::{
    Acceptance, Back, Bay, Bottom, Carcass, Copy, Datum, Division, EndOffsets, Fit, FreeHole,
    FreeRow, Front, FrontKind, Joint, Key, Label, Opening, PanelId, Shelf, ShelfHeight, Shop,
    Sides, Size, Stand, Top, TopKind,
};
use crate::cards::CardId;
use crate::measure::Length;

/// A frameless cabinet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cabinet {
    /// Its stable name in the job.
    pub key: Key,
    /// What it is called in the shop: `G2`.
    pub name: Label,
    /// Outer sizes.
    pub size: Size,
    /// Where the grid begins.
    pub offsets: EndOffsets,
    /// The box itself.
    pub carcass: Carcass,
    /// The space within.
    pub opening: Opening,
    /// Rows that faces own themselves.
    pub free_rows: Vec<FreeRow>,
    /// Holes that faces own themselves.
    pub free_holes: Vec<FreeHole>,
    /// What is built of it; never empty.
    pub copies: Vec<Copy>,
    /// Findings a person has accepted, with their reason.
    pub accepted: Vec<Acceptance>,
}

impl Cabinet {
    /// A balanced base cabinet of one empty bay, 600 x 704 x 560: 22 holes a row at the usual offset of 16.
    #[must_use]
    pub fn plain(key: Key, name: Label, shop: &Shop) -> Self {
        let mm = Length::from_mm;
        Self {
            key,
            name,
            size: Size {
                width: mm(600),
                height: mm(704),
                depth: mm(560),
            },
            offsets: EndOffsets {
                foot: mm(16),
                head: mm(16),
            },
            carcass: Carcass {
                sides: Sides {
                    board: shop.board.clone(),
                    below: Length::ZERO,
                    notch: None,
                    exposed_left: false,
                    exposed_right: false,
                },
                bottom: Bottom {
                    board: shop.board.clone(),
                    fit: Fit::Between,
                    joint: Joint::default(),
                },
                top: Top {
                    board: shop.board.clone(),
                    kind: TopKind::FlatStretchers(mm(100)),
                    joint: Joint::default(),
                },
                back: Back::Groove {
                    to_front_wall: mm(20),
                    cut: mm(8),
                },
                rail: None,
                stand: None,
            },
            opening: Opening::empty_bay(Key(1)),
            free_rows: Vec::new(),
            free_holes: Vec::new(),
            copies: [Copy {
                key: Key(2),
                name: Label::known("1"),
                mirrored: false,
                as_cut: Vec::new(),
            }]
            .into(),
            accepted: Vec::new(),
        }
    }

    /// A key that nothing in this cabinet has or names; [`Job::free_key`](super::Job::free_key) also asks what was bored.
    #[must_use]
    pub fn free_key(&self) -> Key {
        let mut highest = Key(0);
        self.each_key(&mut |key| highest = highest.max(key));
        self.each_named(&mut |key| highest = highest.max(key));
        highest.next()
    }

    /// Calls `visit` with every key that something in this cabinet names, whether the thing named still is there or not.
    ///
    /// A plate may serve a door that is gone; a new thing of that key would take the plate over.
    pub fn each_named(&self, visit: &mut impl FnMut(Key)) {
        self.opening.each(&mut |opening| {
            if let Division::Bay(bay) = &opening.division {
                let plates = bay.plates.iter().filter_map(|plate| plate.serves);
                let runners = bay.runners.iter().filter_map(|runner| runner.serves);
                plates.chain(runners).for_each(&mut *visit);
            }
        });
        let rows = self.free_rows.iter().map(|row| row.face.panel);
        let holes = self.free_holes.iter().map(|hole| hole.face.panel);
        let measured = self.copies.iter().flat_map(|copy| &copy.as_cut);
        rows.chain(holes)
            .chain(measured.map(|cut| cut.panel))
            .filter_map(PanelId::partition)
            .for_each(visit);
    }

    /// Its bays whose hinges or pins ask for a front row, the lowest key first.
    #[must_use]
    pub fn front_rows(&self) -> Vec<(Key, &Bay)> {
        let mut rows = Vec::new();
        self.opening.each(&mut |opening| {
            if let Division::Bay(bay) = &opening.division
                && bay.has_front_row()
            {
                rows.push((opening.key, bay));
            }
        });
        rows.sort_by_key(|(key, _)| *key);
        rows
    }

    /// Where the places of a fitting, a free row or a fixed shelf are counted from; `None` when it has no hole number.
    #[must_use]
    pub fn datum_of(&self, thing: Key) -> Option<Datum> {
        let row = self.free_rows.iter().find(|row| row.key == thing);
        let mut shelf_at = None;
        self.opening.each(&mut |opening| {
            if let Division::Stacked(parts) = &opening.division {
                let shelf = parts.rest.iter().find(|(shelf, _)| shelf.key == thing);
                shelf_at = shelf_at.or(shelf.map(|(shelf, _)| shelf.at));
            }
        });
        let place = row.map(|row| row.first).or(match shelf_at {
            Some(ShelfHeight::Hole(place)) => Some(place),
            Some(ShelfHeight::Underside(_)) | None => None,
        });
        let of_bay = || self.opening.datum_of(thing);
        place.map(|place| place.datum).or_else(of_bay)
    }

    /// How high its top stands: over the floor, or over its own underside where it hangs.
    #[must_use]
    pub fn standing_height(&self) -> Length {
        match self.carcass.stand {
            Some(Stand::Feet(height) | Stand::Plinth(height)) => self.size.height + height,
            None => self.size.height,
        }
    }

    /// Whether it has drawers: before or behind its doors, or runners that wait for one.
    #[must_use]
    pub fn has_drawers(&self) -> bool {
        let mut found = false;
        self.opening.each(&mut |opening| {
            let is_drawer =
                |front: &Front| matches!(front.kind, FrontKind::Drawer | FrontKind::Inner);
            let runs = matches!(&opening.division, Division::Bay(bay) if !bay.runners.is_empty());
            found |= runs || opening.fronts.iter().any(is_drawer);
        });
        found
    }

    /// The board an upright is made of; `None` for a partition it does not have.
    #[must_use]
    pub fn board_of(&self, panel: PanelId) -> Option<&CardId> {
        let PanelId::Partition(key) = panel else {
            return Some(&self.carcass.sides.board);
        };
        let mut board = None;
        self.opening.each(&mut |opening| {
            if let Division::SideBySide(parts) = &opening.division {
                let mut partitions = parts.rest.iter().map(|(partition, _)| partition);
                let found = partitions.find(|partition| partition.key == key);
                board = board.or(found.map(|partition| &partition.board));
            }
        });
        board
    }

    /// Every loose shelf, bay by bay.
    #[must_use]
    pub fn loose_shelves(&self) -> Vec<&Shelf> {
        let mut shelves = Vec::new();
        self.opening.each(&mut |opening| {
            if let Division::Bay(bay) = &opening.division {
                shelves.extend(&bay.shelves);
            }
        });
        shelves
    }

    /// The loose shelf of a key; `None` for a key that names none.
    #[must_use]
    pub fn loose_shelf(&self, key: Key) -> Option<&Shelf> {
        let mut shelves = self.loose_shelves().into_iter();
        shelves.find(|shelf| shelf.key == key)
    }

    /// Calls `visit` with the key of everything in this cabinet that has one.
    pub fn each_key(&self, visit: &mut impl FnMut(Key)) {
        self.opening.each(&mut |opening| {
            visit(opening.key);
            opening.fronts.iter().for_each(|front| visit(front.key));
            match &opening.division {
                Division::Bay(bay) => {
                    bay.zones.iter().for_each(|zone| visit(zone.key));
                    bay.shelves.iter().for_each(|shelf| visit(shelf.key));
                    bay.plates.iter().for_each(|plate| visit(plate.key));
                    bay.runners.iter().for_each(|runner| visit(runner.key));
                }
                Division::SideBySide(parts) => parts
                    .rest
                    .iter()
                    .for_each(|(partition, _)| visit(partition.key)),
                Division::Stacked(parts) => {
                    parts.rest.iter().for_each(|(shelf, _)| visit(shelf.key));
                }
            }
        });
        self.free_rows.iter().for_each(|row| visit(row.key));
        self.free_holes.iter().for_each(|hole| visit(hole.key));
        self.copies.iter().for_each(|copy| visit(copy.key));
    }
}
