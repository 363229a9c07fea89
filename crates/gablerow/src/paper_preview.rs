//! What the papers would be: computed when it is looked at, never kept.
//!
//! ```text
//! App -> Released -> Printer -> plan of every kind: how many files
//!                                  \-> the one in sight, printed: lines, or a sheet
//! ```

use gablerow_core::job::Job;
use gablerow_papers::kinds::{Kind, Planned, Printed, Printer};
use gablerow_papers::page::Page;

use crate::papers_at::PapersAt;
use crate::released::{HeldBack, Released};

/// What the papers would be, and what the one in sight would look like.
#[derive(Clone, Debug)]
pub struct PaperPreview {
    /// How many files each kind comes to, in the order of the table of kinds.
    pub files: Vec<usize>,
    /// The cabinets whose papers for boring are held back.
    pub held_back: Vec<HeldBack>,
    /// The file in sight; `None` where the kind has none now.
    pub shown: Option<ShownPaper>,
}

/// A file, and the part of it that is in sight.
#[derive(Clone, Debug)]
pub struct ShownPaper {
    /// Its name.
    pub name: String,
    /// Which of the files of its kind it is, from 0.
    pub file: usize,
    /// Which of its sheets is in sight, or which screenful of text, from 0.
    pub sheet: usize,
    /// How many of these it has.
    pub sheets: usize,
    /// What stands there.
    pub part: PaperPart,
}

/// What is in sight of a file.
#[derive(Clone, Debug)]
pub enum PaperPart {
    /// Lines of text.
    Lines(Vec<String>),
    /// A sheet.
    Sheet(Page),
    /// Nothing would stand in it, so that it is not written.
    Nothing,
}

impl PaperPreview {
    /// What the papers of a job would be, with so many lines of a text at a time.
    #[must_use]
    pub fn of(job: &Job, at: &PapersAt, lines: usize) -> Self {
        let released = Released::of_one(job, at.one_of(job));
        let printer = released.printer(at.sheets);
        let plans: Vec<Vec<Planned>> = Kind::ALL
            .iter()
            .map(|&kind| printer.plan(kind, at.format(kind)))
            .collect();
        let here = plans.get(at.line).map_or(&[][..], Vec::as_slice);
        let file = at.file.min(here.len().saturating_sub(1));
        let shown = here.get(file).map(|planned| {
            let (part, sheet, sheets) = part(&printer, planned, at.sheet, lines.max(1));
            ShownPaper {
                name: planned.name.clone(),
                file,
                sheet,
                sheets,
                part,
            }
        });
        Self {
            files: plans.iter().map(Vec::len).collect(),
            held_back: released.held_back(),
            shown,
        }
    }
}

/// The sheet of a file, or its screenful: what stands there, which one it is, of how many.
fn part(
    printer: &Printer,
    planned: &Planned,
    sheet: usize,
    lines: usize,
) -> (PaperPart, usize, usize) {
    let nth = |count: usize| sheet.min(count.saturating_sub(1));
    match printer.print(planned) {
        None => (PaperPart::Nothing, 0, 1),
        Some(Printed::Text(text)) => {
            let all: Vec<&str> = text.lines().collect();
            let count = all.len().div_ceil(lines).max(1);
            let here = all.chunks(lines).nth(nth(count)).unwrap_or_default();
            let here = here.iter().map(ToString::to_string).collect();
            (PaperPart::Lines(here), nth(count), count)
        }
        Some(printed) => {
            let pages = printed.pages();
            let at = nth(pages.len());
            let part = pages.get(at).cloned();
            let part = part.map_or(PaperPart::Nothing, PaperPart::Sheet);
            (part, at, pages.len())
        }
    }
}
