//! Every change of a job is one [`Edit`].
//!
//! ```text
//! Edit --apply(&Job)--> Step { before, after } --history--> Job'
//!                  \--> Refusal: what is wrong, nothing changed
//! ```

mod cabinets;
mod choice;
mod copies;
mod fittings;
mod free;
mod fronts;
mod measure;
mod openings;
mod part;
mod pins;
mod thing;

use alloc::boxed::Box;
use alloc::format;
use alloc::string::{String, ToString};
use core::fmt;

pub use choice::Choice;
pub use copies::CopyEdit;
pub use fittings::has_holes;
pub use free::{FaceRun, FreeChoice, FreeEdit, FreeLine, FreeMeasure, FreePlace, free_lines};
pub use measure::{Measure, Scope};
pub use openings::Way;
pub use part::{PartChoice, PartLine, PartMeasure, part_lines};

use crate::history::{Change, Step};
use crate::job::{Acceptance, Cabinet, Datum, Hand, Job, Key, Shop};
use crate::label::Label;
use crate::measure::{Length, Unit};

/// A change of a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Edit {
    /// A new plain cabinet after the given one, or at the end.
    Add {
        /// The cabinet it comes after.
        after: Option<Key>,
        /// What it is called.
        name: Label,
    },
    /// A cabinet like another one, right after it; nothing is bored or measured of it yet.
    Duplicate {
        /// The cabinet to copy.
        cabinet: Key,
        /// What the new one is called.
        name: Label,
    },
    /// Another name for a cabinet.
    Rename {
        /// The cabinet.
        cabinet: Key,
        /// Its new name.
        name: Label,
    },
    /// A cabinet less.
    Remove {
        /// The cabinet.
        cabinet: Key,
    },
    /// Another value of a length.
    Measure {
        /// The cabinet it is seen from.
        cabinet: Key,
        /// Which length.
        measure: Measure,
        /// Its new value.
        value: Length,
    },
    /// The next of the ways a thing can be made.
    Choose {
        /// The cabinet it is seen from.
        cabinet: Key,
        /// Which choice.
        choice: Choice,
    },
    /// Another value of a length of an opening, a partition, a fixed shelf or a front.
    PartMeasure {
        /// The cabinet.
        cabinet: Key,
        /// The part.
        part: Key,
        /// Which length.
        measure: PartMeasure,
        /// Its new value.
        value: Length,
    },
    /// The next of the ways an opening, a partition, a fixed shelf or a front can be made.
    PartChoose {
        /// The cabinet.
        cabinet: Key,
        /// The part.
        part: Key,
        /// Which choice.
        choice: PartChoice,
    },
    /// A bay divided into so many parts.
    Divide {
        /// The cabinet.
        cabinet: Key,
        /// The bay.
        opening: Key,
        /// Which way.
        way: Way,
        /// How many parts.
        parts: u16,
    },
    /// A partition or a fixed shelf less.
    Unite {
        /// The cabinet.
        cabinet: Key,
        /// The partition or fixed shelf.
        divider: Key,
    },
    /// The next way of closing an opening by doors: hung left, hung right, a pair, none.
    Door {
        /// The cabinet.
        cabinet: Key,
        /// The opening.
        opening: Key,
    },
    /// So many drawers over an opening, in place of those that are there; the same number again takes them away.
    Drawers {
        /// The cabinet.
        cabinet: Key,
        /// The opening.
        opening: Key,
        /// How many.
        count: u16,
    },
    /// So many drawers behind the door of an opening; the same number again takes them away.
    InnerDrawers {
        /// The cabinet.
        cabinet: Key,
        /// The opening.
        opening: Key,
        /// How many.
        count: u16,
    },
    /// A false front at the head of an opening; again takes it away.
    FalseFront {
        /// The cabinet.
        cabinet: Key,
        /// The opening.
        opening: Key,
    },
    /// One front less.
    NoFront {
        /// The cabinet.
        cabinet: Key,
        /// The front.
        front: Key,
    },
    /// A front of so many whole modules.
    Modules {
        /// The cabinet.
        cabinet: Key,
        /// The front.
        front: Key,
        /// How many.
        count: u16,
    },
    /// Pin holes on both walls of a bay: set when one of the run is missing, taken away when all are there.
    Pins(BayRun),
    /// Hinge plates on one wall of a bay, one after the other along the run; set or taken away as pins are.
    Plates {
        /// The wall.
        wall: Hand,
        /// The holes.
        run: BayRun,
    },
    /// Drawer runners on both walls of a bay, one on each hole of the run; set or taken away as pins are.
    Runners(BayRun),
    /// Loose shelves, one on each hole of the run; set or taken away as pins are.
    Shelves(BayRun),
    /// A fitting of a bay less; a shelf zone loses one hole of it.
    NoFitting {
        /// The cabinet.
        cabinet: Key,
        /// The fitting.
        fitting: Key,
        /// The hole that a shelf zone loses.
        hole: i16,
    },
    /// A change of what faces own themselves: free rows and free holes.
    Free {
        /// The cabinet.
        cabinet: Key,
        /// What changes.
        change: FreeEdit,
    },
    /// A change of what is built of a cabinet.
    Copies {
        /// The cabinet.
        cabinet: Key,
        /// What changes.
        change: CopyEdit,
    },
    /// Counts the places of a fitting from another end; it stays where it is.
    Recount {
        /// The cabinet.
        cabinet: Key,
        /// The fitting, free row or fixed shelf.
        fitting: Key,
        /// Where counting starts from now on.
        datum: Datum,
    },
    /// A finding is accepted, with a reason.
    Accept {
        /// The cabinet it is about.
        cabinet: Key,
        /// What is accepted, and why.
        acceptance: Acceptance,
    },
    /// An acceptance is taken back.
    Withdraw {
        /// The cabinet it is about.
        cabinet: Key,
        /// Exactly what the finding said.
        message: String,
    },
    /// Another title of the job.
    Title(Label),
    /// The other unit for what is shown and typed.
    Unit(Unit),
}

