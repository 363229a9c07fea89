//! Papers printed and written, file by file: the same for the command line and for the screen.

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

/// Writes what is wished of the cabinets that are released, and tells of each file; whoever is told may break off.
///
/// # Errors
/// The folder cannot be made, or a file cannot be written: those before it are.
pub fn write_papers(
    released: &Released,
    wish: &PaperWish,
    mut tell: impl FnMut(PaperStep) -> ControlFlow<()>,
) -> Result<PaperTally, StoreError> {
    let printer = released.printer(wish.sheets);
    let kinds = wish.kinds.iter();
    let all: Vec<_> = kinds
        .flat_map(|&(kind, format)| printer.plan(kind, format))
        .collect();
    let folder = PaperFolder::open(&wish.folder)?;
    let mut tally = PaperTally::default();
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
        let (done, of) = (at + 1, all.len());
        let step = PaperStep {
            done,
            of,
            file: file.as_ref().zip(put),
        };
        if tell(step).is_break() {
            tally.is_stopped = done < of;
            break;
        }
    }
    folder.settle()?;
    Ok(tally)
}
