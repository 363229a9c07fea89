//! At the bench, key by key.

use std::time::{Duration, Instant};

use gablerow_core::bench::{Check, Progress, progress_of_job};
use gablerow_core::check::{self, Rule};
use gablerow_core::job::{AsCut, Hand, Job, PanelId};
use gablerow_core::measure::{Length, Unit};
use gablerow_papers::panel_name;

use super::*;
use crate::app::{Asked, Screen};
use crate::demo;
use crate::key::{Key, Press};
use crate::update::tests::{app, press_all};
use crate::update::{Message, update};

/// A job that may be bored, with as many set-ups as there are.
fn store() -> (Job, usize) {
    let mut job = demo::job().unwrap();
    job.cabinets.truncate(2);
    let walk = Walk {
        since: 0,
        begun: Instant::now(),
        leaving: false,
    };
    let bench = AtBench::of(&job, &walk);
    assert!(bench.held.is_empty() && bench.plan.set_ups.len() > 3);
    (job, bench.plan.set_ups.len())
}

fn now(app: &App) -> Option<usize> {
    let walk = app.walk?;
    Some(AtBench::of(&app.desk.job, &walk).done)
}

const BENCH: Key = Key::Char('B');
const BACK: Key = Key::Char('b');

#[test]
fn space_alone_bores_the_whole_job_and_all_of_it_is_kept() {
    let (job, count) = store();
    let mut app = app(job);
    press_all(&mut app, &[BENCH]);
    let kept = press_all(&mut app, &vec![Key::SPACE; count]);
    assert_eq!((now(&app), kept.len()), (Some(count), count));
    let holes: usize = kept
        .iter()
        .map(|it| match it {
            Kept::Bored(holes, Some(_)) => holes.len(),
            other => panic!("{other:?}"),
        })
        .sum();
    assert_eq!(app.desk.job.bored.len(), holes);
    assert!(
        press_all(&mut app, &[Key::SPACE]).is_empty(),
        "there is no more"
    );
    press_all(&mut app, &[Key::Esc, Key::Esc, BENCH]);
    let bench = AtBench::of(&app.desk.job, &app.walk.unwrap());
    assert_eq!(
        bench.plan.set_ups,
        [],
        "all bored, and open to be taken back"
    );
}

#[test]
fn what_was_bored_on_an_earlier_day_is_taken_back_row_by_row() {
    let (job, count) = store();
    let mut app = app(job);
    press_all(&mut app, &[BENCH]);
    press_all(&mut app, &vec![Key::SPACE; count]);
    let all = app.desk.job.bored.len();
    press_all(&mut app, &[Key::Esc, Key::Esc, BENCH]);
    for rows in 1..=count {
        press_all(&mut app, &[BACK]);
        let bench = AtBench::of(&app.desk.job, &app.walk.unwrap());
        assert_eq!((bench.done, bench.plan.set_ups.len()), (0, rows));
    }
    assert_eq!(app.desk.job.bored.len(), 2 * all);
    assert_eq!(press_all(&mut app, &[BACK]), []);
    assert!(app.notice.as_ref().unwrap().is_refusal);
    press_all(&mut app, &vec![Key::SPACE; count]);
    assert_eq!(now(&app), Some(count));
}

