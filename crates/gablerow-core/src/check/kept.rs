//! What the checks say of a whole job, kept while the job changes.
//!
//! What is said of a cabinet rests on that cabinet, the house defaults, the cards and the unit, and on the first cabinet with a
//! front row, which others are compared with. So a change of any cabinet behind that one is answered by checking it alone, in a
//! job of ten as in a job of a thousand.

use alloc::vec::Vec;

use super::{Finding, of_cabinet};
use crate::history::Change;
use crate::job::Job;
use crate::layout::Layout;

/// What the checks say of every cabinet of one job, as it is now.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Checked {
    /// In the order of the cabinets.
    cabinets: Vec<Vec<Finding>>,
}

impl Checked {
    /// Every cabinet of a job, from nothing.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        Self {
            cabinets: (0..job.cabinets.len()).map(|at| check(job, at)).collect(),
        }
    }

    /// Follows a change that the job has by now; gives how many cabinets were checked for it. Nothing else may have changed
    /// since: in a build with assertions it is an error not to come to what a check from nothing says.
    pub fn follow(&mut self, job: &Job, change: &Change) -> usize {
        let checked = match change {
            Change::Cabinet { at, before, after } if !others_rest_on(job, *at) => {
                self.follow_cabinet(job, *at, before.is_some(), after.is_some())
            }
            Change::Cabinet { .. }
            | Change::Shop { .. }
            | Change::Cards { .. }
            | Change::Unit { .. } => {
                *self = Self::of(job);
                self.cabinets.len()
            }
            Change::Title { .. } => 0,
        };
        debug_assert_eq!(*self, Self::of(job), "a check missed what changed");
        checked
    }

    /// A cabinet at a position that was there before, or is there now, or both.
    fn follow_cabinet(&mut self, job: &Job, at: usize, before: bool, after: bool) -> usize {
        let at = at.min(self.cabinets.len());
        match (before, after) {
            (false, true) => self.cabinets.insert(at, check(job, at)),
            (true, true) if at < self.cabinets.len() => self.cabinets[at] = check(job, at),
            (true, false) if at < self.cabinets.len() => drop(self.cabinets.remove(at)),
            _ => {}
        }
        usize::from(after)
    }

    /// What is said of the cabinets, one after the other as they stand in the job.
    pub fn cabinets(&self) -> impl Iterator<Item = &[Finding]> {
        self.cabinets.iter().map(Vec::as_slice)
    }
}

/// Whether a change at this position may be one of the cabinet that others are compared with: it was that one, or is by now,
/// when none before it has a front row.
fn others_rest_on(job: &Job, at: usize) -> bool {
    let first = job.first_with_front_row().map(|first| first.key);
    let mut cabinets = job.cabinets.iter();
    let first = cabinets.position(|cabinet| Some(cabinet.key) == first);
    first.is_some_and(|first| at <= first)
}

/// The findings of the cabinet at a position; none where there is no cabinet.
fn check(job: &Job, at: usize) -> Vec<Finding> {
    let found = job.cabinets.get(at);
    found
        .map(|cabinet| of_cabinet(job, cabinet, &Layout::of(cabinet, job)))
        .unwrap_or_default()
}

#[cfg(test)]
mod tests;
