//! What the store says when something is wrong: what, where, why, and what to do next.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use super::lock::Holder;
use super::record::UnknownVersion;

/// The one error of the store, shown as `what: path: reason; what next`.
///
/// It shows its whole story itself, so it has no [`source`](std::error::Error::source) that would
/// say it again.
///
/// # Example
///
/// ```
/// let error = gablerow::store::read("no such folder/glazes.json".as_ref()).unwrap_err();
/// let text = error.to_string();
/// assert!(text.starts_with("not read: no such folder/glazes.json: "));
/// assert!(text.ends_with("; check its name and its folder"));
/// ```
#[derive(Debug)]
pub struct StoreError {
    what: &'static str,
    path: PathBuf,
    cause: Cause,
}

/// Why the store could not do what it was asked to.
#[derive(Debug)]
pub enum Cause {
    /// The system refused.
    Io(io::Error),
    /// Something else than a plain file stands there: a folder, a pipe, a device, a link that was
    /// put in our way.
    NotPlain(&'static str),
    /// A link that leads to no file.
    DeadLink,
    /// A path that names no file, such as `..`.
    NoName,
    /// The file is there, but marked as not to be written.
    WriteProtected,
    /// More bytes than the limit that is named here.
    TooLarge {
        /// The limit in bytes, itself still allowed.
        bytes_max: u64,
    },
    /// The file is not what it was when it was read.
    ChangedOutside(Change),
    /// Another window holds the job.
    HeldBy(Holder),
    /// A file where a folder should be.
    NoFolder,
    /// Another program is writing papers into the folder.
    PapersInHand,
    /// The journal was written by another version of the program.
    UnknownVersion(String),
    /// The journal has as many bytes as can be read again.
    JournalFull,
    /// A record of the journal must be one line.
    SeveralLines,
}

/// What happened to a file since it was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// A file is there where none was.
    Appeared,
    /// The file holds other bytes, or another file took its name.
    Rewritten,
    /// The file is gone.
    Deleted,
}

impl StoreError {
    pub(super) fn new(what: &'static str, path: &Path, cause: impl Into<Cause>) -> Self {
        Self {
            what,
            path: path.to_path_buf(),
            cause: cause.into(),
        }
    }

    /// Why, for a caller that acts on it.
    #[must_use]
    pub fn cause(&self) -> &Cause {
        &self.cause
    }

    /// The file that was in hand: the job itself, or one of those beside it.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }
}

/// Says what failed, and where, of a result that knows only why: `.map_err(failed("not read",
/// path))`.
pub(super) fn failed<C: Into<Cause>>(
    what: &'static str,
    path: &Path,
) -> impl FnOnce(C) -> StoreError {
    move |cause| StoreError::new(what, path, cause)
}

impl std::error::Error for StoreError {}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { what, path, cause } = self;
        write!(
            f,
            "{what}: {}: {cause}; {}",
            clean(&path.to_string_lossy()),
            cause.next()
        )
    }
}

impl fmt::Display for Cause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Io(error) if error.kind() == io::ErrorKind::NotFound => {
                f.write_str("there is no file of that name")
            }
            Self::Io(error) => write!(f, "{error}"),
            Self::NotPlain(kind) => write!(f, "{kind} stands there, not a plain file"),
            Self::DeadLink => f.write_str("a link that leads to no file"),
            Self::NoName => f.write_str("this names no file"),
            Self::WriteProtected => f.write_str("the file is write-protected"),
            Self::TooLarge { bytes_max } => {
                write!(f, "more than {} MiB", bytes_max / (1024 * 1024))
            }
            Self::ChangedOutside(Change::Appeared) => {
                f.write_str("a file of this name is already there")
            }
            Self::ChangedOutside(Change::Rewritten) => {
                f.write_str("another program changed it since it was read")
            }
            Self::ChangedOutside(Change::Deleted) => {
                f.write_str("it was deleted or renamed since it was read")
            }
            Self::HeldBy(holder) => write!(f, "it is open in {holder}"),
            Self::NoFolder => f.write_str("that is a file"),
            Self::PapersInHand => f.write_str("another program is writing papers there"),
            Self::UnknownVersion(version) => {
                write!(f, "its format has version {}, not 1", clean(version))
            }
            Self::JournalFull => f.write_str("no more edits fit into it"),
            Self::SeveralLines => f.write_str("a record with a line break in it"),
        }
    }
}

