//! Findings are accepted and overruled, and come back when what they say changes.

use gablerow_core::check::{Finding, Level};
use gablerow_core::measure::Length;

use super::*;
use crate::app::Asked;
use crate::demo;
use crate::key::Key;
use crate::update::tests::{app, press_all};

fn typed(text: &str) -> Vec<Key> {
    text.chars().map(Key::Char).collect()
}

/// The demo in the checks of its third cabinet: two stops, a warn and a note.
fn in_the_checks() -> App {
    let mut app = app(demo::job().unwrap());
    press_all(&mut app, &typed("ppk"));
    app
}

fn findings(app: &App) -> Vec<Finding> {
    Scene::at(&app.desk.job, &app.spot).unwrap().findings
}

/// The complaint of the line that is asked for; `None` when none is asked for.
fn complaint(app: &App) -> Option<String> {
    match &app.asked {
        Some(Asked::Line(line)) => line.complaint.clone(),
        _ => None,
    }
}

#[test]
fn a_stop_is_overruled_with_a_sentence_and_not_with_a_word() {
    let mut app = in_the_checks();
    press_all(&mut app, &typed("a"));
    press_all(&mut app, &typed("ok"));
    press_all(&mut app, &[Key::Enter]);
    assert!(complaint(&app).unwrap().contains("sentence"));
    press_all(&mut app, &typed(" Ann bores it by hand"));
    press_all(&mut app, &[Key::Enter]);
    let first = &findings(&app)[0];
    let reason = first.accepted.as_ref().map(ToString::to_string);
    assert_eq!(reason.as_deref(), Some("ok Ann bores it by hand"));
    assert!(!first.is_open_stop());
    press_all(&mut app, &typed("a"));
    assert!(findings(&app)[0].is_open_stop(), "again takes it back");
}

#[test]
fn what_is_accepted_comes_back_when_it_changes_and_rests_again_when_it_changes_back() {
    let mut app = in_the_checks();
    press_all(&mut app, &[Key::Down, Key::Down]);
    let one = findings(&app).swap_remove(2);
    assert_eq!(one.level, Level::Warn);
    press_all(&mut app, &typed("a"));
    press_all(&mut app, &typed("no shelf"));
    press_all(&mut app, &[Key::Enter]);
    let same = |app: &App| {
        let found = findings(app).into_iter();
        found
            .filter(|it| it.rule == one.rule)
            .find(|it| it.is_about_the_same(&one))
            .unwrap()
    };
    let is_open = |app: &App| same(app).accepted.is_none();
    assert!(!is_open(&app));
    // A thicker shelf reaches elsewhere, so the sentence has other numbers.
    let shelf = |app: &App| same(app).in_mm;
    let before = shelf(&app);
    let thicker = |app: &mut App, um: i32| {
        for board in &mut app.desk.job.cards.boards {
            board.thickness.value += Length::from_um(um);
        }
    };
    thicker(&mut app, 1_000);
    assert_ne!(shelf(&app), before);
    assert!(is_open(&app));
    thicker(&mut app, -1_000);
    assert!(!is_open(&app));
}

#[test]
fn checks_of_the_next_cabinet_and_of_the_one_before_are_a_key_away() {
    let mut app = in_the_checks();
    let here = app.spot.cabinet;
    press_all(&mut app, &[Key::Down]);
    press_all(&mut app, &typed("n"));
    assert_ne!(app.spot.cabinet, here);
    assert_eq!(app.pane, Some(Pane::Checks(0)));
    press_all(&mut app, &typed("p"));
    assert_eq!((app.spot.cabinet, app.pane), (here, Some(Pane::Checks(0))));
}
