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
    use gablerow_core::check::{self, Level};

    use super::*;

    /// How many findings of a level are open in each cabinet.
    fn open(level: Level) -> Vec<usize> {
        let job = job().unwrap();
        let found = check::of_job(&job);
        let of = |key| {
            let own = found.iter().filter(|it| it.place.cabinet == key);
            own.filter(|it| it.level == level && it.accepted.is_none())
                .count()
        };
        job.cabinets.iter().map(|cabinet| of(cabinet.key)).collect()
    }

    #[test]
    fn findings_of_each_level_are_few_and_the_stops_in_one_cabinet() {
        assert_eq!(open(Level::Stop), [0, 0, 2]);
        assert_eq!(open(Level::Warn), [1, 0, 1]);
        assert_eq!(open(Level::Note), [0, 0, 1]);
        let found = check::of_job(&job().unwrap()).into_iter();
        assert_eq!(found.filter(|it| it.accepted.is_some()).count(), 1);
    }

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
