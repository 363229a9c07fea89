//! The parts of a job on sheets of paper, a list for each place they are taken to: saw, hinge bench, box bench, shelves, bag.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec;
use alloc::vec::Vec;

use gablerow_core::cautions::GENERAL;
use gablerow_core::job::Job;
use gablerow_core::measure::Length;
use gablerow_core::parts::{Banded, FrontPart, Piece};

use crate::page::{Page, Paper, TextEnd};
use crate::part_lists::PartList;
use crate::part_needs::{TITLE, heads, need_rows, rests_on};
use crate::part_records::{CabinetParts, Part, PartRecord, front_words};
use crate::part_strength::tip_over_words;
use crate::part_words::{
    bay_words, box_words, cabinet_words, cup_words, hinge_words, kg, missing_words, rise_words,
    shelf_test_words, strength_words,
};
use crate::sheets::{Block, Cell, Column, Row, Sheets};

/// One list of these cabinets of a job, on as many sheets as it takes; none when no cabinet has anything on it.
#[must_use]
pub(crate) fn list_pages(
    list: PartList,
    job: &Job,
    cabinets: &[CabinetParts],
    paper: Paper,
) -> Vec<Page> {
    let listing = Listing { list, job };
    let mut sheets = Sheets::new(paper, &format!("{}: {}", job.title, list.word()));
    let (unit, key) = (job.unit.words(), job.unit.key());
    sheets.words(&format!("In {unit}. {key} {}", list.key()));
    let mut blocks: Vec<Block> = cabinets.iter().filter_map(|of| listing.block(of)).collect();
    if list == PartList::Cut && !blocks.is_empty() {
        blocks.push(needs(job, cabinets));
    }
    let Some(last) = blocks.last_mut() else {
        return Vec::new();
    };
    if list == PartList::Boxes {
        last.closing = tip_over_words(job, cabinets);
    }
    last.closing.push(GENERAL.to_owned());
    blocks.iter().for_each(|block| sheets.block(block));
    sheets.pages()
}

/// Whether no cabinet of a job has anything on a list; asks as many as it takes.
pub(crate) fn is_empty(list: PartList, job: &Job) -> bool {
    let listing = Listing { list, job };
    CabinetParts::each(job).all(|of| listing.rows(&of).is_empty())
}

/// A list in the making.
struct Listing<'a> {
    list: PartList,
    job: &'a Job,
}

