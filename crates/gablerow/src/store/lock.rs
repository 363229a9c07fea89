//! One window at a time on a job.

use std::fmt;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{self, Read, Write};
use std::path::Path;

use super::error::{Cause, StoreError, clean, failed};
use super::fingerprint::Fingerprint;
use super::fs::{Disk, Fs, plain, same_file};
use super::place::Place;

const WHAT: &str = "not opened for editing";

/// How often a lock that vanishes while it is being taken is tried again.
const ATTEMPTS_MAX: u32 = 100;

/// The most bytes that are read of a lock file.
const HOLDER_BYTES_MAX: u64 = 1024;

/// The right to write beside a job, held until it is dropped.
///
/// It is a lock of the system on `.NAME.lock` beside the job. The job file itself cannot carry it,
/// because each save puts another file in its place. When a process dies, however it dies, the
/// system lets go of its lock; the file that is left lying is then taken over without a question.
#[derive(Debug)]
pub struct Lock {
    place: Place,
    /// Open for as long as the lock is held; closing it lets go.
    file: File,
    /// What a save has put in place, or may have, without being sure that it stays; see
    /// [`save`](super::save).
    pub(super) in_doubt: Option<Fingerprint>,
}

/// Who holds a lock, as far as its file says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Holder {
    process: Option<u32>,
    /// Which start of which machine the process belongs to; the name of a host need not be unique.
    boot: Option<String>,
    host: Option<String>,
}

impl Lock {
    /// Takes the lock of a job. The job need not be there yet, its folder must be.
    ///
    /// # Errors
    ///
    /// - another window holds it ([`Cause::HeldBy`])
    /// - the folder is not there or must not be written to, or its disk knows no locks
    pub fn take(path: &Path) -> Result<Self, StoreError> {
        let place = Place::resolve(path).map_err(failed(WHAT, path))?;
        let beside = place.lock();
        for _ in 0..ATTEMPTS_MAX {
            let Some(file) = open(&beside).map_err(failed(WHAT, &beside))? else {
                continue;
            };
            match file.try_lock() {
                Ok(()) => {}
                Err(TryLockError::WouldBlock) => {
                    return Err(StoreError::new(
                        WHAT,
                        path,
                        Cause::HeldBy(Holder::read(&file)),
                    ));
                }
                Err(TryLockError::Error(error)) => {
                    return Err(StoreError::new(WHAT, &beside, error));
                }
            }
            // Between opening and locking another window may have closed and taken the file away. A
            // lock on a file without a name keeps nobody out.
            if still_named(&file, &beside).map_err(failed(WHAT, &beside))? {
                // Without its text, say on a full disk, the lock holds all the same.
                let _ = Holder::this_process().write(&file);
                return Ok(Self {
                    place,
                    file,
                    in_doubt: None,
                });
            }
        }
        Err(StoreError::new(
            WHAT,
            &beside,
            io::Error::from(io::ErrorKind::ResourceBusy),
        ))
    }

    /// Where the job lies whose lock this is.
    #[must_use]
    pub fn place(&self) -> &Place {
        &self.place
    }
}

impl Drop for Lock {
    /// The file goes while it is still locked, so that nobody can take it in between. Where an open
    /// file keeps its name until all have closed it, the next window would be told that it must not
    /// make one; there it stays, unlocked.
    fn drop(&mut self) {
        if cfg!(unix) && still_named(&self.file, &self.place.lock()).unwrap_or(false) {
            // One that stays is taken over by the next window.
            let _ = fs::remove_file(self.place.lock());
        }
    }
}

/// Opens the lock file, or makes it; `None` if it vanishes meanwhile.
///
/// A link in its place is not followed: none is when a file is made, [`plain`] refuses one that is
/// there, and [`still_named`] one that is put there between the two, before anything is written.
fn open(path: &Path) -> Result<Option<File>, Cause> {
    let mut options = OpenOptions::new();
    options.read(true).write(true);
    match options.clone().create_new(true).open(path) {
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
        made => return Ok(Some(made?)),
    }
    let Some(metadata) = Disk.look(path)? else {
        return Ok(None);
    };
    plain(&metadata)?;
    match options.open(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
        opened => Ok(Some(opened?)),
    }
}

