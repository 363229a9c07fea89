//! Openings, the panels between them, and what bays own.

use alloc::format;

use super::keys::key;
use super::{Checked, Fault, card, depth, each, length, number, place};
use crate::cards::Cards;
use crate::job::{
    Bay, Division, Front, FrontHeight, Opening, Part, PartWidth, Partition, Runner, ShelfHeight,
};
use crate::measure::range;

/// The most openings within openings.
pub(super) const NESTING_MOST: u8 = 12;

/// How many are in a list whose length was checked.
fn count<T>(list: &[T]) -> i64 {
    i64::try_from(list.len()).unwrap_or(i64::MAX - 1)
}

impl Opening {
    pub(super) fn validate(&self, cards: &Cards, deeper: u8) -> Checked {
        each(&self.fronts, "fronts", Front::validate)?;
        number("fronts", &range::FRONTS, count(&self.fronts))?;
        let Some(deeper) = deeper.checked_sub(1) else {
            return Err(Fault::new(
                "division",
                format!("openings lie in each other more than {NESTING_MOST} deep"),
            ));
        };
        match &self.division {
            Division::Bay(bay) => bay.validate(cards).map_err(|f| f.within("bay")),
            Division::SideBySide(parts) => {
                let part = |part: &Part| {
                    if let PartWidth::Fixed(width) = part.width {
                        length("width", &range::OPENING_SIZE, width)?;
                    }
                    part.opening
                        .validate(cards, deeper)
                        .map_err(|f| f.within("opening"))
                };
                part(&parts.first).map_err(|f| f.within("side_by_side.first"))?;
                each(&parts.rest, "side_by_side.rest", |(partition, next)| {
                    partition
                        .validate(cards)
                        .map_err(|f| f.within("partition"))?;
                    part(next).map_err(|f| f.within("part"))
                })?;
                number("side_by_side", &range::PARTS, count(&parts.rest) + 1)?;
                let typed = parts.parts().filter_map(|part| match part.width {
                    PartWidth::Fixed(width) => Some(width),
                    PartWidth::Equal => None,
                });
                // Rows in rows add up: a length holds twelve of them.
                length("side_by_side", &range::ROW_WIDTHS, typed.sum())
            }
            Division::Stacked(parts) => {
                parts
                    .first
                    .validate(cards, deeper)
                    .map_err(|f| f.within("stacked.first"))?;
                each(&parts.rest, "stacked.rest", |(shelf, opening)| {
                    card(
                        "shelf.board",
                        "board",
                        &shelf.board,
                        cards.board(&shelf.board).is_some(),
                    )?;
                    length("shelf.recess", &range::RECESS, shelf.recess)?;
                    match shelf.at {
                        ShelfHeight::Underside(z) => length("shelf.at", &range::PANEL_POSITION, z)?,
                        ShelfHeight::Hole(hole) => place("shelf.at", hole)?,
                    }
                    shelf
                        .joint
                        .validate()
                        .map_err(|f| f.within("shelf.joint"))?;
                    opening
                        .validate(cards, deeper)
                        .map_err(|f| f.within("opening"))
                })
            }
        }
    }
}

impl Partition {
    fn validate(&self, cards: &Cards) -> Checked {
        card(
            "board",
            "board",
            &self.board,
            cards.board(&self.board).is_some(),
        )?;
        length("recess", &range::RECESS, self.recess)?;
        self.foot.validate().map_err(|f| f.within("foot"))?;
        self.head.validate().map_err(|f| f.within("head"))
    }
}

impl Bay {
    fn validate(&self, cards: &Cards) -> Checked {
        length("recess", &range::RECESS, self.recess)?;
        if let Some(inset) = self.inset {
            if let Some(front) = inset.front {
                length("front", &range::BOARD_THICKNESS, front).map_err(|f| f.within("inset"))?;
            }
            length("set_in", &range::SET_IN, inset.set_in).map_err(|f| f.within("inset"))?;
        }
        each(&self.zones, "zones", |zone| {
            place("first", zone.first)?;
            place("last", zone.last)?;
            depth("depth", zone.depth)
        })?;
        each(&self.shelves, "shelves", |shelf| {
            place("hole", shelf.hole)?;
            card(
                "board",
                "board",
                &shelf.board,
                cards.board(&shelf.board).is_some(),
            )?;
            length("setback_front", &range::SHELF_SETBACK, shelf.setback_front)?;
            length("shorter", &range::SHELF_SHORTER, shelf.shorter)?;
            load(shelf.load_grams)?;
            let clear = shelf.clear;
            clear.map_or(Ok(()), |clear| {
                length("clear", &range::CLEAR_OPENING, clear)
            })
        })?;
        each(&self.plates, "plates", |plate| {
            plate.serves.map_or(Ok(()), |door| key("serves", door))?;
            place("hole", plate.hole)?;
            card(
                "card",
                "hinge",
                &plate.card,
                cards.hinge(&plate.card).is_some(),
            )
        })?;
        each(&self.runners, "runners", |runner| runner.validate(cards))
    }
}

/// The most a shelf is asked to carry, in grams: a tonne, past any board.
pub const SHELF_LOAD_MOST: u32 = 1_000_000;

fn load(grams: Option<u32>) -> Checked {
    match grams {
        Some(grams) if grams > SHELF_LOAD_MOST => Err(Fault::new(
            "load_grams",
            format!("{grams}, but a shelf carries at most {SHELF_LOAD_MOST} g"),
        )),
        _ => Ok(()),
    }
}

impl Runner {
    fn validate(&self, cards: &Cards) -> Checked {
        self.serves.map_or(Ok(()), |front| key("serves", front))?;
        place("hole", self.hole)?;
        let found = cards.runner(&self.card);
        card("card", "runner", &self.card, found.is_some())?;
        if found.is_some_and(|card| card.length(self.length).is_none()) {
            let problem = format!(
                "{}, but the card {} has no such length",
                self.length.exact_mm(),
                self.card
            );
            return Err(Fault::new("length", problem));
        }
        length("left", &range::SPACER, self.spacers.left).map_err(|f| f.within("spacers"))?;
        length("right", &range::SPACER, self.spacers.right).map_err(|f| f.within("spacers"))?;
        number("set_back", &range::SET_BACK, i64::from(self.set_back))
    }
}

/// The most the contents of a drawer weigh, in grams: what no pair of runners carries.
pub const DRAWER_LOAD_MOST: u32 = 500_000;

impl Front {
    fn validate(&self) -> Checked {
        if let Some(grams) = self.load_grams.filter(|grams| *grams > DRAWER_LOAD_MOST) {
            return Err(Fault::new(
                "load_grams",
                format!("{grams}, but a drawer holds at most {DRAWER_LOAD_MOST} g"),
            ));
        }
        if let Some(thickness) = self.thickness {
            length("thickness", &range::BOARD_THICKNESS, thickness)?;
        }
        match self.height {
            FrontHeight::Modules(count) | FrontHeight::Ratio(count) => {
                number("kind", &range::SHARE, i64::from(count))
            }
            FrontHeight::Fixed(height) => length("kind", &range::OPENING_SIZE, height),
        }
    }
}
