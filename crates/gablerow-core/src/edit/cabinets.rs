//! Cabinets as a list: add, copy, rename, remove.

use alloc::boxed::Box;
use alloc::format;
use alloc::vec::Vec;

use super::{Refusal, change};
use crate::history::{Change, Step};
use crate::job::{Cabinet, Copy, Job, Key};
use crate::label::Label;

pub(super) fn add(job: &Job, after: Option<Key>, name: &Label) -> Result<Step, Refusal> {
    free_name(job, name, None)?;
    let at = after
        .and_then(|key| job.position(key))
        .map_or(job.cabinets.len(), |at| at + 1);
    let cabinet = Cabinet::plain(job.free_cabinet_key(), name.clone(), &job.shop);
    Ok(Step {
        label: format!("add cabinet {name}"),
        change: insert(at, cabinet),
    })
}

pub(super) fn duplicate(job: &Job, key: Key, name: &Label) -> Result<Step, Refusal> {
    free_name(job, name, None)?;
    let at = position(job, key)?;
    let mut cabinet = job.cabinets[at].clone();
    (cabinet.key, cabinet.name) = (job.free_cabinet_key(), name.clone());
    cabinet.copies = cabinet
        .copies
        .into_iter()
        .map(|copy| Copy {
            as_cut: Vec::new(),
            ..copy
        })
        .collect();
    Ok(Step {
        label: format!("copy {} as {name}", job.cabinets[at].name),
        change: insert(at + 1, cabinet),
    })
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
    let at = position(job, key)?;
    if job.cabinets.len() == 1 {
        return Err(Refusal(
            "a job keeps at least one cabinet; add another one first".into(),
        ));
    }
    let cabinet = job.cabinets[at].clone();
    let label = format!("remove cabinet {}", cabinet.name);
    Ok(Step {
        label,
        change: Change::Cabinet {
            at,
            before: Some(Box::new(cabinet)),
            after: None,
        },
    })
}

fn insert(at: usize, cabinet: Cabinet) -> Change {
    Change::Cabinet {
        at,
        before: None,
        after: Some(Box::new(cabinet)),
    }
}

fn position(job: &Job, key: Key) -> Result<usize, Refusal> {
    job.position(key)
        .ok_or_else(|| Refusal(format!("there is no cabinet {key}")))
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
