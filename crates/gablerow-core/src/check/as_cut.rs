//! Lengths as the saw made them, copy by copy.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::job::{Copy, Hand, Names, PanelId};
use crate::layout::Upright;
use crate::measure::Length;

/// The most a panel may be off before it is cut again, either way: 1.0, a house default. Less is made up for at the bench.
const OFF_MOST: Length = Length::from_mm(1);

/// The most the two sides of a copy may differ: 0.5, a house default. More leaves the head sloping.
const DIFFER_MOST: Length = Length::from_um(500);

/// Panels that were cut so long or so short that no boring makes up for it.
pub(super) fn as_cut_length(cx: &Context, found: &mut Vec<Finding>) {
    for copy in &cx.cabinet.copies {
        for cut in &copy.as_cut {
            let planned = cx.layout.upright(cut.panel).map(Upright::length);
            let off = planned.and_then(|planned| Some((planned, cut.longer(planned)?)));
            let Some((planned, off)) = off.filter(|(_, off)| off.abs() > OFF_MOST) else {
                continue;
            };
            let way = if off > Length::ZERO { "long" } else { "short" };
            let message = format!(
                "{} was cut {} too {way}, {} for {}; over {} it is cut again",
                panel(cx, copy, cut.panel),
                off.abs().show(cx.unit),
                (planned + off).show(cx.unit),
                planned.show(cx.unit),
                OFF_MOST.show(cx.unit)
            );
            found.push(Finding::new(Rule::AsCutLength, cx.here(), message).about(copy.key));
        }
    }
}

/// Two sides of one copy that are not alike, whatever either should be.
pub(super) fn pair_lengths_differ(cx: &Context, found: &mut Vec<Finding>) {
    for copy in &cx.cabinet.copies {
        let length = |hand| {
            let planned = cx.layout.upright(PanelId::Side(hand))?.length();
            Some(planned + copy.longer(PanelId::Side(hand), planned)?)
        };
        let (Some(left), Some(right)) = (length(Hand::Left), length(Hand::Right)) else {
            continue;
        };
        let apart = (left - right).abs();
        if apart <= DIFFER_MOST {
            continue;
        }
        let message = format!(
            "the sides of copy {} are {} apart, left {} and right {}; over {} the head slopes: trim the longer, or pair it otherwise",
            copy.name,
            apart.show(cx.unit),
            left.show(cx.unit),
            right.show(cx.unit),
            DIFFER_MOST.show(cx.unit)
        );
        found.push(Finding::new(Rule::PairLengthsDiffer, cx.here(), message).about(copy.key));
    }
}

/// A panel by the name it has on its copy: `left side of copy 2`.
fn panel(cx: &Context, copy: &Copy, panel: PanelId) -> String {
    let names = Names::of(&cx.cabinet.built_as(copy).opening);
    format!("the {} of copy {}", names.panel(panel), copy.name)
}

#[cfg(test)]
mod tests;
