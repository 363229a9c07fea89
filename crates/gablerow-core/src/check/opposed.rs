//! Holes of both faces of one panel: back to back, or through into the other bay.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::{doubt, holes};
use super::meet::{Holes, Search};
use super::pairs::{FAR, strands_that_meet};
use super::{Context, Finding, Rule, Strand, depth, strands};
use crate::job::{Hand, Key, Limits};
use crate::layout::{BoreSpec, Face, Layout, Span, Upright, Use};
use crate::measure::Length;

/// Blind holes from both faces that leave too little board between them.
pub(super) fn opposed_holes_meet(cx: &Context, found: &mut Vec<Finding>) {
    let web = cx.limits().web;
    let mut search = Search::default();
    for upright in &cx.layout.uprights {
        let met = back_to_back(&mut search, upright, cx.layout, web, |spec| spec.depth);
        for (one, other) in met {
            let (Some(a), Some(b)) = (one.spec.depth, other.spec.depth) else {
                continue;
            };
            let left = (upright.thickness - a - b).max(Length::ZERO);
            let message = format!(
                "{}: {} + {} deep leave {} of {}, at least {}; {}",
                are_back_to_back(cx, one, other),
                a.show(cx.unit),
                b.show(cx.unit),
                left.show(cx.unit),
                upright.thickness.show(cx.unit),
                web.show(cx.unit),
                depths_that_do(cx, upright, (one, other))
            );
            let both = (one, other);
            found.push(opposed(cx, Rule::OpposedHolesMeet, upright, both, message));
        }
    }
}

/// Depths at which both holes leave the least web and take what goes in there, whoever asks for them.
fn depths_that_do(cx: &Context, upright: &Upright, (one, other): (Strand, Strand)) -> String {
    let room = (upright.thickness - cx.limits().web).max(Length::ZERO);
    let need = |hand, part: Strand| {
        let all = strands(upright.face(hand), cx.layout);
        let here = all.filter(|it| it.same_place(part).is_some());
        let needs = here.map(|it| depth::needed(it.spec, cx.limits()));
        needs.max().unwrap_or(Length::ZERO)
    };
    let (a, b) = (need(Hand::Left, one), need(Hand::Right, other));
    let [shown_a, shown_b] = [a, b].map(|it| it.show(cx.unit));
    if a + b > room {
        return format!("they need {shown_a} and {shown_b}, so shift one");
    }
    let half = room.half();
    if a > half {
        format!(
            "{shown_a} and {} do, or shift one",
            (room - a).show(cx.unit)
        )
    } else if b > half {
        format!(
            "{} and {shown_b} do, or shift one",
            (room - b).show(cx.unit)
        )
    } else {
        format!("{} each at most, or shift one", half.show(cx.unit))
    }
}

/// Fasteners from both faces that reach each other; of two hinge plates it is a rule of its own.
pub(super) fn opposed_fasteners_meet(cx: &Context, found: &mut Vec<Finding>) {
    let spare = cx.limits().spare;
    let mut search = Search::default();
    for upright in &cx.layout.uprights {
        let met = back_to_back(&mut search, upright, cx.layout, spare, fastener);
        for (one, other) in met {
            let (a, b) = (one.spec, other.spec);
            let (rule, cure) = if (a.use_, b.use_) == (Use::Plate, Use::Plate) {
                (Rule::OpposedPlates, "stagger them by 2 holes")
            } else {
                (Rule::OpposedFastenersMeet, "move one of them")
            };
            let message = format!(
                "{}{}: {} + {} go in, {} takes {}; {cure}",
                doubt(a.pen_unproved || b.pen_unproved),
                are_back_to_back(cx, one, other),
                a.pen.show(cx.unit),
                b.pen.show(cx.unit),
                upright.thickness.show(cx.unit),
                (upright.thickness - spare).show(cx.unit)
            );
            let both = (one, other);
            found.push(opposed(cx, rule, upright, both, message));
        }
    }
}

/// How deep a fastener goes in; `None` when there is none, or when it is a connector that takes both sides with one screw.
pub(super) fn fastener(spec: &BoreSpec) -> Option<Length> {
    let is_through_connector = spec.use_ == Use::Connector && spec.depth.is_none();
    (spec.pen != Length::ZERO && !is_through_connector).then_some(spec.pen)
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
    let both = fastener(a).zip(fastener(b));
    both.is_some_and(|(a, b)| a + b > thickness - limits.spare)
}

/// What does not matter takes nothing of the thickness.
const NOWHERE: Span = Span {
    from: Length::ZERO,
    to: Length::ZERO,
};

/// The holes of both faces of a panel whose discs lie over each other and whose depths leave less than `least` between
/// them, the face toward the left first; `deep` says how deep a hole goes in, or that it does not matter here.
pub(super) fn back_to_back<'a>(
    search: &mut Search,
    upright: &'a Upright,
    layout: &'a Layout,
    least: Length,
    deep: impl Fn(&BoreSpec) -> Option<Length>,
) -> Vec<(Strand<'a>, Strand<'a>)> {
    let on = |hand| strands(upright.face(hand), layout);
    let mut all: Vec<Strand> = on(Hand::Left).collect();
    let right = all.len();
    all.extend(on(Hand::Right));
    let shape = |(at, strand): (usize, &Strand)| {
        // From the left the board that has to stay between them belongs to the hole.
        let u = match deep(strand.spec) {
            None => NOWHERE,
            Some(deep) if at < right => Span::new(-FAR, deep + least),
            Some(deep) => Span::new(upright.thickness - deep, FAR),
        };
        strand.shape(strand.spec.diameter, u)
    };
    let shapes: Vec<Holes> = all.iter().enumerate().map(shape).collect();
    let met = strands_that_meet(search, &shapes);
    met.into_iter()
        .filter(|[one, other]| one.place < right && right <= other.place)
        .map(|both| both.map(|part| part.of(&all)))
        .map(|[one, other]| (one, other))
        .collect()
}

fn are_back_to_back(cx: &Context, one: Strand, other: Strand) -> String {
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
