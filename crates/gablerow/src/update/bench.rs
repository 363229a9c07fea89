//! At the bench: what is bored goes on record, set-up by set-up.

mod back;
mod measured;

use std::time::Instant;

use gablerow_core::bench::{SetUp, bored_by, last_taken_back};
use gablerow_core::job::{Bored, FaceId, Job, Key, Took};

pub(super) use back::{OnRecord, cut_anew, panel_on_record, recount};
pub(super) use measured::{measured, read_measured};

use super::{Effect, Kept, ask};
use crate::action::Action;
use crate::app::{App, Notice, Purpose, Walk};
use crate::at_bench::AtBench;

/// A face: its cabinet, its copy, which one.
type OfFace = (Key, Key, FaceId);

/// Begins with what is left, unless nothing is, nor was.
pub(super) fn open(app: &mut App, now: Instant) -> Vec<Effect> {
    let walk = Walk {
        since: app.desk.job.bored.len(),
        begun: now,
        leaving: false,
    };
    let bench = AtBench::of(&app.desk.job, &walk);
    if bench.set_up().is_some() || last_face(&app.desk.job).is_some() {
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
    stay(app);
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
            begin_next(app, now);
            record(app, holes, Some(took))
        }
        Action::NotDone => {
            begin_next(app, now);
            back::one_back(app, &bench)
        }
        Action::Trouble => {
            if let Some((cabinet, copy, face)) = in_sight(&app.desk.job, &bench) {
                ask(app, Purpose::Trouble(cabinet, copy, face), "");
            }
            Vec::new()
        }
        Action::Measured => {
            measured::ask_measured(app, &bench);
            Vec::new()
        }
        Action::CutAnew => {
            back::ask_cut_anew(app, &bench);
            Vec::new()
        }
        Action::LeaveBench if walk.leaving => {
            app.walk = None;
            Vec::new()
        }
        Action::LeaveBench => {
            app.walk = Some(Walk {
                leaving: true,
                ..walk
            });
            Vec::new()
        }
        _ => Vec::new(),
    }
}

/// Whatever is pressed but Esc, nobody is leaving.
pub(super) fn stay(app: &mut App) {
    if let Some(walk) = &mut app.walk {
        walk.leaving = false;
    }
}

/// Another set-up begins.
fn begin_next(app: &mut App, now: Instant) {
    if let Some(walk) = &mut app.walk {
        walk.begun = now;
    }
}

/// The face that is bored now, or was bored last.
fn in_sight(job: &Job, bench: &AtBench) -> Option<OfFace> {
    let now = bench.set_up().map(of_face);
    now.or_else(|| last_face(job))
}

/// The face that was bored last, be it on an earlier day.
fn last_face(job: &Job) -> Option<OfFace> {
    let last = last_taken_back(job);
    last.first().map(|it| (it.cabinet, it.copy, it.face))
}

fn of_face(set_up: &SetUp) -> OfFace {
    (set_up.cabinet, set_up.copy, set_up.face)
}

/// Puts holes on record, in the job and in the journal.
fn record(app: &mut App, holes: Vec<Bored>, took: Option<Took>) -> Vec<Effect> {
    app.desk.job.bored.extend(&holes);
    app.desk.job.took.extend(took);
    vec![Effect::Keep(Kept::Bored(holes, took))]
}

#[cfg(test)]
mod tests;
