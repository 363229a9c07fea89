//! Loose shelves: what is clear between them, how they bend, what tips them.

use alloc::vec::Vec;

use super::{Banded, Grain, Make, Piece};
use crate::cards::Board;
use crate::job::{Key, PinRows, Shelf};
use crate::layout::{BayLayout, SHELF_TO_BACK};
use crate::measure::Length;
use crate::strength::{
    Creep, Limit, SHELF_LOAD_KG, SHELF_TESTS, Sag, Section, Standing, house_limit,
    line_load_of_mass, line_load_of_pressure, load_on_pin, longest_in_house, mass_kg, sag,
    tip_load_kg,
};
use crate::sum::Sum;

/// A loose shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct ShelfPart {
    /// Its name in the cabinet.
    pub key: Key,
    /// The bay it is in.
    pub bay: Key,
    /// The hole of its pins.
    pub hole: i16,
    /// The piece of board: its length lies from left to right.
    pub piece: Piece,
    /// From the carcass underside up to its underside.
    pub underside: Sum,
    /// Clear height under it, down to the shelf below or the floor of its bay.
    pub clear_below: Sum,
    /// Clear height over it, up to the shelf above or the ceiling of its bay.
    pub clear_above: Sum,
    /// How many pins it rests on.
    pub pins: u8,
    /// How far its front edge stands before its front pins; below zero where it stands behind them.
    pub overhang: Length,
    /// What it bears; `None` when its board's card is not there, or when it has no size.
    pub strength: Option<Strength>,
}

/// How a shelf bears its load. An even load; shear left out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// What the shelf itself weighs, in kg.
    pub mass_kg: f64,
    /// The load it is reckoned with, in kg: as typed, else what the house goes by.
    pub load_kg: f64,
    /// Whether that was typed for it.
    pub load_is_typed: bool,
    /// Its sag at once, in mm, under that load and its own weight along its whole length; `None` when the stiffness of its
    /// board is not known.
    pub now: Option<f64>,
    /// Its sag after years; `None` when the creep of its board is not known either.
    pub later: Option<f64>,
    /// Its sag at once, in mm, under the loads of [`SHELF_TESTS`] alone; `None` when the stiffness of its board is not known.
    pub tests: Option<[f64; SHELF_TESTS.len()]>,
    /// The load at its very front edge that tips it, in kg; `None` when none can.
    pub tip_kg: Option<f64>,
    /// What each pin bears when the load stands evenly, in kg.
    pub pin_kg: Option<f64>,
    /// How far it may sag: the limit of the house that is the stricter one at its length.
    pub limit: &'static Limit,
    /// The longest shelf of this board and depth under as much on each mm that keeps the limits of the house after years, in
    /// mm, and the limit that ends it; `None` where the stiffness is not known.
    pub longest: Option<(f64, &'static Limit)>,
}

/// A shelf before its neighbours are known.
struct Placed<'a> {
    shelf: &'a Shelf,
    hole: i16,
    underside: Sum,
    thickness: Length,
}

impl<'a> Make<'a> {
    /// Every loose shelf, bay by bay, from the foot up.
    pub(super) fn shelves(&mut self) -> Vec<ShelfPart> {
        let mut made = Vec::new();
        for (bay, owned) in self.bays() {
            let mut placed: Vec<Placed> = owned
                .shelves
                .iter()
                .map(|shelf| self.placed(shelf))
                .collect();
            placed.sort_by_key(|shelf| shelf.underside.total());
            let pins = match owned.pin_rows {
                PinRows::Two => 4,
                PinRows::Three => 6,
            };
            for at in 0..placed.len() {
                made.extend(self.shelf(bay, &placed, at, pins));
            }
        }
        made
    }

