//! A job on disk while it is open: its lock, its journal, the version that was read or saved last.
//!
//! ```text
//! open:  lock -> file -> Job;  journal -> steps done and undone -> History;  steps not in the file -> Job
//! keep:  a change -> one line of the journal
//! save:  Job -> file;  under another name the journal goes along
//! ```

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::Duration;

use anyhow::Context;
use gablerow_core::cards::Cards;
use gablerow_core::history::History;
use gablerow_core::job::{Job, Shop};
use gablerow_core::label::Label;

use crate::app::Desk;
use crate::job_file::UnreadableJob;
use crate::shop_file::ShopFile;
use crate::store::{self, Cause, Expected, Fingerprint, Journal, Lock, Place, StoreError};
use crate::update::Kept;
use crate::{demo, job_file, journal_entry};

/// How often the journal is flushed while it grows: what a power cut may cost.
const FLUSH_EVERY: Duration = Duration::from_secs(1);

/// The name that the demo is saved under, when it is free.
const DEMO_FILE: &str = "glaze-store.json";

/// The job on disk.
#[derive(Debug)]
pub struct Session {
    path: PathBuf,
    /// Taken when a named job is opened, or when the first change of an unnamed one is kept.
    held: Option<Held>,
    /// The version that the file has, as far as we know; `None` when there is no file.
    version: Option<Fingerprint>,
    /// What a job without a file began with, until the journal has it.
    began: Option<Box<(Shop, Cards)>>,
}

#[derive(Debug)]
struct Held {
    lock: Lock,
    journal: Journal,
    /// Set when something was appended since the journal was last flushed.
    grown: Arc<AtomicBool>,
}

/// What was found on opening.
#[derive(Debug)]
pub struct Opened {
    /// The job, its history, where it is.
    pub desk: Desk,
    /// The way to disk.
    pub session: Session,
    /// How many changes were found that are not in the file; they are made in the job already.
    pub found: usize,
    /// Something the person should know.
    pub said: Option<String>,
}

/// What became of a save.
#[derive(Debug)]
pub enum Outcome {
    /// It is on disk, there.
    Saved(PathBuf),
    /// Something else is there; nothing was written.
    Occupied {
        /// Where.
        path: PathBuf,
        /// What is there, in words.
        what: String,
    },
}

impl Session {
    /// Opens a job file, or, without one, the demo. A new job begins with what the shop keeps.
    ///
    /// # Errors
    /// - the file is open in another window, cannot be read, or is no job;
    /// - its journal cannot be read.
    pub fn open(path: Option<&Path>, shop: &ShopFile) -> anyhow::Result<Opened> {
        match path {
            Some(path) => Self::open_named(path, shop),
            None => Self::open_demo(),
        }
    }

    fn open_named(path: &Path, shop: &ShopFile) -> anyhow::Result<Opened> {
        let lock = Lock::take(path)?;
        if !path.exists() {
            let title = path
                .file_stem()
                .and_then(|stem| Label::new(&stem.to_string_lossy()).ok());
            let job = title.map_or_else(demo::job, |title| Ok(Job::plain(title)))?;
            return Self::take_up(path, lock, (None, shop.house()), job);
        }
        let (bytes, version) = store::read(path)?;
        let job = job_file::read(&bytes).map_err(|error| UnreadableJob::new(path, error))?;
        Self::take_up(path, lock, (Some(version), None), job)
    }

    /// The demo is kept under the first free name in this folder, once something was changed. A demo that was changed and
    /// never saved is found again.
    fn open_demo() -> anyhow::Result<Opened> {
        let names = (1..).map(|count| match count {
            1 => PathBuf::from(DEMO_FILE),
            _ => PathBuf::from(format!("glaze-store-{count}.json")),
        });
        for path in names {
            if path.exists() {
                continue;
            }
            if !Place::of(&path).is_ok_and(|place| place.journal().exists()) {
                let session = Self {
                    path: path.clone(),
                    held: None,
                    version: None,
                    began: None,
                };
                let desk = Desk {
                    job: demo::job()?,
                    history: History::of_saved(),
                    path,
                    has_file: false,
                    recorded: 0,
                };
                let first = Path::new(DEMO_FILE);
                let said = first.exists().then(|| {
                    format!("this is the demo; {DEMO_FILE} of this folder opens by its name")
                });
                return Ok(Opened {
                    desk,
                    session,
                    found: 0,
                    said,
                });
            }
            if let Ok(lock) = Lock::take(&path) {
                return Self::take_up(&path, lock, (None, None), demo::job()?);
            }
        }
        anyhow::bail!("there is no name left for the demo in this folder; name a job file")
    }

