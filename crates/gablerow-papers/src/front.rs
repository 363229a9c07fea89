//! A cabinet from the front laid onto lines and columns, true in shape: one line is a pitch or a whole number of them, one
//! column half as much.
//!
//! What there is to draw was decided in core; here it is decided which cell shows it. A screen or a sheet only gives each
//! cell its character.
//!
//! ```text
//! Elevation -- Projection::of --> areas: which lines and columns each shape takes
//!                 line ---------> cells: what lies in front, and what shows through a door as a broken line
//! ```

mod axis;

use alloc::vec;
use alloc::vec::Vec;

use gablerow_core::elevation::{Elevation, Leaf, Look, Shape, What};
use gablerow_core::job::{Hand, Key};
use gablerow_core::layout::{Item, Span};
use gablerow_core::measure::Length;

use crate::board::COLUMN;
use axis::Axis;

/// How a cabinet is laid onto lines and columns.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Projection {
    /// So many pitches are one line, and so many half pitches one column; 1 is the shape that faces are drawn in.
    pub ratio: u16,
    /// Columns from edge to edge, at least one.
    pub columns: u16,
    /// Lines from foot to head, at least one.
    pub lines: u16,
    /// The lowest hole number that the lowest line stands for; it may lie off the grid.
    pub lowest: i16,
    /// What takes which cells, in the order of painting.
    pub areas: Vec<Area>,
}

/// The cells of one shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Area {
    /// What it is.
    pub what: What,
    /// Its columns, from the left.
    pub columns: Cells,
    /// Its lines, from the foot.
    pub lines: Cells,
}

/// A run of lines or columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cells {
    /// The first.
    pub from: u16,
    /// The one after the last; always more than the first.
    pub to: u16,
}

/// What one cell shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cell {
    /// What lies nearest.
    pub ground: Ground,
    /// What is drawn on it.
    pub ink: Ink,
}

/// What lies nearest in a cell.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// Nothing of this cabinet.
    Outside,
    /// The space of an open bay.
    Space,
    /// The edge of a board.
    Board,
    /// A front.
    Front,
}

/// What is drawn in a cell; what lies behind a front is drawn in every second cell only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// Nothing.
    Blank,
    /// The front edge of an upright.
    Upright,
    /// The front edge of a panel.
    Panel,
    /// The front edge of a loose shelf.
    Shelf,
    /// The outline of a drawer behind a front.
    Dots,
    /// The edge a door hangs on.
    HungEdge,
    /// Any other upright edge of a front.
    Edge,
    /// The gap below a front.
    Gap,
    /// The surface of a front that does not open.
    Hatch,
    /// The grip at the edge on this hand, where a door opens.
    Grip(Hand),
    /// The wall of a box.
    BoxWall,
    /// The bottom of a box.
    BoxFloor,
    /// The corner of a box on this hand.
    BoxCorner(Hand),
    /// A hinge plate.
    Plate,
    /// A runner.
    Runner,
}

impl Cells {
    /// Whether a line or column is one of them.
    #[must_use]
    pub fn contains(self, at: u16) -> bool {
        (self.from..self.to).contains(&at)
    }

    /// The cell in the middle, or right after it.
    #[must_use]
    pub fn middle(self) -> u16 {
        self.from + self.count() / 2
    }

    /// What is also among others; the nearest of these when nothing is.
    #[must_use]
    pub fn within(self, others: Self) -> Self {
        let from = self.from.clamp(others.from, others.to - 1);
        Self {
            from,
            to: self.to.min(others.to).max(from + 1),
        }
    }

    /// Makes it begin earlier, at the end of what is before it.
    fn begin(&mut self, at: u16) {
        self.from = self.from.min(at);
    }

    fn with(self, other: Self) -> Self {
        Self {
            from: self.from.min(other.from),
            to: self.to.max(other.to),
        }
    }

    /// How many there are.
    #[must_use]
    pub fn count(self) -> u16 {
        self.to - self.from
    }
}

