//! What is read from top to bottom, on as many sheets of paper as it takes: titles, sentences, tables, pictures.
//!
//! ```text
//! glaze store: cut list                 a title
//! A1, 600 x 704 x 560, 2 copies         a section; never last on a sheet
//!      no.  part         cut length     a table; its head is repeated on the next sheet
//!  [ ]   2  left side         704.0
//! -----------------------------------
//! glaze store: cut list     page 1 of 2
//! ```

mod table;

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use crate::page::{Page, Paper, TextEnd};
use crate::pen::{self, BODY, EDGE, HAIR, Pen, SMALL, THIN, TITLE};
use table::{ACROSS, PAD, TICK, Table, is_across, table_head};
pub(crate) use table::{Cell, Column, Row};

/// From the edge of a sheet to what is printed on it, in mm.
pub(crate) const MARGIN: f64 = 12.0;
/// The size of letters of a section's title.
const SECTION: f64 = 3.6;
/// How dark the ground is that they stand on.
const ACROSS_SHADE: f64 = 0.9;
/// What a section needs below it on the same sheet.
const SECTION_ROOM: f64 = 24.0;
/// What a sheet may have left at its foot, as a share of it, when a block goes to the next one as a whole.
const LEFT_MOST: f64 = 0.3;
/// From a table's remarks to what is said of more than it.
const CLOSING_GAP: f64 = 3.0;
/// From the left of what is said below a table to its letters.
const REMARK: f64 = 4.0;
/// What is kept free at the foot for the number of the page.
const NUMBER: f64 = 30.0;

/// A section with its table, kept together where that leaves little of a sheet free.
pub(crate) struct Block {
    /// Its title.
    pub(crate) title: String,
    /// What stands over the columns of its table, and on which side cells begin.
    pub(crate) columns: Vec<Column>,
    /// The rows of it.
    pub(crate) rows: Vec<Row>,
    /// What is said below it.
    pub(crate) remarks: Vec<String>,
    /// What is said farther below, of more than this table.
    pub(crate) closing: Vec<String>,
}

/// Sheets in the making.
pub(crate) struct Sheets {
    size: (f64, f64),
    /// What stands at the foot of every sheet, in lines.
    foot: Vec<String>,
    /// Those that are full, and the one that is being filled.
    full: Vec<Pen>,
    pen: Pen,
    /// How far up the sheet that is filled already.
    y: f64,
}

impl Sheets {
    /// The first sheet, with its title; that stands at the foot of every sheet again.
    pub(crate) fn new(paper: Paper, title: &str) -> Self {
        let size = paper.size();
        let room = size.0 - 2.0 * MARGIN;
        let mut sheets = Self {
            size,
            foot: pen::lines(title, SMALL, false, room - NUMBER),
            full: Vec::new(),
            pen: Pen::new(size),
            y: size.1 - MARGIN,
        };
        sheets.say(0.0, TITLE, true, title);
        sheets
    }

    /// What else stands at the foot of every sheet; said before anything is printed.
    pub(crate) fn stand_at_foot(&mut self, words: &str) {
        let room = self.width() - NUMBER;
        self.foot.extend(pen::lines(words, SMALL, false, room));
    }

    /// How wide what is printed can be.
    pub(crate) fn width(&self) -> f64 {
        self.size.0 - 2.0 * MARGIN
    }

    /// The lowest place for what is read.
    fn floor(&self) -> f64 {
        let lines = f64::from(u16::try_from(self.foot.len()).unwrap_or(u16::MAX));
        MARGIN + (lines + 1.0) * pen::leading(SMALL)
    }

    fn next(&mut self) {
        let full = core::mem::replace(&mut self.pen, Pen::new(self.size));
        self.full.push(full);
        self.y = self.size.1 - MARGIN;
    }

    /// Room for a picture so high: what draws it, and its upper left corner.
    pub(crate) fn picture(&mut self, high: f64) -> (&mut Pen, (f64, f64)) {
        self.need(high);
        let corner = (MARGIN, self.y);
        self.y -= high;
        (&mut self.pen, corner)
    }

    /// Goes on to the next sheet when this one has less room than that.
    fn need(&mut self, room: f64) {
        if self.y - room < self.floor() {
            self.next();
        }
    }

    /// Room left free.
    pub(crate) fn space(&mut self, room: f64) {
        self.y -= room;
    }

    /// The title of a section, with room for something below it.
    pub(crate) fn section(&mut self, title: &str) {
        self.need(SECTION_ROOM);
        self.space(PAD * 2.0);
        self.say(0.0, SECTION, true, title);
    }

    /// A sentence, or several.
    pub(crate) fn words(&mut self, words: &str) {
        self.say(0.0, BODY, false, words);
    }

    /// The same, heavy.
    pub(crate) fn bold(&mut self, words: &str) {
        self.say(0.0, BODY, true, words);
    }

    /// What is said below a table, in small letters, a little to the right.
    pub(crate) fn remark(&mut self, words: &str) {
        self.say(REMARK, SMALL, false, words);
    }

