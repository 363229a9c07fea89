//! A panel as it lies on the bench: which end is where, the rail across it, the stop and the packer.

use gablerow_core::bench::SetUp;
use gablerow_core::job::{End, Hand};
use gablerow_core::measure::Length;

use super::canvas::Canvas;
use crate::theme::Role;

/// Lines of the picture that the panel itself takes.
const LINES: u16 = 5;
/// A setting of so much is drawn at the far edge, and what is further too.
const FAR: Length = Length::from_mm(500);

/// Draws the picture; the near edge is below.
pub(super) fn draw(canvas: &mut Canvas, set_up: &SetUp) {
    let width = canvas.width();
    let (left, right) = (7, width.saturating_sub(8));
    for y in 0..LINES {
        for x in left..=right {
            canvas.set(x, y, ' ', Role::Board);
        }
    }
    let rail = canvas.glyphs().rail;
    for x in left..=right {
        canvas.set(x, rail_line(set_up.setting.total()), rail, Role::RunnerHole);
    }
    let (on_left, on_right) = match set_up.foot_to {
        Hand::Left => ("FOOT", "HEAD"),
        Hand::Right => ("HEAD", "FOOT"),
    };
    canvas.text(left + 1, 0, on_left, Role::Board);
    canvas.text(right.saturating_sub(4), 0, on_right, Role::Board);
    let edge = format!("{} toward you", set_up.edge.word().to_uppercase());
    canvas.text(left + 1, LINES, &edge, Role::Plain);
    let has_packer = set_up.rest.packer != Length::ZERO;
    let (words, stop, packer) = match stop_to(set_up) {
        Hand::Left => (0, left - 2, left - 1),
        Hand::Right => (right + 3, right + 2, right + 1),
    };
    canvas.text(words, 1, "stop", Role::Dim);
    for y in 1..LINES {
        canvas.set(stop, y, canvas.glyphs().stop, Role::Stop);
        if has_packer {
            canvas.set(packer, y, canvas.glyphs().packer, Role::Warn);
        }
    }
    if has_packer {
        canvas.text(words, 3, "pack", Role::Dim);
    }
}

/// The line of the rail: the further the setting, the higher.
fn rail_line(setting: Length) -> u16 {
    let share = setting.counts().clamp(0, FAR.counts());
    let up = i64::from(share) * i64::from(LINES - 2) / i64::from(FAR.counts());
    (LINES - 1).saturating_sub(u16::try_from(up).unwrap_or(0))
}

/// The hand on which the end is that rests on the stop.
fn stop_to(set_up: &SetUp) -> Hand {
    match set_up.rest.end {
        End::Foot => set_up.foot_to,
        End::Head => set_up.foot_to.other(),
    }
}
