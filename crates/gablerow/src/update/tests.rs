//! Laws of the editor, whatever keys are pressed.

use std::time::{Duration, Instant};

use gablerow_core::history::History;
use gablerow_core::job::Job;
use gablerow_core::label::Label;
use proptest::prelude::*;

use super::*;
use crate::app::Desk;
use crate::scene::Scene;
use crate::theme::{Charset, Depth, Theme};
use crate::view::view;
use crate::{demo, job_file, journal_entry};

/// Every key that any place names, and a few that are typed.
fn any_key() -> impl Strategy<Value = Key> {
    let named: Vec<Key> = keymap::BINDINGS.iter().map(|binding| binding.key).collect();
    let typed = ".,+-'\" xé漢".chars().map(Key::Char);
    let keys: Vec<Key> = named
        .into_iter()
        .chain(typed)
        .filter(|&key| key != Key::Interrupt)
        .collect();
    prop::sample::select(keys)
}

fn any_keys() -> impl Strategy<Value = Vec<Key>> {
    prop::collection::vec(any_key(), 0..60)
}

fn desk(job: Job) -> Desk {
    Desk {
        recorded: job.records(),
        job,
        history: History::of_saved(),
        path: "glaze-store.json".into(),
        has_file: false,
    }
}

pub(super) fn app(job: Job) -> App {
    App::new(
        desk(job),
        Theme::new(Depth::True, Charset::Unicode),
        (80, 24),
    )
}

/// Cabinets with fronts of every kind.
pub(super) fn fronts() -> Job {
    let text = include_bytes!("../../../../tests/jobs/glaze_fronts.json");
    job_file::read(text).unwrap()
}

/// The demo, cabinets with fronts, or a plain job.
fn any_job() -> impl Strategy<Value = Job> {
    prop_oneof![
        Just(demo::job().unwrap()),
        Just(fronts()),
        Just(Job::plain(Label::new("kiln room").unwrap())),
    ]
}

/// Presses the keys a second apart, saves what is to be saved, and gives what the journal would hold.
pub(super) fn press_all(app: &mut App, keys: &[Key]) -> Vec<Kept> {
    let mut kept = Vec::new();
    // A second after whatever was pressed before, or a press of the same key would be a bounce of it.
    let mut at = app.entry.press.map_or_else(Instant::now, |press| press.at);
    for &key in keys {
        at += Duration::from_secs(1);
        for effect in update(app, Message::Press(Press { key, at })) {
            match effect {
                Effect::Keep(change) => kept.push(change),
                Effect::Save { path, .. } => drop(update(app, Message::Saved(path))),
                Effect::KeepInShop(more) => {
                    let file = Box::new(app.shop_file.clone().with(*more));
                    let path = PathBuf::from("shop.json");
                    drop(update(app, Message::ShopKept(file, path)));
                }
                Effect::ReadShop => {
                    let file = Box::new(app.shop_file.clone());
                    drop(update(app, Message::ShopRead(file)));
                }
                Effect::WritePapers(_) => {
                    drop(update(app, Message::PapersOver(PaperTally::default())));
                }
                Effect::StopPapers | Effect::Quit => {}
            }
        }
    }
    kept
}

/// A job without what undo never touches: where it was left, what was saved last, what was said at the bench.
fn edited(job: &Job) -> Job {
    Job {
        left_at: None,
        bored: Vec::new(),
        took: Vec::new(),
        troubles: Vec::new(),
        measured: Vec::new(),
        revisions: Vec::new(),
        ..job.clone()
    }
}

