//! A face as plain text.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::check::Level;
use gablerow_core::drawing::{AreaKind, FaceDrawing, RowLine};
use gablerow_core::job::Cabinet;
use gablerow_core::layout::{Hole, Item, Layout, Use};
use gablerow_core::measure::{Length, Unit};
use unicode_width::UnicodeWidthStr;

use crate::board::{self, Cell, Projection};
use crate::hole_table::bore;
use crate::signs::Signs;
use crate::text::{WIDTH, padded, push_line, wrap};

/// The fewest columns that words beside a face need; with less they stand below it.
const BESIDE_LEAST: usize = 24;

/// One face, and what it takes to put it on a sheet.
#[derive(Clone, Copy, Debug)]
pub struct FaceSheet<'a> {
    /// Its cabinet.
    pub cabinet: &'a Cabinet,
    /// What that comes to.
    pub layout: &'a Layout,
    /// The face.
    pub drawing: &'a FaceDrawing,
    /// The unit of the numbers.
    pub unit: Unit,
}

impl FaceSheet<'_> {
    /// The face as text, at most [`WIDTH`] columns wide.
    ///
    /// One line is one pitch and one column half a pitch. Each line has the hole number and the height above the panel's foot
    /// before it; `!` stands before those where a stop is open, `?` where a warning is. Sizes, balance and rows stand beside
    /// the face, or below it where there is no room.
    #[must_use]
    pub fn text(&self, signs: &Signs) -> String {
        let numbers = self.numbers();
        let wide = numbers
            .iter()
            .map(|number| number.width())
            .max()
            .unwrap_or(0);
        let columns_most = u16::try_from(WIDTH - wide - 3).unwrap_or(u16::MAX);
        let projection = Projection::of(self.drawing, columns_most);
        let mut lines = self.board(&projection, signs, &numbers);
        let words = self.words(&projection, signs);

        let mut out = format!("{}, {}\n", self.cabinet.name, self.drawing.face);
        let start = wide + usize::from(projection.columns) + 5;
        let beside = WIDTH.saturating_sub(start);
        let wrapped = |room: usize| {
            words
                .iter()
                .flat_map(move |words| wrapped(words, room))
                .collect::<Vec<_>>()
        };
        let words = match beside >= BESIDE_LEAST {
            true => wrapped(beside),
            false => {
                lines.extend(wrapped(WIDTH));
                Vec::new()
            }
        };
        lines.resize(lines.len().max(words.len()), String::new());
        let mut words = words.into_iter();
        for line in lines {
            match words.next() {
                Some(words) if !words.is_empty() => {
                    push_line(&mut out, &padded(&line, start), &words);
                }
                _ => push_line(&mut out, &line, ""),
            }
        }
        out
    }

    /// The hole numbers from the highest line down, each with its height; nothing where the grid has no hole.
    fn numbers(&self) -> Vec<String> {
        let (lowest, highest) = board::lines(self.drawing);
        let heights: Vec<_> = (lowest..=highest)
            .rev()
            .map(|number| {
                (
                    number,
                    self.drawing.height(number).show(self.unit).to_string(),
                )
            })
            .collect();
        let wide = heights
            .iter()
            .map(|(_, height)| height.len())
            .max()
            .unwrap_or(0);
        let text = |(number, height): (i16, String)| match (1..=self.layout.last).contains(&number)
        {
            true => format!("{}{number:>3}  {height:>wide$} ", self.mark(number)),
            false => String::new(),
        };
        heights.into_iter().map(text).collect()
    }

    /// What draws the eye to a line: `!` for an open stop, `?` for a warning.
    fn mark(&self, number: i16) -> char {
        let here = self
            .drawing
            .dots
            .iter()
            .filter(|dot| dot.hole.number == Some(number));
        match here.filter_map(|dot| dot.trouble).min() {
            Some(Level::Stop) => '!',
            Some(Level::Warn) => '?',
            Some(Level::Note) | None => ' ',
        }
    }

    fn board(&self, projection: &Projection, signs: &Signs, numbers: &[String]) -> Vec<String> {
        let wide = numbers
            .iter()
            .map(|number| number.width())
            .max()
            .unwrap_or(0);
        let inner = usize::from(projection.columns);
        let (left, right) = seen(projection, "front", "back");
        let gap = (inner + 2).saturating_sub(left.len() + right.len()).max(1);
        let [head_left, head_right, foot_left, foot_right] = signs.corners;
        let level = String::from_iter(core::iter::repeat_n(signs.edge_level, inner));
        let before = " ".repeat(wide);
        let (left_edge, right_edge) = seen(projection, signs.edge_front, signs.edge_back);

        let mut lines = Vec::new();
        lines.push(format!("{before}{left}{}{right}", " ".repeat(gap)));
        lines.push(format!("{before}{head_left}{level}{head_right}"));
        for (number, words) in (projection.lowest..=projection.highest).rev().zip(numbers) {
            let cells = projection.line(self.drawing, number);
            let cells: String = cells.iter().map(|cell| sign(cell, signs)).collect();
            lines.push(format!(
                "{}{left_edge}{cells}{right_edge}",
                padded(words, wide)
            ));
        }
        lines.push(format!("{before}{foot_left}{level}{foot_right}"));
        lines
    }

    /// What there is to say, paragraph by paragraph.
    fn words(&self, projection: &Projection, signs: &Signs) -> Vec<String> {
        let mut words = self.sizes();
        if projection.is_smaller() {
            words.push(format!(
                "drawn smaller: one column is {} mm",
                projection.column.exact_mm()
            ));
        }
        for row in &self.drawing.rows {
            words.push(String::new());
            words.extend(self.row(row, signs));
        }
        words.extend(self.singles(signs));
        words.extend(self.meanings(signs));
        words
    }

    fn sizes(&self) -> Vec<String> {
        let show = |length: Length| length.show(self.unit);
        let upright = self.layout.upright(self.drawing.face.panel);
        let board = upright.map_or(Length::ZERO, |upright| upright.thickness);
        let offsets = self.cabinet.offsets;
        let mismatch = offsets.ends(self.cabinet.size.height).mismatch();
        let balance = match mismatch.is_balanced() {
            true => "balanced".to_owned(),
            false => format!("{} out of balance", show(mismatch.size())),
        };
        let (length, depth) = (show(self.drawing.length), show(self.drawing.depth));
        [
            format!("{length} x {depth} x {} {}", show(board), self.unit.word()),
            format!(
                "{} holes, the first {} up",
                self.layout.last,
                show(offsets.foot)
            ),
            balance,
        ]
        .into()
    }

    fn row(&self, row: &RowLine, signs: &Signs) -> [String; 3] {
        let show = |length: Length| length.show(self.unit);
        let on_row = || {
            self.drawing
                .dots
                .iter()
                .filter(|dot| dot.hole.row.is_some() && dot.x == row.x)
        };
        let holes = match on_row().count() {
            0 => "no hole".to_owned(),
            count => format!("{} ({count})", signs.runs(on_row().map(|dot| &dot.hole))),
        };
        [
            format!("{} row", row.name.word()),
            format!(
                "  front {}, back {}",
                show(row.x),
                show(self.drawing.depth - row.x)
            ),
            format!("  {holes}"),
        ]
    }

    /// The bores that are on no row.
    fn singles(&self, signs: &Signs) -> Vec<String> {
        let show = |length: Length| length.show(self.unit);
        let singles = self
            .drawing
            .dots
            .iter()
            .filter(|dot| dot.hole.row.is_none());
        let text = |dot: &gablerow_core::drawing::Dot| {
            let sign = signs.of_use(dot.hole.only_use());
            let bore = bore(&dot.hole, self.unit, signs);
            format!(
                "  {sign} {} from front, {} from foot, {bore}",
                show(dot.x),
                show(dot.y)
            )
        };
        let mut lines: Vec<String> = singles.map(text).collect();
        if !lines.is_empty() {
            lines.splice(0..0, [String::new(), "single bores".to_owned()]);
        }
        lines
    }

    /// What the signs of the holes stand for, as far as they are on this face.
    fn meanings(&self, signs: &Signs) -> Vec<String> {
        let holes = || {
            self.drawing
                .dots
                .iter()
                .map(|dot| &dot.hole)
                .map(Hole::only_use)
        };
        let all = Use::ALL.into_iter().map(Some).chain([None]);
        let mut meanings: Vec<String> = Vec::new();
        for use_ in all.filter(|use_| holes().any(|here| here == *use_)) {
            let meaning = format!("{} {}", signs.of_use(use_), Signs::meaning(use_));
            if !meanings.contains(&meaning) {
                meanings.push(meaning);
            }
        }
        match meanings.is_empty() {
            true => meanings,
            false => [String::new(), meanings.join("  ")].into(),
        }
    }
}

/// What belongs to the front and to the back, as they are seen: left first.
fn seen<T>(projection: &Projection, front: T, back: T) -> (T, T) {
    match projection.front_left {
        true => (front, back),
        false => (back, front),
    }
}

/// A paragraph in lines; all but the first keep its indent.
fn wrapped(words: &str, room: usize) -> Vec<String> {
    let indent = &words[..words.len() - words.trim_start().len()];
    let lines = wrap(words, room.saturating_sub(indent.len())).into_iter();
    lines.map(|line| indent.to_owned() + &line).collect()
}

fn sign(cell: &Cell, signs: &Signs) -> char {
    match cell {
        Cell::Outside | Cell::Board => ' ',
        Cell::Area(AreaKind::Back) => signs.edge_back,
        Cell::Area(AreaKind::FixedPanel(..)) => signs.fixed_panel,
        Cell::Area(AreaKind::KeepOut(Item::Shelf, _)) => signs.edge_level,
        Cell::Area(AreaKind::KeepOut(..)) => signs.keep_out,
        Cell::Empty => signs.hole_empty,
        Cell::Hole(dot) => signs.of_use(dot.hole.only_use()),
    }
}

#[cfg(test)]
mod tests;