/// Neighbouring holes of a bay, both ends included, and how new places are counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct BayRun {
    /// The cabinet.
    pub cabinet: Key,
    /// The bay.
    pub bay: Key,
    /// The lowest hole number.
    pub first: i16,
    /// The highest hole number.
    pub last: i16,
    /// Where the places of what is set are counted from.
    pub datum: Datum,
}

impl fmt::Display for BayRun {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.first == self.last {
            write!(f, "{}", self.first)
        } else {
            write!(f, "{}-{}", self.first, self.last)
        }
    }
}

/// Why an edit was not made: a sentence that says what is wrong and what would do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal(pub String);

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl core::error::Error for Refusal {}

impl Edit {
    /// The step this edit comes to; the job itself is not changed.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::edit::{Edit, Measure};
    /// use gablerow_core::history::History;
    /// use gablerow_core::job::{Job, Label};
    /// use gablerow_core::measure::Length;
    ///
    /// let mut job = Job::plain(Label::new("glaze store").unwrap());
    /// let mut history = History::of_saved();
    /// let edit = Edit::Measure {
    ///     cabinet: job.cabinets[0].key,
    ///     measure: Measure::Height,
    ///     value: Length::from_mm(768),
    /// };
    /// let step = edit.apply(&job).unwrap();
    /// history.make(step, &mut job);
    /// assert_eq!(job.cabinets[0].size.height, Length::from_mm(768));
    /// history.undo(&mut job);
    /// assert_eq!(job.cabinets[0].size.height, Length::from_mm(704));
    /// ```
    ///
    /// # Errors
    /// A [`Refusal`] when the cabinet or bay is not there, when the job could not hold the result, or when nothing would
    /// change.
    pub fn apply(&self, job: &Job) -> Result<Step, Refusal> {
        match self {
            Self::Add { after, name } => cabinets::add(job, *after, name),
            Self::Duplicate { cabinet, name } => cabinets::duplicate(job, *cabinet, name),
            Self::Rename { cabinet, name } => cabinets::rename(job, *cabinet, name),
            Self::Remove { cabinet } => cabinets::remove(job, *cabinet),
            Self::Measure {
                cabinet,
                measure,
                value,
            } => measure.set(job, *cabinet, *value),
            Self::Choose { cabinet, choice } => choice.step_on(job, *cabinet),
            Self::PartMeasure { .. }
            | Self::PartChoose { .. }
            | Self::Divide { .. }
            | Self::Unite { .. }
            | Self::Door { .. }
            | Self::Drawers { .. }
            | Self::InnerDrawers { .. }
            | Self::FalseFront { .. }
            | Self::NoFront { .. }
            | Self::Modules { .. } => self.apply_to_part(job),
            Self::Pins(run) => pins::toggle(job, *run),
            Self::Plates { wall, run } => fittings::toggle_plates(job, *wall, *run),
            Self::Runners(run) => fittings::toggle_runners(job, *run),
            Self::Shelves(run) => fittings::toggle_shelves(job, *run),
            Self::NoFitting {
                cabinet,
                fitting,
                hole,
            } => fittings::take_away(job, *cabinet, *fitting, *hole),
            Self::Free { cabinet, change } => free::apply(job, *cabinet, change),
            Self::Copies { cabinet, change } => copies::apply(job, *cabinet, change),
            Self::Recount {
                cabinet,
                fitting,
                datum,
            } => fittings::recount(job, *cabinet, *fitting, *datum),
            Self::Accept {
                cabinet,
                acceptance,
            } => accept(job, *cabinet, acceptance),
            Self::Withdraw { cabinet, message } => change(job, *cabinet, |edited| {
                edited
                    .accepted
                    .retain(|earlier| earlier.message != *message);
                Ok("acceptance withdrawn".to_string())
            }),
            Self::Title(title) if *title == job.title => Err(nothing()),
            Self::Title(title) => Ok(Step {
                label: format!("title {title}"),
                change: Change::Title {
                    before: job.title.clone(),
                    after: title.clone(),
                },
            }),
            Self::Unit(unit) if *unit == job.unit => Err(nothing()),
            Self::Unit(unit) => Ok(Step {
                label: format!("shown in {}", unit.words()),
                change: Change::Unit {
                    before: job.unit,
                    after: *unit,
                },
            }),
        }
    }
}

