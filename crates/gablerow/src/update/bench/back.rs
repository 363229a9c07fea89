//! What is on record taken back: a set-up that was not bored after all, a panel that was cut anew.

use gablerow_core::bench::{self, bored_by, last_taken_back, progress_of_job, recounted};
use gablerow_core::counted::counted;
use gablerow_core::edit::{CopyEdit, Edit};
use gablerow_core::job::{AsCut, Bored, Job, Key, PanelId};
use gablerow_papers::panel_name;

use super::{last_face, of_face, record};
use crate::app::{App, Notice, Purpose};
use crate::at_bench::AtBench;
use crate::update::{Effect, Kept, ask, edit};

/// A panel: its cabinet, its copy, which one.
pub(in crate::update) type OnRecord = (Key, Key, PanelId);

/// Takes back the set-up before this one; before the first since somebody began, the one that is last on record.
pub(super) fn one_back(app: &mut App, bench: &AtBench) -> Vec<Effect> {
    let job = &app.desk.job;
    if let Some(set_up) = bench.before() {
        let holes = bored_by(set_up, job).into_iter();
        let back = |hole| Bored {
            taken_back: true,
            ..hole
        };
        let holes = holes.map(back).collect();
        return record(app, holes, None);
    }
    let holes = last_taken_back(job);
    let Some((cabinet, copy, face)) = last_face(job) else {
        app.notice = Some(Notice::refused("nothing is bored yet"));
        return Vec::new();
    };
    let name = panel_name(job, cabinet, copy, face.panel).unwrap_or_default();
    let word = face.word();
    let count = counted(holes.len(), "hole");
    app.notice = Some(Notice::done(format!(
        "{name} {word}: {count} of an earlier day come again"
    )));
    record_and_begin(app, holes)
}

/// Asks which panel was cut anew; offers the one in work, or else the one that was bored last.
pub(super) fn ask_cut_anew(app: &mut App, bench: &AtBench) {
    let job = &app.desk.job;
    let named = on_record(job);
    let now = bench.set_up().map(of_face);
    let mut faces = now.into_iter().chain(last_face(job));
    let offered = faces.find_map(|(cabinet, copy, face)| {
        let is_it = |it: &&(String, OnRecord)| it.1 == (cabinet, copy, face.panel);
        named.iter().find(is_it).map(|(name, _)| name.clone())
    });
    match offered {
        Some(name) => ask(app, Purpose::CutAnew, &name),
        None => app.notice = Some(Notice::refused("nothing is bored yet")),
    }
}

/// Every panel of which something is on record, by its name.
fn on_record(job: &Job) -> Vec<(String, OnRecord)> {
    let panels = progress_of_job(job).into_iter();
    let on_record = panels.filter(|it| it.done + it.stale.len() > 0);
    let named = on_record.filter_map(|it| {
        let name = panel_name(job, it.cabinet, it.copy, it.panel)?;
        Some((name, (it.cabinet, it.copy, it.panel)))
    });
    named.collect()
}

/// The panel of that name, of which something is on record.
///
/// # Errors
/// In words, with the names there are.
pub(in crate::update) fn panel_on_record(job: &Job, text: &str) -> Result<OnRecord, String> {
    let named = on_record(job);
    let is_it = |(name, _): &&(String, OnRecord)| name.eq_ignore_ascii_case(text);
    let found = named.iter().find(is_it).map(|(_, panel)| *panel);
    found.ok_or_else(|| {
        let names: Vec<&str> = named.iter().map(|(name, _)| name.as_str()).collect();
        match names.is_empty() {
            true => "nothing is bored yet".to_owned(),
            false => format!("bored are: {}", names.join(", ")),
        }
    })
}

/// Takes back whatever is on record of a panel, bored or measured, and begins with what is left then. What was measured of it as it
/// was cut goes too, and comes back with the way back.
pub(in crate::update) fn cut_anew(
    app: &mut App,
    &(cabinet, copy, panel): &OnRecord,
) -> Vec<Effect> {
    let (holes, measured) = bench::cut_anew(&app.desk.job, cabinet, copy, panel);
    let known = app.desk.job.cabinet(cabinet);
    let built = known.and_then(|it| it.copies.iter().find(|it| it.key == copy));
    let mut effects = match built.and_then(|it| it.cut(panel)) {
        Some(_) => {
            let change = CopyEdit::AsCut(copy, vec![AsCut::of(panel)]);
            edit(app, &Edit::Copies { cabinet, change })
        }
        None => Vec::new(),
    };
    app.desk.job.measured.extend(&measured);
    let name = panel_name(&app.desk.job, cabinet, copy, panel).unwrap_or_default();
    let count = counted(holes.len(), "hole");
    app.notice = Some(Notice::done(format!(
        "{name}: {count} of the old one taken back"
    )));
    effects.extend(record_and_begin(app, holes));
    effects.extend(measured.into_iter().map(Kept::Measured).map(Effect::Keep));
    effects
}

/// After a change that has moved fittings to where a miscount had their holes bored: they are there on record too.
pub(in crate::update) fn recount(app: &mut App, before: &Job, cabinet: Key) -> Vec<Effect> {
    let holes = recounted(before, &app.desk.job, cabinet);
    match holes.is_empty() {
        true => Vec::new(),
        false => record(app, holes, None),
    }
}

/// Puts holes of before somebody began on record as taken back, and begins with what is left then.
fn record_and_begin(app: &mut App, holes: Vec<Bored>) -> Vec<Effect> {
    let effects = record(app, holes, None);
    if let Some(walk) = &mut app.walk {
        walk.since = app.desk.job.bored.len();
    }
    effects
}
