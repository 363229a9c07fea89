//! The terminal is taken and always given back: the example `terminal_probe`, driven from outside.

use std::path::{Path, PathBuf};
use std::time::Duration;

use rustix::process::Signal;
use vt100::Color;

use crate::pty::{Program, Session, keys};

/// The probe's file, in the folder where `cargo test` builds examples.
fn probe_path() -> PathBuf {
    let mut path: PathBuf = std::env::current_exe().unwrap();
    path.pop();
    path.pop();
    path.push("examples/terminal_probe");
    assert!(
        path.exists(),
        "{} is not built: run `cargo build --examples` first",
        path.display()
    );
    path
}

fn probe() -> Program {
    Program::new(&probe_path())
}

/// The probe with its first frame on the screen.
fn started(program: Program) -> Session {
    let session = program.start();
    session.wait_text("nothing");
    session
}

#[test]
fn a_key_ends_it_and_the_terminal_is_given_back() {
    let mut session = started(probe());
    assert!(session.screen().alternate_screen() && session.screen().bracketed_paste());
    assert!(session.screen().hide_cursor() && !session.modes_are_restored());
    session.send("q");
    let ended = session.finish();
    assert_eq!(ended.status.exit_code(), 0);
    ended.assert_given_back();
}

#[test]
fn keys_arrive_under_their_names() {
    let mut session = started(probe());
    let typed = [
        (keys::UP, "key ↑"),
        (keys::DOWN, "key ↓"),
        (keys::LEFT, "key ←"),
        (keys::RIGHT, "key →"),
        (keys::HOME, "key Home"),
        (keys::END, "key End"),
        (keys::PAGE_UP, "key PgUp"),
        (keys::PAGE_DOWN, "key PgDn"),
        (keys::DELETE, "key Del"),
        (keys::BACKSPACE, "key Backspace"),
        (keys::ENTER, "key Enter"),
        (keys::TAB, "key Tab"),
        (keys::BACK_TAB, "key Shift-Tab"),
        (keys::ESC, "key Esc"),
        (keys::CTRL_C, "key Ctrl-C"),
        ("L", "key L"),
        ("ä", "key ä"),
        (" ", "key Space"),
    ];
    for (sent, shown) in typed {
        session.send(sent);
        session.wait_text(shown);
        session.wait_gone("nothing");
    }
}