impl Projection {
    /// The projection onto at most so many columns and lines, at the smallest whole ratio that fits.
    #[must_use]
    pub fn of(elevation: &Elevation, first_hole: Length, (columns, lines): (u16, u16)) -> Self {
        let axes = |ratio: u16| {
            let ratio = i32::from(ratio);
            let across = Axis::across(elevation.across, COLUMN * ratio);
            let up = Axis::up(elevation.z, first_hole, Length::PITCH * ratio);
            (across, up)
        };
        let fits = |&ratio: &u16| {
            let (across, up) = axes(ratio);
            across.count <= columns.max(1) && up.count <= lines.max(1)
        };
        let ratio = (1..RATIO_MOST).find(fits).unwrap_or(RATIO_MOST);
        let (across, up) = axes(ratio);
        let area = |shape: &Shape| {
            let (columns, lines) = match shape.what {
                What::Upright(_) => (across.board(shape.across), up.between(shape.z)),
                What::Panel(..) | What::Shelf(_) => {
                    (across.between(shape.across), up.board(shape.z))
                }
                _ => (across.between(shape.across), up.between(shape.z)),
            };
            Area {
                what: shape.what,
                columns,
                lines,
            }
        };
        let pitches = (up.start - first_hole + Length::PITCH.half()).div_floor(Length::PITCH);
        Self {
            ratio,
            columns: across.count,
            lines: up.count,
            lowest: i16::try_from(pitches + 1).unwrap_or(i16::MAX),
            areas: Self::joined(elevation, (across.step.half(), up.step.half()), area),
        }
    }

    /// The areas of all shapes; fronts with a gap between them that is less than half a cell lie side by side.
    fn joined(
        elevation: &Elevation,
        (column, line): (Length, Length),
        area: impl Fn(&Shape) -> Area,
    ) -> Vec<Area> {
        let mut areas: Vec<Area> = elevation.shapes.iter().map(area).collect();
        let is_front = |shape: &&Shape| matches!(shape.what, What::Front(_));
        let next = |before: Span, after: Span, half: Length| {
            let gap = after.from - before.to;
            Length::ZERO <= gap && gap < half
        };
        for (at, shape) in elevation.shapes.iter().enumerate() {
            if !is_front(&shape) {
                continue;
            }
            for (other, before) in elevation.shapes.iter().enumerate() {
                let (Some(mut own), Some(edge)) = (areas.get(at).copied(), areas.get(other)) else {
                    continue;
                };
                if !is_front(&before) {
                    continue;
                }
                let meets = |one: Span, two: Span| one.overlap(two) > Length::ZERO;
                if next(before.z, shape.z, line) && meets(before.across, shape.across) {
                    own.lines.begin(edge.lines.to);
                }
                if next(before.across, shape.across, column) && meets(before.z, shape.z) {
                    own.columns.begin(edge.columns.to);
                }
                if let Some(area) = areas.get_mut(at) {
                    *area = own;
                }
            }
        }
        areas
    }

    /// What one column stands for.
    #[must_use]
    pub fn column(&self) -> Length {
        COLUMN * i32::from(self.ratio)
    }

    /// The lowest hole number that a line stands for, counted from the foot.
    #[must_use]
    pub fn hole(&self, line: u16) -> i16 {
        let above = i32::from(line) * i32::from(self.ratio);
        i16::try_from(i32::from(self.lowest) + above).unwrap_or(i16::MAX)
    }

    /// The cells of a line, counted from the foot, from left to right.
    #[must_use]
    pub fn line(&self, at: u16) -> Vec<Cell> {
        let nothing = Cell {
            ground: Ground::Outside,
            ink: Ink::Blank,
        };
        let mut line = Line {
            at,
            cells: vec![nothing; usize::from(self.columns)],
        };
        for area in self.areas.iter().filter(|area| area.lines.contains(at)) {
            let before = || self.hiding(area).map(|(front, _)| front.columns);
            match area.what {
                What::Opening(_) => {}
                What::Bay(_) => line.fill(area, Ground::Space, Ink::Blank),
                // A rail at the back is seen through the space before it.
                What::Panel(Item::BackRail, _) => line.broken(area, Ink::Panel),
                What::Panel(..) => line.fill(area, Ground::Board, Ink::Panel),
                What::Upright(_) => line.fill(area, Ground::Board, Ink::Upright),
                What::Shelf(_) => line.fill(area, Ground::Board, Ink::Shelf),
                What::Behind(_) => line.dots(area),
                What::Front(leaf) => line.front(area, leaf),
                What::Box(_) => line.tray(area),
                What::Runner(..) => line.mark(area, before(), Ink::Runner),
                What::Plate(..) => line.mark(area, before(), Ink::Plate),
            }
        }
        line.cells
    }

    /// The columns and lines around all shapes of one key that a person can stand on.
    #[must_use]
    pub fn around(&self, key: Key) -> Option<(Cells, Cells)> {
        let own = self
            .areas
            .iter()
            .filter(|area| area.what.stop() == Some(key));
        own.map(|area| (area.columns, area.lines))
            .reduce(|(columns, lines), (more, high)| (columns.with(more), lines.with(high)))
    }

