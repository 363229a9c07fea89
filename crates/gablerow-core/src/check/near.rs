//! Two holes that nearly are one: a figure of eight in the board.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::holes;
use super::meet::{Holes, Search};
use super::pairs::{ON_FACE, strands_that_meet};
use super::{Context, Finding, Rule, Strand, strands};
use crate::job::BackRule;
use crate::layout::{Face, Layout, RowName};
use crate::measure::Length;

/// Centres of different rows, or of single bores, that are less than the least spacing apart and not the same.
pub(super) fn near_miss_rows(cx: &Context, found: &mut Vec<Finding>) {
    let mut search = Search::default();
    for (_, face) in cx.faces() {
        for (one, other) in near_misses(&mut search, face, cx.layout, cx.limits().near) {
            let place = cx.here().on(face.id).at(&one);
            let finding = Finding::new(Rule::NearMissRows, place, sentence(cx, one, other));
            found.push(finding.about_both((Some(one.spec.owner), Some(other.spec.owner))));
        }
    }
}

/// The holes of a face whose centres are nearer than `near` and not the same, as the part of each strand.
pub(super) fn near_misses<'a>(
    search: &mut Search,
    face: &'a Face,
    layout: &'a Layout,
    near: Length,
) -> Vec<(Strand<'a>, Strand<'a>)> {
    let all: Vec<Strand> = strands(face, layout).collect();
    // Holes as wide as the least spacing lie over each other when they are nearer than that.
    let discs: Vec<Holes> = all
        .iter()
        .map(|strand| strand.shape(near, ON_FACE))
        .collect();
    let met = strands_that_meet(search, &discs);
    met.into_iter()
        .map(|both| both.map(|part| part.of(&all)))
        .filter(|[one, other]| {
            let one_row = one.row.is_some() && other.row.is_some() && one.x == other.x;
            !one_row && one.same_place(*other).is_none()
        })
        .map(|[one, other]| (one, other))
        .collect()
}

fn sentence(cx: &Context, one: Strand, other: Strand) -> String {
    let (apart, near) = (
        one.distance(other).show(cx.unit),
        cx.limits().near.show(cx.unit),
    );
    match (one.row, other.row) {
        (Some(name), Some(other_name)) => format!(
            "{} row at {} and {} row at {} are {apart} apart at {}, at least {near}; {}",
            name.word(),
            one.x.show(cx.unit),
            other_name.word(),
            other.x.show(cx.unit),
            holes(cx, &one),
            cure(cx, one, other)
        ),
        _ => format!(
            "{} are {apart} apart at {}, at least {near}; move one of them",
            cx.owners(one.spec, other.spec),
            holes(cx, &one)
        ),
    }
}

/// A back row that follows its setback can be brought onto the other row.
fn cure(cx: &Context, one: Strand, other: Strand) -> String {
    let follows = cx.shop().back_rule != BackRule::OnPitch;
    let (back, onto) = match (one.row, other.row) {
        (Some(RowName::Back), Some(name)) if follows && name != RowName::Back => (one, other),
        (Some(name), Some(RowName::Back)) if follows && name != RowName::Back => (other, one),
        _ => return "drop the holes from one row".into(),
    };
    let setback = cx.shop().setback_back + (back.x - onto.x);
    format!(
        "a back setback of {} makes them one row",
        setback.show(cx.unit)
    )
}

#[cfg(test)]
mod tests;
