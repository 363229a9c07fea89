//! What a key press costs the terminal, counted by the system: one write, and none when nothing changed.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::pty::{Program, keys};

/// Each key with what the screen shows then; a key that does nothing has a `None`.
type Presses<'a> = &'a [(&'a str, Option<&'a str>)];

/// The tracer, where there is one that may trace.
fn tracer() -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    let found = std::env::split_paths(&path)
        .map(|folder| folder.join("strace"))
        .find(|program| program.is_file())?;
    let traces = Command::new(&found)
        .args(["-e", "trace=none", env!("CARGO_BIN_EXE_gablerow"), "schema"])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
    traces.is_ok_and(|status| status.success()).then_some(found)
}

/// How many writes to its terminal the program makes from start to end.
fn writes(tracer: &Path, presses: Presses) -> usize {
    let folder = tempfile::tempdir().unwrap();
    let trace = folder.path().join("trace");
    let mut session = Program::new(tracer)
        .argument("-f")
        .argument("-y")
        .argument("-e")
        .argument("trace=write,writev,pwrite64,sendto,sendmsg")
        .argument("-o")
        .argument(&trace)
        .argument(env!("CARGO_BIN_EXE_gablerow"))
        .folder(folder.path())
        .start();
    session.wait_text("G1 glaze store 1/6");
    for (key, shown) in presses {
        session.send(key);
        if let Some(shown) = shown {
            session.wait_text(shown);
        }
    }
    session.send(keys::CTRL_C);
    assert_eq!(session.finish().status.exit_code(), 0);
    let trace = fs::read_to_string(trace).unwrap();
    trace
        .lines()
        .filter(|line| line.contains("</dev/pts/"))
        .count()
}

#[test]
fn a_press_costs_one_write_and_none_when_nothing_changed() {
    let Some(tracer) = tracer() else {
        println!("SKIPPED: no strace that may trace here");
        return;
    };
    let walked: Presses = &[
        (keys::UP, Some("HOLE 4 ")),
        ("h", Some("no hinge plate on 3-4")),
    ];
    // Capitals that no table names, and the row to the left of the first one.
    let dead: Presses = &[("Z", None), ("X", None), (keys::LEFT, None)];
    let none = writes(&tracer, &[]);
    assert!(none > 0, "nothing was traced");
    assert_eq!(writes(&tracer, dead), none);
    assert_eq!(writes(&tracer, walked), none + 2);
    assert_eq!(writes(&tracer, &[dead, walked].concat()), none + 2);
}
