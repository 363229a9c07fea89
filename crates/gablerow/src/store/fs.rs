//! The disk, one method a system call or nearly so, so that a test can let any of them fail.

use std::fs::{self, File, Metadata, OpenOptions};
use std::io::{self, Read, Seek, SeekFrom, Write};
use std::path::Path;

use super::error::Cause;

/// What the store asks of a disk. [`Disk`] is the real one; the tests put one in its place that
/// fails on demand.
pub(super) trait Fs {
    /// What stands at this path, a link itself and not what it leads to; `None` if nothing does.
    fn look(&self, path: &Path) -> io::Result<Option<Metadata>>;
    /// Opens a file that is there.
    fn open(&self, path: &Path, access: Access) -> io::Result<File>;
    /// Makes a file that must not be there, not even as a link, with the rights and the owner of
    /// another.
    fn create_new(&self, path: &Path, like: Option<&Metadata>) -> io::Result<File>;
    /// What is in the file from where it stands, but no more than `bytes_max`.
    fn read(&self, file: &File, bytes_max: u64) -> io::Result<Vec<u8>>;
    /// Writes all of it.
    fn write(&self, file: &File, bytes: &[u8]) -> io::Result<()>;
    /// Cuts the file down to its first `bytes` bytes, and goes on writing there.
    fn cut(&self, file: &File, bytes: u64) -> io::Result<()>;
    /// Returns when the file would survive a power cut; its name is another matter, see
    /// [`sync_folder`](Self::sync_folder).
    fn sync(&self, file: &File) -> io::Result<()>;
    /// Gives a file another name in its folder, in one step; a file that has that name is replaced.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;
    /// Removes a file or link.
    fn remove(&self, path: &Path) -> io::Result<()>;
    /// Returns when the names in this folder would survive a power cut.
    fn sync_folder(&self, folder: &Path) -> io::Result<()>;
}

/// How a file is opened.
#[derive(Clone, Copy, Debug)]
pub(super) enum Access {
    /// For reading.
    Read,
    /// For reading and writing.
    ReadWrite,
}

/// The real disk.
pub(super) struct Disk;

impl Fs for Disk {
    fn look(&self, path: &Path) -> io::Result<Option<Metadata>> {
        match fs::symlink_metadata(path) {
            Ok(metadata) => Ok(Some(metadata)),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
            Err(error) => Err(error),
        }
    }

    fn open(&self, path: &Path, access: Access) -> io::Result<File> {
        OpenOptions::new()
            .read(true)
            .write(matches!(access, Access::ReadWrite))
            .open(path)
    }

    fn create_new(&self, path: &Path, like: Option<&Metadata>) -> io::Result<File> {
        let mut options = OpenOptions::new();
        options.write(true).create_new(true);
        match like {
            Some(like) => rights::create_like(&options, path, like),
            None => options.open(path),
        }
    }

    fn read(&self, file: &File, bytes_max: u64) -> io::Result<Vec<u8>> {
        let mut bytes = Vec::new();
        file.take(bytes_max).read_to_end(&mut bytes)?;
        Ok(bytes)
    }

    fn write(&self, mut file: &File, bytes: &[u8]) -> io::Result<()> {
        file.write_all(bytes)
    }

    fn cut(&self, mut file: &File, bytes: u64) -> io::Result<()> {
        file.set_len(bytes)?;
        file.seek(SeekFrom::Start(bytes)).map(|_| ())
    }

    fn sync(&self, file: &File) -> io::Result<()> {
        file.sync_all()
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        fs::remove_file(path)
    }

    /// A folder can be flushed only where it can be opened like a file; elsewhere a rename has to
    /// be trusted.
    fn sync_folder(&self, folder: &Path) -> io::Result<()> {
        if cfg!(unix) {
            File::open(folder)?.sync_all()
        } else {
            Ok(())
        }
    }
}

/// A plain file that was found and opened.
pub(super) struct Found {
    pub(super) file: File,
    pub(super) metadata: Metadata,
}

impl Found {
    /// Opens a plain file and nothing else: no folder, no pipe that would wait for a writer, no
    /// link.
    ///
    /// `None` if nothing stands there.
    pub(super) fn open(disk: &dyn Fs, path: &Path, access: Access) -> Result<Option<Self>, Cause> {
        let Some(seen) = disk.look(path)? else {
            return Ok(None);
        };
        plain(&seen)?;
        let file = disk.open(path, access)?;
        let metadata = file.metadata()?;
        if !same_file(&seen, &metadata) {
            // Another program replaced it just now; the next look will find one of the two.
            return Err(io::Error::from(io::ErrorKind::ResourceBusy).into());
        }
        Ok(Some(Self { file, metadata }))
    }

