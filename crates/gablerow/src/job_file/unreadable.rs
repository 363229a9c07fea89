//! A file that is no job, with its name.

use std::fmt;
use std::path::Path;

use super::JobFileError;

/// A file that is no job: where, and why.
#[derive(Debug)]
pub struct UnreadableJob {
    file_name: String,
    error: JobFileError,
}

impl UnreadableJob {
    /// The error of the file at a path.
    #[must_use]
    pub fn new(path: &Path, error: JobFileError) -> Self {
        Self {
            file_name: path.display().to_string(),
            error,
        }
    }

    /// The lines that point at the place.
    #[must_use]
    pub fn report(&self) -> String {
        self.error.report(&self.file_name)
    }
}

impl fmt::Display for UnreadableJob {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.file_name, self.error)
    }
}

impl std::error::Error for UnreadableJob {}
