//! What no job can hold. Reader and editor ask here, so that whatever the editor can reach can be read again.

mod cabinet;
mod house;
mod keys;
mod opening;

pub use opening::{DRAWER_LOAD_MOST, SHELF_LOAD_MOST};

use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::{String, ToString};
use core::fmt;

use super::{Depth, HolePlace, Job};
use crate::cards::CardId;
use crate::measure::Length;
use crate::measure::range::{self, NumberRange, Range};

/// The most cabinets of one job.
pub(crate) const CABINETS_MOST: usize = 10_000;

/// Where a job holds what no job can hold, what that is, and what is allowed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The place, as the job file names it: `cabinets[2].size.height`.
    pub path: String,
    /// The value that stands there and what may stand there.
    pub problem: String,
}

type Checked = Result<(), Fault>;

impl Fault {
    fn new(field: &str, problem: impl fmt::Display) -> Self {
        Self {
            path: field.to_string(),
            problem: problem.to_string(),
        }
    }

    /// The fault with its place counted from further out.
    #[must_use]
    pub fn within(self, outer: &str) -> Self {
        let dot = if self.path.starts_with('[') { "" } else { "." };
        Self {
            path: format!("{outer}{dot}{}", self.path),
            ..self
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.path, self.problem)
    }
}

impl core::error::Error for Fault {}

/// The most things of one kind in one list: no person counts so many, and no face has room for them.
const LIST_MOST: usize = 1000;

/// As [`all`], for a list that no sound job makes long.
fn each<T>(list: &[T], name: &str, check: impl Fn(&T) -> Checked) -> Checked {
    if list.len() > LIST_MOST {
        let problem = format!("{} of them, but there are at most {LIST_MOST}", list.len());
        return Err(Fault::new(name, problem));
    }
    all(list, name, check)
}

/// Checks each item of a list and puts its place before the fault of the first that has one.
fn all<T>(list: &[T], name: &str, mut check: impl FnMut(&T) -> Checked) -> Checked {
    for (at, item) in list.iter().enumerate() {
        check(item).map_err(|fault| fault.within(&format!("{name}[{at}]")))?;
    }
    Ok(())
}

fn length(field: &str, range: &Range, value: Length) -> Checked {
    range
        .check(value)
        .map(drop)
        .map_err(|wrong| Fault::new(field, wrong))
}

fn number(field: &str, range: &NumberRange, value: i64) -> Checked {
    range
        .check(value)
        .map(drop)
        .map_err(|wrong| Fault::new(field, wrong))
}

fn card(field: &str, kind: &str, id: &CardId, found: bool) -> Checked {
    if found {
        Ok(())
    } else {
        Err(Fault::new(
            field,
            format!("{id}, but the job has no {kind} card of that id"),
        ))
    }
}

impl Job {
    /// Whether the job holds only what a job can hold.
    ///
    /// # Errors
    /// The first of these, with its place:
    /// - a length or a number outside its range, openings too deep within each other or too many side by side;
    /// - two cabinets of one key or of one name, two things of one key in a cabinet, two cards of one kind with one id;
    /// - a key too high to be followed by another;
    /// - a card that is named and not there;
    /// - no cabinet at all, or more than a job may have; a cabinet without a copy; a runner without a length, or one whose
    ///   lengths or screws are out of order; a list longer than a person could want;
    /// - an accepted finding that says nothing, or commands a terminal.
    ///
    /// What is gone may still be named where it was a fact: by the record of what was bored, by what was measured, by
    /// what a fitting serves, by the face the job was left on. Then the job opens at its first cabinet.
    pub fn validate(&self) -> Checked {
        self.cards
            .validate()
            .map_err(|fault| fault.within("cards"))?;
        self.shop
            .validate(&self.cards)
            .map_err(|fault| fault.within("shop"))?;
        if self.cabinets.is_empty() {
            let problem = "none, but a job has at least one cabinet";
            return Err(Fault::new("cabinets", problem));
        }
        if self.cabinets.len() > CABINETS_MOST {
            let problem = format!(
                "{} cabinets, but a job has at most {CABINETS_MOST}",
                self.cabinets.len()
            );
            return Err(Fault::new("cabinets", problem));
        }
        let (mut seen, mut names) = (BTreeSet::new(), BTreeSet::new());
        all(&self.cabinets, "cabinets", |cabinet| {
            cabinet.validate(&self.cards)
        })?;
        for (at, cabinet) in self.cabinets.iter().enumerate() {
            let twice = |field: &str, what: &dyn fmt::Display| {
                Err(Fault::new(
                    field,
                    format!("{what}, but an earlier cabinet has that already"),
                ))
                .map_err(|fault: Fault| fault.within(&format!("cabinets[{at}]")))
            };
            keys::key("key", cabinet.key)
                .map_err(|fault| fault.within(&format!("cabinets[{at}]")))?;
            if !seen.insert(cabinet.key) {
                return twice("key", &cabinet.key);
            }
            if !names.insert(&cabinet.name) {
                return twice("name", &cabinet.name);
            }
        }
        if let Some(left) = self.left_at {
            keys::key("cabinet", left.cabinet)
                .and_then(|()| keys::panel("face", left.face.panel))
                .map_err(|fault| fault.within("left_at"))?;
        }
        self.validate_records()
    }

    /// What was said at the bench, and the revisions.
    fn validate_records(&self) -> Checked {
        all(&self.bored, "bored", |bored| {
            keys::key("cabinet", bored.cabinet)?;
            keys::key("copy", bored.copy)?;
            keys::panel("face", bored.face.panel)?;
            length("diameter", &range::HOLE_DIAMETER, bored.diameter)?;
            length("from_front", &range::PANEL_POSITION, bored.from_front)?;
            length("from_foot", &range::PANEL_POSITION, bored.from_foot)?;
            bored
                .depth
                .map_or(Ok(()), |depth| length("depth", &range::BORE_DEPTH, depth))
        })?;
        all(&self.troubles, "troubles", |trouble| {
            keys::key("cabinet", trouble.cabinet)?;
            keys::key("copy", trouble.copy)?;
            keys::panel("face", trouble.face.panel)
        })?;
        all(&self.measured, "measured", |measured| {
            keys::key("cabinet", measured.cabinet)?;
            keys::key("copy", measured.copy)?;
            keys::panel("face", measured.face.panel)?;
            length("want", &range::PANEL_POSITION, measured.want)?;
            length("is", &range::PANEL_POSITION, measured.is)?;
            let mut rows = measured.span.rows();
            rows.try_for_each(|row| length("span", &range::PANEL_POSITION, row))
        })?;
        let mut revised = BTreeSet::new();
        all(&self.revisions, "revisions", |revision| {
            keys::key("cabinet", revision.cabinet)?;
            match revised.insert(revision.cabinet) {
                true => Ok(()),
                false => Err(Fault::new(
                    "cabinet",
                    format!(
                        "{}, but an earlier revision is of that already",
                        revision.cabinet
                    ),
                )),
            }
        })
    }
}

fn place(field: &str, place: HolePlace) -> Checked {
    let most = i16::try_from(range::HOLE_NUMBER.max).unwrap_or(i16::MAX);
    if place.count.abs() <= most {
        return Ok(());
    }
    Err(Fault::new(
        field,
        format!("{place}, but a place is counted up to {most} holes either way"),
    ))
}

fn depth(field: &str, depth: Depth) -> Checked {
    match depth {
        Depth::Blind(deep) => length(field, &range::BORE_DEPTH, deep),
        Depth::Shop | Depth::Through => Ok(()),
    }
}
