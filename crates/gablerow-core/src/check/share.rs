//! One hole, two users.

use alloc::format;
use alloc::vec::Vec;

use super::context::holes;
use super::{Context, Finding, Rule, Strand, strands};
use crate::layout::{BoreSpec, Use};

/// One place of one face that two uses want, when they may not share it.
pub(super) fn shared_holes(cx: &Context, found: &mut Vec<Finding>) {
    for (_, face) in cx.faces() {
        let all: Vec<Strand> = strands(face, cx.layout).collect();
        for (at, one) in all.iter().enumerate() {
            for other in &all[at + 1..] {
                let Some(rule) = broken(one.spec, other.spec) else {
                    continue;
                };
                let Some(shared) = one.same_place(*other) else {
                    continue;
                };
                let both = cx.owners(one.spec, other.spec);
                let message = format!(
                    "{both} want the same {}; {}",
                    holes(cx, &shared),
                    cure(rule)
                );
                let place = cx.here().on(face.id).at(&shared);
                let owners = (Some(one.spec.owner), Some(other.spec.owner));
                found.push(Finding::new(rule, place, message).about_both(owners));
            }
        }
    }
}

/// Which rule two uses of one hole break; `None` when they may share it.
///
/// | first | second | |
/// | --- | --- | --- |
/// | any | the same owner | may |
/// | pin | pin of the same bay | may |
/// | pin | plate | plate-on-pin-hole |
/// | pin | runner | pin-and-runner-share |
/// | any other pair | | shared-hole |
fn broken(a: &BoreSpec, b: &BoreSpec) -> Option<Rule> {
    match (a.use_, b.use_) {
        _ if a.owner == b.owner => None,
        (Use::Pin, Use::Pin) if a.bay == b.bay => None,
        (Use::Pin, Use::Plate) | (Use::Plate, Use::Pin) => Some(Rule::PlateOnPinHole),
        (Use::Pin, Use::Runner) | (Use::Runner, Use::Pin) => Some(Rule::PinAndRunnerShare),
        _ => Some(Rule::SharedHole),
    }
}

fn cure(rule: Rule) -> &'static str {
    match rule {
        Rule::PlateOnPinHole => "move the plate, or end the pins short of it",
        Rule::PinAndRunnerShare => "end the pins short of it, or move the runner",
        _ => "move one of them",
    }
}

#[cfg(test)]
mod tests;
