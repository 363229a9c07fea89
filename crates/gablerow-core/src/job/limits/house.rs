//! House defaults and cards.

use alloc::collections::BTreeSet;
use alloc::format;

use super::{Checked, Fault, card, each, length};
use crate::cards::{CardId, Cards};
use crate::job::Shop;
use crate::measure::range;

impl Shop {
    pub(super) fn validate(&self, cards: &Cards) -> Checked {
        length("setback_front", &range::SETBACK, self.setback_front)?;
        length("setback_back", &range::SETBACK, self.setback_back)?;
        length("diameter", &range::HOLE_DIAMETER, self.diameter)?;
        length("depth", &range::BORE_DEPTH, self.depth)?;
        card(
            "board",
            "board",
            &self.board,
            cards.board(&self.board).is_some(),
        )?;
        card(
            "hinge",
            "hinge",
            &self.hinge,
            cards.hinge(&self.hinge).is_some(),
        )?;
        card(
            "runner",
            "runner",
            &self.runner,
            cards.runner(&self.runner).is_some(),
        )?;
        card("pin", "pin", &self.pin, cards.pin(&self.pin).is_some())?;
        let limits = &self.limits;
        for (field, value) in [
            ("to_end", limits.to_end),
            ("to_edge", limits.to_edge),
            ("to_back", limits.to_back),
            ("near", limits.near),
            ("skin_flat", limits.skin_flat),
            ("skin_pointed", limits.skin_pointed),
            ("web", limits.web),
            ("spare", limits.spare),
            ("close", limits.close),
        ] {
            length(field, &range::LIMIT, value).map_err(|fault| fault.within("limits"))?;
        }
        Ok(())
    }
}

impl Cards {
    pub(super) fn validate(&self) -> Checked {
        fn unique<'a>(name: &str, ids: impl Iterator<Item = &'a CardId>) -> Checked {
            let mut seen = BTreeSet::new();
            for (at, id) in ids.enumerate() {
                if !seen.insert(id) {
                    let problem = format!("{id}, but an earlier card has that id already");
                    return Err(Fault::new(&format!("{name}[{at}].id"), problem));
                }
            }
            Ok(())
        }
        unique("boards", self.boards.iter().map(|card| &card.id))?;
        unique("hinges", self.hinges.iter().map(|card| &card.id))?;
        unique("runners", self.runners.iter().map(|card| &card.id))?;
        unique("pins", self.pins.iter().map(|card| &card.id))?;
        each(&self.boards, "boards", |board| {
            length("nominal", &range::BOARD_THICKNESS, board.nominal)?;
            length("thickness", &range::BOARD_THICKNESS, board.thickness.value)
        })?;
        each(&self.hinges, "hinges", |hinge| {
            length("half_zone", &range::CARD_VALUE, hinge.half_zone.value)?;
            length("reach", &range::CARD_VALUE, hinge.reach.value)?;
            length("proud", &range::CARD_VALUE, hinge.proud.value)?;
            length("pen", &range::CARD_VALUE, hinge.pen.value)
        })?;
        each(&self.runners, "runners", |runner| {
            for (field, value) in [
                ("first_hole", runner.first_hole),
                ("stand_back", runner.stand_back),
                ("line", runner.line),
                ("below", runner.below),
                ("above", runner.above),
                ("width", runner.width),
                ("pen", runner.pen),
            ] {
                length(field, &range::CARD_VALUE, value.value)?;
            }
            if runner.lengths.is_empty() {
                return Err(Fault::new(
                    "lengths",
                    "none, but a runner card needs at least one length",
                ));
            }
            each(&runner.lengths, "lengths", |made| {
                length("name", &range::CARD_VALUE, made.name)?;
                length("need", &range::CARD_VALUE, made.need.value)
            })
        })?;
        each(&self.pins, "pins", |pin| {
            length("pen", &range::CARD_VALUE, pin.pen.value)?;
            length("rise", &range::CARD_VALUE, pin.rise.value)
        })
    }
}
