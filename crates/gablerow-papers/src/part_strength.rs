//! How strong shelves are, in words, and what those figures rest on.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::job::Job;
use gablerow_core::parts::Strength;
use gablerow_core::source::{Standing, WOOD_2010};
use gablerow_core::strength::{LIMITS, TIP_LEAST_KG};

use crate::part_records::CabinetParts;
use crate::source_list::CAUTION;
use crate::text::push_indented;

/// A mass, to a tenth of a kilogram.
pub(crate) fn kg(mass: f64) -> String {
    format!("{mass:.1} kg")
}

/// What a shelf weighs and bears, in one sentence.
pub(crate) fn strength_text(strength: &Strength) -> String {
    let mut text = kg(strength.mass_kg);
    if let Some(load) = strength.load_kg {
        text += &format!(" and {} on it", kg(load));
        text += &match (strength.now, strength.later) {
            (Some(now), Some(later)) => format!(": sags {now:.1} mm, {later:.1} mm after years"),
            (Some(now), None) => format!(": sags {now:.1} mm, and more after years"),
            _ => ", stiffness not known".to_owned(),
        };
        if let Some(longest) = strength.longest {
            text += &format!("; up to {longest:.0} mm long within L/200");
        }
        if let Some(pin) = strength.pin_kg {
            text += &format!("; {} on each pin", kg(pin));
        }
    }
    if let Some(tip) = strength.tip_kg {
        text += &format!("; tips at {} on its front edge", kg(tip));
    }
    text
}

/// Adds what the figures of strength of these cabinets rest on, and the caution; nothing where there are none.
pub(crate) fn push_strength_notes(out: &mut String, job: &Job, cabinets: &[CabinetParts]) {
    let shelves = || cabinets.iter().flat_map(|one| &one.parts.shelves);
    let strong = || shelves().filter_map(|shelf| Some((shelf, shelf.strength?)));
    let counted = |one: &CabinetParts| one.parts.fronts.iter().any(|front| front.hanging.is_some());
    let counted = cabinets.iter().any(counted);
    if strong().next().is_none() && !counted {
        return;
    }
    out.push_str("\nSTRENGTH, what its figures rest on\n");
    let mut lines = Vec::new();
    if strong().any(|(_, strength)| strength.now.is_some() && strength.load_kg.is_some()) {
        let limit = &LIMITS[0];
        lines.push(format!(
            "sag: {}; {}: {}",
            WOOD_2010.name,
            limit.words,
            limit.standing.words()
        ));
    }
    if strong().next().is_some() {
        let practice = Standing::Practice.words();
        let guess = Standing::HouseGuess.words();
        lines.push(format!(
            "load that tips: {practice}; {TIP_LEAST_KG} kg wished at least: {guess}"
        ));
    }
    for board in &job.cards.boards {
        let mut of_board = strong().filter(|(shelf, _)| shelf.piece.board == board.id);
        if of_board.next().is_none() {
            continue;
        }
        let density = board.density;
        let mut line = format!(
            "{}: {} kg/m3: {}",
            board.id,
            density.value,
            density.origin.words()
        );
        if let Some(stiffness) = board.stiffness {
            line += &format!("; {} N/mm2: {}", stiffness.value, stiffness.origin.words());
        }
        if let Some(creep) = board.creep {
            line += &format!("; after years {} %: {}", creep.value, creep.origin.words());
        }
        lines.push(line);
    }
    for line in lines {
        push_indented(out, "    ", "      ", &line);
    }
    push_indented(out, "  ", "  ", CAUTION);
}
