//! A folder that papers are written to: each file whole or not at all, nothing outside the folder, nothing over another unasked.

use std::fs::{self, File, TryLockError};
use std::path::{Path, PathBuf};

use super::error::{Cause, StoreError, failed};
use super::fresh::Fresh;
use super::fs::{Access, Disk, Found, Fs};

/// A folder for papers, held as long as this lives: one program at a time writes to it, since files on their way have the same
/// names in all of them. [`PaperFolder::settle`] comes last.
#[derive(Debug)]
pub struct PaperFolder {
    path: PathBuf,
    /// The folder itself, locked; `None` where the disk knows no locks, or a folder cannot be opened.
    _held: Option<File>,
}

/// What became of a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Put {
    /// It is in its place, whole.
    Written,
    /// The same bytes were there already.
    Same,
    /// A file with other bytes has the name; it was let be.
    Kept,
}

impl PaperFolder {
    /// The folder at a path; it is made, with those above it, when it is not there yet.
    ///
    /// # Errors
    /// - the system refuses, as where a file stands in its place;
    /// - another program holds it.
    pub fn open(path: &Path) -> Result<Self, StoreError> {
        const WHAT: &str = "no papers written";
        if path.is_file() {
            return Err(StoreError::new(WHAT, path, Cause::NoFolder));
        }
        fs::create_dir_all(path).map_err(failed(WHAT, path))?;
        let held = match File::open(path).map(|folder| (folder.try_lock(), folder)) {
            Ok((Err(TryLockError::WouldBlock), _)) => {
                return Err(StoreError::new(WHAT, path, Cause::PapersInHand));
            }
            Ok((Ok(()), folder)) => Some(folder),
            Ok((Err(TryLockError::Error(_)), _)) | Err(_) => None,
        };
        Ok(Self {
            path: path.to_path_buf(),
            _held: held,
        })
    }

    /// Puts a file in it. What has the name and holds other bytes gives way only when `replace` says so.
    ///
    /// # Errors
    /// What was there before is still there, and nothing else is left lying about:
    /// - the name is more than a name, such as `../x` or `a/b`;
    /// - a folder, a link or a device has the name: what it leads to is not touched;
    /// - the system refuses one of the steps.
    pub fn put(&self, name: &str, bytes: &[u8], replace: bool) -> Result<Put, StoreError> {
        self.put_on(&Disk, name, bytes, replace)
    }

    pub(super) fn put_on(
        &self,
        disk: &dyn Fs,
        name: &str,
        bytes: &[u8],
        replace: bool,
    ) -> Result<Put, StoreError> {
        let path = self.path.join(name);
        if path.file_name() != Some(name.as_ref()) {
            return Err(StoreError::new("not written", &path, Cause::NoName));
        }
        let found = Found::open(disk, &path, Access::Read).map_err(failed("not written", &path))?;
        if let Some(found) = &found {
            if holds(found, disk, bytes).map_err(failed("not written", &path))? {
                return Ok(Put::Same);
            }
            if !replace {
                return Ok(Put::Kept);
            }
        }
        let like = found.as_ref().map(|found| &found.metadata);
        Fresh::write(disk, &path, bytes, like)
            .and_then(Fresh::place)
            .map_err(failed("not written", &path))?;
        Ok(Put::Written)
    }

    /// Makes what was put in it survive a power cut: each file is flushed before it gets its name, and the names are here, all at
    /// once, since a flush for each would take longer than printing them.
    ///
    /// # Errors
    /// The folder cannot be flushed: the files are whole, but a power cut may take their names.
    pub fn settle(&self) -> Result<(), StoreError> {
        self.settle_on(&Disk)
    }

    fn settle_on(&self, disk: &dyn Fs) -> Result<(), StoreError> {
        let unsafe_yet = failed("written, but not safe from a power cut yet", &self.path);
        disk.sync_folder(&self.path).map_err(unsafe_yet)
    }
}

/// Whether a file holds these bytes and no others.
fn holds(found: &Found, disk: &dyn Fs, bytes: &[u8]) -> Result<bool, Cause> {
    let length = bytes.len() as u64;
    Ok(found.metadata.len() == length && found.read(disk, length)? == bytes)
}

#[cfg(test)]
mod tests {
    use tempfile::{TempDir, tempdir};