fn still_named(file: &File, path: &Path) -> io::Result<bool> {
    match Disk.look(path)? {
        Some(named) => Ok(same_file(&named, &file.metadata()?)),
        None => Ok(false),
    }
}

impl Holder {
    fn this_process() -> Self {
        Self {
            process: Some(std::process::id()),
            boot: line_of("/proc/sys/kernel/random/boot_id"),
            host: line_of("/proc/sys/kernel/hostname").or_else(|| std::env::var("HOSTNAME").ok()),
        }
    }

    fn write(&self, mut file: &File) -> io::Result<()> {
        file.set_len(0)?;
        file.write_all(self.to_text().as_bytes())
    }

    /// A lock that cannot be read still has a holder, only an unknown one.
    fn read(file: &File) -> Self {
        let mut text = String::new();
        match file.take(HOLDER_BYTES_MAX).read_to_string(&mut text) {
            Ok(_) => Self::parse(&text),
            Err(_) => Self::default(),
        }
    }

    fn to_text(&self) -> String {
        let process = self.process.map(|process| format!("process {process}\n"));
        let boot = self.boot.as_ref().map(|boot| format!("boot {boot}\n"));
        let host = self.host.as_ref().map(|host| format!("host {host}\n"));
        [process, boot, host].into_iter().flatten().collect()
    }

    fn parse(text: &str) -> Self {
        let word = |name: &str| {
            text.lines()
                .find_map(|line| line.strip_prefix(name)?.strip_prefix(' '))
        };
        Self {
            process: word("process").and_then(|process| process.parse().ok()),
            boot: word("boot").map(str::to_owned),
            host: word("host").map(str::to_owned),
        }
    }
}

impl fmt::Display for Holder {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("another window")?;
        if let Some(process) = self.process {
            write!(f, ", process {process}")?;
        }
        let here = self.boot.is_some() && self.boot == Self::this_process().boot;
        match &self.host {
            _ if here => f.write_str(" on this machine"),
            Some(host) => write!(f, " on {}", clean(host)),
            None => Ok(()),
        }
    }
}

