//! At the bench, key by key.

use std::time::{Duration, Instant};

use gablerow_core::job::Job;

use super::*;
use crate::app::Screen;
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
    assert_eq!(now(&app), None);
    assert_eq!(app.notice.unwrap().text, "nothing is left to bore");
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
    let letters = (' '..='~').filter(|letter| !" bx?".contains(*letter));
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
    press_all(&mut app, &[Key::SPACE, Key::Esc]);
    assert_eq!(now(&app), Some(1));
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
