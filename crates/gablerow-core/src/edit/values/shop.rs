//! The table of the house defaults.

use super::slot::Slot;
use super::{Lines, Place, Quantity, Table};
use crate::cards::CardKind;
use crate::job::{Band, BenchRules, BoxRules, FrontRules, Limits, Shop};
use crate::measure::Length;
use crate::measure::range::{self, Range};

impl Table for Shop {
    fn each(&mut self, visit: &mut dyn FnMut(Place<'_>)) {
        let mut lines = Lines {
            visit,
            group: "",
            length: None,
        };
        rows(&mut lines, self);
        cards(&mut lines, self);
        fronts(&mut lines, &mut self.fronts);
        band(&mut lines, &mut self.band);
        boxes(&mut lines, &mut self.boxes);
        bench(&mut lines, &mut self.bench);
        limits(&mut lines, &mut self.limits);
    }
}

fn length(lines: &mut Lines<'_>, words: &'static str, range: &'static Range, value: &mut Length) {
    lines.place(words, Quantity::Length(range), Slot::Length(value));
}

fn rows(lines: &mut Lines<'_>, shop: &mut Shop) {
    lines.group = "rows";
    length(lines, "front row", &range::SETBACK, &mut shop.setback_front);
    length(lines, "back row", &range::SETBACK, &mut shop.setback_back);
    lines.place(
        "back rule",
        Quantity::Choice,
        Slot::Choice(&mut shop.back_rule),
    );
    length(
        lines,
        "hole diameter",
        &range::HOLE_DIAMETER,
        &mut shop.diameter,
    );
    length(lines, "bore depth", &range::BORE_DEPTH, &mut shop.depth);
    lines.place("bit", Quantity::Choice, Slot::Choice(&mut shop.bit));
    lines.place("stops", Quantity::Choice, Slot::Choice(&mut shop.reference));
}

fn cards(lines: &mut Lines<'_>, shop: &mut Shop) {
    lines.group = "cards";
    for (words, kind, id) in [
        ("board", CardKind::Board, &mut shop.board),
        ("hinge", CardKind::Hinge, &mut shop.hinge),
        ("runner", CardKind::Runner, &mut shop.runner),
        ("pin", CardKind::Pin, &mut shop.pin),
    ] {
        lines.place(words, Quantity::Card(kind, ""), Slot::Card(id));
    }
    let as_carcass = "the carcass board";
    for (words, kind, none, id) in [
        (
            "board of fronts",
            CardKind::Board,
            as_carcass,
            &mut shop.front_board,
        ),
        (
            "board of boxes",
            CardKind::Board,
            as_carcass,
            &mut shop.box_board,
        ),
        (
            "connector",
            CardKind::Connector,
            "none yet",
            &mut shop.connector,
        ),
        ("rail", CardKind::Rail, "none yet", &mut shop.rail),
    ] {
        lines.place(words, Quantity::Card(kind, none), Slot::MaybeCard(id));
    }
}

fn fronts(lines: &mut Lines<'_>, rules: &mut FrontRules) {
    lines.group = "fronts";
    length(lines, "gap of fronts", &range::GAP, &mut rules.gap);
    lines.place("reveals", Quantity::Choice, Slot::Choice(rules));
    length(
        lines,
        "reveal, foot",
        &range::REVEAL,
        &mut rules.reveal_foot,
    );
    length(
        lines,
        "reveal, head",
        &range::REVEAL,
        &mut rules.reveal_head,
    );
    length(
        lines,
        "reveal, side",
        &range::REVEAL,
        &mut rules.reveal_side,
    );
    length(lines, "gap, inset", &range::GAP, &mut rules.gap_inset);
}

fn band(lines: &mut Lines<'_>, band: &mut Band) {
    lines.group = "edge band";
    length(lines, "band", &range::BAND, &mut band.thickness);
    length(lines, "pre-mill", &range::BAND, &mut band.pre_mill);
    lines.place("band is", Quantity::Choice, Slot::Choice(&mut band.on));
}

fn boxes(lines: &mut Lines<'_>, rules: &mut BoxRules) {
    lines.group = "drawer boxes";
    length(
        lines,
        "bottom's groove",
        &range::GROOVE_DEPTH,
        &mut rules.groove,
    );
    length(lines, "heights in steps", &range::BOX_STEP, &mut rules.step);
    for (words, value) in [
        ("clear under", &mut rules.below),
        ("clear between", &mut rules.between),
        ("clear over", &mut rules.above),
        ("front up to box", &mut rules.rise),
        ("box rise, least", &mut rules.rise_least),
        ("box rise, most", &mut rules.rise_most),
    ] {
        length(lines, words, &range::BOX_CLEARANCE, value);
    }
}

fn bench(lines: &mut Lines<'_>, rules: &mut BenchRules) {
    lines.group = "at the bench";
    lines.place(
        "first comes",
        Quantity::Choice,
        Slot::Choice(&mut rules.order),
    );
    lines.place(
        "settings held",
        Quantity::Choice,
        Slot::Choice(&mut rules.gauge),
    );
    for (words, range, none, value) in [
        (
            "test hole, depth",
            &range::BORE_DEPTH,
            "not bored yet",
            &mut rules.test_depth,
        ),
        (
            "bit off its base",
            &range::BASE_OFF,
            "not tried yet",
            &mut rules.base_off,
        ),
    ] {
        lines.place(
            words,
            Quantity::MaybeLength(range, none),
            Slot::MaybeLength(value),
        );
    }
    let times = &mut rules.times;
    for (words, value) in [
        ("change of bit", &mut times.bit),
        ("change of depth", &mut times.depth),
        ("change of stop", &mut times.stop),
        ("change of setting", &mut times.setting),
        ("panel up or over", &mut times.load),
        ("rail laid on", &mut times.placement),
        ("a hole", &mut times.hole),
    ] {
        lines.place(
            words,
            Quantity::Number(&range::SECONDS, "s"),
            Slot::Count(value),
        );
    }
}

fn limits(lines: &mut Lines<'_>, limits: &mut Limits) {
    lines.group = "limits of the checks";
    for (words, value) in [
        ("hole to end", &mut limits.to_end),
        ("hole to edge", &mut limits.to_edge),
        ("hole to groove", &mut limits.to_back),
        ("hole to hole", &mut limits.near),
        ("skin, flat bit", &mut limits.skin_flat),
        ("skin, pointed", &mut limits.skin_pointed),
        ("web between", &mut limits.web),
        ("spare depth", &mut limits.spare),
        ("close is under", &mut limits.close),
    ] {
        length(lines, words, &range::LIMIT, value);
    }
}
