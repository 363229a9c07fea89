//! Papers written to a folder: what was chosen is printed, what is held back is named.

use std::fmt::Write as _;

use anyhow::bail;
use gablerow_papers::kinds::{Format, Kind, PaperFile, Printer};

use super::arguments::PapersWanted;
use super::output::{say, shown};
use super::released::Released;
use super::{DONE, STOPPED, job_or_demo, output};
use crate::store::{PaperFolder, Put};

/// Writes what is wanted, kind by kind, or lists what could be; gives the exit code.
///
/// # Errors
/// - the job cannot be read, no cabinet has the name, no kind that is wanted has the format: nothing is written;
/// - a file cannot be written: those before it are.
pub(super) fn perform(wanted: &PapersWanted) -> anyhow::Result<u8> {
    let to = match &wanted.to {
        Some(to) if !wanted.list => to,
        _ => return output::print(&list()),
    };
    let job = job_or_demo(wanted.job.as_deref())?;
    let pairs = pairs(wanted)?;
    let mut released = Released::of(&job);
    if let Some(name) = &wanted.cabinet {
        released.keep_only(name)?;
    }
    let printer = Printer {
        job: &job,
        chosen: released.cabinets(),
        paper: wanted.sheet,
    };
    let folder = PaperFolder::open(to)?;
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
fn pairs(wanted: &PapersWanted) -> anyhow::Result<Vec<(Kind, Format)>> {
    let kinds = match wanted.only.as_slice() {
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
fn list() -> String {
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