    /// The front that hides the middle of an area, and how it looks.
    #[must_use]
    pub fn hiding(&self, area: &Area) -> Option<(Area, Look)> {
        let (column, line) = (area.columns.middle(), area.lines.middle());
        self.areas.iter().find_map(|front| match front.what {
            What::Front(leaf) if front.columns.contains(column) && front.lines.contains(line) => {
                Some((*front, leaf.look))
            }
            _ => None,
        })
    }
}

/// Beyond this a cabinet is a dot.
const RATIO_MOST: u16 = 999;

/// One line in the making.
struct Line {
    at: u16,
    cells: Vec<Cell>,
}

impl Line {
    fn over(&mut self, columns: Cells) -> impl Iterator<Item = (u16, &mut Cell)> {
        let cells = (0..).zip(&mut self.cells);
        cells.filter(move |(column, _)| columns.contains(*column))
    }

    fn fill(&mut self, area: &Area, ground: Ground, ink: Ink) {
        for (_, cell) in self.over(area.columns) {
            *cell = Cell { ground, ink };
        }
    }

    fn broken(&mut self, area: &Area, ink: Ink) {
        for (column, cell) in self.over(area.columns) {
            cell.ink = if is_even(column) { ink } else { Ink::Blank };
        }
    }

    fn ink(&mut self, column: u16, ink: Ink) {
        if let Some(cell) = self.cells.get_mut(usize::from(column)) {
            cell.ink = ink;
        }
    }

    /// The outline of a drawer behind, in dots.
    fn dots(&mut self, area: &Area) {
        let at = self.at;
        let is_end = at == area.lines.from || at + 1 == area.lines.to;
        let Cells { from, to } = area.columns;
        for (column, cell) in self.over(area.columns) {
            let is_side = column == from || column + 1 == to;
            if is_side || (is_end && is_even(column - from)) {
                cell.ink = Ink::Dots;
            }
        }
    }

    fn front(&mut self, area: &Area, leaf: Leaf) {
        let at = self.at;
        let is_lowest = at == area.lines.from;
        for (column, cell) in self.over(area.columns) {
            cell.ground = Ground::Front;
            // Through a door shows what is behind it; a drawer is full of its box.
            let through = match (leaf.look, cell.ink) {
                (Look::Hung(_), Ink::Upright) if is_even(at) => Ink::Upright,
                (Look::Hung(_), ink @ (Ink::Panel | Ink::Shelf)) if is_even(column) => ink,
                (_, Ink::Dots) => Ink::Dots,
                _ => Ink::Blank,
            };
            cell.ink = match through {
                _ if leaf.look == Look::False && is_even(column + at) => Ink::Hatch,
                _ if is_lowest => Ink::Gap,
                ink => ink,
            };
        }
        let Cells { from, to } = area.columns;
        let edge = |hand| match leaf.look {
            Look::Hung(hung) if hung == hand => Ink::HungEdge,
            _ => Ink::Edge,
        };
        self.ink(to - 1, edge(Hand::Right));
        self.ink(from, edge(Hand::Left));
        if let Look::Hung(hung) = leaf.look
            && area.columns.count() > 3
            && grip(area.lines).contains(at)
        {
            let opens = hung.other();
            let column = match opens {
                Hand::Left => from + 1,
                Hand::Right => to - 2,
            };
            self.ink(column, Ink::Grip(opens));
        }
    }

    /// A box is open above.
    fn tray(&mut self, area: &Area) {
        let Cells { from, to } = area.columns;
        let is_floor = self.at == area.lines.from;
        if is_floor {
            for (_, cell) in self.over(area.columns) {
                cell.ink = Ink::BoxFloor;
            }
        }
        for (column, hand) in [(from, Hand::Left), (to - 1, Hand::Right)] {
            let ink = if is_floor {
                Ink::BoxCorner(hand)
            } else {
                Ink::BoxWall
            };
            self.ink(column, ink);
        }
    }

    /// Hardware on a wall; behind a front right beside its edge, so that both are seen.
    fn mark(&mut self, area: &Area, before: Option<Cells>, ink: Ink) {
        let column = area.columns.middle();
        let column = match before.filter(|front| front.count() > 3) {
            Some(Cells { from, to }) => column.clamp(from + 1, to - 2),
            None => column,
        };
        self.ink(column, ink);
    }
}

fn is_even(at: u16) -> bool {
    at.is_multiple_of(2)
}

/// The lines of a grip: one or two in the middle.
fn grip(lines: Cells) -> Cells {
    let (count, long) = (lines.count(), if lines.count() > 7 { 2 } else { 1 });
    let from = lines.from + (count - long) / 2;
    Cells {
        from,
        to: from + long,
    }
}

#[cfg(test)]
mod tests;
