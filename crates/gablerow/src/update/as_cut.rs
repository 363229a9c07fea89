//! What tape and caliper read of the panels of a cabinet, as one line of text: `703.6 t18.3; ; 704 d1.2 | ; ; `.
//!
//! Panels stand from left to right, nothing for what was not measured. A bare length is from foot to head; before the others
//! stands a letter.

use gablerow_core::edit::{CopyEdit, Edit};
use gablerow_core::job::{AsCut, Cabinet, Copy, Job, Key, PanelId};
use gablerow_core::layout::Layout;
use gablerow_core::measure::{Length, parse_length};

/// What stands between two panels, and between two copies. A comma is a decimal mark, a slash part of an inch.
const PANELS: char = ';';
const COPIES: char = '|';

/// Where a measure of a panel is kept.
type Place = fn(&mut AsCut) -> &mut Option<Length>;

/// What is measured of a panel beside its length, and the letter before it.
const LETTERS: [(char, Place); 3] = [
    ('t', |cut| &mut cut.thickness),
    ('d', |cut| &mut cut.diagonals),
    ('p', |cut| &mut cut.play),
];

/// What is known already, as it would be typed.
pub(super) fn typed(job: &Job, cabinet: Key) -> String {
    let Some(cabinet) = job.cabinet(cabinet) else {
        return String::new();
    };
    let text = |copy: &Copy| {
        let panels = panels(job, cabinet, copy).into_iter();
        let texts: Vec<String> = panels.map(|panel| panel_text(job, copy, panel)).collect();
        texts.join(&format!("{PANELS} "))
    };
    let copies: Vec<String> = cabinet.copies.iter().map(text).collect();
    copies.join(&format!(" {COPIES} "))
}

fn panels(job: &Job, cabinet: &Cabinet, copy: &Copy) -> Vec<PanelId> {
    let layout = Layout::of(&cabinet.built_as(copy), job);
    layout.uprights.iter().map(|upright| upright.id).collect()
}

fn panel_text(job: &Job, copy: &Copy, panel: PanelId) -> String {
    let mut cut = copy.cut(panel).copied().unwrap_or(AsCut::of(panel));
    let text = |length: Length| length.exact(job.unit).to_string();
    let mut texts: Vec<String> = cut.length.map(text).into_iter().collect();
    for (letter, of) in LETTERS {
        texts.extend(of(&mut cut).map(|length| format!("{letter}{}", text(length))));
    }
    texts.join(" ")
}

/// The edit of one copy, of what was typed of all of them; `None` when nothing is new.
pub(super) fn new(job: &Job, cabinet: Key, text: &str) -> Result<Option<Edit>, String> {
    let Some(built) = job.cabinet(cabinet) else {
        return Ok(None);
    };
    let typed: Vec<&str> = text.split(COPIES).collect();
    if typed.len() != built.copies.len() {
        let (count, typed) = (built.copies.len(), typed.len());
        return Err(format!(
            "panels of {typed} between {COPIES}, but {count} are built"
        ));
    }
    let mut new = Vec::new();
    for (copy, typed) in built.copies.iter().zip(typed) {
        let cuts = cuts(job, &panels(job, built, copy), typed)?;
        let is_new = |cut: &AsCut| copy.cut(cut.panel).unwrap_or(&AsCut::of(cut.panel)) != cut;
        if cuts.iter().any(is_new) {
            new.push(CopyEdit::AsCut(copy.key, cuts));
        }
    }
    match (new.pop(), new.pop()) {
        (Some(change), None) => Ok(Some(Edit::Copies { cabinet, change })),
        (None, _) => Ok(None),
        _ => Err("one copy at a time, so that each can be taken back".to_owned()),
    }
}

fn cuts(job: &Job, panels: &[PanelId], typed: &str) -> Result<Vec<AsCut>, String> {
    let typed: Vec<&str> = typed.split(PANELS).collect();
    if typed.len() != panels.len() {
        let (count, typed) = (panels.len(), typed.len());
        return Err(format!(
            "{typed} between {PANELS}, but there are {count} panels; leave one empty that is not measured"
        ));
    }
    let cut = |(panel, text): (&PanelId, &str)| cut(job, *panel, text);
    panels.iter().zip(typed).map(cut).collect()
}

/// What one panel's text says: a length, and whatever has a letter before it.
fn cut(job: &Job, panel: PanelId, text: &str) -> Result<AsCut, String> {
    let mut cut = AsCut::of(panel);
    // An inch has blanks of its own, so words without a letter belong to what is before them.
    let mut pieces: Vec<(Option<usize>, String)> = Vec::new();
    for word in text.split_whitespace() {
        let letter = LETTERS.iter().position(|(letter, _)| {
            let rest = word.strip_prefix(*letter);
            rest.is_some_and(|rest| {
                rest.starts_with(|c: char| c.is_ascii_digit() || "-.,".contains(c))
            })
        });
        match (letter, pieces.last_mut()) {
            (Some(_), _) => pieces.push((letter, word[1..].to_owned())),
            (None, Some((_, piece))) => *piece = format!("{piece} {word}"),
            (None, None) => pieces.push((None, word.to_owned())),
        }
    }
    for (letter, piece) in pieces {
        let length = parse_length(&piece, job.unit).map_err(|wrong| wrong.to_string())?;
        match letter {
            Some(at) => *LETTERS[at].1(&mut cut) = Some(length),
            None => cut.length = Some(length),
        }
    }
    Ok(cut)
}
