//! The way back: every step as whole values, before and after.

use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec::Vec;

use crate::cards::Cards;
use crate::job::{Cabinet, Job, Shop};
use crate::label::Label;
use crate::measure::Unit;

/// One change of a job, with what it changed, before and after.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Step {
    /// What was done, in a few words: `hinge plate on 3-4`.
    pub label: String,
    /// What it changed.
    pub change: Change,
}

/// The one thing a step changed, whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// A cabinet at a position of the list; `None` before it was added or after it was removed.
    Cabinet {
        /// Its position.
        at: usize,
        /// The cabinet before.
        before: Option<Box<Cabinet>>,
        /// The cabinet after.
        after: Option<Box<Cabinet>>,
    },
    /// The house defaults.
    Shop {
        /// The defaults before.
        before: Box<Shop>,
        /// The defaults after.
        after: Box<Shop>,
    },
    /// The cards.
    Cards {
        /// The cards before.
        before: Box<Cards>,
        /// The cards after.
        after: Box<Cards>,
    },
    /// The title of the job.
    Title {
        /// The title before.
        before: Label,
        /// The title after.
        after: Label,
    },
    /// The display unit.
    Unit {
        /// The unit before.
        before: Unit,
        /// The unit after.
        after: Unit,
    },
}

impl Change {
    fn apply(&self, job: &mut Job) {
        match self {
            Self::Cabinet { at, before, after } => {
                put(job, *at, before.as_deref(), after.as_deref());
            }
            Self::Shop { after, .. } => job.shop = (**after).clone(),
            Self::Cards { after, .. } => job.cards = (**after).clone(),
            Self::Title { after, .. } => job.title = after.clone(),
            Self::Unit { after, .. } => job.unit = *after,
        }
    }

    /// The change that takes it back.
    #[must_use]
    pub fn reversed(&self) -> Self {
        match self.clone() {
            Self::Cabinet { at, before, after } => Self::Cabinet {
                at,
                before: after,
                after: before,
            },
            Self::Shop { before, after } => Self::Shop {
                before: after,
                after: before,
            },
            Self::Cards { before, after } => Self::Cards {
                before: after,
                after: before,
            },
            Self::Title { before, after } => Self::Title {
                before: after,
                after: before,
            },
            Self::Unit { before, after } => Self::Unit {
                before: after,
                after: before,
            },
        }
    }
}

/// Puts `new` where `old` stands; either may be nothing at all. A position past the end is the end.
fn put(job: &mut Job, at: usize, old: Option<&Cabinet>, new: Option<&Cabinet>) {
    let at = at.min(job.cabinets.len());
    match (old, new) {
        (None, Some(new)) => job.cabinets.insert(at, new.clone()),
        (Some(_), Some(new)) => {
            if let Some(place) = job.cabinets.get_mut(at) {
                *place = new.clone();
            }
        }
        (Some(_), None) if at < job.cabinets.len() => drop(job.cabinets.remove(at)),
        (_, None) => {}
    }
}

impl Step {
    /// Makes the change.
    pub fn apply(&self, job: &mut Job) {
        self.change.apply(job);
    }

    /// Takes the change back.
    pub fn revert(&self, job: &mut Job) {
        self.change.reversed().apply(job);
    }
}

/// All steps of a job, taken back or not, without limit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct History {
    steps: Vec<Step>,
    done: usize,
    /// How many steps were done when the job was last saved; `None` when that state can no longer be reached.
    saved: Option<usize>,
}

impl History {
    /// A history of a job that stands on disk as it is.
    #[must_use]
    pub fn of_saved() -> Self {
        Self {
            saved: Some(0),
            ..Self::default()
        }
    }

    /// Makes a change and keeps it. Steps that had been taken back are gone.
    pub fn make(&mut self, step: Step, job: &mut Job) {
        step.apply(job);
        self.push(step);
    }

    /// Takes the last change back, and gives it; `None` when there is none.
    pub fn undo(&mut self, job: &mut Job) -> Option<&Step> {
        let step = self.step_back()?;
        step.revert(job);
        Some(step)
    }

    /// Makes the change that was last taken back, and gives it; `None` when there is none.
    pub fn redo(&mut self, job: &mut Job) -> Option<&Step> {
        let step = self.step_forward()?;
        step.apply(job);
        Some(step)
    }

    /// Keeps a change that the job at hand already has.
    pub fn push(&mut self, step: Step) {
        self.steps.truncate(self.done);
        self.saved = self.saved.filter(|&saved| saved <= self.done);
        self.steps.push(step);
        self.done += 1;
    }

    /// One step back, without a job to change; gives the step that is now taken back.
    pub fn step_back(&mut self) -> Option<&Step> {
        self.done = self.done.checked_sub(1)?;
        self.steps.get(self.done)
    }

    /// One step forward, without a job to change; gives the step that is now made.
    pub fn step_forward(&mut self) -> Option<&Step> {
        let step = self.steps.get(self.done)?;
        self.done += 1;
        Some(step)
    }

    /// Remembers that the job as it is now stands on disk.
    pub fn mark_saved(&mut self) {
        self.saved = Some(self.done);
    }

    /// Whether the job as it is now stands on disk.
    #[must_use]
    pub fn is_saved(&self) -> bool {
        self.saved == Some(self.done)
    }

    /// How many steps lie between the job as it is now and as it was saved: above 0 they have to be taken back, below 0 made
    /// again; `None` when no steps lead there.
    #[must_use]
    pub fn since_saved(&self) -> Option<isize> {
        let saved = isize::try_from(self.saved?).ok()?;
        Some(isize::try_from(self.done).ok()? - saved)
    }

    /// All steps, the oldest first, those that were taken back at the end.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// How many changes can be taken back.
    #[must_use]
    pub fn undoable(&self) -> usize {
        self.done
    }

    /// How many changes can be made again.
    #[must_use]
    pub fn redoable(&self) -> usize {
        self.steps.len() - self.done
    }
}

#[cfg(test)]
mod tests;
