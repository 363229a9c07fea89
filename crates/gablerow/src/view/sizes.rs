//! The sizes, each with its value, beside a drawing that answers.

use gablerow_core::edit::{Content, FreeLine, PartLine};
use gablerow_core::measure::Length;

use super::canvas::Canvas;
use super::words;
use crate::app::{App, Asked};
use crate::echo;
use crate::scene::{self, Scene};
use crate::size_line::{self, SizeLine, Whose, lines};
use crate::theme::Role;

/// Lines kept below the list: a blank, both units and a remark, the balance in two.
const LINES_BELOW: u16 = 5;
/// Where lengths begin.
const VALUES: u16 = 15;
/// Where choices begin, whose names are shorter than their words.
const CHOICES: u16 = 12;

/// Draws the list; the line one is on shows what is typed into it, and is always in sight.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &Scene, at: usize) {
    canvas.text(0, 0, &format!("{} sizes", scene.cabinet.name), Role::Title);
    let (width, height) = (canvas.width(), canvas.height().saturating_sub(1));
    let lines = lines(app);
    let rows = rows(&lines);
    let here = rows
        .iter()
        .position(|row| matches!(row, Row::Line(line, _) if *line == at));
    // What the line comes to in both units, and what would balance, stay in sight below the list.
    let lines_shown = usize::from(height.saturating_sub(LINES_BELOW)).max(1);
    let from = here.unwrap_or(0).saturating_sub(lines_shown - 1);
    let mut list = canvas.part(0, 1, width, height);
    let mut y = 0;
    for row in rows.iter().skip(from).take(lines_shown) {
        match *row {
            Row::Heading(whose) => drop(list.text(0, y, &heading(app, scene, whose), Role::Dim)),
            Row::Line(line, item) => size_line(&mut list, app, scene, (y, item), line == at),
        }
        y += 1;
    }
    let standing = lines.get(at).and_then(|line| length(app, scene, *line));
    let (both, remark) = echo::both(app, standing);
    let y = list.paragraph(y + 1, 0, &both, Role::Plain);
    let y = list.paragraph(y, 0, remark.unwrap_or_default(), Role::Warn);
    list.paragraph(y, 0, &balance(app, scene), Role::Dim);
}

/// What stands in one line of the list.
#[derive(Clone, Copy)]
enum Row {
    /// Over the lines of one owner.
    Heading(Whose),
    /// A line, and its place among the lines.
    Line(usize, SizeLine),
}

/// The lines under their headings; the cabinet's own need none while they stand first.
fn rows(lines: &[SizeLine]) -> Vec<Row> {
    let mut rows = Vec::new();
    let mut whose = Whose::Cabinet;
    for (at, line) in lines.iter().enumerate() {
        if line.whose() != whose {
            whose = line.whose();
            rows.push(Row::Heading(whose));
        }
        rows.push(Row::Line(at, *line));
    }
    rows
}

fn heading(app: &App, scene: &Scene, whose: Whose) -> String {
    match whose {
        Whose::Part(part) => words::part(scene.cabinet, &scene.layout, part),
        Whose::Owner(thing) => scene::owner(scene.cabinet, &scene.layout, thing, app.desk.job.unit),
        Whose::Cabinet => format!("cabinet {}", scene.cabinet.name),
        Whose::Job => "whole job".to_owned(),
    }
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
    if let Some(Asked::Line(line)) = &app.asked
        && here
        && line.purpose.is_in_place()
    {
        return super::foot::field(
            &mut canvas.part(VALUES, y, canvas.width().saturating_sub(VALUES), 1),
            line,
        );
    }
    let job = &app.desk.job;
    let own = size_line::own_value(app, item).map(|(_, value)| value);
    let chosen = match item {
        SizeLine::Choice(choice) => Some(choice.value(job, scene.cabinet).to_owned()),
        SizeLine::Part(part, PartLine::Choice(choice)) => {
            choice.value(scene.cabinet, part, job.unit)
        }
        SizeLine::Free(thing, FreeLine::Choice(choice)) => {
            choice.value(scene.cabinet, thing).map(str::to_owned)
        }
        SizeLine::Free(thing, FreeLine::Purpose) => {
            let thing = scene.cabinet.free_thing(thing);
            thing.map(|thing| thing.purpose.to_string())
        }
        SizeLine::Shelf(..) | SizeLine::Front(..) => own.as_ref().map(|own| own.shown(job.unit)),
        _ => None,
    };
    let (x, text) = match (chosen, length(app, scene, item)) {
        (Some(words), _) if own.is_some_and(|own| own.is_typed()) => (VALUES, words),
        (Some(words), _) => (CHOICES, words),
        (None, Some(length)) => (VALUES, length.show(job.unit).to_string()),
        (None, None) => (VALUES, "none".to_owned()),
    };
    canvas.text(x, y, &text, role);
}

/// The length of a line; none for a choice, and for what this cabinet or part has not.
fn length(app: &App, scene: &Scene, item: SizeLine) -> Option<Length> {
    match item {
        SizeLine::Measure(measure) => measure.read(&app.desk.job, scene.cabinet),
        SizeLine::Part(part, PartLine::Measure(measure)) => {
            measure.read(scene.cabinet, &scene.layout, part)
        }
        SizeLine::Free(thing, FreeLine::Measure(measure)) => {
            measure.read(&app.desk.job, scene.cabinet, thing)
        }
        SizeLine::Shelf(..) | SizeLine::Front(..) => match size_line::own_value(app, item)?.1.now {
            Content::Length(length) => Some(length),
            Content::MaybeLength(length) => length,
            _ => None,
        },
        _ => None,
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
