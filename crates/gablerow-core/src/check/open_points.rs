//! What the layout left open.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::job::{Fit, Key, PanelId};
use crate::layout::OpenPoint;
use crate::measure::Length;

/// Says each open point of the layout.
pub(super) fn open_points(cx: &Context, found: &mut Vec<Finding>) {
    for point in &cx.layout.open_points {
        let (rule, thing, message) = match point {
            OpenPoint::JointBores { owner } => (
                Rule::NotYet,
                Some(*owner),
                format!(
                    "the bores of {} in a horizontal panel are kept, but not laid out yet",
                    cx.layout.names.panel(PanelId::Partition(*owner))
                ),
            ),
            OpenPoint::Widths { opening, left_over } => (
                Rule::WidthsDoNotAddUp,
                Some(*opening),
                widths(cx, &cx.opening(*opening), *left_over),
            ),
            OpenPoint::Heights { opening, left_over } => (
                Rule::HeightsDoNotAddUp,
                Some(*opening),
                heights(cx, &cx.opening(*opening), *left_over),
            ),
            OpenPoint::NoSpace { opening } => {
                (Rule::NoSpace, Some(*opening), no_space(cx, *opening))
            }
            OpenPoint::NoCard { card } => (
                Rule::NoCard,
                None,
                format!("there is no card {card}; add it, or choose another"),
            ),
        };
        found.push(Finding::new(rule, cx.here(), message).about_both((thing, None)));
    }
}

/// Sides that shall run below a bottom which lies under them.
pub(super) fn sides_end_on_bottom(cx: &Context, found: &mut Vec<Finding>) {
    let carcass = &cx.cabinet.carcass;
    let below = carcass.sides.below;
    if carcass.bottom.fit == Fit::Across && below > Length::ZERO {
        let message = format!(
            "the sides end on the bottom under them and do not run {} below; let the bottom in between them, or let them run 0 below",
            below.show(cx.unit)
        );
        found.push(Finding::new(Rule::SidesEndOnBottom, cx.here(), message));
    }
}

fn no_space(cx: &Context, key: Key) -> String {
    let name = cx.opening(key);
    match cx.layout.opening(key) {
        Some(made) => format!(
            "{name} would be {} wide and {} high inside; make the cabinet larger, what is beside it smaller, or take it out",
            made.width.show(cx.unit),
            (made.ceiling - made.floor).show(cx.unit)
        ),
        None => format!("{name} has no room; make the cabinet larger, or take it out"),
    }
}

fn widths(cx: &Context, opening: &str, left_over: Length) -> String {
    let by = left_over.abs().show(cx.unit);
    if left_over > Length::ZERO {
        format!(
            "the parts side by side of {opening} leave {by} over; make one equal, or wider by that"
        )
    } else {
        format!(
            "the parts side by side of {opening} are {by} too wide; make one equal, or narrower by that"
        )
    }
}

fn heights(cx: &Context, opening: &str, left_over: Length) -> String {
    let by = left_over.abs().show(cx.unit);
    if left_over > Length::ZERO {
        format!(
            "the fronts of {opening} leave {by} over; give one a share, or make it higher by that"
        )
    } else {
        format!(
            "the fronts of {opening} are {by} too high; give one a share, or make it lower by that"
        )
    }
}

#[cfg(test)]
mod tests;
