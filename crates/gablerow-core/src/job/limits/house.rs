//! House defaults and cards.

use alloc::collections::BTreeSet;
use alloc::format;

use super::{Checked, Fault, card, each, length, number};
use crate::cards::{CardKind, CardName, Cards, Connector, Hinge, Rail, Runner, RunnerLength};
use crate::job::{BenchRules, BoxRules, FrontRules, Shop};
use crate::measure::{Length, range};

impl Shop {
    /// Whether the defaults hold only what they can, with these cards.
    ///
    /// # Errors
    /// As [`Job::validate`](crate::job::Job::validate), with places counted from the defaults.
    pub fn validate(&self, cards: &Cards) -> Checked {
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
        for (field, kind, id) in [
            ("front_board", CardKind::Board, &self.front_board),
            ("box_board", CardKind::Board, &self.box_board),
            ("connector", CardKind::Connector, &self.connector),
            ("rail", CardKind::Rail, &self.rail),
        ] {
            if let Some(id) = id {
                let name = CardName {
                    kind,
                    id: id.clone(),
                };
                card(field, kind.word(), id, cards.has(&name))?;
            }
        }
        self.fronts.validate().map_err(|f| f.within("fronts"))?;
        self.boxes.validate().map_err(|f| f.within("boxes"))?;
        self.bench.validate().map_err(|f| f.within("bench"))?;
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
        length("adjust", &range::CARD_VALUE, self.adjust.value)?;
        self.validate_reveals()
    }

    fn validate_reveals(&self) -> Checked {
        let count = i64::try_from(self.reveals.len()).unwrap_or(i64::MAX);
        number("reveals", &range::LEAST_REVEALS, count)?;
        each(&self.reveals, "reveals", |reveal| {
            length("thickness", &range::BOARD_THICKNESS, reveal.thickness)?;
            length("least", &range::REVEAL, reveal.least.value)
        })?;
        for (at, pair) in self.reveals.windows(2).enumerate() {
            let [thinner, thicker] = [&pair[0], &pair[1]].map(|reveal| reveal.thickness);
            if thinner >= thicker {
                let (thicker, thinner) = (thicker.exact_mm(), thinner.exact_mm());
                let problem = format!("{thicker} after {thinner}, but the thinnest comes first");
                let place = format!("reveals[{}].thickness", at + 1);
                return Err(Fault::new(&place, problem));
            }
        }
        Ok(())
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

impl Runner {
    fn validate(&self) -> Checked {
        for (field, value) in [
            ("first_hole", self.first_hole),
            ("stand_back", self.stand_back),
            ("line", self.line),
            ("below", self.below),
            ("above", self.above),
            ("width", self.width),
            ("pen", self.pen),
            ("deduct", self.deduct),
            ("shorter", self.shorter),
            ("recess", self.recess),
        ] {
            length(field, &range::CARD_VALUE, value.value)?;
        }
        if let Some(most) = self.side_most {
            length("side_most", &range::CARD_VALUE, most.value)?;
        }
        if self.lengths.is_empty() {
            return Err(Fault::new(
                "lengths",
                "none, but a runner card needs at least one length",
            ));
        }
        each(&self.lengths, "lengths", |made| {
            length("name", &range::CARD_VALUE, made.name)?;
            length("need", &range::CARD_VALUE, made.need.value)?;
            steps(&made.steps)
        })?;
        ascending(&self.lengths)
    }
}

impl BenchRules {
    fn validate(&self) -> Checked {
        let times = &self.times;
        for (field, seconds) in [
            ("bit", times.bit),
            ("depth", times.depth),
            ("stop", times.stop),
            ("setting", times.setting),
            ("load", times.load),
            ("placement", times.placement),
            ("hole", times.hole),
        ] {
            let checked = number(field, &range::SECONDS, i64::from(seconds));
            checked.map_err(|fault| fault.within("times"))?;
        }
        if let Some(depth) = self.test_depth {
            length("test_depth", &range::BORE_DEPTH, depth)?;
        }
        self.base_off
            .map_or(Ok(()), |off| length("base_off", &range::BASE_OFF, off))
    }
}

impl Connector {
    fn validate(&self) -> Checked {
        length("diameter", &range::HOLE_DIAMETER, self.diameter.value)?;
        length("depth", &range::BORE_DEPTH, self.depth.value)?;
        length("edge", &range::CARD_VALUE, self.edge.value)
    }
}

impl Rail {
    fn validate(&self) -> Checked {
        number(
            "index_holes",
            &range::INDEX_HOLES,
            i64::from(self.index_holes.value),
        )?;
        length("pitch", &range::RAIL_PITCH, self.pitch.value)?;
        number(
            "stops",
            &range::STOP_FACES,
            i64::try_from(self.stops.len()).unwrap_or(i64::MAX),
        )?;
        each(&self.stops, "stops", |stop| {
            length("offset", &range::END_OFFSET, *stop)
        })?;
        for (field, value) in [
            ("reach_least", self.reach_least),
            ("reach_most", self.reach_most),
            ("width", self.width),
            ("support", self.support),
            ("play", self.play),
        ] {
            length(field, &range::CARD_VALUE, value.value)?;
        }
        for (field, value) in [("length", self.bed.length), ("width", self.bed.width)] {
            length(field, &range::BED, value.value).map_err(|fault| fault.within("bed"))?;
        }
        Ok(())
    }
}

/// No two cards of one kind have one id.
fn unique(names: &[CardName], list: &str) -> Checked {
    let mut seen = BTreeSet::new();
    for (at, name) in names.iter().enumerate() {
        if !seen.insert(name) {
            let problem = format!("{}, but an earlier card has that id already", name.id);
            return Err(Fault::new(&format!("{list}[{at}].id"), problem));
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
    /// Whether the cards hold only what cards can.
    ///
    /// # Errors
    /// As [`Job::validate`](crate::job::Job::validate), with places counted from the cards.
    pub fn validate(&self) -> Checked {
        for kind in CardKind::ALL {
            unique(&self.names(kind), kind.plural())?;
        }
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
        each(&self.runners, "runners", Runner::validate)?;
        each(&self.pins, "pins", |pin| {
            length("pen", &range::CARD_VALUE, pin.pen.value)?;
            length("rise", &range::CARD_VALUE, pin.rise.value)?;
            let projection = pin.projection;
            projection.map_or(Ok(()), |out| {
                length("projection", &range::CARD_VALUE, out.value)
            })
        })?;
        each(&self.connectors, "connectors", Connector::validate)?;
        each(&self.rails, "rails", Rail::validate)
    }
}
