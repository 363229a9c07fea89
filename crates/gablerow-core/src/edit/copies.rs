//! What is built of a cabinet: its copies, plain or mirrored.

use alloc::format;
use alloc::vec::Vec;

use super::{Refusal, change};
use crate::counted::counted;
use crate::history::Step;
use crate::job::{AsCut, Cabinet, Copy, Job, Key};
use crate::label::Label;

/// A change of what is built of a cabinet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CopyEdit {
    /// One more is built.
    Add {
        /// As the mirror image.
        mirrored: bool,
        /// What it is called.
        name: Label,
    },
    /// A copy less; never the last one, nor one of which something was bored.
    Remove(Key),
    /// Another name for a copy.
    Rename(Key, Label),
    /// What was measured of panels of a copy. Panels that are not named keep what they have.
    AsCut(Key, Vec<AsCut>),
}

pub(super) fn apply(job: &Job, key: Key, edit: &CopyEdit) -> Result<Step, Refusal> {
    let new = job.free_key(key);
    change(job, key, |cabinet| match edit {
        CopyEdit::Add { mirrored, name } => {
            free_name(cabinet, name, None)?;
            cabinet.copies.push(Copy {
                key: new,
                name: name.clone(),
                mirrored: *mirrored,
                as_cut: Vec::new(),
            });
            let how = if *mirrored { ", mirrored" } else { "" };
            Ok(format!("copy {name} of {}{how}", cabinet.name))
        }
        CopyEdit::Remove(copy) => {
            let at = position(cabinet, *copy)?;
            let name = cabinet.copies[at].name.clone();
            if cabinet.copies.len() == 1 {
                return Err(Refusal(format!(
                    "{} is built at least once; to build none of it remove the cabinet",
                    cabinet.name
                )));
            }
            let of_it = |bored: &&crate::job::Bored| (bored.cabinet, bored.copy) == (key, *copy);
            let bored = job.bored.iter().filter(of_it).count();
            if bored > 0 {
                let holes = if bored == 1 { "hole is" } else { "holes are" };
                return Err(Refusal(format!(
                    "{bored} {holes} bored of copy {name} already, so it stays"
                )));
            }
            cabinet.copies.remove(at);
            Ok(format!("no copy {name} of {}", cabinet.name))
        }
        CopyEdit::Rename(copy, name) => {
            let at = position(cabinet, *copy)?;
            free_name(cabinet, name, Some(*copy))?;
            let before = core::mem::replace(&mut cabinet.copies[at].name, name.clone());
            Ok(format!("copy {before} of {} is {name}", cabinet.name))
        }
        CopyEdit::AsCut(copy, cuts) => {
            let at = position(cabinet, *copy)?;
            let copy = &mut cabinet.copies[at];
            copy.as_cut
                .retain(|kept| cuts.iter().all(|cut| cut.panel != kept.panel));
            // What says nothing is not kept.
            copy.as_cut
                .extend(cuts.iter().filter(|cut| !cut.is_empty()));
            let panels = counted(copy.as_cut.len(), "panel");
            Ok(format!(
                "copy {} of {}: {panels} as cut",
                copy.name, cabinet.name
            ))
        }
    })
}

fn position(cabinet: &Cabinet, copy: Key) -> Result<usize, Refusal> {
    let at = cabinet.copies.iter().position(|built| built.key == copy);
    at.ok_or_else(|| Refusal(format!("there is no copy {copy} of {}", cabinet.name)))
}

/// Panels are labelled by the names of copies, so no two of a cabinet are alike.
fn free_name(cabinet: &Cabinet, name: &Label, except: Option<Key>) -> Result<(), Refusal> {
    let taken = |copy: &Copy| copy.name == *name && Some(copy.key) != except;
    if cabinet.copies.iter().any(taken) {
        return Err(Refusal(format!(
            "there is a copy {name} of {} already; take another name",
            cabinet.name
        )));
    }
    Ok(())
}
