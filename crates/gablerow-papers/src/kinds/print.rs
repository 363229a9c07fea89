//! A kind of paper in a format, as files.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec;
use alloc::vec::Vec;

use gablerow_core::bench::plan;
use gablerow_core::cards::{Bed, RailKind};
use gablerow_core::check::{Finding, Level, is_held_back};
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{Cabinet, Copy, Job};
use gablerow_core::layout::Layout;
use gablerow_core::stamp::Stamp;

use super::names::{safe, told_apart};
use super::{Format, Kind};
use crate::page::{Page, Paper};
use crate::{
    BoreRecord, CabinetParts, DrawnCabinet, DrawnFace, FaceSheet, FaceSize, HoleRecord,
    LabelRecord, PartList, PartRecord, Signs, bench_pages, bench_text, csv_table, dxf, hole_text,
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

/// What papers are printed of.
#[derive(Clone, Debug)]
pub struct Printer<'a> {
    /// The whole job: cabinets are told apart by all of its names, whichever are printed.
    pub job: &'a Job,
    /// The cabinets that papers are for, each with its findings.
    pub chosen: &'a [(&'a Cabinet, Vec<Finding>)],
    /// The sheets of paper.
    pub paper: Paper,
}

/// What of a cabinet is built alike: the copies as it is designed, or the mirrored ones.
struct Build<'a> {
    cabinet: Cabinet,
    layout: Layout,
    /// `copies 1 and 3`; nothing when these are all there are.
    copies: String,
    findings: &'a [Finding],
    stamp: Stamp,
}

