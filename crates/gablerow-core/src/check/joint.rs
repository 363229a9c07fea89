//! Holes that open into the end of a fixed panel.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::holes;
use super::meet::{Holes, Search, Space};
use super::pairs::{ON_FACE, lying_over};
use super::{Context, Finding, Rule, Strand, strands};
use crate::layout::{Face, KeepOut, Layout, Span, Upright, Use};
use crate::measure::Length;

/// Holes whose disc meets the end zone of a bottom, top, stretcher or fixed shelf on their face.
pub(super) fn hole_in_joint(cx: &Context, found: &mut Vec<Finding>) {
    let mut search = Search::default();
    for (upright, face) in cx.faces() {
        for (panel, zone, part) in holes_in_ends(&mut search, upright, face, cx.layout) {
            let message = sentence(cx, face, panel, zone, part);
            let place = cx.here().on(face.id).at(&part);
            let finding = Finding::new(Rule::HoleInJoint, place, message);
            found.push(finding.about_both((Some(part.spec.owner), panel.owner)));
        }
    }
}

/// The fixed panels of a face, the heights at which each one's end meets it, and the holes whose disc lies over that.
pub(super) fn holes_in_ends<'a>(
    search: &mut Search,
    upright: &Upright,
    face: &'a Face,
    layout: &'a Layout,
) -> Vec<(&'a KeepOut, Span, Strand<'a>)> {
    let fixed = face.keep_outs.iter();
    let ends: Vec<(&KeepOut, Span)> = fixed
        .filter(|panel| panel.item.is_fixed_panel())
        .filter_map(|panel| Some((panel, end_zone(upright, panel)?)))
        .collect();
    let all: Vec<Strand> = strands(face, layout)
        .filter(|strand| !is_of_joint(strand))
        .collect();
    let shapes: Vec<Holes> = all
        .iter()
        .map(|strand| strand.shape(strand.spec.diameter, ON_FACE))
        .collect();
    let zones: Vec<Space> = ends
        .iter()
        .map(|&(panel, z)| Space {
            x: panel.x,
            z,
            u: ON_FACE,
        })
        .collect();
    lying_over(search, &shapes, &zones)
        .into_iter()
        .map(|(part, space)| {
            let (panel, zone) = ends[space];
            (panel, zone, part.of(&all))
        })
        .collect()
}

/// A joint's own bores belong in its zone.
fn is_of_joint(strand: &Strand) -> bool {
    matches!(strand.spec.use_, Use::Dowel | Use::Connector)
}

/// The heights at which the panel's end meets the face; a panel across the ends of the upright meets none of it.
fn end_zone(upright: &Upright, panel: &KeepOut) -> Option<Span> {
    let from = panel.z.from.max(upright.foot.total());
    let to = panel.z.to.min(upright.head.total());
    (from < to).then(|| Span::new(from, to))
}

fn sentence(cx: &Context, face: &Face, panel: &KeepOut, zone: Span, part: Strand) -> String {
    let disc = Span::new(part.low - part.radius(), part.high + part.radius());
    // Whoever asks for a numbered hole, it is one hole and said once.
    let name = match part.holes {
        Some(_) => holes(cx, &part),
        None => cx.owner(part.spec),
    };
    let (above, below) = (disc.to - zone.to, zone.from - disc.from);
    let shows = match (above > Length::ZERO, below > Length::ZERO) {
        (true, _) => format!(", {} above it", above.show(cx.unit)),
        (false, true) => format!(", {} below it", below.show(cx.unit)),
        (false, false) => String::new(),
    };
    let own = strands(face, cx.layout).filter(|bore| is_of_joint(bore) && is_in(zone, bore.low));
    let wood = own
        .map(|bore| part.distance(bore) - part.radius() - bore.radius())
        .min();
    let wood = match wood {
        Some(wood) => format!("{} of wood to its dowel", wood.show(cx.unit)),
        None => {
            let rest = (disc.from - zone.from).max(zone.to - disc.to);
            format!("{} of its end left", rest.max(Length::ZERO).show(cx.unit))
        }
    };
    format!(
        "{name}, disc {}, meets the {} {}{shows}, {wood}; leave it out, or accept it",
        cx.span(disc.from, disc.to),
        panel.item.word(),
        cx.span(zone.from, zone.to),
    )
}

fn is_in(zone: Span, z: Length) -> bool {
    zone.from < z && z < zone.to
}

#[cfg(test)]
mod tests;
