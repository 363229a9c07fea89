//! A face laid onto lines and columns, true to scale: one line is one pitch, one column half a pitch.
//!
//! What there is to draw was decided in core; here it is decided which cell shows it. A screen or a sheet only gives each
//! cell its character.

use alloc::vec;
use alloc::vec::Vec;

use gablerow_core::drawing::{AreaKind, Dot, FaceDrawing};
use gablerow_core::layout::Span;
use gablerow_core::measure::Length;

/// Half a pitch: what one column stands for where the panel fits.
pub const COLUMN: Length = Length::from_mm(16);

/// How a face is laid onto lines and columns.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Projection {
    /// What one column stands for: a whole multiple of [`COLUMN`].
    pub column: Length,
    /// Columns between the two long edges, at least one.
    pub columns: u16,
    /// The hole number that the lowest line of the panel stands for.
    pub lowest: i16,
    /// The hole number that its highest line stands for.
    pub highest: i16,
    /// Whether the front edge is on the left, as it is seen on a left wall.
    pub front_left: bool,
    /// The column of each row of the drawing, from the front edge; no two are the same as long as there are columns left.
    pub row_columns: Vec<u16>,
}

/// What one cell shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cell<'a> {
    /// Nothing: beyond the outline, as in a toe notch.
    Outside,
    /// Bare board.
    Board,
    /// An area.
    Area(AreaKind),
    /// A hole of the grid that nothing asks for.
    Empty,
    /// The same, where a pin would be wrong.
    Barred,
    /// A hole.
    Hole(&'a Dot),
}

impl Projection {
    /// The projection onto at most so many columns between the edges. A panel that is too deep for them is drawn smaller.
    #[must_use]
    pub fn of(drawing: &FaceDrawing, columns_most: u16) -> Self {
        let needed = |column: Length| -(-drawing.depth).div_floor(column);
        let mut column = COLUMN;
        while needed(column) > i32::from(columns_most.max(1)) {
            column += COLUMN;
        }
        let (lowest, highest) = lines(drawing);
        let columns = u16::try_from(needed(column)).unwrap_or(1).max(1);
        let mut projection = Self {
            column,
            columns,
            lowest,
            highest,
            front_left: drawing.is_front_left(),
            row_columns: Vec::new(),
        };
        projection.row_columns = projection.spread(drawing);
        projection
    }

    /// Whether the panel is drawn smaller than true to scale.
    #[must_use]
    pub fn is_smaller(&self) -> bool {
        self.column > COLUMN
    }

    /// The cells of the line that a hole number stands for, from left to right as the face is seen, without its edges.
    #[must_use]
    pub fn line<'a>(&self, drawing: &'a FaceDrawing, number: i16) -> Vec<Cell<'a>> {
        let mut line = Line {
            projection: self,
            drawing,
            height: drawing.height(number),
            cells: vec![Cell::Outside; usize::from(self.columns)],
        };
        line.board();
        line.areas();
        line.empty_holes(number);
        line.holes();
        if !self.front_left {
            line.cells.reverse();
        }
        line.cells
    }

    /// A row that would fall onto its neighbour moves by a column.
    fn spread(&self, drawing: &FaceDrawing) -> Vec<u16> {
        let mut taken: Vec<u16> = Vec::with_capacity(drawing.rows.len());
        for row in &drawing.rows {
            let free = taken.last().map_or(0, |last| last + 1);
            taken.push(self.column_of(row.x).max(free));
        }
        let mut limit = self.columns - 1;
        for column in taken.iter_mut().rev() {
            *column = (*column).min(limit);
            limit = column.saturating_sub(1);
        }
        taken
    }

    /// The column from the front edge that a distance falls into.
    #[must_use]
    pub fn column_of(&self, x: Length) -> u16 {
        let column = u16::try_from(x.div_floor(self.column).max(0)).unwrap_or(u16::MAX);
        column.min(self.columns - 1)
    }

    fn spans(&self) -> impl Iterator<Item = Span> {
        let column = self.column;
        (0..self.columns).map(move |at| {
            let from = column * i32::from(at);
            Span::new(from, from + column)
        })
    }
}

/// One line in the making, its cells from the front edge.
struct Line<'a, 'b> {
    projection: &'b Projection,
    drawing: &'a FaceDrawing,
    height: Length,
    cells: Vec<Cell<'a>>,
}

