//! From a layout to what is done at the bench: set-ups, in the order that takes least time.
//!
//! ```text
//! Cabinet, its copy -- layout --> the holes of each face
//!    | work     a line of work for each face, row, bit and depth
//!    | edge     the long edge each line is worked from, so that few settings are needed
//!    | rest     the end on the stop, the stop's value, the packer, the numbers on the rail, the hand of the foot
//!    | along    where a rail shorter than the panel is moved to, and what holds it there
//!    | order    the order that takes least time
//!    | measure  what to measure afterwards
//!    | miscount what was measured, and shows holes that were counted wrong
//!    | recount  what the record has to say once the layout has them where they were bored
//!    | lean     what diagonals say of an end that is out of square
//!    | rock     how far shelves will be from level, where panels were cut longer, shorter, or out of square
//!    v
//! Outlook: set-ups of one cabinet for whoever only checks it, without order
//! Plan: SetUp after SetUp      left: what of it the record says is done, and what was bored in vain
//! ```
//!
//! Holes keep the numbers of the cabinet. How a panel lies: face up, the edge in work nearest to whoever bores.

mod along;
mod edge;
mod lean;
mod left;
mod measure;
mod miscount;
mod order;
mod outlook;
mod pace;
mod recount;
mod rest;
mod rock;
mod work;

use alloc::collections::BTreeSet;
use alloc::vec::Vec;
use core::mem;

pub use along::{Held, Position};
pub use lean::{lean, shift};
pub use left::{
    Done, Progress, bored_by, cut_anew, last_taken_back, progress_of_cabinet, progress_of_job,
};
pub use measure::Check;
pub(crate) use miscount::{COUNTED_WITHIN, MEASURED_OFF_MOST};
pub use miscount::{Miscount, RunOf, miscounts, missed};
pub use order::{Seconds, order_bound};
pub use outlook::{Outlook, is_reached, outlook, stops};
pub use pace::pace;
pub use recount::recounted;
pub use rest::{PACKER_MOST, Rest};
pub use rock::Rock;

pub use crate::job::Times;

use crate::job::{AsCut, Bit, Bored, Cabinet, Copy, Edge, FaceId, Hand, Job, Key, PanelId};
use crate::layout::Layout;
use crate::measure::Length;
use crate::sum::Sum;
use left::Record;

/// What turns in the router, and how deep it goes. Whoever changes one of these stops and sets up anew.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Tool {
    /// Pointed right through, flat or as the shop has it in blind holes: common practice.
    pub bit: Bit,
    /// Its diameter.
    pub diameter: Length,
    /// How deep; `None` is right through.
    pub depth: Option<Length>,
}

/// Holes of a line of work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Holes {
    /// Runs of the cabinet's hole numbers, both ends included, from the foot up.
    Runs(Vec<(i16, i16)>),
    /// Off the grid: from the end of the panel that is named, by tape.
    ByTape(Vec<Length>),
}

impl Holes {
    /// How many there are.
    #[must_use]
    pub fn count(&self) -> usize {
        match self {
            Self::Runs(runs) => runs
                .iter()
                .map(|&(first, last)| usize::try_from(last - first + 1).unwrap_or(0))
                .sum(),
            Self::ByTape(heights) => heights.len(),
        }
    }
}

/// One face of one panel laid down once, the rail at one setting: the holes that are bored then.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetUp {
    /// The cabinet.
    pub cabinet: Key,
    /// Which of its copies.
    pub copy: Key,
    /// The face that is up, as the copy has it.
    pub face: FaceId,
    /// Bit and depth.
    pub tool: Tool,
    /// The long edge toward whoever bores; settings count from it.
    pub edge: Edge,
    /// From that edge as it is when boring comes to the row.
    pub setting: Sum,
    /// Whether the arms of the shop's rail come so far.
    pub is_reached: bool,
    /// From the front edge as finished to the row.
    pub row: Length,
    /// What lies on the stop.
    pub rest: Rest,
    /// How far above their place its holes come to be, because the panel was cut longer and rests on its head; negative
    /// below.
    pub off: Length,
    /// Whether its copy is bored from both ends, since the rail is too short and there is nothing to pin it in.
    pub is_parted: bool,
    /// The hand the panel's foot is on.
    pub foot_to: Hand,
    /// The holes.
    pub holes: Holes,
    /// Where the rail lies for them, one place after the other: one where it covers them all, none where the tape does.
    pub positions: Vec<Position>,
    /// What to measure once these are bored, the last of their face.
    pub checks: Vec<Check>,
}

