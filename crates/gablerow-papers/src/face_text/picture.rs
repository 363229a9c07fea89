//! The board itself, with the numbers before it.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::check::Level;
use gablerow_core::drawing::AreaKind;
use gablerow_core::layout::Item;
use gablerow_core::measure::Length;

use super::FaceSheet;
use crate::board::{self, Cell, Projection};
use crate::signs::Signs;
use crate::text::padded;

impl FaceSheet<'_> {
    /// The hole numbers from the highest line down, each with its height above the foot; blank where the grid or the panel has
    /// no such hole. All are as wide as the widest, and ASCII.
    pub(super) fn numbers(&self) -> Vec<String> {
        let (lowest, highest) = board::lines(self.drawing);
        let on_panel = |&(number, height): &(i16, Length)| {
            (1..=self.layout.last).contains(&number)
                && Length::ZERO < height
                && height < self.drawing.length
        };
        let heights = (lowest..=highest)
            .rev()
            .map(|number| (number, self.drawing.height(number)));
        let texts: Vec<Option<(i16, String)>> = heights
            .map(|height| on_panel(&height).then_some(height))
            .map(|height| {
                height.map(|(number, height)| (number, height.show(self.unit).to_string()))
            })
            .collect();
        let wide = texts
            .iter()
            .flatten()
            .map(|(_, height)| height.len())
            .max()
            .unwrap_or(0);
        let text = |text: &Option<(i16, String)>| match text {
            Some((number, height)) => {
                format!("{}{number:>3}  {height:>wide$} ", self.mark(*number))
            }
            None => padded("", 1 + 3 + 2 + wide + 1),
        };
        texts.iter().map(text).collect()
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

    /// Edge words, head, a line for each of the numbers, foot.
    pub(super) fn picture(
        &self,
        projection: &Projection,
        signs: &Signs,
        numbers: &[String],
    ) -> Vec<String> {
        let columns = usize::from(projection.columns);
        let before = padded("", numbers.first().map_or(0, String::len));
        let (left, right) = seen(projection, "front", "back");
        let gap = (columns + 2)
            .saturating_sub(left.len() + right.len())
            .max(1);
        let level = |[left, right]: [char; 2], notch| {
            let cells = core::iter::repeat_n(signs.edge_level, columns);
            edged([left, right], cells, notch, projection.front_left)
        };
        let [head_left, head_right, foot_left, foot_right] = signs.corners;
        let (left_edge, right_edge) = seen(projection, signs.edge_front, signs.edge_back);

        let mut lines = Vec::new();
        lines.push(format!("{before}{left}{}{right}", padded("", gap)));
        lines.push(format!("{before}{}", level([head_left, head_right], 0)));
        let mut notch = 0;
        for (number, words) in (projection.lowest..=projection.highest).rev().zip(numbers) {
            let cells = projection.line(self.drawing, number);
            notch = cells.iter().filter(|cell| **cell == Cell::Outside).count();
            let cells = cells.iter().map(|cell| sign(cell, signs));
            lines.push(format!(
                "{words}{}",
                edged([left_edge, right_edge], cells, notch, projection.front_left)
            ));
        }
        lines.push(format!("{before}{}", level([foot_left, foot_right], notch)));
        lines
    }
}

/// Cells between their edges; a notch moves the front edge back by so many columns.
fn edged(
    [left, right]: [char; 2],
    cells: impl Iterator<Item = char>,
    notch: usize,
    front_left: bool,
) -> String {
    let mut line: Vec<char> = core::iter::once(left).chain(cells).chain([right]).collect();
    let last = line.len() - 1;
    let (front, gone) = match front_left {
        true => (0, 0..notch),
        false => (last, last - notch + 1..last + 1),
    };
    let edge = if front_left { notch } else { last - notch };
    line.swap(front, edge);
    line[gone].fill(' ');
    line.into_iter().collect()
}

/// What belongs to the front and to the back, as they are seen: left first.
fn seen<T>(projection: &Projection, front: T, back: T) -> (T, T) {
    match projection.front_left {
        true => (front, back),
        false => (back, front),
    }
}

fn sign(cell: &Cell, signs: &Signs) -> char {
    match cell {
        Cell::Outside | Cell::Board => ' ',
        Cell::Area(AreaKind::Back) => signs.edge_back,
        Cell::Area(AreaKind::FixedPanel(..)) => signs.fixed_panel,
        Cell::Area(AreaKind::KeepOut(Item::Shelf, _)) => signs.edge_level,
        Cell::Area(AreaKind::KeepOut(..)) => signs.keep_out,
        Cell::Empty => signs.hole_empty,
        Cell::Barred => signs.hole_barred,
        Cell::Hole(dot) => signs.of_use(dot.hole.only_use()),
    }
}
