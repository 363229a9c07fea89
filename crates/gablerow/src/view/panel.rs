//! One panel on screen: its board, its numbers, and the words front and back above it.

use gablerow_core::drawing::FaceDrawing;
use gablerow_core::measure::Unit;

use gablerow_papers::board::Projection;
use unicode_width::UnicodeWidthStr;

use super::board::{self, Cursor, Window};
use super::canvas::Canvas;
use crate::theme::Role;

/// Columns of the numbers beside a single face: hole number and height, which in fractions is longer.
pub(super) fn numbers_width(unit: Unit) -> u16 {
    match unit {
        Unit::Millimetre => 12,
        Unit::Inch => 14,
    }
}

/// Columns between the two panels of a book.
pub(super) const GUTTER: u16 = 6;

/// The least width that has room for both edge words.
const EDGE_WORDS: usize = "front back".len();
/// Columns that both edge words and blanks around the name take.
const AROUND_NAME: usize = 12;

/// What stands on the line above a board.
struct Header {
    edges: [&'static str; 2],
    /// What the panel is called, or how small it is drawn; nothing when there is no room.
    name: String,
    /// Columns the name takes beside a board that is too narrow for it.
    beside: u16,
}

impl Header {
    /// The header of a board that has so many columns to spare beside it.
    fn of(drawing: &FaceDrawing, projection: &Projection, spare: u16) -> Self {
        let width = usize::from(projection.columns) + 2;
        let words = match width >= EDGE_WORDS {
            true => ["front", "back"],
            false => ["F", "B"],
        };
        let edges = match (projection.front_left, words) {
            (true, edges) => edges,
            (false, [front, back]) => [back, front],
        };
        let names = names(drawing, projection);
        let above = names
            .iter()
            .find(|name| name.width() + AROUND_NAME < width)
            .map(|name| (name, 0));
        let beside = || {
            let fits = |name: &&String| name.width() < usize::from(spare);
            let name = names.iter().find(fits)?;
            Some((name, u16::try_from(name.width() + 1).ok()?))
        };
        let (name, beside) = above.or_else(beside).unzip();
        Self {
            edges,
            name: name.cloned().unwrap_or_default(),
            beside: beside.unwrap_or_default(),
        }
    }
}

/// What may stand above a board, the longest first.
fn names(drawing: &FaceDrawing, projection: &Projection) -> Vec<String> {
    let panel = drawing.name.panel;
    if !projection.is_smaller() {
        return vec![drawing.name.to_string(), panel.to_string()];
    }
    // Drawn smaller than true to scale, and said so.
    let column = projection.column.exact_mm();
    vec![
        format!("{panel}, a column is {column} mm"),
        format!("{panel}, column {column}"),
        format!("column {column} mm"),
    ]
}

/// A board, what stands above it, and whether a name that stands beside it stands on its left.
pub(super) struct Panel<'a> {
    drawing: &'a FaceDrawing,
    projection: &'a Projection,
    header: Header,
    name_left: bool,
}

impl<'a> Panel<'a> {
    /// A panel that may be so many columns wide, its edges left out.
    pub(super) fn of(
        drawing: &'a FaceDrawing,
        projection: &'a Projection,
        room: u16,
        name_left: bool,
    ) -> Self {
        let spare = room.saturating_sub(projection.columns);
        Self {
            drawing,
            projection,
            header: Header::of(drawing, projection, spare),
            name_left,
        }
    }

    /// Columns of the board, of both its edges, and of a name beside it.
    pub(super) fn width(&self) -> u16 {
        self.projection.columns + 2 + self.header.beside
    }

    /// Draws the board with its header on the line above; the part is as wide as the panel.
    pub(super) fn draw(&self, canvas: &mut Canvas, window: Window, cursor: Option<Cursor>) {
        let (beside, wide) = (self.header.beside, self.projection.columns + 2);
        let x = if self.name_left { beside } else { 0 };
        if beside > 0 {
            let at = if self.name_left { 0 } else { wide + 1 };
            canvas.text(at, 0, &self.header.name, Role::Title);
        }
        let height = canvas.height();
        let mut part = canvas.part(x, 0, wide, height);
        let [left, right] = self.header.edges;
        part.text(0, 0, left, Role::Gutter);
        part.text_right(0, right, Role::Gutter);
        if beside == 0 {
            let name = u16::try_from(self.header.name.width()).unwrap_or(u16::MAX);
            let middle = wide.saturating_sub(name) / 2;
            part.text(middle, 0, &self.header.name, Role::Title);
        }
        board::draw(
            &mut part.part(0, 1, wide, height.saturating_sub(1)),
            self.drawing,
            self.projection,
            window,
            cursor,
        );
    }
}
