//! Where a job lies, and the names of what lies beside it.

use std::ffi::OsString;
use std::io;
use std::path::{Path, PathBuf};

use super::error::{Cause, StoreError, failed};

/// Where a job lies on disk, with every link resolved, so that a link to a job stays a link.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    folder: PathBuf,
    name: OsString,
}

impl Place {
    /// The place a path leads to. The file need not be there yet, its folder must be.
    ///
    /// # Errors
    ///
    /// - the path names no file (`..`, `/`)
    /// - it is a link that leads nowhere, or its folder is not there or must not be looked into
    pub fn of(path: &Path) -> Result<Self, StoreError> {
        Self::resolve(path).map_err(failed("not found", path))
    }

    pub(super) fn resolve(path: &Path) -> Result<Self, Cause> {
        let real = match path.canonicalize() {
            Ok(real) => real,
            Err(error) if error.kind() == io::ErrorKind::NotFound => new_file(path)?,
            Err(error) => return Err(error.into()),
        };
        match (real.parent(), real.file_name()) {
            (Some(folder), Some(name)) => Ok(Self {
                folder: folder.to_path_buf(),
                name: name.to_os_string(),
            }),
            _ => Err(Cause::NoName),
        }
    }

    /// The job file itself.
    #[must_use]
    pub fn job(&self) -> PathBuf {
        self.folder.join(&self.name)
    }

    /// The version before the last save, `NAME~`.
    #[must_use]
    pub fn backup(&self) -> PathBuf {
        self.beside("", "~")
    }

    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }

    pub(super) fn lock(&self) -> PathBuf {
        self.beside(".", ".lock")
    }

    /// Where its journal lies while it has one.
    #[must_use]
    pub fn journal(&self) -> PathBuf {
        self.beside(".", ".journal")
    }

    /// What was cut off the end of the journal.
    pub(super) fn torn(&self) -> PathBuf {
        self.beside(".", ".journal.torn")
    }

    fn beside(&self, before: &str, after: &str) -> PathBuf {
        let mut name = OsString::from(before);
        name.push(&self.name);
        name.push(after);
        self.folder.join(name)
    }
}

/// The place of a file that is not there: its folder resolved, its name as given.
fn new_file(path: &Path) -> Result<PathBuf, Cause> {
    if path.is_symlink() {
        return Err(Cause::DeadLink);
    }
    let name = path.file_name().ok_or(Cause::NoName)?;
    let folder = match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    Ok(folder.canonicalize()?.join(name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_lies_beside_a_job_is_named_after_it() {
        let folder = tempfile::tempdir().unwrap();
        let root = folder.path().canonicalize().unwrap();
        let place = Place::of(&root.join("glazes.json")).unwrap();
        assert_eq!(place.folder(), root);
        assert_eq!(place.job(), root.join("glazes.json"));
        assert_eq!(place.backup(), root.join("glazes.json~"));
        assert_eq!(place.lock(), root.join(".glazes.json.lock"));
        assert_eq!(place.journal(), root.join(".glazes.json.journal"));
        assert_eq!(place.torn(), root.join(".glazes.json.journal.torn"));
    }

    #[test]
    fn a_bare_name_lies_in_the_current_folder() {
        let here = Path::new(".").canonicalize().unwrap();
        assert_eq!(
            Place::of(Path::new("no such job.json")).unwrap().folder(),
            here
        );
    }

    #[test]
    fn paths_that_name_no_file_are_refused() {
        let folder = tempfile::tempdir().unwrap();
        let cause = |path: &Path| Place::resolve(path).unwrap_err();
        assert!(matches!(cause(Path::new("/")), Cause::NoName));
        assert!(matches!(cause(Path::new("")), Cause::NoName));
        assert!(matches!(
            cause(&folder.path().join("none/..")),
            Cause::NoName
        ));
        assert!(matches!(
            cause(&folder.path().join("none/a.json")),
            Cause::Io(_)
        ));
    }

    #[cfg(unix)]
    #[test]
    fn a_link_is_followed_and_a_dead_one_refused() {
        let folder = tempfile::tempdir().unwrap();
        let root = folder.path().canonicalize().unwrap();
        std::os::unix::fs::symlink("glazes.json", root.join("link")).unwrap();
        assert!(matches!(
            Place::resolve(&root.join("link")),
            Err(Cause::DeadLink)
        ));
        std::fs::write(root.join("glazes.json"), "{}").unwrap();
        assert_eq!(
            Place::of(&root.join("link")).unwrap().job(),
            root.join("glazes.json")
        );
    }
}
