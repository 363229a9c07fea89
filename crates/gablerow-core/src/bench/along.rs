//! The rail along a panel: where it lies at first, and where it is moved to for holes that it does not cover.
//!
//! ```text
//! index   1   2   3   4   5   6   7   8   9  10
//! holes   o   o   o   o   o   o   o   o   o   o    counted from the stop
//! rail   [1   2   3   4   5]                       against the stop
//! rail               [1   2   3   4   5]           moved on by 3: pins through 1 and 2 into holes 4 and 5, already bored
//! ```

use alloc::vec::Vec;

use super::Rest;
use super::work::{Line, runs};
use crate::job::End;
use crate::measure::Length;

/// A place of the rail along a panel, and the holes that are bored there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Position {
    /// How many index holes further from the stop than at first.
    pub moved: i16,
    /// What holds it there.
    pub held: Held,
    /// Runs of the cabinet's hole numbers, both ends included, from the foot up.
    pub runs: Vec<(i16, i16)>,
}

impl Position {
    /// The index hole of the rail, where it lies here, over a hole of the cabinet.
    #[must_use]
    pub fn index(&self, rest: &Rest, hole: i16) -> i16 {
        rest.index(hole) - self.moved
    }
}

/// What holds the rail where it lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// The panel, pushed against the stop.
    Stop,
    /// Pins through index holes into these two holes of the cabinet, bored already; the nearer to the stop first.
    Pins([i16; 2]),
    /// Nothing that was bored: its first index hole is put so far from the end of the panel that is on the stop.
    Tape(Length),
}

/// Where the rail lies for these holes, one place after the other; never empty when there are holes.
///
/// Each further place reaches as far as two holes bored before allow.
pub(super) fn positions(holes: &[(i16, i16)], rest: &Rest, covers: Option<i16>) -> Vec<Position> {
    let mut numbers: Vec<i16> = holes.iter().flat_map(|run| run.0..=run.1).collect();
    numbers.sort_unstable_by_key(|hole| rest.index(*hole));
    let covers = covers.unwrap_or(i16::MAX);
    let (mut positions, mut bored) = (Vec::new(), 0);
    let (mut moved, mut held) = (0, Held::Stop);
    loop {
        let ahead = &numbers[bored..];
        let reached = |hole: &&i16| rest.index(**hole) - moved <= covers;
        let here = ahead.iter().take_while(reached).count();
        if here > 0 {
            positions.push(Position {
                moved,
                held,
                runs: runs(&ahead[..here]),
            });
        }
        bored += here;
        let Some(next) = numbers.get(bored).map(|hole| rest.index(*hole)) else {
            return positions;
        };
        (moved, held) = match numbers[..bored] {
            [.., near, far] if next - rest.index(near) < covers => {
                (rest.index(near) - 1, Held::Pins([near, far]))
            }
            _ => {
                let from_end = rest.stop - rest.packer + Length::PITCH * i32::from(next - 1);
                (next - 1, Held::Tape(from_end))
            }
        };
    }
}

fn is_pinned(holes: &[(i16, i16)], rest: &Rest, covers: i16) -> bool {
    let positions = positions(holes, rest, Some(covers));
    positions.iter().all(|it| !matches!(it.held, Held::Tape(_)))
}

/// Bores a copy from both of its ends, where its rows have no two holes to pin the rail in: up to one hole number from the
/// foot, what is above from the head.
///
/// That number is one for the whole copy, so that the four pins of a shelf and the two runners of a drawer come from the same
/// end. It parts the two holes of no hinge plate; of such numbers it is one that cuts fewest runs, and then has fewest rows
/// bored twice, and then is nearest to the middle. Where there is none the copy stays as it is.
pub(super) fn from_both_ends(lines: &mut Vec<Line>, covers: i16) {
    let fits = |line: &Line, end: End| is_pinned(line.runs(), line.rest(end), covers);
    let all = |line: &Line| line.ends().iter().all(|end| fits(line, *end));
    if lines.iter().all(all) {
        return;
    }
    let numbers = || lines.iter().flat_map(Line::runs);
    let lowest = numbers().map(|run| run.0).min().unwrap_or(0);
    let highest = numbers().map(|run| run.1).max().unwrap_or(0);
    let can_part = |last: &i16| {
        lines.iter().all(|line| {
            let [below, above] = parted(line.runs(), *last);
            line.plates
                .iter()
                .all(|plate| *last < plate.0 || plate.1 <= *last)
                && is_pinned(&below, line.rest(End::Foot), covers)
                && is_pinned(&above, line.rest(End::Head), covers)
        })
    };
    let cost = |last: &i16| {
        let cut = numbers().filter(|run| run.0 <= *last && *last < run.1);
        let parts = lines.iter().map(|line| parted(line.runs(), *last));
        let twice = parts.filter(|[below, above]| !below.is_empty() && !above.is_empty());
        let from_middle = (2 * last - lowest - highest).abs();
        (cut.count(), twice.count(), from_middle)
    };
    // From one below the lowest, where all of it comes from the head.
    let junction = (lowest - 1..highest).filter(can_part).min_by_key(cost);
    if let Some(last) = junction {
        *lines = lines
            .drain(..)
            .flat_map(|line| line.parted_at(last))
            .collect();
    }
}

/// The runs up to a hole, and those above it.
pub(super) fn parted(runs: &[(i16, i16)], last: i16) -> [Vec<(i16, i16)>; 2] {
    let below = runs.iter().map(|run| (run.0, run.1.min(last)));
    let above = runs.iter().map(|run| (run.0.max(last + 1), run.1));
    let is_run = |run: &(i16, i16)| run.0 <= run.1;
    [
        below.filter(is_run).collect(),
        above.filter(is_run).collect(),
    ]
}
