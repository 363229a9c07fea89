//! What is typed of a loose shelf and of a drawer: a shelf's load, the clear height over it, its setback, length and board;
//! what a drawer holds.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::thing::{ThingMut, thing_mut};
use super::values::{self, New, Value, ValueName, told};
use super::{Refusal, change};
use crate::cards::Cards;
use crate::history::Step;
use crate::job::{Bay, Cabinet, Job, Key};

/// All values of a loose shelf or of a front, in the order a person reads them; none for a key that names neither.
#[must_use]
pub fn own_values(cabinet: &Cabinet, thing: Key) -> Vec<Value> {
    let shelf = cabinet.loose_shelf(thing).map(values::shelf_values);
    let front = || cabinet.opening.front(thing).map(values::front_values);
    shelf.or_else(front).unwrap_or_default()
}

pub(super) fn set_value(
    job: &Job,
    cabinet: Key,
    thing: Key,
    value: ValueName,
    new: &New,
) -> Result<Step, Refusal> {
    change(job, cabinet, |edited| {
        let gone = || Refusal("there is no such loose shelf or front any more".to_string());
        let name = put(edited, thing, value, new, &job.cards).ok_or_else(gone)??;
        Ok(format!(
            "{name}: {}",
            told(&own_values(edited, thing), value)
        ))
    })
}

/// Puts it in the place, and gives what the thing is called; `None` when it is gone.
fn put(
    cabinet: &mut Cabinet,
    thing: Key,
    value: ValueName,
    new: &New,
    cards: &Cards,
) -> Option<Result<String, Refusal>> {
    if let Some(ThingMut::Front(front)) = thing_mut(cabinet, thing) {
        let set = values::set_on_front(front, value, new, cards);
        return Some(set.map(|()| front.name.to_string()));
    }
    let mut made = None;
    cabinet.opening.each_bay_mut(&mut |bay: &mut Bay| {
        for shelf in bay.shelves.iter_mut().filter(|shelf| shelf.key == thing) {
            let set = values::set_on_shelf(shelf, value, new, cards);
            made = Some(set.map(|()| "shelf".to_string()));
        }
    });
    made
}
