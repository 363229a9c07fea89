//! A table on a sheet: its cells, and how wide its columns and how high its rows come to be.

use alloc::string::String;
use alloc::vec;
use alloc::vec::Vec;

use super::MARGIN;
use crate::page::TextEnd;
use crate::pen::{self, BODY, SMALL};
use crate::text::unbroken;

/// Between two columns of a table.
const GAP: f64 = 3.2;
/// What a row of a table has above and below its letters together.
pub(super) const PAD: f64 = 1.4;
/// From the left of words across a table to their first letter: the room of a box to tick.
pub(super) const ACROSS: f64 = 5.2;
/// The side of a box to tick.
pub(super) const TICK: f64 = 3.2;

/// The share of a table that its lengths may claim.
const LEAST_MOST: f64 = 2.0 / 3.0;

/// What stands in one place of a table.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Cell {
    /// Words, broken into lines where they need it.
    Words(String),
    /// The same, heavy: what is looked for first.
    Bold(String),
    /// A box to tick.
    Tick,
    /// Words across the sheet, on a grey ground: what holds for the rows below. Alone in its row.
    Across {
        /// What is said.
        words: String,
        /// Whether it is a thing to do, behind a box to tick.
        is_task: bool,
    },
}

impl Cell {
    pub(crate) fn words(words: impl Into<String>) -> Self {
        Self::Words(words.into())
    }

    pub(crate) fn bold(words: impl Into<String>) -> Self {
        Self::Bold(words.into())
    }

    fn width(&self) -> f64 {
        match self {
            Self::Words(words) => pen::width(words, BODY, false),
            Self::Bold(words) => pen::width(words, BODY, true),
            Self::Tick => TICK,
            Self::Across { .. } => 0.0,
        }
    }

    /// How wide its widest length in inches is, without what that is rounded by: no line ends between a number and its fraction.
    fn least(&self) -> f64 {
        let (words, is_bold) = match self {
            Self::Words(words) => (words, false),
            Self::Bold(words) => (words, true),
            Self::Tick | Self::Across { .. } => return 0.0,
        };
        let pieces = unbroken(words, |piece| !piece.contains('('));
        let fractions = pieces.into_iter().filter(|piece| piece.contains(' '));
        let widths = fractions.map(|piece| pen::width(piece, BODY, is_bold));
        widths.fold(0.0, f64::max)
    }

    /// Its lines, when no more room is there than this.
    pub(super) fn lines(&self, room: f64) -> Vec<String> {
        match self {
            Self::Words(words) => pen::lines(words, BODY, false, room),
            Self::Bold(words) => pen::lines(words, BODY, true, room),
            Self::Across { words, .. } => pen::lines(words, BODY, true, room - ACROSS),
            Self::Tick => Vec::new(),
        }
    }
}

/// A column of a table: what stands over it, and on which side its cells begin.
pub(crate) type Column = (&'static str, TextEnd);

/// A row of a table, a cell for each column.
pub(crate) type Row = Vec<Cell>;

/// Where the cells of a column are.
pub(super) struct Place {
    pub(super) left: f64,
    pub(super) width: f64,
    pub(super) side: TextEnd,
}

impl Place {
    /// Where its words begin or end.
    pub(super) fn x(&self) -> f64 {
        match self.side {
            TextEnd::Start => self.left,
            TextEnd::Middle => self.left + self.width / 2.0,
            TextEnd::End => self.left + self.width,
        }
    }
}

/// A table, laid out.
pub(super) struct Table<'a> {
    pub(super) columns: &'a [Column],
    pub(super) places: Vec<Place>,
    pub(super) width: f64,
}

impl<'a> Table<'a> {
    /// Columns as wide as they need; where that is more than the room, the widest of them give way and break their words.
    pub(super) fn of(columns: &'a [Column], rows: &[Row], room: f64) -> Self {
        let gaps = GAP * f64::from(u16::try_from(columns.len().saturating_sub(1)).unwrap_or(0));
        let widest = |at: usize, width: fn(&Cell) -> f64| {
            let cells = rows.iter().filter_map(|row| Some(width(row.get(at)?)));
            cells.fold(0.0, f64::max)
        };
        let wanted = |(at, (head, _)): (usize, &Column)| {
            let head = pen::width(head, SMALL, true);
            (widest(at, Cell::width).max(head), widest(at, Cell::least))
        };
        let wanted: Vec<(f64, f64)> = columns.iter().enumerate().map(wanted).collect();
        let mut left = MARGIN;
        let mut places = Vec::new();
        for ((_, side), width) in columns.iter().zip(fitted(&wanted, room - gaps)) {
            places.push(Place {
                left,
                width,
                side: *side,
            });
            left += width + GAP;
        }
        Self {
            columns,
            places,
            width: match rows.iter().any(is_across) {
                true => room,
                false => left - GAP - MARGIN,
            },
        }
    }

