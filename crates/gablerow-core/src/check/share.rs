//! One hole, two users.

use alloc::format;
use alloc::vec::Vec;

use super::context::holes;
use super::meet::{Holes, Search};
use super::pairs::{ON_FACE, strands_that_meet};
use super::{Context, Finding, Rule, Strand, strands};
use crate::layout::{BoreSpec, Face, Layout, Use};
use crate::measure::Length;

/// One place of one face that two uses want, when they may not share it.
pub(super) fn shared_holes(cx: &Context, found: &mut Vec<Finding>) {
    let mut search = Search::default();
    for (_, face) in cx.faces() {
        for (rule, one, other) in shared(&mut search, face, cx.layout) {
            let both = cx.owners(one.spec, other.spec);
            let hole = if one.holes.is_some() { one } else { other };
            let message = format!("{both} want the same {}; {}", holes(cx, &hole), cure(rule));
            let place = cx.here().on(face.id).at(&hole);
            let owners = (Some(one.spec.owner), Some(other.spec.owner));
            found.push(Finding::new(rule, place, message).about_both(owners));
        }
    }
}

/// The holes that two uses of a face want, as the part of each, and the rule that they break.
pub(super) fn shared<'a>(
    search: &mut Search,
    face: &'a Face,
    layout: &'a Layout,
) -> Vec<(Rule, Strand<'a>, Strand<'a>)> {
    let all: Vec<Strand> = strands(face, layout).collect();
    // Of the smallest width there is, holes meet in the same place only.
    let point = Length::from_counts(1);
    let points: Vec<Holes> = all
        .iter()
        .map(|strand| strand.shape(point, ON_FACE))
        .collect();
    let met = strands_that_meet(search, &points);
    met.into_iter()
        .map(|both| both.map(|part| part.of(&all)))
        .filter_map(|[one, other]| Some((broken(one.spec, other.spec)?, one, other)))
        .collect()
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
