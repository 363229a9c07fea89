//! Doors, drawers and false fronts over an opening: wishes, set and taken away.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::served::change_fronts;
use super::{Refusal, cabinet, change, opening_name};
use crate::history::Step;
use crate::job::{Cabinet, Front, FrontHeight, FrontKind, Hand, Job, Key, Label, Opening};
use crate::layout::{Layout, gap_of};
use crate::measure::{Length, range};

/// Modules of a drawer over a door, unless somebody says otherwise.
const DRAWER_OVER_DOOR: u16 = 4;

/// The next way of closing an opening by doors: hung left, hung right, a pair, none.
pub(super) fn next_door(job: &Job, key: Key, opening: Key) -> Result<Step, Refusal> {
    let name = checked_name(job, key, opening)?;
    let new = job.free_key(key);
    change_fronts(job, key, |edited| {
        let label = free_name(edited, "door");
        let fronts = fronts_mut(edited, opening)?;
        let hung = fronts.iter_mut().find(|front| front.kind.is_hung());
        Ok(match hung {
            None => {
                let door = FrontKind::Door(Hand::Left);
                fronts.insert(0, Front::plain(new, label, door));
                format!("{} on {name}", door.words())
            }
            Some(front) => match front.kind {
                FrontKind::Door(Hand::Left) => {
                    front.kind = FrontKind::Door(Hand::Right);
                    format!("{} on {name}", front.kind.words())
                }
                FrontKind::Door(Hand::Right) => {
                    front.kind = FrontKind::Pair;
                    format!("{} on {name}", front.kind.words())
                }
                _ => {
                    fronts.retain(|front| !front.kind.is_hung());
                    format!("no door on {name}")
                }
            },
        })
    })
}

/// So many drawers from the foot up, in place of those that are there: of whole modules, the lowest ones the taller; over a
/// door, four modules each. The same number again takes them away.
pub(super) fn drawers(job: &Job, key: Key, opening: Key, count: u16) -> Result<Step, Refusal> {
    let name = checked_name(job, key, opening)?;
    let (_, found) = cabinet(job, key)?;
    let fronts = &opening_of(found, opening)?.fronts;
    let is_drawer = |front: &&Front| front.kind == FrontKind::Drawer;
    if fronts.iter().filter(is_drawer).count() == usize::from(count) {
        return change_fronts(job, key, |edited| {
            fronts_mut(edited, opening)?.retain(|front| front.kind != FrontKind::Drawer);
            Ok(format!("no drawers on {name}"))
        });
    }
    let over_door = fronts.iter().any(|front| front.kind.is_hung());
    let modules = if over_door {
        alloc::vec![DRAWER_OVER_DOOR; usize::from(count)]
    } else {
        let (room, gap) = room_of_drawers(job, found, opening)?;
        shared_modules(room.div_floor(Length::PITCH), count).ok_or_else(|| {
            Refusal(format!(
                "{count} drawers, but {name} is {} high: a drawer front takes one module of 32 at least",
                (room - gap).show(job.unit)
            ))
        })?
    };
    replace(job, key, opening, FrontKind::Drawer, &modules, &name)
}

/// So many drawers behind a door, in place of those that are there; the same number again takes them away.
pub(super) fn inner_drawers(
    job: &Job,
    key: Key,
    opening: Key,
    count: u16,
) -> Result<Step, Refusal> {
    let name = checked_name(job, key, opening)?;
    let (_, found) = cabinet(job, key)?;
    let fronts = &opening_of(found, opening)?.fronts;
    let inner = |front: &&Front| front.kind == FrontKind::Inner;
    if fronts.iter().filter(inner).count() == usize::from(count) {
        return change_fronts(job, key, |edited| {
            fronts_mut(edited, opening)?.retain(|front| front.kind != FrontKind::Inner);
            Ok(format!("no drawers behind on {name}"))
        });
    }
    let layout = Layout::of(found, job);
    let made = layout.opening(opening);
    let height = made.map_or(Length::ZERO, |made| made.ceiling - made.floor);
    let modules = shared_modules(height.div_floor(Length::PITCH), count).ok_or_else(|| {
        Refusal(format!(
            "{count} drawers, but {name} is {} high inside",
            height.show(job.unit)
        ))
    })?;
    replace(job, key, opening, FrontKind::Inner, &modules, &name)
}

