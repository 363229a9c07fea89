//! Fittings that were proposed, set all at once.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Refusal, change};
use crate::history::Step;
use crate::job::{Bay, Cabinet, Job, Key, Plate, Runner};
use crate::layout::{FrontLayout, Layout};

/// What a proposal sets in one bay.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Furnishing {
    /// The bay.
    pub bay: Key,
    /// Hinge plates it gets.
    pub plates: Vec<Plate>,
    /// Pairs of runners it gets.
    pub runners: Vec<Runner>,
}

/// Plates and runners of a cabinet that come, and those that go for them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Furnish {
    /// The cabinet.
    pub cabinet: Key,
    /// Plates and runners that go.
    pub gone: Vec<Key>,
    /// What comes, bay by bay.
    pub bays: Vec<Furnishing>,
    /// What is done, in a few words.
    pub label: String,
}

/// Takes away what goes and sets what comes.
///
/// # Errors
///
/// - a bay, or a front that something comes for, is gone, is of another kind or hangs on another wall by now;
/// - something else carries such a front by now;
/// - no cabinet can hold what comes.
pub(super) fn furnish(job: &Job, wanted: &Furnish) -> Result<Step, Refusal> {
    let Furnish {
        cabinet,
        gone,
        bays,
        label,
    } = wanted;
    let (_, found) = super::cabinet(job, *cabinet)?;
    let layout = Layout::of(found, job);
    still_wanted(found, &layout, wanted)?;
    let last = layout.last;
    change(job, *cabinet, |edited| {
        edited.opening.each_bay_mut(&mut |bay: &mut Bay| {
            bay.plates.retain(|plate| !gone.contains(&plate.key));
            bay.runners.retain(|runner| !gone.contains(&runner.key));
        });
        for made in bays {
            let bay = edited
                .opening
                .bay_mut(made.bay)
                .ok_or_else(|| stale("a bay of it is gone"))?;
            bay.plates.extend(made.plates.iter().cloned());
            bay.runners.extend(made.runners.iter().cloned());
            bay.plates.sort_by_key(|plate| plate.hole.number(last));
            bay.runners.sort_by_key(|runner| runner.hole.number(last));
        }
        Ok(label.clone())
    })
}

/// Whether each front that something comes for is there as it was, and nothing else carries it.
fn still_wanted(cabinet: &Cabinet, layout: &Layout, wanted: &Furnish) -> Result<(), Refusal> {
    for made in &wanted.bays {
        let found = layout.bays.iter().find(|bay| bay.key == made.bay);
        let bay = found.ok_or_else(|| stale("a bay of it is gone"))?;
        for (front, plate) in served(&made.plates, |plate| plate.serves) {
            let mut leaves = leaves(cabinet, layout, front)?;
            if !leaves.any(|leaf| leaf.wall_hung() == Some(bay.wall(plate.wall))) {
                return Err(stale(&format!("{} hangs elsewhere", name(cabinet, front))));
            }
            carried_by_others(cabinet, layout, wanted, front)?;
        }
        for (front, _) in served(&made.runners, |runner| runner.serves) {
            let mut leaves = leaves(cabinet, layout, front)?;
            if !leaves.any(|leaf| leaf.kind.is_drawer() && leaf.opening == bay.key) {
                let name = name(cabinet, front);
                return Err(stale(&format!("{name} is no drawer of this bay")));
            }
            carried_by_others(cabinet, layout, wanted, front)?;
        }
    }
    Ok(())
}

fn served<T>(
    fittings: &[T],
    serves: impl Fn(&T) -> Option<Key>,
) -> impl Iterator<Item = (Key, &T)> {
    let front = move |fitting| Some((serves(fitting)?, fitting));
    fittings.iter().filter_map(front)
}

/// The front, or its leaves.
fn leaves<'a>(
    cabinet: &Cabinet,
    layout: &'a Layout,
    front: Key,
) -> Result<impl Iterator<Item = &'a FrontLayout>, Refusal> {
    if cabinet.opening.front(front).is_none() {
        return Err(stale("a front of it is gone"));
    }
    Ok(layout.fronts.iter().filter(move |leaf| leaf.key == front))
}

fn carried_by_others(
    cabinet: &Cabinet,
    layout: &Layout,
    wanted: &Furnish,
    front: Key,
) -> Result<(), Refusal> {
    let leaves = layout.fronts.iter().filter(|leaf| leaf.key == front);
    let mut carriers = leaves.flat_map(|leaf| layout.carriers(cabinet, leaf));
    if carriers.all(|carrier| wanted.gone.contains(&carrier.key)) {
        return Ok(());
    }
    let name = name(cabinet, front);
    Err(stale(&format!("{name} is carried by something else now")))
}

fn name(cabinet: &Cabinet, front: Key) -> String {
    let found = cabinet.opening.front(front);
    found.map_or_else(String::new, |front| front.name.as_str().into())
}

fn stale(what: &str) -> Refusal {
    Refusal(format!("{what}; ask again what would carry the fronts"))
}