impl Line<'_, '_> {
    fn span(&self) -> Span {
        let half = Length::PITCH.half();
        Span::new(self.height - half, self.height + half)
    }

    fn board(&mut self) {
        // The lowest and the highest line may have their middle beyond the panel, as may the last column.
        let within =
            |value: Length, end: Length| value.max(Length::ZERO).min(end - Length::from_counts(1));
        let y = within(self.height, self.drawing.length);
        for (cell, span) in self.cells.iter_mut().zip(self.projection.spans()) {
            let x = within(
                span.from + self.projection.column.half(),
                self.drawing.depth,
            );
            if is_inside(&self.drawing.outline, x, y) {
                *cell = Cell::Board;
            }
        }
    }

    fn areas(&mut self) {
        let line = self.span();
        for area in self
            .drawing
            .areas
            .iter()
            .filter(|area| covers(area.y, line))
        {
            for (cell, span) in self.cells.iter_mut().zip(self.projection.spans()) {
                // Of what the back takes only its front is shown, so that the board behind it stays board.
                let shown = match area.kind {
                    AreaKind::Back => span.from <= area.x.from && area.x.from < span.to,
                    AreaKind::KeepOut(..) | AreaKind::FixedPanel(..) => covers(area.x, span),
                };
                if shown && *cell != Cell::Outside {
                    *cell = Cell::Area(area.kind);
                }
            }
        }
    }

    /// The holes of the rows a person may use here, as far as they lie on the panel and nothing fixed covers them.
    fn empty_holes(&mut self, number: i16) {
        let drawing = self.drawing;
        if number < 1 || self.height <= Length::ZERO {
            return;
        }
        for (row, &column) in drawing.rows.iter().zip(&self.projection.row_columns) {
            let on_panel = row.x > Length::ZERO && is_inside(&drawing.outline, row.x, self.height);
            if row.is_open && on_panel && !self.is_covered(row.x) {
                let is_barred = drawing.barred.contains(&(row.x, number));
                self.set(column, if is_barred { Cell::Barred } else { Cell::Empty });
            }
        }
    }

    fn is_covered(&self, x: Length) -> bool {
        let inside = |span: Span, at: Length| span.from < at && at < span.to;
        let mut areas = self.drawing.areas.iter();
        areas.any(|area| {
            matches!(area.kind, AreaKind::FixedPanel(..))
                && inside(area.x, x)
                && inside(area.y, self.height)
        })
    }

    fn holes(&mut self) {
        let line = self.span();
        let drawing = self.drawing;
        for dot in drawing
            .dots
            .iter()
            .filter(|dot| line.from <= dot.y && dot.y < line.to)
        {
            let row = drawing.rows.iter().position(|row| row.x == dot.x);
            let column = row
                .and_then(|at| self.projection.row_columns.get(at))
                .copied();
            self.set(
                column.unwrap_or(self.projection.column_of(dot.x)),
                Cell::Hole(dot),
            );
        }
    }
}

impl<'a> Line<'a, '_> {
    fn set(&mut self, column: u16, shown: Cell<'a>) {
        if let Some(cell) = self.cells.get_mut(usize::from(column)) {
            *cell = shown;
        }
    }
}

