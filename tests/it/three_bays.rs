//! The second example, by hand: three bays from no file to a fitted cabinet, and what its parts come to.

use std::path::Path;
use std::process::Command;

use serde_json::Value;

use crate::key_script::{assert_screen, count, golden, presses, send};
use crate::pty::Program;

const SCRIPT: &str = include_str!("../keys/three_bays.keys");
/// The most presses the README promises.
const PRESSES_MOST: usize = 47;

fn program(folder: &Path) -> Program {
    Program::new(Path::new(env!("CARGO_BIN_EXE_gablerow")))
        .folder(folder)
        .argument("three-bays.json")
}

#[test]
fn three_bays_take_no_more_presses_than_promised() {
    let presses = count(&presses(SCRIPT)) + 1;
    assert!(
        presses <= PRESSES_MOST,
        "{presses} presses with the one that leaves"
    );
}

#[test]
fn three_bays_are_made_from_nothing_by_keys() {
    let folder = tempfile::tempdir().unwrap();
    let mut session = program(folder.path()).size(80, 24).start();
    session.wait_text("q quit ? help");
    send(&mut session, &presses(SCRIPT));
    session.wait_text("saved three-bays.json");
    session.send("w");
    session.wait_text("why, ");
    session.send("q");
    session.wait_text("? help");
    assert_screen(&session, "tests/screens/three_bays_80x24.txt");
    session.send("q");
    assert_eq!(session.finish().status.exit_code(), 0);

    let path = folder.path().join("three-bays.json");
    let saved = std::fs::read_to_string(&path).unwrap();
    assert_eq!(saved, golden("tests/jobs/three_bays.json", &saved));

    let run = |arguments: &[&str]| {
        let output = Command::new(env!("CARGO_BIN_EXE_gablerow"))
            .args(arguments)
            .current_dir(folder.path())
            .output()
            .unwrap();
        (output.status.code(), output.stdout)
    };
    // What was proposed causes no stop.
    assert_eq!(run(&["check", "three-bays.json"]).0, Some(0));
    let (_, json) = run(&["parts", "three-bays.json", "--json"]);
    let parts: Vec<Value> = serde_json::from_slice(&json).unwrap();
    let of = |kind: &str| {
        let own = parts.iter().filter(|part| part["kind"] == kind);
        own.cloned().collect::<Vec<_>>()
    };
    // Geometry: 1400 - 4 * 17.4 is 1330.4, a third of it 443.466 less a gap of 2 on either side.
    assert_eq!(of("front").len(), 6);
    assert_eq!(of("box").len(), 7);
    assert_eq!(of("missing"), Vec::<Value>::new());
    let partitions: Vec<Value> = parts
        .iter()
        .filter(|part| {
            let name = part["part"].as_str().unwrap_or_default();
            name.contains("partition")
        })
        .cloned()
        .collect();
    assert!(!partitions.is_empty(), "{parts:#?}");
    for partition in partitions {
        // 704 - 2 * 17.4 + 2 * 5
        assert_eq!(partition["length_mm"], 679.2);
    }
}