/// A panel that is bored.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Panel {
    /// The cabinet.
    pub cabinet: Key,
    /// Which of its copies.
    pub copy: Key,
    /// The panel, as the copy has it.
    pub panel: PanelId,
    /// From foot to head, as planned.
    pub length: Length,
    /// What was measured of it.
    pub cut: Option<AsCut>,
}

/// All of it, in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// The set-ups, first ones first.
    pub set_ups: Vec<SetUp>,
    /// The panels they are about, cabinet by cabinet from left to right.
    pub panels: Vec<Panel>,
    /// The bays whose shelves will not lie level, by the lengths and diagonals that were measured.
    pub rocks: Vec<Rock>,
    /// What it takes, in seconds.
    pub seconds: u32,
    /// What it would take in other orders.
    pub orders: Seconds,
}

/// The plan of these cabinets, every copy of each; held together, since a setting may serve several.
#[must_use]
pub fn plan(job: &Job, cabinets: &[Key], times: &Times) -> Plan {
    plan_left(job, &[], cabinets, times)
}

/// The same of what a record of what was bored does not say is done.
#[must_use]
pub fn plan_left(job: &Job, record: &[Bored], cabinets: &[Key], times: &Times) -> Plan {
    let mut bench = Bench::of(job, cabinets, record);
    let mut set_ups = set_ups(mem::take(&mut bench.lines), job);
    let orders = order::put(&mut set_ups, times, job.shop.bench.order);
    // What is bored already is measured and rocks all the same.
    let whole = match record {
        [] => Whole::of(&bench, &set_ups),
        _ => Whole::of_unbored(job, cabinets),
    };
    measure::add(&mut set_ups, whole.checks);
    Plan {
        seconds: times.of(&set_ups),
        rocks: whole.rocks,
        set_ups,
        panels: bench.panels,
        orders,
    }
}

/// What is measured on a bored face of a copy of a cabinet.
#[must_use]
pub fn checks(job: &Job, cabinet: Key, copy: Key, face: FaceId) -> Vec<Check> {
    let mut whole = Whole::of_unbored(job, &[cabinet]);
    whole
        .checks
        .remove(&(cabinet, copy, face))
        .unwrap_or_default()
}

/// What comes onto the bench.
#[derive(Default)]
struct Bench {
    lines: Vec<work::Line>,
    panels: Vec<Panel>,
    /// Of each copy of each cabinet.
    layouts: Vec<(Key, Key, Layout)>,
}

/// What is said of panels as they will be, whatever of them is bored already.
struct Whole {
    rocks: Vec<Rock>,
    checks: measure::Faces,
}

impl Whole {
    fn of(bench: &Bench, set_ups: &[SetUp]) -> Self {
        Self {
            rocks: rock::of(&bench.layouts, &bench.panels, set_ups),
            checks: measure::checks_of_faces(set_ups),
        }
    }

    /// As if nothing were bored yet.
    fn of_unbored(job: &Job, cabinets: &[Key]) -> Self {
        let mut bench = Bench::of(job, cabinets, &[]);
        let set_ups = set_ups(mem::take(&mut bench.lines), job);
        Self::of(&bench, &set_ups)
    }
}

impl Bench {
    /// What of these cabinets is not on record.
    fn of(job: &Job, cabinets: &[Key], record: &[Bored]) -> Self {
        let asked: BTreeSet<Key> = cabinets.iter().copied().collect();
        let record = Record::of(record);
        let mut bench = Self::default();
        for cabinet in job.cabinets.iter().filter(|it| asked.contains(&it.key)) {
            for copy in &cabinet.copies {
                bench.add(cabinet, copy, job, record.of_copy(cabinet.key, copy.key));
            }
        }
        bench
    }

    fn add(&mut self, cabinet: &Cabinet, copy: &Copy, job: &Job, done: &Done) {
        let built = cabinet.built_as(copy);
        let layout = Layout::of(&built, job);
        let lines = work::lines(&built, copy, &layout, job, done);
        let bored: BTreeSet<PanelId> = lines.iter().map(work::Line::panel).collect();
        let uprights = layout.uprights.iter().filter(|it| bored.contains(&it.id));
        self.panels.extend(uprights.map(|upright| Panel {
            cabinet: cabinet.key,
            copy: copy.key,
            panel: upright.id,
            length: upright.length(),
            cut: copy.cut(upright.id).copied(),
        }));
        self.lines.extend(lines);
        self.layouts.push((cabinet.key, copy.key, layout));
    }
}

/// The set-ups of lines of work, each from the edge that suits it, in no order.
fn set_ups(lines: Vec<work::Line>, job: &Job) -> Vec<SetUp> {
    let chosen = edge::choose(lines, job).into_iter();
    chosen.map(|line| line.set_up(job.rail())).collect()
}

#[cfg(test)]
mod tests;