    use super::*;
    use crate::store::watched::{Fault, Watched};

    fn folder() -> (TempDir, PaperFolder) {
        let around = tempdir().unwrap();
        let folder = PaperFolder::open(&around.path().join("to/papers")).unwrap();
        (around, folder)
    }

    fn names(folder: &PaperFolder) -> Vec<String> {
        let entries = fs::read_dir(&folder.path).unwrap();
        entries
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect()
    }

    #[test]
    fn other_bytes_are_let_be_unless_they_shall_be_replaced() {
        let (_around, folder) = folder();
        let put = |bytes: &[u8], replace| folder.put("cut.pdf", bytes, replace).unwrap();
        assert_eq!(put(b"first", false), Put::Written);
        assert_eq!(put(b"first", false), Put::Same);
        assert_eq!(put(b"other", false), Put::Kept);
        assert_eq!(fs::read(folder.path.join("cut.pdf")).unwrap(), b"first");
        assert_eq!(put(b"other", true), Put::Written);
        assert_eq!(fs::read(folder.path.join("cut.pdf")).unwrap(), b"other");
        assert_eq!(names(&folder), ["cut.pdf"]);
    }

    #[test]
    fn two_programs_do_not_write_into_each_others_files() {
        let (_around, folder) = folder();
        let path = folder.path.clone();
        let refused = PaperFolder::open(&path).unwrap_err();
        assert!(matches!(refused.cause(), Cause::PapersInHand), "{refused}");
        drop(folder);
        assert!(PaperFolder::open(&path).is_ok());
    }

    #[test]
    fn names_that_lead_elsewhere_are_none() {
        let (around, folder) = folder();
        for name in [
            "../out.txt",
            "/tmp/gablerow-out.txt",
            "a/b.txt",
            "..",
            ".",
            "",
        ] {
            let error = folder.put(name, b"x", true).unwrap_err();
            assert!(matches!(error.cause(), Cause::NoName), "{name}: {error}");
        }
        assert!(!around.path().join("to/out.txt").exists());
    }

    #[cfg(unix)]
    #[test]
    fn a_link_is_not_followed() {
        let (around, folder) = folder();
        let outside = around.path().join("outside.txt");
        fs::write(&outside, "before").unwrap();
        std::os::unix::fs::symlink(&outside, folder.path.join("cut.pdf")).unwrap();
        for replace in [false, true] {
            let error = folder.put("cut.pdf", b"x", replace).unwrap_err();
            assert!(
                matches!(error.cause(), Cause::NotPlain("a link")),
                "{error}"
            );
        }
        assert_eq!(fs::read_to_string(&outside).unwrap(), "before");
        // Nor is one that stands where a file is on its way.
        std::os::unix::fs::symlink(&outside, folder.path.join(".bag.pdf.tmp")).unwrap();
        assert_eq!(folder.put("bag.pdf", b"x", false).unwrap(), Put::Written);
        assert_eq!(fs::read_to_string(&outside).unwrap(), "before");
    }

    #[test]
    fn a_write_that_fails_anywhere_leaves_the_old_file_or_the_new_one_whole() {
        for before in [None, Some("old and longer")] {
            let mut step = 0;
            loop {
                let (_around, folder) = folder();
                if let Some(before) = before {
                    folder.put("cut.pdf", before.as_bytes(), false).unwrap();
                }
                let disk = Watched::new(Fault::Once(step));
                let put = folder.put_on(&disk, "cut.pdf", b"new", true);
                let outcome = put.and_then(|_| folder.settle_on(&disk));
                let failed = disk.failed();
                assert_eq!(outcome.is_ok(), failed.is_empty(), "{failed:?}");
                let is_placed = failed.first().is_none_or(|step| *step == "sync folder");
                let there = fs::read_to_string(folder.path.join("cut.pdf")).ok();
                let want = if is_placed { Some("new") } else { before };
                assert_eq!(there.as_deref(), want, "{failed:?}");
                assert_eq!(
                    names(&folder).len(),
                    usize::from(want.is_some()),
                    "{failed:?}"
                );
                if failed.is_empty() {
                    break;
                }
                step += 1;
            }
            assert!(step > 5, "only {step} steps failed");
        }
    }
}