#[test]
fn a_paste_is_one_text_and_no_keys() {
    let mut session = started(probe());
    session.paste("q\x1b[A 704");
    session.wait_text(r#"paste "q\u{1b}[A 704""#);
}

#[test]
fn broken_input_is_survived() {
    let mut session = started(probe());
    session
        .send_bytes(b"\x1b[\xff\xff\x1b[999;999;999Q\xc3\x28\x1b[<0;1;1M\x1b]52;c;!\x07\x00\x1a");
    session.send("z");
    session.wait_text("key z");
}

#[test]
fn an_error_is_told_on_the_main_screen() {
    let mut session = started(probe());
    session.send("e");
    let ended = session.finish();
    assert_eq!(ended.status.exit_code(), 1);
    ended.assert_given_back();
    assert!(
        ended.screen.contents().contains("asked to fail"),
        "{}",
        ended.screen.contents()
    );
}

#[test]
fn a_panic_gives_the_terminal_back_before_its_message() {
    for (key, message, code) in [
        ("p", "asked to panic", 101),
        ("t", "asked to panic elsewhere", 1),
    ] {
        let mut session = started(probe());
        session.send(key);
        let ended = session.finish();
        assert_eq!(ended.status.exit_code(), code);
        ended.assert_given_back();
        assert!(
            ended.screen.contents().contains(message),
            "{}",
            ended.screen.contents()
        );
    }
}

#[test]
fn signals_end_it_with_their_codes() {
    let signals = [
        (Signal::HUP, 129),
        (Signal::INT, 130),
        (Signal::QUIT, 131),
        (Signal::TERM, 143),
    ];
    for (signal, code) in signals {
        let session = started(probe());
        session.signal(signal);
        let ended = session.finish();
        assert_eq!(ended.status.exit_code(), code, "{signal:?}");
        ended.assert_given_back();
    }
}

#[test]
fn a_stop_gives_the_terminal_back_until_it_goes_on() {
    let mut session = started(probe());
    session.signal(Signal::TSTP);
    session.wait("the main screen", |screen| {
        (!screen.alternate_screen()).then_some(())
    });
    session.wait_stopped();
    assert!(session.modes_are_restored());
    session.signal(Signal::CONT);
    session.wait_text("continued");
    assert!(session.screen().alternate_screen() && session.screen().hide_cursor());
    session.send("z");
    session.wait_text("key z");
    session.send("q");
    session.finish().assert_given_back();
}

#[test]
fn a_closed_terminal_ends_it_within_a_second() {
    let (status, took) = started(probe()).hang_up();
    assert_eq!(status.exit_code(), 129);
    assert!(took < Duration::from_secs(1), "{took:?}");
}

#[test]
fn a_closed_terminal_ends_it_even_where_its_parent_ignored_hang_ups() {
    let ignoring = Program::new(Path::new("/bin/sh"))
        .argument("-c")
        .argument("trap '' HUP; exec \"$0\"")
        .argument(probe_path());
    let (status, took) = started(ignoring).hang_up();
    assert_eq!(status.exit_code(), 129);
    assert!(took < Duration::from_secs(1), "{took:?}");
}

#[test]
fn a_resize_repaints_the_whole_frame() {
    let session = started(probe());
    session.wait_text("size 80 x 24");
    session.resize(40, 10);
    session.wait_text("size 40 x 10");
    session.resize(3, 1);
    session.wait("a cut title", |screen| {
        (screen.contents() == "pro").then_some(())
    });
    session.resize(100, 30);
    session.wait_text("size 100 x 30");
    session.wait_text("probe");
}

#[test]
fn a_terminal_that_does_not_know_its_size_is_80_by_24() {
    let session = probe().size(0, 0).start();
    session.wait_text("size 80 x 24");
}

#[test]
fn without_a_change_nothing_is_written() {
    let mut session = started(probe());
    session.send("z");
    session.wait_text("key z");
    let before = session.byte_count();
    session.send("zzz");
    session.send("y");
    session.wait_text("key y");
    // One frame with one letter: brackets, a move, the letter, resets.
    assert!(
        session.byte_count() - before < 100,
        "{} bytes",
        session.byte_count() - before
    );
}

#[test]
fn a_hostile_cell_shows_a_stand_in() {
    let mut session = started(probe());
    session.send("h");
    session.wait_text("▯[31mhostile");
}

#[test]
fn no_color_keeps_bold_and_reversed() {
    let bold_and_reversed =
        |session: &Session| (session.cell(0, 0).bold(), session.cell(0, 1).inverse());
    let colourful = started(probe());
    assert!(matches!(colourful.cell(0, 0).fgcolor(), Color::Idx(16..)));
    assert_eq!(bold_and_reversed(&colourful), (true, true));
    let plain = started(probe().variable("NO_COLOR", "1"));
    assert_eq!(plain.cell(0, 0).fgcolor(), Color::Default);
    assert_eq!(plain.cell(0, 0).bgcolor(), Color::Default);
    assert_eq!(bold_and_reversed(&plain), (true, true));
    let full = started(probe().variable("COLORTERM", "truecolor"));
    assert!(matches!(full.cell(0, 0).fgcolor(), Color::Rgb(..)));
}

#[test]
fn an_ascii_terminal_gets_ascii_only() {
    let mut session = started(probe().variable("LANG", "C"));
    session.send("ä");
    session.wait_text("key ?");
    session.send("q");
    assert!(session.finish().bytes.is_ascii());
}

#[test]
fn a_terminal_that_cannot_move_its_cursor_is_none() {
    for program in [
        probe().variable("TERM", "dumb"),
        probe().without_variable("TERM"),
    ] {
        let ended = program.start().finish();
        assert_eq!(ended.status.exit_code(), 2);
        assert_eq!(ended.output(), "no terminal to draw on\r\n");
    }
}

#[test]
fn nothing_is_asked_of_the_terminal() {
    let mut session = started(probe());
    session.resize(60, 20);
    session.wait_text("size 60 x 20");
    session.send("q");
    let output = session.finish().output();
    // Cursor place, device attributes, colours: answers would arrive among the keys.
    for question in ["\x1b[6n", "\x1b[c", "\x1b[>c", "\x1b]11;?", "\x1b]10;?"] {
        assert!(!output.contains(question), "{question:?}");
    }
}