    /// All its bytes.
    ///
    /// The size is looked at before anything is read, and again while reading, since the file may
    /// be growing.
    pub(super) fn read(&self, disk: &dyn Fs, bytes_max: u64) -> Result<Vec<u8>, Cause> {
        if self.metadata.len() > bytes_max {
            return Err(Cause::TooLarge { bytes_max });
        }
        let bytes = disk.read(&self.file, bytes_max + 1)?;
        if bytes.len() as u64 > bytes_max {
            return Err(Cause::TooLarge { bytes_max });
        }
        Ok(bytes)
    }
}

/// Refuses what is no plain file.
pub(super) fn plain(metadata: &Metadata) -> Result<(), Cause> {
    let kind = metadata.file_type();
    if kind.is_file() {
        Ok(())
    } else if kind.is_dir() {
        Err(Cause::NotPlain("a folder"))
    } else if kind.is_symlink() {
        Err(Cause::NotPlain("a link"))
    } else {
        Err(Cause::NotPlain("a pipe, socket or device"))
    }
}

/// Whether both were asked of the same file.
#[cfg(unix)]
pub(super) fn same_file(a: &Metadata, b: &Metadata) -> bool {
    use std::os::unix::fs::MetadataExt;
    (a.dev(), a.ino()) == (b.dev(), b.ino())
}

/// Without file numbers nothing can be told apart; the lock and the comparison of bytes have to do.
#[cfg(not(unix))]
pub(super) fn same_file(_: &Metadata, _: &Metadata) -> bool {
    true
}

#[cfg(unix)]
mod rights {
    use std::fs::{File, Metadata, OpenOptions, Permissions};
    use std::io;
    use std::os::unix::fs::{MetadataExt, OpenOptionsExt, PermissionsExt, fchown};
    use std::path::Path;

    const GROUP_BITS: u32 = 0o070;

    /// The rights are narrow from the first moment, so that nobody can open the file before they
    /// are set.
    pub(super) fn create_like(
        options: &OpenOptions,
        path: &Path,
        like: &Metadata,
    ) -> io::Result<File> {
        let mode = like.mode() & 0o777;
        let file = options.clone().mode(mode).open(path)?;
        let mode = if keep_owner(&file, like)? {
            mode
        } else {
            mode & !GROUP_BITS
        };
        file.set_permissions(Permissions::from_mode(mode))?;
        Ok(file)
    }

    /// Hands the file to the owner and the group of the other, as far as we may.
    ///
    /// False if the group is a new one, which then must not get the rights that the old one had.
    fn keep_owner(file: &File, like: &Metadata) -> io::Result<bool> {
        let ours = file.metadata()?;
        if (ours.uid(), ours.gid()) == (like.uid(), like.gid()) {
            return Ok(true);
        }
        let kept = fchown(file, Some(like.uid()), Some(like.gid()))
            .or_else(|_| fchown(file, None, Some(like.gid())));
        Ok(kept.is_ok())
    }
}

#[cfg(not(unix))]
mod rights {
    use std::fs::{File, Metadata, OpenOptions};
    use std::io;
    use std::path::Path;

    /// A new file has the rights of its folder; there is nothing to keep.
    pub(super) fn create_like(
        options: &OpenOptions,
        path: &Path,
        _: &Metadata,
    ) -> io::Result<File> {
        options.open(path)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::watched::{Fault, Watched};

    fn found(bytes: &str) -> (tempfile::TempDir, Found) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("glazes.json");
        fs::write(&path, bytes).unwrap();
        let found = Found::open(&Disk, &path, Access::ReadWrite)
            .unwrap()
            .unwrap();
        (folder, found)
    }

    #[test]
    fn a_file_that_is_too_large_is_not_even_read() {
        let (_folder, found) = found("12345");
        let unreadable = Watched::new(Fault::From(0));
        assert!(matches!(found.read(&unreadable, 5), Err(Cause::Io(_))));
        assert!(matches!(
            found.read(&unreadable, 4),
            Err(Cause::TooLarge { bytes_max: 4 })
        ));
    }

    #[test]
    fn a_file_that_grows_is_read_no_further_than_the_limit() {
        let (folder, found) = found("12345");
        fs::write(folder.path().join("glazes.json"), "123456").unwrap();
        assert!(matches!(
            found.read(&Disk, 5),
            Err(Cause::TooLarge { bytes_max: 5 })
        ));
    }
}
