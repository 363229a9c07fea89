//! A job from its file.

use std::fmt;
use std::path::Path;

use gablerow_core::job::Job;

use crate::job_file::{self, JobFileError};
use crate::store;

/// A file that is no job: where, and why.
#[derive(Debug)]
pub(super) struct UnreadableJob {
    file_name: String,
    error: JobFileError,
}

impl UnreadableJob {
    /// The lines that point at the place.
    pub(super) fn report(&self) -> String {
        self.error.report(&self.file_name)
    }
}

impl fmt::Display for UnreadableJob {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.file_name, self.error)
    }
}

impl std::error::Error for UnreadableJob {}

/// The job of a file, as it was last saved.
pub(super) fn job(path: &Path) -> anyhow::Result<Job> {
    let (bytes, _) = store::read(path)?;
    let job = job_file::read(&bytes).map_err(|error| UnreadableJob {
        file_name: path.display().to_string(),
        error,
    })?;
    Ok(job)
}