impl Listing<'_> {
    fn show(&self, length: Length) -> Cell {
        Cell::words(length.show(self.job.unit).to_string())
    }

    fn look(&self, length: Length) -> Cell {
        Cell::bold(length.show(self.job.unit).to_string())
    }

    fn thick(&self, piece: &Piece) -> Cell {
        piece
            .thickness
            .map_or(Cell::words("-"), |thickness| self.show(thickness))
    }

    /// What a list has of a cabinet; nothing when it has no rows.
    fn block(&self, of: &CabinetParts) -> Option<Block> {
        let rows = self.rows(of);
        (!rows.is_empty()).then(|| Block {
            title: cabinet_words(of, self.job.unit),
            columns: self.list.columns().to_vec(),
            rows,
            remarks: self.remarks(of),
            closing: Vec::new(),
        })
    }

    /// The rows of a cabinet.
    fn rows(&self, of: &CabinetParts) -> Vec<Row> {
        let records = of.records();
        match self.list {
            PartList::Cut => records.iter().filter_map(|it| self.cut_row(it)).collect(),
            PartList::Fronts => records.iter().filter_map(|it| self.front_row(it)).collect(),
            PartList::Boxes => records.iter().filter_map(|it| self.box_row(it)).collect(),
            PartList::Shelves => {
                let row = |it| self.shelf_row(it, of);
                records.iter().filter_map(row).collect()
            }
            PartList::Bag => records.iter().filter_map(|it| self.bag_row(it)).collect(),
        }
    }

    fn cut_row(&self, record: &PartRecord) -> Option<Row> {
        if matches!(record.part, Part::Box(_)) {
            return None;
        }
        let [length, width] = record.size()?.map(|size| size.total());
        let part = Cell::words(record.named_words());
        let mut row = vec![Cell::Tick, Cell::bold(record.count()?.to_string()), part];
        row.extend(match record.piece() {
            Some(piece) => [
                self.look(piece.cut_length.total()),
                self.look(piece.cut_width.total()),
                self.thick(piece),
                Cell::words(self.board(piece)),
                Cell::words(piece.grain.word()),
                Cell::words(band_words(piece.banded)),
            ],
            // No card names its board, and nothing is banded: it is cut as it will be.
            None => [
                self.look(length),
                self.look(width),
                Cell::words("-"),
                Cell::words("as chosen"),
                Cell::words("-"),
                Cell::words("-"),
            ],
        });
        row.extend([self.show(length), self.show(width)]);
        Some(row)
    }

    /// The title of a piece's card, or its name when there is none.
    fn board(&self, piece: &Piece) -> String {
        let card = self.job.cards.board(&piece.board);
        card.map_or(piece.board.to_string(), |card| card.title.to_string())
    }

    fn front_row(&self, record: &PartRecord) -> Option<Row> {
        let front: &FrontPart = record.front()?;
        let piece = &front.piece;
        Some(vec![
            Cell::Tick,
            Cell::bold(record.count()?.to_string()),
            Cell::bold(front.name.as_str()),
            Cell::words(front_words(front)),
            self.show(piece.width.total()),
            self.show(piece.length.total()),
            self.thick(piece),
            self.look(piece.cut_width.total()),
            self.look(piece.cut_length.total()),
            Cell::words(front.mass_kg.map_or("-".to_owned(), kg)),
        ])
    }

    fn box_row(&self, record: &PartRecord) -> Option<Row> {
        let made = record.made_box()?;
        Some(vec![
            Cell::Tick,
            Cell::bold(record.count()?.to_string()),
            Cell::bold(made.name.as_str()),
            self.look(made.outside.total()),
            self.show(made.inside.total()),
            self.look(made.length.total()),
            self.look(made.height),
            self.show(made.room.total()),
            Cell::words(rise_words(made, self.job.unit)),
            Cell::words(made.hole.to_string()),
        ])
    }

    fn shelf_row(&self, record: &PartRecord, of: &CabinetParts) -> Option<Row> {
        let shelf = record.shelf()?;
        let piece = &shelf.piece;
        Some(vec![
            Cell::Tick,
            Cell::bold(record.count()?.to_string()),
            Cell::bold(bay_words(shelf, of)),
            Cell::bold(shelf.hole.to_string()),
            self.show(piece.length.total()),
            self.show(piece.width.total()),
            self.thick(piece),
            self.look(piece.cut_length.total()),
            self.look(piece.cut_width.total()),
            self.show(shelf.clear_below.total()),
            self.show(shelf.clear_above.total()),
        ])
    }

    fn bag_row(&self, record: &PartRecord) -> Option<Row> {
        let line = record.hardware()?;
        let pair = if line.kind.in_pairs() { " pr" } else { "" };
        Some(vec![
            Cell::Tick,
            Cell::bold(format!("{}{pair}", line.take)),
            Cell::words(line.kind.words()),
            Cell::words(format!("{}{pair}", line.count)),
            line.length
                .map_or(Cell::words(""), |length| self.show(length)),
            Cell::words(record.card().unwrap_or_default()),
        ])
    }

    /// What is said below the rows of a cabinet.
    fn remarks(&self, of: &CabinetParts) -> Vec<String> {
        let (parts, unit) = (&of.parts, self.job.unit);
        let mut remarks = Vec::new();
        match self.list {
            PartList::Cut => {}
            PartList::Fronts => {
                for front in &parts.fronts {
                    if let Some(hanging) = &front.hanging {
                        remarks.push(hinge_words(front, hanging, unit));
                        remarks.push(cup_words(front, hanging, unit));
                    }
                }
            }
            PartList::Boxes => {
                let boxes = parts.boxes.iter();
                remarks.extend(boxes.map(|made| box_words(made, parts.built, unit)));
            }
            PartList::Shelves => {
                for shelf in &parts.shelves {
                    let strength = shelf.strength.as_ref().map(strength_words);
                    let said = strength.into_iter().chain(shelf_test_words(shelf));
                    remarks.extend(said.map(|words| format!("hole {}: {words}", shelf.hole)));
                }
            }
            PartList::Bag => {
                let missing = parts.missing.iter();
                remarks.extend(missing.map(|it| format!("MISSING {}", missing_words(it, of))));
            }
        }
        remarks
    }
}

/// What all of it takes of boards and bands.
fn needs(job: &Job, cabinets: &[CabinetParts]) -> Block {
    let heads = heads(job.unit);
    let cells = |row: [String; 6]| {
        let is_taken = |column: usize| heads[column].ends_with("TAKE");
        let cells = row.into_iter().enumerate();
        let cell = |(column, words)| match is_taken(column) {
            true => Cell::bold(words),
            false => Cell::words(words),
        };
        cells.map(cell).collect()
    };
    let rows: Vec<Row> = need_rows(job, cabinets).into_iter().map(cells).collect();
    let side = |column: usize| match column {
        0 => TextEnd::Start,
        _ => TextEnd::End,
    };
    let columns: Vec<Column> = (heads.iter().enumerate())
        .map(|(at, head)| (*head, side(at)))
        .collect();
    Block {
        title: TITLE.to_owned(),
        columns,
        rows,
        remarks: vec![rests_on(job.unit)],
        closing: Vec::new(),
    }
}

