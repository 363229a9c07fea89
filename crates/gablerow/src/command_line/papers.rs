//! Papers written to a folder: what was chosen is printed, what is held back is named.

use std::fmt::Write as _;
use std::path::Path;

use anyhow::bail;
use gablerow_core::job::Job;
use gablerow_papers::kinds::{Format, Kind, PaperFile, Printer};
use gablerow_papers::page::Paper;

use super::output::{say, shown};
use super::released::Released;
use super::{DONE, STOPPED, output};
use crate::store::{PaperFolder, Put};

/// What of a job is written, and how.
pub(super) struct Wanted<'a> {
    pub(super) folder: &'a Path,
    /// Every kind when none is named.
    pub(super) kinds: &'a [Kind],
    /// The name of a cabinet; all of them when none is named.
    pub(super) cabinet: Option<&'a str>,
    /// The first format of each kind when none is named.
    pub(super) format: Option<Format>,
    pub(super) paper: Paper,
    /// Whether files with other bytes give way.
    pub(super) replace: bool,
}

/// Writes what is wanted, kind by kind; gives the exit code.
///
/// # Errors
/// - no cabinet has the name, or no kind that is wanted has the format: nothing is written;
/// - a file cannot be written: those before it are.
pub(super) fn write(job: &Job, wanted: &Wanted) -> anyhow::Result<u8> {
    let pairs = pairs(wanted)?;
    let mut released = Released::of(job);
    if let Some(name) = wanted.cabinet {
        released.keep_only(name)?;
    }
    let printer = Printer {
        job,
        chosen: released.cabinets(),
        paper: wanted.paper,
    };
    let folder = PaperFolder::open(wanted.folder)?;
    let mut is_any_kept = false;
    for &(kind, format) in &pairs {
        for file in printer.files(kind, format) {
            let put = folder.put(&file.name, &file.bytes, wanted.replace)?;
            match put {
                Put::Written => output::print(&line(&file, "written"))?,
                Put::Same => output::print(&line(&file, "there already"))?,
                Put::Kept => {
                    is_any_kept = true;
                    say(&format!(
                        "not written: {}, a file with other contents has that name; \
                         `--replace` writes over it",
                        file.name
                    ));
                    DONE
                }
            };
        }
    }
    let is_for_boring = pairs.iter().any(|(kind, _)| kind.is_for_boring());
    let is_any_held = is_for_boring && released.say_held_back();
    Ok(if is_any_held || is_any_kept {
        STOPPED
    } else {
        DONE
    })
}

/// Every kind that is wanted, with the format it is written in.
fn pairs(wanted: &Wanted) -> anyhow::Result<Vec<(Kind, Format)>> {
    let kinds = match wanted.kinds {
        [] => Kind::ALL.as_slice(),
        some => some,
    };
    let mut pairs = Vec::new();
    for &kind in Kind::ALL.iter().filter(|kind| kinds.contains(kind)) {
        let format = match wanted.format {
            Some(format) if !kind.formats().contains(&format) => continue,
            Some(format) => Some(format),
            None => kind.formats().first().copied(),
        };
        pairs.extend(format.map(|format| (kind, format)));
    }
    if let (true, Some(format)) = (pairs.is_empty(), wanted.format) {
        bail!(
            "none of these papers is written as {}; `gablerow papers --list` says what is",
            format.word()
        );
    }
    Ok(pairs)
}

fn line(file: &PaperFile, done: &str) -> String {
    let size = match file.sheets {
        Some(1) => "1 sheet".to_owned(),
        Some(sheets) => format!("{sheets} sheets"),
        None => {
            let lines = file.bytes.iter().filter(|byte| **byte == b'\n').count();
            format!("{lines} lines")
        }
    };
    let bytes = file.bytes.len();
    shown(&format!("{done}: {}, {size}, {bytes} bytes\n", file.name))
}

/// Every kind of paper: its word, what it is, what for, in which formats.
pub(super) fn list() -> String {
    let wide = Kind::ALL.iter().map(|kind| kind.word().len()).max();
    let wide = wide.unwrap_or_default();
    let mut out = String::new();
    for kind in Kind::ALL {
        let formats: Vec<&str> = kind.formats().iter().map(|it| it.word()).collect();
        let (scope, formats) = (kind.scope().word(), formats.join(", "));
        let held = match kind.is_for_boring() {
            true => "; held back by an open stop",
            false => "",
        };
        let word = kind.word();
        // Writing to a string never fails.
        let _ = writeln!(out, "{word:<wide$}  {}", kind.says());
        let _ = writeln!(out, "{:<wide$}  one a {scope}; {formats}{held}", "");
    }
    out
}
