//! Proof of what is typed for free rows and free holes, of what goes by its hole, and of what is built.

use gablerow_core::job::{Cabinet, Edge, End, FaceId, Hand, Job};
use gablerow_core::label::Label;
use gablerow_core::measure::Length;

use super::super::tests::{app, press_all};
use crate::app::{App, Asked, Pane, Screen};
use crate::demo;
use crate::key::Key;

const MM: fn(i32) -> Length = Length::from_mm;

/// The plain cabinet of one bay, left side, inside, hole 3 of the front row.
fn plain() -> App {
    app(Job::plain(Label::new("kiln room").unwrap()))
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

fn cabinet(app: &App) -> &Cabinet {
    &app.desk.job.cabinets[0]
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

#[test]
fn setback_is_typed_from_either_edge() {
    for (typed, edge, setback) in [
        ("37", Edge::Front, MM(37)),
        ("37 front", Edge::Front, MM(37)),
        ("60 back", Edge::Back, MM(60)),
        ("60b", Edge::Back, MM(60)),
        ("2*30 F", Edge::Front, MM(60)),
        ("1/4\" B", Edge::Back, Length::from_um(6_350)),
    ] {
        let mut app = plain();
        press(&mut app, &format!("b{typed}|"));
        let row = &cabinet(&app).free_rows[0];
        assert_eq!((row.edge, row.setback), (edge, setback), "{typed}");
        assert_eq!((row.first.count, row.last.count), (3, 3));
    }
}

#[test]
fn the_offered_setback_is_that_of_the_cursor_from_the_nearer_edge() {
    let mut app = plain();
    press(&mut app, "b|");
    let row = cabinet(&app).free_rows[0].clone();
    assert_eq!((row.edge, row.setback), (Edge::Front, MM(37)));
    press_all(&mut app, &[Key::Right, Key::Right]);
    press(&mut app, "b|");
    // The back row stands at 503 of 560.
    let row = cabinet(&app).free_rows[1].clone();
    assert_eq!((row.edge, row.setback), (Edge::Back, MM(57)));
}

#[test]
fn free_row_runs_over_the_marked_or_typed_holes_on_this_face_alone() {
    let mut app = plain();
    press(&mut app, " 4");
    press_all(&mut app, &[Key::Up]);
    press(&mut app, "b|");
    assert_eq!(said(&app), "free row 37 from the front on holes 3-7");
    assert_eq!(app.entry.mark, None);
    press(&mut app, "5b60|");
    assert_eq!(said(&app), "free row 60 from the front on holes 7-11");
    assert_eq!(app.spot.row, MM(60), "one stands on the new row");
    press(&mut app, "t5b|");
    assert_eq!(
        complaint(&app),
        "holes 22-26, but this cabinet has holes 1-22"
    );
}

#[test]
fn free_hole_is_at_the_height_of_the_cursor_or_a_typed_one() {
    for (typed, end, height) in [
        ("50", End::Foot, MM(80)),
        ("50 at 101,5", End::Foot, Length::from_um(101_500)),
        ("50 front at 100 head", End::Head, MM(100)),
        ("510b at 100 HEAD", End::Head, MM(100)),
    ] {
        let mut app = plain();
        press(&mut app, &format!("g{typed}|"));
        let hole = &cabinet(&app).free_holes[0];
        assert_eq!((hole.end, hole.height), (end, height), "{typed}");
        assert_eq!(app.spot.row, MM(50), "one stands on the new hole");
        press(&mut app, "x");
        assert_eq!(said(&app), "no free hole");
        assert!(cabinet(&app).free_holes.is_empty());
    }
    let mut app = plain();
    press(&mut app, "g50 at 900|");
    assert_eq!(complaint(&app), "height 900, but this panel is 704 long");
}

#[test]
fn an_outside_takes_what_it_owns_itself_and_nothing_else() {
    let mut app = plain();
    press(&mut app, "o");
    let outside = FaceId::inside(Hand::Left).behind();
    assert_eq!((app.spot.face, app.spot.hole), (outside, 3));
    let before = app.desk.job.clone();
    for key in ["h", "s", "5c", "r", "l", "m", "d", "x"] {
        press(&mut app, key);
        assert_eq!(app.desk.job, before, "{key}");
        assert!(said(&app).contains("no"), "{key}: {}", said(&app));
        assert_eq!(app.screen, Screen::Face, "{key}");
    }
    press(&mut app, "b100 back|g50|");
    assert_eq!(cabinet(&app).free_rows[0].face, outside);
    assert_eq!(cabinet(&app).free_holes[0].face, outside);
    press(&mut app, "o");
    assert_eq!(app.spot.face, FaceId::inside(Hand::Left));
    press(&mut app, "on");
    assert_eq!(app.spot.face, FaceId::inside(Hand::Right));
}

#[test]
fn whatever_owns_a_hole_goes_and_comes_back_by_one_undo() {
    for (set, gone) in [
        ("h", "no hinge plate on 3"),
        ("5s", "no pins on 3"),
        ("r", "no runner on 3"),
        ("l", "no shelf on 3"),
        ("b|", "no free row"),
    ] {
        let mut app = plain();
        press(&mut app, set);
        let before = app.desk.job.clone();
        press(&mut app, "x");
        assert_eq!(said(&app), gone);
        assert_ne!(app.desk.job, before);
        press(&mut app, "u");
        assert_eq!(app.desk.job, before);
    }
    let mut app = plain();
    press(&mut app, "x");
    assert_eq!(said(&app), "nothing here that could be taken away");
}

#[test]
fn of_two_owners_the_first_by_use_goes_and_the_other_is_said() {
    let mut app = plain();
    press(&mut app, "b|5sx");
    assert_eq!(said(&app), "no pins on 3; still here: free row on 3");
    press(&mut app, "~x");
    assert_eq!(said(&app), "no free row");
}

#[test]
fn sizes_on_a_free_row_are_its_own_first_and_one_stays_on_it() {
    let mut app = plain();
    press(&mut app, "b60|e|hooks|_100|_|");
    assert_eq!(app.pane, Some(Pane::Sizes(2)));
    let row = &cabinet(&app).free_rows[0];
    assert_eq!(row.purpose.as_str(), "hooks");
    assert_eq!((row.edge, row.setback), (Edge::Back, MM(460)));
    assert_eq!(app.spot.row, MM(100));
    press(&mut app, "_8|_10|_|_");
    assert_eq!(cabinet(&app).free_rows[0].diameter, MM(8));
    // Through: a depth then says what it lacks.
    app.pane = Some(Pane::Sizes(4));
    press(&mut app, "|");
    assert_eq!(
        said(&app),
        "it goes through; its way of boring is the line below"
    );
}

#[test]
fn copies_are_added_named_and_taken_away_in_the_job() {
    let mut app = app(demo::job().unwrap());
    let before = app.desk.job.clone();
    let built = |app: &App| -> Vec<(String, bool)> {
        let copies = cabinet(app).copies.iter();
        let of = |copy: &gablerow_core::job::Copy| (copy.name.to_string(), copy.mirrored);
        copies.map(of).collect()
    };
    press(&mut app, "j+m");
    let names = [("1", false), ("2", false), ("3", true)];
    assert_eq!(built(&app), names.map(|(name, how)| (name.to_owned(), how)));
    press(&mut app, "n1, 2, by the kiln|");
    assert_eq!(said(&app), "copy 3 of G1 is by the kiln");
    press(&mut app, "n1, 2|");
    assert_eq!(complaint(&app), "2 names between commas, but 3 are built");
    press(&mut app, "~na, b, by the kiln|");
    assert_eq!(
        complaint(&app),
        "one new name at a time, so that each can be taken back"
    );
    press(&mut app, "~---");
    assert_eq!(built(&app).len(), 1);
    assert_eq!(
        said(&app),
        "G1 is built at least once; to build none of it remove the cabinet"
    );
    press(&mut app, "uuuuu");
    assert_eq!(app.desk.job, before);
}

#[test]
fn lengths_as_cut_are_typed_from_left_to_right() {
    let mut app = app(demo::job().unwrap());
    let before = app.desk.job.clone();
    press(&mut app, "jl703.6; 704|");
    assert_eq!(said(&app), "copy 1 of G1: 2 panels as cut");
    let cut = |app: &App| {
        let as_cut = &cabinet(app).copies[0].as_cut;
        as_cut.iter().map(|cut| cut.length).collect::<Vec<_>>()
    };
    assert_eq!(cut(&app), [Some(Length::from_um(703_600)), Some(MM(704))]);
    press(&mut app, "l703.6|");
    assert!(complaint(&app).starts_with("1 between ;, but there are 2 panels"));
    press(&mut app, "~l703.6; x|");
    assert!(!complaint(&app).is_empty());
    press(&mut app, "~l; 704|");
    assert_eq!(cut(&app), [Some(MM(704))]);
    press(&mut app, "uu");
    assert_eq!(app.desk.job, before);
}

#[test]
fn what_else_was_measured_of_a_panel_stands_behind_its_letter() {
    let mut app = app(demo::job().unwrap());
    press(&mut app, "jl703.6 t18.3 d-1.2; p0.2|");
    let as_cut = cabinet(&app).copies[0].as_cut.clone();
    let um = |um| Some(Length::from_um(um));
    let [left, right] = as_cut.as_slice() else {
        panic!("{as_cut:?}")
    };
    assert_eq!((left.length, left.thickness), (um(703_600), um(18_300)));
    assert_eq!((left.diagonals, left.play), (um(-1_200), None));
    assert_eq!((right.length, right.play), (None, um(200)));
    press(&mut app, "l");
    let Some(Asked::Line(line)) = &app.asked else {
        panic!("nothing is asked")
    };
    assert_eq!(line.field.text(), "703.6 t18.3 d-1.2; p0.2");
}
