//! For tests: every step of the store fails, one after the other, once and for good.

use std::fs;
use std::path::{Path, PathBuf};

use tempfile::{TempDir, tempdir};

use super::fs::Disk;
use super::save::save_on;
use super::watched::{Fault, Watched};
use super::{Expected, Fingerprint, Journal, Lock, Saved, StoreError};

/// A folder with a job in its second version and the first beside it, its lock taken.
fn second_version() -> (TempDir, PathBuf, Lock) {
    let folder = tempdir().unwrap();
    let job = folder.path().canonicalize().unwrap().join("glazes.json");
    let mut lock = Lock::take(&job).unwrap();
    for (version, expected) in [("first", Expected::Absent), ("second", version("first"))] {
        save_on(&Disk, &mut lock, version.as_bytes(), expected).unwrap();
    }
    (folder, job, lock)
}

fn version(bytes: &str) -> Expected {
    Expected::Version(Fingerprint::of(bytes.as_bytes()))
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap();
    let mut names: Vec<_> = entries
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

/// Runs a case with every fault there is, until no step is left to fail.
fn with_each_fault(case: impl Fn(&Watched)) {
    for fault in [Fault::Once, Fault::From] {
        let mut step = 0;
        loop {
            let disk = Watched::new(fault(step));
            case(&disk);
            if disk.failed().is_empty() {
                break;
            }
            step += 1;
        }
        assert!(step > 5, "only {step} steps failed");
    }
}

fn third(disk: &Watched, lock: &mut Lock) -> Result<Saved, StoreError> {
    save_on(disk, lock, b"third", version("second"))
}

#[test]
fn a_save_that_fails_leaves_a_whole_file_and_the_next_one_works() {
    with_each_fault(|disk| {
        let (folder, job, mut lock) = second_version();
        let outcome = third(disk, &mut lock);
        let failed = disk.failed();
        let there = fs::read_to_string(&job).unwrap();
        let kept = fs::read_to_string(lock.place().backup()).unwrap();
        match &outcome {
            Ok(_) => assert_eq!((&*there, &*kept), ("third", "second"), "{failed:?}"),
            Err(error) if failed[0] == "sync folder" => {
                assert!(
                    error.to_string().starts_with("saved, but not safe"),
                    "{error}"
                );
                assert_eq!((&*there, &*kept), ("third", "second"), "{failed:?}");
            }
            Err(error) => {
                assert!(error.to_string().starts_with("not saved"), "{error}");
                assert!(error.to_string().contains("the disk is broken"), "{error}");
                assert_eq!(there, "second", "{failed:?}");
                assert!(["first", "second"].contains(&&*kept), "{failed:?}: {kept}");
            }
        }
        assert_eq!(outcome.is_ok(), failed.is_empty(), "{failed:?}");
        let clean = [".glazes.json.lock", "glazes.json", "glazes.json~"];
        if failed.len() <= 1 {
            assert_eq!(names(folder.path()), clean, "{failed:?}");
        }

        save_on(
            &Disk,
            &mut lock,
            b"fourth",
            if outcome.is_ok() {
                version("third")
            } else {
                version("second")
            },
        )
        .unwrap();
        assert_eq!(fs::read_to_string(&job).unwrap(), "fourth");
        assert_eq!(fs::read_to_string(lock.place().backup()).unwrap(), there);
        assert_eq!(names(folder.path()), clean, "{failed:?}");
    });
}

#[test]
fn a_first_save_that_fails_leaves_no_file_and_the_next_one_works() {
    with_each_fault(|disk| {
        let folder = tempdir().unwrap();
        let job = folder.path().join("glazes.json");
        let mut lock = Lock::take(&job).unwrap();
        let outcome = save_on(disk, &mut lock, b"first", Expected::Absent);
        let failed = disk.failed();
        assert_eq!(outcome.is_ok(), failed.is_empty(), "{failed:?}");
        assert_eq!(
            job.exists(),
            failed.first().is_none_or(|name| *name == "sync folder"),
            "{failed:?}"
        );
        let expected = if outcome.is_ok() {
            version("first")
        } else {
            Expected::Absent
        };
        save_on(&Disk, &mut lock, b"first", expected).unwrap();
        assert_eq!(
            names(folder.path()),
            [".glazes.json.lock", "glazes.json"],
            "{failed:?}"
        );
    });
}

#[test]
fn a_session_that_fails_anywhere_offers_exactly_what_is_unsaved() {
    with_each_fault(|disk| {
        let (_folder, job, mut lock) = second_version();
        let base = Some(Fingerprint::of(b"second"));
        let Ok((mut journal, _)) = Journal::open_on(disk, &lock, base) else {
            return;
        };
        let _ = journal.append_on(disk, "edit 1");
        let _ = journal.append_on(disk, "edit 2");
        let _ = journal.saving_on(disk, Fingerprint::of(b"third"));
        let _ = third(disk, &mut lock);
        let there = fs::read_to_string(&job).unwrap();
        let saved = there == "third";
        if saved {
            let _ = journal.restart_on(disk, Some(Fingerprint::of(b"third")));
        }
        let _ = journal.append_on(disk, "edit 3");
        // The disk is well again: what could not be written goes along.
        journal.append("edit 4").unwrap();
        drop(journal);

        let file = Some(Fingerprint::of(there.as_bytes()));
        let (_, recovered) = Journal::open(&lock, file).unwrap();
        let unsaved: &[&str] = if saved {
            &["edit 3", "edit 4"]
        } else {
            &["edit 1", "edit 2", "edit 3", "edit 4"]
        };
        assert_eq!(
            recovered.since(file).unwrap(),
            unsaved,
            "{:?}",
            disk.failed()
        );
        assert_eq!(recovered.torn, None);
    });
}

#[test]
fn a_recovery_that_fails_loses_nothing() {
    with_each_fault(|disk| {
        let (_folder, _, lock) = second_version();
        let base = Some(Fingerprint::of(b"second"));
        let (mut journal, _) = Journal::open(&lock, base).unwrap();
        journal.append("edit 1").unwrap();
        drop(journal);
        let path = lock.place().journal();
        let whole = fs::read(&path).unwrap();
        fs::write(&path, [&*whole, b"cut sh"].concat()).unwrap();

        let outcome = Journal::open_on(disk, &lock, base);
        assert_eq!(
            outcome.is_ok(),
            disk.failed().is_empty(),
            "{:?}",
            disk.failed()
        );
        drop(outcome);
        let (mut journal, recovered) = Journal::open(&lock, base).unwrap();
        assert_eq!(recovered.edits, ["edit 1"], "{:?}", disk.failed());
        assert_eq!(
            fs::read(lock.place().torn()).unwrap(),
            b"cut sh",
            "{:?}",
            disk.failed()
        );
        journal.append("edit 2").unwrap();
        assert_eq!(
            Journal::open(&lock, base).unwrap().1.edits,
            ["edit 1", "edit 2"]
        );
    });
}
