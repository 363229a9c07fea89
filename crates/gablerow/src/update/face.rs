//! On a face: walking, and setting fittings.

use gablerow_core::edit::{BayRun, Edit, has_holes};
use gablerow_core::job::{Datum, FaceId, Hand};
use gablerow_core::layout::Layout;

use super::{Effect, edit, free, front, go_to, proposals};
use crate::action::Action;
use crate::app::{App, Fitting, Notice, Pane, Screen};
use crate::scene::{self, Scene, Spot};

/// The largest number that can be typed.
const NUMBER_MOST: u16 = 999;
/// Said on an outside.
const NO_BAY: &str = "no bay sees this face; it takes free rows and free holes only";

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    match action {
        Action::Up => walk(app, 1),
        Action::Down => walk(app, -1),
        Action::Left => cross(app, Hand::Left),
        Action::Right => cross(app, Hand::Right),
        Action::Foot => to_hole(app, 1),
        Action::Head => to_hole(app, i16::MAX),
        Action::GoTo => go(app),
        Action::NextFace => step_faces(app, 1),
        Action::PreviousFace => step_faces(app, -1),
        Action::Digit(digit) => count(app, digit),
        Action::Mark => mark(app),
        Action::Pins => return set(app, Fitting::Pins),
        Action::Centred => return centred(app),
        Action::Hinge => return set(app, Fitting::Plate),
        Action::Runner => return set(app, Fitting::Runner),
        Action::Shelf => return set(app, Fitting::Shelf),
        Action::Again => return again(app),
        Action::Datum => return recount(app),
        Action::TakeAway => return free::take_away(app),
        Action::FreeRow => free::ask_row(app, span(app)),
        Action::FreeHole => free::ask_hole(app),
        Action::Turn => free::turn(app),
        Action::Mate if app.spot.face.is_outside() && app.screen == Screen::Face => {
            return refuse(app, "no bay sees this face, so it has no mate");
        }
        Action::Mate => {
            app.screen = if app.screen == Screen::Book {
                Screen::Face
            } else {
                Screen::Book
            }
        }
        Action::Front => front::open(app),
        Action::Offers => proposals::open_bay(app),
        Action::Mend => proposals::open_mend_here(app),
        Action::Sizes => app.pane = Some(Pane::Sizes(0)),
        Action::Checks => app.pane = Some(Pane::Checks(0)),
        Action::Job => app.screen = Screen::Job(app.spot.cabinet),
        Action::Leave => (app.entry.count, app.entry.mark) = (None, None),
        _ => {}
    }
    Vec::new()
}

/// Says why nothing was done.
fn refuse(app: &mut App, text: &str) -> Vec<Effect> {
    app.notice = Some(Notice::refused(text));
    Vec::new()
}

fn walk(app: &mut App, by: i16) {
    let by = by.saturating_mul(
        app.entry
            .count
            .take()
            .map_or(1, |count| i16::try_from(count).unwrap_or(i16::MAX)),
    );
    to_hole(app, app.spot.hole.saturating_add(by));
}

fn to_hole(app: &mut App, hole: i16) {
    app.entry.count = None;
    app.spot = Spot { hole, ..app.spot }.settled(&app.desk.job);
}

/// Enter goes to the typed hole; with nothing typed it does nothing.
fn go(app: &mut App) {
    let Some(number) = app.entry.count.take() else {
        return;
    };
    let last = app
        .desk
        .job
        .cabinet(app.spot.cabinet)
        .map_or(0, |cabinet| Layout::last_hole(cabinet, &app.desk.job.shop));
    match i16::try_from(number)
        .ok()
        .filter(|number| (1..=last).contains(number))
    {
        Some(hole) => to_hole(app, hole),
        None => {
            app.notice = Some(Notice::refused(format!(
                "hole {number}, but {}",
                has_holes(last)
            )));
        }
    }
}

pub(super) fn count(app: &mut App, digit: u8) {
    let typed = app
        .entry
        .count
        .unwrap_or(0)
        .saturating_mul(10)
        .saturating_add(u16::from(digit));
    app.entry.count = Some(typed.min(NUMBER_MOST)).filter(|&count| count > 0);
}

fn mark(app: &mut App) {
    app.entry.mark = match app.entry.mark {
        Some(_) => None,
        None => Some(app.spot.hole),
    };
}

/// To the next row as it is seen: a face on the right wall has its front edge on the right.
fn cross(app: &mut App, to: Hand) {
    let Some(scene) = Scene::at(&app.desk.job, &app.spot) else {
        return;
    };
    let front_left = scene.drawing.face.toward == Hand::Right;
    let deeper = (to == Hand::Right) == front_left;
    let rows = &scene.drawing.rows;
    let here = rows
        .iter()
        .position(|row| row.from_carcass.total() == app.spot.row)
        .unwrap_or(0);
    let next = if deeper {
        here.checked_add(1)
    } else {
        here.checked_sub(1)
    };
    let row = next
        .and_then(|at| rows.get(at))
        .map(|row| row.from_carcass.total());
    match (row, deeper) {
        (Some(row), _) => app.spot.row = row,
        // The backs meet in the middle of the book: past the last row the mate begins.
        (None, true) if app.shows_mate() => {
            if let Some(face) = scene.mate_face() {
                app.spot = Spot { face, ..app.spot }.settled(&app.desk.job);
            }
        }
        (None, _) => {}
    }
}

