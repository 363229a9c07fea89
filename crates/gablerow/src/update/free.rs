//! What a face owns itself: free rows and free holes, asked for as a line; and whatever owns a hole, taken away.

use gablerow_core::edit::{Edit, FaceRun, FreeEdit, FreePlace};
use gablerow_core::job::{Datum, Edge, End, Key};
use gablerow_core::layout::Use;
use gablerow_core::measure::{Length, parse_length};

use super::{Effect, ask, edit, go_to};
use crate::app::{App, Notice, Purpose};
use crate::scene::{self, Scene, Spot};

/// Turns the panel: to its other face, at the same row and hole as near as may be.
pub(super) fn turn(app: &mut App) {
    let face = app.spot.face.behind();
    go_to(app, Spot { face, ..app.spot });
    if face.is_outside() {
        app.notice = Some(Notice::done(
            "an outside: no bay sees it; it takes free rows and free holes",
        ));
    }
}

/// Asks for the setback of a free row, with that of the cursor from the nearer edge to start from.
pub(super) fn ask_row(app: &mut App, (first, last): (i16, i16)) {
    app.entry.count = None;
    let offered = offered_setback(app).unwrap_or_default();
    ask(app, Purpose::FreeRow(first, last), &offered);
}

/// Asks for the place of a free hole, with that of the cursor to start from.
pub(super) fn ask_hole(app: &mut App) {
    app.entry.count = None;
    let unit = app.desk.job.unit;
    let height = cursor_height(app).map(|height| height.exact(unit));
    let offered = offered_setback(app).zip(height);
    let offered = offered.map(|(setback, height)| format!("{setback} at {height} foot"));
    ask(app, Purpose::FreeHole, &offered.unwrap_or_default());
}

/// `37 front` or `57 back`, whichever is nearer.
fn offered_setback(app: &App) -> Option<String> {
    let scene = Scene::at(&app.desk.job, &app.spot)?;
    let front = scene.from_front(&app.spot);
    let back = scene.drawing.depth - front;
    let (setback, edge) = if back < front {
        (back, Edge::Back)
    } else {
        (front, Edge::Front)
    };
    Some(format!(
        "{} {}",
        setback.exact(app.desk.job.unit),
        edge.word()
    ))
}

fn cursor_height(app: &App) -> Option<Length> {
    let scene = Scene::at(&app.desk.job, &app.spot)?;
    Some(scene.drawing.height(app.spot.hole))
}

/// The edit of a typed setback: `37`, `37 front`, `57 back`, `57b`.
pub(super) fn row(app: &App, text: &str, (first, last): (i16, i16)) -> Result<Edit, String> {
    let run = FaceRun {
        first,
        last,
        datum: Datum::Foot,
    };
    Ok(Edit::Free {
        cabinet: app.spot.cabinet,
        change: FreeEdit::Row(setback(app, text)?, run),
    })
}

/// The edit of a typed place: `37 front at 368 foot`; without a height it is that of the cursor.
pub(super) fn hole(app: &App, text: &str) -> Result<Edit, String> {
    let at = text.to_ascii_lowercase().find("at");
    let (place, height) = match at {
        Some(at) => (&text[..at], Some(&text[at + "at".len()..])),
        None => (text, None),
    };
    let place = setback(app, place)?;
    let (end, height) = match height {
        Some(height) => {
            let ends = [("foot", End::Foot), ("head", End::Head)];
            let (number, end) = word_after(height, &ends);
            (end.unwrap_or(End::Foot), length(app, number)?)
        }
        None => (End::Foot, cursor_height(app).ok_or("this face is gone")?),
    };
    Ok(Edit::Free {
        cabinet: app.spot.cabinet,
        change: FreeEdit::Hole(place, end, height),
    })
}

/// Without a word it is from the front edge.
fn setback(app: &App, text: &str) -> Result<FreePlace, String> {
    let edges = [
        ("front", Edge::Front),
        ("back", Edge::Back),
        ("f", Edge::Front),
        ("b", Edge::Back),
    ];
    let (number, edge) = word_after(text, &edges);
    Ok(FreePlace {
        face: app.spot.face,
        edge: edge.unwrap_or(Edge::Front),
        setback: length(app, number)?,
    })
}

