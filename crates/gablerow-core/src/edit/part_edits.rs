//! Edits of openings, partitions, fixed shelves and fronts: where each of them is made.

use super::{Edit, Refusal, fronts, nothing, openings};
use crate::history::Step;
use crate::job::Job;

impl Edit {
    /// The step of an edit of an opening, a partition, a fixed shelf or a front.
    pub(super) fn apply_to_part(&self, job: &Job) -> Result<Step, Refusal> {
        match *self {
            Self::PartMeasure {
                cabinet,
                part,
                measure,
                value,
            } => measure.set(job, cabinet, part, value),
            Self::PartChoose {
                cabinet,
                part,
                choice,
            } => choice.step_on(job, cabinet, part),
            Self::Divide {
                cabinet,
                opening,
                way,
                parts,
            } => openings::divide(job, cabinet, opening, way, parts),
            Self::Unite { cabinet, divider } => openings::unite(job, cabinet, divider),
            Self::Door { cabinet, opening } => fronts::next_door(job, cabinet, opening),
            Self::Drawers {
                cabinet,
                opening,
                count,
            } => fronts::drawers(job, cabinet, opening, count),
            Self::InnerDrawers {
                cabinet,
                opening,
                count,
            } => fronts::inner_drawers(job, cabinet, opening, count),
            Self::FalseFront { cabinet, opening } => fronts::toggle_false(job, cabinet, opening),
            Self::NoFront { cabinet, front } => fronts::take_away(job, cabinet, front),
            Self::Modules {
                cabinet,
                front,
                count,
            } => fronts::modules(job, cabinet, front, count),
            _ => Err(nothing()),
        }
    }
}