    pub(super) fn height(&self, row: &Row) -> f64 {
        let cells = row.iter().zip(&self.places);
        let lines = cells.map(|(cell, place)| match cell {
            Cell::Across { .. } => cell.lines(self.width).len(),
            _ => cell.lines(place.width).len(),
        });
        let lines = u16::try_from(lines.max().unwrap_or(1).max(1)).unwrap_or(u16::MAX);
        f64::from(lines) * pen::leading(BODY) + PAD
    }
}

/// How high the head of a table is.
pub(super) fn table_head() -> f64 {
    pen::leading(SMALL) + PAD
}

pub(super) fn is_across(row: &Row) -> bool {
    matches!(row[..], [Cell::Across { .. }])
}

/// What is needed, where the room is enough; otherwise the widest give way, down to one width that is the most for all, and none
/// below its least, as long as that leaves room for the others. Each is what a column needs, and its least.
fn fitted(wanted: &[(f64, f64)], room: f64) -> Vec<f64> {
    let least: f64 = wanted.iter().map(|(_, least)| least).sum();
    let mut stiff = vec![false; wanted.len()];
    loop {
        let mut left = room;
        let mut narrowest = Vec::new();
        for ((needed, least), is_stiff) in wanted.iter().zip(&stiff) {
            if *is_stiff {
                left -= least;
            } else {
                narrowest.push(*needed);
            }
        }
        let most = most_for_all(narrowest, left);
        let mut columns = wanted.iter().zip(&mut stiff);
        let next = columns.find(|((_, least), is_stiff)| !**is_stiff && *least > most);
        match next {
            Some((_, is_stiff)) if least <= room * LEAST_MOST => *is_stiff = true,
            _ => break widths(wanted, &stiff, most),
        }
    }
}

fn widths(wanted: &[(f64, f64)], stiff: &[bool], most: f64) -> Vec<f64> {
    let width = |((needed, least), is_stiff): (&(f64, f64), &bool)| match is_stiff {
        true => *least,
        false => needed.min(most),
    };
    wanted.iter().zip(stiff).map(width).collect()
}

/// The width that is the most for each, so that all together have room; no limit where they have it anyway.
fn most_for_all(mut narrowest: Vec<f64>, room: f64) -> f64 {
    narrowest.sort_by(f64::total_cmp);
    let mut left = room;
    for (at, width) in narrowest.iter().enumerate() {
        let others = f64::from(u16::try_from(narrowest.len() - at).unwrap_or(u16::MAX));
        if width * others > left {
            return left / others;
        }
        left -= width;
    }
    f64::INFINITY
}

#[cfg(test)]
mod tests {
    use super::*;

    // 10 + 20 leave 40 of 70 for two that need 50 and 30: 20 for each.
    #[test]
    fn the_widest_columns_give_way_first() {
        let fitted = |needed: &[f64], room| {
            let wanted: Vec<_> = needed.iter().map(|needed| (*needed, 0.0)).collect();
            fitted(&wanted, room)
        };
        assert_eq!(fitted(&[10.0, 50.0, 20.0], 80.0), [10.0, 50.0, 20.0]);
        assert_eq!(
            fitted(&[10.0, 50.0, 20.0, 30.0], 70.0),
            [10.0, 20.0, 20.0, 20.0]
        );
    }

    // The same, but 50 gives way to 26 and no farther: 10 + 26 leave 34 of 70 for the other two, 17 for each.
    #[test]
    fn no_column_gives_way_below_its_least() {
        let wanted = [(10.0, 0.0), (50.0, 26.0), (20.0, 0.0), (30.0, 0.0)];
        assert_eq!(fitted(&wanted, 70.0), [10.0, 26.0, 17.0, 17.0]);
        // What would leave too little for the others is no least.
        let wanted = [(50.0, 50.0), (50.0, 0.0)];
        assert_eq!(fitted(&wanted, 60.0), [30.0, 30.0]);
    }
}
