//! A first job, by hand: from no file to a file and back.

use std::path::Path;

use crate::key_script::{assert_screen, golden, presses, send};
use crate::pty::{Program, Session};

const SCRIPT: &str = include_str!("../keys/first_job.keys");
/// The most presses a first job may take.
const PRESSES_MOST: usize = 40;

fn program(folder: &Path) -> Program {
    Program::new(Path::new(env!("CARGO_BIN_EXE_gablerow"))).folder(folder)
}

fn worked(folder: &Path, (columns, rows): (u16, u16)) -> Session {
    let mut session = program(folder).size(columns, rows).start();
    session.wait_text("glaze store");
    send(&mut session, &presses(SCRIPT));
    session.wait_text("saved glaze-store.json");
    session
}

fn first_job_on(size: (u16, u16)) {
    let folder = tempfile::tempdir().unwrap();
    let mut session = worked(folder.path(), size);
    // Any key that does nothing lets the notice go, so that the hints are on the picture.
    session.send("f");
    session.wait_text("HOLE 1 ");
    session.wait_text("q quit ? help");
    assert_screen(
        &session,
        &format!("tests/screens/first_job_{}x{}.txt", size.0, size.1),
    );
    session.send("q");
    assert_eq!(session.finish().status.exit_code(), 0);

    let saved = std::fs::read_to_string(folder.path().join("glaze-store.json")).unwrap();
    assert_eq!(saved, golden("tests/jobs/first_job.json", &saved));

    let mut again = program(folder.path())
        .argument("glaze-store.json")
        .size(size.0, size.1)
        .start();
    again.wait_text("G4");
    assert!(again.text().contains("left side"), "{}", again.text());
    again.send("u");
    again.wait_text("taken back: runner 500 on 17");
    again.send("U");
    again.wait_text("made again: runner 500 on 17");

    // Left on another face than a cabinet opens on, and found there again.
    again.send("n");
    again.wait_text("4/8");
    again.send("q");
    assert_eq!(again.finish().status.exit_code(), 0);
    let third = program(folder.path())
        .argument("glaze-store.json")
        .size(size.0, size.1)
        .start();
    third.wait_text("4/8");
}

#[test]
fn a_first_job_takes_at_most_40_presses() {
    let count = presses(SCRIPT).len() + 1;
    assert!(
        count <= PRESSES_MOST,
        "{count} presses with the one that leaves"
    );
}

#[test]
fn a_first_job_at_80_by_24() {
    first_job_on((80, 24));
}

#[test]
fn a_first_job_at_120_by_40() {
    first_job_on((120, 40));
}

#[test]
fn a_first_job_at_200_by_60() {
    first_job_on((200, 60));
}

/// The first cell that shows a glyph.
fn cell_of(session: &Session, glyph: &str) -> vt100::Cell {
    let cells = (1..23).flat_map(|row| (0..50).map(move |column| (column, row)));
    let mut shown = cells.map(|(column, row)| session.cell(column, row));
    shown
        .find(|cell| cell.contents() == glyph)
        .unwrap_or_else(|| panic!("no {glyph} on\n{}", session.text()))
}

#[test]
fn colours_on_screen_are_those_of_wood_steel_and_blood() {
    let folder = tempfile::tempdir().unwrap();
    let mut session = program(folder.path())
        .variable("COLORTERM", "truecolor")
        .start();
    session.wait_text("q quit ? help");
    let wood = vt100::Color::Rgb(0xe2, 0xc5, 0x9b);
    assert_eq!(
        cell_of(&session, "●").bgcolor(),
        wood,
        "a pin hole lies in the board"
    );
    let plate = cell_of(&session, "◆");
    assert_eq!(
        (plate.fgcolor(), plate.bgcolor()),
        (vt100::Color::Rgb(0x12, 0x45, 0x6b), wood)
    );
    // Two uses of one hole: a stop, in a colour of its own and with a sign of its own.
    send(&mut session, &presses("9 Enter r f"));
    session.wait_text("q quit ? help");
    session.wait_text("3 stop");
    let clash = cell_of(&session, "◈");
    assert_eq!(clash.bgcolor(), vt100::Color::Rgb(0x93, 0x1f, 0x15));
    assert!(clash.bold());
}
