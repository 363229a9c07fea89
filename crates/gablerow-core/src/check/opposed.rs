//! Holes of both faces of one panel: back to back, or through into the other bay.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::{doubt, holes};
use super::{Context, Finding, Rule, Strand, strands};
use crate::job::{Hand, Key, Limits};
use crate::layout::{BoreSpec, Face, Upright, Use};
use crate::measure::Length;

/// Blind holes from both faces that leave too little board between them.
pub(super) fn opposed_holes_meet(cx: &Context, found: &mut Vec<Finding>) {
    each_back_to_back(cx, |upright, one, other| {
        if !depths_meet(upright.thickness, cx.limits(), one.spec, other.spec) {
            return;
        }
        let [a, b] = [one, other].map(|it| it.spec.depth.unwrap_or_default());
        let most = upright.thickness - cx.limits().web;
        let left = (upright.thickness - a - b).max(Length::ZERO);
        let message = format!(
            "{}: {} + {} deep leave {} of {}, at least {}; {} each at most, or shift one",
            back_to_back(cx, one, other),
            a.show(cx.unit),
            b.show(cx.unit),
            left.show(cx.unit),
            upright.thickness.show(cx.unit),
            cx.limits().web.show(cx.unit),
            most.max(Length::ZERO).half().show(cx.unit)
        );
        let both = (one, other);
        found.push(opposed(cx, Rule::OpposedHolesMeet, upright, both, message));
    });
}

/// Fasteners from both faces that reach each other; of two hinge plates it is a rule of its own.
pub(super) fn opposed_fasteners_meet(cx: &Context, found: &mut Vec<Finding>) {
    each_back_to_back(cx, |upright, one, other| {
        let (a, b) = (one.spec, other.spec);
        let most = upright.thickness - cx.limits().spare;
        if !fasteners_meet(upright.thickness, cx.limits(), a, b) {
            return;
        }
        let (rule, cure) = if (a.use_, b.use_) == (Use::Plate, Use::Plate) {
            (Rule::OpposedPlates, "stagger them by 2 holes")
        } else {
            (Rule::OpposedFastenersMeet, "move one of them")
        };
        let message = format!(
            "{}{}: {} + {} go in, {} takes {}; {cure}",
            doubt(a.pen_unproved || b.pen_unproved),
            back_to_back(cx, one, other),
            a.pen.show(cx.unit),
            b.pen.show(cx.unit),
            upright.thickness.show(cx.unit),
            most.show(cx.unit)
        );
        found.push(opposed(cx, rule, upright, (one, other), message));
    });
}

/// Whether two blind holes back to back leave less than the least web between them.
pub(super) fn depths_meet(thickness: Length, limits: &Limits, a: &BoreSpec, b: &BoreSpec) -> bool {
    let depths = a.depth.zip(b.depth);
    depths.is_some_and(|(a, b)| a + b > thickness - limits.web)
}

/// Whether two fasteners back to back go in further than the board takes.
pub(super) fn fasteners_meet(
    thickness: Length,
    limits: &Limits,
    a: &BoreSpec,
    b: &BoreSpec,
) -> bool {
    let is_free = |spec: &BoreSpec| spec.pen == Length::ZERO || is_through_connector(spec);
    !is_free(a) && !is_free(b) && a.pen + b.pen > thickness - limits.spare
}

/// A connector that goes through takes both sides with one screw.
fn is_through_connector(spec: &BoreSpec) -> bool {
    spec.use_ == Use::Connector && spec.depth.is_none()
}

/// Calls `visit` with the holes of both faces of a panel whose discs lie over each other.
fn each_back_to_back(cx: &Context, mut visit: impl FnMut(&Upright, Strand, Strand)) {
    for upright in &cx.layout.uprights {
        let [left, right] = [Hand::Left, Hand::Right]
            .map(|hand| strands(upright.face(hand), cx.layout).collect::<Vec<_>>());
        for one in &left {
            for other in &right {
                let limit = one.radius() + other.radius();
                if let Some((one, other)) = one.nearer(*other, limit) {
                    visit(upright, one, other);
                }
            }
        }
    }
}

fn back_to_back(cx: &Context, one: Strand, other: Strand) -> String {
    let shared = if one.holes.is_some() { one } else { other };
    let both = cx.owners(one.spec, other.spec);
    format!("{both} are back to back at {}", holes(cx, &shared))
}

/// It is said on the face toward the left, once.
fn opposed(
    cx: &Context,
    rule: Rule,
    upright: &Upright,
    (one, other): (Strand, Strand),
    message: String,
) -> Finding {
    let face = upright.face(Hand::Left).id;
    let owners = (Some(one.spec.owner), Some(other.spec.owner));
    Finding::new(rule, cx.here().on(face).at(&one), message).about_both(owners)
}

/// Through holes that come out in a bay which does not ask for them.
pub(super) fn through_into_free_bay(cx: &Context, found: &mut Vec<Finding>) {
    for (upright, face, strand) in cx.strands() {
        if strand.spec.depth.is_some() {
            continue;
        }
        let behind = upright.face(face.id.toward.other());
        let wanted: Vec<_> = strands(behind, cx.layout).collect();
        let bays = cx.layout.bays_at(behind.id);
        for (bay, _) in bays {
            let heights = bay.floor.total()..=bay.ceiling.total();
            let comes_out =
                |z| heights.contains(&z) && !wanted.iter().any(|other| other.is_at(strand.x, z));
            for part in strand.parts(comes_out) {
                found.push(through(cx, upright, face, part, bay.key));
            }
        }
    }
}

fn through(cx: &Context, upright: &Upright, face: &Face, part: Strand, bay: Key) -> Finding {
    let most = (upright.thickness - cx.limits().skin_flat).max(Length::ZERO);
    let comes = if part.count() == 1 { "comes" } else { "come" };
    let message = format!(
        "{} {comes} out in {}, which has no use there; bore {} at most",
        cx.subject(&part),
        cx.opening(bay),
        most.show(cx.unit)
    );
    let place = cx.here().on(face.id).at(&part);
    Finding::new(Rule::ThroughIntoFreeBay, place, message).about(part.spec.owner)
}

#[cfg(test)]
mod tests;