    /// A section with its table and what is said of it, on the next sheet when little is left of this one, and a whole sheet has
    /// room for it.
    pub(crate) fn block(&mut self, block: &Block) {
        let table = Table::of(&block.columns, &block.rows, self.width());
        let remarks = block.remarks.iter().chain(&block.closing);
        let lines = remarks.map(|it| pen::lines(it, SMALL, false, self.width() - REMARK).len());
        let lines = u16::try_from(lines.sum::<usize>()).unwrap_or(u16::MAX);
        let rows: f64 = block.rows.iter().map(|row| table.height(row)).sum();
        let section = PAD * 2.0 + pen::leading(SECTION);
        let remarks = f64::from(lines) * pen::leading(SMALL) + CLOSING_GAP;
        let room = section + table_head() + rows + PAD + remarks;
        let (whole, left) = (self.size.1 - MARGIN - self.floor(), self.y - self.floor());
        if room > left && room <= whole && left <= whole * LEFT_MOST {
            self.next();
        }
        self.section(&block.title);
        self.rows(&table, &block.rows, Some(&block.title));
        block.remarks.iter().for_each(|words| self.remark(words));
        if !block.closing.is_empty() {
            self.space(CLOSING_GAP);
        }
        block.closing.iter().for_each(|words| self.remark(words));
    }

    /// A sentence behind a box to tick.
    pub(crate) fn task(&mut self, words: &str) {
        self.need(pen::leading(BODY));
        self.tick(MARGIN, self.y - (pen::leading(BODY) - TICK) / 2.0);
        self.say(TICK + 2.0, BODY, false, words);
    }

    fn say(&mut self, indent: f64, size: f64, is_bold: bool, words: &str) {
        for line in pen::lines(words, size, is_bold, self.width() - indent) {
            self.need(pen::leading(size));
            self.y -= pen::leading(size);
            let at = (MARGIN + indent, self.y + size * 0.25);
            self.pen.write(at, TextEnd::Start, size, is_bold, &line);
        }
    }

    /// A box to tick, from its upper left corner.
    fn tick(&mut self, left: f64, top: f64) {
        let corners = ((left, top - TICK), (left + TICK, top));
        self.pen.block(corners.0, corners.1, Some(THIN), None);
    }

    /// A table, its head on every sheet it goes on to.
    pub(crate) fn table(&mut self, columns: &[Column], rows: &[Row]) {
        let table = Table::of(columns, rows, self.width());
        self.rows(&table, rows, None);
    }

    /// The rows of a table, its head on every sheet it goes on to, and above that the title of what goes on there.
    fn rows(&mut self, table: &Table, rows: &[Row], title: Option<&str>) {
        for (at, row) in rows.iter().enumerate() {
            // What holds for the rows below is never last on a sheet.
            let below = rows[at..].iter().take_while(|row| is_across(row)).count();
            let together = rows[at..].iter().take(below + 1);
            let room: f64 = together.map(|row| table.height(row)).sum();
            if at == 0 {
                self.need(table_head() + room);
                self.table_head(table);
            } else if self.y - room < self.floor() {
                self.next();
                if let Some(title) = title {
                    self.bold(&format!("{title}, continued"));
                }
                self.table_head(table);
            }
            self.row(row, table);
        }
        self.space(PAD);
    }

    fn table_head(&mut self, table: &Table) {
        self.y -= table_head();
        for ((head, _), place) in table.columns.iter().zip(&table.places) {
            let at = (place.x(), self.y + PAD);
            self.pen.bold(at, place.side, SMALL, head);
        }
        let ends = [(MARGIN, self.y), (MARGIN + table.width, self.y)];
        self.pen.way(&ends, EDGE);
    }

    fn row(&mut self, row: &Row, table: &Table) {
        let (high, right) = (table.height(row), MARGIN + table.width);
        let floor = self.y - high;
        let tick = self.y - (pen::leading(BODY) + PAD - TICK) / 2.0;
        let foot = self.y - PAD / 2.0 - BODY;
        for (cell, place) in row.iter().zip(&table.places) {
            let at = (place.x(), foot);
            match cell {
                Cell::Tick => self.tick(place.left, tick),
                Cell::Words(_) => self.lines(at, place.side, false, &cell.lines(place.width)),
                Cell::Bold(_) => self.lines(at, place.side, true, &cell.lines(place.width)),
                Cell::Across { is_task, .. } => {
                    let (from, to) = ((MARGIN, floor), (right, self.y));
                    self.pen.ground(from, to, ACROSS_SHADE);
                    if *is_task {
                        self.tick(MARGIN, tick);
                    }
                    let at = (MARGIN + ACROSS, foot);
                    self.lines(at, TextEnd::Start, true, &cell.lines(table.width));
                }
            }
        }
        self.y = floor;
        self.pen.way(&[(MARGIN, floor), (right, floor)], HAIR);
    }

