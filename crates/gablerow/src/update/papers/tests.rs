//! Proof of the papers as they are chosen, turned over and written.

use std::collections::BTreeSet;
use std::time::{Duration, Instant};

use gablerow_papers::kinds::{Format, Kind};

use super::super::tests::app as app_of;
use super::*;
use crate::demo;
use crate::key::{Key as Pressed, Press};
use crate::papers_at::PaperWish;
use crate::update::{Message, update};

/// The papers of the demo, with keys pressed a second apart; the last effects.
fn press(app: &mut App, keys: &str) -> Vec<Effect> {
    let mut at = app.entry.press.map_or_else(Instant::now, |press| press.at);
    let mut last = Vec::new();
    for key in keys.chars() {
        at += Duration::from_secs(1);
        let key = match key {
            '\n' => Pressed::Enter,
            '\u{1b}' => Pressed::Esc,
            '↓' => Pressed::Down,
            '→' => Pressed::Right,
            '←' => Pressed::Left,
            other => Pressed::Char(other),
        };
        last = update(app, Message::Press(Press { key, at }));
    }
    last
}

fn papers() -> App {
    let mut app = app_of(demo::job().unwrap());
    press(&mut app, "P");
    app
}

/// What is written.
fn wish(effects: &[Effect]) -> &PaperWish {
    let [Effect::WritePapers(wish)] = effects else {
        panic!("{effects:?}");
    };
    wish
}

fn notice(app: &App) -> &str {
    app.notice.as_ref().map_or("", |notice| &notice.text)
}

#[test]
fn what_is_chosen_is_written_in_the_order_of_the_table_and_else_what_one_is_on() {
    let mut app = papers();
    let of = |effects: &[Effect]| wish(effects).kinds.clone();
    let all = of(&press(&mut app, "a\n"));
    assert!(all.iter().map(|(kind, _)| *kind).eq(Kind::ALL));
    update(&mut app, Message::PapersOver(PaperTally::default()));
    assert_eq!(
        of(&press(&mut app, "a↓f\n")),
        [(Kind::Holes, Format::Ascii)]
    );
    update(&mut app, Message::PapersOver(PaperTally::default()));
    let two = of(&press(&mut app, " ↓↓ \n"));
    assert_eq!(
        two,
        [(Kind::Holes, Format::Ascii), (Kind::Faces, Format::Pdf)]
    );
}

#[test]
fn papers_are_of_all_cabinets_then_of_the_one_somebody_comes_from_then_of_each() {
    let mut app = app_of(demo::job().unwrap());
    let keys: Vec<Key> = app.desk.job.cabinets.iter().map(|it| it.key).collect();
    app.screen = Screen::Job(keys[1]);
    press(&mut app, "P");
    let mut seen = vec![app.papers.one_of(&app.desk.job)];
    for _ in 0..=keys.len() {
        press(&mut app, "c");
        seen.push(app.papers.one_of(&app.desk.job));
    }
    assert_eq!(
        seen,
        [None, Some(keys[1]), Some(keys[2]), Some(keys[0]), None]
    );
}

#[test]
fn every_sheet_of_every_file_comes_once_and_back_in_turn() {
    // Faces: a file for each cabinet, a sheet for each face.
    let mut app = papers();
    press(&mut app, "↓↓↓");
    let place = |app: &App| (app.papers.file, app.papers.sheet);
    let mut onward = vec![place(&app)];
    loop {
        press(&mut app, "→");
        if onward.last() == Some(&place(&app)) {
            break;
        }
        onward.push(place(&app));
    }
    let files: BTreeSet<usize> = onward.iter().map(|(file, _)| *file).collect();
    assert!(files.len() == 2 && onward.len() > files.len(), "{onward:?}");
    assert!(onward.is_sorted_by(|one, next| one < next), "{onward:?}");
    for before in onward.iter().rev().skip(1) {
        press(&mut app, "←");
        assert_eq!(place(&app), *before);
    }
}

#[test]
fn while_papers_are_written_only_leaving_does_something_and_that_stops_them() {
    let mut app = papers();
    press(&mut app, "\n");
    let before = app.papers.clone();
    assert_eq!(press(&mut app, "↓a fcs\n"), []);
    assert_eq!(app.papers, before);
    assert_eq!(press(&mut app, "\u{1b}"), [Effect::StopPapers]);
    let stopped = PaperTally {
        written: 2,
        of: 11,
        is_stopped: true,
        ..PaperTally::default()
    };
    update(&mut app, Message::PapersOver(stopped));
    assert!(
        notice(&app).starts_with("stopped after 2 of 11; Enter goes on; 2 papers written"),
        "{}",
        notice(&app)
    );
    assert_eq!(app.papers.writing, None);
}

#[test]
fn what_has_the_name_of_a_paper_gives_way_only_when_that_is_said() {
    let kept = PaperTally {
        kept: vec!["cut.pdf".to_owned()],
        ..PaperTally::default()
    };
    let mut app = papers();
    assert!(!wish(&press(&mut app, "\n")).replace);
    update(&mut app, Message::PapersOver(kept.clone()));
    assert_eq!(press(&mut app, "\u{1b}"), []);
    assert_eq!(app.pane, Some(Pane::Papers));
    press(&mut app, "\n");
    update(&mut app, Message::PapersOver(kept));
    assert!(wish(&press(&mut app, "o")).replace);
}

#[test]
fn a_failure_is_said_and_the_papers_can_be_written_again() {
    let mut app = papers();
    press(&mut app, "\n");
    update(&mut app, Message::PapersFailed("no room".to_owned()));
    assert_eq!(notice(&app), "no room");
    wish(&press(&mut app, "\n"));
}

#[test]
fn a_folder_is_typed_and_one_that_would_be_taken_for_another_is_not() {
    let mut app = papers();
    press(&mut app, "t~\n");
    assert!(matches!(&app.asked, Some(Asked::Line(line)) if line.complaint.is_some()));
    press(&mut app, "\u{1b}tout\n");
    assert_eq!(wish(&press(&mut app, "\n")).folder, PathBuf::from("out"));
}

#[test]
fn a_kind_of_one_format_says_so() {
    let mut app = papers();
    press(&mut app, "↓↓f");
    assert_eq!(notice(&app), "machine is written as csv only");
}
