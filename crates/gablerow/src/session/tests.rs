//! Saving under another name: all of it, or the session stays where it was.

use std::fs;

use gablerow_core::edit::{BayRun, Edit};
use gablerow_core::job::{Datum, Key};
use tempfile::TempDir;

use super::*;

/// A session on a path without a file, with the demo on its desk.
fn unnamed(folder: &TempDir) -> (Session, Desk) {
    let path = folder.path().join("glaze-store.json");
    let session = Session {
        path: path.clone(),
        held: None,
        version: None,
        began: None,
    };
    let desk = Desk {
        job: demo::job().unwrap(),
        history: History::of_saved(),
        path,
        has_file: false,
        recorded: 0,
    };
    (session, desk)
}

/// Makes a change and keeps it, as the program does.
fn change(session: &mut Session, desk: &mut Desk, hole: i16) {
    let run = BayRun {
        cabinet: Key(1),
        bay: Key(1),
        first: hole,
        last: hole,
        datum: Datum::Foot,
    };
    let step = Edit::Runners(run).apply(&desk.job).unwrap();
    desk.history.make(step.clone(), &mut desk.job);
    session.keep(&Kept::Made(Box::new(step))).unwrap();
}

fn save(session: &mut Session, desk: &mut Desk, path: &Path) -> anyhow::Result<Outcome> {
    let outcome = session.save(desk, path, false)?;
    if let Outcome::Saved(path) = &outcome {
        desk.path.clone_from(path);
        desk.history.mark_saved();
    }
    Ok(outcome)
}

fn journal(path: &Path) -> PathBuf {
    Place::of(path).unwrap().journal()
}

/// What the shop keeps: a bore depth of 13.
fn shop_of_13() -> ShopFile {
    let mut job = Job::plain(Label::new("shop").unwrap());
    job.shop.depth = gablerow_core::measure::Length::from_mm(13);
    ShopFile::of_house(&job)
}

#[test]
fn a_new_job_begins_with_the_shop_and_is_found_so_whatever_the_shop_keeps_later() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("kiln.json");
    let kept = shop_of_13();
    let Opened {
        mut desk,
        mut session,
        found,
        ..
    } = Session::open(Some(&path), &kept).unwrap();
    assert_eq!(
        (found, Some(&desk.job.shop)),
        (0, kept.shop.as_ref()),
        "nothing is found, and the defaults are the shop's"
    );
    assert!(desk.history.is_saved() && !path.exists());
    for hole in [2, 5] {
        change(&mut session, &mut desk, hole);
    }
    let job = desk.job.clone();
    drop(session);
    for later in [ShopFile::default(), kept] {
        let opened = Session::open(Some(&path), &later).unwrap();
        assert_eq!((opened.found, &opened.desk.job), (2, &job));
    }
    let opened = Session::open(Some(&path), &ShopFile::default()).unwrap();
    let (mut session, mut desk) = (opened.session, opened.desk);
    save(&mut session, &mut desk, &path).unwrap();
    drop(session);
    let opened = Session::open(Some(&path), &shop_of_13()).unwrap();
    assert_eq!((opened.found, &opened.desk.job), (0, &job));
    assert_eq!(opened.desk.history.undoable(), 2);
}

#[test]
fn a_job_begun_without_the_shop_stays_so() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("kiln.json");
    let Opened {
        mut desk,
        mut session,
        ..
    } = Session::open(Some(&path), &ShopFile::default()).unwrap();
    change(&mut session, &mut desk, 2);
    drop(session);
    let opened = Session::open(Some(&path), &shop_of_13()).unwrap();
    assert_eq!(opened.desk.job, desk.job);
}

#[test]
fn the_way_back_goes_along_to_another_name() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, mut desk) = unnamed(&folder);
    let first = desk.path.clone();
    for hole in [2, 5, 8] {
        change(&mut session, &mut desk, hole);
    }
    desk.history.undo(&mut desk.job);
    session.keep(&Kept::Undone).unwrap();
    let other = folder.path().join("kiln.json");
    save(&mut session, &mut desk, &other).unwrap();
    assert!(!journal(&first).exists(), "it is not found again");
    change(&mut session, &mut desk, 9);
    drop(session);

    let opened = Session::open(Some(&other), &ShopFile::default()).unwrap();
    assert_eq!(opened.found, 1);
    assert_eq!(opened.desk.job, desk.job);
    assert_eq!(opened.desk.history.steps(), desk.history.steps());
    assert_eq!(opened.desk.history.since_saved(), Some(1));
}

#[test]
fn a_saved_job_keeps_its_own_way_back_when_a_copy_is_saved_elsewhere() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, mut desk) = unnamed(&folder);
    let first = desk.path.clone();
    change(&mut session, &mut desk, 2);
    save(&mut session, &mut desk, &first).unwrap();
    let other = folder.path().join("kiln.json");
    save(&mut session, &mut desk, &other).unwrap();
    drop(session);
    for path in [first, other] {
        let opened = Session::open(Some(&path), &ShopFile::default()).unwrap();
        assert_eq!((opened.found, opened.desk.history.steps().len()), (0, 1));
        assert!(opened.desk.history.is_saved());
    }
}

#[test]
fn a_session_that_cannot_go_along_stays_where_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, mut desk) = unnamed(&folder);
    let first = desk.path.clone();
    change(&mut session, &mut desk, 2);
    let other = folder.path().join("kiln.json");
    // Something that no journal can take the place of.
    fs::create_dir(journal(&other)).unwrap();
    let error = save(&mut session, &mut desk, &other).unwrap_err();
    assert!(
        format!("{error:#}").contains("the job is still"),
        "{error:#}"
    );
    change(&mut session, &mut desk, 5);
    save(&mut session, &mut desk, &first).unwrap();
    fs::remove_dir(journal(&other)).unwrap();
    // What was saved there by half is a file like any other: it is asked about, and can be taken.
    let again = save(&mut session, &mut desk, &other).unwrap();
    assert!(matches!(again, Outcome::Occupied { .. }));
    drop(session);
    let opened = Session::open(Some(&first), &ShopFile::default()).unwrap();
    assert_eq!((opened.found, opened.desk.history.steps().len()), (0, 2));
}

#[test]
fn a_way_back_cut_off_while_it_went_along_changes_no_job() {
    let folder = tempfile::tempdir().unwrap();
    let (mut session, mut desk) = unnamed(&folder);
    for hole in [2, 5, 8] {
        change(&mut session, &mut desk, hole);
    }
    let other = folder.path().join("kiln.json");
    save(&mut session, &mut desk, &other).unwrap();
    drop(session);
    let whole = fs::read(journal(&other)).unwrap();
    let ends = whole.iter().enumerate().filter(|(_, byte)| **byte == b'\n');
    let ends: Vec<usize> = ends.map(|(at, _)| at + 1).collect();
    // All lines but the last, which says what they lead to.
    for &end in &ends[..ends.len() - 1] {
        fs::write(journal(&other), &whole[..end]).unwrap();
        let opened = Session::open(Some(&other), &ShopFile::default()).unwrap();
        assert_eq!(opened.found, 0);
        assert_eq!(opened.desk.job, desk.job, "cut after {end} bytes");
    }
}
