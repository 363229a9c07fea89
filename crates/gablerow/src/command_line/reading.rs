//! A job from its file.

use std::path::Path;

use gablerow_core::job::Job;

use crate::job_file::{self, UnreadableJob};
use crate::store;

/// The job of a file, as it was last saved.
pub(super) fn job(path: &Path) -> anyhow::Result<Job> {
    let (bytes, _) = store::read(path)?;
    let job = job_file::read(&bytes).map_err(|error| UnreadableJob::new(path, error))?;
    Ok(job)
}
