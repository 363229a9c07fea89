//! All papers of a job of 40 cabinets: time for each page beside what poppler takes to render the same pages, the memory
//! it takes at most, and what looking at one costs.
//!
//! `cargo bench -p gablerow --bench papers` prints them; a frame has 16 ms. Poppler's `pdftoppm` renders at 72 dots an inch, the
//! least that can be read; without it that line is missing and says so.

// A benchmark prints for people, and may panic where its own job is wrong.
#![allow(clippy::print_stdout, clippy::expect_used)]

use std::fs;
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use gablerow::job_file;
use gablerow::paper_preview::PaperPreview;
use gablerow::paper_run::write_papers;
use gablerow::papers_at::{PaperWish, PapersAt};
use gablerow::released::Released;
use gablerow_core::edit::Edit;
use gablerow_core::job::{Job, Key};
use gablerow_core::label::Label;
use gablerow_papers::kinds::{Format, Kind, Printer};
use gablerow_papers::page::Paper;

const CABINETS: usize = 40;

fn main() {
    let job = job();
    let kinds = kinds();
    let released = Released::of(&job);
    let held = released.held_back().len();
    let printer = released.printer(Paper::A4);

    let (took, (files, pages)) = timed(|| print(&printer, &kinds));
    println!("{CABINETS} cabinets, {held} held back: {files} files, {pages} pages");
    let page = took / u32::try_from(pages).expect("pages");
    println!("printed: {took:.0?}, {page:.1?} a page");
    println!("memory at most: {} MB", peak_kilobytes() / 1024);

    let folder = tempfile::tempdir().expect("a folder");
    let wish = PaperWish {
        kinds: kinds.clone(),
        cabinet: None,
        sheets: Paper::A4,
        folder: folder.path().to_owned(),
        replace: false,
    };
    let go_on = |_: gablerow::paper_run::PaperStep| ControlFlow::Continue(());
    let (took, tally) = timed(|| write_papers(&released, &wish, go_on).expect("written"));
    println!(
        "written too, each flushed: {took:.0?} for {} files",
        tally.written
    );
    match rendered(folder.path()) {
        Some(poppler) => {
            let theirs = poppler / u32::try_from(pages).expect("pages");
            let ratio = page.as_secs_f64() / theirs.as_secs_f64();
            println!("poppler renders a page in {theirs:.1?}; ours takes {ratio:.3} of that");
        }
        None => println!("poppler: NOT RUN (pdftoppm is not installed)"),
    }
    for (line, kind) in Kind::ALL.iter().enumerate() {
        let at = PapersAt {
            line,
            ..PapersAt::default()
        };
        let (took, _) = timed(|| PaperPreview::of(&job, &at, 40));
        println!("looking at {:<8} {took:>8.1?}", kind.word());
    }
}

fn timed<T>(work: impl FnOnce() -> T) -> (Duration, T) {
    let start = Instant::now();
    let made = work();
    (start.elapsed(), made)
}

/// Cabinets with fronts of every kind, copied until there are enough.
fn job() -> Job {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/jobs/glaze_fronts.json");
    let text = fs::read(path).expect("the job file");
    let mut job = job_file::read(&text).expect("a job");
    let first: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
    for number in job.cabinets.len()..CABINETS {
        let cabinet = first[number % first.len()];
        let name = Label::new(&format!("K{number}")).expect("a name");
        let copy = Edit::Duplicate { cabinet, name };
        copy.apply(&job).expect("a copy").apply(&mut job);
    }
    job
}

/// Every kind in its first format.
fn kinds() -> Vec<(Kind, Format)> {
    let kinds = Kind::ALL.into_iter();
    kinds.map(|kind| (kind, kind.formats()[0])).collect()
}

/// Prints all of it; gives how many files and how many pages of PDF that is.
fn print(printer: &Printer, kinds: &[(Kind, Format)]) -> (usize, usize) {
    let files = kinds
        .iter()
        .flat_map(|&(kind, format)| printer.files(kind, format));
    files.fold((0, 0), |(files, pages), file| {
        (files + 1, pages + file.sheets.unwrap_or(0))
    })
}

/// The memory this process has had at most so far, in kB; 0 where the system does not say.
fn peak_kilobytes() -> u64 {
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let peak = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let number = peak.and_then(|it| it.split_whitespace().next()?.parse().ok());
    number.unwrap_or(0)
}

/// How long poppler takes for every PDF file of a folder; `None` where it is not installed.
fn rendered(folder: &Path) -> Option<Duration> {
    let entries = fs::read_dir(folder).expect("the folder");
    let paths = entries.map(|entry| entry.expect("a file").path());
    let documents: Vec<PathBuf> = paths
        .filter(|it| it.extension().is_some_and(|it| it == "pdf"))
        .collect();
    let (took, all) = timed(|| {
        documents.iter().try_for_each(|path| {
            let status = Command::new("pdftoppm")
                .args(["-r", "72"])
                .arg(path)
                .stdout(Stdio::null())
                .status();
            status.ok().map(drop)
        })
    });
    all.map(|()| took)
}
