//! Every edit of a job, kept beside it: what is not saved yet survives a crash, and what is can still be undone.

use std::fs::File;
use std::io;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};

use super::error::{Cause, StoreError, failed};
use super::fingerprint::Fingerprint;
use super::fresh::Fresh;
use super::fs::{Access, Disk, Found, Fs};
use super::lock::Lock;
use super::place::Place;
use super::record::{self, Record, Sum};
use super::recovered::Recovered;

/// The most bytes a journal may have, itself still allowed: 256 MiB, more than a million edits.
pub const JOURNAL_BYTES_MAX: u64 = 256 * 1024 * 1024;

/// What is kept free in a full journal for the notes about the saves that empty it, and for what
/// stands before the payload on the last line.
const SAVING_BYTES_RESERVED: u64 = 64 * 1024;

const NOT_OPENED: &str = "journal not opened";
const NOT_WRITTEN: &str = "not written to the journal";
const NOT_BEGUN: &str = "new journal not begun";

/// The journal of a job, open for more edits.
///
/// An edit survives the death of the process as soon as [`append`](Self::append) has returned, and
/// a power cut as soon as the next call of the [`syncer`](Self::syncer) has.
#[derive(Debug)]
pub struct Journal {
    place: Place,
    open: Open,
    /// What the syncer flushes: always the same as `open`.
    shared: Arc<Mutex<Open>>,
    sum: Sum,
    /// How much of the file is good.
    bytes: u64,
    /// Whole lines that could not be written so far. They go with the next, so that none is ever
    /// missing in between.
    pending: String,
    /// A write failed and may have left a part behind the good bytes, to be cut before the next.
    ragged: bool,
    /// An edit was turned away. None may follow it, or it would be missing in between.
    full: bool,
}

#[derive(Clone, Debug)]
struct Open {
    file: Arc<File>,
    path: PathBuf,
}

impl Journal {
    /// Opens the journal of the job whose lock is given, and reads what a crash has left in it.
    ///
    /// `base` is the job file as it was just read, `None` if there is none. If there is no journal, or
    /// one without edits, a new one begins there. Otherwise the edits are handed over, those that
    /// were saved too, since undo goes back beyond a save; more are appended behind them, and it is
    /// for the caller to take them or to [`restart`](Self::restart).
    ///
    /// The end of a journal that cannot be read, because a write was cut short, never hides what
    /// stands before it. It is moved to `.NAME.journal.torn`, where it stays until the next one.
    ///
    /// # Errors
    ///
    /// - another version of the program wrote it, and this one does not know how to read it
    /// - it has more than [`JOURNAL_BYTES_MAX`] bytes, or is no plain file
    /// - the system refuses one of the steps
    pub fn open(lock: &Lock, base: Option<Fingerprint>) -> Result<(Self, Recovered), StoreError> {
        Self::open_on(&Disk, lock, base)
    }

    pub(super) fn open_on(
        disk: &dyn Fs,
        lock: &Lock,
        base: Option<Fingerprint>,
    ) -> Result<(Self, Recovered), StoreError> {
        let place = lock.place().clone();
        let path = place.journal();
        let begin = |torn| {
            let journal =
                Self::begin(disk, place.clone(), base).map_err(failed(NOT_BEGUN, &path))?;
            Ok((journal, Recovered::nothing(base, torn)))
        };
        let found =
            Found::open(disk, &path, Access::ReadWrite).map_err(failed(NOT_OPENED, &path))?;
        let Some(found) = found else {
            return begin(None);
        };
        let bytes = found
            .read(disk, JOURNAL_BYTES_MAX)
            .map_err(failed(NOT_OPENED, &path))?;
        let intact = record::read(&bytes).map_err(failed(NOT_OPENED, &path))?;

        let good = intact.as_ref().map_or(0, |intact| intact.bytes);
        let torn = cut_tail(disk, &place, &found, bytes.split_at(good))
            .map_err(failed(NOT_OPENED, &path))?;
        let Some(intact) = intact else {
            return begin(torn);
        };
        let recovered = Recovered::of(&intact, torn);
        if recovered.edits.is_empty() {
            return begin(recovered.torn);
        }
        Ok((
            Self::new(place, found.file, intact.sum, good as u64),
            recovered,
        ))
    }

    fn new(place: Place, file: File, sum: Sum, bytes: u64) -> Self {
        let open = Open {
            file: Arc::new(file),
            path: place.journal(),
        };
        let shared = Arc::new(Mutex::new(open.clone()));
        Self {
            place,
            open,
            shared,
            sum,
            bytes,
            pending: String::new(),
            ragged: false,
            full: false,
        }
    }

    /// Begins a new journal in place of whatever was there. Its name is not flushed yet.
    fn begin_unflushed(disk: &dyn Fs, place: Place, base: Option<Fingerprint>) -> io::Result<Self> {
        let (line, sum) = record::first_line(base);
        let job = disk.look(&place.job())?;
        let file = Fresh::write(disk, &place.journal(), line.as_bytes(), job.as_ref())?.place()?;
        Ok(Self::new(place, file, sum, line.len() as u64))
    }

    fn begin(disk: &dyn Fs, place: Place, base: Option<Fingerprint>) -> io::Result<Self> {
        let journal = Self::begin_unflushed(disk, place, base)?;
        disk.sync_folder(journal.place.folder())?;
        Ok(journal)
    }

