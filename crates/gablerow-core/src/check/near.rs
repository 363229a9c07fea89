//! Two holes that nearly are one: a figure of eight in the board. What comes through from the other face is a hole of both.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::holes;
use super::meet::{Holes, Search};
use super::pairs::{ON_FACE, strands_that_meet};
use super::{Context, Finding, Rule, Strand, strands};
use crate::job::{BackRule, Hand};
use crate::layout::{Face, Layout, RowName, Upright};
use crate::measure::Length;

/// Centres of different rows, or of single bores, that are less than the least spacing apart and not the same.
pub(super) fn near_miss_rows(cx: &Context, found: &mut Vec<Finding>) {
    let mut search = Search::default();
    let mut add = |face: &Face, (one, other): (Strand, Strand), message| {
        let place = cx.here().on(face.id).at(&one);
        let finding = Finding::new(Rule::NearMissRows, place, message);
        found.push(finding.about_both((Some(one.spec.owner), Some(other.spec.owner))));
    };
    let near = cx.limits().near;
    for (_, face) in cx.faces() {
        for (one, other) in near_misses(&mut search, face, cx.layout, near) {
            add(face, (one, other), sentence(cx, one, other));
        }
    }
    for upright in &cx.layout.uprights {
        for (one, other) in coming_through(&mut search, upright, cx.layout, near) {
            let face = upright.face(Hand::Left);
            add(face, (one, other), of_both_faces(cx, one, other));
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
    let met = nearer_than(search, &all, near);
    met.map(|(_, pair)| pair).filter(are_amiss).collect()
}

/// The holes of two faces of a panel, one of them at least bored right through, whose centres are nearer than `near` and not
/// the same; the face toward the left first.
pub(super) fn coming_through<'a>(
    search: &mut Search,
    upright: &'a Upright,
    layout: &'a Layout,
    near: Length,
) -> Vec<(Strand<'a>, Strand<'a>)> {
    let on = |hand| strands(upright.face(hand), layout);
    let mut all: Vec<Strand> = on(Hand::Left).collect();
    let right = all.len();
    all.extend(on(Hand::Right));
    if all.iter().all(|strand| strand.spec.depth.is_some()) {
        return Vec::new();
    }
    let met = nearer_than(search, &all, near);
    met.filter(|([one, other], _)| *one < right && right <= *other)
        .map(|(_, pair)| pair)
        .filter(|(one, other)| one.spec.depth.is_none() || other.spec.depth.is_none())
        .filter(are_amiss)
        .collect()
}

/// Neighbours in one row are no near miss, however far holes shall be apart, and neither is one hole for two.
fn are_amiss((one, other): &(Strand, Strand)) -> bool {
    let one_row = one.row.is_some() && other.row.is_some() && one.x == other.x;
    !one_row && one.same_place(*other).is_none()
}

/// The parts of strands of a list that are nearer than that to each other, with the places of the strands.
fn nearer_than<'a>(
    search: &mut Search,
    all: &[Strand<'a>],
    near: Length,
) -> impl Iterator<Item = ([usize; 2], (Strand<'a>, Strand<'a>))> {
    // Holes as wide as the least spacing lie over each other when they are nearer than that.
    let discs: Vec<Holes> = all
        .iter()
        .map(|strand| strand.shape(near, ON_FACE))
        .collect();
    let met = strands_that_meet(search, &discs);
    met.into_iter().map(move |both| {
        let [one, other] = both.map(|part| part.of(all));
        (both.map(|part| part.place), (one, other))
    })
}

fn of_both_faces(cx: &Context, one: Strand, other: Strand) -> String {
    let numbered = if one.holes.is_some() { one } else { other };
    format!(
        "{} are {} apart at {}, and one comes through beside the other, at least {}; bore it blind, or move one of them",
        cx.owners(one.spec, other.spec),
        one.distance(other).show(cx.unit),
        holes(cx, &numbered),
        cx.limits().near.show(cx.unit)
    )
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
