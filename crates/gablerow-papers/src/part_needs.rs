//! What a job takes of boards and bands, in words: the same for text and for sheets of paper.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::job::Job;
use gablerow_core::measure::Unit;
use gablerow_core::parts::{BAND_MORE, BAND_OVER, BOARD_MORE, BoardNeed, board_needs};

use crate::part_records::CabinetParts;
use crate::text::{push_columns, push_indented};

/// What stands above it.
pub(crate) const TITLE: &str = "Boards and bands, an estimate";

/// The heads of its columns.
pub(crate) fn heads(unit: Unit) -> [&'static str; 6] {
    match unit {
        Unit::Millimetre => [
            "board",
            "pieces",
            "m2 cut",
            "m2 TAKE",
            "m edge",
            "m band TAKE",
        ],
        Unit::Inch => [
            "board",
            "pieces",
            "ft2 cut",
            "ft2 TAKE",
            "ft edge",
            "ft band TAKE",
        ],
    }
}

/// What the estimate rests on.
pub(crate) fn rests_on(unit: Unit) -> String {
    format!(
        "TAKE is {BOARD_MORE} % more of a board than is cut of it, and of band {} more for each edge, then {BAND_MORE} %: house \
         defaults. How pieces lie on a sheet is not laid out.",
        BAND_OVER.show(unit)
    )
}

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
            area(need.area, job.unit),
            area(need.area_take, job.unit),
            length(need.band, job.unit),
            length(need.band_take, job.unit),
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
    push_columns(out, "  ", &heads(job.unit), &rows);
    push_indented(out, "  ", "  ", &rests_on(job.unit));
}

/// An area in mm2 as m2 or square feet, rounded up to hundredths. A foot is 304.8 mm.
fn area(mm2: u64, unit: Unit) -> String {
    let hundredths = match unit {
        Unit::Millimetre => mm2.div_ceil(10_000),
        Unit::Inch => (mm2 * 10_000).div_ceil(3_048 * 3_048),
    };
    format!("{}.{:02}", hundredths / 100, hundredths % 100)
}

/// A length in mm as m or feet, rounded up to tenths.
fn length(mm: u64, unit: Unit) -> String {
    let tenths = match unit {
        Unit::Millimetre => mm.div_ceil(100),
        Unit::Inch => (mm * 100).div_ceil(3_048),
    };
    format!("{}.{}", tenths / 10, tenths % 10)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::job;
    use crate::part_text;

    // 1 m2 is 10.7639 ft2, and 1 m is 3.28084 ft.
    #[test]
    fn who_works_in_inches_buys_by_the_foot() {
        assert_eq!(area(1_000_000, Unit::Inch), "10.77");
        assert_eq!(length(1_000, Unit::Inch), "3.3");
        assert_eq!(length(3_048, Unit::Inch), "10.0");
    }

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
