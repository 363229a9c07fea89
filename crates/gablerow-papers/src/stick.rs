//! The story stick: a true-size strip with every height at which a cabinet is bored, to be laid against a panel or a door.
//!
//! ```text
//!   left side, inside   P1, left face      D1, hung left
//!   |                   |                  | HEAD
//!   |-o-- 11  336.0     |-o-- 11  318.0    |-(o)- cup  94.5     a column for each face that is bored, and each door
//!   |                   |                  |
//!   | FOOT              | FOOT             | FOOT               each foot where it is in the cabinet
//! ```
//!
//! It comes as one long page, or over several sheets that overlap, each with marks to lay them on each other by.

mod strip;

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::drawing::{Dot, FaceDrawing};
use gablerow_core::job::{FaceId, Hand};
use gablerow_core::layout::{Upright, Use};
use gablerow_core::measure::Length;
use gablerow_core::parts::{FrontPart, Parts};

use crate::DrawnCabinet;
use crate::page::{Page, Paper};
use crate::pen::{BODY, Pen, SMALL, TITLE};
use crate::title_block::{Meaning, TitleBlock};

use self::strip::{COLUMN, Strip};

/// From the edge of a sheet to what is printed on it, in mm.
const MARGIN: f64 = 10.0;
/// What the check rule takes at the foot of a sheet.
const RULE: f64 = 8.0;
/// Beside the columns, for the marks by which sheets are laid on each other.
const GUTTER: f64 = 8.0;
/// How far two sheets lie on each other.
const OVERLAP: f64 = 16.0;
/// How far the strip goes on beyond the lowest foot and the highest head.
const BEYOND: f64 = 6.0;
/// How wide the printed part of a long page is at least, so that what is written has room.
const WIDTH_LEAST: f64 = 190.0;

/// How a stick is used.
const USE: &str = "Lay the FOOT of a column on the foot of the panel, or of the door: every line is at the height of hole centres. \
    Numbers are hole numbers, heights are from that foot.";
/// How its sheets are put together.
const JOIN: &str =
    "Overlap two sheets so that the crosses of one name lie on each other, on both sides.";

/// What a column is for: one face, or one door. Heights are from the carcass underside.
struct Column {
    name: String,
    foot: Length,
    head: Length,
    /// From the foot up; no two at one height.
    marks: Vec<Mark>,
}

impl Column {
    /// From its foot to its head, and on to what is bored beyond them: the drawing of a mistake shows it.
    fn reach(&self) -> (Length, Length) {
        let beyond =
            |(low, high): (Length, Length), mark: &Mark| (low.min(mark.z), high.max(mark.z));
        self.marks.iter().fold((self.foot, self.head), beyond)
    }
}

/// A height at which something is bored.
struct Mark {
    z: Length,
    what: What,
}

/// What is bored there.
enum What {
    /// Holes: their number on the grid, and their uses, each once.
    Holes(Option<i16>, Vec<Option<Use>>),
    /// A hinge cup.
    Cup,
}