    fn take_up(
        path: &Path,
        lock: Lock,
        (version, house): (Option<Fingerprint>, Option<(Shop, Cards)>),
        mut job: Job,
    ) -> anyhow::Result<Opened> {
        let (journal, recovered) = Journal::open(&lock, version)?;
        // A journal says itself what its job began with: the shop may keep something else by now.
        let began = house.filter(|_| recovered.edits.is_empty()).map(Box::new);
        if let Some(house) = &began {
            begin(&mut job, house);
        }
        let mut held = Held::new(lock, journal);
        let recorded = job.records();
        let (mut history, mut found, mut said) = (History::of_saved(), 0, None);
        match recovered.since(version) {
            Some(unsaved) => {
                let saved = recovered.edits.len() - unsaved.len();
                (history, found) = replay(&recovered.edits, saved, &mut job)?;
            }
            None => {
                let aside = set_aside(path, &recovered.edits)?;
                said = Some(format!(
                    "the file was changed by another program; the steps before are in {}",
                    aside.display()
                ));
                held.journal.restart(version)?;
            }
        }
        if let Some(torn) = recovered.torn {
            said = Some(format!(
                "the end of the journal could not be read; it is in {}",
                torn.display()
            ));
        }
        job.validate().context("the journal does not fit the job")?;
        let desk = Desk {
            job,
            history,
            path: path.to_owned(),
            has_file: version.is_some(),
            recorded,
        };
        Ok(Opened {
            desk,
            session: Self {
                path: path.to_owned(),
                held: Some(held),
                version,
                began,
            },
            found,
            said,
        })
    }

    /// Keeps a change: once this has returned, it survives the death of the program.
    ///
    /// # Errors
    /// The journal cannot be written; the change is still in the job, and the next one is tried again.
    pub fn keep(&mut self, kept: &Kept) -> anyhow::Result<()> {
        let line = journal_entry::write(kept)?;
        let began = self.began.clone().map(Kept::Began);
        let began = began.as_ref().map(journal_entry::write).transpose()?;
        let held = self.hold()?;
        if let Some(began) = began {
            held.journal.append(&began)?;
        }
        held.journal.append(&line)?;
        held.grown.store(true, Ordering::Release);
        self.began = None;
        Ok(())
    }

    fn hold(&mut self) -> Result<&mut Held, StoreError> {
        let held = match self.held.take() {
            Some(held) => held,
            None => {
                let lock = Lock::take(&self.path)?;
                let (journal, _) = Journal::open(&lock, self.version)?;
                Held::new(lock, journal)
            }
        };
        Ok(self.held.insert(held))
    }

    /// Saves the job, and takes its way back along when the name is another one.
    ///
    /// # Errors
    /// The disk refuses, or another window has that file open; the old file is as it was.
    pub fn save(&mut self, desk: &Desk, path: &Path, overwrite: bool) -> anyhow::Result<Outcome> {
        let text = job_file::write(&desk.job);
        let is_same = path == self.path || Place::of(path).ok() == Place::of(&self.path).ok();
        let expected = match (overwrite, is_same, self.version) {
            (true, _, _) => Expected::Anything,
            (false, true, Some(version)) => Expected::Version(version),
            (false, _, _) => Expected::Absent,
        };
        let next = Fingerprint::of(text.as_bytes());
        let saved = if is_same {
            let held = self.hold()?;
            // A save goes on without this note: it only helps to tell our own file from a stranger's after a crash.
            let _ = held.journal.saving(next);
            store::save(&mut held.lock, text.as_bytes(), expected).map_err(anyhow::Error::from)
        } else {
            self.save_elsewhere(desk, path, text.as_bytes(), expected)
        };
        match saved {
            Ok(saved) => {
                (self.path, self.version) = (path.to_owned(), Some(saved.fingerprint));
                self.began = None;
                Ok(Outcome::Saved(path.to_owned()))
            }
            Err(error) => match error.downcast_ref::<StoreError>().map(StoreError::cause) {
                Some(Cause::ChangedOutside(_)) => Ok(Outcome::Occupied {
                    path: path.to_owned(),
                    what: error.to_string(),
                }),
                _ => Err(error),
            },
        }
    }