impl Edit {
    /// The step of an edit of an opening, a partition, a fixed shelf or a front.
    fn apply_to_part(&self, job: &Job) -> Result<Step, Refusal> {
        match *self {
            Self::PartMeasure {
                cabinet,
                part,
                measure,
                value,
            } => measure.set(job, cabinet, part, value),
            Self::PartChoose {
                cabinet,
                part,
                choice,
            } => choice.step_on(job, cabinet, part),
            Self::Divide {
                cabinet,
                opening,
                way,
                parts,
            } => openings::divide(job, cabinet, opening, way, parts),
            Self::Unite { cabinet, divider } => openings::unite(job, cabinet, divider),
            Self::Door { cabinet, opening } => fronts::next_door(job, cabinet, opening),
            Self::Drawers {
                cabinet,
                opening,
                count,
            } => fronts::drawers(job, cabinet, opening, count),
            Self::InnerDrawers {
                cabinet,
                opening,
                count,
            } => fronts::inner_drawers(job, cabinet, opening, count),
            Self::FalseFront { cabinet, opening } => fronts::toggle_false(job, cabinet, opening),
            Self::NoFront { cabinet, front } => fronts::take_away(job, cabinet, front),
            Self::Modules {
                cabinet,
                front,
                count,
            } => fronts::modules(job, cabinet, front, count),
            _ => Err(nothing()),
        }
    }
}

/// What an opening is called, or what stands for the whole.
fn opening_name(layout: &crate::layout::Layout, opening: Key) -> String {
    let name = layout.names.opening(opening);
    name.map_or_else(|| "the opening".to_string(), |name| name.to_string())
}

/// A cabinet and its position in the list.
fn cabinet(job: &Job, key: Key) -> Result<(usize, &Cabinet), Refusal> {
    job.cabinets
        .iter()
        .enumerate()
        .find(|(_, cabinet)| cabinet.key == key)
        .ok_or_else(|| Refusal(format!("there is no cabinet {key}")))
}

fn nothing() -> Refusal {
    Refusal("nothing would change".to_string())
}

/// A step that changes one cabinet by `edit`, which gives the step's label.
fn change(
    job: &Job,
    key: Key,
    edit: impl FnOnce(&mut Cabinet) -> Result<String, Refusal>,
) -> Result<Step, Refusal> {
    let (at, before) = cabinet(job, key)?;
    let mut after = before.clone();
    let label = edit(&mut after)?;
    if after == *before {
        return Err(nothing());
    }
    after
        .validate(&job.cards)
        .map_err(|fault| Refusal(fault.problem))?;
    let (before, after) = (Some(Box::new(before.clone())), Some(Box::new(after)));
    Ok(Step {
        label,
        change: Change::Cabinet { at, before, after },
    })
}

/// Accepts a finding; a later acceptance of the same takes the place of an earlier one.
fn accept(job: &Job, key: Key, acceptance: &Acceptance) -> Result<Step, Refusal> {
    change(job, key, |edited| {
        edited
            .accepted
            .retain(|earlier| earlier.message != acceptance.message);
        edited.accepted.push(acceptance.clone());
        Ok(format!("accepted {}", acceptance.rule))
    })
}

/// A step that changes the house defaults by `edit`, which gives the step's label.
fn change_shop(job: &Job, edit: impl FnOnce(&mut Shop) -> String) -> Result<Step, Refusal> {
    let mut after = job.shop.clone();
    let label = edit(&mut after);
    if after == job.shop {
        return Err(nothing());
    }
    Ok(Step {
        label,
        change: Change::Shop {
            before: Box::new(job.shop.clone()),
            after: Box::new(after),
        },
    })
}

#[cfg(test)]
mod tests;
