//! What a save promises about rights and links.

use super::*;
use std::fs::{self, Permissions};
use std::os::unix::fs::{MetadataExt, PermissionsExt, chown, symlink};
use tempfile::tempdir;

fn chmod(path: &Path, mode: u32) {
    fs::set_permissions(path, Permissions::from_mode(mode)).unwrap();
}

fn mode(path: &Path) -> u32 {
    fs::metadata(path).unwrap().mode() & 0o7777
}

#[test]
fn the_rights_of_the_file_are_kept_and_its_backup_has_them_too() {
    for rights in [0o600, 0o640, 0o664, 0o755] {
        let folder = tempdir().unwrap();
        let job = folder.path().join("glazes.json");
        fs::write(&job, "one").unwrap();
        chmod(&job, rights);
        let mut lock = Lock::take(&job).unwrap();
        save(&mut lock, b"two", Expected::Anything).unwrap();
        assert_eq!((mode(&job), mode(&lock.place().backup())), (rights, rights));
    }
}

#[test]
fn the_owner_of_the_file_is_kept_by_root() {
    let folder = tempdir().unwrap();
    let job = folder.path().join("glazes.json");
    fs::write(&job, "one").unwrap();
    if chown(&job, Some(4711), Some(4712)).is_err() {
        println!("SKIPPED: only root can give a file away");
        return;
    }
    save(&mut Lock::take(&job).unwrap(), b"two", Expected::Anything).unwrap();
    let metadata = fs::metadata(&job).unwrap();
    assert_eq!((metadata.uid(), metadata.gid()), (4711, 4712));
}

#[test]
fn a_link_stays_a_link_and_a_stray_one_is_not_followed() {
    let folder = tempdir().unwrap();
    let (job, link) = (
        folder.path().join("glazes.json"),
        folder.path().join("link"),
    );
    let elsewhere = folder.path().join("elsewhere");
    fs::write(&job, "one").unwrap();
    fs::write(&elsewhere, "keep me").unwrap();
    symlink("glazes.json", &link).unwrap();
    let mut lock = Lock::take(&link).unwrap();
    symlink(&elsewhere, folder.path().join(".glazes.json.tmp")).unwrap();
    symlink(&elsewhere, lock.place().backup()).unwrap();
    save(&mut lock, b"two", Expected::Anything).unwrap();
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert_eq!(fs::read_to_string(&job).unwrap(), "two");
    assert_eq!(fs::read_to_string(&elsewhere).unwrap(), "keep me");
    assert!(
        fs::symlink_metadata(lock.place().backup())
            .unwrap()
            .is_file()
    );
}

#[test]
fn a_job_swapped_for_a_link_is_refused() {
    let folder = tempdir().unwrap();
    let (job, elsewhere) = (
        folder.path().join("glazes.json"),
        folder.path().join("elsewhere"),
    );
    fs::write(&elsewhere, "keep me").unwrap();
    let mut lock = Lock::take(&job).unwrap();
    symlink(&elsewhere, &job).unwrap();
    let error = save(&mut lock, b"mine", Expected::Anything).unwrap_err();
    assert!(
        matches!(error.cause(), Cause::NotPlain("a link")),
        "{error}"
    );
    assert_eq!(fs::read_to_string(&elsewhere).unwrap(), "keep me");
}

#[test]
fn other_names_of_the_file_keep_the_old_version() {
    let folder = tempdir().unwrap();
    let (job, other) = (
        folder.path().join("glazes.json"),
        folder.path().join("other"),
    );
    fs::write(&job, "one").unwrap();
    fs::hard_link(&job, &other).unwrap();
    save(&mut Lock::take(&job).unwrap(), b"two", Expected::Anything).unwrap();
    assert_eq!(fs::read_to_string(&other).unwrap(), "one");
}

#[test]
fn a_write_protected_file_is_not_replaced() {
    let folder = tempdir().unwrap();
    let job = folder.path().join("glazes.json");
    fs::write(&job, "one").unwrap();
    chmod(&job, 0o444);
    let error = save(&mut Lock::take(&job).unwrap(), b"two", Expected::Anything).unwrap_err();
    let next = error.to_string();
    assert!(
        next.ends_with("; allow writing to it, or use another name")
            || next.contains("; give yourself access")
    );
    assert_eq!(fs::read_to_string(&job).unwrap(), "one");
}

/// A folder in which nothing can be made, not even by root.
#[cfg(target_os = "linux")]
#[test]
fn a_folder_that_takes_no_files_is_an_error() {
    let text = Lock::take(Path::new("/proc/glazes.json"))
        .unwrap_err()
        .to_string();
    assert!(
        text.starts_with("not opened for editing: /proc/.glazes.json.lock: "),
        "{text}"
    );
}

#[test]
fn a_folder_that_became_read_only_is_an_error() {
    let folder = tempdir().unwrap();
    let job = folder.path().join("glazes.json");
    let mut lock = Lock::take(&job).unwrap();
    chmod(folder.path(), 0o555);
    let outcome = save(&mut lock, b"one", Expected::Absent);
    chmod(folder.path(), 0o755);
    match outcome {
        Ok(_) => println!("SKIPPED: root writes to a read-only folder all the same"),
        Err(error) => {
            let text = error.to_string();
            assert!(
                text.ends_with(
                    "; give yourself access to it and its folder, or use another folder"
                ),
                "{text}"
            );
            assert!(!job.exists());
        }
    }
}