fn band_words(banded: Banded) -> String {
    match banded {
        Banded::None => "-".to_owned(),
        Banded::All => "all edges".to_owned(),
        some => some.edges().join(" "),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{any_job, assert_printed, drawers, job, mm, texts};
    use gablerow_core::job::Label;
    use gablerow_core::measure::Unit;
    use proptest::prelude::*;

    fn pages(list: PartList, job: &Job, paper: Paper) -> Vec<Page> {
        list_pages(list, job, &CabinetParts::of_job(job), paper)
    }

    /// Everything a list says, cell by cell.
    fn said(list: PartList, job: &Job) -> Vec<String> {
        let pages = pages(list, job, Paper::A4);
        let texts = pages.iter().flat_map(|page| texts(page));
        texts.map(str::to_owned).collect()
    }

    /// These cells stand one after the other.
    #[track_caller]
    fn assert_row(said: &[String], cells: &[&str]) {
        let is_there = said.windows(cells.len()).any(|window| window == cells);
        assert!(is_there, "{cells:?} is not in {said:?}");
    }

    // A side of 704 x 560 with a band of 1 on its front edge is cut 704 x 559.
    #[test]
    fn the_saw_is_told_what_it_makes_and_what_becomes_of_it() {
        let said = said(PartList::Cut, &drawers());
        assert_row(&said, &["1", "left side", "704.0", "559.0", "18.0"]);
        assert_row(&said, &["up", "front", "704.0", "560.0"]);
        // Door 597 x 317: a band on all edges.
        assert_row(&said, &["1", "D2 door, hung left", "315.0", "595.0"]);
    }

    #[test]
    fn boards_and_bands_are_summed_up_once_at_the_end() {
        let said = said(PartList::Cut, &job());
        // 1,203,304 mm2, with a fifth more 1,443,965; 2,536 mm of edges, with ends and a tenth 3,054.
        assert_row(&said, &["5", "1.21", "1.45", "2.6", "3.1"]);
    }

    #[test]
    fn doors_have_their_hinges_and_cups_below_them() {
        let said = said(PartList::Fronts, &drawers());
        assert_row(&said, &["1", "D2", "door, hung left", "597.0", "317.0"]);
        let below = said.join(" ");
        assert!(below.contains("D2: hinges on holes 14, 20"), "{below}");
        assert!(below.contains("D2: cups "), "{below}");
    }

    #[test]
    fn a_document_of_lists_can_be_searched_and_shows_every_name() {
        let mut job = drawers();
        job.title = Label::new("釉 store").unwrap();
        let pages = pages(PartList::Cut, &job, Paper::A4);
        let document = lopdf::Document::load_mem(&crate::pdf(&pages, "cut list")).unwrap();
        let read = document.extract_text(&[1]).unwrap();
        for words in [
            "[U+91C9] store: cut list",
            "D2 door, hung left",
            "all edges",
        ] {
            assert!(read.contains(words), "{words} is not in {read}");
        }
    }

    #[test]
    fn no_number_stands_on_another_line_than_its_fraction() {
        let mut job = drawers();
        job.unit = Unit::Inch;
        let is_fraction = |text: &str| {
            let number = text.split('"').next().and_then(|it| it.split_once('/'));
            number.is_some_and(|(over, under)| {
                over.parse::<u32>().is_ok() && under.parse::<u32>().is_ok()
            })
        };
        for width in (600..1600).step_by(37) {
            job.cabinets[0].size.width = mm(width);
            for list in PartList::ALL {
                for pair in said(list, &job).windows(2) {
                    let is_number = pair[0].ends_with(|last: char| last.is_ascii_digit());
                    assert!(
                        !(is_number && is_fraction(&pair[1])),
                        "{pair:?} of {list:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_list_of_nothing_has_no_sheets() {
        let job = job();
        for list in [PartList::Fronts, PartList::Boxes, PartList::Shelves] {
            assert_eq!(pages(list, &job, Paper::A4), []);
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(32))]

        #[test]
        fn lists_are_legible_whatever_things_are_called(
            mut job in any_job(),
            name in "[A-Za-z漢Ж ]{1,40}",
            paper in prop::sample::select(Paper::ALL.to_vec()),
        ) {
            if let Ok(name) = Label::new(name.trim()) {
                job.title = name.clone();
                job.cabinets[0].name = name;
            }
            for list in PartList::ALL {
                for page in pages(list, &job, paper) {
                    assert_printed(&page);
                }
            }
        }

        #[test]
        fn fronts_and_boxes_are_legible_whatever_they_are_called(name in "[A-Za-z漢Ж]{1,40}") {
            let mut job = drawers();
            for front in &mut job.cabinets[0].opening.fronts {
                front.name = Label::new(&name).unwrap();
            }
            for list in PartList::ALL {
                for page in pages(list, &job, Paper::Letter) {
                    assert_printed(&page);
                }
            }
        }
    }
}
