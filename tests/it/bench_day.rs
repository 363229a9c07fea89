//! A day at the bench: four copies of a cabinet are bored, with three kills, a distance measured, a length as cut, and a change of
//! mind in between.

use std::path::Path;
use std::process::{Command, Output};

use gablerow::job_file;
use gablerow_core::bench::{Progress, progress_of_job};
use gablerow_core::job::Job;
use gablerow_core::measure::Length;
use rustix::process::Signal;

use crate::key_script::{presses, send};
use crate::pty::{Program, Session, keys};

const FILE: &str = "store.json";

fn start(folder: &Path) -> Session {
    let program = Program::new(Path::new(env!("CARGO_BIN_EXE_gablerow")));
    let session = program.argument(FILE).folder(folder).size(80, 24).start();
    session.wait_text("G2 glaze store");
    session
}

/// Goes to the bench; how many set-ups are left.
fn to_the_bench(session: &mut Session) -> usize {
    session.send("B");
    session.wait("the first set-up", |screen| {
        let contents = screen.contents();
        let (_, of) = contents.split_once("set-up 1 of ")?;
        of.split_whitespace().next()?.parse().ok()
    })
}

/// Bores so many of all set-ups, one press after the other, each once its own is on screen.
fn bore(session: &mut Session, count: usize, all: usize) {
    for done in 1..=count {
        session.send(" ");
        match done {
            _ if done == all => session.wait_text("AT THE BENCH"),
            _ => session.wait_text(&format!("set-up {} of {all}", done + 1)),
        }
        // A finger is slower than a worn key.
        std::thread::sleep(std::time::Duration::from_millis(90));
    }
}

/// Types that the first distance of the face that was bored last is 0.2 too long.
fn measure(session: &mut Session) {
    session.send("m");
    session.wait_text("Enter take");
    session.send("+0.2");
    session.send(keys::ENTER);
    session.wait_text("0.2 too long");
}

fn killed(session: Session) {
    session.signal(Signal::KILL);
    drop(session.finish());
}

fn saved(folder: &Path) -> Job {
    job_file::read(&std::fs::read(folder.join(FILE)).unwrap()).unwrap()
}

/// Done, left and stale holes of the job.
fn counts(job: &Job) -> (usize, usize, usize) {
    let add = |all: (usize, usize, usize), it: Progress| {
        (all.0 + it.done, all.1 + it.left, all.2 + it.stale.len())
    };
    progress_of_job(job).into_iter().fold((0, 0, 0), add)
}

/// The plan as a script is told it.
fn told(folder: &Path, more: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_gablerow"));
    command.args(["bench", FILE, "--json"]).args(more);
    command.current_dir(folder).output().unwrap()
}

/// How many holes are in the set-ups that a script is told of.
fn holes_of(folder: &Path, more: &[&str]) -> u64 {
    let set_ups: Vec<serde_json::Value> =
        serde_json::from_slice(&told(folder, more).stdout).unwrap();
    set_ups.iter().map(|it| it["count"].as_u64().unwrap()).sum()
}

/// What a script is told of work that is in no file yet.
fn unsaved(folder: &Path) -> String {
    String::from_utf8(told(folder, &[]).stderr).unwrap()
}

/// That the record, the file and the sheets agree when the day is over.
fn assert_all_is_kept(folder: &Path, set_ups: usize) {
    assert_eq!(unsaved(folder), "");
    let job = saved(folder);
    let told = [&[][..], &["--all"]].map(|more| holes_of(folder, more));
    assert_eq!(told, [0, 168], "a sheet of what is left, and one of all");
    let (done, to_do, stale) = counts(&job);
    assert_eq!(to_do, 0);
    assert!(stale > 0);
    assert_eq!(job.bored.len(), done + stale, "no hole is recorded twice");
    assert_eq!(job.took.len(), set_ups);
    let off: Vec<Length> = job.measured.iter().map(|it| it.is - it.want).collect();
    assert_eq!(
        off,
        [Length::from_um(200)],
        "what was measured outlives a kill"
    );
    let cut = job.cabinets[0].copies[3].as_cut.last().unwrap();
    assert_eq!(cut.length, Some(Length::from_um(703_400)));
}

#[test]
fn nothing_of_a_day_is_lost_and_every_hole_is_bored_once() {
    let folder = tempfile::tempdir().unwrap();
    let sheet =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/jobs/glaze_store_sheet.json");
    std::fs::copy(sheet, folder.path().join(FILE)).unwrap();

    let mut session = start(folder.path());
    send(&mut session, &presses("j + Up + Up + S"));
    session.wait_text("saved store.json");
    let all = to_the_bench(&mut session);
    assert!(all >= 40, "{all}");
    bore(&mut session, 11, all);
    killed(session);
    let said = unsaved(folder.path());
    assert!(
        said.starts_with("not saved yet, and not in what is printed: 11 entries"),
        "{said}"
    );

    let mut session = start(folder.path());
    let left = to_the_bench(&mut session);
    assert_eq!(left, all - 11, "what was bored is known after the kill");
    bore(&mut session, 10, left);
    killed(session);

    // A side of the last copy was cut short, and the second shelf hole is not wanted after all.
    let mut session = start(folder.path());
    send(&mut session, &presses("j l"));
    session.wait_text("as cut");
    session.send("; ; | ; ; | ; ; | ; ; 703.4");
    session.send(keys::ENTER);
    session.wait_gone("as cut, for left");
    session.send(keys::ESC);
    session.wait_text("left side, inside");
    send(&mut session, &presses("1 2 Enter s"));
    session.wait_text("no pins on 12");
    let left = to_the_bench(&mut session);
    session.wait_text("bored and not wanted: ");
    bore(&mut session, left, left);
    session.wait_text("168/168");
    measure(&mut session);
    session.send(keys::ESC);
    session.wait_text("once more to leave");
    session.send(keys::ESC);
    session.wait_text("HOLE 12");
    killed(session);

    let mut session = start(folder.path());
    session.wait_text("unsaved changes found");
    session.send(keys::ENTER);
    session.wait_gone("unsaved changes found");
    session.send("S");
    session.wait_text("saved store.json");
    session.send("q");
    drop(session.finish());

    assert_all_is_kept(folder.path(), 11 + 10 + left);
}
