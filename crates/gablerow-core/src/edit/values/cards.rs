//! The tables of the cards.

use super::slot::Slot;
use super::{Lines, Place, Quantity, Table};
use crate::cards::{Bed, Board, Card, Connector, Hinge, Pin, Rail, Runner, Sourced};
use crate::measure::Length;
use crate::measure::range::{self, Range};

impl Table for Card {
    fn each(&mut self, visit: &mut dyn FnMut(Place<'_>)) {
        let mut lines = Lines {
            visit,
            group: "",
            length: None,
        };
        match self {
            Self::Board(card) => board(&mut lines, card),
            Self::Hinge(card) => hinge(&mut lines, card),
            Self::Runner(card) => runner(&mut lines, card),
            Self::Pin(card) => pin(&mut lines, card),
            Self::Connector(card) => connector(&mut lines, card),
            Self::Rail(card) => rail(&mut lines, card),
        }
    }
}

/// A length that a data sheet says.
fn sourced(
    lines: &mut Lines<'_>,
    words: &'static str,
    range: &'static Range,
    value: &mut Sourced<Length>,
) {
    lines.place(words, Quantity::Length(range), Slot::Sourced(value));
}

/// A length of hardware that a data sheet says.
fn card_value(lines: &mut Lines<'_>, words: &'static str, value: &mut Sourced<Length>) {
    sourced(lines, words, &range::CARD_VALUE, value);
}

fn board(lines: &mut Lines<'_>, card: &mut Board) {
    lines.place("title", Quantity::Title, Slot::Title(&mut card.title));
    let thickness = Quantity::Length(&range::BOARD_THICKNESS);
    lines.place(
        "thickness by name",
        thickness,
        Slot::Length(&mut card.nominal),
    );
    lines.place(
        "thickness measured",
        thickness,
        Slot::Sourced(&mut card.thickness),
    );
    lines.place(
        "density",
        Quantity::Number(&range::DENSITY, "kg/m3"),
        Slot::Number(&mut card.density),
    );
    lines.place(
        "stiffness along it",
        Quantity::MaybeNumber(&range::STIFFNESS, "N/mm2"),
        Slot::MaybeNumber(&mut card.stiffness),
    );
    lines.place(
        "sag after years",
        Quantity::MaybeNumber(&range::CREEP, "%"),
        Slot::MaybeNumber(&mut card.creep),
    );
}

fn hinge(lines: &mut Lines<'_>, card: &mut Hinge) {
    let signed = &range::SIGNED_CARD_VALUE;
    lines.place("title", Quantity::Title, Slot::Title(&mut card.title));
    lines.place("plate", Quantity::Choice, Slot::Choice(&mut card.plate));
    card_value(lines, "half its zone", &mut card.half_zone);
    card_value(lines, "reach from front", &mut card.reach);
    card_value(lines, "proud of the face", &mut card.proud);
    card_value(lines, "plate screws go in", &mut card.pen);
    sourced(lines, "overlay, full arm", signed, &mut card.arms.full);
    sourced(lines, "overlay, half arm", signed, &mut card.arms.half);
    sourced(lines, "overlay, inset arm", signed, &mut card.arms.inset);
    sourced(lines, "tab, least", &range::TAB, &mut card.tabs.least);
    sourced(lines, "tab, most", &range::TAB, &mut card.tabs.most);
    lines.place(
        "tabs in steps of",
        Quantity::Length(&range::TAB_STEP),
        Slot::Length(&mut card.tabs.step),
    );
    lines.place(
        "plates in stock",
        Quantity::Lengths(&range::PLATES, signed),
        Slot::Lengths(&mut card.plates),
    );
    sourced(lines, "cup", &range::HOLE_DIAMETER, &mut card.cup);
    sourced(lines, "cup depth", &range::BORE_DEPTH, &mut card.cup_depth);
    card_value(lines, "door intrudes", &mut card.intrusion);
    card_value(lines, "adjusts sideways", &mut card.adjust);
    lines.place(
        "hinges a door takes",
        Quantity::Choice,
        Slot::Choice(&mut card.chart),
    );
    lines.place(
        "reveals by door",
        Quantity::Lengths(&range::LEAST_REVEALS, &range::BOARD_THICKNESS),
        Slot::LeastReveals(&mut card.reveals),
    );
    for reveal in &mut card.reveals {
        lines.length = Some(reveal.thickness);
        sourced(
            lines,
            "door needs reveal",
            &range::REVEAL,
            &mut reveal.least,
        );
    }
}

fn runner(lines: &mut Lines<'_>, card: &mut Runner) {
    lines.place("title", Quantity::Title, Slot::Title(&mut card.title));
    lines.place("runs", Quantity::Choice, Slot::Choice(&mut card.kind));
    for (words, value) in [
        ("end to first hole", &mut card.first_hole),
        ("stands back", &mut card.stand_back),
        ("box up to line", &mut card.line),
        ("zone below line", &mut card.below),
        ("zone above line", &mut card.above),
        ("out from the face", &mut card.width),
        ("screws go in", &mut card.pen),
        ("off the width", &mut card.deduct),
        ("off the length", &mut card.shorter),
        ("bottom recessed", &mut card.recess),
    ] {
        card_value(lines, words, value);
    }
    lines.place(
        "load of a pair",
        Quantity::Number(&range::LOAD, "kg"),
        Slot::Number(&mut card.load),
    );
    lines.place(
        "thickest box side",
        Quantity::MaybeLength(&range::CARD_VALUE, "not looked up"),
        Slot::MaybeSourced(&mut card.side_most),
    );
    lines.place(
        "lengths",
        Quantity::Lengths(&range::RUNNER_LENGTHS, &range::CARD_VALUE),
        Slot::RunnerLengths(&mut card.lengths),
    );
    for made in &mut card.lengths {
        lines.length = Some(made.name);
        card_value(lines, "needs depth", &mut made.need);
        lines.place(
            "screws at",
            Quantity::Pitches,
            Slot::Pitches(&mut made.steps),
        );
    }
}

fn pin(lines: &mut Lines<'_>, card: &mut Pin) {
    lines.place("title", Quantity::Title, Slot::Title(&mut card.title));
    card_value(lines, "goes in", &mut card.pen);
    card_value(lines, "hole up to shelf", &mut card.rise);
    lines.place(
        "stands out",
        Quantity::MaybeLength(&range::CARD_VALUE, "not looked up"),
        Slot::MaybeSourced(&mut card.projection),
    );
}

fn connector(lines: &mut Lines<'_>, card: &mut Connector) {
    lines.place("title", Quantity::Title, Slot::Title(&mut card.title));
    lines.place("hole", Quantity::Choice, Slot::Choice(&mut card.bore));
    sourced(lines, "diameter", &range::HOLE_DIAMETER, &mut card.diameter);
    sourced(lines, "depth", &range::BORE_DEPTH, &mut card.depth);
    card_value(lines, "from the edge", &mut card.edge);
}

fn rail(lines: &mut Lines<'_>, card: &mut Rail) {
    lines.place("title", Quantity::Title, Slot::Title(&mut card.title));
    lines.place("kind", Quantity::Choice, Slot::Choice(&mut card.kind));
    lines.place(
        "index holes",
        Quantity::Number(&range::INDEX_HOLES, "holes"),
        Slot::Number(&mut card.index_holes),
    );
    sourced(lines, "pitch", &range::RAIL_PITCH, &mut card.pitch);
    lines.place(
        "stop faces",
        Quantity::Lengths(&range::STOP_FACES, &range::END_OFFSET),
        Slot::Lengths(&mut card.stops),
    );
    for (words, value) in [
        ("arm reach, least", &mut card.reach_least),
        ("arm reach, most", &mut card.reach_most),
        ("width", &mut card.width),
        ("support it needs", &mut card.support),
        ("play of a pin", &mut card.play),
    ] {
        card_value(lines, words, value);
    }
    bed(lines, &mut card.bed);
}

fn bed(lines: &mut Lines<'_>, bed: &mut Bed) {
    sourced(lines, "bed, left to right", &range::BED, &mut bed.length);
    sourced(lines, "bed, near to far", &range::BED, &mut bed.width);
    let (zero, along, across) = (&mut bed.zero, &mut bed.along, &mut bed.across);
    lines.place("zero corner", Quantity::Choice, Slot::Choice(zero));
    lines.place("axis along", Quantity::Choice, Slot::Choice(along));
    lines.place("axis across", Quantity::Choice, Slot::Choice(across));
}
