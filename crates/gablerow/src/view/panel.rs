//! One panel on screen: its board, its numbers, and the words front and back above it.

use gablerow_core::drawing::FaceDrawing;
use gablerow_core::measure::Unit;

use gablerow_papers::board::Projection;

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

/// Draws the board with its edge words on the line above; the part is as wide as the board and both its edges.
pub(super) fn draw(
    canvas: &mut Canvas,
    drawing: &FaceDrawing,
    projection: &Projection,
    window: Window,
    cursor: Option<Cursor>,
) {
    let width = canvas.width();
    let (left, right) = if projection.front_left {
        ("front", "back")
    } else {
        ("back", "front")
    };
    canvas.text(0, 0, left, Role::Gutter);
    canvas.text_right(0, right, Role::Gutter);
    let panel = drawing.name.panel;
    let names = match projection.is_smaller() {
        // Drawn smaller than true to scale, and said so.
        true => {
            let column = projection.column.exact_mm();
            [
                format!("{panel}, a column is {column} mm"),
                format!("column {column} mm"),
            ]
        }
        false => [drawing.name.to_string(), panel.to_string()],
    };
    for name in names {
        let wide = u16::try_from(name.len()).unwrap_or(u16::MAX);
        if wide.saturating_add(12) < width {
            canvas.text((width - wide) / 2, 0, &name, Role::Title);
            break;
        }
    }
    let height = canvas.height().saturating_sub(1);
    board::draw(
        &mut canvas.part(0, 1, width, height),
        drawing,
        projection,
        window,
        cursor,
    );
}
