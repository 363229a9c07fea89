//! The last line: what is asked, else what is said, else the hints.

use super::canvas::Canvas;
use crate::app::{App, Asked, Line, Purpose, Screen};
use crate::keymap;
use crate::scene::Scene;
use crate::theme::Role;

/// Draws the last line of the screen.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &Scene) {
    let y = canvas.height() - 1;
    let width = canvas.width();
    let mut line = canvas.part(0, y, width, 1);
    match (&app.asked, &app.notice) {
        (Some(Asked::Line(asked)), _) => typing(&mut line, app, asked),
        (Some(Asked::Leaving), _) => asking(&mut line, app, "not saved yet"),
        (Some(Asked::Found(count)), _) => asking(
            &mut line,
            app,
            &format!("{count} unsaved changes found, and shown here"),
        ),
        (Some(Asked::Occupied { what, .. }), _) => asking(&mut line, app, what),
        (None, _) if app.entry.count.is_some() || app.entry.mark.is_some() => entry(&mut line, app),
        (None, Some(notice)) => {
            let role = if notice.is_refusal {
                Role::Warn
            } else {
                Role::Strong
            };
            let after = line.text(0, 0, &format!(" {} ", notice.text), role);
            hints(&mut line, app, after + 1);
        }
        // Both walls leave no room for the numbers of the cursor but this.
        (None, None) if app.screen == Screen::Book && app.pane.is_none() => {
            let after = line.text(0, 0, &place(app, scene), Role::Strong);
            hints(&mut line, app, after + 1);
        }
        (None, None) => hints(&mut line, app, 0),
    }
}

/// The numbers of the cursor, short.
fn place(app: &App, scene: &Scene) -> String {
    let (unit, drawing, hole) = (app.desk.job.unit, &scene.drawing, app.spot.hole);
    let height = drawing.height(hole);
    let setback = scene.row(app.spot.row).map_or(String::new(), |row| {
        format!("{} from front, ", row.x.show(unit))
    });
    let name = &scene.cabinet.name;
    format!(
        " {name} hole {hole}: {setback}{} foot, {} head ",
        height.show(unit),
        (drawing.length - height).show(unit)
    )
}

/// As many hints as fit whole.
fn hints(line: &mut Canvas, app: &App, from: u16) {
    let mut x = from;
    for binding in keymap::hints(app.context()) {
        let key = binding.key.name(line.charset());
        // Without arrows a key may be called what it does.
        let label = Some(binding.action.label()).filter(|&label| label != key);
        let label = label.unwrap_or_default();
        let wide = u16::try_from(key.chars().count() + label.len() + 2).unwrap_or(u16::MAX);
        if x.saturating_add(wide) > line.width() {
            break;
        }
        x = line.text(x, 0, &key, Role::HintKey);
        x = line.text(x + 1, 0, label, Role::HintLabel) + 1;
    }
}

/// A question, cut so that all of its keys are seen.
fn asking(line: &mut Canvas, app: &App, text: &str) {
    let hints_wide = hints_width(line, app);
    let room = line.width().saturating_sub(hints_wide + 1);
    let mut question = line.part(0, 0, room, 1);
    let after = question.text(0, 0, &format!(" {text} "), Role::Warn);
    hints(line, app, after + 1);
}

/// The columns that all hints of the place take.
fn hints_width(line: &Canvas, app: &App) -> u16 {
    let wide = |binding: &&keymap::Binding| {
        let key = binding.key.name(line.charset());
        key.chars().count() + binding.action.label().len() + 2
    };
    let all: usize = keymap::hints(app.context()).iter().map(wide).sum();
    u16::try_from(all).unwrap_or(u16::MAX)
}

/// What was typed toward the next fitting.
fn entry(line: &mut Canvas, app: &App) {
    let hole = app.spot.hole;
    let text = match (app.entry.mark, app.entry.count) {
        (Some(mark), _) => format!(" run {}-{} ", mark.min(hole), mark.max(hole)),
        (None, Some(count)) => format!(" {count} "),
        (None, None) => String::new(),
    };
    let after = line.text(0, 0, &text, Role::MarkedRun);
    let next = match app.entry.mark {
        Some(_) => "now s shelf zone, h hinge, r runner or l shelf; Esc drops it",
        None => "Enter goes to that hole; s h r l c set so many; Esc drops it",
    };
    line.text(after + 1, 0, next, Role::HintLabel);
}

fn typing(line: &mut Canvas, app: &App, asked: &Line) {
    let mut x = line.text(
        0,
        0,
        &format!(" {} ", asked.purpose.question(&app.desk.job)),
        Role::Title,
    );
    // A length is typed where it stands; the question and a complaint are said here.
    if !matches!(asked.purpose, Purpose::Measure(_)) {
        let wide = if asked.complaint.is_some() {
            24
        } else {
            line.width().saturating_sub(x + 22)
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
