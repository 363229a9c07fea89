//! The papers: which are wanted, of what, in which format; what one looks like; and that they are written.

use std::path::PathBuf;

use gablerow_core::job::Key;
use gablerow_papers::kinds::{Format, Kind};
use gablerow_papers::page::Paper;

use super::{Effect, ask};
use crate::action::Action;
use crate::app::{App, Asked, Notice, Pane, Purpose, Screen};
use crate::paper_preview::PaperPreview;
use crate::papers_at::{PaperTally, Writing};
use crate::released::Released;

/// Opens the screen, as it was left.
pub(super) fn open(app: &mut App) -> Vec<Effect> {
    app.pane = Some(Pane::Papers);
    Vec::new()
}

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    if app.papers.writing.is_some() {
        return while_writing(app, action);
    }
    let at = &mut app.papers;
    match action {
        Action::Up | Action::Down => {
            let last = Kind::ALL.len() - 1;
            at.line = match action {
                Action::Up => at.line.saturating_sub(1),
                _ => (at.line + 1).min(last),
            };
            (at.file, at.sheet) = (0, 0);
        }
        Action::SheetBefore | Action::SheetAfter => turn(app, action == Action::SheetAfter),
        Action::Choose => choose(app),
        Action::ChooseAll => {
            at.chosen = match at.chosen.len() == Kind::ALL.len() {
                true => Vec::new(),
                false => Kind::ALL.to_vec(),
            };
        }
        Action::Format => step_format(app),
        Action::SheetSize => at.sheets = after(&Paper::ALL, &at.sheets),
        Action::WhichCabinet => step_cabinet(app),
        Action::Whole => at.is_whole = !at.is_whole,
        Action::Folder => {
            let offered = at.folder(&app.desk.path).display().to_string();
            ask(app, Purpose::Folder, &offered);
        }
        Action::Write => return write(app, false),
        Action::Leave if at.is_whole => at.is_whole = false,
        Action::Leave => app.pane = None,
        _ => {}
    }
    Vec::new()
}

/// While files are written nothing is changed that they are written by; they can be stopped.
fn while_writing(app: &mut App, action: Action) -> Vec<Effect> {
    match (action, &mut app.papers.writing) {
        (Action::Leave, Some(writing)) => {
            writing.is_stopping = true;
            vec![Effect::StopPapers]
        }
        _ => Vec::new(),
    }
}

/// The value after one, the first after the last.
fn after<T: Copy + PartialEq>(all: &[T], one: &T) -> T {
    let at = all.iter().position(|it| it == one);
    let next = at.map_or(0, |at| (at + 1) % all.len());
    all[next]
}

fn choose(app: &mut App) {
    let at = &mut app.papers;
    let kind = at.kind();
    match at.chosen.iter().position(|it| *it == kind) {
        Some(place) => drop(at.chosen.remove(place)),
        None => at.chosen.push(kind),
    }
}

fn step_format(app: &mut App) {
    let at = &mut app.papers;
    let kind = at.kind();
    let formats: &[Format] = kind.formats();
    if let [only] = formats {
        let (word, only) = (kind.word(), only.word());
        app.notice = Some(Notice::refused(format!("{word} is written as {only} only")));
        return;
    }
    let next = after(formats, &at.format(kind));
    at.formats.retain(|(it, _)| *it != kind);
    at.formats.push((kind, next));
    (at.file, at.sheet) = (0, 0);
}

/// From all cabinets to the one somebody stands on, from there through the others in turn, and to all again.
fn step_cabinet(app: &mut App) {
    let job = &app.desk.job;
    let keys: Vec<Key> = job.cabinets.iter().map(|cabinet| cabinet.key).collect();
    if keys.len() < 2 {
        app.notice = Some(Notice::refused("there is one cabinet"));
        return;
    }
    let here = match app.screen {
        Screen::Job(key) => key,
        _ => app.spot.cabinet,
    };
    let start = keys.iter().position(|key| *key == here).unwrap_or(0);
    let from_here = keys.iter().cycle().skip(start).take(keys.len());
    let turns: Vec<Option<Key>> = std::iter::once(None)
        .chain(from_here.map(|key| Some(*key)))
        .collect();
    let at = &mut app.papers;
    at.cabinet = after(&turns, &at.one_of(job));
    (at.file, at.sheet) = (0, 0);
}

