//! Holes that were counted wrong: a distance measured along a row that misses what was wanted by whole pitches.

use alloc::vec::Vec;

use crate::grid::HoleNumber;
use crate::job::{Copy, End, Job, Key, Measured, Span};
use crate::layout::{Face, Layout, Row, Run, Upright};
use crate::measure::Length;

/// How near to whole pitches a distance comes that was counted wrong: 2.0, a house default. A tape is read better than that.
pub(crate) const COUNTED_WITHIN: Length = Length::from_mm(2);

/// The most that a measured distance may be off: 1.0, a house default. A tape is read better than that.
pub(crate) const MEASURED_OFF_MOST: Length = Length::from_mm(1);

/// A row that has a hole where none should be, and none where one should.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Miscount {
    /// What was measured.
    pub measured: Measured,
    /// How many holes too far the ends of the distance are from each other; too near when negative. Never 0.
    pub holes: i32,
    /// What is in doubt: of a distance along the row the runs at its ends, the lower first, and once where it is one; of a distance to
    /// an end of the panel all that was bored with it.
    pub runs: Vec<RunOf>,
}

/// A run of holes, both ends included, and the fitting, joint or row it belongs to.
pub type RunOf = ((i16, i16), Key);

/// The rows of a copy that were measured and miscounted.
///
/// What the copy does not want any more is no concern of it, nor is a row whose ends the layout has as far apart by now as they
/// were measured.
#[must_use]
pub fn miscounts(job: &Job, cabinet: Key, copy: &Copy, built: &Layout) -> Vec<Miscount> {
    let latest = job.measured_of(cabinet, copy.key);
    let miscount = |measured| miscount(measured, built);
    latest.into_values().filter_map(miscount).collect()
}

fn miscount(measured: Measured, built: &Layout) -> Option<Miscount> {
    let holes = whole_pitches(measured.is - measured.want).filter(|holes| *holes != 0)?;
    let upright = built.upright(measured.face.panel)?;
    let face = built.face(measured.face)?;
    let (row, ends) = match measured.span {
        Span::Holes { row, first, last } => (row, [first, last]),
        Span::ToEnd { row, hole, .. } => (row, [hole, hole]),
        Span::Rows { .. } => return None,
    };
    let all: Vec<&Run> = row_runs(row, face, upright).collect();
    let mut at_ends: Vec<&Run> = Vec::new();
    for end in ends {
        let number = i16::try_from(end.get()).ok()?;
        let has = |run: &&&Run| (run.first..=run.last).contains(&number);
        at_ends.push(*all.iter().find(has)?);
    }
    at_ends.dedup();
    // A distance is measured over what one bit bores to one depth.
    let tool = |run: &Run| (run.spec.diameter, run.spec.depth);
    let is_measured = |run: &&&Run| at_ends.iter().any(|end| tool(end) == tool(run));
    let measured_over = || all.iter().filter(is_measured);
    let lowest = measured_over().map(|run| run.first).min()?;
    let highest = measured_over().map(|run| run.last).max()?;
    let apart = Length::PITCH * (i32::from(highest) - i32::from(lowest));
    let now = match measured.span {
        Span::ToEnd { hole, end, .. } => {
            let beyond = |number: i16| Length::PITCH * (i32::from(number) - i32::from(hole.get()));
            match end {
                End::Foot => measured.want + beyond(lowest),
                End::Head => measured.want - beyond(highest),
            }
        }
        Span::Holes { .. } | Span::Rows { .. } => apart,
    };
    // What begins a hole too far may all be so; of a distance along the row it is one of two ends.
    let mut in_doubt: Vec<&Run> = match measured.span {
        Span::ToEnd { .. } => measured_over().copied().collect(),
        Span::Holes { .. } | Span::Rows { .. } => at_ends.clone(),
    };
    in_doubt.sort_by_key(|run| run.first);
    ((measured.is - now).abs() > COUNTED_WITHIN).then(|| Miscount {
        measured,
        holes,
        runs: in_doubt.into_iter().map(run_of).collect(),
    })
}

/// The distances of a copy that were measured and are off, but not by whole holes along a row, where the layout has both of their ends
/// still.
#[must_use]
pub fn missed(job: &Job, cabinet: Key, copy: &Copy, built: &Layout) -> Vec<Measured> {
    let all = job.measured_of(cabinet, copy.key).into_values();
    all.filter(|it| is_missed(it, built).unwrap_or(false))
        .collect()
}

/// Whether it is; `None` where an end of it is gone.
fn is_missed(measured: &Measured, built: &Layout) -> Option<bool> {
    let off = measured.is - measured.want;
    let upright = built.upright(measured.face.panel)?;
    let face = built.face(measured.face)?;
    let has = |row: Length, hole: HoleNumber| {
        let mut runs = row_runs(row, face, upright);
        runs.any(|run| {
            (i32::from(run.first)..=i32::from(run.last)).contains(&i32::from(hole.get()))
        })
    };
    let (is_there, is_counted) = match measured.span {
        Span::Holes { row, first, last } => (has(row, first) && has(row, last), true),
        Span::ToEnd { row, hole, .. } => (has(row, hole), true),
        Span::Rows { first, last } => {
            let is_row = |row| row_runs(row, face, upright).next().is_some();
            (is_row(first) && is_row(last), false)
        }
    };
    let by_holes = is_counted && whole_pitches(off).is_some_and(|holes| holes != 0);
    Some(is_there && !by_holes && off.abs() > MEASURED_OFF_MOST)
}

/// How many whole pitches a length is; `None` where it is not near any number of them.
fn whole_pitches(length: Length) -> Option<i32> {
    let pitches = (length + Length::PITCH.half()).div_floor(Length::PITCH);
    let rest = length - Length::PITCH * pitches;
    (rest.abs() <= COUNTED_WITHIN).then_some(pitches)
}

/// The runs of a face at a setback from the panel's front edge, as what they belong to.
pub(super) fn runs(row: Length, face: &Face, upright: &Upright) -> Vec<RunOf> {
    row_runs(row, face, upright).map(run_of).collect()
}

fn row_runs<'a>(row: Length, face: &'a Face, upright: &Upright) -> impl Iterator<Item = &'a Run> {
    let front = upright.front.total();
    let at = move |it: &&Row| it.x.total() - front == row;
    face.rows.iter().filter(at).flat_map(|it| &it.runs)
}

fn run_of(run: &Run) -> RunOf {
    ((run.first, run.last), run.spec.owner)
}

impl Miscount {
    /// How the fittings it is about would be moved to where their holes were bored, in holes upward: each of them a way of its own. None
    /// where one run has both ends of what was measured, since then the fault is inside it.
    #[must_use]
    pub fn as_bored(&self) -> Vec<(Key, i32)> {
        match (self.measured.span, &self.runs[..]) {
            (Span::ToEnd { end: End::Head, .. }, [(_, owner)]) => [(*owner, -self.holes)].into(),
            (Span::ToEnd { .. }, [(_, owner)]) => [(*owner, self.holes)].into(),
            (_, [(_, lower), (_, higher)]) => [(*higher, self.holes), (*lower, -self.holes)].into(),
            _ => Vec::new(),
        }
    }
}
