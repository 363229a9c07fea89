//! House defaults and cards.

use alloc::collections::BTreeSet;
use alloc::format;

use super::{Checked, Fault, card, each, length, number};
use crate::cards::{CardId, Cards, Hinge, RunnerLength};
use crate::job::{BoxRules, FrontRules, Shop};
use crate::measure::{Length, range};

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
        for (field, id) in [
            ("front_board", &self.front_board),
            ("box_board", &self.box_board),
        ] {
            if let Some(id) = id {
                card(field, "board", id, cards.board(id).is_some())?;
            }
        }
        self.fronts.validate().map_err(|f| f.within("fronts"))?;
        self.boxes.validate().map_err(|f| f.within("boxes"))?;
        length("thickness", &range::BAND, self.band.thickness).map_err(|f| f.within("band"))?;
        length("pre_mill", &range::BAND, self.band.pre_mill).map_err(|f| f.within("band"))?;
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

impl FrontRules {
    fn validate(&self) -> Checked {
        length("gap", &range::GAP, self.gap)?;
        length("reveal_foot", &range::REVEAL, self.reveal_foot)?;
        length("reveal_head", &range::REVEAL, self.reveal_head)?;
        length("reveal_side", &range::REVEAL, self.reveal_side)?;
        length("gap_inset", &range::GAP, self.gap_inset)
    }
}

impl BoxRules {
    fn validate(&self) -> Checked {
        length("groove", &range::GROOVE_DEPTH, self.groove)?;
        length("step", &range::BOX_STEP, self.step)?;
        for (field, value) in [
            ("below", self.below),
            ("between", self.between),
            ("above", self.above),
            ("rise", self.rise),
            ("rise_least", self.rise_least),
            ("rise_most", self.rise_most),
        ] {
            length(field, &range::BOX_CLEARANCE, value)?;
        }
        Ok(())
    }
}

impl Hinge {
    /// What meets the door: arms, tabs, plates and cup.
    fn validate_door_side(&self) -> Checked {
        let Self { arms, tabs, .. } = self;
        for (field, value) in [
            ("full", arms.full),
            ("half", arms.half),
            ("inset", arms.inset),
        ] {
            length(field, &range::SIGNED_CARD_VALUE, value.value).map_err(|f| f.within("arms"))?;
        }
        length("least", &range::TAB, tabs.least.value).map_err(|f| f.within("tabs"))?;
        length("most", &range::TAB, tabs.most.value).map_err(|f| f.within("tabs"))?;
        length("step", &range::TAB_STEP, tabs.step).map_err(|f| f.within("tabs"))?;
        number(
            "plates",
            &range::PLATES,
            i64::try_from(self.plates.len()).unwrap_or(i64::MAX),
        )?;
        each(&self.plates, "plates", |plate| {
            length("height", &range::SIGNED_CARD_VALUE, *plate)
        })?;
        length("cup", &range::HOLE_DIAMETER, self.cup.value)?;
        length("cup_depth", &range::BORE_DEPTH, self.cup_depth.value)?;
        length("intrusion", &range::CARD_VALUE, self.intrusion.value)?;
        length("adjust", &range::CARD_VALUE, self.adjust.value)
    }
}

/// Lengths of a runner are told apart by their names, and the shortest comes first.
fn ascending(lengths: &[RunnerLength]) -> Checked {
    for (at, pair) in lengths.windows(2).enumerate() {
        let [shorter, longer] = [&pair[0], &pair[1]].map(|length| length.name);
        if shorter >= longer {
            let (longer, shorter) = (longer.exact_mm(), shorter.exact_mm());
            let problem = format!("{longer} after {shorter}, but the shortest comes first");
            return Err(Fault::new(&format!("lengths[{}].name", at + 1), problem));
        }
    }
    Ok(())
}

/// Screws of a runner: the first is where counting starts, and none is further back than a card value goes.
fn steps(steps: &[u8]) -> Checked {
    if steps.first() != Some(&0) || !steps.is_sorted_by(|one, next| one < next) {
        let problem = format!("{steps:?}, but steps begin with 0, and each is more than the last");
        return Err(Fault::new("steps", problem));
    }
    let most = range::CARD_VALUE.max.div_floor(Length::PITCH);
    match steps.last() {
        Some(&last) if i32::from(last) > most => Err(Fault::new(
            &format!("steps[{}]", steps.len() - 1),
            format!("{last}, but a runner has its last screw {most} pitches back at most"),
        )),
        _ => Ok(()),
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
            length("thickness", &range::BOARD_THICKNESS, board.thickness.value)?;
            number("density", &range::DENSITY, i64::from(board.density.value))
        })?;
        each(&self.hinges, "hinges", |hinge| {
            length("half_zone", &range::CARD_VALUE, hinge.half_zone.value)?;
            length("reach", &range::CARD_VALUE, hinge.reach.value)?;
            length("proud", &range::CARD_VALUE, hinge.proud.value)?;
            length("pen", &range::CARD_VALUE, hinge.pen.value)?;
            hinge.validate_door_side()
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
                ("deduct", runner.deduct),
                ("shorter", runner.shorter),
                ("recess", runner.recess),
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
                length("need", &range::CARD_VALUE, made.need.value)?;
                steps(&made.steps)
            })?;
            ascending(&runner.lengths)
        })?;
        each(&self.pins, "pins", |pin| {
            length("pen", &range::CARD_VALUE, pin.pen.value)?;
            length("rise", &range::CARD_VALUE, pin.rise.value)
        })
    }
}
