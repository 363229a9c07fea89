//! Cabinets as a list: add, copy, rename, remove; where the grid of one begins, and what is accepted of it.

use alloc::boxed::Box;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Refusal, cabinet, change};
use crate::check::{Level, Rule};
use crate::history::{Change, Step};
use crate::job::{Acceptance, CABINETS_MOST, Cabinet, Copy, Job, Key};
use crate::label::Label;
use crate::measure::Length;

pub(super) fn add(job: &Job, after: Option<Key>, name: &Label) -> Result<Step, Refusal> {
    free_name(job, name, None)?;
    let at = match after {
        Some(key) => cabinet(job, key)?.0 + 1,
        None => job.cabinets.len(),
    };
    let added = Cabinet::plain(job.free_cabinet_key(), name.clone(), &job.shop);
    insert(job, at, added, format!("add cabinet {name}"))
}

pub(super) fn duplicate(job: &Job, key: Key, name: &Label) -> Result<Step, Refusal> {
    free_name(job, name, None)?;
    let (at, original) = cabinet(job, key)?;
    let unmeasured = |copy: &Copy| Copy {
        as_cut: Vec::new(),
        ..copy.clone()
    };
    let like_it = Cabinet {
        key: job.free_cabinet_key(),
        name: name.clone(),
        copies: original.copies.iter().map(unmeasured).collect(),
        ..original.clone()
    };
    let label = format!("copy {} as {name}", original.name);
    insert(job, at + 1, like_it, label)
}

pub(super) fn rename(job: &Job, key: Key, name: &Label) -> Result<Step, Refusal> {
    free_name(job, name, Some(key))?;
    change(job, key, |cabinet| {
        let label = format!("rename {} to {name}", cabinet.name);
        cabinet.name = name.clone();
        Ok(label)
    })
}

pub(super) fn remove(job: &Job, key: Key) -> Result<Step, Refusal> {
    let (at, removed) = cabinet(job, key)?;
    if job.cabinets.len() == 1 {
        return Err(Refusal(
            "a job keeps at least one cabinet; add another one first".into(),
        ));
    }
    Ok(Step {
        label: format!("remove cabinet {}", removed.name),
        change: Change::Cabinet {
            at,
            before: Some(Box::new(removed.clone())),
            after: None,
        },
    })
}

fn insert(job: &Job, at: usize, added: Cabinet, label: String) -> Result<Step, Refusal> {
    if job.cabinets.len() >= CABINETS_MOST || job.cabinet(added.key).is_some() {
        return Err(Refusal(format!(
            "a job has at most {CABINETS_MOST} cabinets; begin another job"
        )));
    }
    Ok(Step {
        label,
        change: Change::Cabinet {
            at,
            before: None,
            after: Some(Box::new(added)),
        },
    })
}

/// Names are how people tell cabinets apart, so no two are alike.
fn free_name(job: &Job, name: &Label, except: Option<Key>) -> Result<(), Refusal> {
    match job
        .cabinets
        .iter()
        .find(|cabinet| cabinet.name == *name && Some(cabinet.key) != except)
    {
        Some(_) => Err(Refusal(format!(
            "there is a cabinet {name} already; take another name"
        ))),
        None => Ok(()),
    }
}

/// Other offsets at both ends of the sides.
pub(super) fn offsets(job: &Job, key: Key, foot: Length, head: Length) -> Result<Step, Refusal> {
    change(job, key, |edited| {
        (edited.offsets.foot, edited.offsets.head) = (foot, head);
        let [foot, head] = [foot, head].map(|offset| offset.show(job.unit));
        Ok(format!("offsets {foot} and {head}"))
    })
}

/// The fewest words of the sentence that overrules a stop: a house default, so that nobody overrules with `ok`.
const SENTENCE_WORDS: usize = 3;

/// A finding is accepted, in place of what was accepted of the same sentence. A stop takes a sentence.
pub(super) fn accept(job: &Job, key: Key, acceptance: &Acceptance) -> Result<Step, Refusal> {
    let level = Rule::named(&acceptance.rule).map(|rule| rule.info().level);
    let words = acceptance.reason.as_str().split_whitespace().count();
    if level == Some(Level::Stop) && words < SENTENCE_WORDS {
        return Err(Refusal(
            "a sentence overrules a stop: who says so, and why".into(),
        ));
    }
    let quieted = level.map_or("accepted", Level::quieted);
    change(job, key, |edited| {
        edited
            .accepted
            .retain(|earlier| earlier.message != acceptance.message);
        edited.accepted.push(acceptance.clone());
        Ok(format!("{quieted} {}", acceptance.rule))
    })
}

/// An acceptance is taken back.
pub(super) fn withdraw(job: &Job, key: Key, message: &str) -> Result<Step, Refusal> {
    change(job, key, |edited| {
        edited.accepted.retain(|earlier| earlier.message != message);
        Ok("acceptance withdrawn".into())
    })
}
