//! Holes with the signs of their uses, as they are drawn on paper.

use gablerow_core::layout::Use;

use crate::pen::{HAIR, Pen, THIN};

/// How far a sign stands off the hole it is drawn around, in mm of paper, and how small it may be.
const OFF: f64 = 0.5;
const LEAST: f64 = 0.6;
/// From this radius on, in mm of paper, a hole has its centre marked, and a full one is light enough to see it.
const CROSSED_LEAST: f64 = 1.0;
const LARGE_SHADE: f64 = 0.75;

/// A hole with the sign of its use, which reaches at most so far to either side: told apart without any colour.
///
/// A pin is full, a plate has a diamond around it, a runner a square; a hole of several uses is full in a diamond, and one of a
/// joint or of the face itself has nothing around it.
pub(crate) fn draw_hole(
    pen: &mut Pen,
    (x, y): (f64, f64),
    radius: f64,
    most: f64,
    only_use: Option<Use>,
) {
    let off = (radius + OFF).min(most).max(LEAST);
    let is_full = matches!(only_use, Some(Use::Pin) | None);
    let is_large = radius >= CROSSED_LEAST;
    let shade = if is_large { LARGE_SHADE } else { 0.0 };
    pen.ring((x, y), radius, is_full.then_some(shade));
    if is_large {
        pen.way(&[(x - radius, y), (x + radius, y)], HAIR);
        pen.way(&[(x, y - radius), (x, y + radius)], HAIR);
    }
    match only_use {
        Some(Use::Plate) | None => {
            let off = off * 1.3;
            let corners = [(x - off, y), (x, y - off), (x + off, y), (x, y + off)];
            pen.shape(&corners, Some(THIN), None);
        }
        Some(Use::Runner) => {
            pen.block((x - off, y - off), (x + off, y + off), Some(THIN), None);
        }
        Some(Use::Pin | Use::Dowel | Use::Connector | Use::Free) => {}
    }
}
