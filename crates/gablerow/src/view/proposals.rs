//! What is proposed, and why, beside the drawing as it would be.

use gablerow_core::check::Finding;
use gablerow_core::propose::Proposal;
use gablerow_papers::wrap;

use super::canvas::Canvas;
use super::words::level_role;
use crate::app::{App, Asking, Pane};
use crate::proposals::told;
use crate::theme::Role;

/// Draws the list and the reasons of the proposal one is on; below them what a finding says that is to be mended.
pub(super) fn draw(canvas: &mut Canvas, app: &App, proposals: &[Proposal]) {
    let Some(Pane::Proposals { line: at, wish }) = app.pane else {
        return;
    };
    let finding = match wish {
        Asking::Mend { finding, .. } => told(app, finding),
        Asking::Hardware(_) | Asking::Bay => None,
    };
    let what = if finding.is_some() {
        "mend"
    } else {
        "proposed"
    };
    let title = format!("{what} {}/{}", at + 1, proposals.len());
    let after = canvas.text(0, 0, &title, Role::Title);
    let mut y = 1;
    if let Some(finding) = &finding {
        let said = format!("{} {}", finding.level.word(), finding.rule_name());
        // A long name of a rule has a line of its own.
        let at = if usize::from(after) + 1 + said.len() <= usize::from(canvas.width()) {
            (after + 1, 0)
        } else {
            y = 2;
            (0, 1)
        };
        canvas.text(at.0, at.1, &said, level_role(finding.level));
    }
    let room = usize::from(canvas.width().saturating_sub(2));
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
    if let Some(finding) = &finding {
        said(canvas, finding, y + 1);
    }
}

/// What a finding says as things are now.
fn said(canvas: &mut Canvas, finding: &Finding, y: u16) {
    let text = format!("now: {}", finding.message);
    canvas.paragraph(y, 0, &text, Role::Dim);
}
