//! Sides whose outside is seen.

use alloc::format;
use alloc::vec::Vec;

use super::context::is;
use super::{Context, Finding, Rule};
use crate::layout::{BoreSpec, Face, Upright};
use crate::measure::Length;

/// Least board behind a face that shows, whatever the bit: 3 mm, a house default.
pub(crate) const SHOW_SKIN: Length = Length::from_mm(3);

/// Any hole on an outside that shows.
pub(super) fn bored_on_show_face(cx: &Context, found: &mut Vec<Finding>) {
    for (upright, face, strand) in cx.strands() {
        if !(upright.exposed && face.id.is_outside()) {
            continue;
        }
        let message = format!(
            "{} {} on the outside, which shows; bore from the inside, or take the exposed mark off",
            cx.subject(&strand),
            is(&strand)
        );
        let place = cx.here().on(face.id).at(&strand);
        let finding = Finding::new(Rule::BoredOnShowFace, place, message);
        found.push(finding.about(strand.spec.owner));
    }
}

/// Holes on the inside that come out, or nearly, on an outside that shows.
pub(super) fn exposed_end(cx: &Context, found: &mut Vec<Finding>) {
    for (upright, face, strand) in cx.strands() {
        if !is_seen_behind(upright, face, strand.spec) {
            continue;
        }
        let (subject, is) = (cx.subject(&strand), is(&strand));
        let most = (upright.thickness - SHOW_SKIN)
            .max(Length::ZERO)
            .show(cx.unit);
        let message = match strand.spec.depth {
            None => {
                format!("{subject} {is} through to the outside, which shows; bore {most} at most")
            }
            Some(depth) => format!(
                "{subject} {is} {} deep, with {} left behind the outside, which shows, at least {}; bore {most} at most",
                depth.show(cx.unit),
                (upright.thickness - depth).max(Length::ZERO).show(cx.unit),
                SHOW_SKIN.show(cx.unit)
            ),
        };
        let place = cx.here().on(face.id).at(&strand);
        let finding = Finding::new(Rule::ExposedEnd, place, message);
        found.push(finding.about(strand.spec.owner));
    }
}

/// Whether a hole on this face comes out on an exposed outside behind it, or too near to it.
pub(super) fn is_seen_behind(upright: &Upright, face: &Face, spec: &BoreSpec) -> bool {
    let most = upright.thickness - SHOW_SKIN;
    upright.exposed && !face.id.is_outside() && spec.depth.is_none_or(|depth| depth > most)
}

#[cfg(test)]
mod tests;
