//! Saving: the old version or the new one, whole, whatever happens.

use std::fs::Metadata;
use std::path::{Path, PathBuf};

use super::error::{Cause, Change, StoreError, failed};
use super::fingerprint::Fingerprint;
use super::fresh::Fresh;
use super::fs::{Access, Disk, Found, Fs, same_file};
use super::lock::Lock;
use super::read::JOB_BYTES_MAX;

/// What a save may replace.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Expected {
    /// Nothing: no file of this name may be there.
    Absent,
    /// The version that was read or saved last, and no other.
    Version(Fingerprint),
    /// Whatever is there; the user said so.
    Anything,
}

/// The new version is in its place and would survive a power cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Saved {
    /// What the next save may replace.
    pub fingerprint: Fingerprint,
    /// Where the version before it lies now; `None` if there was none, or the same.
    pub backup: Option<PathBuf>,
}

/// Saves a job, and keeps the version before it as `NAME~`.
///
/// The new version is written beside the old one and flushed, the old one is copied to `NAME~` the
/// same way, then the new one takes the name in one step and the folder is flushed. Killed or cut
/// off anywhere in between, `NAME` is the old version or the new one, whole, and `NAME~` is one of
/// the two before it, whole. The backup is a copy, not a second name for the old file: a second
/// name would change along with the first in programs that write in place, and some disks know
/// none. A version equal to the one on disk leaves the backup alone, so that saving twice does not
/// lose it.
///
/// The rights of the old file are kept, and its owner and group as far as the system allows; a link
/// to a job stays a link. Other names of the same file (hard links) keep the old version.
///
/// # Errors
///
/// On any error but the last the old version is still in its place, and nothing else is left lying
/// about; saving again is always safe.
///
/// - what is there is not what was expected ([`Cause::ChangedOutside`])
/// - something else than a plain file is there, or a write-protected one
/// - the old or the new version has more than [`JOB_BYTES_MAX`] bytes
/// - the system refuses one of the steps
/// - the folder cannot be flushed: then the new version may be in its place, but is not safe from a
///   power cut yet. The lock remembers this, so that the next save takes it for our own and not for
///   a change from outside.
pub fn save(lock: &mut Lock, bytes: &[u8], expected: Expected) -> Result<Saved, StoreError> {
    save_on(&Disk, lock, bytes, expected)
}

pub(super) fn save_on(
    disk: &dyn Fs,
    lock: &mut Lock,
    bytes: &[u8],
    expected: Expected,
) -> Result<Saved, StoreError> {
    let place = lock.place().clone();
    put(disk, lock, bytes, expected, |old| {
        let what = "not saved, the version before it could not be kept";
        let backup = place.backup();
        Fresh::write(disk, &backup, &old.bytes, Some(&old.metadata))
            .and_then(Fresh::place)
            .map_err(failed(what, &backup))?;
        Ok(backup)
    })
    .map(|(fingerprint, backup)| Saved {
        fingerprint,
        backup,
    })
}

/// Writes what the user exports, as safely as a job but without a backup beside it.
///
/// # Errors
///
/// Those of [`Lock::take`] and of [`save`]; so nothing is exported over a job that is open.
pub fn export(path: &Path, bytes: &[u8], expected: Expected) -> Result<(), StoreError> {
    let mut lock = Lock::take(path)?;
    put(&Disk, &mut lock, bytes, expected, |_| Ok(())).map(|_| ())
}

/// Makes the folder that a file shall lie in, and those above it, where they are not there yet.
///
/// # Errors
/// The system refuses.
pub fn make_folder_of(path: &Path) -> Result<(), StoreError> {
    let what = "not kept, the folder could not be made";
    let folder = path.parent().unwrap_or(path);
    std::fs::create_dir_all(folder).map_err(failed(what, folder))
}

/// The version that a save replaces.
struct Old {
    bytes: Vec<u8>,
    metadata: Metadata,
}

