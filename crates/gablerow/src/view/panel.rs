//! One panel on screen: its board, its numbers, and the words front and back above it.

use gablerow_core::drawing::FaceDrawing;

use super::board::{self, Cursor, Projection};
use super::canvas::Canvas;
use crate::theme::Role;

/// Columns of the numbers beside a single face: hole number and height.
pub(super) const NUMBERS: u16 = 12;
/// Columns between the two panels of a book.
pub(super) const GUTTER: u16 = 6;

/// Draws the board with its edge words on the line above; the part is as wide as the board and both its edges.
pub(super) fn draw(
    canvas: &mut Canvas,
    drawing: &FaceDrawing,
    projection: &Projection,
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
    let panel = drawing.face.panel;
    let names = match projection.is_smaller() {
        // Drawn smaller than true to scale, and said so.
        true => {
            let column = projection.column.exact_mm();
            [
                format!("{panel}, a column is {column} mm"),
                format!("column {column} mm"),
            ]
        }
        false => [drawing.face.to_string(), panel.to_string()],
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
        cursor,
    );
}

/// The lines of a panel with the hole number each stands for, as far as the cabinet's grid has it.
pub(super) fn numbered(
    projection: &Projection,
    lines: u16,
    hole: i16,
    last: i16,
) -> impl Iterator<Item = (u16, i16)> {
    let start = projection.lowest_shown(lines, hole);
    let highest = projection.highest;
    (0..lines)
        .map(move |line| {
            (
                lines - 1 - line,
                start + i16::try_from(line).unwrap_or(i16::MAX),
            )
        })
        .filter(move |&(_, number)| (1..=last).contains(&number) && number <= highest)
}
