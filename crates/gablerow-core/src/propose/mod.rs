//! From wishes to fittings: what would carry the fronts of a cabinet, shown before it is taken, and why.
//!
//! ```text
//! Front (wish) -- layout: where it is, what bars which holes
//!    | hinges    count, holes, overlay, cups           solve::hinges
//!    |   ground  what bars plates, bay by bay; walls asks the checks
//!    | drawers   holes, box heights, runner length     solve::drawers
//!    |   packing spacers past an open door and its hinges
//! Bay -- shelves  holes that are clean on both walls;  grid  heights, offsets, a back row that merges
//!    v
//! Proposal { edit, title, why }  -- taken --> one Step, one undo
//! ```
//!
//! Nothing here changes a job. Drawers with fronts come first, since each has few holes that suit its front; doors find others;
//! drawers behind doors come last and keep clear of their hinges.

mod drawers;
mod grid;
mod ground;
mod hinges;
mod packing;
mod shelves;
mod walls;

pub(crate) use drawers::BOX_LEAST;

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use crate::edit::{Edit, Furnish, Furnishing};
use crate::job::{Cabinet, Division, Front, FrontKind, Job, Key, Opening};
use crate::layout::Layout;

/// What would carry a front or a stack of drawers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Proposal {
    /// The fronts it is for, from the foot up; none when it is for a bay or the cabinet.
    pub fronts: Vec<Key>,
    /// What it comes to: `door 1: plates on 3-4 and 19-20`.
    pub title: String,
    /// Where its numbers come from, line by line.
    pub why: Vec<String>,
    /// What it takes to have it; `None` when it is there already, or when it cannot be had and the reasons say what would
    /// work.
    pub edit: Option<Edit>,
    /// Whether all of it is there already, as it would be proposed.
    pub already: bool,
}

impl Proposal {
    /// The proposal of these fittings in place of those that are `gone`; of what is there already, only that it is so.
    fn of(
        (name, what): (&str, &str),
        fronts: Vec<Key>,
        why: Vec<String>,
        (cabinet, gone, bays): (Key, Vec<Key>, Bays),
    ) -> Self {
        let already = bays.only_keeps(&gone);
        let title = if already {
            format!("{name}: already so, {what}")
        } else {
            format!("{name}: {what}")
        };
        let edit = Furnish {
            cabinet,
            gone,
            bays: bays.0,
            label: title.clone(),
        };
        Self {
            fronts,
            title,
            why,
            edit: (!already).then_some(Edit::Furnish(edit)),
            already,
        }
    }

    /// Gives it up when the job would not take it, and says why; gives the job with it taken.
    fn settle(&mut self, job: &mut Job, names: &str) {
        match self.edit.as_ref().map(|edit| edit.apply(job)) {
            Some(Ok(step)) => step.apply(job),
            Some(Err(refusal)) => {
                self.title = format!("{names}: cannot be taken, {refusal}");
                self.edit = None;
            }
            None => {}
        }
    }
}

/// Every proposal of a cabinet: first for what nothing carries yet, stack by stack and door by door, each on top of those
/// before it; then, when `also` names a front that is carried already, one anew for that.
#[must_use]
pub fn for_cabinet(job: &Job, cabinet: Key, also: Option<Key>) -> Vec<Proposal> {
    let mut job = job.clone();
    let mut made = Vec::new();
    for wish in wishes(&job, cabinet, also) {
        let proposal = match &wish {
            Wish::Door(front) => hinges::propose(&job, cabinet, *front),
            Wish::Drawers(opening, kind) => drawers::propose(&job, cabinet, *opening, *kind),
        };
        let Some(mut proposal) = proposal else {
            continue;
        };
        // What is there already is worth a line only to a person who asked for it.
        if proposal.already && !also.is_some_and(|also| proposal.fronts.contains(&also)) {
            continue;
        }
        let names = names_of(&job, cabinet, &proposal.fronts);
        proposal.settle(&mut job, &names);
        made.push(proposal);
    }
    made
}

/// What a bay and its cabinet could have that costs no wish: shelf holes that are clean, a back row that merges with a
/// runner row, heights and offsets that balance and suit the fronts.
#[must_use]
pub fn for_bay(job: &Job, cabinet: Key, bay: Key) -> Vec<Proposal> {
    let Some(found) = job.cabinet(cabinet) else {
        return Vec::new();
    };
    let layout = Layout::of(found, job);
    let mut made = grid::balance(job, found);
    made.extend(grid::registered(job, found));
    made.extend(grid::back_row(job, found, &layout, bay));
    let known = layout.bays.iter().find(|made| made.key == bay);
    made.extend(known.and_then(|bay| shelves::zone(job, found, &layout, bay)));
    made
}

