//! What a job takes of boards and bands, in words: the same for text and for sheets of paper.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::job::Job;
use gablerow_core::parts::{BoardNeed, board_needs};

use crate::part_records::CabinetParts;
use crate::text::{push_columns, push_indented};

/// What stands above it.
pub(crate) const TITLE: &str = "Boards and bands, an estimate";

/// The heads of its columns.
pub(crate) const HEADS: [&str; 6] = [
    "board",
    "pieces",
    "m2 cut",
    "m2 TAKE",
    "m edge",
    "m band TAKE",
];

/// What the estimate rests on.
pub(crate) const RESTS_ON: &str = "TAKE is a fifth more of a board than is cut of it, and of band 60 mm more for each edge, then a tenth: house defaults. \
     How pieces lie on a sheet is not laid out.";

/// A row for each board, under these heads.
pub(crate) fn need_rows(job: &Job, cabinets: &[CabinetParts]) -> Vec<[String; 6]> {
    let needs = board_needs(cabinets.iter().map(|of| &of.parts));
    let row = |need: &BoardNeed| {
        let id = need.board.as_ref();
        let card = id.and_then(|id| job.cards.board(id));
        let board = match (card, id) {
            (Some(card), _) => card.title.to_string(),
            (None, Some(id)) => id.to_string(),
            (None, None) => "backs and bottoms of boxes".to_owned(),
        };
        [
            board,
            need.pieces.to_string(),
            square_metres(need.area),
            square_metres(need.area_take),
            metres(need.band),
            metres(need.band_take),
        ]
    };
    needs.iter().map(row).collect()
}

/// Adds the estimate to a text.
pub(crate) fn push_needs(out: &mut String, job: &Job, cabinets: &[CabinetParts]) {
    let rows = need_rows(job, cabinets);
    if rows.is_empty() {
        return;
    }
    out.push_str(&format!("\n{}\n", TITLE.to_uppercase()));
    push_columns(out, "  ", &HEADS, &rows);
    push_indented(out, "  ", "  ", RESTS_ON);
}

/// An area in mm2 as m2, rounded up to hundredths.
fn square_metres(area: u64) -> String {
    let hundredths = area.div_ceil(10_000);
    format!("{}.{:02}", hundredths / 100, hundredths % 100)
}

/// A length in mm as m, rounded up to tenths.
fn metres(length: u64) -> String {
    let tenths = length.div_ceil(100);
    format!("{}.{}", tenths / 10, tenths % 10)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::job;
    use crate::part_text;

    #[test]
    fn boards_and_bands_stand_once_below_the_cabinets() {
        let text = part_text(&job());
        let (_, below) = text
            .split_once("\nBOARDS AND BANDS, AN ESTIMATE\n")
            .unwrap();
        let row = below.lines().nth(1).unwrap();
        let cells: Vec<&str> = row
            .split("  ")
            .map(str::trim)
            .filter(|it| !it.is_empty())
            .collect();
        // 1,203,304 mm2, with a fifth more 1,443,965; 2,536 mm of edges, with ends and a tenth 3,054.
        assert_eq!(cells[1..], ["5", "1.21", "1.45", "2.6", "3.1"]);
        assert!(!below.contains("BOARDS"), "{text}");
    }
}
