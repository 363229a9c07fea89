//! What a save promises on every system.

use super::*;
use std::fs;
use std::time::{Duration, SystemTime};
use tempfile::{TempDir, tempdir};

fn job() -> (TempDir, PathBuf, Lock) {
    let folder = tempdir().unwrap();
    let job = folder.path().canonicalize().unwrap().join("glazes.json");
    let lock = Lock::take(&job).unwrap();
    (folder, job, lock)
}

fn text(path: &Path) -> String {
    fs::read_to_string(path).unwrap()
}

fn version(bytes: &str) -> Expected {
    Expected::Version(Fingerprint::of(bytes.as_bytes()))
}

fn refused(lock: &mut Lock, expected: Expected) -> StoreError {
    save(lock, b"mine", expected).unwrap_err()
}

/// The files in a folder, those of locks not counted.
fn entries(folder: &TempDir) -> usize {
    let entries = fs::read_dir(folder.path()).unwrap();
    entries
        .filter(|entry| entry.as_ref().unwrap().path().extension() != Some("lock".as_ref()))
        .count()
}

#[test]
fn a_first_save_has_no_backup() {
    let (folder, job, mut lock) = job();
    let saved = save(&mut lock, b"one", Expected::Absent).unwrap();
    assert_eq!(
        saved,
        Saved {
            fingerprint: Fingerprint::of(b"one"),
            backup: None
        }
    );
    assert_eq!(text(&job), "one");
    assert_eq!(entries(&folder), 1);
}

#[test]
fn the_backup_is_the_version_before() {
    let (folder, job, mut lock) = job();
    let mut expected = Expected::Absent;
    for bytes in ["one", "two", "three"] {
        expected = Expected::Version(
            save(&mut lock, bytes.as_bytes(), expected)
                .unwrap()
                .fingerprint,
        );
    }
    let saved = save(&mut lock, b"four", expected).unwrap();
    assert_eq!(saved.backup, Some(lock.place().backup()));
    assert_eq!(
        (&*text(&job), &*text(&lock.place().backup())),
        ("four", "three")
    );
    assert_eq!(entries(&folder), 2);
}

#[test]
fn saving_the_same_twice_does_not_lose_the_version_before() {
    let (_folder, _, mut lock) = job();
    for bytes in ["one", "two", "two"] {
        save(&mut lock, bytes.as_bytes(), Expected::Anything).unwrap();
    }
    assert_eq!(text(&lock.place().backup()), "one");
}

#[test]
fn a_change_from_outside_is_not_overwritten() {
    let (_folder, job, mut lock) = job();
    save(&mut lock, b"read", Expected::Absent).unwrap();
    let error = refused(&mut lock, Expected::Absent);
    assert!(
        matches!(error.cause(), Cause::ChangedOutside(Change::Appeared)),
        "{error}"
    );
    for theirs in ["", "reap", "read, and more"] {
        fs::write(&job, theirs).unwrap();
        let error = refused(&mut lock, version("read"));
        assert!(
            matches!(error.cause(), Cause::ChangedOutside(Change::Rewritten)),
            "{error}"
        );
        assert_eq!(text(&job), theirs);
    }
    let error = refused(&mut lock, Expected::Absent);
    assert!(
        matches!(error.cause(), Cause::ChangedOutside(Change::Appeared)),
        "{error}"
    );
    fs::remove_file(&job).unwrap();
    let error = refused(&mut lock, version("read"));
    assert!(
        matches!(error.cause(), Cause::ChangedOutside(Change::Deleted)),
        "{error}"
    );
    assert!(!job.exists());
    save(&mut lock, b"mine", Expected::Anything).unwrap();
}

#[test]
fn a_file_that_was_touched_but_holds_the_same_is_no_change() {
    let (_folder, job, mut lock) = job();
    fs::write(&job, "read").unwrap();
    fs::remove_file(&job).unwrap();
    fs::write(&job, "read").unwrap();
    save(&mut lock, b"mine", version("read")).unwrap();
}