/// A false front over the rest of an opening, at its head; again takes it away.
pub(super) fn toggle_false(job: &Job, key: Key, opening: Key) -> Result<Step, Refusal> {
    let name = checked_name(job, key, opening)?;
    let new = job.free_key(key);
    change_fronts(job, key, |edited| {
        let label = free_name(edited, "false");
        let fronts = fronts_mut(edited, opening)?;
        let before = fronts.len();
        fronts.retain(|front| front.kind != FrontKind::False);
        if fronts.len() < before {
            share_again(job, edited, opening)?;
            return Ok(format!("no false front on {name}"));
        }
        let mut front = Front::plain(new, label, FrontKind::False);
        if !fronts.is_empty() {
            front.height = FrontHeight::Modules(DRAWER_OVER_DOOR);
        }
        fronts.push(front);
        share_again(job, edited, opening)?;
        Ok(format!("false front on {name}"))
    })
}

/// One front less.
pub(super) fn take_away(job: &Job, key: Key, front: Key) -> Result<Step, Refusal> {
    change_fronts(job, key, |edited| {
        let mut gone = None;
        edited.opening.each_mut(&mut |opening| {
            if let Some(at) = opening.fronts.iter().position(|found| found.key == front) {
                gone = Some(opening.fronts.remove(at));
            }
        });
        let gone = gone.ok_or_else(|| Refusal("there is no such front".into()))?;
        Ok(format!("no {}", gone.name))
    })
}

/// A front of whole modules.
pub(super) fn modules(job: &Job, key: Key, front: Key, count: u16) -> Result<Step, Refusal> {
    let range = range::SHARE;
    let count = range
        .check(i64::from(count))
        .map_err(|wrong| Refusal(format!("{wrong}")))?;
    change(job, key, |edited| {
        let mut name = None;
        edited.opening.each_mut(&mut |opening| {
            let found = opening.fronts.iter_mut().find(|found| found.key == front);
            if let Some(found) = found {
                found.height = FrontHeight::Modules(count);
                name = Some(found.name.clone());
            }
        });
        let name = name.ok_or_else(|| Refusal("there is no such front".into()))?;
        Ok(format!("{name} of {count} modules"))
    })
}

fn checked_name(job: &Job, key: Key, opening: Key) -> Result<String, Refusal> {
    let (_, found) = cabinet(job, key)?;
    opening_of(found, opening)?;
    Ok(opening_name(&Layout::of(found, job), opening))
}

fn no_opening() -> Refusal {
    Refusal("there is no such opening".into())
}

/// An opening of a cabinet.
pub(super) fn opening_of(cabinet: &Cabinet, key: Key) -> Result<&Opening, Refusal> {
    let mut found = None;
    cabinet.opening.each(&mut |opening| {
        if opening.key == key {
            found = Some(opening);
        }
    });
    found.ok_or_else(no_opening)
}

fn fronts_mut(cabinet: &mut Cabinet, key: Key) -> Result<&mut Vec<Front>, Refusal> {
    match super::thing::thing_mut(cabinet, key) {
        Some(super::thing::ThingMut::Opening(opening, _)) => Ok(&mut opening.fronts),
        _ => Err(no_opening()),
    }
}

/// The height that fronts of an opening would share: that of one door over all of it.
fn field_height(job: &Job, cabinet: &Cabinet, opening: Key) -> Result<Length, Refusal> {
    let mut one_door = cabinet.clone();
    let key = job.free_key(cabinet.key);
    let door = Front::plain(key, Label::known("door"), FrontKind::Door(Hand::Left));
    *fronts_mut(&mut one_door, opening)? = [door].into();
    let layout = Layout::of(&one_door, job);
    let made = layout.fronts.iter().find(|front| front.key == key);
    made.map(|front| front.height.total())
        .ok_or_else(no_opening)
}