/// The first line of a small file of the system; `None` where there is no such file.
fn line_of(path: &str) -> Option<String> {
    fs::read_to_string(path)
        .ok()?
        .lines()
        .next()
        .map(str::to_owned)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::path::PathBuf;
    use tempfile::{TempDir, tempdir};

    fn job() -> (TempDir, PathBuf) {
        let folder = tempdir().unwrap();
        let job = folder.path().join("glazes.json");
        (folder, job)
    }

    #[test]
    fn the_second_window_is_told_who_holds_it() {
        let (_folder, job) = job();
        let held = Lock::take(&job).unwrap();
        let error = Lock::take(&job).unwrap_err();
        assert!(
            matches!(error.cause(), Cause::HeldBy(holder) if *holder == Holder::this_process())
        );
        let start = format!(
            "not opened for editing: {}: it is open in another window, process ",
            job.display()
        );
        assert!(error.to_string().starts_with(&start), "{error}");
        assert!(
            error.to_string().ends_with("; close it there first"),
            "{error}"
        );
        drop(held);
        Lock::take(&job).unwrap();
    }

    #[cfg(unix)]
    #[test]
    fn a_lock_goes_when_it_is_dropped() {
        let (folder, job) = job();
        drop(Lock::take(&job).unwrap());
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 0);
    }

    #[test]
    fn what_a_dead_process_left_is_taken_over() {
        let (_folder, job) = job();
        let beside = Place::of(&job).unwrap().lock();
        let long = "a long line\n".repeat(20);
        for text in [
            &*long,
            "process 4000000000\nboot long ago\nhost shop\nand more that is cut\n",
            "",
            "\u{0}\u{ff}",
        ] {
            fs::write(&beside, text).unwrap();
            let lock = Lock::take(&job).unwrap();
            assert_eq!(
                fs::read_to_string(&beside).unwrap(),
                Holder::this_process().to_text()
            );
            drop(lock);
        }
    }

    #[test]
    fn the_lock_outlives_a_save() {
        let (_folder, job) = job();
        let mut lock = Lock::take(&job).unwrap();
        crate::store::save(&mut lock, b"{}", crate::store::Expected::Absent).unwrap();
        assert!(matches!(
            Lock::take(&job).unwrap_err().cause(),
            Cause::HeldBy(_)
        ));
    }

    #[test]
    fn two_jobs_in_a_folder_have_two_locks() {
        let (folder, job) = job();
        let _one = Lock::take(&job).unwrap();
        Lock::take(&folder.path().join("kiln.json")).unwrap();
    }

    #[cfg(unix)]
    #[test]
    fn a_link_to_a_job_has_the_lock_of_the_job() {
        let (folder, job) = job();
        fs::write(&job, "{}").unwrap();
        std::os::unix::fs::symlink(&job, folder.path().join("link")).unwrap();
        let _held = Lock::take(&job).unwrap();
        assert!(matches!(
            Lock::take(&folder.path().join("link")).unwrap_err().cause(),
            Cause::HeldBy(_)
        ));
    }

    #[cfg(unix)]
    #[test]
    fn a_link_in_place_of_the_lock_is_not_followed() {
        let (folder, job) = job();
        let elsewhere = folder.path().join("elsewhere");
        fs::write(&elsewhere, "keep me").unwrap();
        std::os::unix::fs::symlink(&elsewhere, Place::of(&job).unwrap().lock()).unwrap();
        assert!(matches!(
            Lock::take(&job).unwrap_err().cause(),
            Cause::NotPlain("a link")
        ));
        assert_eq!(fs::read_to_string(&elsewhere).unwrap(), "keep me");
    }

    #[cfg(unix)]
    #[test]
    fn a_lock_that_lost_its_name_keeps_nobody_out_and_takes_nothing_away() {
        let (_folder, job) = job();
        let lost = Lock::take(&job).unwrap();
        fs::remove_file(lost.place().lock()).unwrap();
        let next = Lock::take(&job).unwrap();
        drop(lost);
        assert!(next.place().lock().exists());
        assert!(matches!(
            Lock::take(&job).unwrap_err().cause(),
            Cause::HeldBy(_)
        ));
    }

    #[test]
    fn of_many_who_try_at_once_never_two_hold_it() {
        use std::sync::atomic::{AtomicU32, Ordering};
        let (_folder, job) = job();
        let (inside, taken) = (AtomicU32::new(0), AtomicU32::new(0));
        std::thread::scope(|scope| {
            for _ in 0..4 {
                scope.spawn(|| {
                    for _ in 0..300 {
                        if let Ok(lock) = Lock::take(&job) {
                            assert_eq!(inside.fetch_add(1, Ordering::SeqCst), 0);
                            assert!(still_named(&lock.file, &lock.place.lock()).unwrap());
                            taken.fetch_add(1, Ordering::SeqCst);
                            inside.fetch_sub(1, Ordering::SeqCst);
                        }
                    }
                });
            }
        });
        assert!(taken.load(Ordering::SeqCst) > 0);
    }

    #[test]
    fn a_holder_is_shown_as_far_as_it_is_known() {
        let show = |text: &str| Holder::parse(text).to_string();
        assert_eq!(show(""), "another window");
        assert_eq!(
            show("process 7\nhost shop\u{1b}\n"),
            "another window, process 7 on shop\u{fffd}"
        );
        assert_eq!(show("processes 7\nprocess seven\n"), "another window");
        if let Holder {
            process: Some(process),
            boot: Some(boot),
            ..
        } = Holder::this_process()
        {
            let here = format!("another window, process {process} on this machine");
            assert_eq!(
                show(&format!("process {process}\nboot {boot}\nhost shop\n")),
                here
            );
        }
    }
}
