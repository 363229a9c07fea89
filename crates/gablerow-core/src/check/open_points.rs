//! What the layout left open.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::job::{Key, PanelId};
use crate::layout::OpenPoint;
use crate::measure::Length;

/// Says each open point of the layout.
pub(super) fn open_points(cx: &Context, found: &mut Vec<Finding>) {
    for point in &cx.layout.open_points {
        let (rule, message) = match point {
            OpenPoint::Front { front } => (
                Rule::NotYet,
                format!(
                    "front {} is kept, but not laid out yet",
                    front_name(cx, *front)
                ),
            ),
            OpenPoint::JointBores { owner } => (
                Rule::NotYet,
                format!(
                    "the bores of {} in a horizontal panel are kept, but not laid out yet",
                    cx.layout.names.panel(PanelId::Partition(*owner))
                ),
            ),
            OpenPoint::Widths { opening, left_over } => (
                Rule::WidthsDoNotAddUp,
                widths(cx, &cx.opening(*opening), *left_over),
            ),
            OpenPoint::NoSpace { opening } => (
                Rule::NoSpace,
                format!(
                    "{} has no width or no height; make the cabinet larger, or take it out",
                    cx.opening(*opening)
                ),
            ),
            OpenPoint::NoCard { card } => (
                Rule::NoCard,
                format!("there is no card {card}; add it, or choose another"),
            ),
        };
        found.push(Finding::new(rule, cx.here(), message));
    }
}

fn front_name(cx: &Context, key: Key) -> String {
    let mut name = None;
    cx.cabinet.opening.each(&mut |opening| {
        let front = opening.fronts.iter().find(|front| front.key == key);
        name = name.take().or(front.map(|front| front.name.as_str()));
    });
    name.map_or_else(|| format!("{key}"), Into::into)
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

#[cfg(test)]
mod tests;
