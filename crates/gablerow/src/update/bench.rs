//! At the bench: what is bored goes on record, set-up by set-up.

use std::time::Instant;

use gablerow_core::bench::bored_by;
use gablerow_core::job::{Bored, Took};

use super::{Effect, Kept, ask};
use crate::action::Action;
use crate::app::{App, Notice, Purpose, Walk};
use crate::at_bench::AtBench;

/// Begins with what is left, unless nothing is.
pub(super) fn open(app: &mut App, now: Instant) -> Vec<Effect> {
    let walk = Walk {
        since: app.desk.job.bored.len(),
        begun: now,
        leaving: false,
    };
    let bench = AtBench::of(&app.desk.job, &walk);
    if bench.set_up().is_some() {
        app.walk = Some(walk);
    } else if bench.held.is_empty() {
        app.notice = Some(Notice::done("nothing is left to bore"));
    } else {
        let held = names(app, &bench);
        let text = format!("nothing to bore: {held} held back by stops, which the checks name");
        app.notice = Some(Notice::refused(text));
    }
    Vec::new()
}

fn names(app: &App, bench: &AtBench) -> String {
    let cabinets = bench
        .held
        .iter()
        .filter_map(|key| app.desk.job.cabinet(*key));
    let names: Vec<&str> = cabinets.map(|cabinet| cabinet.name.as_str()).collect();
    names.join(", ")
}

pub(super) fn act(app: &mut App, action: Action, now: Instant) -> Vec<Effect> {
    let Some(walk) = app.walk else {
        return Vec::new();
    };
    let bench = AtBench::of(&app.desk.job, &walk);
    let stay = |begun| {
        Some(Walk {
            begun,
            leaving: false,
            ..walk
        })
    };
    match action {
        Action::Done => {
            let Some(set_up) = bench.set_up() else {
                return Vec::new();
            };
            let holes = bored_by(set_up, &app.desk.job);
            let seconds = now.saturating_duration_since(walk.begun).as_secs();
            let took = Took {
                planned: bench.planned(&app.desk.job),
                seconds: u32::try_from(seconds).unwrap_or(u32::MAX),
            };
            app.walk = stay(now);
            record(app, holes, Some(took))
        }
        Action::NotDone => {
            let Some(set_up) = bench.before() else {
                app.notice = Some(Notice::refused("this is the first set-up since you began"));
                return Vec::new();
            };
            let holes = bored_by(set_up, &app.desk.job).into_iter();
            let back = |hole| Bored {
                taken_back: true,
                ..hole
            };
            app.walk = stay(now);
            record(app, holes.map(back).collect(), None)
        }
        Action::Trouble => {
            if let Some(set_up) = bench.set_up().or(bench.before()) {
                let purpose = Purpose::Trouble(set_up.cabinet, set_up.copy, set_up.face);
                ask(app, purpose, "");
            }
            app.walk = stay(walk.begun);
            Vec::new()
        }
        Action::Leave if walk.leaving => {
            app.walk = None;
            Vec::new()
        }
        Action::Leave => {
            app.walk = Some(Walk {
                leaving: true,
                ..walk
            });
            Vec::new()
        }
        _ => Vec::new(),
    }
}

/// Puts holes on record, in the job and in the journal.
fn record(app: &mut App, holes: Vec<Bored>, took: Option<Took>) -> Vec<Effect> {
    app.desk.job.bored.extend(&holes);
    app.desk.job.took.extend(took);
    vec![Effect::Keep(Kept::Bored(holes, took))]
}

#[cfg(test)]
mod tests;
