//! At the bench: what is bored goes on record, set-up by set-up.

use std::cmp::Ordering;
use std::time::Instant;

use gablerow_core::bench::{Check, SetUp, bored_by};
use gablerow_core::job::{Bored, FaceId, Key, Measured, Took};
use gablerow_core::measure::{Unit, parse_onto, range};

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
        Action::Measured => {
            ask_measured(app, &bench);
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

/// Asks what the distances of a face measure: of the one that was done just now, while it is not measured yet, else of the one
/// that is bored now, where its last set-up is in sight.
fn ask_measured(app: &mut App, bench: &AtBench) {
    let job = &app.desk.job;
    let has_checks = |it: &&SetUp| !it.checks.is_empty();
    let is_new = |it: &&SetUp| {
        let is_measured = |check: &Check| {
            job.measured(it.cabinet, it.copy, it.face, check.span)
                .is_some()
        };
        !it.checks.iter().any(is_measured)
    };
    let before = bench.before().filter(has_checks);
    let new = before.filter(is_new);
    let measurable = new.or(bench.set_up().filter(has_checks)).or(before);
    match measurable {
        Some(it) => {
            let purpose = Purpose::Measured {
                cabinet: it.cabinet,
                copy: it.copy,
                face: it.face,
                checks: it.checks.clone(),
            };
            ask(app, purpose, "");
        }
        None => {
            let text = "nothing to measure yet: that comes with the last set-up of a face";
            app.notice = Some(Notice::refused(text));
        }
    }
}

/// What a typed text says of the distances of a face of a copy of a cabinet: one after the other, `;` between them, nothing for
/// what was not measured.
///
/// # Errors
/// In words, when there are more than the distances, when one is no length, and when no job can hold it.
pub(super) fn read_measured(
    (cabinet, copy, face): (Key, Key, FaceId),
    checks: &[Check],
    text: &str,
    unit: Unit,
) -> Result<Vec<Measured>, String> {
    let typed: Vec<&str> = text.split(';').map(str::trim).collect();
    if typed.len() > checks.len() {
        let (typed, count) = (typed.len(), checks.len());
        return Err(format!("{typed} between ;, but {count} to measure"));
    }
    let mut all = Vec::new();
    for (check, typed) in checks
        .iter()
        .zip(typed)
        .filter(|(_, typed)| !typed.is_empty())
    {
        let is = parse_onto(typed, check.want, unit).map_err(|wrong| wrong.to_string())?;
        for length in [check.want, is] {
            let held = range::PANEL_POSITION.check(length);
            held.map_err(|wrong| wrong.to_string())?;
        }
        all.push(Measured {
            cabinet,
            copy,
            face,
            span: check.span,
            want: check.want,
            is,
        });
    }
    match all.is_empty() {
        true => Err("type what the tape says, or Esc".to_owned()),
        false => Ok(all),
    }
}

/// Puts what was measured on record, in the job and in the journal, and says how far off it is.
pub(super) fn measured(app: &mut App, all: Vec<Measured>) -> Vec<Effect> {
    let unit = app.desk.job.unit;
    let off = |it: &Measured| {
        let (span, off) = (it.span.show(unit), (it.is - it.want).abs().show(unit));
        match it.is.cmp(&it.want) {
            Ordering::Equal => format!("{span}: as wanted"),
            Ordering::Greater => format!("{span}: {off} too long"),
            Ordering::Less => format!("{span}: {off} too short"),
        }
    };
    let words: Vec<String> = all.iter().map(off).collect();
    app.notice = Some(Notice::done(words.join(", ")));
    app.desk.job.measured.extend(&all);
    let kept = all.into_iter().map(Kept::Measured);
    kept.map(Effect::Keep).collect()
}

/// Puts holes on record, in the job and in the journal.
fn record(app: &mut App, holes: Vec<Bored>, took: Option<Took>) -> Vec<Effect> {
    app.desk.job.bored.extend(&holes);
    app.desk.job.took.extend(took);
    vec![Effect::Keep(Kept::Bored(holes, took))]
}

#[cfg(test)]
mod tests;
