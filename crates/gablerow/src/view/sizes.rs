//! The sizes, each with its value, beside a drawing that answers.

use gablerow_core::edit::{Measure, Scope};
use gablerow_core::measure::Length;

use super::canvas::Canvas;
use crate::app::{App, Asked, Purpose};
use crate::echo;
use crate::scene::Scene;
use crate::size_line::{SizeLine, lines};
use crate::theme::Role;

/// Where lengths begin.
const VALUES: u16 = 13;
/// Where choices begin, whose names are shorter than their words.
const CHOICES: u16 = 11;

/// Draws the list; the line one is on shows what is typed into it, and is always in sight.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &Scene, at: usize) {
    canvas.text(0, 0, &format!("{} sizes", scene.cabinet.name), Role::Title);
    let (width, height) = (canvas.width(), canvas.height().saturating_sub(1));
    let rows = rows();
    let here = rows
        .iter()
        .position(|row| row.is_some_and(|(line, _)| line == at));
    let from = here
        .unwrap_or(0)
        .saturating_sub(usize::from(height).saturating_sub(1));
    let mut list = canvas.part(0, 1, width, height);
    let mut y = 0;
    for row in rows.iter().skip(from) {
        match *row {
            None => drop(list.text(0, y, "whole job", Role::Dim)),
            Some((line, item)) => size_line(&mut list, app, scene, (y, item), line == at),
        }
        y += 1;
    }
    let (both, remark) = echo::both(app, standing(app, scene, at));
    let y = list.paragraph(y + 1, 0, &both, Role::Plain);
    let y = list.paragraph(y, 0, remark.unwrap_or_default(), Role::Warn);
    list.paragraph(y, 0, &balance(app, scene), Role::Dim);
}

/// The lines with their place among them; `None` is the heading over what the whole job goes by.
fn rows() -> Vec<Option<(usize, SizeLine)>> {
    let mut rows: Vec<_> = lines().enumerate().map(Some).collect();
    let of_job = lines().position(|line| line.scope() == Scope::Job);
    rows.insert(of_job.unwrap_or(rows.len()), None);
    rows
}

fn size_line(
    canvas: &mut Canvas,
    app: &App,
    scene: &Scene,
    (y, item): (u16, SizeLine),
    here: bool,
) {
    let sign = if here {
        canvas.glyphs().arrow_right
    } else {
        ' '
    };
    let role = if here { Role::Strong } else { Role::Plain };
    canvas.text(0, y, &format!("{sign}{}", item.words()), role);
    match item {
        SizeLine::Measure(measure) => value(canvas, app, scene, measure, y, here),
        SizeLine::Choice(choice) => {
            canvas.text(CHOICES, y, choice.value(&app.desk.job, scene.cabinet), role);
        }
    }
}

fn value(canvas: &mut Canvas, app: &App, scene: &Scene, measure: Measure, y: u16, here: bool) {
    if let Some(Asked::Line(line)) = &app.asked
        && here
        && line.purpose == Purpose::Measure(measure)
    {
        return super::foot::field(
            &mut canvas.part(VALUES, y, canvas.width().saturating_sub(VALUES), 1),
            line,
        );
    }
    let job = &app.desk.job;
    let text = match measure.read(job, scene.cabinet) {
        Some(length) => length.show(job.unit).to_string(),
        None => "none".to_owned(),
    };
    canvas.text(
        VALUES,
        y,
        &text,
        if here { Role::Strong } else { Role::Plain },
    );
}

/// The length one is on.
fn standing(app: &App, scene: &Scene, at: usize) -> Option<Length> {
    match lines().nth(at)? {
        SizeLine::Measure(measure) => measure.read(&app.desk.job, scene.cabinet),
        SizeLine::Choice(_) => None,
    }
}

/// The balanced heights next to this one, which are what a height is most often typed for.
fn balance(app: &App, scene: &Scene) -> String {
    let unit = app.desk.job.unit;
    let ends = scene.cabinet.offsets.ends(scene.cabinet.size.height);
    let heights = ends.balanced_heights();
    match (ends.mismatch().is_balanced(), heights.below) {
        (true, _) => "balanced: holes from either end fall in the same places".to_owned(),
        (false, Some(below)) => {
            format!(
                "{} out; balanced heights {} and {}",
                ends.mismatch().size().show(unit),
                below.show(unit),
                heights.above.show(unit)
            )
        }
        (false, None) => format!(
            "{} out; balanced height {}",
            ends.mismatch().size().show(unit),
            heights.above.show(unit)
        ),
    }
}
