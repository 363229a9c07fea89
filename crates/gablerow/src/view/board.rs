//! A face as characters, true to scale: one line is one pitch, one column half a pitch.
//!
//! Only projection happens here; what there is to draw was decided in core.

use gablerow_core::check::Level;
use gablerow_core::drawing::{Area, AreaKind, Dot, FaceDrawing};
use gablerow_core::job::Hand;
use gablerow_core::layout::{Item, Span, Use};
use gablerow_core::measure::Length;

use super::canvas::Canvas;
use crate::theme::{Glyphs, Role};

/// Half a pitch: what one column stands for where the panel fits.
const COLUMN: Length = Length::from_mm(16);

/// How a face is laid onto lines and columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Projection {
    /// What one column stands for.
    pub(super) column: Length,
    /// Columns between the two edges.
    pub(super) columns: u16,
    /// The hole number of the lowest line of the panel.
    pub(super) lowest: i16,
    /// The hole number of its highest line.
    pub(super) highest: i16,
    /// Whether the front edge is on the left, as it is seen on a left wall.
    pub(super) front_left: bool,
}

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

impl Projection {
    /// The projection onto at most so many columns between the edges. A panel that is too deep for them is drawn smaller.
    pub(super) fn of(drawing: &FaceDrawing, columns_most: u16) -> Self {
        let needed = |column: Length| {
            drawing.depth.div_floor(column)
                + i32::from(drawing.depth.rem_floor(column) > Length::ZERO)
        };
        let mut column = COLUMN;
        while needed(column) > i32::from(columns_most.max(1)) {
            column += COLUMN;
        }
        let half = Length::PITCH.half();
        let number = |y: Length| {
            i16::try_from((y - drawing.first_hole + half).div_floor(Length::PITCH) + 1).unwrap_or(0)
        };
        Self {
            column,
            columns: u16::try_from(needed(column)).unwrap_or(columns_most),
            lowest: number(Length::ZERO),
            highest: number(drawing.length - Length::from_counts(1)),
            front_left: drawing.face.toward == Hand::Right,
        }
    }

    /// Whether the panel is drawn smaller than true to scale.
    pub(super) fn is_smaller(&self) -> bool {
        self.column > COLUMN
    }

    /// The lines a panel takes.
    pub(super) fn lines(&self) -> i16 {
        self.highest - self.lowest + 1
    }

    /// The hole number of the lowest line shown on so many lines, so that a hole is among them.
    pub(super) fn lowest_shown(&self, lines: u16, hole: i16) -> i16 {
        let lines = i16::try_from(lines).unwrap_or(i16::MAX);
        let highest_start = (self.highest - lines + 1).max(self.lowest);
        (hole - lines / 2).clamp(self.lowest, highest_start)
    }

    /// The column of each row, no two in one: a row that would fall onto its neighbour moves by a column.
    pub(super) fn row_columns(&self, drawing: &FaceDrawing) -> Vec<u16> {
        let mut taken: Vec<u16> = Vec::with_capacity(drawing.rows.len());
        for row in &drawing.rows {
            let free = taken.last().map_or(0, |last| last + 1);
            taken.push(self.column_of(row.x).max(free));
        }
        let mut limit = self.columns.saturating_sub(1);
        for column in taken.iter_mut().rev() {
            *column = (*column).min(limit);
            limit = column.saturating_sub(1);
        }
        taken
    }

    /// The column from the front edge that a distance falls into.
    fn column_of(&self, x: Length) -> u16 {
        let column = u16::try_from(x.div_floor(self.column).max(0)).unwrap_or(u16::MAX);
        column.min(self.columns.saturating_sub(1))
    }

    /// The place on screen, after the edge, of a column counted from the front.
    fn on_screen(&self, column: u16) -> u16 {
        if self.front_left {
            1 + column
        } else {
            self.columns.saturating_sub(column)
        }
    }

    fn column_span(&self, column: u16) -> Span {
        let from = self.column * i32::from(column);
        Span::new(from, from + self.column)
    }
}

