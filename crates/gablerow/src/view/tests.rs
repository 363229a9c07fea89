//! Laws of the screens, at every size and whatever people call their things.

use std::io::{self, Write};
use std::time::{Duration, Instant};

use gablerow_core::edit::{Edit, Measure};
use gablerow_core::history::History;
use gablerow_core::job::Job;
use gablerow_core::label::Label;
use gablerow_core::measure::Length;
use proptest::prelude::*;

use super::*;
use crate::app::{Asked, Desk};
use crate::demo;
use crate::job_file::{self, arbitrary};
use crate::key::{Key, Press};
use crate::keymap;
use crate::shop_file::ShopFile;
use crate::terminal::{Painter, is_shown};
use crate::theme::{Charset, Depth, Theme};
use crate::update::{Message, update};

/// The keys that lead to each screen, pane and question from the face that the program opens on.
const WAYS: [&str; 29] = [
    "",
    "m",
    "e",
    "e9",
    "e9\r",
    "j",
    "ja",
    "jx",
    "k",
    "ka",
    "ppkz",
    "pp3\rz",
    "w",
    "?",
    "S",
    "hq",
    "12",
    " ",
    "v",
    "v ",
    "v  b",
    "vnb",
    "ve",
    "vnnw",
    "C",
    "C\r",
    "C\r1 1/4\"",
    "C\r9999\r",
    "Cc",
];

/// Cabinets with fronts of every kind.
fn fronts() -> Job {
    let text = include_bytes!("../../../../tests/jobs/glaze_fronts.json");
    job_file::read(text).unwrap()
}

fn app(job: Job, charset: Charset) -> App {
    let desk = Desk {
        recorded: job.records(),
        job,
        history: History::of_saved(),
        path: "glaze-store.json".into(),
        has_file: false,
    };
    App::new(desk, Theme::new(Depth::True, charset), (80, 24))
}

fn press(app: &mut App, key: Key) {
    let at = Instant::now() + Duration::from_secs(u64::from(app.entry.press.is_some()));
    update(app, Message::Press(Press { key, at }));
}

/// The program at the end of a way, and with the questions that only the disk leads to.
fn states(job: &Job, charset: Charset) -> Vec<App> {
    let led = WAYS.iter().map(|way| {
        let mut app = app(job.clone(), charset);
        for character in way.chars() {
            let key = match character {
                '\r' => Key::Enter,
                character => Key::Char(character),
            };
            press(&mut app, key);
        }
        app
    });
    let mut states: Vec<App> = led.collect();
    let mut other = job.clone();
    other.cards.boards[0].title = Label::new(AWKWARD).unwrap();
    let mut app_of_shop = app(job.clone(), charset);
    press(&mut app_of_shop, Key::Char('C'));
    let kept = Box::new(ShopFile {
        shop: None,
        cards: other.cards,
    });
    update(&mut app_of_shop, Message::ShopRead(kept));
    assert_eq!(app_of_shop.context(), keymap::Context::FromShop);
    states.push(app_of_shop);
    let asked = [
        Asked::Found(3),
        Asked::Occupied {
            path: HOSTILE.into(),
            what: HOSTILE.to_owned(),
            then_quit: false,
        },
    ];
    for question in asked {
        let mut app = app(job.clone(), charset);
        app.asked = Some(question);
        states.push(app);
    }
    states
}

/// What no name may do to a screen: command it, turn its reading order, hide, stand over other lines, be wider than it looks.
const HOSTILE: &str = "a\u{1b}[2J\u{7}\u{9b}31m\r\nb\tc\u{202e}d\u{2067}\u{200d}\u{feff}\u{e0041}漢\u{301}\u{301}\u{301}👩\u{200d}🔧";

/// A name that a job does take, and that is as awkward as names get.
const AWKWARD: &str = "漢字e\u{301}\u{302}\u{303}👩🏽\u{fe0f}ﷺ\u{3164}\u{ad}ｗｉｄｅ";