    /// Appends one edit, as one line of text, with one write. Nothing waits for the disk.
    ///
    /// # Errors
    ///
    /// - the payload has a line break in it; it is not taken
    /// - the journal is full ([`Cause::JournalFull`]); nothing more is taken until
    ///   [`restart`](Self::restart)
    /// - the system refuses the write; then the edit is kept in memory and written along with the
    ///   next, in its order
    pub fn append(&mut self, payload: &str) -> Result<(), StoreError> {
        self.append_on(&Disk, payload)
    }

    pub(super) fn append_on(&mut self, disk: &dyn Fs, payload: &str) -> Result<(), StoreError> {
        self.write(disk, Record::Edit(payload))
            .map_err(failed(NOT_WRITTEN, &self.open.path))
    }

    /// Notes, before a save, which version it is going to put in place, and returns when that would
    /// survive a power cut.
    ///
    /// So a crash between the save and [`restart`](Self::restart) leaves no edit that seems to be
    /// unsaved. There is room for it in a full journal too.
    ///
    /// # Errors
    ///
    /// The system refuses the write or the flush. The save may go on all the same: all that is lost
    /// is the knowledge that a file which appears after a crash is our own.
    pub fn saving(&mut self, version: Fingerprint) -> Result<(), StoreError> {
        self.saving_on(&Disk, version)
    }

    pub(super) fn saving_on(
        &mut self,
        disk: &dyn Fs,
        version: Fingerprint,
    ) -> Result<(), StoreError> {
        self.write(disk, Record::Saving(version))
            .and_then(|()| Ok(disk.sync(&self.open.file)?))
            .map_err(failed(NOT_WRITTEN, &self.open.path))
    }

    fn write(&mut self, disk: &dyn Fs, record: Record<'_>) -> Result<(), Cause> {
        if let Record::Edit(payload) = record {
            if payload.contains('\n') {
                return Err(Cause::SeveralLines);
            }
            let bytes = self.bytes + (self.pending.len() + payload.len()) as u64;
            self.full |= bytes >= JOURNAL_BYTES_MAX - SAVING_BYTES_RESERVED;
            if self.full {
                return Err(Cause::JournalFull);
            }
        }
        let (line, sum) = self.sum.line(record);
        self.pending += &line;
        self.sum = sum;
        if self.ragged {
            disk.cut(&self.open.file, self.bytes)?;
        }
        self.ragged = true;
        disk.write(&self.open.file, self.pending.as_bytes())?;
        self.ragged = false;
        self.bytes += self.pending.len() as u64;
        self.pending.clear();
        Ok(())
    }

    /// Begins a new, empty journal in one step: all edits are in the file that has this fingerprint
    /// now, or are given up.
    ///
    /// # Errors
    ///
    /// The system refuses one of the steps. Then the old journal goes on, or the new one has begun
    /// but might not survive a power cut; in both cases [`append`](Self::append) works as before,
    /// and what was saved is not offered again.
    pub fn restart(&mut self, base: Option<Fingerprint>) -> Result<(), StoreError> {
        self.restart_on(&Disk, base)
    }

    pub(super) fn restart_on(
        &mut self,
        disk: &dyn Fs,
        base: Option<Fingerprint>,
    ) -> Result<(), StoreError> {
        self.restart_at(disk, self.place.clone(), base)
    }

    fn restart_at(
        &mut self,
        disk: &dyn Fs,
        place: Place,
        base: Option<Fingerprint>,
    ) -> Result<(), StoreError> {
        let path = place.journal();
        let begun = Self::begin_unflushed(disk, place, base).map_err(failed(NOT_BEGUN, &path))?;
        let shared = Arc::clone(&self.shared);
        *shared.lock().unwrap_or_else(PoisonError::into_inner) = begun.open.clone();
        *self = Self { shared, ..begun };
        disk.sync_folder(self.place.folder())
            .map_err(failed("new journal not safe from a power cut yet", &path))
    }

    /// A function that flushes the journal, to be called from another thread, at most once a second
    /// or so. It follows the journal through [`restart`](Self::restart), and never makes
    /// [`append`](Self::append) wait.
    ///
    /// When it fails, what was appended since it last returned may not survive a power cut, however
    /// often it is tried.
    pub fn syncer(&self) -> impl FnMut() -> Result<(), StoreError> + Send + use<> {
        let shared = Arc::clone(&self.shared);
        move || {
            let Open { file, path } = shared
                .lock()
                .unwrap_or_else(PoisonError::into_inner)
                .clone();
            file.sync_data()
                .map_err(failed("journal not flushed", &path))
        }
    }

    /// Ends the journal: all is saved, or given up.
    ///
    /// # Errors
    ///
    /// The system refuses to remove it. It then holds nothing that is not saved, provided that all
    /// is.
    pub fn remove(self) -> Result<(), StoreError> {
        remove_if_there(&Disk, &self.open.path)
            .map_err(failed("journal not removed", &self.open.path))
    }
}

/// Moves the unreadable end of a journal out of the way, first there, then off; `None` if it has no
/// such end.
fn cut_tail(
    disk: &dyn Fs,
    place: &Place,
    found: &Found,
    (good, tail): (&[u8], &[u8]),
) -> io::Result<Option<PathBuf>> {
    if tail.is_empty() {
        return Ok(None);
    }
    let torn = place.torn();
    Fresh::write(disk, &torn, tail, Some(&found.metadata))?.place()?;
    disk.sync_folder(place.folder())?;
    disk.cut(&found.file, good.len() as u64)?;
    disk.sync(&found.file)?;
    Ok(Some(torn))
}

fn remove_if_there(disk: &dyn Fs, path: &std::path::Path) -> io::Result<()> {
    match disk.remove(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        done => done,
    }
}

#[cfg(test)]
mod tests;
