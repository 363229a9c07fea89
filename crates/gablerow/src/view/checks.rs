//! What the checks have to say of a cabinet, whole.

use gablerow_core::check::Finding;
use gablerow_papers::wrap;

use super::canvas::Canvas;
use super::words::level_role;
use crate::scene::Scene;
use crate::theme::Role;

/// Draws the list; the finding one is on is marked, and always in sight.
pub(super) fn draw(canvas: &mut Canvas, scene: &Scene, at: usize) {
    let after = canvas.text(1, 0, &format!("{} checks", scene.cabinet.name), Role::Title);
    if scene.findings.is_empty() {
        canvas.text(after + 2, 0, "nothing to say", Role::Good);
        return;
    }
    let place = format!("{} of {}", at + 1, scene.findings.len());
    canvas.text(after + 2, 0, &place, Role::Dim);
    let room = usize::from(canvas.width().saturating_sub(4));
    let blocks: Vec<Vec<String>> = scene
        .findings
        .iter()
        .map(|finding| block(scene, finding, room))
        .collect();
    let (width, height) = (canvas.width(), canvas.height().saturating_sub(3));
    let mut list = canvas.part(0, 2, width, height);
    let mut y = 0;
    let from = first_shown(&blocks, at, usize::from(height));
    for (index, (said, lines)) in scene.findings.iter().zip(&blocks).enumerate().skip(from) {
        y = finding(&mut list, said, lines, y, index == at) + 1;
    }
}

/// The lines of a finding: where and what, then its rule and why it was accepted.
fn block(scene: &Scene, finding: &Finding, room: usize) -> Vec<String> {
    let place = finding
        .place
        .face
        .map(|face| format!("{}. ", scene.layout.names.face(face)))
        .unwrap_or_default();
    let mut lines = wrap(&format!("{place}{}", finding.message), room);
    let rule = finding.rule_name();
    let said = match &finding.accepted {
        Some(reason) => format!("{rule}, {}: {reason}", finding.level.quieted()),
        None => rule.to_owned(),
    };
    lines.extend(wrap(&said, room));
    lines
}

/// The first finding to draw so that the one at `at` is whole.
fn first_shown(blocks: &[Vec<String>], at: usize, height: usize) -> usize {
    let at = at.min(blocks.len().saturating_sub(1));
    let fits = |from: &usize| {
        blocks[*from..=at]
            .iter()
            .map(|lines| lines.len() + 1)
            .sum::<usize>()
            <= height + 1
    };
    (0..=at).find(fits).unwrap_or(at)
}

/// Draws one finding; gives the line after it.
fn finding(
    canvas: &mut Canvas,
    finding: &Finding,
    lines: &[String],
    mut y: u16,
    is_here: bool,
) -> u16 {
    let quiet = finding.accepted.is_some();
    let sign = finding.level.word()[..1].to_uppercase();
    canvas.text(
        1,
        y,
        &sign,
        if quiet {
            Role::Dim
        } else {
            level_role(finding.level)
        },
    );
    for (at, line) in lines.iter().enumerate() {
        let is_last = at + 1 == lines.len();
        canvas.text(
            3,
            y,
            line,
            if is_last || quiet {
                Role::Dim
            } else {
                Role::Plain
            },
        );
        if is_here {
            canvas.set(0, y, canvas.glyphs().signs.edge_front, Role::Title);
        }
        y = y.saturating_add(1);
    }
    y
}
