//! A whole file put in its place: written beside it, flushed, and only then given the name.

use std::ffi::OsString;
use std::fs::{File, Metadata};
use std::io;
use std::path::{Path, PathBuf};

use super::fs::Fs;

/// A file that is complete and flushed, but does not have its name yet.
///
/// Dropped before that, it is removed again. What a crash leaves behind the next one clears away:
/// the temporary name is always the same, which is safe because whoever writes holds the lock of the folder of papers, or of
/// the job.
pub(super) struct Fresh<'a> {
    file: File,
    target: PathBuf,
    temporary: Temporary<'a>,
}

impl<'a> Fresh<'a> {
    /// Writes what shall stand at `target`, as `.NAME.tmp` in the same folder and with the rights
    /// of another file.
    pub(super) fn write(
        disk: &'a dyn Fs,
        target: &Path,
        bytes: &[u8],
        like: Option<&Metadata>,
    ) -> io::Result<Self> {
        let path = temporary_path(target)?;
        if disk.look(&path)?.is_some() {
            disk.remove(&path)?;
        }
        let file = disk.create_new(&path, like)?;
        let fresh = Self {
            file,
            target: target.to_path_buf(),
            temporary: Temporary {
                disk,
                path,
                placed: false,
            },
        };
        disk.write(&fresh.file, bytes)?;
        disk.sync(&fresh.file)?;
        Ok(fresh)
    }

    /// Gives it its name, in place of what had it, and returns it open for writing at its end.
    ///
    /// To survive a power cut the folder has to be flushed after that.
    pub(super) fn place(self) -> io::Result<File> {
        let Self {
            file,
            target,
            mut temporary,
        } = self;
        temporary.disk.rename(&temporary.path, &target)?;
        temporary.placed = true;
        Ok(file)
    }
}

struct Temporary<'a> {
    disk: &'a dyn Fs,
    path: PathBuf,
    placed: bool,
}

impl Drop for Temporary<'_> {
    fn drop(&mut self) {
        if !self.placed {
            // Nothing is lost if this fails too: the next write to the same target begins with it.
            let _ = self.disk.remove(&self.path);
        }
    }
}

fn temporary_path(target: &Path) -> io::Result<PathBuf> {
    let mut name = OsString::from(".");
    name.push(target.file_name().ok_or(io::ErrorKind::InvalidInput)?);
    name.push(".tmp");
    Ok(target.with_file_name(name))
}