impl Cause {
    /// What the user can do about it.
    fn next(&self) -> &'static str {
        match self {
            Self::Io(error) => advice(error.kind()),
            Self::NotPlain(_) => "move it away, or use another name",
            Self::DeadLink => "remove the link, or give the name of the file itself",
            Self::NoName => "give the name of a file",
            Self::WriteProtected => "allow writing to it, or use another name",
            Self::TooLarge { .. } => "check that it is the right file, or split the job in two",
            Self::ChangedOutside(Change::Appeared) => {
                "use another name, or say that it shall be replaced"
            }
            Self::ChangedOutside(_) => {
                "save under another name and compare, or say that it shall be replaced"
            }
            Self::HeldBy(_) => "close it there first",
            Self::NoFolder => "name a folder; it is made when it is not there yet",
            Self::PapersInHand => "try again when that is done, or use another folder",
            Self::UnknownVersion(_) => {
                "open the job with the version of gablerow that wrote it, or move this file away"
            }
            Self::JournalFull => "save the job, which begins a new one",
            Self::SeveralLines => "this is a mistake in gablerow, please report it",
        }
    }
}

fn advice(kind: io::ErrorKind) -> &'static str {
    use io::ErrorKind as Kind;
    match kind {
        Kind::NotFound | Kind::NotADirectory => "check its name and its folder",
        Kind::PermissionDenied => {
            "give yourself access to it and its folder, or use another folder"
        }
        Kind::ReadOnlyFilesystem | Kind::Unsupported => "use a folder on another disk",
        Kind::StorageFull | Kind::QuotaExceeded => "free some space on that disk, then try again",
        Kind::FileTooLarge => {
            "raise the limit on the size of files, or use another disk, then try again"
        }
        Kind::InvalidFilename => "use a shorter name",
        _ => "try again, or use a folder on another disk",
    }
}

impl From<UnknownVersion> for Cause {
    fn from(UnknownVersion(version): UnknownVersion) -> Self {
        Self::UnknownVersion(version)
    }
}

impl From<io::Error> for Cause {
    fn from(error: io::Error) -> Self {
        Self::Io(error)
    }
}

/// Text from outside made safe to show: what could command a terminal or reorder a line becomes
/// U+FFFD.
pub(super) fn clean(text: &str) -> String {
    text.chars()
        .map(|c| {
            if is_unsafe(c) {
                char::REPLACEMENT_CHARACTER
            } else {
                c
            }
        })
        .collect()
}

fn is_unsafe(c: char) -> bool {
    let sets_direction =
        matches!(c, '\u{061c}' | '\u{200e}'..='\u{200f}' | '\u{202a}'..='\u{202e}');
    let breaks_lines = matches!(c, '\u{2028}'..='\u{2029}');
    let is_unseen = matches!(c, '\u{200b}'..='\u{200d}' | '\u{2060}'..='\u{206f}' | '\u{feff}'
        | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}');
    c.is_control() || sets_direction || breaks_lines || is_unseen
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_message_says_what_where_why_and_what_next() {
        let full = io::Error::from(io::ErrorKind::StorageFull);
        let error = StoreError::new("not saved", Path::new("jobs/.glazes.json.tmp"), full);
        let expected = "not saved: jobs/.glazes.json.tmp: no storage space; \
            free some space on that disk, then try again";
        assert_eq!(error.to_string(), expected);
    }

    #[test]
    fn a_path_cannot_command_the_terminal() {
        let path = Path::new("glazes\u{1b}[2J\u{7}\n\u{9b}\u{202e}nosj\u{e0041}.json");
        let text = StoreError::new("not read", path, Cause::NoName).to_string();
        let expected = "not read: \
            glazes\u{fffd}[2J\u{fffd}\u{fffd}\u{fffd}\u{fffd}nosj\u{fffd}.json: \
            this names no file; give the name of a file";
        assert_eq!(text, expected);
    }

    #[test]
    fn the_version_in_a_message_is_cleaned_too() {
        assert_eq!(
            Cause::UnknownVersion("2\u{1b}".into()).to_string(),
            "its format has version 2\u{fffd}, not 1"
        );
    }
}
