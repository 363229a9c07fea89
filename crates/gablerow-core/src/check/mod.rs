//! What may be wrong with a cabinet, said with numbers.
//!
//! ```text
//! Job, Cabinet, Layout                 what the checks look at (context)
//!    | outline  joint  share  near     holes of one face
//!    | depth  opposed  exposed         holes and the board
//!    | keep_outs  runners              the space that hardware needs
//!    | balance  zones  open_points     the cabinet
//!    | fixed                           boards that meet other boards
//!    | fronts  carried  idle  inset    what closes it, and what carries that
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

mod balance;
mod carried;
mod context;
mod depth;
mod exposed;
mod finding;
mod fixed;
mod fronts;
mod idle;
mod inset;
mod joint;
mod keep_outs;
mod kept;
pub mod meet;
mod near;
mod new_hole;
mod open_points;
mod opposed;
mod outline;
mod pairs;
mod rule;
mod runners;
mod sag;
mod share;
mod shelves;
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

pub use finding::{Finding, Level, Place};
pub use kept::Checked;
pub use new_hole::stopped_holes;
pub use rule::{RULES, Rule, RuleInfo};

use context::Context;
use strand::{Strand, strands};

use crate::job::{Cabinet, Job};
use crate::layout::Layout;
use crate::measure::Unit;

/// Every check, in the order of [`RULES`].
const CHECKS: &[fn(&Context, &mut Vec<Finding>)] = &[
    outline::hole_off_panel,
    outline::hole_near_edge,
    outline::toe_notch_eats_row,
    outline::back_row_in_groove,
    joint::hole_in_joint,
    share::shared_holes,
    near::near_miss_rows,
    depth::depth_short_for_screw,
    depth::depth_breaks_through,
    opposed::opposed_holes_meet,
    opposed::opposed_fasteners_meet,
    opposed::through_into_free_bay,
    exposed::bored_on_show_face,
    exposed::exposed_end,
    keep_outs::keep_outs,
    balance::unbalanced,
    balance::unbalanced_turned,
    balance::height_multiple_only,
    zones::zone_off_centre,
    runners::runner_too_long,
    runners::runner_row_flush,
    open_points::open_points,
    open_points::sides_end_on_bottom,
    fixed::shelf_through_board,
    carried::cup_off_door,
    fronts::front_not_carried,
    carried::box_off_front,
    idle::idle_hardware,
    fronts::front_too_small,
    inset::inset_before_edge,
    fronts::front_behind_front,
    fronts::drawer_over_bays,
    fronts::inner_without_door,
    sag::shelf_sags,
    shelves::shelf_tips,
    shelves::shelf_length,
    shelves::clear_opening_short,
    shelves::no_lift_room,
];

/// What the checks have to say of one cabinet: stops first, then by face from left to right and by hole from the foot up.
#[must_use]
pub fn of_cabinet(job: &Job, cabinet: &Cabinet, layout: &Layout) -> Vec<Finding> {
    let in_unit = |unit| {
        let cx = Context {
            job,
            cabinet,
            layout,
            unit,
        };
        let mut found = Vec::new();
        CHECKS.iter().for_each(|check| check(&cx, &mut found));
        found
    };
    let mut found: Vec<Finding> = in_unit(Unit::Millimetre);
    if job.unit != Unit::Millimetre {
        // Checks look at lengths alone, so they find the same in the same order, and only say it differently.
        let shown = found.iter_mut().zip(in_unit(job.unit));
        shown.for_each(|(finding, shown)| finding.message = shown.message);
    }
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
    // One sentence may hold in several rows of a face; it is said once, and then of no row in particular.
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
    for finding in &mut found {
        let same = cabinet.accepted.iter().find(|accepted| {
            accepted.rule == finding.rule_name() && accepted.message == finding.in_mm
        });
        finding.accepted = same.map(|accepted| accepted.reason.clone());
    }
    found
}

/// What the checks have to say of every cabinet of a job, cabinet by cabinet.
#[must_use]
pub fn of_job(job: &Job) -> Vec<Finding> {
    let of = |cabinet| of_cabinet(job, cabinet, &Layout::of(cabinet, job));
    job.cabinets.iter().flat_map(of).collect()
}