impl Printer<'_> {
    /// The files of a kind in one of its formats; none where a job has nothing for it, and none in any other format.
    ///
    /// What is for boring leaves out the cabinets that have an open stop. The same job gives the same bytes.
    #[must_use]
    pub fn files(&self, kind: Kind, format: Format) -> Vec<PaperFile> {
        if !kind.formats().contains(&format) {
            return Vec::new();
        }
        match kind {
            Kind::Bench => self.bench(format),
            Kind::Parts => self.parts(format),
            Kind::Holes | Kind::Machine => self.tables(kind, format),
            Kind::Faces | Kind::Drawing | Kind::Stick => self
                .free()
                .flat_map(|(cabinet, findings)| self.builds(cabinet, findings))
                .flat_map(|build| self.drawn(&build, kind, format))
                .collect(),
            Kind::Cut => self.list(kind, PartList::Cut),
            Kind::Fronts => self.list(kind, PartList::Fronts),
            Kind::Boxes => self.list(kind, PartList::Boxes),
            Kind::Shelves => self.list(kind, PartList::Shelves),
            Kind::Bag => self.list(kind, PartList::Bag),
            Kind::Labels => self.labels(format),
        }
    }

    /// The chosen cabinets that may be bored.
    fn free(&self) -> impl Iterator<Item = (&Cabinet, &[Finding])> {
        let chosen = self.chosen.iter();
        let free = chosen.filter(|(_, findings)| !is_held_back(findings));
        free.map(|(cabinet, findings)| (*cabinet, findings.as_slice()))
    }

    /// The job with these cabinets and no others.
    fn job_of<'c>(&self, cabinets: impl Iterator<Item = &'c Cabinet>) -> Job {
        Job {
            cabinets: cabinets.cloned().collect(),
            ..self.job.clone()
        }
    }

    fn bench(&self, format: Format) -> Vec<PaperFile> {
        let job = self.job_of(self.free().map(|(cabinet, _)| cabinet));
        if job.cabinets.is_empty() {
            return Vec::new();
        }
        let keys: Vec<_> = job.cabinets.iter().map(|it| it.key).collect();
        let heavy = |finding: &&Finding| finding.level != Level::Note;
        let findings = self.free().flat_map(|(_, findings)| findings);
        let findings: Vec<Finding> = findings.filter(heavy).cloned().collect();
        let plan = plan(&job, &keys, &job.shop.bench.times);
        if format == Format::Pdf {
            let pages = bench_pages(&plan, &job, &findings, self.paper);
            return self.printed(Kind::Bench, &pages, "bench sheet");
        }
        let text = bench_text(&plan, &job, &findings);
        vec![self.of_job(Kind::Bench, format, text.into(), None)]
    }

    fn labels(&self, format: Format) -> Vec<PaperFile> {
        let job = self.job_of(self.chosen.iter().map(|(cabinet, _)| *cabinet));
        let labels = LabelRecord::of_job(&job);
        let text = match format {
            Format::Pdf => {
                let pages = label_pages(&labels, &job, self.paper);
                return self.printed(Kind::Labels, &pages, "labels");
            }
            Format::Csv => csv_table(&labels),
            _ => label_text(&labels, job.unit),
        };
        vec![self.of_job(Kind::Labels, format, text.into(), None)]
    }

    /// Pages as a document of the job; none when there are none.
    fn printed(&self, kind: Kind, pages: &[Page], what: &str) -> Vec<PaperFile> {
        if pages.is_empty() {
            return Vec::new();
        }
        let bytes = pdf(pages, &format!("{}: {what}", self.job.title));
        vec![self.of_job(kind, Format::Pdf, bytes, Some(pages.len()))]
    }

    fn parts(&self, format: Format) -> Vec<PaperFile> {
        let job = self.job_of(self.chosen.iter().map(|(cabinet, _)| *cabinet));
        let text = match format {
            Format::Csv => {
                let parts = CabinetParts::of_job(&job);
                let records: Vec<PartRecord> =
                    parts.iter().flat_map(CabinetParts::records).collect();
                csv_table(&records)
            }
            _ => part_text(&job),
        };
        vec![self.of_job(Kind::Parts, format, text.into(), None)]
    }

    fn list(&self, kind: Kind, list: PartList) -> Vec<PaperFile> {
        let job = self.job_of(self.chosen.iter().map(|(cabinet, _)| *cabinet));
        let pages = list_pages(list, &job, &CabinetParts::of_job(&job), self.paper);
        self.printed(kind, &pages, list.word())
    }

    fn tables(&self, kind: Kind, format: Format) -> Vec<PaperFile> {
        let table = |cabinet: &Cabinet, findings: &[Finding]| {
            if kind == Kind::Machine {
                let records = BoreRecord::of_cabinet(cabinet, self.job, self.bed()?);
                return Some(csv_table(&records));
            }
            let records = HoleRecord::of_cabinet(cabinet, self.job);
            if format == Format::Csv {
                return Some(csv_table(&records));
            }
            let overruled = overruled_text(cabinet, findings);
            let gap = if overruled.is_empty() { "" } else { "\n" };
            let holes = hole_text(&records, self.job.unit, signs(format));
            Some(format!("{overruled}{gap}{holes}"))
        };
        let file = |(cabinet, findings): (&Cabinet, &[Finding])| {
            let text = table(cabinet, findings)?;
            let stamp = Stamp::now(self.job, cabinet);
            let name = self.name(&[&self.name_of(cabinet)], kind, Some(stamp), format);
            Some(PaperFile {
                name,
                bytes: text.into(),
                sheets: None,
            })
        };
        self.free().filter_map(file).collect()
    }

    /// A cabinet as designed and as mirrored, whichever of the two is built.
    fn builds<'f>(&self, cabinet: &Cabinet, findings: &'f [Finding]) -> Vec<Build<'f>> {
        let stamp = Stamp::now(self.job, cabinet);
        let build = |is_mirrored: bool| {
            let alike = cabinet
                .copies
                .iter()
                .filter(|it| it.mirrored == is_mirrored);
            let alike: Vec<&Copy> = alike.collect();
            let built = cabinet.built_as(alike.first()?);
            let copies = match alike.len() == cabinet.copies.len() {
                true => String::new(),
                false => copies(&alike),
            };
            Some(Build {
                layout: Layout::of(&built, self.job),
                cabinet: built,
                copies,
                findings,
                stamp,
            })
        };
        [false, true].into_iter().filter_map(build).collect()
    }

    fn drawn(&self, build: &Build, kind: Kind, format: Format) -> Vec<PaperFile> {
        let (stamp, remarks) = (build.stamp.to_string(), build.remarks());
        let of = DrawnCabinet {
            job: self.job,
            cabinet: &build.cabinet,
            layout: &build.layout,
            copies: &build.copies,
            stamp: &stamp,
            remarks: &remarks,
        };
        let name_of = self.name_of(&build.cabinet);
        let copies = safe(&build.copies, "");
        let name = |face: &str| {
            let parts = [name_of.as_str(), &copies, face];
            self.name(&parts, kind, Some(build.stamp), format)
        };
        let file = |face: &str, bytes: Vec<u8>, sheets| PaperFile {
            name: name(face),
            bytes,
            sheets,
        };
        let title = format!(
            "{}: {}, {}",
            self.job.title,
            build.cabinet.name,
            kind.word()
        );
        let printed = |pages: &[Page]| vec![file("", pdf(pages, &title), Some(pages.len()))];
        let faces = build.faces();
        let drawn = |drawing| DrawnFace {
            of,
            drawing,
            bed: self.bed(),
        };
        match (kind, format) {
            (Kind::Stick, Format::Svg) => vec![file("", svg(&of.stick()).into(), Some(1))],
            (Kind::Stick, _) => printed(&of.stick_sheets(self.paper)),
            (Kind::Faces, Format::Pdf) => {
                let page = |face| drawn(face).page(FaceSize::Paper(self.paper));
                let pages: Vec<Page> = faces.iter().map(page).collect();
                printed(&pages)
            }
            (Kind::Faces, _) => {
                let text = build.face_texts(&faces, self.job, signs(format));
                vec![file("", text.into(), None)]
            }
            _ => {
                let words: Vec<String> = faces.iter().map(|it| it.name.to_string()).collect();
                let words = told_apart(words.iter().map(String::as_str), "face");
                let bytes = |face| match format {
                    Format::Svg => svg(&drawn(face).page(FaceSize::True)),
                    _ => dxf(&drawn(face)),
                };
                let all = faces.iter().zip(&words);
                all.map(|(face, word)| file(word, bytes(face).into(), None))
                    .collect()
            }
        }
    }

    /// The machine that is bored on, when the chosen rail is one.
    fn bed(&self) -> Option<&Bed> {
        let machine = self.job.rail().filter(|it| it.kind == RailKind::MachineBed);
        machine.map(|rail| &rail.bed)
    }

    /// A file for all that is chosen; one of a single cabinet out of several names it.
    fn of_job(
        &self,
        kind: Kind,
        format: Format,
        bytes: Vec<u8>,
        sheets: Option<usize>,
    ) -> PaperFile {
        let only = match self.chosen {
            [(only, _)] if self.job.cabinets.len() > 1 => self.name_of(only),
            _ => String::new(),
        };
        PaperFile {
            name: self.name(&[&only], kind, None, format),
            bytes,
            sheets,
        }
    }

    /// What a cabinet is called in names of files.
    fn name_of(&self, cabinet: &Cabinet) -> String {
        let names = self.job.cabinets.iter().map(|it| it.name.as_str());
        let at = self
            .job
            .cabinets
            .iter()
            .position(|it| it.key == cabinet.key);
        let name = at.and_then(|at| told_apart(names, "cabinet").into_iter().nth(at));
        name.unwrap_or_else(|| "cabinet".into())
    }

    /// `glaze-store_G2_left-side-inside_drawing_rev7-OTTER.dxf`. Names have no `_` in them, so two that differ in a part differ.
    fn name(&self, parts: &[&str], kind: Kind, stamp: Option<Stamp>, format: Format) -> String {
        let mut name = safe(self.job.title.as_str(), "job");
        let stamp = stamp.map(|it| format!("rev{}-{}", it.number, it.capitals()));
        let stamp = stamp.unwrap_or_default();
        let parts = parts.iter().copied().chain([kind.word(), &stamp]);
        for part in parts.filter(|part| !part.is_empty()) {
            name.push('_');
            name.push_str(part);
        }
        format!("{name}.{}", format.ending())
    }
}

