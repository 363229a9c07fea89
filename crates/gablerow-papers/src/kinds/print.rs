//! A planned file as text or pages, and as bytes.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::bench::plan_left;
use gablerow_core::check::{Finding, Level};
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{Bored, Cabinet, Job};

use super::plan::{Build, Of, Planned, Printer};
use super::{Format, Kind};
use crate::page::Page;
use crate::text::ascii;
use crate::{
    BenchSheet, BoreRecord, CabinetParts, DrawnCabinet, DrawnFace, FaceSheet, FaceSize, HoleRecord,
    LabelRecord, PartRecord, Signs, bench_pages, bench_text, csv_table, dxf, held_back, hole_text,
    label_pages, label_text, list_pages, overruled_text, part_text, pdf, svg,
};

/// A file to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaperFile {
    /// Its name: letters and digits of ASCII, `-`, `_`, and one dot before its ending.
    pub name: String,
    /// What is in it.
    pub bytes: Vec<u8>,
    /// How many sheets of paper it has, where it has any.
    pub sheets: Option<usize>,
}

/// What stands in a file.
#[derive(Clone, Debug, PartialEq)]
pub enum Printed {
    /// Lines, for people or for programs.
    Text(String),
    /// Sheets of a document.
    Sheets {
        /// What the document is called.
        title: String,
        /// One sheet at least.
        pages: Vec<Page>,
    },
    /// A picture, true to size.
    Picture(Page),
}

impl Printed {
    /// As the bytes of its file.
    #[must_use]
    pub fn bytes(&self) -> Vec<u8> {
        match self {
            Self::Text(text) => text.clone().into(),
            Self::Sheets { title, pages } => pdf(pages, title),
            Self::Picture(page) => svg(page).into(),
        }
    }

    /// Its sheets; none where it is text.
    #[must_use]
    pub fn pages(&self) -> &[Page] {
        match self {
            Self::Text(_) => &[],
            Self::Sheets { pages, .. } => pages,
            Self::Picture(page) => core::slice::from_ref(page),
        }
    }
}

