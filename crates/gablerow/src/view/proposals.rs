//! What is proposed, and why, beside the drawing as it would be.

use gablerow_core::propose::Proposal;
use gablerow_papers::wrap;

use super::canvas::Canvas;
use crate::theme::Role;

/// Draws the list and the reasons of the proposal one is on.
pub(super) fn draw(canvas: &mut Canvas, proposals: &[Proposal], at: usize) {
    let title = format!("proposed {}/{}", at + 1, proposals.len());
    canvas.text(0, 0, &title, Role::Title);
    let room = usize::from(canvas.width().saturating_sub(2));
    let mut y = 1;
    for (index, proposal) in proposals.iter().enumerate() {
        let here = index == at;
        let sign = if here {
            canvas.glyphs().arrow_right
        } else {
            ' '
        };
        let role = match (here, &proposal.edit) {
            (_, None) => Role::Warn,
            (true, _) => Role::Strong,
            (false, _) => Role::Plain,
        };
        canvas.text(0, y, &sign.to_string(), role);
        for line in wrap(&proposal.title, room) {
            canvas.text(2, y, &line, role);
            y += 1;
        }
    }
    let Some(proposal) = proposals.get(at) else {
        return;
    };
    y += 1;
    for reason in &proposal.why {
        for (nth, line) in wrap(reason, room).iter().enumerate() {
            let indent = if nth == 0 { 0 } else { 2 };
            canvas.text(indent, y, line, Role::Plain);
            y += 1;
        }
    }
}