impl Build<'_> {
    /// What is drawn: every face that a bay sees, and outsides with holes.
    fn faces(&self) -> Vec<FaceDrawing> {
        let uprights = self.layout.uprights.iter();
        let faces = uprights.flat_map(|upright| &upright.faces);
        let has_holes = |face: &gablerow_core::layout::Face| {
            !face.id.is_outside() || !face.holes(&self.layout).is_empty()
        };
        faces
            .filter(|face| has_holes(face))
            .filter_map(|face| FaceDrawing::of(&self.layout, face.id, self.findings))
            .collect()
    }

    fn face_texts(&self, faces: &[FaceDrawing], job: &Job, signs: &Signs) -> String {
        let text = |drawing: &FaceDrawing| {
            let sheet = FaceSheet {
                cabinet: &self.cabinet,
                layout: &self.layout,
                drawing,
                unit: job.unit,
            };
            sheet.text(signs)
        };
        let mut texts: Vec<String> = faces.iter().map(text).collect();
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

    /// The sentences that overrule its stops.
    fn remarks(&self) -> Vec<String> {
        let stops = self.findings.iter().filter(|it| it.level == Level::Stop);
        let remark = |stop: &Finding| {
            let reason = stop.accepted.as_ref()?;
            Some(format!("Overruled: {}: {reason}", stop.rule_name()))
        };
        stops.filter_map(remark).collect()
    }
}

/// The signs that a format of text has.
fn signs(format: Format) -> &'static Signs {
    match format {
        Format::Ascii => &Signs::ASCII,
        _ => &Signs::UNICODE,
    }
}

/// `copies 1 and 3`.
fn copies(alike: &[&Copy]) -> String {
    let names: Vec<&str> = alike.iter().map(|copy| copy.name.as_str()).collect();
    match names.as_slice() {
        [] => String::new(),
        [only] => format!("copy {only}"),
        [before @ .., last] => format!("copies {} and {last}", before.join(", ")),
    }
}

#[cfg(test)]
mod tests;
