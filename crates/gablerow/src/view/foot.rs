//! The last line: what is asked, else what is said, else the hints.

use std::borrow::Cow;

use gablerow_core::check::Level;
use gablerow_papers::wrap;
use unicode_width::UnicodeWidthStr;

use super::canvas::Canvas;
use super::words::{self, level_role};
use crate::action::Action;
use crate::app::{App, Asked, Line, Pane, Screen, WIDE_FROM};
use crate::keymap::{self, Binding, Context};
use crate::scene::Scene;
use crate::theme::Role;

/// Draws the last line of the screen.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &Scene) {
    if let Some(Asked::Line(asked)) = &app.asked {
        return typing(canvas, app, asked);
    }
    let y = canvas.height() - 1;
    let width = canvas.width();
    let mut line = canvas.part(0, y, width, 1);
    match (&app.asked, &app.notice) {
        (Some(Asked::Line(_)), _) => {}
        (Some(Asked::Leaving), _) => asking(&mut line, app, "not saved yet"),
        (Some(Asked::Found(count)), _) => asking(
            &mut line,
            app,
            &format!("{count} unsaved changes found, and shown here"),
        ),
        (Some(Asked::Occupied { what, .. }), _) => asking(&mut line, app, what),
        (Some(Asked::PapersThere(names)), _) => {
            let text = match names.as_slice() {
                [only] => format!("{only} is there with other contents"),
                all => format!("{} papers are there with other contents", all.len()),
            };
            asking(&mut line, app, &text);
        }
        (None, Some(notice)) => {
            let role = if notice.is_refusal {
                Role::Warn
            } else {
                Role::Strong
            };
            let after = line.text(0, 0, &format!(" {} ", notice.text), role);
            hints(&mut line, app, after + 1);
        }
        (None, None) if is_entering(app) => entry(&mut line, app),
        (None, None) if app.screen == Screen::Book && app.context() == Context::Face => {
            let state = if width < WIDE_FROM {
                state(&mut line, app, scene)
            } else {
                0
            };
            let mut line = line.part(0, 0, width - state, 1);
            let room = line.width().saturating_sub(help_width(&line, app));
            let after = line.text(0, 0, &place(app, scene, room), Role::Strong);
            hints(&mut line, app, after + 1);
        }
        (None, None) => hints(&mut line, app, 0),
    }
}

/// How many findings are open, and whether the job is saved, at the right end: both walls leave no other room for it. Gives
/// the columns it takes, and a blank before it.
fn state(line: &mut Canvas, app: &App, scene: &Scene) -> u16 {
    let (saved, role) = words::saved(app);
    line.text_right(0, saved, role);
    let mut wide = saved.width() + 2;
    for level in Level::ALL.into_iter().rev() {
        let count = words::open_findings(&scene.findings, level).count();
        if count > 0 {
            let text = format!("{count} {}", level.word());
            let before = line
                .width()
                .saturating_sub(u16::try_from(wide).unwrap_or(u16::MAX));
            let mut part = line.part(0, 0, before, 1);
            part.text_right(0, &text, level_role(level));
            wide += text.width() + 1;
        }
    }
    u16::try_from(wide).unwrap_or(u16::MAX).min(line.width())
}

/// The columns of the key to all keys, and a blank before it.
fn help_width(line: &Canvas, app: &App) -> u16 {
    let all = keymap::hints(app.context());
    let help = all.iter().find(|binding| binding.action == Action::Help);
    help.map_or(0, |help| hint(line, help).2 + 1)
}

/// The numbers of the cursor, short, as many of them as have room.
fn place(app: &App, scene: &Scene, room: u16) -> String {
    let (unit, drawing, hole) = (app.desk.job.unit, &scene.drawing, app.spot.hole);
    let height = drawing.height(hole);
    let setback = scene.row(app.spot.row).map_or(String::new(), |row| {
        format!("{} front, ", row.x.short(unit))
    });
    let at = format!(" {} hole {hole}", scene.cabinet.name);
    let (foot, head) = (height.short(unit), (drawing.length - height).short(unit));
    let ways = [
        format!("{at}: {setback}{foot} foot, {head} head "),
        format!("{at}: {setback}{foot} foot "),
        format!("{at}: {foot} foot "),
    ];
    let fits = |way: &String| way.width() <= usize::from(room);
    ways.into_iter().find(fits).unwrap_or(at)
}

