//! What figures of strength rest on: said once below the parts, with the caution.

use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::job::Job;
use gablerow_core::strength::{board_rests_on, sag_rests_on, tip_rests_on};

use crate::part_records::CabinetParts;
use crate::source_list::CAUTION;
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
    push_indented(out, "  ", "  ", CAUTION);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{drawers, job};
    use crate::part_text;
    use gablerow_core::job::Opening;
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
}
