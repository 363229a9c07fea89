//! Columns beside each other, or as much of them as a sheet shows.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::measure::{Length, Unit};

use super::{Column, Mark, What};
use crate::hole_sign::draw_hole;
use crate::page::TextEnd;
use crate::pen::{self, EDGE, HAIR, Pen, SMALL, THIN, spread};

/// How wide a column is, in mm.
pub(super) const COLUMN: f64 = 42.0;
/// How long the line at a height is, from the left of its column.
const TICK: f64 = 15.0;
/// Where the number that stands at it ends, and where the height begins.
const NUMBER: f64 = 24.0;
const HEIGHT: f64 = 25.5;
/// From one sign to the next on a line, and how large holes and cups are drawn.
const SIGN: f64 = 4.2;
const HOLE_RADIUS: f64 = 0.9;
const CUP_RADIUS: f64 = 1.7;
/// Half as long as the lines of a cross by which sheets are laid on each other.
const CROSS: f64 = 3.0;

/// Columns, and what is written at them.
pub(super) struct Strip<'a> {
    columns: &'a [Column],
    unit: Unit,
    /// What each column is called, line by line.
    names: Vec<Vec<String>>,
}

impl<'a> Strip<'a> {
    pub(super) fn new(columns: &'a [Column], unit: Unit) -> Self {
        let name = |column: &Column| pen::lines(&column.name, SMALL, true, COLUMN - 3.0);
        Self {
            columns,
            unit,
            names: columns.iter().map(name).collect(),
        }
    }

    /// How high the names above the columns are.
    pub(super) fn names_height(&self) -> f64 {
        let mut height = 0.0;
        for _ in 0..self.names.iter().map(Vec::len).max().unwrap_or(0) {
            height += pen::leading(SMALL);
        }
        height + 2.0
    }

    /// What of them is between two heights above the carcass underside; their lower left corner is at a place of the page.
    pub(super) fn draw(&self, pen: &mut Pen, (left, low): (f64, f64), (from, to): (f64, f64)) {
        let mut window = Window {
            pen,
            left,
            low,
            from,
            to,
        };
        for (column, name) in self.columns.iter().zip(&self.names) {
            window.names(column, name);
            window.ends(column);
            window.marks(column, self.unit);
            window.left += COLUMN;
        }
    }
}

/// What a page shows of one column: heights as they are in the cabinet, in mm.
struct Window<'a> {
    pen: &'a mut Pen,
    left: f64,
    low: f64,
    from: f64,
    to: f64,
}

impl Window<'_> {
    /// Where a height is on the page.
    fn at(&self, z: f64) -> f64 {
        self.low + z - self.from
    }

    fn shows(&self, z: f64) -> bool {
        (self.from..=self.to).contains(&z)
    }

    /// What a column is called, where any of it is seen.
    fn names(&mut self, column: &Column, lines: &[String]) {
        let (low, high) = column.reach();
        if high.mm() < self.from || self.to < low.mm() {
            return;
        }
        let mut y = self.at(self.to) + 2.0;
        for line in lines.iter().rev() {
            self.pen.bold((self.left, y), TextEnd::Start, SMALL, line);
            y += pen::leading(SMALL);
        }
    }

    /// The edge of the column from foot to head, and its ends with their words, where they are seen. The ends are laid on ends of
    /// panels, so they are thin.
    fn ends(&mut self, column: &Column) {
        let (foot, head) = (column.foot.mm(), column.head.mm());
        let (low, high) = (foot.max(self.from), head.min(self.to));
        if low < high {
            let corners = [(self.left, self.at(low)), (self.left, self.at(high))];
            self.pen.way(&corners, EDGE);
        }
        for (z, word, off) in [(foot, "FOOT", -3.0), (head, "HEAD", 1.2)] {
            let y = self.at(z);
            if self.shows(z) {
                self.pen
                    .way(&[(self.left, y), (self.left + COLUMN - 3.0, y)], THIN);
            }
            // The word is on the sheet that shows all of it.
            if self.shows(z + off) && self.shows(z + off + SMALL) {
                let place = (self.left + 1.0, y + off);
                self.pen.bold(place, TextEnd::Start, SMALL, word);
            }
        }
    }

    fn marks(&mut self, column: &Column, unit: Unit) {
        let seen = column.marks.iter();
        let seen: Vec<&Mark> = seen.filter(|mark| self.shows(mark.z.mm())).collect();
        let wanted: Vec<f64> = seen.iter().map(|mark| self.at(mark.z.mm())).collect();
        let gap = pen::leading(SMALL);
        let (low, high) = column.reach();
        let (from, to) = (
            self.at(self.from.max(low.mm())) + gap / 2.0,
            self.at(self.to.min(high.mm())) - gap / 2.0,
        );
        let places = spread(&wanted, gap, from, to);
        for (mark, place) in seen.into_iter().zip(places) {
            self.mark(mark, mark.z - column.foot, place, unit);
        }
    }

    /// The line at a height, its signs, and at a place that may stand aside what it says.
    fn mark(&mut self, mark: &Mark, height: Length, place: f64, unit: Unit) {
        let (left, y) = (self.left, self.at(mark.z.mm()));
        self.pen.way(&[(left, y), (left + TICK, y)], THIN);
        let aside = [(left + TICK, y), (left + TICK + 2.0, place)];
        self.pen.way(&aside, HAIR);
        let mut x = left + SIGN * 0.75;
        let word = match &mark.what {
            What::Holes(number, uses) => {
                for only_use in uses {
                    draw_hole(self.pen, (x, y), HOLE_RADIUS, SIGN / 2.0, *only_use);
                    x += SIGN;
                }
                number.map_or(String::new(), |number| number.to_string())
            }
            What::Cup => {
                self.pen.ring((x, y), CUP_RADIUS, None);
                self.pen.ring((x, y), CUP_RADIUS / 2.0, None);
                "cup".to_string()
            }
        };
        if !word.is_empty() {
            self.pen
                .beside((left + NUMBER, place), TextEnd::End, SMALL, &word);
        }
        let words = height.short(unit).to_string();
        self.pen
            .beside((left + HEIGHT, place), TextEnd::Start, SMALL, &words);
    }
}

/// The crosses with their number at both sides of a sheet, which lie on those of its neighbour.
pub(super) fn draw_seam(pen: &mut Pen, name: &str, y: f64, (left, right): (f64, f64)) {
    for x in [left + CROSS, right - CROSS] {
        pen.way(&[(x - CROSS, y), (x + CROSS, y)], THIN);
        pen.way(&[(x, y - CROSS), (x, y + CROSS)], THIN);
        let above = (x, y + CROSS + 1.0);
        pen.bold(above, TextEnd::Middle, SMALL, name);
    }
}
