//! The store: the only module that touches the disk.
//!
//! It deals in bytes; what a job or an edit is, it does not know. Beside a job file lies at most
//! this, and each piece keeps one promise:
//!
//! ```text
//! glazes.json                 the job        old or new, always whole                      save
//! glazes.json~                the backup     the version before the last save              save
//! .glazes.json.lock           the lock       one window at a time, gone with the window    lock
//! .glazes.json.journal        the journal    all edits, saved or not; survives a kill      journal
//! .glazes.json.journal.torn   what was cut   an end of the journal that cannot be read     journal
//! .glazes.json.tmp            on its way     left by a crash, cleared by the next save     fresh
//! ```
//!
//! Papers lie in a folder that the user names, each as safely as a job: [`PaperFolder`].
//!
//! What a crash may cost: killed at any moment, the edit being written; a power cut, what was
//! appended since the journal was last flushed; once [`save`] has returned [`Saved`], nothing.
//!
//! Whoever writes beside a job first takes its [`Lock`], so the functions that write ask for one. A
//! session runs like this:
//!
//! ```text
//! Lock::take ─▶ read ─▶ Journal::open ─▶ append, append … ─▶ saving ─▶ save ─┐
//!                            │               ▲                               │
//!                            ▼               └───────────────────────────────┘
//!               Recovered::since(file): edits that a crash left;
//!               all edits before them: the way back, beyond saves
//! ```
//!
//! Each step has a place where it may be killed, and each such place is one that the next session
//! understands: see [`Recovered::since`].
//!
//! Inside, from the bottom up: [`fingerprint`](Fingerprint) and `record` are pure; `fs` is the
//! disk, one method a system call; `fresh` puts a whole file in its place; all else is built on
//! these.

mod error;
mod fingerprint;
mod fresh;
mod fs;
mod journal;
mod lock;
mod papers;
mod place;
mod read;
mod record;
mod recovered;
mod save;
mod unsaved;

#[cfg(test)]
mod crash;
#[cfg(test)]
mod faults;
#[cfg(test)]
mod watched;

pub use self::error::{Cause, Change, StoreError};
pub use self::fingerprint::Fingerprint;
pub use self::journal::{JOURNAL_BYTES_MAX, Journal};
pub use self::lock::{Holder, Lock};
pub use self::papers::{PaperFolder, Put};
pub use self::place::Place;
pub use self::read::{JOB_BYTES_MAX, read};
pub use self::recovered::Recovered;
pub use self::save::{Expected, Saved, export, make_folder_of, save};
pub use self::unsaved::unsaved;