/// All of these proposals as one edit; `None` when there is none to be had.
#[must_use]
pub fn all_in_one(proposals: &[Proposal]) -> Option<Edit> {
    let mut all: Option<Furnish> = None;
    let mut count = 0;
    for proposal in proposals {
        let Some(Edit::Furnish(furnish)) = &proposal.edit else {
            continue;
        };
        count += 1;
        match &mut all {
            None => all = Some(furnish.clone()),
            Some(all) => {
                all.gone.extend(furnish.gone.iter().copied());
                all.bays.extend(furnish.bays.iter().cloned());
            }
        }
    }
    let mut all = all?;
    if count > 1 {
        all.label = format!("hardware for {count} wishes");
    }
    Some(Edit::Furnish(all))
}

/// What hardware is wished for.
enum Wish {
    /// A door, or both leaves of a pair.
    Door(Key),
    /// All drawers of a kind over one opening.
    Drawers(Key, FrontKind),
}

fn wishes(job: &Job, cabinet: Key, also: Option<Key>) -> Vec<Wish> {
    let Some(found) = job.cabinet(cabinet) else {
        return Vec::new();
    };
    let layout = Layout::of(found, job);
    let open = |front: &Front| {
        let mut leaves = layout.fronts.iter().filter(|leaf| leaf.key == front.key);
        also == Some(front.key) || leaves.any(|leaf| lacks(found, &layout, leaf))
    };
    let (mut drawers, mut doors, mut behind) = (Vec::new(), Vec::new(), Vec::new());
    found.opening.each(&mut |opening: &Opening| {
        let hung = opening.fronts.iter().filter(|front| front.kind.is_hung());
        doors.extend(
            hung.filter(|front| open(front))
                .map(|front| Wish::Door(front.key)),
        );
        for (kind, stacks) in [
            (FrontKind::Drawer, &mut drawers),
            (FrontKind::Inner, &mut behind),
        ] {
            let mut own = opening.fronts.iter().filter(|front| front.kind == kind);
            if own.any(open) && matches!(opening.division, Division::Bay(_)) {
                stacks.push(Wish::Drawers(opening.key, kind));
            }
        }
    });
    drawers.append(&mut doors);
    drawers.append(&mut behind);
    drawers
}

/// Whether something is missing that would carry this front or leaf.
fn lacks(cabinet: &Cabinet, layout: &Layout, leaf: &crate::layout::FrontLayout) -> bool {
    let least = match (leaf.kind.is_hung(), leaf.kind.is_drawer()) {
        (true, _) => 2,
        (_, true) => 1,
        _ => 0,
    };
    layout.carriers(cabinet, leaf).len() < least
}

/// Furnishings of one bay each, put together from one thing at a time.
#[derive(Default)]
struct Bays(Vec<Furnishing>);

impl Bays {
    /// Whether all that comes is what goes: each kept fitting has the key it had, and a new one a new key.
    fn only_keeps(&self, gone: &[Key]) -> bool {
        let keys = self.0.iter().flat_map(|made| {
            let plates = made.plates.iter().map(|plate| plate.key);
            plates.chain(made.runners.iter().map(|runner| runner.key))
        });
        let mut count = 0;
        let all_kept = keys.inspect(|_| count += 1).all(|key| gone.contains(&key));
        all_kept && count == gone.len()
    }

    fn of(&mut self, bay: Key) -> &mut Furnishing {
        let at = match self.0.iter().position(|made| made.bay == bay) {
            Some(at) => at,
            None => {
                self.0.push(Furnishing {
                    bay,
                    plates: Vec::new(),
                    runners: Vec::new(),
                });
                self.0.len() - 1
            }
        };
        &mut self.0[at]
    }
}

fn names_of(job: &Job, cabinet: Key, fronts: &[Key]) -> String {
    let names: Vec<String> = job.cabinet(cabinet).map_or_else(Vec::new, |cabinet| {
        let names = fronts.iter().map(|&front| name_of(cabinet, front));
        names.collect()
    });
    names.join(", ")
}

fn name_of(cabinet: &Cabinet, front: Key) -> String {
    let found = cabinet.opening.front(front);
    found.map_or_else(|| "a front".into(), |front| front.name.as_str().into())
}

#[cfg(test)]
mod tests;
