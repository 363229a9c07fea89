//! The job that is on the desk when none was named: three cabinets of a community pottery's glaze store.

use gablerow_core::job::Job;

use crate::job_file::{self, JobFileError};

/// The demo's job file, as it stands in `assets/`.
const TEXT: &str = include_str!("../../../assets/demo.json");

/// The demo job.
///
/// # Errors
/// Never in a program whose tests pass: the file is part of it.
pub fn job() -> Result<Job, JobFileError> {
    job_file::read(TEXT.as_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_demo_is_read_and_written_as_it_stands() {
        let text = job_file::write(&job().unwrap());
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../assets/demo.json");
        if std::env::var_os("GABLEROW_WRITE").is_some() {
            std::fs::write(path, &text).unwrap();
        }
        assert_eq!(text, std::fs::read_to_string(path).unwrap());
    }
}
