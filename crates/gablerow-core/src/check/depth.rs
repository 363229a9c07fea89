//! Depth: enough for the fastener, not too much for the board.

use alloc::format;
use alloc::vec::Vec;

use super::context::{doubt, is};
use super::{Context, Finding, Rule, Strand, exposed, strands};
use crate::job::{Bit, Limits};
use crate::layout::{BoreSpec, Use};
use crate::measure::Length;

/// Blind holes that are not deep enough for what goes in. A hole two uses share is bored as deep as the deeper asks.
pub(super) fn depth_short_for_screw(cx: &Context, found: &mut Vec<Finding>) {
    for (upright, face, strand) in cx.strands() {
        let spec = strand.spec;
        let fastener = match spec.use_ {
            Use::Pin => "pin",
            Use::Plate | Use::Runner => "screw",
            // What a joint or a free hole takes has no card; their depth is what was asked for.
            Use::Dowel | Use::Connector | Use::Free => continue,
        };
        let need = needed(spec, cx.limits());
        let deep_enough = |other: &Strand| other.spec.depth.is_none_or(|depth| depth >= need);
        let Some(depth) = spec.depth.filter(|&depth| depth < need) else {
            continue;
        };
        let deeper: Vec<_> = strands(face, cx.layout).filter(deep_enough).collect();
        let short = strand.parts(|z| !deeper.iter().any(|other| other.is_at(strand.x, z)));
        let most = upright.thickness - cx.limits().skin(cx.shop().bit);
        for part in short {
            let cure = if need <= most {
                format!("bore {}", need.show(cx.unit))
            } else {
                format!(
                    "the board takes {}, so use a shorter {fastener}",
                    most.show(cx.unit)
                )
            };
            let message = format!(
                "{}{} {} {} deep, the {fastener} goes in {} and needs {}; {cure}",
                doubt(spec.pen_unproved),
                cx.subject(&part),
                is(&part),
                depth.show(cx.unit),
                spec.pen.show(cx.unit),
                need.show(cx.unit)
            );
            let place = cx.here().on(face.id).at(&part);
            let finding = Finding::new(Rule::DepthShortForScrew, place, message);
            found.push(finding.about(spec.owner));
        }
    }
}

/// How deep a hole has to be at least for what goes in.
pub(super) fn needed(spec: &BoreSpec, limits: &Limits) -> Length {
    match spec.use_ {
        Use::Pin | Use::Plate | Use::Runner => spec.pen + limits.spare,
        Use::Dowel | Use::Connector | Use::Free => spec.pen,
    }
}

/// Blind holes that leave too little board under the bit.
pub(super) fn depth_breaks_through(cx: &Context, found: &mut Vec<Finding>) {
    let bit = cx.shop().bit;
    let skin = cx.limits().skin(bit);
    for (upright, face, strand) in cx.strands() {
        let Some(depth) = strand.spec.depth else {
            continue;
        };
        let left = upright.thickness - depth;
        if left >= skin || exposed::is_seen_behind(upright, face, strand.spec) {
            continue;
        }
        let (word, flat_would_do) = match bit {
            Bit::Flat => ("flat", false),
            Bit::Pointed => ("pointed", left >= cx.limits().skin_flat),
        };
        let message = format!(
            "{} {} {} deep and {} {} of the {} board, a {word} bit needs {}; bore {} at most{}",
            cx.subject(&strand),
            is(&strand),
            depth.show(cx.unit),
            if strand.count() == 1 {
                "leaves"
            } else {
                "leave"
            },
            left.max(Length::ZERO).show(cx.unit),
            upright.thickness.show(cx.unit),
            skin.show(cx.unit),
            (upright.thickness - skin).max(Length::ZERO).show(cx.unit),
            if flat_would_do {
                ", or with a flat bit"
            } else {
                ""
            }
        );
        let place = cx.here().on(face.id).at(&strand);
        let finding = Finding::new(Rule::DepthBreaksThrough, place, message);
        found.push(finding.about(strand.spec.owner));
    }
}

#[cfg(test)]
mod tests;