    fn placed(&self, shelf: &'a Shelf) -> Placed<'a> {
        let hole = shelf.hole.number(self.layout.last);
        let pin = self.cards.pin(&self.shop.pin);
        let board = self.cards.board(&shelf.board);
        Placed {
            shelf,
            hole,
            underside: Sum::of("hole", self.layout.height(hole)).plus(
                "rise of the pin",
                pin.map_or(Length::ZERO, |pin| pin.rise.value),
            ),
            thickness: board.map_or(Length::ZERO, |board| board.thickness.value),
        }
    }

    fn shelf(
        &mut self,
        bay: &BayLayout,
        placed: &[Placed],
        at: usize,
        pins: u8,
    ) -> Option<ShelfPart> {
        let Placed {
            shelf,
            hole,
            underside,
            thickness,
        } = placed.get(at)?;
        let below = at.checked_sub(1).and_then(|below| placed.get(below));
        let top = underside.total() + *thickness;
        let clear_below = match below {
            Some(below) => Sum::of("underside", underside.total())
                .less("underside of the shelf below", below.underside.total())
                .less("its thickness", below.thickness),
            None => Sum::of("underside", underside.total()).less("floor", bay.floor.total()),
        };
        let clear_above = match placed.get(at + 1) {
            Some(above) => Sum::of("underside of the shelf above", above.underside.total()),
            None => Sum::of("ceiling", bay.ceiling.total()),
        };
        let front = bay.inner_depth.total() - bay.depth_behind_fronts(self.shop);
        let length = Sum::of("clear width", bay.width).less("shorter", shelf.shorter);
        let depth = Sum::of("inner depth", bay.inner_depth.total())
            .less("front of the bay", front)
            .less("set back", shelf.setback_front)
            .less("before the back panel", SHELF_TO_BACK);
        let overhang = bay.front_row.total() - front - shelf.setback_front;
        let load_kg = shelf.load_grams.map(|grams| f64::from(grams) / 1_000.0);
        let has_size = length.total().min(depth.total()) > Length::ZERO;
        let board = self.cards.board(&shelf.board).filter(|_| has_size);
        let strength = board.map(|board| {
            strength(
                board,
                [length.total(), depth.total()],
                load_kg,
                overhang,
                pins,
            )
        });
        Some(ShelfPart {
            key: shelf.key,
            bay: bay.key,
            hole: *hole,
            piece: self.piece(&shelf.board, [length, depth], Banded::Front, Grain::Across),
            underside: *underside,
            clear_below,
            clear_above: clear_above.less("top of this one", top),
            pins,
            overhang,
            strength,
        })
    }
}

/// How a shelf of a board bears a load: its length and depth, the load in kg where it was typed, how far its front edge
/// stands before its front pins, and how many pins it rests on.
#[must_use]
pub fn strength(
    board: &Board,
    [length, depth]: [Length; 2],
    load_kg: Option<f64>,
    overhang: Length,
    pins: u8,
) -> Strength {
    let thickness = board.thickness.value;
    let goods = load_kg.unwrap_or(SHELF_LOAD_KG);
    let mass_kg = mass_kg(length, depth, thickness, f64::from(board.density.value));
    let creep = Creep {
        board: "as its card has it",
        factor: board
            .creep
            .map_or(1.0, |creep| f64::from(creep.value) / 100.0),
        standing: Standing::HouseGuess,
    };
    let load = line_load_of_mass(goods + mass_kg, length);
    let section = board
        .stiffness
        .map(|stiffness| Section::board(depth, thickness, f64::from(stiffness.value)));
    let bent = section
        .map(|section| sag(section, length, load, &creep))
        .filter(|Sag { now, .. }| now.is_finite());
    let tests = section.map(|section| {
        SHELF_TESTS.map(|test| {
            let load = line_load_of_pressure(test.load.pressure, depth);
            sag(section, length, load, &creep).now
        })
    });
    let longest = section.map(|section| longest_in_house(section, load, &creep));
    Strength {
        mass_kg,
        load_kg: goods,
        load_is_typed: load_kg.is_some(),
        now: bent.map(|sag| sag.now),
        later: bent.filter(|_| board.creep.is_some()).map(|sag| sag.later),
        tests: tests.filter(|sags| sags.iter().all(|sag| sag.is_finite())),
        tip_kg: tip_load_kg(mass_kg, depth, overhang),
        pin_kg: load_on_pin(goods, mass_kg, pins),
        limit: house_limit(length),
        longest: longest.filter(|(span, _)| span.is_finite()),
    }
}
