//! What is said beside a face: sizes, balance, rows, single bores, signs.

use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::drawing::{Dot, RowLine};
use gablerow_core::layout::{Hole, Upright, Use};
use gablerow_core::measure::Length;

use super::FaceSheet;
use crate::board::Projection;
use crate::hole_table::bore;
use crate::signs::Signs;

impl FaceSheet<'_> {
    /// What there is to say, paragraph by paragraph.
    pub(super) fn words(&self, projection: &Projection, signs: &Signs) -> Vec<String> {
        let mut words = self.sizes();
        if projection.is_smaller() {
            words.push(format!(
                "drawn smaller: one column is {} mm",
                projection.column.exact_mm()
            ));
        }
        // A free hole of no row is one of the single ones.
        let has_holes = |row: &&RowLine| {
            let mut dots = self.drawing.dots.iter();
            row.is_open || dots.any(|dot| dot.hole.row.is_some() && dot.x == row.x)
        };
        for row in self.drawing.rows.iter().filter(has_holes) {
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
        let balance = match upright.map(|upright| upright.mismatch) {
            Some(mismatch) if !mismatch.is_balanced() => {
                format!("{} out of balance", show(mismatch.size()))
            }
            _ => "balanced".to_owned(),
        };
        let holes = upright.map_or(0, Upright::hole_count);
        let first = upright.map_or(Length::ZERO, |upright| upright.first_hole(self.layout.grid));
        let (length, depth) = (show(self.drawing.length), show(self.drawing.depth));
        [
            format!("{length} x {depth} x {} {}", show(board), self.unit.word()),
            format!("{holes} holes, the first {} up", show(first)),
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
        let text = |dot: &Dot| {
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
