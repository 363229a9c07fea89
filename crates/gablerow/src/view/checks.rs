//! What the checks have to say of a cabinet, whole.

use gablerow_core::check::Level;

use gablerow_papers::wrap;

use super::canvas::Canvas;
use crate::app::App;
use crate::scene::Scene;
use crate::theme::Role;

/// Draws the list; the finding one is on is marked, and always in sight.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &Scene, at: usize) {
    let after = canvas.text(1, 0, &format!("{} checks", scene.cabinet.name), Role::Title);
    if scene.findings.is_empty() {
        canvas.text(after + 2, 0, "nothing to say", Role::Good);
        return;
    }
    canvas.text(
        after + 2,
        0,
        &format!("{} of {}", at + 1, scene.findings.len()),
        Role::Dim,
    );
    let room = usize::from(canvas.width().saturating_sub(4));
    let blocks: Vec<(Level, bool, Vec<String>)> = scene
        .findings
        .iter()
        .map(|finding| {
            let place = finding
                .place
                .face
                .map(|face| format!("{face}. "))
                .unwrap_or_default();
            let mut lines = wrap(&format!("{place}{}", finding.message), room);
            lines.push(match &finding.accepted {
                Some(reason) => format!("accepted: {reason}"),
                None => finding.rule_name().to_owned(),
            });
            (finding.level, finding.accepted.is_some(), lines)
        })
        .collect();
    let height = usize::from(canvas.height().saturating_sub(2));
    let mut from = 0;
    while blocks[from..=at.min(blocks.len() - 1)]
        .iter()
        .map(|(_, _, lines)| lines.len() + 1)
        .sum::<usize>()
        > height
        && from < at
    {
        from += 1;
    }
    let mut y = 2;
    let end = canvas.height() - 1;
    for (index, (level, accepted, lines)) in blocks.iter().enumerate().skip(from) {
        let role = match level {
            Level::Stop => Role::Stop,
            Level::Warn => Role::Warn,
            Level::Note => Role::Note,
        };
        for (line_at, line) in lines.iter().enumerate() {
            if y >= end {
                return;
            }
            let last = line_at + 1 == lines.len();
            let role_of_text = if last || *accepted {
                Role::Dim
            } else {
                Role::Plain
            };
            if line_at == 0 {
                canvas.text(
                    1,
                    y,
                    &level.word()[..1].to_uppercase(),
                    if *accepted { Role::Dim } else { role },
                );
            }
            canvas.text(3, y, line, role_of_text);
            if index == at {
                canvas.set(0, y, canvas.glyphs().signs.edge_front, Role::Title);
            }
            y += 1;
        }
        y += 1;
    }
    let _ = app;
}
