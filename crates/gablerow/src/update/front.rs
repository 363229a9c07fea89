//! On the front of a cabinet: walking over it, and from it to its faces.

use gablerow_core::job::{Hand, Key};

use super::{Effect, face, go_to};
use crate::action::Action;
use crate::app::{App, Pane, Screen};
use crate::scene::{FrontScene, Spot, Toward};

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    match action {
        Action::Above => walk(app, Toward::Up),
        Action::Below => walk(app, Toward::Down),
        Action::LeftOf => walk(app, Toward::Side(Hand::Left)),
        Action::RightOf => walk(app, Toward::Side(Hand::Right)),
        Action::Behind => stand_on(app, behind),
        Action::LeftWall => to_wall(app, Hand::Left),
        Action::RightWall => to_wall(app, Hand::Right),
        Action::Boxes => app.front.boxes = !app.front.boxes,
        Action::NextCabinet => step_cabinets(app, 1),
        Action::PreviousCabinet => step_cabinets(app, -1),
        Action::Sizes => app.pane = Some(Pane::Sizes(0)),
        Action::Checks => app.pane = Some(Pane::Checks(0)),
        Action::Job => app.screen = Screen::Job(app.spot.cabinet),
        Action::Leave => {
            app.screen = match app.front.back {
                // The cabinet whose line one came from may be gone, and one may look at another by now.
                Screen::Job(_) => Screen::Job(app.spot.cabinet),
                other => other,
            }
        }
        _ => {}
    }
    Vec::new()
}

/// Turns to the front of the cabinet one is in, onto what one was at on its face.
pub(super) fn open(app: &mut App) {
    app.front.back = app.screen;
    (app.entry.count, app.entry.mark) = (None, None);
    enter(app);
    app.screen = Screen::Front;
}

/// Goes to the first face of another cabinet, and with it to its front.
pub(super) fn go_to_cabinet(app: &mut App, cabinet: Key) {
    let face = face::opening_face();
    let spot = Spot {
        cabinet,
        face,
        ..app.spot
    };
    go_to(app, spot);
}

/// Stands on what the place on the face belongs to.
fn enter(app: &mut App) {
    let spot = app.spot;
    stand_on(app, |scene, _| scene.entered(&spot));
}

fn stand_on(app: &mut App, next: impl FnOnce(&FrontScene, Key) -> Option<Key>) {
    let found = FrontScene::at(app).and_then(|scene| {
        // The cursor may stand for a thing that is gone; the scene then has it on the first.
        let at = scene.spot(app.front.at)?.at.key();
        Some(next(&scene, at).unwrap_or(at))
    });
    if let Some(key) = found {
        app.front.at = key;
    }
}

fn walk(app: &mut App, toward: Toward) {
    stand_on(app, |scene, at| scene.step(at, toward));
}

/// What a thing stands before; of any scene, which a method of one is not.
fn behind(scene: &FrontScene, at: Key) -> Option<Key> {
    scene.behind(at)
}

fn to_wall(app: &mut App, wall: Hand) {
    let place = FrontScene::at(app).and_then(|scene| scene.place(app.front.at, wall));
    if let Some(spot) = place {
        app.screen = match app.front.back {
            Screen::Book => Screen::Book,
            _ => Screen::Face,
        };
        go_to(app, spot);
    }
}

fn step_cabinets(app: &mut App, by: isize) {
    let cabinets = &app.desk.job.cabinets;
    let count = isize::try_from(cabinets.len()).unwrap_or(1).max(1);
    let at = app.desk.job.position(app.spot.cabinet).unwrap_or(0);
    let next = isize::try_from(at)
        .unwrap_or(0)
        .saturating_add(by)
        .rem_euclid(count);
    let next = usize::try_from(next).unwrap_or(0);
    if let Some(cabinet) = cabinets.get(next).map(|cabinet| cabinet.key) {
        go_to_cabinet(app, cabinet);
        enter(app);
    }
}

#[cfg(test)]
mod tests;
