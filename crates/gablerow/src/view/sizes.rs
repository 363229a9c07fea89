//! The sizes, each with its value, beside a drawing that answers.

use gablerow_core::edit::{Choice, Measure};

use super::canvas::Canvas;
use crate::app::{App, Asked, Purpose};
use crate::scene::Scene;
use crate::size_line::{SizeLine, lines};
use crate::theme::Role;

/// Where lengths begin.
const VALUES: u16 = 13;
/// Where choices begin, whose names are shorter than their words.
const CHOICES: u16 = 11;

/// Draws the list; the line one is on shows what is typed into it.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &Scene, at: usize) {
    canvas.text(0, 0, &format!("{} sizes", scene.cabinet.name), Role::Title);
    let mut y = 1;
    for (line, item) in lines().enumerate() {
        if item == SizeLine::Measure(Measure::Board) {
            canvas.text(0, y, "whole job", Role::Dim);
            y += 1;
        }
        let here = line == at;
        let name = match item {
            SizeLine::Measure(measure) => measure.words(),
            SizeLine::Choice(choice) => choice.words(),
        };
        let sign = if here {
            canvas.glyphs().arrow_right
        } else {
            ' '
        };
        canvas.text(
            0,
            y,
            &format!("{sign}{name}"),
            if here { Role::Strong } else { Role::Plain },
        );
        match item {
            SizeLine::Measure(measure) => value(canvas, app, scene, measure, y, here),
            SizeLine::Choice(choice) => choice_value(canvas, app, scene, choice, y),
        }
        y += 1;
    }
    let y = canvas.paragraph(y + 1, 0, &both(app, scene, at), Role::Plain);
    canvas.paragraph(y, 0, &balance(app, scene), Role::Dim);
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

fn choice_value(canvas: &mut Canvas, app: &App, scene: &Scene, choice: Choice, y: u16) {
    canvas.text(
        CHOICES,
        y,
        choice.value(&app.desk.job, scene.cabinet),
        Role::Plain,
    );
}

/// The length one is on, in both units.
fn both(app: &App, scene: &Scene, at: usize) -> String {
    let job = &app.desk.job;
    match lines().nth(at) {
        Some(SizeLine::Measure(measure)) => measure
            .read(job, scene.cabinet)
            .map(|length| length.both(job.unit).to_string())
            .unwrap_or_default(),
        _ => String::new(),
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