    /// The lines of a cell, the first of them at a place.
    fn lines(&mut self, (x, mut y): (f64, f64), side: TextEnd, is_bold: bool, lines: &[String]) {
        for line in lines {
            self.pen.write((x, y), side, BODY, is_bold, line);
            y -= pen::leading(BODY);
        }
    }

    /// All of them, each with its title and number at the foot.
    pub(crate) fn pages(mut self) -> Vec<Page> {
        self.full.push(self.pen);
        let count = self.full.len();
        let numbered = (1..).zip(self.full);
        let finish = |(number, mut pen): (usize, Pen)| {
            let (right, mut y) = (self.size.0 - MARGIN, MARGIN);
            let words = format!("page {number} of {count}");
            pen.text((right, y), TextEnd::End, SMALL, &words);
            for line in self.foot.iter().rev() {
                pen.text((MARGIN, y), TextEnd::Start, SMALL, line);
                y += pen::leading(SMALL);
            }
            pen.page()
        };
        numbered.map(finish).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{assert_printed, texts};
    use alloc::string::ToString;
    use alloc::vec;
    use proptest::prelude::*;

    #[test]
    fn a_table_has_its_head_on_every_sheet_and_sheets_are_numbered() {
        let mut sheets = Sheets::new(Paper::A4, "cut list");
        let rows: Vec<Row> = (0..120)
            .map(|number| vec![Cell::Tick, Cell::words(format!("panel {number}"))])
            .collect();
        sheets.table(&[("", TextEnd::Start), ("part", TextEnd::Start)], &rows);
        let pages = sheets.pages();
        assert_eq!(pages.len(), 3);
        let mut found = 0;
        for (number, page) in (1..).zip(&pages) {
            assert_printed(page);
            let texts = texts(page);
            assert!(texts.contains(&format!("page {number} of 3").as_str()));
            assert_eq!(texts.iter().filter(|words| **words == "part").count(), 1);
            found += texts
                .iter()
                .filter(|words| words.starts_with("panel "))
                .count();
        }
        assert_eq!(found, 120);
    }

    // Three tables of 13 rows leave little of a sheet, so the next goes overleaf whole; one of 30 leaves half of it, so the next begins
    // there, and has its head a second time.
    #[test]
    fn a_block_stays_whole_where_little_is_left_free_for_it() {
        let heads = |rows: usize| {
            let mut sheets = Sheets::new(Paper::A4, "cut list");
            for at in 0..6 {
                let row = |number| vec![Cell::words(format!("panel {number}"))];
                sheets.block(&Block {
                    title: format!("cabinet {at}"),
                    columns: vec![("part", TextEnd::Start)],
                    rows: (0..rows).map(row).collect(),
                    remarks: Vec::new(),
                    closing: Vec::new(),
                });
            }
            let pages = sheets.pages();
            let heads = pages.iter().map(|page| {
                let texts = texts(page);
                texts.iter().filter(|words| **words == "part").count()
            });
            heads.collect::<Vec<usize>>()
        };
        assert_eq!(heads(13), [3, 3]);
        assert_eq!(heads(30).iter().sum::<usize>(), 9);
    }

    #[test]
    fn what_goes_on_overleaf_says_what_of_it_is_and_every_foot_has_what_stands_there() {
        let mut sheets = Sheets::new(Paper::A4, "cut list");
        sheets.stand_at_foot("A1 rev 7 OTTER");
        let row = |number: usize| vec![Cell::words(format!("panel {number}"))];
        sheets.block(&Block {
            title: "cabinet A1".to_string(),
            columns: vec![("part", TextEnd::Start)],
            rows: (0..120).map(row).collect(),
            remarks: Vec::new(),
            closing: Vec::new(),
        });
        for (at, page) in sheets.pages().iter().enumerate() {
            let texts = texts(page);
            let title = if at == 0 {
                "cabinet A1"
            } else {
                "cabinet A1, continued"
            };
            assert!(texts.contains(&title), "{texts:?}");
            assert!(texts.contains(&"A1 rev 7 OTTER"), "{texts:?}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn whatever_is_written_stays_inside_and_apart(
            title in "\\PC{0,60}",
            rows in prop::collection::vec(prop::collection::vec("\\PC{0,40}", 6), 1..12),
            paper in prop::sample::select(Paper::ALL.to_vec()),
        ) {
            let mut sheets = Sheets::new(paper, &title);
            sheets.task(&title);
            let columns = [("a", TextEnd::Start), ("b", TextEnd::End), ("c", TextEnd::Start)];
            let columns: Vec<Column> = [columns, columns].concat();
            let rows: Vec<Row> = rows
                .iter()
                .map(|row| row.iter().cloned().map(Cell::Words).collect())
                .collect();
            sheets.block(&Block {
                title: title.clone(),
                columns: columns.clone(),
                rows,
                remarks: vec![title.clone()],
                closing: vec![title],
            });
            for page in sheets.pages() {
                assert_printed(&page);
            }
        }
    }
}
