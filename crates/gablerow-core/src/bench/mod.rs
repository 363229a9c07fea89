//! From a layout to what is done at the bench: set-ups, in the order that takes least time.
//!
//! ```text
//! Cabinet, its copy -- layout --> the holes of each face
//!    | work     a line of work for each face, row, bit and depth
//!    | edge     the long edge each line is worked from, so that few settings are needed
//!    | rest     the end on the stop, the stop's value, the packer, the numbers on the rail, the hand of the foot
//!    | order    the order that takes least time
//!    | measure  what to measure afterwards
//!    | rock     how far shelves will be from level, where panels were cut longer or shorter
//!    v
//! Plan: SetUp after SetUp
//! ```
//!
//! Holes keep the numbers of the cabinet. How a panel lies: face up, the edge in work nearest to whoever bores.

mod edge;
mod measure;
mod order;
mod rest;
mod rock;
mod work;

use alloc::vec::Vec;

pub use measure::Check;
pub use order::{Times, order_bound};
pub use rest::{LENGTH_OFF, Rest};
pub use rock::Rock;

use crate::job::{Bit, Edge, FaceId, Hand, Job, Key};
use crate::layout::Layout;
use crate::measure::Length;
use crate::sum::Sum;

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
    /// From the front edge as finished to the row.
    pub row: Length,
    /// What lies on the stop.
    pub rest: Rest,
    /// How far above their place its holes come to be, because the panel was cut longer and rests on its head; negative
    /// below.
    pub off: Length,
    /// The hand the panel's foot is on.
    pub foot_to: Hand,
    /// The holes.
    pub holes: Holes,
    /// What to measure once these are bored, the last of their face.
    pub checks: Vec<Check>,
}

/// All of it, in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// The set-ups, first ones first.
    pub set_ups: Vec<SetUp>,
    /// The bays whose shelves will not lie level, by the lengths that were measured.
    pub rocks: Vec<Rock>,
    /// What it takes, in seconds.
    pub seconds: u32,
    /// What it would take panel by panel, in seconds.
    pub panel_first: u32,
    /// What it would take setting by setting, in seconds.
    pub setting_first: u32,
}

/// The plan of these cabinets, every copy of each; held together, since a setting may serve several.
#[must_use]
pub fn plan(job: &Job, cabinets: &[Key], times: &Times) -> Plan {
    let (mut lines, mut layouts) = (Vec::new(), Vec::new());
    for cabinet in cabinets.iter().filter_map(|key| job.cabinet(*key)) {
        for copy in &cabinet.copies {
            let built = cabinet.built_as(copy);
            let layout = Layout::of(&built, job);
            lines.extend(work::lines(&built, copy, &layout, job));
            layouts.push((cabinet.key, copy.key, layout));
        }
    }
    let chosen = edge::choose(lines, job);
    let mut set_ups: Vec<SetUp> = chosen.into_iter().map(|line| line.set_up(job)).collect();
    let [panel_first, setting_first] = order::put(&mut set_ups, times);
    let seconds = times.of(&set_ups);
    measure::add(&mut set_ups);
    let rocks = layouts
        .iter()
        .flat_map(|(cabinet, copy, layout)| rock::of(*cabinet, *copy, layout, &set_ups));
    Plan {
        rocks: rocks.collect(),
        set_ups,
        seconds,
        panel_first,
        setting_first,
    }
}

#[cfg(test)]
mod tests;
