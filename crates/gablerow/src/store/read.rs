//! Reading a job.

use std::path::Path;

use super::error::{Cause, StoreError, failed};
use super::fingerprint::Fingerprint;
use super::fs::{Access, Disk, Found};
use super::place::Place;

/// The most bytes a job file may have, itself still allowed: 64 MiB, some thirty thousand cabinets.
pub const JOB_BYTES_MAX: u64 = 64 * 1024 * 1024;

/// All bytes of a job file, and the fingerprint to give to [`save`](super::save) later.
///
/// # Errors
///
/// - nothing is there, or it must not be read
/// - it is no plain file
/// - it has more than [`JOB_BYTES_MAX`] bytes; this is seen before it is read
pub fn read(path: &Path) -> Result<(Vec<u8>, Fingerprint), StoreError> {
    let bytes = read_plain(path).map_err(failed("not read", path))?;
    let fingerprint = Fingerprint::of(&bytes);
    Ok((bytes, fingerprint))
}

fn read_plain(path: &Path) -> Result<Vec<u8>, Cause> {
    let job = Place::resolve(path)?.job();
    let found = Found::open(&Disk, &job, Access::Read)?;
    found
        .ok_or(std::io::Error::from(std::io::ErrorKind::NotFound))?
        .read(&Disk, JOB_BYTES_MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs::File;

    fn message(path: &Path) -> String {
        read(path).unwrap_err().to_string()
    }

    #[test]
    fn the_bytes_come_as_they_are() {
        let folder = tempfile::tempdir().unwrap();
        let job = folder.path().join("glazes.json");
        std::fs::write(&job, b"\xef\xbb\xbf{}\r\n\xff").unwrap();
        let (bytes, fingerprint) = read(&job).unwrap();
        assert_eq!(bytes, b"\xef\xbb\xbf{}\r\n\xff");
        assert_eq!(fingerprint, Fingerprint::of(&bytes));
    }

    #[test]
    fn a_missing_file_is_named() {
        let folder = tempfile::tempdir().unwrap();
        let text = message(&folder.path().join("glazes.json"));
        assert!(
            text.starts_with("not read: ") && text.ends_with("; check its name and its folder"),
            "{text}"
        );
    }

    #[test]
    fn the_limit_itself_is_allowed_and_one_byte_more_is_not() {
        let folder = tempfile::tempdir().unwrap();
        let job = folder.path().join("glazes.json");
        let file = File::create(&job).unwrap();
        file.set_len(JOB_BYTES_MAX).unwrap();
        assert_eq!(read(&job).unwrap().0.len() as u64, JOB_BYTES_MAX);
        file.set_len(JOB_BYTES_MAX + 1).unwrap();
        assert!(message(&job).ends_with(
            ": more than 64 MiB; check that it is the right file, or split the job in two"
        ));
    }

    #[test]
    fn a_folder_is_refused() {
        let folder = tempfile::tempdir().unwrap();
        assert!(message(folder.path()).contains(": a folder stands there, not a plain file; "));
    }

    #[cfg(unix)]
    #[test]
    fn pipes_and_devices_are_refused_without_waiting() {
        let folder = tempfile::tempdir().unwrap();
        let pipe = folder.path().join("pipe");
        assert!(
            std::process::Command::new("mkfifo")
                .arg(&pipe)
                .status()
                .unwrap()
                .success()
        );
        for path in [&pipe, Path::new("/dev/null"), Path::new("/dev/zero")] {
            assert!(
                message(path)
                    .contains(": a pipe, socket or device stands there, not a plain file; ")
            );
        }
    }

    #[cfg(unix)]
    #[test]
    fn a_link_to_a_job_is_read_as_the_job() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("glazes.json"), "{}").unwrap();
        std::os::unix::fs::symlink("glazes.json", folder.path().join("link")).unwrap();
        assert_eq!(read(&folder.path().join("link")).unwrap().0, b"{}");
    }
}