proptest! {
    #[test]
    fn every_state_the_editor_reaches_saves_and_reopens_equal(job in any_job(), keys in any_keys()) {
        let mut app = app(job);
        press_all(&mut app, &keys);
        let job = &app.desk.job;
        prop_assert_eq!(&job_file::read(job_file::write(job).as_bytes()).unwrap(), job);
    }

    #[test]
    fn the_person_always_stands_somewhere(job in any_job(), keys in any_keys()) {
        let mut app = app(job);
        press_all(&mut app, &keys);
        prop_assert!(Scene::at(&app.desk.job, &app.spot).is_some());
        prop_assert_eq!(app.spot.settled(&app.desk.job), app.spot);
    }

    #[test]
    fn undo_of_all_is_the_job_at_first_and_redo_of_all_the_job_at_last(job in any_job(), keys in any_keys()) {
        let mut app = app(job.clone());
        press_all(&mut app, &keys);
        while app.desk.history.redo(&mut app.desk.job).is_some() {}
        let furthest = app.desk.job.clone();
        while app.desk.history.undo(&mut app.desk.job).is_some() {}
        prop_assert_eq!(edited(&app.desk.job), edited(&job));
        while app.desk.history.redo(&mut app.desk.job).is_some() {}
        prop_assert_eq!(&app.desk.job, &furthest);
    }

    #[test]
    fn what_the_journal_keeps_makes_the_same_job_again(job in any_job(), keys in any_keys()) {
        let mut app = app(job.clone());
        let kept = press_all(&mut app, &keys);
        let (mut again, mut history) = (job, History::of_saved());
        for change in kept {
            match journal_entry::read(&journal_entry::write(&change).unwrap()).unwrap() {
                Kept::Made(step) => history.make(*step, &mut again),
                Kept::Undone => drop(history.undo(&mut again)),
                Kept::Redone => drop(history.redo(&mut again)),
                Kept::Left(place) => again.left_at = Some(place),
                Kept::Bored(..) | Kept::Trouble(_) | Kept::Measured(_) => {}
                Kept::Began(_) => panic!("no key begins a job"),
            }
        }
        prop_assert_eq!(edited(&again), edited(&app.desk.job));
        prop_assert_eq!(history.steps(), app.desk.history.steps());
    }

    #[test]
    fn drawing_twice_gives_the_same_frame_at_any_size(
        job in any_job(), keys in any_keys(), size in (0..130_u16, 0..50_u16)
    ) {
        let mut app = app(job);
        press_all(&mut app, &keys);
        update(&mut app, Message::Resize(size.0, size.1));
        prop_assert_eq!(view(&app), view(&app));
    }
}

fn press(app: &mut App, key: char, at: Instant) -> usize {
    update(
        app,
        Message::Press(Press {
            key: Key::Char(key),
            at,
        }),
    )
    .len()
}

#[test]
fn a_worn_key_toggles_once() {
    let mut app = app(Job::plain(Label::new("kiln room").unwrap()));
    let at = Instant::now();
    assert_eq!(press(&mut app, 'h', at), 1);
    assert_eq!(
        press(&mut app, 'h', at + Duration::from_millis(40)),
        0,
        "a bounce"
    );
    assert_eq!(
        press(&mut app, 'h', at + Duration::from_millis(200)),
        1,
        "a wish"
    );
    // Other keys in between make it a wish, however fast a hand is.
    press(&mut app, 'f', at + Duration::from_millis(210));
    assert_eq!(press(&mut app, 'h', at + Duration::from_millis(220)), 1);
}

#[test]
fn a_refused_length_says_why_and_keeps_what_was_typed() {
    let mut app = app(Job::plain(Label::new("kiln room").unwrap()));
    let keys = ['e', '9', '9', '9', '9'].map(Key::Char);
    press_all(&mut app, &[&keys[..], &[Key::Enter]].concat());
    let Some(Asked::Line(line)) = &app.asked else {
        panic!("the line was closed")
    };
    assert_eq!(line.field.text(), "9999");
    assert_eq!(
        line.complaint.as_deref(),
        Some("carcass height: 9999, but it is 100 to 4000 mm")
    );
    assert!(app.desk.history.is_saved());
}

#[test]
fn a_length_in_the_wrong_unit_is_refused_with_a_way_to_type_it() {
    let complaint = |keys: &str, typed: &str| {
        let mut app = app(Job::plain(Label::new("kiln room").unwrap()));
        let keys: Vec<Key> = keys.chars().chain(typed.chars()).map(Key::Char).collect();
        press_all(&mut app, &[&keys[..], &[Key::Enter]].concat());
        match app.asked {
            Some(Asked::Line(line)) => line.complaint,
            _ => None,
        }
    };
    assert_eq!(
        complaint("e", "27 23/32").as_deref(),
        Some("carcass height: 27.71875, but it is 100 to 4000 mm; for inches type 27 23/32\"")
    );
    assert_eq!(
        complaint("ie", "720").as_deref(),
        Some(
            "carcass height: 720\", but it is ~3 15/16\" to 157 15/32\" (~+0.3); for mm type 720mm"
        )
    );
    // Neither unit makes a height of these, and the last one has its unit.
    for neither in ["9999", "1/2", "3\""] {
        let said = complaint("e", neither).unwrap();
        assert!(!said.contains(" type "), "{neither}: {said}");
    }
}

