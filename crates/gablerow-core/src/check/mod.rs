//! What may be wrong with a cabinet, said with numbers.
//!
//! ```text
//! Job, Cabinet, Layout                 what the checks look at (context)
//!    | outline  joint  share  near     holes of one face
//!    | depth  opposed  exposed         holes and the board
//!    | spaces  keep_outs               the space that hardware, boxes and open doors need
//!    | runners  boxes  rise            drawers, as deep, as wide and as high as there is room
//!    | balance  zones  open_points     the cabinet
//!    | fixed                           boards that meet other boards
//!    | fronts  carried  idle  inset    what closes it, and what carries that
//!    | hinges  doors                   how doors hang
//!    | house                           cards that are not measured, one setback for a job
//!    | as_cut                          panels as the saw made them
//!    | rails  at_bench                 what the rail does not do at once, how the shop works
//!    | record                          what was bored before something changed
//!    | sag  shelves                    loose shelves: what they bear, what is clear over them
//!    | new_hole                        where one more hole would be stopped, for those who look for one
//!    |     meet                        who is in whose way, found once for all of them
//!    v
//! Finding: Rule, Level, Place, sentence, and why a person accepted it
//!    |
//! Checked                              those of a whole job, kept while it changes (kept)
//! ```
//!
//! Each check is a pure function that adds findings. An accepted finding stays in the list with its reason; it comes back
//! open as soon as its sentence changes.

mod as_cut;
mod at_bench;
mod balance;
mod boxes;
mod carried;
mod context;
mod depth;
mod door;
mod doors;
mod exposed;
mod finding;
mod fixed;
mod fronts;
mod hinges;
mod house;
mod idle;
mod inset;
mod joint;
mod keep_outs;
mod kept;
pub mod meet;
mod miscounted;
mod near;
mod new_hole;
mod open_points;
mod opposed;
mod outline;
mod pairs;
mod rails;
mod record;
mod rise;
mod rule;
mod runners;
mod sag;
mod share;
mod shelves;
mod spaces;
mod strand;
mod zones;

#[cfg(test)]
mod fixture;
#[cfg(test)]
mod laws;
#[cfg(test)]
mod oracle;
#[cfg(test)]
mod tests;

use alloc::vec::Vec;

pub use as_cut::THICKNESS_OFF_MOST;
pub(crate) use as_cut::{DIFFER_MOST, OFF_MOST, ROCK_MOST, ROCK_STOP, SHIFT_MOST};
pub(crate) use at_bench::{BASE_OFF_MOST, BY_EYE, DEPTH_OFF_MOST};
pub(crate) use boxes::LOAD_MOST;
pub(crate) use exposed::SHOW_SKIN;
pub use finding::{Finding, Level, Place, is_held_back};
pub(crate) use hinges::{ROW_OFF, SPREAD_FIFTHS};
pub(crate) use house::NEARLY;
pub use kept::Checked;
pub use new_hole::stopped_holes;
pub use rule::{RULES, Rule, RuleInfo};
pub(crate) use shelves::BEARING_LEAST;

use context::Context;
use door::Door;
use rule::CHECKS;
use strand::{Strand, strands};

use crate::job::{Cabinet, Job};
use crate::layout::Layout;
use crate::measure::Unit;
use crate::parts::box_fits;

/// What the checks have to say of one cabinet: stops first, then by face from left to right and by hole from the foot up.
#[must_use]
pub fn of_cabinet(job: &Job, cabinet: &Cabinet, layout: &Layout) -> Vec<Finding> {
    said_once(row_by_row(job, cabinet, layout))
}

/// The same with every row by itself: what is said of several rows of a face in the same words stands there for each.
pub(crate) fn row_by_row(job: &Job, cabinet: &Cabinet, layout: &Layout) -> Vec<Finding> {
    found_by(|_| true, job, cabinet, layout)
}

/// The same of one rule alone, without the work of the others.
#[must_use]
pub fn of_rule(rule: Rule, job: &Job, cabinet: &Cabinet, layout: &Layout) -> Vec<Finding> {
    let mut found = said_once(found_by(
        |rules| rules.contains(&rule),
        job,
        cabinet,
        layout,
    ));
    found.retain(|finding| finding.rule == rule);
    found
}

/// What the checks find that look for some rules.
fn found_by(
    is_asked: impl Fn(&[Rule]) -> bool,
    job: &Job,
    cabinet: &Cabinet,
    layout: &Layout,
) -> Vec<Finding> {
    let doors = Door::all(job, cabinet, layout);
    let boxes = box_fits(cabinet, layout, job);
    let in_unit = |unit| {
        let cx = Context {
            job,
            cabinet,
            layout,
            doors: &doors,
            boxes: &boxes,
            unit,
        };
        let mut found = Vec::new();
        let asked = CHECKS.iter().filter(|(_, rules)| is_asked(rules));
        asked.for_each(|(check, _)| check(&cx, &mut found));
        found
    };
    let mut found: Vec<Finding> = in_unit(Unit::Millimetre);
    if job.unit != Unit::Millimetre {
        // Checks look at lengths alone, so they find the same in the same order, and only say it differently.
        let shown = found.iter_mut().zip(in_unit(job.unit));
        shown.for_each(|(finding, shown)| finding.message = shown.message);
    }
    in_order(&mut found, layout);
    for finding in &mut found {
        let same = cabinet.accepted.iter().find(|accepted| {
            accepted.rule == finding.rule_name() && accepted.message == finding.in_mm
        });
        finding.accepted = same.map(|accepted| accepted.reason.clone());
    }
    found
}

/// Stops first, then by face and hole.
fn in_order(found: &mut [Finding], layout: &Layout) {
    found.sort_by_cached_key(|finding| {
        let Place {
            face, row, holes, ..
        } = finding.place;
        let upright = face.and_then(|face| {
            layout
                .uprights
                .iter()
                .position(|upright| upright.id == face.panel)
        });
        let toward = face.map(|face| face.toward);
        (
            finding.level,
            upright,
            toward,
            holes,
            finding.rule,
            finding.in_mm.clone(),
            row,
        )
    });
}

/// One sentence may hold in several rows of a face; it is said once, and then of no row in particular.
fn said_once(mut found: Vec<Finding>) -> Vec<Finding> {
    found.dedup_by(|next, kept| {
        let (a, b) = (next.place, kept.place);
        let same = next.rule == kept.rule
            && (a.face, a.holes) == (b.face, b.holes)
            && next.in_mm == kept.in_mm;
        if same && a.row != b.row {
            kept.place.row = None;
        }
        same
    });
    found
}

/// What the checks have to say of every cabinet of a job, cabinet by cabinet.
#[must_use]
pub fn of_job(job: &Job) -> Vec<Finding> {
    let of = |cabinet| of_cabinet(job, cabinet, &Layout::of(cabinet, job));
    job.cabinets.iter().flat_map(of).collect()
}
