//! What is typed of a loose shelf: its load, the clear height over it, its setback and length, its board.

use alloc::format;
use alloc::string::ToString;

use super::values::{self, New, ValueName, told};
use super::{Refusal, change};
use crate::history::Step;
use crate::job::{Bay, Job, Key};

pub(super) fn set_value(
    job: &Job,
    cabinet: Key,
    key: Key,
    value: ValueName,
    new: &New,
) -> Result<Step, Refusal> {
    change(job, cabinet, |edited| {
        let mut made = Err(Refusal("there is no such loose shelf any more".to_string()));
        edited.opening.each_bay_mut(&mut |bay: &mut Bay| {
            for shelf in bay.shelves.iter_mut().filter(|shelf| shelf.key == key) {
                made = values::set_on_shelf(shelf, value, new, &job.cards)
                    .map(|()| format!("shelf: {}", told(&values::shelf_values(shelf), value)));
            }
        });
        made
    })
}
