//! A face on screen: each cell of its projection in its colours, and the person's place on it.

use gablerow_core::check::Level;
use gablerow_core::drawing::{AreaKind, Dot, FaceDrawing};
use gablerow_core::layout::{Item, Use};
use gablerow_core::measure::Length;
use gablerow_papers::Signs;
use gablerow_papers::board::{Cell, Projection};

use super::canvas::Canvas;
use crate::theme::Role;

/// Where the person stands on a face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Cursor {
    /// The row, from the panel's front edge.
    pub(super) row: Length,
    /// The hole number.
    pub(super) hole: i16,
    /// Where a run begins.
    pub(super) mark: Option<i16>,
}

/// The lines of the screen that panels are drawn on, each standing for one hole number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Window {
    /// The hole number of the lowest line.
    pub(super) lowest: i16,
    /// How many lines there are.
    pub(super) lines: u16,
    /// Whether the panels go on below.
    pub(super) more_below: bool,
    /// Whether they go on above.
    pub(super) more_above: bool,
}

impl Window {
    /// All of the panels, or as much of them about a hole as fits; one height is one line on all of them.
    pub(super) fn of(panels: &[&Projection], lines_most: u16, hole: i16) -> Self {
        let lowest = panels.iter().map(|panel| panel.lowest).min().unwrap_or(1);
        let highest = panels
            .iter()
            .map(|panel| panel.highest)
            .max()
            .unwrap_or(lowest);
        let lines = u16::try_from(highest - lowest + 1)
            .unwrap_or(lines_most)
            .min(lines_most);
        let shown = i16::try_from(lines).unwrap_or(i16::MAX);
        let start = (hole - shown / 2).min(highest - shown + 1).max(lowest);
        Self {
            lowest: start,
            lines,
            more_below: start > lowest,
            more_above: start + shown <= highest,
        }
    }

    /// Each line with the hole number it stands for, from the top.
    pub(super) fn numbers(&self) -> impl Iterator<Item = (u16, i16)> + use<> {
        let highest = self.lowest + i16::try_from(self.lines).unwrap_or(i16::MAX) - 1;
        (0..self.lines).zip((self.lowest..=highest).rev())
    }
}

/// Draws as much of the face as the window shows; the part is as wide as its columns and both edges.
pub(super) fn draw(
    canvas: &mut Canvas,
    drawing: &FaceDrawing,
    projection: &Projection,
    window: Window,
    cursor: Option<Cursor>,
) {
    let on_panel = projection.lowest..=projection.highest;
    for (y, number) in window
        .numbers()
        .filter(|(_, number)| on_panel.contains(number))
    {
        edges(canvas, projection, y);
        for (x, cell) in (1..).zip(projection.line(drawing, number)) {
            let (glyph, role) = look(cell, &canvas.glyphs().signs);
            canvas.set(x, y, glyph, role);
        }
        if let Some(cursor) = cursor {
            person(canvas, drawing, projection, cursor, (number, y));
        }
    }
}

/// The two long edges; the front one carries the band and is heavier.
fn edges(canvas: &mut Canvas, projection: &Projection, y: u16) {
    let signs = canvas.glyphs().signs;
    let [left, right] = match projection.front_left {
        true => [signs.edge_front, signs.edge_back],
        false => [signs.edge_back, signs.edge_front],
    };
    canvas.set(0, y, left, Role::BoardEdge);
    canvas.set(projection.columns + 1, y, right, Role::BoardEdge);
}

fn person(
    canvas: &mut Canvas,
    drawing: &FaceDrawing,
    projection: &Projection,
    cursor: Cursor,
    (number, y): (i16, u16),
) {
    let row = drawing.rows.iter().position(|row| row.x == cursor.row);
    let column = row.and_then(|at| projection.row_columns.get(at)).copied();
    // A face without any row has a place all the same.
    let column = column.unwrap_or_else(|| projection.column_of(cursor.row));
    let x = match projection.front_left {
        true => 1 + column,
        false => projection.columns.saturating_sub(column),
    };
    let run = cursor
        .mark
        .map(|mark| mark.min(cursor.hole)..=mark.max(cursor.hole));
    if run.is_some_and(|run| run.contains(&number)) {
        canvas.over(x, y, Role::MarkedRun);
    }
    if cursor.hole == number {
        canvas.over(x, y, Role::Cursor);
    }
}

/// The sign of a cell, and what it is.
fn look(cell: Cell, signs: &Signs) -> (char, Role) {
    match cell {
        Cell::Outside => (' ', Role::Plain),
        Cell::Board => (' ', Role::Board),
        Cell::Empty => (signs.hole_empty, Role::EmptyHole),
        Cell::Barred => (signs.hole_barred, Role::EmptyHole),
        Cell::Area(AreaKind::Back) => (signs.edge_back, Role::EmptyHole),
        Cell::Area(AreaKind::FixedPanel(..)) => (signs.fixed_panel, Role::FixedPanel),
        Cell::Area(AreaKind::KeepOut(Item::Shelf, _)) => (signs.edge_level, Role::Board),
        Cell::Area(AreaKind::KeepOut(..)) => (signs.keep_out, Role::KeepOut),
        Cell::Hole(dot) => (signs.of_use(dot.hole.only_use()), hole_role(dot)),
    }
}

/// What troubles a hole shows as its ground; its sign stays.
fn hole_role(dot: &Dot) -> Role {
    match (dot.trouble, dot.hole.only_use()) {
        (Some(Level::Stop), _) => Role::Stop,
        (Some(Level::Warn), _) => Role::Warn,
        (_, Some(Use::Pin)) => Role::PinHole,
        (_, Some(Use::Plate)) => Role::PlateHole,
        (_, Some(Use::Runner)) => Role::RunnerHole,
        (_, Some(Use::Dowel | Use::Connector | Use::Free)) => Role::FreeHole,
        (_, None) => Role::SharedHole,
    }
}
