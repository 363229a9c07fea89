//! On the front of a cabinet: walking over it, and from it to its faces.

use gablerow_core::edit::{Edit, Way};
use gablerow_core::job::{Hand, Key};

use super::{Effect, edit, face, go_to, proposals};
use crate::action::Action;
use crate::app::{App, Notice, Pane, Screen};
use crate::scene::{FrontScene, FrontSpot, Spot, Thing, Toward, front_spot};

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
        // What was typed is dropped first, as on a face.
        Action::Leave if app.entry.count.take().is_none() => {
            app.screen = match app.front.back {
                // The cabinet whose line one came from may be gone, and one may look at another by now.
                Screen::Job(_) => Screen::Job(app.spot.cabinet),
                other => other,
            }
        }
        Action::Digit(digit) => face::count(app, digit),
        Action::SideBySide => return divide(app, Way::SideBySide),
        Action::Stacked => return divide(app, Way::Stacked),
        Action::TakeAway => return take_away(app),
        Action::Door => return close(app, |cabinet, opening, _| Edit::Door { cabinet, opening }),
        Action::FalseFront => {
            return close(app, |cabinet, opening, _| Edit::FalseFront {
                cabinet,
                opening,
            });
        }
        Action::Drawers => {
            return close(app, |cabinet, opening, count| Edit::Drawers {
                cabinet,
                opening,
                count,
            });
        }
        Action::DrawersBehind => {
            return close(app, |cabinet, opening, count| Edit::InnerDrawers {
                cabinet,
                opening,
                count,
            });
        }
        Action::Modules => return modules(app),
        Action::Hardware => proposals::open_hardware(app),
        Action::Mend => proposals::open_mend_front(app),
        _ => {}
    }
    Vec::new()
}

/// The thing one stands on, or why nothing can be done.
fn here(app: &mut App) -> Option<FrontSpot> {
    let spot = front_spot(app);
    if spot.is_none() {
        app.notice = Some(Notice::refused("there is nothing to stand on here"));
    }
    spot
}

/// Divides the bay one stands on or before; the typed number says into how many, else it is two.
fn divide(app: &mut App, way: Way) -> Vec<Effect> {
    let parts = app.entry.count.take().unwrap_or(2);
    let Some(spot) = here(app) else {
        return Vec::new();
    };
    let (cabinet, opening) = (spot.cabinet, spot.bay);
    let effects = edit(
        app,
        &Edit::Divide {
            cabinet,
            opening,
            way,
            parts,
        },
    );
    // One stands on the first of the parts, to go on with it.
    stand_on(app, |scene, _| scene.first_within(opening));
    effects
}

/// Sets or takes away fronts over the opening one stands on or before; the typed number says how many, else it is one. Nothing
/// hangs on a partition or a fixed shelf: one bay beside it may be meant, or all that it divides.
fn close(app: &mut App, wish: impl Fn(Key, Key, u16) -> Edit) -> Vec<Effect> {
    let count = app.entry.count.take().unwrap_or(1);
    let Some(spot) = here(app) else {
        return Vec::new();
    };
    match spot.at {
        Thing::Partition(_) => refuse(
            app,
            "no front hangs on a partition; go on to a bay, or behind, to all it divides",
        ),
        Thing::FixedShelf(_) => refuse(
            app,
            "no front hangs on a fixed shelf; go on to a bay, or behind, to all it divides",
        ),
        Thing::Front(_) | Thing::Opening(_) => edit(app, &wish(spot.cabinet, spot.opening, count)),
    }
}

fn take_away(app: &mut App) -> Vec<Effect> {
    let Some(spot) = here(app) else {
        return Vec::new();
    };
    let cabinet = spot.cabinet;
    match spot.at {
        Thing::Front(front) => {
            let effects = edit(app, &Edit::NoFront { cabinet, front });
            app.front.at = spot.bay;
            effects
        }
        Thing::Partition(divider) | Thing::FixedShelf(divider) => {
            edit(app, &Edit::Unite { cabinet, divider })
        }
        Thing::Opening(_) => {
            app.notice = Some(Notice::refused(
                "an opening goes with the partition or shelf beside it; stand on that",
            ));
            Vec::new()
        }
    }
}

fn modules(app: &mut App) -> Vec<Effect> {
    let count = app.entry.count.take();
    let Some(spot) = here(app) else {
        return Vec::new();
    };
    match (spot.at, count) {
        (Thing::Front(front), Some(count)) => {
            let cabinet = spot.cabinet;
            edit(
                app,
                &Edit::Modules {
                    cabinet,
                    front,
                    count,
                },
            )
        }
        (Thing::Front(_), None) => refuse(app, "type how many modules first, such as 6"),
        _ => refuse(app, "modules are for a front; stand on one"),
    }
}

fn refuse(app: &mut App, text: &str) -> Vec<Effect> {
    app.notice = Some(Notice::refused(text));
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

/// Goes so many cabinets on in the job, from its last to its first.
pub(super) fn step_cabinets(app: &mut App, by: isize) {
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