/// The panel that is asked for when `n` is pressed.
fn offered(app: &App) -> String {
    match &app.asked {
        Some(Asked::Line(line)) => line.field.text().to_owned(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn of_a_panel_that_was_cut_anew_nothing_is_bored_or_measured() {
    let (job, count) = store();
    let mut app = app(job);
    press_all(&mut app, &[BENCH]);
    press_all(&mut app, &vec![Key::SPACE; count]);
    press_all(&mut app, &[Key::Esc, Key::Esc, BENCH]);
    assert_eq!(type_measured(&mut app, "+32").len(), 1);
    let job = app.desk.job.clone();
    let found = |job: &Job| {
        check::of_job(job)
            .iter()
            .any(|it| it.rule == Rule::MiscountedHole)
    };
    assert!(found(&job));
    let measured = job.measured[0];
    let bored = progress_of_job(&job);
    let is_it = |it: &&Progress| {
        (it.cabinet, it.copy, it.panel) == (measured.cabinet, measured.copy, measured.face.panel)
    };
    let of_panel = bored.iter().find(is_it).unwrap().done;

    press_all(&mut app, &[Key::Char('n')]);
    let name = panel_name(&job, measured.cabinet, measured.copy, measured.face.panel);
    assert_eq!(Some(offered(&app)), name);
    let kept = press_all(&mut app, &[Key::Enter]);
    let [Kept::Bored(back, None), Kept::Measured(gone)] = &kept[..] else {
        panic!("{kept:?}")
    };
    assert!(back.iter().all(|it| it.taken_back) && gone.taken_back);
    assert_eq!(back.len(), of_panel);
    let left = progress_of_job(&app.desk.job);
    let left: Vec<&Progress> = left.iter().filter(|it| it.left > 0).collect();
    assert_eq!(
        (left.len(), left[0].left, left[0].stale.len()),
        (1, of_panel, 0)
    );
    assert!(is_it(&left[0]) && !found(&app.desk.job));
    let set_ups = AtBench::of(&app.desk.job, &app.walk.unwrap()).plan.set_ups;
    assert_eq!(
        set_ups.iter().map(|it| it.holes.count()).sum::<usize>(),
        of_panel
    );
}

#[test]
fn what_was_measured_of_the_old_panel_as_cut_goes_with_it_and_comes_back() {
    let (mut job, _) = store();
    job.cabinets.truncate(1);
    let cut = |hand| AsCut {
        length: Some(Length::from_um(704_200)),
        ..AsCut::of(PanelId::Side(hand))
    };
    job.cabinets[0].copies[0].as_cut = [Hand::Left, Hand::Right].map(cut).into();
    let mut app = app(job);
    press_all(&mut app, &[BENCH, Key::SPACE, Key::Char('n')]);
    let kept = press_all(&mut app, &[Key::Enter]);
    assert!(
        matches!(kept[..], [Kept::Made(_), Kept::Bored(_, None)]),
        "{kept:?}"
    );
    let left = |app: &App| app.desk.job.cabinets[0].copies[0].as_cut.len();
    assert_eq!(left(&app), 1);
    press_all(&mut app, &[Key::Esc, Key::Esc, Key::Char('u')]);
    assert_eq!(left(&app), 2);
}

#[test]
fn a_panel_that_is_not_on_record_cannot_be_cut_anew() {
    let (job, _) = store();
    let mut app = app(job);
    press_all(&mut app, &[BENCH, Key::Char('n')]);
    assert!(app.asked.is_none() && app.notice.as_ref().unwrap().is_refusal);
    press_all(&mut app, &[Key::SPACE, Key::Char('n'), Key::Char('x')]);
    assert_eq!(press_all(&mut app, &[Key::Enter]), []);
    let Some(Asked::Line(line)) = &app.asked else {
        panic!("the line is gone")
    };
    let complaint = line.complaint.as_deref().unwrap();
    assert!(complaint.starts_with("bored are: "), "{complaint}");
}

#[test]
fn one_back_takes_back_what_was_recorded_last() {
    let (job, _) = store();
    let mut app = app(job);
    press_all(&mut app, &[BENCH, Key::SPACE, Key::SPACE, BACK, BACK, BACK]);
    assert_eq!(now(&app), Some(0));
    assert!(app.notice.is_some_and(|notice| notice.is_refusal));
    let record = &app.desk.job.bored;
    let back = record.iter().filter(|it| it.taken_back).count();
    assert_eq!(record.len(), 2 * back, "the record is only added to");
}

#[test]
fn every_other_key_is_dead() {
    let (job, _) = store();
    let mut app = app(job);
    press_all(&mut app, &[BENCH, Key::SPACE]);
    let before = app.desk.job.clone();
    let letters = (' '..='~').filter(|letter| !" bmnx?".contains(*letter));
    let others = [
        Key::Enter,
        Key::Up,
        Key::Left,
        Key::Tab,
        Key::Backspace,
        Key::End,
    ];
    for key in letters.map(Key::Char).chain(others) {
        assert!(press_all(&mut app, &[key]).is_empty(), "{key:?}");
        assert_eq!(now(&app), Some(1), "{key:?}");
    }
    assert_eq!(app.desk.job, before);
}

#[test]
fn leaving_takes_two_presses_and_any_other_key_between_them_stays() {
    let (job, _) = store();
    let mut app = app(job);
    press_all(&mut app, &[BENCH, Key::Esc]);
    assert_eq!(now(&app), Some(0));
    for key in [Key::SPACE, Key::Char('z'), Key::Up] {
        press_all(&mut app, &[key, Key::Esc]);
        assert_eq!(now(&app), Some(1), "{key:?}");
    }
    press_all(&mut app, &[Key::Esc]);
    assert_eq!(app.screen, Screen::Face);
    assert!(!app.desk.is_saved(), "the record is not in the file yet");
    press_all(&mut app, &[Key::Char('u')]);
    assert!(!app.desk.job.bored.is_empty(), "undo never touches it");
}

#[test]
fn whoever_leaves_is_where_they_came_from() {
    let (job, _) = store();
    for (way, left_on) in [
        (None, Screen::Face),
        (Some('m'), Screen::Book),
        (Some('v'), Screen::Front),
        (Some('j'), Screen::Job(job.cabinets[0].key)),
    ] {
        let mut app = app(job.clone());
        let way_there = way.map(Key::Char).into_iter();
        let bored = [BENCH, Key::SPACE, Key::Esc, Key::Esc];
        press_all(&mut app, &way_there.chain(bored).collect::<Vec<_>>());
        assert_eq!((app.walk, app.screen), (None, left_on), "{way:?}");
    }
}

#[test]
fn a_worn_space_bar_counts_once() {
    let (job, _) = store();
    let mut app = app(job);
    press_all(&mut app, &[BENCH]);
    let at = Instant::now() + Duration::from_secs(60);
    for after in [0, 30, 60] {
        let press = Press {
            key: Key::SPACE,
            at: at + Duration::from_millis(after),
        };
        update(&mut app, Message::Press(press));
    }
    assert_eq!(now(&app), Some(1));
    let took = app.desk.job.took[0];
    assert!(
        took.planned > 0 && (50..=60).contains(&took.seconds),
        "{took:?}"
    );
}

#[test]
fn trouble_is_kept_in_words_with_the_panel() {
    let (job, _) = store();
    let mut app = app(job);
    let words = "bit wandered".chars().map(Key::Char);
    let keys: Vec<Key> = [BENCH, Key::Char('x')]
        .into_iter()
        .chain(words)
        .chain([Key::Enter])
        .collect();
    let kept = press_all(&mut app, &keys);
    assert_eq!(kept, [Kept::Trouble(app.desk.job.troubles[0].clone())]);
    assert_eq!(app.desk.job.troubles[0].words.as_str(), "bit wandered");
    assert_eq!(now(&app), Some(0));
}

#[test]
fn a_stop_holds_its_cabinet_back_from_the_bench() {
    let mut job = demo::job().unwrap();
    job.cabinets.drain(..2);
    let mut app = app(job);
    press_all(&mut app, &[BENCH]);
    assert_eq!(now(&app), None);
    assert_eq!(
        app.notice.unwrap().text,
        "nothing to bore: G3 held back by stops, which the checks name"
    );
}

/// Works up to the first set-up that has three distances to measure, along, to an end and across; what they should be.
fn to_the_first_distances(app: &mut App) -> Vec<Check> {
    press_all(app, &[BENCH]);
    for _ in 0..100 {
        let bench = AtBench::of(&app.desk.job, &app.walk.unwrap());
        let set_up = bench.set_up().expect("a face with three distances");
        if let [_, _, _] = set_up.checks[..] {
            return set_up.checks.clone();
        }
        press_all(app, &[Key::SPACE]);
    }
    panic!("presses are lost");
}

fn type_measured(app: &mut App, text: &str) -> Vec<Kept> {
    let typed = text.chars().map(Key::Char);
    let keys = [Key::Char('m')].into_iter().chain(typed);
    press_all(app, &keys.chain([Key::Enter]).collect::<Vec<_>>())
}

#[test]
fn what_was_measured_is_kept_and_a_hole_too_far_is_a_finding_at_once() {
    let (job, _) = store();
    let mut app = app(job);
    let checks = to_the_first_distances(&mut app);
    let kept = type_measured(&mut app, "+0.2; ; +0");
    let all = app.desk.job.measured.clone();
    assert_eq!(
        kept,
        all.iter().copied().map(Kept::Measured).collect::<Vec<_>>()
    );
    let is: Vec<Length> = all.iter().map(|it| it.is - it.want).collect();
    assert_eq!(is, [Length::from_um(200), Length::ZERO]);
    let want: Vec<Length> = all.iter().map(|it| it.want).collect();
    assert_eq!(want, [checks[0].want, checks[2].want]);
    let said = app.notice.clone().unwrap().text;
    assert!(
        said.contains(": 0.2 too long, row ") && said.ends_with(": as wanted"),
        "{said}"
    );
    let miscounted = |app: &App| {
        let found = check::of_job(&app.desk.job);
        found
            .iter()
            .filter(|it| it.rule == Rule::MiscountedHole)
            .count()
    };
    assert_eq!(miscounted(&app), 0);
    let longer = checks[0].want + Length::PITCH;
    type_measured(&mut app, &longer.show(Unit::Millimetre).to_string());
    assert_eq!((miscounted(&app), app.desk.job.measured.len()), (1, 3));
    assert!(!app.desk.is_saved(), "the record is not in the file yet");
    type_measured(&mut app, "+0");
    assert_eq!(miscounted(&app), 0, "what was measured last holds");
}

#[test]
fn what_is_no_distance_is_asked_again_and_nothing_is_kept() {
    let (job, _) = store();
    let mut app = app(job);
    to_the_first_distances(&mut app);
    for text in ["", " ; ", "1; 2; 3; 4", "wide", "9999"] {
        assert!(type_measured(&mut app, text).is_empty(), "{text}");
        assert!(app.asked.is_some(), "{text}");
        press_all(&mut app, &[Key::Esc]);
    }
    assert!(app.desk.job.measured.is_empty());
}

#[test]
fn a_face_that_is_not_done_has_nothing_to_measure_and_one_that_was_done_just_now_has() {
    let (job, _) = store();
    let mut app = app(job);
    press_all(&mut app, &[BENCH]);
    let first = AtBench::of(&app.desk.job, &app.walk.unwrap());
    assert!(first.set_up().unwrap().checks.is_empty());
    press_all(&mut app, &[Key::Char('m')]);
    assert!(app.asked.is_none() && app.notice.as_ref().unwrap().is_refusal);
    let checks = to_the_first_distances(&mut app);
    let bench = AtBench::of(&app.desk.job, &app.walk.unwrap());
    let done = bench.set_up().map(|it| (it.cabinet, it.copy, it.face));
    press_all(&mut app, &[Key::SPACE]);
    // Whatever is in sight by now, it is the face that was done which is measured.
    assert_eq!(type_measured(&mut app, "+0").len(), 1);
    let measured = app.desk.job.measured[0];
    assert_eq!(Some((measured.cabinet, measured.copy, measured.face)), done);
    assert_eq!(measured.span, checks[0].span);
}

#[test]
fn a_fitting_that_goes_to_where_its_holes_were_bored_is_there_on_record() {
    let (mut job, _) = store();
    job.cabinets.truncate(1);
    job.cabinets[0].copies.truncate(1);
    let mut app = app(job);
    press_all(&mut app, &[BENCH]);
    let count = AtBench::of(&app.desk.job, &app.walk.unwrap())
        .plan
        .set_ups
        .len();
    press_all(&mut app, &vec![Key::SPACE; count]);
    type_measured(&mut app, "+32");
    let checks = [Key::Esc, Key::Esc, Key::Char('k')];
    press_all(&mut app, &checks);
    let kept = press_all(&mut app, &[Key::Char('z'), Key::Enter]);
    assert!(
        matches!(kept[..], [Kept::Made(_), Kept::Bored(_, None)]),
        "{kept:?}"
    );
    let panels = progress_of_job(&app.desk.job);
    assert!(
        panels.iter().all(|it| (it.left, it.stale.len()) == (0, 0)),
        "{panels:?}"
    );
}
