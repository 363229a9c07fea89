//! The demo, by hand: every finding mended or accepted, saved, and its holes given out.

use std::path::Path;
use std::process::Command;

use serde_json::Value;

use crate::key_script::{assert_screen, count, golden, presses, send};
use crate::pty::Program;

const SCRIPT: &str = include_str!("../keys/mended_demo.keys");
/// The most presses the README promises.
const PRESSES_MOST: usize = 33;

/// What a command prints in a folder, and the code it ends with.
fn run(folder: &Path, arguments: &[&str]) -> (Option<i32>, String) {
    let output = Command::new(env!("CARGO_BIN_EXE_gablerow"))
        .args(arguments)
        .current_dir(folder)
        .output()
        .unwrap();
    let printed = [output.stdout, output.stderr].concat();
    (output.status.code(), String::from_utf8(printed).unwrap())
}

/// The demo mended by the script on a terminal of a size, and saved in a folder.
fn mended(folder: &Path, (columns, rows): (u16, u16)) {
    let program = Program::new(Path::new(env!("CARGO_BIN_EXE_gablerow"))).folder(folder);
    let mut session = program.size(columns, rows).start();
    session.wait_text("glaze store");
    send(&mut session, &presses(SCRIPT));
    session.wait_text("saved glaze-store.json");
    session.send("k");
    session.wait_text("door-handed, accepted");
    assert_screen(
        &session,
        &format!("tests/screens/mended_demo_{columns}x{rows}.txt"),
    );
    session.send("\u{1b}");
    session.wait_text("HOLE");
    session.send("q");
    assert_eq!(session.finish().status.exit_code(), 0);
    let saved = std::fs::read_to_string(folder.join("glaze-store.json")).unwrap();
    assert_eq!(saved, golden("tests/jobs/mended_demo.json", &saved));
}

#[test]
fn mending_takes_no_more_presses_than_promised() {
    let presses = count(&presses(SCRIPT)) + 1;
    assert!(
        presses <= PRESSES_MOST,
        "{presses} presses with the one that leaves"
    );
}

#[test]
fn as_it_comes_the_demo_holds_holes_back() {
    let folder = tempfile::tempdir().unwrap();
    assert_eq!(run(folder.path(), &["check"]).0, Some(1));
    let (_, holes) = run(folder.path(), &["holes"]);
    assert!(holes.contains("held back: G3"), "{holes}");
    assert!(!holes.contains("held back: G1") && !holes.contains("held back: G2"));
}

#[test]
fn every_finding_of_the_demo_is_mended_or_accepted_by_keys() {
    let folder = tempfile::tempdir().unwrap();
    mended(folder.path(), (80, 24));
    let (code, said) = run(folder.path(), &["check", "glaze-store.json"]);
    assert_eq!(code, Some(0), "{said}");
    for line in [
        "    accepted: hung by label\n",
        "    accepted: hung right it would strike the wall of the kiln room\n",
        "0 stop, 0 warn, 0 note open; 0 overruled, 2 accepted\n",
    ] {
        assert!(said.contains(line), "{said}");
    }
    let (code, json) = run(folder.path(), &["check", "--json", "glaze-store.json"]);
    assert_eq!(code, Some(0));
    let findings: Vec<Value> = serde_json::from_str(&json).unwrap();
    assert_eq!(findings.len(), 2);
    assert!(findings.iter().all(|one| one["accepted"].is_string()));
    let (code, holes) = run(folder.path(), &["holes", "glaze-store.json"]);
    assert_eq!(code, Some(0), "{holes}");
    assert!(!holes.contains("held back"), "{holes}");
    for face in ["left side", "right side"] {
        for cabinet in ["G1", "G2", "G3"] {
            let head = holes
                .lines()
                .any(|line| line.contains(cabinet) && line.contains(face));
            assert!(head, "{cabinet}, {face}\n{holes}");
        }
    }
}

#[test]
fn a_wide_terminal_mends_by_the_same_keys() {
    let folder = tempfile::tempdir().unwrap();
    mended(folder.path(), (120, 40));
}