/// Draws the face; the part is as wide as its columns and both edges.
pub(super) fn draw(
    canvas: &mut Canvas,
    drawing: &FaceDrawing,
    projection: &Projection,
    cursor: Option<Cursor>,
) {
    let hole = cursor.map_or(1, |cursor| cursor.hole);
    let start = projection.lowest_shown(canvas.height(), hole);
    let columns = projection.row_columns(drawing);
    for line in 0..canvas.height() {
        let y = canvas.height() - 1 - line;
        let number = start + i16::try_from(line).unwrap_or(i16::MAX);
        if number > projection.highest {
            break;
        }
        let mut painter = LinePainter {
            canvas,
            drawing,
            projection,
            number,
            y,
        };
        painter.ground();
        painter.areas();
        painter.empty_holes(&columns);
        painter.dots(&columns);
        if let Some(cursor) = cursor {
            painter.cursor(&columns, cursor);
        }
    }
}

/// One line of a face: one hole number.
struct LinePainter<'a, 'b> {
    canvas: &'a mut Canvas<'b>,
    drawing: &'a FaceDrawing,
    projection: &'a Projection,
    number: i16,
    y: u16,
}

impl LinePainter<'_, '_> {
    fn span(&self) -> Span {
        let half = Length::PITCH.half();
        let height = self.drawing.height(self.number);
        Span::new(height - half, height + half)
    }

    fn set(&mut self, column: u16, glyph: char, role: Role) {
        self.canvas
            .set(self.projection.on_screen(column), self.y, glyph, role);
    }

    /// Wood, and the two long edges; the front one carries the band and is heavier.
    fn ground(&mut self) {
        let glyphs = self.canvas.glyphs();
        let inner =
            |value: Length, end: Length| value.max(Length::ZERO).min(end - Length::from_counts(1));
        let middle = inner(self.drawing.height(self.number), self.drawing.length);
        let [left, right] = match self.projection.front_left {
            true => [glyphs.edge_front, glyphs.edge_back],
            false => [glyphs.edge_back, glyphs.edge_front],
        };
        self.canvas.set(0, self.y, left, Role::BoardEdge);
        self.canvas
            .set(self.projection.columns + 1, self.y, right, Role::BoardEdge);
        for column in 0..self.projection.columns {
            let x = self.projection.column_span(column).from + self.projection.column.half();
            let is_board = is_inside(&self.drawing.outline, inner(x, self.drawing.depth), middle);
            self.set(
                column,
                ' ',
                if is_board { Role::Board } else { Role::Plain },
            );
        }
    }

    fn areas(&mut self) {
        for area in &self.drawing.areas {
            if !covers(area.y, self.span()) {
                continue;
            }
            let (glyph, role) = area_glyph(area.kind, self.canvas.glyphs());
            for column in 0..self.projection.columns {
                let cell = self.projection.column_span(column);
                let is_wall = area.kind == AreaKind::Back
                    && cell.from <= area.x.from
                    && area.x.from < cell.to;
                if is_wall || (area.kind != AreaKind::Back && covers(area.x, cell)) {
                    self.set(column, glyph, role);
                }
            }
        }
    }

    /// The holes of the rows a person may use here, as far as nothing fixed covers them.
    fn empty_holes(&mut self, columns: &[u16]) {
        let height = self.drawing.height(self.number);
        if self.number < 1 || height <= Length::ZERO || height >= self.drawing.length {
            return;
        }
        let glyph = self.canvas.glyphs().hole_empty;
        for (row, &column) in self.drawing.rows.iter().zip(columns) {
            let on_panel = Length::ZERO < row.x && row.x < self.drawing.depth;
            if row.is_open && on_panel && !self.is_covered(row.x, height) {
                self.set(column, glyph, Role::EmptyHole);
            }
        }
    }