/// All steps of a save; `keep` is told the old version when it is about to go.
fn put<K>(
    disk: &dyn Fs,
    lock: &mut Lock,
    bytes: &[u8],
    expected: Expected,
    keep: impl FnOnce(&Old) -> Result<K, StoreError>,
) -> Result<(Fingerprint, Option<K>), StoreError> {
    let place = lock.place().clone();
    let job = place.job();
    if bytes.len() as u64 > JOB_BYTES_MAX {
        return Err(StoreError::new(
            "not saved",
            &job,
            Cause::TooLarge {
                bytes_max: JOB_BYTES_MAX,
            },
        ));
    }
    let old = old_version(disk, &job).map_err(failed("not saved", &job))?;
    agree(old.as_ref(), expected, lock.in_doubt).map_err(failed("not saved", &job))?;

    let fresh = Fresh::write(disk, &job, bytes, old.as_ref().map(|old| &old.metadata)).map_err(
        failed("not saved, the new version could not be written", &job),
    )?;
    let replaced = old.as_ref().filter(|old| old.bytes != bytes);
    let kept = replaced.map(keep).transpose()?;
    still_there(disk, &job, old.as_ref()).map_err(failed("not saved", &job))?;

    let fingerprint = Fingerprint::of(bytes);
    lock.in_doubt = Some(fingerprint);
    fresh.place().map_err(failed(
        "not saved, the new version could not take its place",
        &job,
    ))?;
    disk.sync_folder(place.folder())
        .map_err(failed("saved, but not safe from a power cut yet", &job))?;
    lock.in_doubt = None;
    Ok((fingerprint, kept))
}

/// What is there now. It is opened for writing too, although nothing is written: who must not write
/// to a file must not replace it either.
fn old_version(disk: &dyn Fs, job: &Path) -> Result<Option<Old>, Cause> {
    let Some(found) = Found::open(disk, job, Access::ReadWrite)? else {
        return Ok(None);
    };
    if found.metadata.permissions().readonly() {
        return Err(Cause::WriteProtected);
    }
    let bytes = found.read(disk, JOB_BYTES_MAX)?;
    Ok(Some(Old {
        bytes,
        metadata: found.metadata,
    }))
}

fn agree(
    old: Option<&Old>,
    expected: Expected,
    in_doubt: Option<Fingerprint>,
) -> Result<(), Cause> {
    let version = old.map(|old| Fingerprint::of(&old.bytes));
    if version.is_some() && version == in_doubt {
        return Ok(());
    }
    match (version, expected) {
        (_, Expected::Anything) | (None, Expected::Absent) => Ok(()),
        (Some(_), Expected::Absent) => Err(Cause::ChangedOutside(Change::Appeared)),
        (None, Expected::Version(_)) => Err(Cause::ChangedOutside(Change::Deleted)),
        (Some(there), Expected::Version(read)) if there == read => Ok(()),
        (Some(_), Expected::Version(_)) => Err(Cause::ChangedOutside(Change::Rewritten)),
    }
}

/// Looks once more, just before the old version goes, whether it is still the one that was compared
/// and kept: flushing takes long enough for another program to save in between.
fn still_there(disk: &dyn Fs, job: &Path, old: Option<&Old>) -> Result<(), Cause> {
    match (disk.look(job)?, old) {
        (None, None) => Ok(()),
        (Some(_), None) => Err(Cause::ChangedOutside(Change::Appeared)),
        (None, Some(_)) => Err(Cause::ChangedOutside(Change::Deleted)),
        (Some(now), Some(old)) if untouched(&now, &old.metadata) => Ok(()),
        (Some(_), Some(_)) => Err(Cause::ChangedOutside(Change::Rewritten)),
    }
}

fn untouched(now: &Metadata, then: &Metadata) -> bool {
    same_file(now, then) && now.len() == then.len() && now.modified().ok() == then.modified().ok()
}

#[cfg(test)]
mod tests;

#[cfg(test)]
#[cfg(unix)]
mod unix_tests;
