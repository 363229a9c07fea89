//! What figures of strength rest on: said once below the parts, with the caution; and which units may tip over.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::cautions::{GENERAL, TIP_OVER};
use gablerow_core::job::{Cabinet, Job};
use gablerow_core::layout::Layout;
use gablerow_core::strength::{board_rests_on, may_tip_over, sag_rests_on, tip_rests_on};

use crate::part_records::CabinetParts;
use crate::part_words::kg;
use crate::text::push_indented;

/// Adds what the figures of strength of these cabinets rest on, and the caution; nothing where there are none. Whether there are
/// any.
pub(crate) fn push_strength_notes(out: &mut String, job: &Job, cabinets: &[CabinetParts]) -> bool {
    let shelves = || cabinets.iter().flat_map(|one| &one.parts.shelves);
    let strong = || shelves().filter_map(|shelf| Some((shelf, shelf.strength?)));
    let counted = |one: &CabinetParts| one.parts.fronts.iter().any(|front| front.hanging.is_some());
    let counted = cabinets.iter().any(counted);
    if strong().next().is_none() && !counted {
        return false;
    }
    out.push_str("\nSTRENGTH, what its figures rest on\n");
    let mut lines = Vec::new();
    if strong().any(|(_, strength)| strength.now.is_some()) {
        lines.push(sag_rests_on());
    }
    if strong().next().is_some() {
        lines.push(tip_rests_on());
    }
    for board in &job.cards.boards {
        let mut of_board = strong().filter(|(shelf, _)| shelf.piece.board == board.id);
        if of_board.next().is_some() {
            lines.push(board_rests_on(board));
        }
    }
    for line in lines {
        push_indented(out, "    ", "      ", &line);
    }
    push_indented(out, "  ", "  ", GENERAL);
    true
}

/// The note on tipping over with the cabinets it is for, and how each of them stands to the scope it names; nothing where none
/// has drawers and is high enough.
pub(crate) fn tip_over_words(job: &Job, cabinets: &[CabinetParts]) -> Vec<String> {
    let tips = |cabinet: &Cabinet| may_tip_over(cabinet.standing_height(), cabinet.has_drawers());
    let tipping: Vec<_> = cabinets.iter().filter(|one| tips(one.cabinet)).collect();
    if tipping.is_empty() {
        return Vec::new();
    }
    let names: Vec<_> = tipping
        .iter()
        .map(|one| one.cabinet.name.as_str())
        .collect();
    let mut lines = Vec::from([format!("{}: {TIP_OVER}", names.join(", "))]);
    lines.extend(tipping.iter().map(|one| scope_words(job, one)));
    lines
}

/// The three figures of a unit that the scope of the rule asks for, and which of them fall short.
fn scope_words(job: &Job, of: &CabinetParts) -> String {
    let layout = Layout::of(of.cabinet, job);
    let unit = of.parts.scope_unit(of.cabinet, &layout, job);
    let figures = ["height", "mass", "closed storage"]
        .into_iter()
        .zip(unit.reaches());
    let short: Vec<_> = figures
        .filter(|(_, reached)| !reached)
        .map(|(figure, _)| figure)
        .collect();
    let says = match short[..] {
        [] => "all three reach that scope".into(),
        _ => format!("short of that scope: {}", short.join(", ")),
    };
    format!(
        "{}: {} high, {} without back and hardware, {:.1} dm3 of closed storage: {says}.",
        of.cabinet.name,
        unit.height.show(job.unit),
        kg(unit.mass_kg),
        unit.storage_dm3()
    )
}

/// Adds that note; nothing where it is for no cabinet.
pub(crate) fn push_tip_over(out: &mut String, job: &Job, cabinets: &[CabinetParts]) {
    let lines = tip_over_words(job, cabinets);
    if !lines.is_empty() {
        out.push_str("\nTIP-OVER\n");
    }
    for line in lines {
        push_indented(out, "    ", "      ", &line);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{drawers, job};
    use crate::part_text;
    use gablerow_core::job::{Opening, Stand};
    use gablerow_core::measure::Length;

    #[test]
    fn figures_of_strength_say_what_they_rest_on() {
        let text = part_text(&drawers());
        let notes = text.split_once("STRENGTH").unwrap().1;
        let notes = notes.split_whitespace().collect::<Vec<_>>().join(" ");
        for words in [
            "sag: Wood Handbook FPL-GTR-190; L/200: house guess; 3 mm: house guess",
            "load that tips: common practice; 20 kg wished at least: house guess",
            "board-18: 650 kg/m3: house guess; 1600 N/mm2: house guess; after years 200 %: house guess",
            "neither engineering nor advice on codes",
        ] {
            assert!(notes.contains(words), "{words}: {notes}");
        }
        assert!(!notes.contains("board-15"), "{notes}");
        assert!(
            text.contains("asked for by height and mass (common"),
            "{text}"
        );

        let mut bare = job();
        for cabinet in &mut bare.cabinets {
            let opening = cabinet.opening.key;
            cabinet.opening = Opening::empty_bay(opening);
        }
        assert!(!part_text(&bare).contains("STRENGTH"));
    }

    #[test]
    fn the_tip_over_note_is_for_high_units_with_drawers() {
        let mut drawers = drawers();
        let said = |job: &Job| {
            let text = part_text(job);
            let note = text.split_once("TIP-OVER")?.1;
            Some(note.split_whitespace().collect::<Vec<_>>().join(" "))
        };
        drawers.cabinets[0].size.height = Length::from_um(685_700);
        assert_eq!(said(&drawers), None);
        drawers.cabinets[0].carcass.stand = Some(Stand::Feet(Length::from_um(300)));
        let name = drawers.cabinets[0].name.as_str();
        let note = said(&drawers).unwrap();
        let of_it = format!("{name}: {TIP_OVER} {name}: 686.0 high, ");
        assert!(note.trim_start().starts_with(&of_it), "{note}");
        assert_eq!(said(&job()), None);
    }
}
