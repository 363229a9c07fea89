//! Where the numbers come from: the terms of the code that computed them.

use gablerow_core::sum::Sum;

use gablerow_papers::wrap;

use super::canvas::Canvas;
use crate::app::App;
use crate::scene::Scene;
use crate::theme::Role;

/// Draws the page from a line on.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &Scene, from: usize) {
    canvas.text(
        1,
        0,
        &format!("why, {} {}", scene.cabinet.name, scene.drawing.face),
        Role::Title,
    );
    let room = usize::from(canvas.width().saturating_sub(4));
    let mut lines = Vec::new();
    for (what, sum) in sums(app, scene) {
        lines.push((what, Role::Strong));
        lines.extend(
            wrap(&sum.to_string(), room)
                .into_iter()
                .map(|line| (format!("  {line}"), Role::Plain)),
        );
    }
    let height = usize::from(canvas.height().saturating_sub(2));
    let from = from.min(lines.len().saturating_sub(height));
    for (y, (line, role)) in (1..).zip(lines.iter().skip(from).take(height)) {
        canvas.text(1, y, line, *role);
    }
}

/// Every number of the face screen that was added up from others.
fn sums(app: &App, scene: &Scene) -> Vec<(String, Sum)> {
    let mut sums = Vec::new();
    let hole = app.spot.hole;
    let Some(upright) = scene.layout.upright(scene.drawing.face.panel) else {
        return sums;
    };
    let height = Sum::of("offset of hole 1", scene.layout.grid.first).plus(
        "whole pitches of 32",
        scene.layout.height(hole) - scene.layout.grid.first,
    );
    sums.push((
        format!("hole {hole} above the foot of the panel"),
        height.minus(&upright.foot),
    ));
    sums.push((
        format!("hole {hole} below the head of the panel"),
        upright.head.minus(&height),
    ));
    for row in &scene.drawing.rows {
        let (from_front, from_back) = (
            row.from_carcass.minus(&upright.front),
            upright.back.minus(&row.from_carcass),
        );
        sums.push((
            format!("{} row from the front edge", row.name.word()),
            from_front,
        ));
        sums.push((
            format!("{} row from the back edge", row.name.word()),
            from_back,
        ));
    }
    if let Some((bay, _)) = scene.bay_at(hole) {
        sums.push(("floor of the bay".to_owned(), bay.floor));
        sums.push(("ceiling of the bay".to_owned(), bay.ceiling));
        sums.push(("inner depth".to_owned(), bay.inner_depth));
    }
    sums.push((
        "length of the panel".to_owned(),
        upright.head.minus(&upright.foot),
    ));
    sums
}
