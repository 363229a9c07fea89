//! Killed in the middle of editing: at most the key in flight is lost.

use std::path::Path;
use std::time::{Duration, Instant};

use gablerow::app::{App, Desk};
use gablerow::key::{Key, Press};
use gablerow::theme::{Charset, Depth, Theme};
use gablerow::update::{Effect, Message, update};
use gablerow::view::view;
use gablerow::{demo, job_file};
use gablerow_core::history::History;
use gablerow_core::job::Job;
use rustix::process::Signal;

use crate::key_script::{presses, send, shown};
use crate::pty::{Program, Session, keys};

const SIZE: (u16, u16) = (80, 24);
const FILE: &str = "pottery.json";

/// Steps to choose from; each ends on the face, and no two toggle the same thing twice in a row.
const STEPS: [&str; 9] = ["h", "r", "l", "Up s", "5 s", "7 c", "Up", "1 5 Enter", "u"];

fn program(folder: &Path) -> Program {
    Program::new(Path::new(env!("CARGO_BIN_EXE_gablerow")))
        .folder(folder)
        .size(SIZE.0, SIZE.1)
}

/// The same keys in a program of our own, without terminal and disk.
struct Model {
    app: App,
    at: Instant,
}

impl Model {
    fn new(has_file: bool) -> Self {
        let path = if has_file { FILE } else { "glaze-store.json" };
        let desk = Desk {
            job: demo::job().unwrap(),
            history: History::of_saved(),
            path: path.into(),
            has_file,
            recorded: 0,
        };
        let theme = Theme::new(Depth::Plain, Charset::Unicode);
        Self {
            app: App::new(desk, theme, SIZE),
            at: Instant::now(),
        }
    }

    fn press(&mut self, bytes: &str) {
        let key = match bytes {
            keys::UP => Key::Up,
            keys::ENTER => Key::Enter,
            letter => Key::Char(letter.chars().next().unwrap()),
        };
        self.at += Duration::from_secs(1);
        let effects = update(&mut self.app, Message::Press(Press { key, at: self.at }));
        assert!(!effects.contains(&Effect::Quit));
    }

    /// What the program has to show now.
    fn screen(&self) -> String {
        let frame = view(&self.app);
        let line = |y| {
            (0..SIZE.0)
                .map(|x| frame[(x, y)].symbol())
                .collect::<String>()
                .trim_end()
                .to_owned()
        };
        (0..SIZE.1)
            .map(line)
            .collect::<Vec<_>>()
            .join("\n")
            .trim_end()
            .to_owned()
            + "\n"
    }

    fn job(&self) -> Job {
        edited(&self.app.desk.job)
    }
}

/// A job without what saving adds: where it was left, what state its cabinets are in.
fn edited(job: &Job) -> Job {
    Job {
        left_at: None,
        revisions: Vec::new(),
        ..job.clone()
    }
}

fn wait_screen(session: &Session, model: &Model) {
    let expected = model.screen();
    session.wait("the screen of the model", |screen| {
        (shown(screen) == expected).then_some(())
    });
}

/// A small generator, so that each case can be had again from its number.
fn random(seed: &mut u64) -> usize {
    *seed = seed
        .wrapping_mul(6_364_136_223_846_793_005)
        .wrapping_add(1_442_695_040_888_963_407);
    usize::try_from(*seed >> 33).unwrap()
}

/// The steps of a case as presses, no step twice in a row.
fn case(mut seed: u64) -> Vec<String> {
    let (mut steps, mut before) = (Vec::new(), STEPS.len());
    for _ in 0..3 + random(&mut seed) % 9 {
        let step = (0..)
            .map(|_| random(&mut seed) % STEPS.len())
            .find(|&step| step != before)
            .unwrap();
        steps.extend(presses(STEPS[step]));
        before = step;
    }
    steps
}

fn killed_while_editing(seed: u64, named: bool) {
    let folder = tempfile::tempdir().unwrap();
    if named {
        std::fs::write(
            folder.path().join(FILE),
            job_file::write(&demo::job().unwrap()),
        )
        .unwrap();
    }
    let start = || {
        if named {
            program(folder.path()).argument(FILE)
        } else {
            program(folder.path())
        }
        .start()
    };
    let all = case(seed);
    let (last, before) = all.split_last().unwrap();
    let mut model = Model::new(named);
    let mut session = start();
    session.wait_text("glaze store");
    send(&mut session, before);
    before.iter().for_each(|press| model.press(press));
    wait_screen(&session, &model);
    session.send(last);
    session.signal(Signal::KILL);
    drop(session.finish());
    let without_last = model.job();
    model.press(last);

    let mut again = start();
    again.wait_text("glaze store");
    again.send(keys::ENTER);
    again.send("S");
    if !named {
        again.wait_text("save as");
        again.send(keys::ENTER);
    }
    let name = if named { FILE } else { "glaze-store.json" };
    again.wait_text(&format!(" saved {name}"));
    let saved = job_file::read(&std::fs::read(folder.path().join(name)).unwrap()).unwrap();
    let saved = edited(&saved);
    assert!(
        saved == model.job() || saved == without_last,
        "seed {seed}, keys {all:?}"
    );
}

/// How many kills an ordinary run takes; `GABLEROW_KILLS` says another number.
fn kills() -> u64 {
    std::env::var("GABLEROW_KILLS")
        .ok()
        .and_then(|kills| kills.parse().ok())
        .unwrap_or(8)
}

#[test]
fn a_kill_costs_a_named_job_at_most_the_key_in_flight() {
    (0..kills()).for_each(|seed| killed_while_editing(seed, true));
}

#[test]
fn a_kill_costs_an_unnamed_job_at_most_the_key_in_flight() {
    (100..100 + kills()).for_each(|seed| killed_while_editing(seed, false));
}

#[test]
fn found_changes_can_be_declined_and_made_again() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(
        folder.path().join(FILE),
        job_file::write(&demo::job().unwrap()),
    )
    .unwrap();
    let start = || program(folder.path()).argument(FILE).start();
    let mut session = start();
    session.wait_text("glaze store");
    send(&mut session, &presses("f r t l"));
    session.wait_text("shelf on 22");
    session.signal(Signal::TERM);
    assert_eq!(session.finish().status.exit_code(), 143);

    let mut again = start();
    again.wait_text("2 unsaved changes found");
    again.send(keys::ESC);
    again.wait_text("as it was saved");
    again.send("U");
    again.wait_text("made again: runner 500 on 1");
    again.send("U");
    again.wait_text("made again: shelf on 22");
}

#[test]
fn a_second_window_is_refused_and_told_who_has_the_job() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(
        folder.path().join(FILE),
        job_file::write(&demo::job().unwrap()),
    )
    .unwrap();
    let first = program(folder.path()).argument(FILE).start();
    first.wait_text("glaze store");
    let second = program(folder.path()).argument(FILE).start().finish();
    assert_eq!(second.status.exit_code(), 2, "{}", second.output());
    let holder = first.process().as_raw_nonzero().to_string();
    assert!(second.output().contains(&holder), "{}", second.output());
}
