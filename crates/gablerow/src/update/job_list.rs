//! The cabinets of the job.

use gablerow_core::job::{Job, Key};

use super::{Effect, ask, face, front, go_to};
use crate::action::Action;
use crate::app::{App, Purpose, Screen};
use crate::scene::Spot;

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Screen::Job(here) = app.screen else {
        return Vec::new();
    };
    match action {
        Action::Up => app.screen = Screen::Job(neighbour(&app.desk.job, here, -1)),
        Action::Down => app.screen = Screen::Job(neighbour(&app.desk.job, here, 1)),
        Action::Leave => app.screen = Screen::Face,
        Action::Open => {
            app.screen = Screen::Face;
            if here != app.spot.cabinet {
                go_to(
                    app,
                    Spot {
                        cabinet: here,
                        face: face::opening_face(),
                        ..app.spot
                    },
                );
            }
        }
        Action::Front => {
            if here != app.spot.cabinet {
                front::go_to_cabinet(app, here);
            }
            front::open(app);
        }
        Action::Add => {
            let offered = unused_name(&app.desk.job, here);
            ask(app, Purpose::Add(here), &offered);
        }
        Action::Copy => {
            let offered = unused_name(&app.desk.job, here);
            ask(app, Purpose::Copy(here), &offered);
        }
        Action::Rename => {
            let name = name_of(&app.desk.job, here);
            ask(app, Purpose::Rename(here), &name);
        }
        Action::Remove => ask(app, Purpose::Remove(here), ""),
        _ => {}
    }
    Vec::new()
}

fn neighbour(job: &Job, here: Key, by: isize) -> Key {
    let at = job.position(here).unwrap_or(0);
    let next = at
        .saturating_add_signed(by)
        .min(job.cabinets.len().saturating_sub(1));
    job.cabinets.get(next).map_or(here, |cabinet| cabinet.key)
}

fn name_of(job: &Job, key: Key) -> String {
    job.cabinet(key)
        .map(|cabinet| cabinet.name.to_string())
        .unwrap_or_default()
}

/// The name with its number counted on until nobody has it: `G2`, `G3`.
fn unused_name(job: &Job, key: Key) -> String {
    let name = name_of(job, key);
    let stem = name.trim_end_matches(|c: char| c.is_ascii_digit());
    let number: u64 = name[stem.len()..].parse().unwrap_or(1);
    let taken = |name: &String| {
        job.cabinets
            .iter()
            .any(|cabinet| cabinet.name.as_str() == name)
    };
    (number.saturating_add(1)..)
        .map(|number| format!("{stem}{number}"))
        .find(|name| !taken(name))
        .unwrap_or(name)
}