    /// Saves under another name. The session goes there only once all of its way back is there too; until then it stays
    /// where it is, with its lock and its journal.
    fn save_elsewhere(
        &mut self,
        desk: &Desk,
        path: &Path,
        text: &[u8],
        expected: Expected,
    ) -> anyhow::Result<store::Saved> {
        let lines: Vec<String> = way_back(&desk.history)
            .map(|kept| journal_entry::write(&kept))
            .collect::<Result<_, _>>()?;
        let mut lock = Lock::take(path)?;
        let saved = store::save(&mut lock, text, expected)?;
        let journal = begin_with(&lock, &lines, saved.fingerprint).with_context(|| {
            format!(
                "saved {}, but its way back was not; the job is still {}",
                path.display(),
                self.path.display()
            )
        })?;
        let before = self.held.replace(Held::new(lock, journal));
        // A file that was saved keeps its own way back. A job that had no file would be found again, though it has one now.
        if let (Some(before), None) = (before, self.version) {
            // Being found once too often costs a key.
            let _ = before.journal.remove();
        }
        Ok(saved)
    }
}

/// A new journal that leads to a version which is on disk already. It begins as one of no file, and says last which
/// version its lines lead to: cut off in between it fits no file, and is set aside on opening.
fn begin_with(lock: &Lock, lines: &[String], version: Fingerprint) -> Result<Journal, StoreError> {
    let (mut journal, _) = Journal::open(lock, None)?;
    journal.restart(None)?;
    for line in lines {
        journal.append(line)?;
    }
    journal.saving(version)?;
    Ok(journal)
}

impl Held {
    /// Starts flushing the journal from a thread of its own, which ends with the program.
    fn new(lock: Lock, journal: Journal) -> Self {
        let grown = Arc::new(AtomicBool::new(false));
        let (mut flush, seen) = (journal.syncer(), Arc::clone(&grown));
        let flusher = move || loop {
            thread::sleep(FLUSH_EVERY);
            if seen.swap(false, Ordering::AcqRel) {
                // What cannot be flushed is still safe from all but a power cut.
                let _ = flush();
            }
        };
        // Without the thread nothing is lost but that.
        let _ = thread::Builder::new().name("journal".into()).spawn(flusher);
        Self {
            lock,
            journal,
            grown,
        }
    }
}

/// Makes the history of all lines, and the changes of those that are not in the file; gives how many these are.
fn replay(lines: &[String], saved: usize, job: &mut Job) -> anyhow::Result<(History, usize)> {
    let mut history = History::default();
    let mut found = 0;
    for (at, line) in lines.iter().enumerate() {
        if at == saved {
            history.mark_saved();
        }
        match (journal_entry::read(line)?, at < saved) {
            (Kept::Left(place), _) => {
                job.left_at = Some(place);
                continue;
            }
            // What was said at the bench stands, whatever becomes of the changes around it.
            (Kept::Bored(..) | Kept::Trouble(_) | Kept::Measured(_), true) => continue,
            (Kept::Bored(holes, took), false) => {
                job.bored.extend(holes);
                job.took.extend(took);
                continue;
            }
            (Kept::Trouble(trouble), false) => {
                job.troubles.push(trouble);
                continue;
            }
            (Kept::Measured(measured), false) => {
                job.measured.push(measured);
                continue;
            }
            (Kept::Began(_), true) => continue,
            (Kept::Began(house), false) => {
                begin(job, &house);
                continue;
            }
            (Kept::Made(step), true) => history.push(*step),
            (Kept::Made(step), false) => history.make(*step, job),
            (Kept::Undone, true) => drop(history.step_back()),
            (Kept::Undone, false) => drop(history.undo(job)),
            (Kept::Redone, true) => drop(history.step_forward()),
            (Kept::Redone, false) => drop(history.redo(job)),
        }
        found += usize::from(at >= saved);
    }
    if saved >= lines.len() {
        history.mark_saved();
    }
    Ok((history, found))
}

/// Gives a new job the house defaults and cards it begins with.
fn begin(job: &mut Job, (shop, cards): &(Shop, Cards)) {
    *job = Job::with_house(job.title.clone(), shop.clone(), cards.clone());
}

/// The lines that lead to a history from nothing.
fn way_back(history: &History) -> impl Iterator<Item = Kept> + '_ {
    let made = history
        .steps()
        .iter()
        .map(|step| Kept::Made(Box::new(step.clone())));
    made.chain((0..history.redoable()).map(|_| Kept::Undone))
}

/// Writes steps that have nothing to stand on any more where a person can find them.
fn set_aside(path: &Path, lines: &[String]) -> Result<PathBuf, StoreError> {
    let mut name = path.as_os_str().to_owned();
    name.push(".steps");
    let aside = PathBuf::from(name);
    store::export(
        &aside,
        (lines.join("\n") + "\n").as_bytes(),
        Expected::Anything,
    )?;
    Ok(aside)
}

#[cfg(test)]
mod tests;
