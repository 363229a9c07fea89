//! Papers printed and written, file by file: the same for the command line and for the screen.

use std::error::Error;
use std::fmt;
use std::ops::ControlFlow;

use gablerow_papers::kinds::PaperFile;

use crate::papers_at::{PaperTally, PaperWish};
use crate::released::Released;
use crate::store::{PaperFolder, Put, StoreError};

/// A file that was dealt with.
#[derive(Clone, Debug)]
pub struct PaperStep<'a> {
    /// How many files were dealt with by now.
    pub done: usize,
    /// Of how many.
    pub of: usize,
    /// The file, and what became of it; `None` when there was nothing to put on it.
    pub file: Option<(&'a PaperFile, Put)>,
}

/// Why the rest was not written.
#[derive(Debug)]
pub struct BrokenOff {
    /// What the disk said.
    pub error: StoreError,
    /// How many files had been written by then; these are whole.
    pub written: usize,
}

impl fmt::Display for BrokenOff {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        let Self { error, written } = self;
        match written {
            0 => write!(f, "{error}"),
            _ => write!(f, "{error}; {written} written before that"),
        }
    }
}

impl Error for BrokenOff {}

/// Writes what is wished of the cabinets that are released, and tells of each file; whoever is told may break off.
///
/// # Errors
/// The folder cannot be made, or a file cannot be written: those before it are.
pub fn write_papers(
    released: &Released,
    wish: &PaperWish,
    tell: impl FnMut(PaperStep) -> ControlFlow<()>,
) -> Result<PaperTally, BrokenOff> {
    let mut tally = PaperTally::default();
    let folder = PaperFolder::open(&wish.folder);
    let put = folder.and_then(|folder| {
        let put = put_all(released, wish, &folder, &mut tally, tell);
        // What was put there is made safe whatever became of the rest.
        let settled = folder.settle();
        put.and(settled)
    });
    match put {
        Ok(()) => Ok(tally),
        Err(error) => Err(BrokenOff {
            error,
            written: tally.written,
        }),
    }
}

/// Prints file by file into a folder, and counts what became of each.
fn put_all(
    released: &Released,
    wish: &PaperWish,
    folder: &PaperFolder,
    tally: &mut PaperTally,
    mut tell: impl FnMut(PaperStep) -> ControlFlow<()>,
) -> Result<(), StoreError> {
    let printer = released.printer(wish.sheets);
    let kinds = wish.kinds.iter();
    let all: Vec<_> = kinds
        .flat_map(|&(kind, format)| printer.plan(kind, format))
        .collect();
    tally.of = all.len();
    for (at, planned) in all.iter().enumerate() {
        let file = printer.file(planned);
        let mut put = None;
        if let Some(file) = &file {
            let became = folder.put(&file.name, &file.bytes, wish.replace)?;
            match became {
                Put::Written => tally.written += 1,
                Put::Same => tally.same += 1,
                Put::Kept => tally.kept.push(file.name.clone()),
            }
            put = Some(became);
        }
        let done = at + 1;
        let step = PaperStep {
            done,
            of: tally.of,
            file: file.as_ref().zip(put),
        };
        if tell(step).is_break() {
            tally.is_stopped = done < tally.of;
            break;
        }
    }
    Ok(())
}