fn length(app: &App, text: &str) -> Result<Length, String> {
    parse_length(text, app.desk.job.unit).map_err(|wrong| wrong.to_string())
}

/// The text before one of the words, and what the word means; capitals do as well.
fn word_after<'a, T: Copy>(text: &'a str, words: &[(&str, T)]) -> (&'a str, Option<T>) {
    let text = text.trim_end();
    let folded = text.to_ascii_lowercase();
    let found = words.iter().find(|(word, _)| folded.ends_with(word));
    match found {
        Some((word, meant)) => (&text[..text.len() - word.len()], Some(*meant)),
        None => (text, None),
    }
}

/// Makes an edit; of a free row or a free hole one then stands on it, wherever it went.
pub(super) fn edit_and_follow(app: &mut App, change: &Edit) -> Vec<Effect> {
    let effects = edit(app, change);
    let Edit::Free { cabinet, change } = change else {
        return effects;
    };
    let thing = app.desk.job.cabinet(*cabinet).and_then(|cabinet| {
        Some(match change {
            FreeEdit::Row(..) => cabinet.free_rows.last()?.key,
            FreeEdit::Hole(..) => cabinet.free_holes.last()?.key,
            FreeEdit::Measure(thing, ..)
            | FreeEdit::Choose(thing, _)
            | FreeEdit::Purpose(thing, _)
            | FreeEdit::TakeAway(thing) => *thing,
        })
    });
    if let (Some(thing), false) = (thing, effects.is_empty()) {
        app.entry.mark = None;
        stand_on(app, thing);
    }
    effects
}

/// Stands on the hole of a thing that is nearest to the one one was on.
fn stand_on(app: &mut App, thing: Key) {
    let Some(scene) = Scene::at(&app.desk.job, &app.spot) else {
        return;
    };
    let dots = scene.drawing.dots.iter();
    let owns = |&(_, owner): &(Use, Key)| owner == thing;
    let number = |y| scene.drawing.nearest(y);
    let found = dots
        .filter(|dot| dot.hole.users.iter().any(owns))
        .map(|dot| (dot.hole.x, number(dot.y)))
        .min_by_key(|(_, hole)| hole.abs_diff(app.spot.hole));
    if let Some((row, hole)) = found {
        let spot = Spot {
            row,
            hole,
            ..app.spot
        };
        app.spot = spot.settled(&app.desk.job);
    }
}

/// Takes away what owns the hole here; of several owners the first by use, and the others are said.
pub(super) fn take_away(app: &mut App) -> Vec<Effect> {
    (app.entry.count, app.entry.mark) = (None, None);
    let (unit, hole, cabinet) = (app.desk.job.unit, app.spot.hole, app.spot.cabinet);
    let Some(scene) = Scene::at(&app.desk.job, &app.spot) else {
        return Vec::new();
    };
    let mut users = scene
        .dot(&app.spot)
        .map(|dot| dot.hole.users.clone())
        .unwrap_or_default();
    users.sort_by_key(|&(use_, _)| use_);
    let is_joint = |use_| matches!(use_, Use::Dowel | Use::Connector);
    let first = users.iter().position(|&(use_, _)| !is_joint(use_));
    let Some(first) = first else {
        let why = match users.is_empty() {
            true => "nothing here that could be taken away",
            false => "a joint owns this hole; it goes with its partition or shelf",
        };
        app.notice = Some(Notice::refused(why));
        return Vec::new();
    };
    let (_, fitting) = users.remove(first);
    let left: Vec<String> = users
        .iter()
        .map(|&(_, owner)| scene::owner(scene.cabinet, &scene.layout, owner, unit))
        .collect();
    let change = match scene.cabinet.free_thing(fitting) {
        Some(_) => Edit::Free {
            cabinet,
            change: FreeEdit::TakeAway(fitting),
        },
        None => Edit::NoFitting {
            cabinet,
            fitting,
            hole,
        },
    };
    let effects = edit(app, &change);
    if let (Some(notice), false) = (&mut app.notice, left.is_empty() || effects.is_empty()) {
        notice.text = format!("{}; still here: {}", notice.text, left.join(", "));
    }
    effects
}

#[cfg(test)]
mod tests;