impl DrawnCabinet<'_> {
    /// The story stick as one page, as long as the cabinet is high.
    #[must_use]
    pub fn stick(&self) -> Page {
        let columns = self.columns();
        let strip = Strip::new(&columns, self.job.unit);
        let count = u16::try_from(columns.len()).unwrap_or(u16::MAX);
        let width = WIDTH_LEAST.max(f64::from(count) * COLUMN);
        let title = self.title(&columns, "One sheet.", width);
        let (from, to) = span(&columns);
        let foot = MARGIN + RULE + title.height;
        let height = foot + (to - from) + strip.names_height() + MARGIN;
        let mut pen = Pen::new((width + 2.0 * MARGIN, height));
        pen.check_rule((MARGIN, MARGIN));
        title.draw(&mut pen, (MARGIN, foot));
        strip.draw(&mut pen, (MARGIN, foot), (from, to));
        pen.page()
    }

    /// The story stick over as many sheets as it takes: column by column as many as are beside each other, from the foot up.
    #[must_use]
    pub fn stick_sheets(&self, paper: Paper) -> Vec<Page> {
        let (width, height) = paper.size();
        let room = width - 2.0 * MARGIN;
        let columns = self.columns();
        let mut pages = Vec::new();
        let strips = columns.chunks(across(room));
        let is_one = strips.len() == 1;
        // Strips beside each other have letters, so that no sheet of one is glued to one of another.
        for (columns, letter) in strips.zip('A'..) {
            let letter = if is_one {
                String::new()
            } else {
                letter.to_string()
            };
            let strip = Strip::new(columns, self.job.unit);
            let (from, to) = span(columns);
            // Which sheet it is takes one line whatever the count.
            let title = self.title(columns, "", room);
            let foot = MARGIN + RULE + title.height;
            let high = height - foot - strip.names_height() - MARGIN;
            let sheets = sheets(to - from, high);
            for sheet in 0..sheets {
                let low = from + f64::from(sheet) * (high - OVERLAP);
                let words = match is_one {
                    true => format!("Sheet {} of {sheets}. {JOIN}", sheet + 1),
                    false => format!("Strip {letter}, sheet {} of {sheets}. {JOIN}", sheet + 1),
                };
                let title = self.title(columns, &words, room);
                let mut pen = Pen::new((width, height));
                pen.check_rule((MARGIN, MARGIN));
                title.draw(&mut pen, (MARGIN, foot));
                strip.draw(&mut pen, (MARGIN + GUTTER, foot), (low, to.min(low + high)));
                let below = (sheet > 0).then_some((sheet, foot + OVERLAP / 2.0));
                let above = foot + high - OVERLAP / 2.0;
                let above = (sheet + 1 < sheets).then_some((sheet + 1, above));
                for (number, y) in below.into_iter().chain(above) {
                    let name = format!("{letter}{number}");
                    strip::draw_seam(&mut pen, &name, y, (MARGIN, width - MARGIN));
                }
                pages.push(pen.page());
            }
        }
        pages
    }

    /// Every face that is bored, panel by panel from the left, then every door that has cups.
    fn columns(&self) -> Vec<Column> {
        let mut columns = Vec::new();
        for upright in &self.layout.uprights {
            for toward in [Hand::Left, Hand::Right] {
                let panel = upright.id;
                columns.extend(self.face_column(upright, FaceId { panel, toward }));
            }
        }
        let parts = Parts::of(self.cabinet, self.layout, self.job);
        columns.extend(
            parts
                .fronts
                .iter()
                .filter_map(|front| self.door_column(front)),
        );
        columns
    }

    fn face_column(&self, upright: &Upright, face: FaceId) -> Option<Column> {
        let drawing = FaceDrawing::of(self.layout, face, &[])?;
        let (foot, head) = (upright.foot.total(), upright.head.total());
        let mut dots: Vec<&Dot> = drawing.dots.iter().collect();
        dots.sort_by_key(|dot| dot.y);
        let mark = |dots: &[&Dot]| {
            let number = dots.iter().find_map(|dot| dot.hole.number);
            let mut uses: Vec<Option<Use>> = dots.iter().map(|dot| dot.hole.only_use()).collect();
            uses.sort_unstable();
            uses.dedup();
            Some(Mark {
                z: dots.first()?.y + foot,
                what: What::Holes(number, uses),
            })
        };
        let marks: Vec<Mark> = dots.chunk_by(|a, b| a.y == b.y).filter_map(mark).collect();
        (!marks.is_empty()).then(|| Column {
            name: drawing.name.to_string(),
            foot,
            head,
            marks,
        })
    }

    fn door_column(&self, front: &FrontPart) -> Option<Column> {
        let mut fronts = self.layout.fronts.iter();
        let place = fronts.find(|place| place.key == front.key && place.hung == front.hung)?;
        let cups = &front.hanging.as_ref()?.cups.cups;
        let mut marks: Vec<Mark> = Vec::new();
        for cup in cups {
            let z = place.foot + cup.from_foot.total();
            let what = What::Cup;
            marks.push(Mark { z, what });
        }
        let hung = front.hung.map_or("", Hand::word);
        Some(Column {
            name: format!("{}, hung {hung}", front.name),
            foot: place.foot,
            head: place.head(),
            marks,
        })
    }

    /// What is said of a strip; `sheet` says which of its sheets it is.
    fn title(&self, columns: &[Column], sheet: &str, width: f64) -> TitleBlock {
        let heading = self.heading() + "True size.";
        let bored = match columns.is_empty() {
            true => "Nothing of this cabinet is bored.",
            false => USE,
        };
        let mut texts = Vec::from([
            (TITLE, true, format!("{}, story stick", self.name())),
            (BODY, false, heading),
            (BODY, true, bored.to_string()),
            (SMALL, false, sheet.to_string()),
        ]);
        texts.extend(self.remarks(width));
        TitleBlock::of(&texts, meanings(columns), width)
    }
}

/// How many columns are beside each other in a room so wide, with the marks beside them; one at least.
fn across(room: f64) -> usize {
    let mut count = 1_u16;
    while f64::from(count + 1) * COLUMN + 2.0 * GUTTER <= room {
        count += 1;
    }
    count.into()
}

/// How many sheets a strip takes of which each shows so much, with what lies on the one before.
fn sheets(long: f64, each: f64) -> u16 {
    let mut sheets = 1;
    while sheets < u16::MAX && f64::from(sheets) * (each - OVERLAP) + OVERLAP < long {
        sheets += 1;
    }
    sheets
}

/// From below all feet to above all heads, in mm from the carcass underside.
fn span(columns: &[Column]) -> (f64, f64) {
    let low = columns.iter().map(|column| column.reach().0).min();
    let high = columns.iter().map(|column| column.reach().1).max();
    let (low, high) = (low.unwrap_or_default(), high.unwrap_or_default());
    (low.mm() - BEYOND, high.mm() + BEYOND)
}

/// What the signs of these columns stand for.
fn meanings(columns: &[Column]) -> Vec<Meaning> {
    let uses = |mark: &Mark| match &mark.what {
        What::Holes(_, uses) => uses.clone(),
        What::Cup => Vec::new(),
    };
    let marks = columns.iter().flat_map(|column| &column.marks);
    let mut all: Vec<Option<Use>> = marks.flat_map(uses).collect();
    all.sort_unstable();
    all.dedup();
    let word = |only_use: Option<Use>| only_use.map_or("shared", Use::word).to_string();
    all.into_iter()
        .map(|only_use| (only_use, word(only_use)))
        .collect()
}

#[cfg(test)]
mod tests;