/// To the next sheet or the one before, from the last one of a file to the first one of the next.
fn turn(app: &mut App, is_onward: bool) {
    let lines = app.papers.lines_shown(app.size);
    let preview = |app: &App| PaperPreview::of(&app.desk.job, &app.papers, lines);
    let now = preview(app);
    let Some(shown) = now.shown else { return };
    let files = now.files.get(app.papers.line).copied().unwrap_or(0);
    let at = &mut app.papers;
    (at.file, at.sheet) = match is_onward {
        true if shown.sheet + 1 < shown.sheets => (shown.file, shown.sheet + 1),
        true if shown.file + 1 < files => (shown.file + 1, 0),
        false if shown.sheet > 0 => (shown.file, shown.sheet - 1),
        // How many sheets the file before has is known once it is printed.
        false if shown.file > 0 => (shown.file - 1, usize::MAX),
        _ => (shown.file, shown.sheet),
    };
    if let Some(shown) = preview(app).shown {
        app.papers.sheet = shown.sheet;
    }
}

/// Writes what is chosen; over files with other contents only when that was said.
pub(super) fn write(app: &mut App, replace: bool) -> Vec<Effect> {
    app.papers.writing = Some(Writing::default());
    let wish = app.papers.wish(&app.desk.job, &app.desk.path, replace);
    vec![Effect::WritePapers(Box::new(wish))]
}

/// The folder that was typed.
pub(super) fn folder(text: &str) -> Result<PathBuf, String> {
    if text.is_empty() {
        return Err("type a folder; it is made when it is not there yet".to_owned());
    }
    if text.starts_with('~') {
        return Err("~ is not known here; type the whole way to it".to_owned());
    }
    Ok(PathBuf::from(text))
}

/// A file was dealt with.
pub(super) fn put(app: &mut App, done: usize, of: usize, name: String) {
    if let Some(writing) = &mut app.papers.writing {
        (writing.done, writing.of, writing.name) = (done, of, name);
    }
}

/// All were dealt with, or it was stopped: says so, and asks about those whose names are taken.
pub(super) fn over(app: &mut App, tally: PaperTally) {
    app.papers.writing = None;
    app.notice = Some(Notice::done(said(app, &tally)));
    if !tally.kept.is_empty() && !tally.is_stopped {
        app.asked = Some(Asked::PapersThere(tally.kept));
    }
}

/// Nothing more is written, for a reason.
pub(super) fn failed(app: &mut App, why: String) {
    app.papers.writing = None;
    app.notice = Some(Notice::refused(why));
}

/// What came of it, in a sentence.
fn said(app: &App, tally: &PaperTally) -> String {
    let folder = app.papers.folder(&app.desk.path);
    let mut parts = Vec::new();
    if tally.is_stopped {
        let done = tally.written + tally.same + tally.kept.len();
        parts.push(format!(
            "stopped after {done} of {}; Enter goes on",
            tally.of
        ));
    }
    parts.push(match (tally.written, tally.same) {
        (0, 0) if tally.kept.is_empty() => "no paper to write".to_owned(),
        (0, 0) => "nothing written".to_owned(),
        (0, 1) => format!("it is there already, in {}", folder.display()),
        (0, same) => format!("all {same} are there already, in {}", folder.display()),
        (1, _) => format!("1 paper written to {}", folder.display()),
        (written, _) => format!("{written} papers written to {}", folder.display()),
    });
    if !tally.kept.is_empty() {
        parts.push(format!("{} let be", tally.kept.len()));
    }
    let job = &app.desk.job;
    let wish = app.papers.wish(job, &app.desk.path, false);
    if wish.kinds.iter().any(|(kind, _)| kind.is_for_boring()) {
        let held = Released::of_one(job, wish.cabinet).held_back();
        let names: Vec<String> = held.into_iter().map(|it| it.cabinet).collect();
        if !names.is_empty() {
            parts.push(format!("held back: {}", names.join(", ")));
        }
    }
    parts.join("; ")
}

#[cfg(test)]
mod tests;
