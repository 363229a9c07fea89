//! A job from its file.

use std::path::Path;

use gablerow_core::job::Job;

use super::output::say;
use crate::job_file::{self, UnreadableJob};
use crate::update::Kept;
use crate::{journal_entry, store};

/// The job of a file, as it was last saved. What the journal beside it holds and the file does not is said, since what is
/// printed is without it.
pub(super) fn job(path: &Path) -> anyhow::Result<Job> {
    let (bytes, version) = store::read(path)?;
    let job = job_file::read(&bytes).map_err(|error| UnreadableJob::new(path, error))?;
    let is_work = |line: &String| {
        let kept = journal_entry::read(line);
        kept.is_ok_and(|kept| !matches!(kept, Kept::Left(_) | Kept::Began(_)))
    };
    let unsaved = store::unsaved(path, version);
    let count = unsaved.iter().filter(|line| is_work(line)).count();
    if count > 0 {
        let entries = if count == 1 { "entry" } else { "entries" };
        say(&format!(
            "not saved yet, and not in what is printed: {count} {entries} of the journal beside {}; open it and save",
            path.display()
        ));
    }
    Ok(job)
}
