//! What the formats of the papers ask of a file, read off the bytes the built program writes.

mod csv;
mod dxf;
mod json;
mod pdf;
mod svg;

use std::fs;
use std::path::Path;
use std::process::Command;

use gablerow::job_file;
use gablerow_core::job::{Job, Label};

use crate::case::Case;

pub(crate) fn cases() -> Vec<Case> {
    let written = Written::new();
    let mut all = csv::cases(&written);
    all.extend(json::cases(&written));
    all.extend(svg::cases(&written));
    all.extend(dxf::cases(&written));
    all.extend(pdf::cases(&written));
    all
}

/// A folder with a job in it, in which the program is run.
struct Written {
    folder: tempfile::TempDir,
}

/// Three bays with doors, drawers and all hardware, its cabinet named with every sign that a format has to hide.
fn hostile_job() -> Job {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/jobs/three_bays.json");
    let mut job = job_file::read(&fs::read(path).unwrap()).unwrap();
    job.cabinets[0].name = Label::new(r#"G2 "tall", \ é"#).unwrap();
    job
}

impl Written {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        fs::write(
            folder.path().join("job.json"),
            job_file::write(&hostile_job()),
        )
        .unwrap();
        Self { folder }
    }

    /// What the program prints when it is run with these words.
    fn run(&self, words: &[&str]) -> Vec<u8> {
        let mut program = Command::new(env!("CARGO_BIN_EXE_gablerow"));
        let said = program
            .args(words)
            .current_dir(self.folder.path())
            .output()
            .unwrap();
        let complaints = String::from_utf8_lossy(&said.stderr);
        assert!(said.status.success(), "{words:?}: {complaints}");
        said.stdout
    }

    /// The first of the papers of a kind, by name, that the program writes in a format on a sheet.
    fn paper(&self, kind: &str, format: &str, sheet: &str) -> Vec<u8> {
        let to = format!("{kind}-{format}-{sheet}");
        let sort = ["--only", kind, "--format", format, "--sheet", sheet];
        self.run(&[&["papers", "job.json", "--to", &to][..], &sort].concat());
        let files = fs::read_dir(self.folder.path().join(&to)).unwrap();
        let paths = files.map(|file| file.unwrap().path());
        fs::read(paths.min().unwrap()).unwrap()
    }
}

/// Bytes as text. What the formats of letters hold is UTF-8.
fn text(bytes: &[u8]) -> &str {
    std::str::from_utf8(bytes).unwrap()
}

/// How many of something there are.
fn count(found: impl Iterator) -> f64 {
    f64::from(u32::try_from(found.count()).unwrap())
}

/// The same bytes with every occurrence of a text replaced.
fn replaced(bytes: &[u8], from: &str, to: &str) -> Vec<u8> {
    let whole = text(bytes);
    assert!(whole.contains(from), "nothing to spoil: no {from:?}");
    whole.replace(from, to).into_bytes()
}

/// How long the rule is that shows whether a page was printed true to size: across, and then its eleven strokes, all upright.
fn rule(paths: &[Vec<[f64; 2]>]) -> f64 {
    let across = |path: &[[f64; 2]]| path[1][0] - path[0][0];
    let is_line = |path: &Vec<[f64; 2]>| path.len() == 2;
    let is_flat = |path: &[[f64; 2]]| (path[1][1] - path[0][1]).abs() < 1e-6;
    let is_upright = |path: &[[f64; 2]]| across(path).abs() < 1e-6 && !is_flat(path);
    let is_rule = |window: &&[Vec<[f64; 2]>]| {
        let (flat, strokes) = (&window[0], &window[1..]);
        window.iter().all(is_line) && is_flat(flat) && strokes.iter().all(|path| is_upright(path))
    };
    let mut found = paths.windows(12).filter(is_rule);
    let rule = found.next().unwrap();
    assert!(found.next().is_none(), "there is one rule on a page");
    across(&rule[0])
}