/// The height that drawers alone share under the false fronts of an opening, with one gap more than they have between them,
/// and that gap.
fn room_of_drawers(
    job: &Job,
    cabinet: &Cabinet,
    opening: Key,
) -> Result<(Length, Length), Refusal> {
    let found = opening_of(cabinet, opening)?;
    let gap = gap_of(&job.shop.fronts, found);
    let mut room = field_height(job, cabinet, opening)? + gap;
    for front in &found.fronts {
        if front.kind == FrontKind::False {
            room -= match front.height {
                FrontHeight::Fixed(height) => height + gap,
                FrontHeight::Modules(count) => Length::PITCH * i32::from(count),
                FrontHeight::Ratio(_) => Length::PITCH * i32::from(DRAWER_OVER_DOOR),
            };
        }
    }
    Ok((room, gap))
}

/// Shares the height among drawers again when a false front comes or goes; drawers whose heights somebody chose, or that
/// stand over a door, keep them.
fn share_again(job: &Job, cabinet: &mut Cabinet, opening: Key) -> Result<(), Refusal> {
    let fronts = &opening_of(cabinet, opening)?.fronts;
    let drawers = fronts
        .iter()
        .filter(|front| front.kind == FrontKind::Drawer);
    let mut modules = Vec::new();
    for front in drawers {
        match front.height {
            FrontHeight::Modules(count) => modules.push(count),
            _ => return Ok(()),
        }
    }
    let count = u16::try_from(modules.len()).unwrap_or(u16::MAX);
    let all = modules.iter().copied().map(i32::from).sum();
    let is_even = shared_modules(all, count).is_some_and(|shared| shared == modules);
    if !is_even || fronts.iter().any(|front| front.kind.is_hung()) {
        return Ok(());
    }
    let (room, _) = room_of_drawers(job, cabinet, opening)?;
    if let Some(shared) = shared_modules(room.div_floor(Length::PITCH), count) {
        let fronts = fronts_mut(cabinet, opening)?.iter_mut();
        let drawers = fronts.filter(|front| front.kind == FrontKind::Drawer);
        for (front, count) in drawers.zip(shared) {
            front.height = FrontHeight::Modules(count);
        }
    }
    Ok(())
}

/// Whole modules shared among so many, the lowest ones one more; `None` when there are not enough.
fn shared_modules(modules: i32, count: u16) -> Option<Vec<u16>> {
    let modules = u16::try_from(modules).ok()?;
    let each = modules.checked_div(count).filter(|&each| each > 0)?;
    let taller = modules % count;
    Some((0..count).map(|at| each + u16::from(at < taller)).collect())
}

/// Puts drawers of a kind, from the foot up, in place of those that are there; false fronts stay over them, and one
/// that took all there was takes four modules.
fn replace(
    job: &Job,
    key: Key,
    opening: Key,
    kind: FrontKind,
    modules: &[u16],
    name: &str,
) -> Result<Step, Refusal> {
    let mut next = job.free_key(key);
    change_fronts(job, key, |edited| {
        let fronts = fronts_mut(edited, opening)?;
        fronts.retain(|front| front.kind != kind);
        for front in fronts {
            let takes_all = matches!(front.height, FrontHeight::Ratio(_));
            if kind == FrontKind::Drawer && front.kind == FrontKind::False && takes_all {
                front.height = FrontHeight::Modules(DRAWER_OVER_DOOR);
            }
        }
        for &count in modules {
            let called = free_name(edited, "D");
            let fronts = fronts_mut(edited, opening)?;
            let is_false = |front: &Front| front.kind == FrontKind::False;
            let at = fronts.iter().position(is_false).unwrap_or(fronts.len());
            let drawer = Front {
                height: FrontHeight::Modules(count),
                ..Front::plain(next, called, kind)
            };
            fronts.insert(at, drawer);
            next = next.next();
        }
        let what = match modules.len() {
            1 => kind.words().into(),
            more => format!("{more} times {}", kind.words()),
        };
        Ok(format!("{what} on {name}"))
    })
}

/// A name that no front of the cabinet has: `D1`, `D2`; of words with a space before the number.
fn free_name(cabinet: &Cabinet, stem: &str) -> Label {
    let space = if stem.len() > 1 { " " } else { "" };
    let mut number = 1;
    loop {
        let name = Label::known(&format!("{stem}{space}{number}"));
        let mut taken = false;
        cabinet.opening.each(&mut |opening| {
            taken |= opening.fronts.iter().any(|front| front.name == name);
        });
        if !taken {
            return name;
        }
        number += 1;
    }
}