    fn is_covered(&self, x: Length, y: Length) -> bool {
        let inside = |span: Span, at: Length| span.from < at && at < span.to;
        let fixed = |area: &&Area| matches!(area.kind, AreaKind::FixedPanel(..));
        self.drawing
            .areas
            .iter()
            .filter(fixed)
            .any(|area| inside(area.x, x) && inside(area.y, y))
    }

    fn dots(&mut self, columns: &[u16]) {
        let span = self.span();
        for dot in &self.drawing.dots {
            if dot.y < span.from || dot.y >= span.to {
                continue;
            }
            let row = self
                .drawing
                .rows
                .iter()
                .position(|row| dot.hole.row.is_some() && row.x == dot.x);
            let column = row
                .and_then(|at| columns.get(at))
                .copied()
                .unwrap_or(self.projection.column_of(dot.x));
            let (glyph, role) = dot_glyph(dot, self.canvas.glyphs());
            self.set(column, glyph, role);
        }
    }

    fn cursor(&mut self, columns: &[u16], cursor: Cursor) {
        let Some(at) = self.drawing.rows.iter().position(|row| row.x == cursor.row) else {
            return;
        };
        let x = self.projection.on_screen(columns[at]);
        let run = cursor
            .mark
            .map(|mark| mark.min(cursor.hole)..=mark.max(cursor.hole));
        if run.is_some_and(|run| run.contains(&self.number)) {
            self.canvas.over(x, self.y, Role::MarkedRun);
        }
        if cursor.hole == self.number {
            self.canvas.over(x, self.y, Role::Cursor);
        }
    }
}

/// Whether an area shows in a cell: it takes half of it, or its middle lies in it.
fn covers(area: Span, cell: Span) -> bool {
    let middle = area.from + (area.to - area.from).half();
    area.overlap(cell) * 2 >= cell.to - cell.from || (cell.from <= middle && middle < cell.to)
}

/// Whether a point lies inside a polygon of level and upright edges: an odd number of upright ones lie beyond it.
fn is_inside(outline: &[(Length, Length)], x: Length, y: Length) -> bool {
    let edges = outline.iter().zip(outline.iter().cycle().skip(1));
    let beyond = |&(&(x1, y1), &(x2, y2)): &(&(Length, Length), &(Length, Length))| {
        x1 == x2 && x1 > x && y1.min(y2) <= y && y < y1.max(y2)
    };
    edges.filter(beyond).count() % 2 == 1
}

fn area_glyph(kind: AreaKind, glyphs: &Glyphs) -> (char, Role) {
    match kind {
        AreaKind::Back => (glyphs.edge_back, Role::EmptyHole),
        AreaKind::FixedPanel(..) => (glyphs.hatch, Role::FixedPanel),
        AreaKind::KeepOut(Item::Shelf, _) => (glyphs.edge_level, Role::Board),
        AreaKind::KeepOut(..) => (glyphs.keep_out, Role::KeepOut),
    }
}

/// How a hole is drawn. What troubles it shows as its ground, and the sign stays.
fn dot_glyph(dot: &Dot, glyphs: &Glyphs) -> (char, Role) {
    let (glyph, role) = sign(dot.hole.only_use(), glyphs);
    match dot.trouble {
        Some(Level::Stop) => (glyph, Role::Stop),
        Some(Level::Warn) => (glyph, Role::Warn),
        Some(Level::Note) | None => (glyph, role),
    }
}

/// The sign of a use; of several uses at once when it is `None`.
pub(super) fn sign(only_use: Option<Use>, glyphs: &Glyphs) -> (char, Role) {
    match only_use {
        Some(Use::Pin) => (glyphs.hole_pin, Role::PinHole),
        Some(Use::Plate) => (glyphs.hole_plate, Role::PlateHole),
        Some(Use::Runner) => (glyphs.hole_runner, Role::RunnerHole),
        Some(Use::Dowel | Use::Connector | Use::Free) => (glyphs.hole_free, Role::FreeHole),
        None => (glyphs.hole_shared, Role::SharedHole),
    }
}
