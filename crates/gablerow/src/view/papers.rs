//! The papers: a list of kinds on the left, on the right what the one in sight would look like.
//!
//! ```text
//! title: of what, on which sheets
//! > chosen kind  format  files | name of the file, sheet 1 of 2
//!                              | the sheet in dots, or its text
//! what the kind is for         |
//! what is held back            |
//! where to, or how far it has come
//! ```

use gablerow_papers::kinds::Kind;
use gablerow_papers::wrap;
use unicode_width::UnicodeWidthStr;

use super::canvas::Canvas;
use super::{bench, thumbnail};
use crate::app::App;
use crate::paper_preview::{PaperPart, PaperPreview, ShownPaper};
use crate::papers_at::Writing;
use crate::theme::Role;

/// Columns of the list.
const LIST: u16 = 27;
/// The line on which the list begins, below its heading.
const FIRST: u16 = 1;
/// Columns of the bar.
const BAR: u16 = 24;

/// Draws the screen.
pub(super) fn draw(canvas: &mut Canvas, app: &App) {
    let lines = app.papers.lines_shown(app.size);
    let preview = PaperPreview::of(&app.desk.job, &app.papers, lines);
    let (width, height) = (canvas.width(), canvas.height());
    if app.papers.is_whole {
        return shown(&mut canvas.part(0, 0, width, height - 1), app, &preview);
    }
    title(canvas, app);
    let body = height.saturating_sub(3);
    list(&mut canvas.part(0, 1, LIST, body), app, &preview);
    let beside = width.saturating_sub(LIST + 1);
    let mut part = canvas.part(LIST + 1, 1, beside, body);
    shown(&mut part, app, &preview);
    let refused = app.notice.as_ref().filter(|it| it.is_refusal);
    if let Some(long) = refused.filter(|it| it.text.width() + 2 > usize::from(width)) {
        let high = u16::try_from(wrap(&long.text, usize::from(width)).len()).unwrap_or(1);
        let mut said = canvas.part(0, height.saturating_sub(2 + high), width, high);
        said.clear(Role::Warn);
        said.paragraph(0, 0, &long.text, Role::Warn);
    }
    let mut line = canvas.part(0, height - 2, width, 1);
    match &app.papers.writing {
        Some(writing) => progress(&mut line, writing),
        None => {
            let folder = app.papers.folder(&app.desk.path);
            let x = line.text(1, 0, "to", Role::Dim);
            line.text(x + 1, 0, &folder.display().to_string(), Role::Strong);
        }
    }
}

/// Of what the papers are, and on which sheets.
fn title(canvas: &mut Canvas, app: &App) {
    let (job, at) = (&app.desk.job, &app.papers);
    let one = at.one_of(job).and_then(|key| job.cabinet(key));
    let of = match (one, job.cabinets.len()) {
        (Some(cabinet), _) => format!("{} alone", cabinet.name),
        (None, 1) => "its cabinet".to_owned(),
        (None, count) => format!("all {count} cabinets"),
    };
    let text = format!("papers of {}", job.title);
    let after = canvas.text(1, 0, &text, Role::Title);
    let text = format!("{of}, {} sheets", at.sheets.word());
    canvas.text(after + 2, 0, &text, Role::Plain);
}