impl Printer<'_> {
    /// The files of a kind in one of its formats, printed; those that have nothing on them left out.
    ///
    /// The same job gives the same bytes.
    #[must_use]
    pub fn files(&self, kind: Kind, format: Format) -> Vec<PaperFile> {
        let file = |planned: Planned| self.file(&planned);
        self.plan(kind, format)
            .into_iter()
            .filter_map(file)
            .collect()
    }

    /// A planned file as it is written; `None` when it has nothing on it.
    #[must_use]
    pub fn file(&self, planned: &Planned) -> Option<PaperFile> {
        let printed = self.print(planned)?;
        let sheets = printed.pages().len();
        Some(PaperFile {
            name: planned.name.clone(),
            bytes: printed.bytes(),
            sheets: (sheets > 0).then_some(sheets),
        })
    }

    /// What stands in a planned file; `None` when nothing does.
    #[must_use]
    pub fn print(&self, planned: &Planned) -> Option<Printed> {
        let (kind, format) = (planned.kind, planned.format);
        let printed = match &planned.of {
            Of::Chosen => self.of_chosen(kind, format),
            Of::Cabinet(cabinet, findings) => self.table(cabinet, findings, kind, format),
            Of::Build(build) => self.of_build(build, kind, format),
            Of::Face(build, drawing) => Some(self.drawing(build, drawing, format)),
        };
        match (printed, format) {
            (Some(Printed::Text(text)), Format::Ascii) => Some(Printed::Text(ascii(&text))),
            (printed, _) => printed,
        }
    }

    fn of_chosen(&self, kind: Kind, format: Format) -> Option<Printed> {
        let list = match (kind, kind.list()) {
            (_, Some(list)) => list,
            (Kind::Bench, None) => return self.bench(format),
            (Kind::Labels, None) => return self.labels(format),
            _ => return Some(self.parts(format)),
        };
        let job = self.chosen_job();
        let pages = list_pages(list, &job, &CabinetParts::of_job(&job), self.paper);
        self.sheets(pages, list.word())
    }

    /// The bench sheet as text, of what a record does not say is bored; `None` where every cabinet is held back.
    #[must_use]
    pub fn bench_text(&self, record: &[Bored]) -> Option<String> {
        self.free().next()?;
        Some(self.with_bench(record, bench_text))
    }

    fn bench(&self, format: Format) -> Option<Printed> {
        let record = &self.job.bored;
        match format {
            Format::Pdf => {
                let pages = self.with_bench(record, |of| bench_pages(of, self.paper));
                self.sheets(pages, "bench sheet")
            }
            _ => self.bench_text(record).map(Printed::Text),
        }
    }

    /// What is printed of the plan of what a record does not say is bored.
    fn with_bench<T>(&self, record: &[Bored], print: impl FnOnce(&BenchSheet) -> T) -> T {
        let job = self.job_of(self.free().map(|(cabinet, _)| cabinet));
        let keys: Vec<_> = job.cabinets.iter().map(|it| it.key).collect();
        let heavy = |finding: &&Finding| finding.level != Level::Note;
        let findings = self.free().flat_map(|(_, findings)| findings);
        let findings: Vec<Finding> = findings.filter(heavy).cloned().collect();
        print(&BenchSheet {
            plan: &plan_left(&job, record, &keys, &job.shop.bench.times),
            job: &job,
            findings: &findings,
            held_back: &held_back(self.chosen),
        })
    }

    fn labels(&self, format: Format) -> Option<Printed> {
        let job = self.chosen_job();
        let labels = LabelRecord::of_job(&job);
        Some(Printed::Text(match format {
            Format::Pdf => return self.sheets(label_pages(&labels, &job, self.paper), "labels"),
            Format::Csv => csv_table(&labels),
            _ => label_text(&labels, job.unit),
        }))
    }

    fn parts(&self, format: Format) -> Printed {
        let job = self.chosen_job();
        Printed::Text(match format {
            Format::Csv => {
                let parts = CabinetParts::of_job(&job);
                let records: Vec<PartRecord> =
                    parts.iter().flat_map(CabinetParts::records).collect();
                csv_table(&records)
            }
            _ => part_text(&job),
        })
    }

    /// Pages as a document of the job; none when there are none.
    fn sheets(&self, pages: Vec<Page>, what: &str) -> Option<Printed> {
        let title = format!("{}: {what}", self.job.title);
        (!pages.is_empty()).then_some(Printed::Sheets { title, pages })
    }

    fn table(
        &self,
        cabinet: &Cabinet,
        findings: &[Finding],
        kind: Kind,
        format: Format,
    ) -> Option<Printed> {
        if kind == Kind::Machine {
            let records = BoreRecord::of_cabinet(cabinet, self.job, self.bed()?);
            return Some(Printed::Text(csv_table(&records)));
        }
        let records = HoleRecord::of_cabinet(cabinet, self.job);
        if format == Format::Csv {
            return Some(Printed::Text(csv_table(&records)));
        }
        let overruled = overruled_text(cabinet, findings);
        let gap = if overruled.is_empty() { "" } else { "\n" };
        let holes = hole_text(&records, self.job.unit, signs(format));
        Some(Printed::Text(format!("{overruled}{gap}{holes}")))
    }

    fn of_build(&self, build: &Build, kind: Kind, format: Format) -> Option<Printed> {
        let what = format!("{}, {}", build.cabinet.name, kind.word());
        match (kind, format) {
            (Kind::Stick, Format::Svg) => {
                Some(self.with_drawn(build, |of| Printed::Picture(of.stick())))
            }
            (Kind::Stick, _) => {
                let pages = self.with_drawn(build, |of| of.stick_sheets(self.paper));
                self.sheets(pages, &what)
            }
            (_, Format::Pdf) => {
                let paper = FaceSize::Paper(self.paper);
                let pages = self.with_drawn(build, |of| {
                    let faces = build.faces();
                    faces
                        .iter()
                        .map(|it| self.face(of, it).page(paper))
                        .collect()
                });
                self.sheets(pages, &what)
            }
            _ => Some(Printed::Text(build.face_texts(self.job, signs(format)))),
        }
    }

    fn drawing(&self, build: &Build, drawing: &FaceDrawing, format: Format) -> Printed {
        self.with_drawn(build, |of| {
            let face = self.face(of, drawing);
            match format {
                Format::Svg => Printed::Picture(face.page(FaceSize::True)),
                _ => Printed::Text(dxf(&face)),
            }
        })
    }

    fn face<'d>(&'d self, of: DrawnCabinet<'d>, drawing: &'d FaceDrawing) -> DrawnFace<'d> {
        DrawnFace {
            of,
            drawing,
            bed: self.bed(),
        }
    }

    /// What is drawn of a build, with the words that stand beside it.
    fn with_drawn<T>(&self, build: &Build, draw: impl FnOnce(DrawnCabinet) -> T) -> T {
        draw(DrawnCabinet {
            job: self.job,
            cabinet: &build.cabinet,
            layout: &build.layout,
            copies: &build.copies,
            stamp: &build.stamp.to_string(),
            remarks: &build.remarks(),
        })
    }
}

impl Build<'_> {
    fn face_texts(&self, job: &Job, signs: &Signs) -> String {
        let text = |drawing: &FaceDrawing| {
            let sheet = FaceSheet {
                cabinet: &self.cabinet,
                layout: &self.layout,
                drawing,
                unit: job.unit,
            };
            sheet.text(signs)
        };
        let mut texts: Vec<String> = self.faces().iter().map(text).collect();
        let head = match self.copies.is_empty() {
            true => format!("{}\n", self.stamp),
            false => format!("{}, {}\n", self.stamp, self.copies),
        };
        texts.insert(0, head);
        let overruled = overruled_text(&self.cabinet, self.findings);
        if !overruled.is_empty() {
            texts.insert(1, overruled);
        }
        texts.join("\n")
    }
}

/// The signs that a format of text has.
fn signs(format: Format) -> &'static Signs {
    match format {
        Format::Ascii => &Signs::ASCII,
        _ => &Signs::UNICODE,
    }
}

#[cfg(test)]
mod tests;
