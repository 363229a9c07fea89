//! What the tape says of a bored face.

use std::cmp::Ordering;

use gablerow_core::bench::{Check, SetUp, checks};
use gablerow_core::job::{FaceId, Job, Key, Measured};
use gablerow_core::measure::{Unit, parse_onto, range};

use super::{OfFace, last_face, of_face};
use crate::app::{App, Notice, Purpose};
use crate::at_bench::AtBench;
use crate::update::{Effect, Kept, ask};

/// Asks what the distances of a face measure: of the one that was done just now, while it is not measured yet, else of the one
/// that is bored now, where its last set-up is in sight, else of the one that was bored last.
pub(super) fn ask_measured(app: &mut App, bench: &AtBench) {
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
    let measurable = measurable.map(|it| (of_face(it), it.checks.clone()));
    match measurable.or_else(|| measurable_of_earlier(job, bench)) {
        Some(((cabinet, copy, face), checks)) => {
            let purpose = Purpose::Measured {
                cabinet,
                copy,
                face,
                checks,
            };
            ask(app, purpose, "");
        }
        None => {
            let text = "nothing to measure yet: that comes with the last set-up of a face";
            app.notice = Some(Notice::refused(text));
        }
    }
}

/// The distances of the face that was bored last, before somebody began, where nothing of it is left.
fn measurable_of_earlier(job: &Job, bench: &AtBench) -> Option<(OfFace, Vec<Check>)> {
    let last = last_face(job)?;
    let is_left = bench.plan.set_ups.iter().any(|it| of_face(it) == last);
    let checks = checks(job, last.0, last.1, last.2);
    (!is_left && !checks.is_empty()).then_some((last, checks))
}

/// What a typed text says of the distances of a face of a copy of a cabinet: one after the other, `;` between them, nothing for
/// what was not measured.
///
/// # Errors
/// In words, when there are more than the distances, when one is no length, and when no job can hold it.
pub(in crate::update) fn read_measured(
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
            taken_back: false,
        });
    }
    match all.is_empty() {
        true => Err("type what the tape says, or Esc".to_owned()),
        false => Ok(all),
    }
}

/// Puts what was measured on record, in the job and in the journal, and says how far off it is.
pub(in crate::update) fn measured(app: &mut App, all: Vec<Measured>) -> Vec<Effect> {
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