/// The kinds, each with its format and how many files it comes to; below them what the one in sight is for, and what is held back.
fn list(canvas: &mut Canvas, app: &App, preview: &PaperPreview) {
    let at = &app.papers;
    canvas.text(
        0,
        0,
        &format!("   {:<9}{:<6}{:>6}", "paper", "as", "files"),
        Role::Dim,
    );
    // Where the screen is low the list is as far up as shows the line one is on.
    let room = usize::from(canvas.height().saturating_sub(FIRST));
    let from = (at.line + 1).saturating_sub(room);
    let kinds = Kind::ALL.into_iter().zip(&preview.files).enumerate();
    for (y, (line, (kind, files))) in (FIRST..).zip(kinds.skip(from)) {
        let is_here = line == at.line;
        let is_chosen = at.chosen.contains(&kind);
        let role = match (is_here, is_chosen) {
            (true, _) => Role::Strong,
            (false, true) => Role::Plain,
            (false, false) => Role::Dim,
        };
        let glyphs = canvas.glyphs();
        let pointer = if is_here { glyphs.arrow_right } else { ' ' };
        let chosen = if is_chosen { glyphs.chosen } else { ' ' };
        let (word, format) = (kind.word(), at.format(kind).word());
        let text = format!("{pointer}{chosen} {word:<9}{format:<6}{files:>6}");
        canvas.text(0, y, &text, role);
    }
    let kind = at.kind();
    let mut y = FIRST + u16::try_from(Kind::ALL.len()).unwrap_or(0) + 1;
    let (wide, high) = (canvas.width(), canvas.height());
    y += canvas
        .part(0, y, wide, high.saturating_sub(y))
        .paragraph(0, 1, kind.says(), Role::Dim);
    if kind.is_for_boring() {
        for held in &preview.held_back {
            let text = format!("held back: {}, {}", held.cabinet, held.count);
            y += canvas
                .part(0, y, wide, high.saturating_sub(y))
                .paragraph(0, 1, &text, Role::Note);
        }
    }
}

/// The file in sight: its name, which part of it is in sight, and that part.
fn shown(canvas: &mut Canvas, app: &App, preview: &PaperPreview) {
    let Some(paper) = &preview.shown else {
        let kind = app.papers.kind();
        canvas.text(0, 0, why_none(kind, preview), Role::Dim);
        return;
    };
    let files = preview.files.get(app.papers.line).copied().unwrap_or(1);
    let places = places(paper, files);
    canvas.text_right(0, &places, Role::Dim);
    let (wide, high) = (canvas.width(), canvas.height());
    let room = wide.saturating_sub(u16::try_from(places.len()).unwrap_or(0) + 1);
    canvas
        .part(0, 0, room, 1)
        .text(0, 0, &paper.name, Role::Title);
    let mut part = canvas.part(0, 1, wide, high.saturating_sub(1));
    match &paper.part {
        PaperPart::Lines(lines) => {
            for (y, line) in (0..part.height()).zip(lines) {
                part.text(0, y, line, Role::Plain);
            }
        }
        PaperPart::Sheet(page) => thumbnail::draw(&mut part, page),
        PaperPart::Nothing => {
            part.text(0, 0, "nothing stands on it; it is not written", Role::Dim);
        }
    }
}

/// `file 2/6, sheet 1/3`, as much of it as is not plain.
fn places(paper: &ShownPaper, files: usize) -> String {
    let what = match paper.part {
        PaperPart::Lines(_) => "part",
        PaperPart::Sheet(_) | PaperPart::Nothing => "sheet",
    };
    let mut parts = Vec::new();
    if files > 1 {
        parts.push(format!("file {}/{files}", paper.file + 1));
    }
    if paper.sheets > 1 {
        parts.push(format!("{what} {}/{}", paper.sheet + 1, paper.sheets));
    }
    parts.join(", ")
}

/// Why a kind has no file.
fn why_none(kind: Kind, preview: &PaperPreview) -> &'static str {
    match (kind, preview.held_back.is_empty()) {
        (Kind::Machine, _) => "none: the rail of the house defaults is no machine",
        (_, false) => "none: stops hold it back, which the checks name",
        (_, true) => "none: nothing to print",
    }
}

/// A bar, how many files are done, and the latest of them.
fn progress(line: &mut Canvas, writing: &Writing) {
    bench::gauge(line, (1, 0), BAR, (writing.done, writing.of.max(1)));
    let text = match (writing.is_stopping, writing.of) {
        (true, _) => "stopping after this file".to_owned(),
        (false, 0) => "looking at the job".to_owned(),
        (false, of) => format!("{} of {of}  {}", writing.done, writing.name),
    };
    line.text(BAR + 2, 0, &text, Role::Plain);
}