/// As many hints as fit whole.
fn hints(line: &mut Canvas, app: &App, from: u16) {
    let room = line.width().saturating_sub(from);
    let mut all = keymap::hints(app.context());
    // What is one or the other is not taken whole.
    let is_choice = matches!(app.pane, Some(Pane::Proposals { wish, .. }) if !wish.goes_together());
    all.retain(|binding| !is_choice || binding.action != Action::TakeAll);
    let (mut shown, _) = fitting(line, room, &all);
    // Whatever else has no room, the key to all keys has: the last hints give way to it.
    let help = all.iter().find(|binding| binding.action == Action::Help);
    if let Some(help) = help.filter(|help| !shown.contains(help)) {
        let needed = hint(line, help).2;
        while width_of(line, &shown).saturating_add(needed) > room && shown.pop().is_some() {}
        shown.push(help);
    }
    hint_each(line, from, shown);
}

/// The hints of a face that have no room on the last line, from the line `y` down: there they may have some.
pub(super) fn further_hints(canvas: &mut Canvas, app: &App, y: u16) {
    if app.context() != Context::Face {
        return;
    }
    let all = keymap::hints(Context::Face);
    let (_, mut left) = fitting(canvas, app.size.0, &all);
    for y in y..canvas.height() {
        let (shown, rest) = fitting(canvas, canvas.width(), &left);
        let width = canvas.width();
        hint_each(&mut canvas.part(0, y, width, 1), 0, shown);
        left = rest;
    }
}

type Hints = Vec<&'static Binding>;

/// The first hints that fit whole, and the rest.
fn fitting(canvas: &Canvas, room: u16, hints: &[&'static Binding]) -> (Hints, Hints) {
    let count = (1..=hints.len())
        .take_while(|&count| width_of(canvas, &hints[..count]) <= room)
        .count();
    let (shown, rest) = hints.split_at(count);
    (shown.to_vec(), rest.to_vec())
}

/// The columns that hints take.
fn width_of(canvas: &Canvas, hints: &[&Binding]) -> u16 {
    let wide = hints.iter().map(|binding| hint(canvas, binding).2);
    wide.fold(0, u16::saturating_add)
}

fn hint_each<'a>(line: &mut Canvas, from: u16, bindings: impl IntoIterator<Item = &'a Binding>) {
    let mut x = from;
    for binding in bindings {
        let (key, label, wide) = hint(line, binding);
        if x.saturating_add(wide) > line.width() {
            break;
        }
        x = line.text(x, 0, &key, Role::HintKey);
        x = line.text(x + 1, 0, label, Role::HintLabel) + 1;
    }
}

/// A key, what it does, and the columns both take with the blanks after them.
fn hint(line: &Canvas, binding: &Binding) -> (Cow<'static, str>, &'static str, u16) {
    let key = binding.key.name(line.charset());
    // Without arrows a key may be called what it does.
    let label = Some(binding.action.label())
        .filter(|&label| label != key)
        .unwrap_or_default();
    let wide = key.width() + label.width() + 2;
    (key, label, u16::try_from(wide).unwrap_or(u16::MAX))
}

/// A question, cut so that all of its keys are seen.
fn asking(line: &mut Canvas, app: &App, text: &str) {
    let hints_wide = width_of(line, &keymap::hints(app.context()));
    let room = line.width().saturating_sub(hints_wide + 1);
    let mut question = line.part(0, 0, room, 1);
    let after = question.text(0, 0, &format!(" {text} "), Role::Warn);
    hints(line, app, after + 1);
}

/// Whether something has been typed toward the next fitting, where the next key can be one.
fn is_entering(app: &App) -> bool {
    let has_entry = app.entry.count.is_some() || app.entry.mark.is_some();
    has_entry && app.context() == Context::Face
}

/// What was typed toward the next fitting, and the keys that take it.
fn entry(line: &mut Canvas, app: &App) {
    use Action::{Centred, FreeRow, GoTo, Hinge, Leave, Pins, Runner, Shelf};
    let hole = app.spot.hole;
    let (text, takers): (_, &[Action]) = match (app.entry.mark, app.entry.count) {
        (Some(mark), _) => {
            let run = format!(" run {}-{} ", mark.min(hole), mark.max(hole));
            (run, &[Pins, Hinge, Runner, Shelf, FreeRow, Leave])
        }
        (None, count) => {
            let number = format!(" {} ", count.unwrap_or(0));
            (number, &[GoTo, Pins, Centred, Hinge, Runner, Shelf, Leave])
        }
    };
    let after = line.text(0, 0, &text, Role::MarkedRun);
    let bindings = takers
        .iter()
        .filter_map(|&action| keymap::binding_of(Context::Face, action));
    hint_each(line, after + 1, bindings);
}

