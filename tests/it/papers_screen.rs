//! Papers from the screen: the same files as from the command line, nothing written over unasked, every refusal said.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;

use crate::key_script::{presses, send};
use crate::pty::{Program, Session, keys};

fn program() -> &'static Path {
    Path::new(env!("CARGO_BIN_EXE_gablerow"))
}

/// The papers of the demo.
fn papers(folder: &Path) -> Session {
    let mut session = Program::new(program()).folder(folder).size(80, 24).start();
    session.wait_text("G1 glaze store 1/6");
    session.send("P");
    session.wait_text("papers of glaze store");
    session
}

fn files(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let file = |entry: std::io::Result<fs::DirEntry>| {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        (name, fs::read(path).unwrap())
    };
    fs::read_dir(folder).unwrap().map(file).collect()
}

#[test]
fn all_papers_are_those_of_the_command_line() {
    let folder = tempfile::tempdir().unwrap();
    let mut session = papers(folder.path());
    send(&mut session, &presses("a Enter"));
    session.wait_text("papers written to glaze-store-papers; held back: G3");
    let output = Command::new(program())
        .args(["papers", "--to", "by-command"])
        .current_dir(folder.path())
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(1), "G3 is held back");
    let from_screen = files(&folder.path().join("glaze-store-papers"));
    assert!(from_screen.len() > 15, "{:?}", from_screen.keys());
    assert_eq!(from_screen, files(&folder.path().join("by-command")));
    // A finger is slower than a worn key, and the papers may be quicker than both.
    std::thread::sleep(std::time::Duration::from_millis(90));
    send(&mut session, &presses("Enter"));
    session.wait_text("are there already");
}

#[test]
fn a_file_that_somebody_else_wrote_is_let_be_until_that_is_answered() {
    let folder = tempfile::tempdir().unwrap();
    let cut = folder.path().join("glaze-store-papers/glaze-store_cut.pdf");
    fs::create_dir(cut.parent().unwrap()).unwrap();
    fs::write(&cut, "notes of Ann").unwrap();
    let mut session = papers(folder.path());
    send(&mut session, &presses("Enter"));
    session.wait_text("glaze-store_cut.pdf is there with other contents");
    assert_eq!(fs::read(&cut).unwrap(), b"notes of Ann");
    send(&mut session, &presses("o"));
    session.wait_text("1 paper written to");
    assert!(fs::read(&cut).unwrap().starts_with(b"%PDF-"));
}

#[test]
fn a_folder_that_cannot_be_made_is_named_with_the_reason() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("shelf"), "a file, not a folder").unwrap();
    let mut session = papers(folder.path());
    session.send("t");
    session.wait_text("papers to");
    session.send("shelf");
    session.send(keys::ENTER);
    session.wait_text("to shelf");
    send(&mut session, &presses("Pause Enter"));
    session.wait_text("no papers written: shelf: that is a file; name a folder");
    session.send(keys::ESC);
    session.wait_text("left side, inside");
}
