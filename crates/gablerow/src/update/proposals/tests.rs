//! Proposals are shown, taken, taken back.

use gablerow_core::job::{Division, Job, Label};

use super::*;
use crate::demo;
use crate::keymap::Context;
use crate::proposals::shown;
use crate::update::tests::{app, press_all};

fn typed(text: &str) -> Vec<crate::key::Key> {
    text.chars().map(crate::key::Key::Char).collect()
}

/// A plain cabinet in two bays, a door on the left one, three drawers on the right one.
fn wished() -> App {
    let mut app = app(Job::plain(Label::new("kiln room").unwrap()));
    press_all(&mut app, &typed("v|d"));
    let right = crate::key::Key::Right;
    press_all(&mut app, &[right, right]);
    press_all(&mut app, &typed("3r"));
    app
}

/// How many plates and runners a job has.
fn hardware(job: &Job) -> (usize, usize) {
    let (mut plates, mut runners) = (0, 0);
    job.cabinets[0].opening.each(&mut |opening| {
        if let Division::Bay(bay) = &opening.division {
            plates += bay.plates.len();
            runners += bay.runners.len();
        }
    });
    (plates, runners)
}

#[test]
fn a_proposal_is_seen_before_it_is_taken() {
    let mut app = wished();
    press_all(&mut app, &typed("h"));
    assert_eq!(proposals(&app).len(), 2);
    assert_eq!(hardware(&app.desk.job), (0, 0));
    assert_eq!(hardware(&shown(&app, &proposals(&app))), (0, 3));
    press_all(&mut app, &[crate::key::Key::Down]);
    assert_eq!(hardware(&shown(&app, &proposals(&app))), (2, 0));
    press_all(&mut app, &[crate::key::Key::Esc]);
    assert_eq!(
        (app.pane, hardware(&shown(&app, &proposals(&app)))),
        (None, (0, 0))
    );
}

#[test]
fn each_taken_proposal_is_one_undo() {
    let mut app = wished();
    press_all(&mut app, &typed("h"));
    press_all(&mut app, &[crate::key::Key::Enter]);
    assert_eq!(hardware(&app.desk.job), (0, 3));
    assert_eq!(proposals(&app).len(), 1, "the door still waits");
    press_all(&mut app, &[crate::key::Key::Enter]);
    assert_eq!((app.pane, hardware(&app.desk.job)), (None, (2, 3)));
    press_all(&mut app, &typed("u"));
    assert_eq!(hardware(&app.desk.job), (0, 3));
}

#[test]
fn all_of_them_are_one_undo_too() {
    let mut app = wished();
    let before = app.desk.job.clone();
    press_all(&mut app, &typed("ha"));
    assert_eq!((app.pane, hardware(&app.desk.job)), (None, (2, 3)));
    press_all(&mut app, &typed("u"));
    assert_eq!(app.desk.job, before);
}

#[test]
fn where_nothing_waits_it_is_said() {
    let mut app = app(Job::plain(Label::new("kiln room").unwrap()));
    press_all(&mut app, &typed("vh"));
    assert_eq!((app.pane, app.context()), (None, Context::Front));
    assert!(app.notice.is_some_and(|notice| notice.is_refusal));
}

#[test]
fn a_face_offers_heights_and_shelf_holes() {
    let mut app = app(Job::plain(Label::new("kiln room").unwrap()));
    press_all(&mut app, &typed("e797"));
    press_all(&mut app, &[crate::key::Key::Enter, crate::key::Key::Esc]);
    press_all(&mut app, &typed("y"));
    assert_eq!(proposals(&app).len(), 5);
    press_all(&mut app, &typed("a"));
    assert!(app.notice.as_ref().is_some_and(|notice| notice.is_refusal));
    press_all(&mut app, &[crate::key::Key::Enter]);
    assert_eq!(
        proposals(&app).len(),
        1,
        "balanced; the shelf holes are left"
    );
    press_all(&mut app, &[crate::key::Key::Enter]);
    assert_eq!(app.pane, None);
}

/// The demo on the right side of its third cabinet, where a plate and pins want one hole at 3 and at 20, and these keys.
fn clashing(keys: &str) -> App {
    let mut app = app(demo::job().unwrap());
    press_all(&mut app, &typed("pp"));
    press_all(&mut app, &typed(keys));
    app
}

fn open_stops(app: &App, job: &Job) -> usize {
    let scene = Scene::at(job, &app.spot).unwrap();
    let stops = scene.findings.iter().filter(|it| it.is_open_stop());
    stops.count()
}

#[test]
fn a_fix_is_seen_from_the_checks_taken_and_taken_back() {
    let mut app = clashing("k");
    let before = app.desk.job.clone();
    let stops = open_stops(&app, &before);
    press_all(&mut app, &typed("z"));
    assert_eq!(app.context(), Context::Proposals);
    assert_eq!(app.desk.job, before);
    assert_eq!(open_stops(&app, &shown(&app, &proposals(&app))), stops - 1);
    press_all(&mut app, &[crate::key::Key::Enter]);
    assert_eq!(open_stops(&app, &app.desk.job), stops - 1);
    assert_eq!(app.pane, Some(Pane::Checks(0)));
    press_all(&mut app, &typed("u"));
    assert_eq!(app.desk.job, before);
}

#[test]
fn leaving_the_fixes_leads_back_to_the_line_of_the_checks() {
    let mut app = clashing("k");
    press_all(&mut app, &[crate::key::Key::Down]);
    press_all(&mut app, &typed("z"));
    press_all(&mut app, &[crate::key::Key::Esc]);
    assert_eq!(app.pane, Some(Pane::Checks(1)));
}

#[test]
fn on_a_face_the_finding_of_the_hole_is_mended() {
    for (hole, first) in [("3", 3), ("20", 20)] {
        let mut app = clashing(hole);
        press_all(&mut app, &[crate::key::Key::Enter]);
        let spot = app.spot;
        press_all(&mut app, &typed("z"));
        let Some(Pane::Proposals {
            wish: Asking::Mend { finding, .. },
            ..
        }) = app.pane
        else {
            panic!("{:?}", app.pane);
        };
        assert_eq!(finding.place.holes.map(|holes| holes.0), Some(first));
        press_all(&mut app, &[crate::key::Key::Esc]);
        assert_eq!((app.pane, app.spot), (None, spot));
    }
}

#[test]
fn where_nothing_is_found_or_no_single_change_helps_it_is_said() {
    let mut app = clashing("10");
    press_all(&mut app, &[crate::key::Key::Enter]);
    press_all(&mut app, &typed("z"));
    assert_eq!(app.pane, None);
    assert!(app.notice.as_ref().is_some_and(|notice| notice.is_refusal));
}

// A drawer that nothing carries is a note, and runners would carry it.
#[test]
fn from_the_front_the_finding_about_a_front_is_mended() {
    let mut app = wished();
    press_all(&mut app, &typed("z"));
    let Some(Pane::Proposals { wish, .. }) = app.pane else {
        panic!("{:?}", app.notice);
    };
    assert!(matches!(wish, Asking::Mend { from: None, .. }));
    let before = app.desk.job.clone();
    press_all(&mut app, &[crate::key::Key::Enter]);
    assert_ne!(app.desk.job, before);
    press_all(&mut app, &typed("u"));
    assert_eq!(app.desk.job, before);
    assert_eq!(app.screen, crate::app::Screen::Front);
}