/// The demo with awkward names, on a path that is hostile.
fn hostile(charset: Charset) -> Vec<App> {
    let mut job = demo::job().unwrap();
    let name = Label::new(AWKWARD).unwrap();
    let edits = [
        Edit::Title(name.clone()),
        Edit::Rename {
            cabinet: job.cabinets[0].key,
            name,
        },
    ];
    for edit in edits {
        edit.apply(&job).unwrap().apply(&mut job);
    }
    let mut awkward = fronts();
    for cabinet in &mut awkward.cabinets {
        cabinet.opening.each_mut(&mut |opening| {
            let fronts = opening.fronts.iter_mut();
            fronts.for_each(|front| front.name = Label::new(AWKWARD).unwrap());
        });
    }
    let mut states = [job.clone(), awkward]
        .iter()
        .flat_map(|job| states(job, charset))
        .collect::<Vec<App>>();
    for app in &mut states {
        app.desk.path = HOSTILE.into();
        update(app, Message::Paste(HOSTILE.to_owned()));
    }
    let said = |message: Message| {
        let mut app = app(job.clone(), charset);
        update(&mut app, message);
        app
    };
    states.push(said(Message::Saved(HOSTILE.into())));
    states.push(said(Message::Failed(HOSTILE.to_owned())));
    states
}

/// A terminal that counts what is written to it.
#[derive(Default)]
struct Counted {
    writes: usize,
    bytes: Vec<u8>,
}

