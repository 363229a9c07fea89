//! The cabinets of the job.

use gablerow_core::edit::{CopyEdit, Edit};
use gablerow_core::job::{Copy, Job, Key};
use gablerow_core::label::Label;

use super::{Effect, as_cut, ask, edit, face, front, go_to};
use crate::action::Action;
use crate::app::{App, Purpose, Screen};
use crate::scene::Spot;

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Screen::Job(here) = app.screen else {
        return Vec::new();
    };
    match action {
        Action::Up => app.screen = Screen::Job(neighbour(&app.desk.job, here, -1)),
        Action::Down => app.screen = Screen::Job(neighbour(&app.desk.job, here, 1)),
        Action::Leave => app.screen = Screen::Face,
        Action::Open => {
            app.screen = Screen::Face;
            if here != app.spot.cabinet {
                go_to(
                    app,
                    Spot {
                        cabinet: here,
                        face: face::opening_face(),
                        ..app.spot
                    },
                );
            }
        }
        Action::Front => {
            if here != app.spot.cabinet {
                front::go_to_cabinet(app, here);
            }
            front::open(app);
        }
        Action::Add => {
            let offered = unused_name(&app.desk.job, here);
            ask(app, Purpose::Add(here), &offered);
        }
        Action::Copy => {
            let offered = unused_name(&app.desk.job, here);
            ask(app, Purpose::Copy(here), &offered);
        }
        Action::Rename => {
            let name = name_of(&app.desk.job, here);
            ask(app, Purpose::Rename(here), &name);
        }
        Action::BuildOne => return build(app, here, false),
        Action::BuildMirrored => return build(app, here, true),
        Action::BuildLess => return build_less(app, here),
        Action::NameCopies => {
            let names = copy_names(&app.desk.job, here).join(", ");
            ask(app, Purpose::CopyNames(here), &names);
        }
        Action::CutLengths => {
            let typed = as_cut::typed(&app.desk.job, here);
            ask(app, Purpose::CutLengths(here), &typed);
        }
        Action::Remove => ask(app, Purpose::Remove(here), ""),
        _ => {}
    }
    Vec::new()
}

fn neighbour(job: &Job, here: Key, by: isize) -> Key {
    let at = job.position(here).unwrap_or(0);
    let next = at
        .saturating_add_signed(by)
        .min(job.cabinets.len().saturating_sub(1));
    job.cabinets.get(next).map_or(here, |cabinet| cabinet.key)
}

fn name_of(job: &Job, key: Key) -> String {
    job.cabinet(key)
        .map(|cabinet| cabinet.name.to_string())
        .unwrap_or_default()
}

/// The name with its number counted on until nobody has it: `G2`, `G3`.
fn unused_name(job: &Job, key: Key) -> String {
    let name = name_of(job, key);
    let stem = name.trim_end_matches(|c: char| c.is_ascii_digit());
    let number: u64 = name[stem.len()..].parse().unwrap_or(1);
    let taken = |name: &String| {
        job.cabinets
            .iter()
            .any(|cabinet| cabinet.name.as_str() == name)
    };
    (number.saturating_add(1)..)
        .map(|number| format!("{stem}{number}"))
        .find(|name| !taken(name))
        .unwrap_or(name)
}

fn copies(job: &Job, cabinet: Key) -> &[Copy] {
    job.cabinet(cabinet)
        .map_or(&[], |cabinet| &cabinet.copies[..])
}

fn copy_names(job: &Job, cabinet: Key) -> Vec<String> {
    let copies = copies(job, cabinet).iter();
    copies.map(|copy| copy.name.to_string()).collect()
}

/// Builds one more, named by the lowest number above how many there were that none of them has.
fn build(app: &mut App, cabinet: Key, mirrored: bool) -> Vec<Effect> {
    let names = copy_names(&app.desk.job, cabinet);
    let mut numbers = (names.len() + 1..).map(|number| number.to_string());
    let unused = numbers.find(|name| !names.contains(name));
    let Some(name) = unused.and_then(|name| Label::new(&name).ok()) else {
        return Vec::new();
    };
    let change = CopyEdit::Add { mirrored, name };
    edit(app, &Edit::Copies { cabinet, change })
}

fn build_less(app: &mut App, cabinet: Key) -> Vec<Effect> {
    let Some(last) = copies(&app.desk.job, cabinet).last() else {
        return Vec::new();
    };
    let change = CopyEdit::Remove(last.key);
    edit(app, &Edit::Copies { cabinet, change })
}

/// The edit that names one copy anew, of the names of all of them as they were typed; `None` when none is new.
pub(super) fn new_name(job: &Job, cabinet: Key, text: &str) -> Result<Option<Edit>, String> {
    let (copies, typed) = (copies(job, cabinet), text.split(','));
    let names: Vec<&str> = typed.map(str::trim).collect();
    if names.len() != copies.len() {
        let (count, names) = (copies.len(), names.len());
        return Err(format!(
            "{names} names between commas, but {count} are built"
        ));
    }
    let pairs = copies.iter().zip(&names);
    let mut new = pairs.filter(|(copy, name)| copy.name.as_str() != **name);
    match (new.next(), new.next()) {
        (None, _) => Ok(None),
        (Some((copy, name)), None) => {
            let name = Label::new(name).map_err(|wrong| wrong.to_string())?;
            let change = CopyEdit::Rename(copy.key, name);
            Ok(Some(Edit::Copies { cabinet, change }))
        }
        _ => Err("one new name at a time, so that each can be taken back".to_owned()),
    }
}
