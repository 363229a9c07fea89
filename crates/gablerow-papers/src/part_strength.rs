//! What figures of strength rest on: said once below the parts, with the caution; and which units may tip over.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::cautions::{GENERAL, TIP_OVER};
use gablerow_core::job::{Cabinet, Job};
use gablerow_core::strength::{board_rests_on, may_tip_over, sag_rests_on, tip_rests_on};

use crate::part_records::CabinetParts;
use crate::text::push_indented;

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
}

/// The note on tipping over with the cabinets it is for; `None` where none has drawers and is high enough.
pub(crate) fn tip_over_words(cabinets: &[CabinetParts]) -> Option<String> {
    let tips = |cabinet: &Cabinet| may_tip_over(cabinet.standing_height(), cabinet.has_drawers());
    let tipping = cabinets.iter().map(|one| one.cabinet);
    let names: Vec<_> = tipping
        .filter(|cabinet| tips(cabinet))
        .map(|cabinet| cabinet.name.as_str())
        .collect();
    (!names.is_empty()).then(|| format!("{}: {TIP_OVER}", names.join(", ")))
}

/// Adds that note; nothing where it is for no cabinet.
pub(crate) fn push_tip_over(out: &mut String, cabinets: &[CabinetParts]) {
    if let Some(words) = tip_over_words(cabinets) {
        out.push_str("\nTIP-OVER\n");
        push_indented(out, "    ", "      ", &words);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{drawers, job};
    use crate::part_text;
    use gablerow_core::job::{Opening, Stand};
    use gablerow_core::measure::Length;
    use gablerow_core::strength::LIMITS;

    #[test]
    fn figures_of_strength_say_what_they_rest_on() {
        let text = part_text(&drawers());
        let notes = text.split_once("STRENGTH").unwrap().1;
        let notes = notes.split_whitespace().collect::<Vec<_>>().join(" ");
        for words in [
            &format!(
                "sag: Wood Handbook FPL-GTR-190; {}: house guess",
                LIMITS[0].words
            ),
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
        assert_eq!(
            said(&drawers)
                .unwrap()
                .split_once(&format!("{name}: "))
                .unwrap()
                .1,
            TIP_OVER
        );
        assert_eq!(said(&job()), None);
    }
}
