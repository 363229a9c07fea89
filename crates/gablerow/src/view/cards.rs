//! The cards and the house defaults: a list on the left, on the right what the line holds, who rests on it.

use gablerow_core::edit::Content;
use gablerow_core::measure::Length;

use super::canvas::Canvas;
use crate::app::{App, Asked, Purpose};
use crate::card_line::{self, CardLine, CardsAt, DetailLine};
use crate::echo;
use crate::scene::Scene;
use crate::theme::Role;

/// From this many columns on the list stands beside the values; below, one of the two has the screen.
const BESIDE_FROM: u16 = 72;
/// Columns of the list where it stands beside the values.
const LIST: u16 = 23;
/// Where values begin, behind the longest name of one.
const VALUES: u16 = 22;
/// Columns that an origin takes, at the right edge.
const ORIGINS: u16 = 12;
/// Lines below the values: both units, a remark, who rests on it.
const BELOW: u16 = 4;

/// Draws the page.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &Scene, at: CardsAt) {
    let job = &app.desk.job;
    let lines = card_line::lines(job);
    let Some(line) = lines.get(at.line) else {
        return;
    };
    let (width, height) = (canvas.width(), canvas.height().saturating_sub(1));
    let beside = width >= BESIDE_FROM;
    let list_width = if beside { LIST } else { width };
    if beside || at.detail.is_none() {
        list(&mut canvas.part(0, 0, list_width, height), app, &lines, at);
    }
    let x = if beside { LIST + 1 } else { 0 };
    if beside || at.detail.is_some() {
        let mut part = canvas.part(x, 0, width - x, height);
        detail(&mut part, app, scene, line, at);
    }
}

/// The list, under a heading for each kind; what the house defaults name is marked.
fn list(canvas: &mut Canvas, app: &App, lines: &[CardLine], at: CardsAt) {
    canvas.text(1, 0, "cards", Role::Title);
    let mut rows = Vec::new();
    let mut kind = None;
    for (index, line) in lines.iter().enumerate() {
        if line.kind() != kind {
            kind = line.kind();
            rows.extend(kind.map(|kind| Row::Heading(kind.plural().to_owned())));
        }
        rows.push(Row::Line(index));
    }
    let (width, height) = (canvas.width(), canvas.height().saturating_sub(1));
    let mut part = canvas.part(0, 1, width, height);
    for (y, row) in in_sight(&rows, at.line, height) {
        match row {
            Row::Heading(text) => drop(part.text(1, y, text, Role::Dim)),
            Row::Line(index) => {
                let is_here = *index == at.line;
                let line = &lines[*index];
                let default = line
                    .card()
                    .is_some_and(|card| app.desk.job.is_default(card));
                let role = role(is_here && at.detail.is_none(), is_here);
                let sign = pointer(&part, is_here);
                let mark = if default { '*' } else { ' ' };
                part.text(0, y, &format!("{sign}{mark}{}", line.words()), role);
            }
        }
    }
}

/// A row of a list: a heading, or a line by its place.
enum Row {
    Heading(String),
    Line(usize),
}

/// The rows that are shown, each with its line on the screen, so that the one at `at` is.
fn in_sight(rows: &[Row], at: usize, height: u16) -> impl Iterator<Item = (u16, &Row)> {
    let here = rows
        .iter()
        .position(|row| matches!(row, Row::Line(line) if *line == at));
    let from = (here.unwrap_or(0) + 1).saturating_sub(usize::from(height));
    (0..height).zip(rows.iter().skip(from))
}

fn pointer(canvas: &Canvas, is_here: bool) -> char {
    if is_here {
        canvas.glyphs().arrow_right
    } else {
        ' '
    }
}

/// What is acted on steps forward; where one came from is kept in sight.
fn role(is_acted_on: bool, is_here: bool) -> Role {
    match (is_acted_on, is_here) {
        (true, _) => Role::Strong,
        (false, true) => Role::Title,
        (false, false) => Role::Plain,
    }
}