/// The hole numbers that the lowest and the highest line of a panel stand for; they may lie off its grid.
#[must_use]
pub fn lines(drawing: &FaceDrawing) -> (i16, i16) {
    let number = |y: Length| {
        let pitches = (y - drawing.first_hole + Length::PITCH.half()).div_floor(Length::PITCH);
        i16::try_from(pitches + 1).unwrap_or(i16::MAX)
    };
    let highest = drawing.length - Length::from_counts(1);
    (number(Length::ZERO), number(highest))
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{any_job, faces, job, mm};
    use gablerow_core::job::{FaceId, Hand, Job, Notch};
    use gablerow_core::layout::Layout;
    use proptest::prelude::*;

    fn drawing(job: &Job, side: Hand) -> FaceDrawing {
        let layout = Layout::of(&job.cabinets[0], job);
        FaceDrawing::of(&layout, FaceId::inside(side), &[]).unwrap()
    }

    fn columns_with_holes(drawing: &FaceDrawing, projection: &Projection) -> Vec<usize> {
        let cells = projection.line(drawing, 9);
        let is_hole = |at: &usize| matches!(cells[*at], Cell::Hole(_));
        (0..cells.len()).filter(is_hole).collect()
    }

    #[test]
    fn a_side_704_high_and_560_deep_is_22_lines_of_35_columns() {
        let projection = Projection::of(&drawing(&job(), Hand::Left), 60);
        assert_eq!((projection.lowest, projection.highest), (1, 22));
        assert_eq!((projection.columns, projection.is_smaller()), (35, false));
    }

    // Front row at 37, in column 37 / 16 = 2; back row at 560 - 57 = 503, in column 503 / 16 = 31.
    #[test]
    fn walls_are_seen_with_their_fronts_outward() {
        let of = |side| {
            let drawing = drawing(&job(), side);
            columns_with_holes(&drawing, &Projection::of(&drawing, 60))
        };
        assert_eq!(of(Hand::Left), [2, 31]);
        assert_eq!(of(Hand::Right), [34 - 31, 34 - 2]);
    }

    #[test]
    fn panel_too_deep_is_drawn_smaller() {
        let drawing = drawing(&job(), Hand::Left);
        let projection = Projection::of(&drawing, 20);
        assert!(projection.is_smaller());
        assert_eq!((projection.column, projection.columns), (mm(32), 18));
        assert_eq!(columns_with_holes(&drawing, &projection), [1, 15]);
    }

    #[test]
    fn rows_in_one_column_move_apart() {
        let mut drawing = drawing(&job(), Hand::Left);
        let front = drawing.rows[0];
        drawing.rows.insert(
            1,
            gablerow_core::drawing::RowLine {
                x: front.x + mm(5),
                ..front
            },
        );
        assert_eq!(Projection::of(&drawing, 60).row_columns, [2, 3, 31]);
        assert_eq!(Projection::of(&drawing, 2).row_columns.len(), 3);
    }

    // Holes 9 and 10 are bored, 8 is not.
    #[test]
    fn barred_holes_are_shown_where_nothing_is_bored() {
        let mut drawing = drawing(&job(), Hand::Left);
        let x = drawing.rows[0].x;
        drawing.barred = [(x, 8), (x, 9)].into();
        let projection = Projection::of(&drawing, 60);
        assert_eq!(projection.line(&drawing, 7)[2], Cell::Empty);
        assert_eq!(projection.line(&drawing, 8)[2], Cell::Barred);
        assert_eq!(projection.line(&drawing, 8)[31], Cell::Empty);
        assert!(matches!(projection.line(&drawing, 9)[2], Cell::Hole(_)));
    }

    proptest! {
        #[test]
        fn every_hole_shows_in_its_cell(job in any_job(), columns_most in 20..70_u16) {
            let layout = Layout::of(&job.cabinets[0], &job);
            for id in faces(&layout) {
                let drawing = FaceDrawing::of(&layout, id, &[]).unwrap();
                let projection = Projection::of(&drawing, columns_most);
                let column_of = |dot: &Dot| {
                    let row = drawing.rows.iter().position(|row| row.x == dot.x);
                    row.map_or(projection.column_of(dot.x), |at| projection.row_columns[at])
                };
                for dot in &drawing.dots {
                    let pitches = (dot.y - drawing.first_hole + mm(16)).div_floor(mm(32));
                    let number = i16::try_from(pitches + 1).unwrap();
                    let is_on_panel = mm(0) <= dot.y && dot.y < drawing.length;
                    prop_assert!(!is_on_panel || (projection.lowest..=projection.highest).contains(&number));
                    let column = column_of(dot);
                    let from_left = if id.toward == Hand::Right { column } else { projection.columns - 1 - column };
                    let cell = projection.line(&drawing, number)[usize::from(from_left)];
                    let Cell::Hole(shown) = cell else { return Err(TestCaseError::fail(format!("{dot:?} in {cell:?}"))) };
                    // Of two within one cell the later lies on top.
                    let is_same = shown == dot || column_of(shown) == column && (shown.y - dot.y).abs() < mm(32);
                    prop_assert!(is_same, "{:?} in the cell of {:?}", shown, dot);
                }
            }
        }
    }

    #[test]
    fn toe_notch_is_outside() {
        let mut job = job();
        job.cabinets[0].carcass.sides.notch = Some(Notch {
            height: mm(100),
            depth: mm(50),
        });
        let drawing = drawing(&job, Hand::Left);
        let cells = Projection::of(&drawing, 60).line(&drawing, 2);
        assert_eq!(
            cells.iter().filter(|cell| **cell == Cell::Outside).count(),
            3
        );
    }
}
