//! Proof of what is typed for a loose shelf and for a drawer.

use gablerow_core::check::{self, Rule};
use gablerow_core::job::{Job, Shelf};
use gablerow_core::label::Label;
use gablerow_core::measure::Length;

use super::super::tests::{app, press_all};
use crate::app::{App, Asked, Pane};
use crate::key::Key;

/// The plain cabinet with a loose shelf on hole 9, left side, inside, standing on that hole.
fn with_shelf() -> App {
    let mut app = app(Job::plain(Label::new("kiln room").unwrap()));
    press(&mut app, "9|l");
    app
}

/// Presses keys; `|` is Enter, `~` Esc, `_` Down.
fn press(app: &mut App, keys: &str) {
    let key = |char| match char {
        '|' => Key::Enter,
        '~' => Key::Esc,
        '_' => Key::Down,
        char => Key::Char(char),
    };
    press_all(app, &keys.chars().map(key).collect::<Vec<_>>());
}

fn shelf(app: &App) -> &Shelf {
    app.desk.job.cabinets[0].loose_shelves()[0]
}

fn said(app: &App) -> &str {
    app.notice.as_ref().map_or("", |notice| &notice.text)
}

fn complaint(app: &App) -> &str {
    match &app.asked {
        Some(Asked::Line(line)) => line.complaint.as_deref().unwrap_or_default(),
        _ => "nothing is asked",
    }
}

fn finds(app: &App, rule: Rule) -> bool {
    let found = check::of_job(&app.desk.job);
    found.iter().any(|finding| finding.rule == rule)
}

#[test]
fn load_clear_height_and_sizes_of_the_shelf_under_the_cursor_come_first() {
    let mut app = with_shelf();
    press(&mut app, "e35.5 kg|_400|_5|_3|_|");
    assert_eq!(app.pane, Some(Pane::Sizes(4)));
    assert_eq!(said(&app), "shelf: board board-16");
    let made = shelf(&app);
    assert_eq!(made.load_grams, Some(35_500));
    assert_eq!(made.clear, Some(Length::from_mm(400)));
    assert_eq!(made.setback_front, Length::from_mm(5));
    assert_eq!(made.shorter, Length::from_mm(3));
    assert_eq!(made.board.as_str(), "board-16");
    press(&mut app, "~uuuuu");
    assert_eq!(shelf(&app), shelf(&with_shelf()));
}

#[test]
fn typed_load_is_what_the_checks_reckon_with() {
    let mut app = with_shelf();
    assert!(finds(&app, Rule::ShelfSags), "25 kg, which the house has");
    press(&mut app, "e10|");
    assert!(!finds(&app, Rule::ShelfSags));
    press(&mut app, "_500|");
    assert!(finds(&app, Rule::ClearOpeningShort));
    press(&mut app, "300|");
    assert!(!finds(&app, Rule::ClearOpeningShort));
}

#[test]
fn wrong_load_stays_as_typed_beside_its_complaint() {
    let mut app = with_shelf();
    press(&mut app, "e2 t|");
    assert_eq!(
        complaint(&app),
        "a load is kg with one decimal at most, such as 25 or 7.5"
    );
    press(&mut app, "~e_0|");
    assert_eq!(complaint(&app), "clear opening: 0, but it is 1 to 4000 mm");
    assert_eq!(shelf(&app), shelf(&with_shelf()));
}

/// The plain cabinet from the front with three drawers and their runners, standing on the lowest.
fn with_drawers() -> App {
    let mut app = app(Job::plain(Label::new("kiln room").unwrap()));
    press(&mut app, "v3rha ");
    app
}

#[test]
fn contents_of_the_drawer_one_stands_on_are_typed_after_its_thickness() {
    let mut app = with_drawers();
    let load = |app: &App| -> Vec<Option<u32>> {
        let fronts = &app.desk.job.cabinets[0].opening.fronts;
        fronts.iter().map(|front| front.load_grams).collect()
    };
    assert!(!finds(&app, Rule::RunnerOverloaded), "not known");
    press(&mut app, "e____30|");
    assert_eq!(said(&app), "D1: contents 30 kg");
    assert_eq!(load(&app), [Some(30_000), None, None]);
    assert!(finds(&app, Rule::RunnerOverloaded));
    press(&mut app, "10 kg|");
    assert!(!finds(&app, Rule::RunnerOverloaded));
    press(&mut app, "501|");
    assert_eq!(complaint(&app), "501 kg, but a drawer holds at most 500 kg");
    press(&mut app, "~uu");
    assert_eq!(load(&app), [None; 3]);
}

#[test]
fn a_door_has_no_contents() {
    let mut app = with_drawers();
    press(&mut app, "e");
    let named = |app: &App| {
        let lines = crate::size_line::lines(app);
        lines
            .iter()
            .filter(|line| line.words() == "contents")
            .count()
    };
    assert_eq!(named(&app), 1);
    // A drawer becomes one behind a door, then a false front, then a door.
    press(&mut app, "|");
    assert_eq!(named(&app), 1);
    press(&mut app, "|");
    assert_eq!(named(&app), 0);
    press(&mut app, "|");
    assert_eq!(named(&app), 0);
}

/// Two bays side by side share the width; standing on one of them its width is the first line.
#[test]
fn a_share_stays_a_share_until_its_length_is_typed() {
    let mut app = app(Job::plain(Label::new("kiln room").unwrap()));
    let keys = ['v', '2', '|', 'e'].map(Key::Char);
    press_all(&mut app, &keys);
    let before = app.desk.job.clone();
    press(&mut app, "|");
    let offered = match &app.asked {
        Some(Asked::Line(line)) => line.field.text().to_owned(),
        other => panic!("{other:?}"),
    };
    press(&mut app, "|");
    assert!(app.asked.is_none());
    assert_eq!(app.desk.job, before, "what was offered was taken as it is");
    press(&mut app, &format!("|{offered}|"));
    assert_ne!(app.desk.job, before, "the same length, typed");
}