fn step_faces(app: &mut App, by: isize) {
    let faces = scene::faces(&app.desk.job);
    // From an outside one goes on as from the inside of its panel.
    let face = app.spot.face;
    let inner = if face.is_outside() {
        face.behind()
    } else {
        face
    };
    let here = (app.spot.cabinet, inner);
    let at = faces.iter().position(|face| *face == here).unwrap_or(0);
    let count = isize::try_from(faces.len()).unwrap_or(1).max(1);
    let next = isize::try_from(at)
        .unwrap_or(0)
        .saturating_add(by)
        .rem_euclid(count);
    if let Some((cabinet, face)) = usize::try_from(next).ok().and_then(|next| faces.get(next)) {
        go_to(
            app,
            Spot {
                cabinet: *cabinet,
                face: *face,
                ..app.spot
            },
        );
    }
}

/// The holes the next fitting covers: the marked run, or as many as were typed, upward from here.
fn span(app: &App) -> (i16, i16) {
    let hole = app.spot.hole;
    match (app.entry.mark, app.entry.count) {
        (Some(mark), _) => (mark.min(hole), mark.max(hole)),
        (None, Some(count)) => (
            hole,
            hole.saturating_add(i16::try_from(count).unwrap_or(i16::MAX) - 1),
        ),
        (None, None) => (hole, hole),
    }
}

fn set(app: &mut App, fitting: Fitting) -> Vec<Effect> {
    let (first, last) = span(app);
    let Some((wall, run)) = bay_run(app, first, last, fitting) else {
        return refuse(app, NO_BAY);
    };
    let change = match fitting {
        Fitting::Pins | Fitting::Centred(_) => Edit::Pins(run),
        Fitting::Plate => Edit::Plates { wall, run },
        Fitting::Runner => Edit::Runners(run),
        Fitting::Shelf => Edit::Shelves(run),
    };
    set_by(app, fitting, &change)
}

/// Makes the edit that sets a fitting; only what was set can be set again.
fn set_by(app: &mut App, fitting: Fitting, change: &Edit) -> Vec<Effect> {
    (app.entry.count, app.entry.mark) = (None, None);
    let effects = edit(app, change);
    if !effects.is_empty() {
        app.entry.last = Some(fitting);
    }
    effects
}

fn again(app: &mut App) -> Vec<Effect> {
    match app.entry.last {
        Some(Fitting::Centred(count)) => {
            app.entry.count = Some(count);
            centred(app)
        }
        Some(fitting) => set(app, fitting),
        None => refuse(app, "nothing was set yet that could be set again"),
    }
}

fn bay_run(app: &App, first: i16, last: i16, fitting: Fitting) -> Option<(Hand, BayRun)> {
    let scene = Scene::at(&app.desk.job, &app.spot)?;
    let (bay, wall) = scene.bay_at(app.spot.hole)?;
    // A hinge in the upper half goes along with the head of a taller door; everything else stands on the foot.
    let upper = first.saturating_mul(2) > scene.layout.last;
    let datum = if fitting == Fitting::Plate && upper {
        Datum::Head
    } else {
        Datum::Foot
    };
    Some((
        wall,
        BayRun {
            cabinet: app.spot.cabinet,
            bay: bay.key,
            first,
            last,
            datum,
        },
    ))
}

fn centred(app: &mut App) -> Vec<Effect> {
    let Some(count) = app.entry.count.take() else {
        return refuse(app, "type how many holes first, then the key again");
    };
    let Some(run) = centred_run(app, i16::try_from(count).unwrap_or(i16::MAX)) else {
        return refuse(app, NO_BAY);
    };
    set_by(app, Fitting::Centred(count), &Edit::Pins(run))
}

/// So many holes about the middle of the bay: of the whole grid, and counted from there, where the bay is the only one the
/// face has.
fn centred_run(app: &App, count: i16) -> Option<BayRun> {
    let scene = Scene::at(&app.desk.job, &app.spot)?;
    let (bay, _) = scene.bay_at(app.spot.hole)?;
    let alone = scene.layout.bays_at(app.spot.face).count() == 1;
    let (lowest, highest) = if alone {
        (1, scene.layout.last)
    } else {
        let inside = |number: &i16| bay.spans(scene.layout.height(*number));
        let mut numbers = (1..=scene.layout.last).filter(inside);
        let lowest = numbers.next()?;
        (lowest, numbers.next_back().unwrap_or(lowest))
    };
    let first = (lowest + highest) / 2 - (count - 1) / 2;
    Some(BayRun {
        cabinet: app.spot.cabinet,
        bay: bay.key,
        first,
        last: first.saturating_add(count - 1),
        datum: if alone { Datum::Middle } else { Datum::Foot },
    })
}

/// Counts the fitting under the cursor from the next of foot, head and middle.
fn recount(app: &mut App) -> Vec<Effect> {
    let found = Scene::at(&app.desk.job, &app.spot).and_then(|scene| {
        let (_, fitting) = *scene.dot(&app.spot)?.hole.users.first()?;
        Some((fitting, scene.cabinet.datum_of(fitting)?))
    });
    let Some((fitting, datum)) = found else {
        return refuse(app, "nothing here that is counted by holes");
    };
    let at = Datum::ALL
        .iter()
        .position(|&other| other == datum)
        .unwrap_or(0);
    let datum = Datum::ALL[(at + 1) % Datum::ALL.len()];
    edit(
        app,
        &Edit::Recount {
            cabinet: app.spot.cabinet,
            fitting,
            datum,
        },
    )
}

/// The inside of the left side: where a cabinet is opened.
pub(super) fn opening_face() -> FaceId {
    FaceId::inside(Hand::Left)
}