/// What the line holds, and below it what there is to say of the value one is on and of the card.
fn detail(canvas: &mut Canvas, app: &App, scene: &Scene, line: &CardLine, at: CardsAt) {
    let job = &app.desk.job;
    let title = match line {
        CardLine::House => "house defaults of this job".to_owned(),
        CardLine::Card(card) => match job.cards.card(card) {
            Some(whole) => format!("{card}: {}", whole.title()),
            None => card.to_string(),
        },
    };
    canvas.text(0, 0, &title, Role::Title);
    let details = card_line::details(job, scene.cabinet, line);
    let rows = detail_rows(&details, scene.cabinet.name.as_str());
    let (width, height) = (canvas.width(), canvas.height().saturating_sub(1 + BELOW));
    let mut part = canvas.part(0, 1, width, height);
    for (y, row) in in_sight(&rows, at.detail.unwrap_or(0), height) {
        match row {
            Row::Heading(text) => drop(part.text(0, y, text, Role::Dim)),
            Row::Line(index) => {
                let is_here = at.detail == Some(*index);
                detail_line(&mut part, app, &details[*index], y, is_here);
            }
        }
    }
    let y = canvas.height().saturating_sub(BELOW);
    let standing = at.detail.and_then(|detail| length_of(details.get(detail)?));
    let (both, remark) = echo::both(app, standing);
    canvas.text(0, y, &both, Role::Plain);
    if let Some(remark) = remark {
        let mut below = canvas.part(0, y + 1, width, BELOW - 1);
        below.paragraph(0, 0, remark, Role::Warn);
    } else {
        let mut below = canvas.part(0, y + 1, width, BELOW - 1);
        below.paragraph(0, 0, &resting(app, line), Role::Dim);
    }
}

/// The rows of the right side: a heading for each group of the house defaults, and for the parts of the cabinet in sight.
fn detail_rows(details: &[DetailLine], cabinet: &str) -> Vec<Row> {
    let mut rows = Vec::new();
    let mut group = String::new();
    for (index, detail) in details.iter().enumerate() {
        let own = match detail {
            DetailLine::Value(value) => value.group.to_owned(),
            DetailLine::Seat(..) => format!("in {cabinet}, of"),
        };
        if own != group {
            rows.push(Row::Heading(own.clone()));
            group = own;
        }
        rows.push(Row::Line(index));
    }
    rows
}

fn length_of(detail: &DetailLine) -> Option<Length> {
    match detail {
        DetailLine::Value(value) => match value.now {
            Content::Length(length) => Some(length),
            Content::MaybeLength(length) => length,
            _ => None,
        },
        DetailLine::Seat(..) => None,
    }
}

fn detail_line(canvas: &mut Canvas, app: &App, detail: &DetailLine, y: u16, is_here: bool) {
    let role = role(is_here, is_here);
    let sign = pointer(canvas, is_here);
    canvas.text(0, y, &format!("{sign}{}", detail.words()), role);
    let room = canvas.width().saturating_sub(VALUES);
    let value = match detail {
        DetailLine::Seat(_, cards) => {
            let ids: Vec<String> = cards.iter().map(ToString::to_string).collect();
            canvas.text(VALUES, y, &ids.join(", "), role);
            return;
        }
        DetailLine::Value(value) => value,
    };
    if let (Some(Asked::Line(line)), true) = (&app.asked, is_here)
        && matches!(line.purpose, Purpose::Value { .. })
    {
        return super::foot::field(&mut canvas.part(VALUES, y, room, 1), line);
    }
    let room = match value.origin {
        Some(_) => room.saturating_sub(ORIGINS),
        None => room,
    };
    let shown = value.shown(app.desk.job.unit);
    canvas.part(VALUES, y, room, 1).text(0, 0, &shown, role);
    if let Some(origin) = value.origin {
        let role = if origin.is_unproved() {
            Role::Note
        } else {
            Role::Good
        };
        canvas.text_right(y, origin.words(), role);
    }
}

/// Which cabinets rest on the line, in words.
fn resting(app: &App, line: &CardLine) -> String {
    let job = &app.desk.job;
    let CardLine::Card(card) = line else {
        return "the whole job goes by these".to_owned();
    };
    let names: Vec<&str> = job
        .resting_on(card)
        .iter()
        .map(|name| name.as_str())
        .collect();
    let resting = match names.len() {
        0 => "nothing rests on it".to_owned(),
        1 => format!("{} rests on it", names[0]),
        _ => format!("{} rest on it", names.join(", ")),
    };
    match job.is_default(card) {
        true => format!("{resting}; * a house default"),
        false => resting,
    }
}