impl Write for &mut Counted {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.writes += 1;
        self.bytes.extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

#[test]
fn every_screen_can_be_drawn_at_every_size() {
    let small = (0..40).flat_map(|width| (0..20).map(move |height| (width, height)));
    // About the least size, about the size from which both walls are shown, and ordinary ones.
    let edges = (58..63).flat_map(|width| (10..15).map(move |height| (width, height)));
    let others = [
        (115, 12),
        (116, 12),
        (117, 40),
        (80, 24),
        (120, 40),
        (300, 100),
    ];
    let sizes: Vec<(u16, u16)> = small.chain(edges).chain(others).collect();
    let jobs = [demo::job().unwrap(), fronts()];
    for mut app in jobs.iter().flat_map(|job| states(job, Charset::Unicode)) {
        for &size in &sizes {
            app.size = size;
            let frame = view(&app);
            assert_eq!((frame.area.width, frame.area.height), size);
        }
    }
}

#[test]
fn no_name_commands_the_terminal_or_misleads_the_eye() {
    for charset in [Charset::Unicode, Charset::Ascii] {
        for mut app in hostile(charset) {
            for size in [(60, 12), (80, 24), (120, 40)] {
                app.size = size;
                let mut terminal = Counted::default();
                Painter::new(&mut terminal, charset)
                    .paint(view(&app))
                    .unwrap();
                let mut screen =
                    vt100::Parser::new(size.1.try_into().unwrap(), size.0.try_into().unwrap(), 0);
                screen.process(&terminal.bytes);
                let text = screen.screen().contents();
                let bad = text
                    .chars()
                    .find(|&c| (c.is_control() || !is_shown(c)) && c != '\n');
                assert_eq!(bad, None, "{text}");
                assert_eq!(charset == Charset::Ascii, text.is_ascii(), "{text}");
            }
        }
    }
}

#[test]
fn nothing_in_a_path_vanishes_without_a_sign() {
    let mut app = app(demo::job().unwrap(), Charset::Unicode);
    app.desk.path = "a\u{1b}b\u{202e}c.json".into();
    app.screen = Screen::Job(app.spot.cabinet);
    let mut terminal = Counted::default();
    Painter::new(&mut terminal, Charset::Unicode)
        .paint(view(&app))
        .unwrap();
    let text = String::from_utf8(terminal.bytes).unwrap();
    assert!(text.contains("a▯b\u{fffd}c.json"), "{text}");
}

/// The lines of a frame, without the blanks at their ends.
fn lines(app: &App) -> Vec<String> {
    let frame = view(app);
    let line = |y| {
        let cells = (0..frame.area.width).map(|x| frame[(x, y)].symbol());
        cells.collect::<String>().trim_end().to_owned()
    };
    (0..frame.area.height).map(line).collect()
}

/// The demo on its way, at a size.
fn shown(way: &str, size: (u16, u16), edit: Option<Edit>) -> Vec<String> {
    let mut job = demo::job().unwrap();
    if let Some(edit) = edit {
        edit.apply(&job).unwrap().apply(&mut job);
    }
    let mut app = app(job, Charset::Unicode);
    app.size = size;
    for character in way.chars() {
        let enter = character == '\n';
        press(
            &mut app,
            if enter {
                Key::Enter
            } else {
                Key::Char(character)
            },
        );
    }
    lines(&app)
}

#[test]
fn why_of_a_shelf_says_what_its_strength_rests_on_and_the_caution() {
    let text = shown("11\nw", (120, 60), None).join(" ");
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in [
        "sag: Wood Handbook",
        "load that tips: common practice",
        "board-18: 650 kg/m3",
        "neither engineering nor advice",
    ] {
        assert!(text.contains(words), "{words}: {text}");
    }
}

#[test]
fn key_to_all_keys_is_on_the_last_line_of_every_width() {
    for width in [60, 61, 70, 80, 99, 116, 140] {
        // Pins on a hinge plate are a stop, which takes room beside the numbers of both walls.
        for way in ["", "h", "m", "mh", "mst", "e", "j", "k"] {
            let shown = shown(way, (width, 24), None);
            assert!(shown[23].contains("? help"), "{way} {width}: {}", shown[23]);
        }
    }
}

#[test]
fn more_is_said_of_findings_only_below_the_heaviest_of_them() {
    for height in 12..40 {
        // Pins on the hinge plate of hole 3 are a stop.
        let shown = shown("s", (80, height), None);
        let is_more = shown.iter().any(|line| line.contains("more in the checks"));
        let has_stop = shown.iter().any(|line| line.contains("│ S "));
        assert!(has_stop || !is_more, "{height}:\n{}", shown.join("\n"));
    }
}

#[test]
fn every_hint_of_a_face_is_on_screen_where_there_is_room() {
    let shown = shown("", (100, 40), None).join("\n");
    for binding in keymap::hints(keymap::Context::Face) {
        let hint = format!(
            "{} {}",
            binding.key.name(Charset::Unicode),
            binding.action.label()
        );
        assert!(shown.contains(&hint), "{hint} is not on\n{shown}");
    }
}

#[test]
fn narrow_panel_has_its_name_beside_it() {
    let depth = Edit::Measure {
        cabinet: demo::job().unwrap().cabinets[0].key,
        measure: Measure::Depth,
        value: Length::from_mm(60),
    };
    let face = shown("", (80, 24), Some(depth.clone()));
    assert_eq!(
        face[0].trim_start(),
        "F    B left side, inside G1 glaze store 1/6                      new"
    );
    let book = shown("m", (80, 24), Some(depth));
    assert_eq!(
        book[0],
        "left side, inside F    B      B    F right side, inside"
    );
}

#[test]
fn book_says_what_is_open_and_whether_it_is_saved() {
    // Pins on the hinge plate of hole 3, and a shelf that sags; a move later their notice is gone.
    let last = &shown("mst", (80, 24), None)[23];
    assert!(last.ends_with("1 stop 1 warn  not saved"), "{last}");
    let last = &shown("m", (80, 24), None)[23];
    assert!(last.ends_with(" new"), "{last}");
}

/// Every key of the table, and some that no table names.
fn any_key() -> impl Strategy<Value = Key> {
    let named = keymap::BINDINGS.iter().map(|binding| binding.key);
    let others = ['Z', '#', 'é', '.'].map(Key::Char);
    let keys: Vec<Key> = named.chain(others).collect();
    prop::sample::select(keys)
}

proptest! {
    #[test]
    fn any_job_is_drawn_from_the_front_at_any_size(
        job in arbitrary::job(),
        keys in prop::collection::vec(any_key(), 0..8),
        size in (0..210_u16, 0..70_u16),
    ) {
        let mut app = app(job, Charset::Unicode);
        app.size = size;
        press(&mut app, Key::Char('v'));
        prop_assert_eq!(app.screen, Screen::Front);
        for key in std::iter::once(Key::SPACE).chain(keys) {
            press(&mut app, key);
            prop_assert_eq!(view(&app), view(&app));
        }
    }

    #[test]
    fn a_press_costs_one_write_or_none_when_the_frame_is_the_same(
        keys in prop::collection::vec(any_key(), 1..30)
    ) {
        let mut app = app(demo::job().unwrap(), Charset::Unicode);
        let mut terminal = Counted::default();
        let mut painter = Painter::new(&mut terminal, Charset::Unicode);
        let mut before = view(&app);
        painter.paint(before.clone()).unwrap();
        let (mut at, mut changes) = (Instant::now(), 1);
        for key in keys {
            at += Duration::from_secs(1);
            update(&mut app, Message::Press(Press { key, at }));
            let after = view(&app);
            changes += usize::from(before != after);
            painter.paint(after.clone()).unwrap();
            before = after;
        }
        drop(painter);
        prop_assert_eq!(terminal.writes, changes);
    }
}