#[test]
fn a_cabinet_goes_only_when_its_name_is_typed() {
    let mut app = app(demo::job().unwrap());
    let typed = |text: &str| text.chars().map(Key::Char).collect::<Vec<_>>();
    press_all(&mut app, &[typed("jxG9"), vec![Key::Enter]].concat());
    assert_eq!(app.desk.job.cabinets.len(), 3);
    press_all(
        &mut app,
        &[vec![Key::Backspace], typed("1"), vec![Key::Enter]].concat(),
    );
    assert_eq!(app.desk.job.cabinets.len(), 2);
    press_all(&mut app, &typed("u"));
    assert_eq!(app.desk.job, demo::job().unwrap());
}

#[test]
fn a_page_ends_at_its_last_line_and_gives_way_to_what_it_lay_on() {
    let mut app = app(demo::job().unwrap());
    press_all(&mut app, &[Key::Char('e'), Key::Char('?')]);
    press_all(&mut app, &[Key::Down; 500]);
    let last = page::last_start(&app);
    assert_eq!(app.pane, Some(Pane::Help(last)));
    press_all(&mut app, &[Key::Up]);
    assert_eq!(app.pane, Some(Pane::Help(last - 1)));
    let first = page::lines(&app).swap_remove(0);
    assert_eq!(
        first,
        page::PageLine::Heading(Context::Sizes.title().to_owned())
    );
    press_all(&mut app, &[Key::Esc]);
    assert_eq!(app.pane, Some(Pane::Sizes(0)));
}

#[test]
fn the_line_of_the_checks_stays_on_a_finding() {
    let mut app = app(demo::job().unwrap());
    // Two runners on pins: findings that undo takes away again.
    press_all(
        &mut app,
        &"9\rr"
            .chars()
            .map(|c| if c == '\r' { Key::Enter } else { Key::Char(c) })
            .collect::<Vec<_>>(),
    );
    press_all(&mut app, &[Key::Char('k')]);
    press_all(&mut app, &[Key::Down; 20]);
    assert!(matches!(app.pane, Some(Pane::Checks(at)) if at > 1));
    press_all(&mut app, &[Key::Char('u')]);
    // The shelf that sags is left, and the note that was accepted.
    assert_eq!(app.pane, Some(Pane::Checks(1)));
}

#[test]
fn leaving_is_not_forgotten_when_the_name_was_taken() {
    let mut app = app(demo::job().unwrap());
    let path = PathBuf::from("kiln.json");
    let occupied = Message::Occupied {
        path: path.clone(),
        what: "not saved: kiln.json: a file of this name is already there; use another name, or overwrite it".to_owned(),
        then_quit: true,
    };
    update(&mut app, occupied);
    let frame = view(&app);
    let foot: String = (0..80).map(|x| frame[(x, 23)].symbol()).collect();
    for hint in ["s other name", "o overwrite", "Esc back"] {
        assert!(foot.contains(hint), "{foot}");
    }
    let press = Press {
        key: Key::Char('o'),
        at: Instant::now(),
    };
    let expected = Effect::Save {
        path,
        overwrite: true,
        then_quit: true,
    };
    assert_eq!(update(&mut app, Message::Press(press)), [expected]);
}

#[test]
fn a_step_in_another_cabinet_is_taken_back_by_its_name() {
    let mut app = app(demo::job().unwrap());
    press_all(&mut app, &"l".chars().map(Key::Char).collect::<Vec<_>>());
    press_all(&mut app, &[Key::Char('n'), Key::Char('n'), Key::Char('u')]);
    let said = app.notice.map(|notice| notice.text);
    assert_eq!(said.as_deref(), Some("taken back: shelf on 3, in G1"));
}
