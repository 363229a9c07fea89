//! Which papers somebody wants, of what and where, and how far the writing has come.

use std::path::{Path, PathBuf};

use gablerow_core::job::{Job, Key};
use gablerow_papers::kinds::{Format, Kind};
use gablerow_papers::page::Paper;

/// What is wanted of the papers, as long as the program runs, and where one is among them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PapersAt {
    /// The kind one is on, in the order of the table.
    pub line: usize,
    /// The kinds that are written.
    pub chosen: Vec<Kind>,
    /// The kinds that are written in another format than their first.
    pub formats: Vec<(Kind, Format)>,
    /// The one cabinet that papers are of; all of them otherwise.
    pub cabinet: Option<Key>,
    /// The sheets that are printed on.
    pub sheets: Paper,
    /// The folder, once one was typed; one beside the job otherwise.
    pub folder: Option<PathBuf>,
    /// The file that is shown of the kind one is on.
    pub file: usize,
    /// The sheet of it, or the screenful.
    pub sheet: usize,
    /// Whether what is shown has all of the screen.
    pub is_whole: bool,
    /// How far the writing has come, while it goes on.
    pub writing: Option<Writing>,
}

/// How far the writing of papers has come.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Writing {
    /// How many files are done.
    pub done: usize,
    /// Of how many; 0 while nobody knows.
    pub of: usize,
    /// The latest of them.
    pub name: String,
    /// Whether it is asked to stop.
    pub is_stopping: bool,
}

/// What is to be written, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaperWish {
    /// What, in which format.
    pub kinds: Vec<(Kind, Format)>,
    /// Of which cabinet; `None` is all of them.
    pub cabinet: Option<Key>,
    /// On which sheets.
    pub sheets: Paper,
    /// The folder.
    pub folder: PathBuf,
    /// Whether files with other contents give way.
    pub replace: bool,
}

/// What came of a wish.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PaperTally {
    /// How many files were written.
    pub written: usize,
    /// How many were there already, byte for byte.
    pub same: usize,
    /// The names that files with other contents have; these were let be.
    pub kept: Vec<String>,
    /// How many there are in all.
    pub of: usize,
    /// Whether it was stopped before the last file.
    pub is_stopped: bool,
}

impl Default for PapersAt {
    /// What is read by people is chosen, on A4; what programs and machines read is not.
    fn default() -> Self {
        let is_for_people = |kind: &Kind| kind.formats().first() == Some(&Format::Pdf);
        Self {
            line: 0,
            chosen: Kind::ALL.into_iter().filter(is_for_people).collect(),
            formats: Vec::new(),
            cabinet: None,
            sheets: Paper::A4,
            folder: None,
            file: 0,
            sheet: 0,
            is_whole: false,
            writing: None,
        }
    }
}

impl PapersAt {
    /// The kind one is on.
    #[must_use]
    pub fn kind(&self) -> Kind {
        Kind::ALL[self.line.min(Kind::ALL.len() - 1)]
    }

    /// How a kind is written.
    #[must_use]
    pub fn format(&self, kind: Kind) -> Format {
        let set = self.formats.iter().find(|(it, _)| *it == kind);
        set.map_or(kind.formats()[0], |(_, format)| *format)
    }

    /// The cabinet that papers are of, when the job has it and others.
    #[must_use]
    pub fn one_of(&self, job: &Job) -> Option<Key> {
        let is_one_of_many = |key: &Key| job.cabinets.len() > 1 && job.cabinet(*key).is_some();
        self.cabinet.filter(is_one_of_many)
    }

    /// The folder that papers are written to.
    #[must_use]
    pub fn folder(&self, job: &Path) -> PathBuf {
        self.folder.clone().unwrap_or_else(|| {
            let stem = job.file_stem().unwrap_or_default().to_string_lossy();
            job.with_file_name(format!("{stem}-papers"))
        })
    }

    /// How many lines of a text are shown at a time, on a screen of so many columns and lines.
    #[must_use]
    pub fn lines_shown(&self, (_, lines): (u16, u16)) -> usize {
        let taken = if self.is_whole { 2 } else { 4 };
        usize::from(lines.saturating_sub(taken))
    }

    /// What is written now: what is chosen, or the kind one is on when nothing is.
    #[must_use]
    pub fn wish(&self, job: &Job, path: &Path, replace: bool) -> PaperWish {
        let one = [self.kind()];
        let chosen = match self.chosen.as_slice() {
            [] => &one,
            some => some,
        };
        let kinds = Kind::ALL.iter().filter(|kind| chosen.contains(kind));
        PaperWish {
            kinds: kinds.map(|kind| (*kind, self.format(*kind))).collect(),
            cabinet: self.one_of(job),
            sheets: self.sheets,
            folder: self.folder(path),
            replace,
        }
    }
}