/// Saves while another program does something just before the old version would go.
fn save_while(theirs: impl FnOnce(&Path, SystemTime)) -> StoreError {
    let (_folder, job, mut lock) = job();
    fs::write(&job, "read").unwrap();
    let modified = fs::metadata(&job).unwrap().modified().unwrap();
    let outcome = put(&Disk, &mut lock, b"mine", version("read"), |_| {
        theirs(&job, modified);
        Ok(())
    });
    assert_ne!(fs::read(&job).unwrap_or_default(), b"mine");
    outcome.unwrap_err()
}

fn write_at(path: &Path, bytes: &str, modified: SystemTime) {
    fs::write(path, bytes).unwrap();
    let file = fs::OpenOptions::new().write(true).open(path).unwrap();
    file.set_modified(modified).unwrap();
}

#[test]
fn another_program_that_saves_in_between_is_noticed() {
    let by_its_time = save_while(|job, then| write_at(job, "them", then + Duration::from_secs(1)));
    let by_its_length = save_while(|job, then| write_at(job, "theirs", then));
    for error in [by_its_time, by_its_length] {
        assert!(
            matches!(error.cause(), Cause::ChangedOutside(Change::Rewritten)),
            "{error}"
        );
    }
    let error = save_while(|job, _| fs::remove_file(job).unwrap());
    assert!(
        matches!(error.cause(), Cause::ChangedOutside(Change::Deleted)),
        "{error}"
    );
}

#[cfg(unix)]
#[test]
fn another_file_that_took_the_name_in_between_is_noticed() {
    let error = save_while(|job, then| {
        let other = job.with_file_name("other");
        write_at(&other, "them", then);
        fs::rename(&other, job).unwrap();
    });
    assert!(
        matches!(error.cause(), Cause::ChangedOutside(Change::Rewritten)),
        "{error}"
    );
}

#[test]
fn a_folder_in_place_of_the_job_is_refused() {
    let (folder, job, mut lock) = job();
    fs::create_dir(&job).unwrap();
    let error = refused(&mut lock, Expected::Anything);
    assert!(
        matches!(error.cause(), Cause::NotPlain("a folder")),
        "{error}"
    );
    assert_eq!(entries(&folder), 1);
}

#[test]
fn a_folder_in_place_of_the_backup_keeps_the_old_version() {
    let (folder, job, mut lock) = job();
    save(&mut lock, b"one", Expected::Absent).unwrap();
    fs::create_dir(lock.place().backup()).unwrap();
    let error = refused(&mut lock, version("one"));
    assert!(
        error
            .to_string()
            .starts_with("not saved, the version before it could not be kept: ")
    );
    assert_eq!(text(&job), "one");
    assert_eq!(entries(&folder), 2);
}

#[test]
fn what_could_not_be_read_again_is_not_saved() {
    let (_folder, job, mut lock) = job();
    let bytes = vec![b' '; usize::try_from(JOB_BYTES_MAX).unwrap() + 1];
    let error = save(&mut lock, &bytes, Expected::Absent).unwrap_err();
    assert!(matches!(error.cause(), Cause::TooLarge { .. }), "{error}");
    assert!(!job.exists());
}

#[test]
fn an_export_leaves_nothing_but_itself_and_spares_an_open_job() {
    let (folder, job, lock) = job();
    let sheet = folder.path().join("sheet.txt");
    export(&sheet, b"one", Expected::Absent).unwrap();
    export(&sheet, b"two", Expected::Anything).unwrap();
    assert_eq!(text(&sheet), "two");
    assert_eq!(entries(&folder), 1);
    let error = export(&sheet, b"three", Expected::Absent).unwrap_err();
    assert!(
        matches!(error.cause(), Cause::ChangedOutside(Change::Appeared)),
        "{error}"
    );
    assert!(matches!(
        export(&job, b"", Expected::Anything).unwrap_err().cause(),
        Cause::HeldBy(_)
    ));
    drop(lock);
}