/// The columns of what is typed while a complaint stands beside it, and the fewest beside a question.
const COMPLAINED_FIELD: u16 = 24;
/// What the keys of a line take.
const LINE_HINTS: u16 = 22;

/// What is asked, or what is wrong with the answer, and what is typed: in the last line where they fit, else above it.
fn typing(canvas: &mut Canvas, app: &App, asked: &Line) {
    let question = asked.purpose.question(&app.desk.job);
    let (width, last) = (canvas.width(), canvas.height() - 1);
    let wide = |text: &str| {
        u16::try_from(text.width())
            .unwrap_or(u16::MAX)
            .saturating_add(3)
    };
    let fits = match &asked.complaint {
        Some(complaint) if asked.purpose.is_in_place() => wide(complaint) <= width,
        Some(complaint) => wide(complaint).saturating_add(COMPLAINED_FIELD) <= width,
        None => wide(&question).saturating_add(COMPLAINED_FIELD + LINE_HINTS) <= width,
    };
    if fits || asked.complaint.is_none() && asked.purpose.is_in_place() {
        typing_beside(&mut canvas.part(0, last, width, 1), app, asked, &question);
        return;
    }
    let (text, role) = match &asked.complaint {
        Some(complaint) => (complaint, Role::Warn),
        None => (&question, Role::Title),
    };
    let lines = wrap(text, usize::from(width.saturating_sub(2)));
    let count = u16::try_from(lines.len()).unwrap_or(last).min(last);
    let first = last - count;
    let mut above = canvas.part(0, first, width, count);
    above.clear(Role::Plain);
    for (y, line) in (0..count).zip(&lines) {
        above.text(1, y, line, role);
    }
    let mut line = canvas.part(0, last, width, 1);
    match asked.purpose.is_in_place() {
        true => hints(&mut line, app, 0),
        false => {
            let room = width.saturating_sub(LINE_HINTS);
            field(&mut line.part(1, 0, room.saturating_sub(1), 1), asked);
            hints(&mut line, app, room + 1);
        }
    }
}

/// The same in one line.
fn typing_beside(line: &mut Canvas, app: &App, asked: &Line, question: &str) {
    // What is wrong with a length names the length itself; and a question gives way to what is wrong with its answer.
    let is_named = asked.complaint.as_ref().is_some_and(|complaint| {
        let all = question.width() + usize::from(COMPLAINED_FIELD) + complaint.width() + 3;
        asked.purpose.is_in_place() || all > usize::from(line.width())
    });
    let mut x = match is_named {
        true => 0,
        false => line.text(0, 0, &format!(" {question} "), Role::Title),
    };
    // A length is typed where it stands; the question and a complaint are said here.
    if !asked.purpose.is_in_place() {
        let wide = if asked.complaint.is_some() {
            COMPLAINED_FIELD
        } else {
            line.width().saturating_sub(x + LINE_HINTS)
        };
        let width = wide.min(line.width().saturating_sub(x));
        field(&mut line.part(x, 0, width, 1), asked);
        x += width;
    }
    match &asked.complaint {
        Some(complaint) => {
            line.text(x + 1, 0, complaint, Role::Warn);
        }
        None => hints(line, app, x + 1),
    }
}

/// The field, with its cursor.
pub(super) fn field(canvas: &mut Canvas, asked: &Line) {
    let role = if asked.complaint.is_some() {
        Role::FieldBad
    } else {
        Role::Field
    };
    canvas.clear(role);
    let (text, cursor) = asked
        .field
        .visible(usize::from(canvas.width().saturating_sub(1)));
    canvas.text(0, 0, &text, role);
    if asked.field.is_selected() {
        for x in 0..u16::try_from(text.chars().count()).unwrap_or(0) {
            canvas.over(x, 0, Role::Cursor);
        }
    } else {
        canvas.over(u16::try_from(cursor).unwrap_or(0), 0, Role::Cursor);
    }
}
