//! Papers written to a folder: what was chosen is printed, what is held back is named.

use std::fmt::Write as _;
use std::ops::ControlFlow;

use anyhow::{Context, bail};
use gablerow_core::job::{Job, Key};
use gablerow_papers::kinds::{Format, Kind, PaperFile};

use super::arguments::PapersWanted;
use super::output::{say, shown};
use super::{DONE, STOPPED, job_or_demo, output, say_held_back};
use crate::paper_run::{PaperStep, write_papers};
use crate::papers_at::PaperWish;
use crate::released::Released;
use crate::store::Put;

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
    let named = wanted.cabinet.as_ref().map(|name| cabinet(&job, name));
    let wish = PaperWish {
        kinds: pairs(wanted)?,
        cabinet: named.transpose()?,
        sheets: wanted.sheet,
        folder: to.clone(),
        replace: wanted.replace,
    };
    let released = Released::of_one(&job, wish.cabinet);
    let mut unsaid = None;
    let tally = write_papers(&released, &wish, |step| match say_step(&step) {
        Ok(_) => ControlFlow::Continue(()),
        Err(error) => {
            unsaid = Some(error);
            ControlFlow::Break(())
        }
    })?;
    if let Some(error) = unsaid {
        return Err(error);
    }
    let is_for_boring = wish.kinds.iter().any(|(kind, _)| kind.is_for_boring());
    let is_any_held = is_for_boring && say_held_back(&released);
    Ok(if is_any_held || !tally.kept.is_empty() {
        STOPPED
    } else {
        DONE
    })
}

/// Says what became of a file.
fn say_step(step: &PaperStep) -> anyhow::Result<u8> {
    match step.file {
        None => Ok(DONE),
        Some((file, Put::Written)) => output::print(&line(file, "written")),
        Some((file, Put::Same)) => output::print(&line(file, "there already")),
        Some((file, Put::Kept)) => {
            say(&format!(
                "not written: {}, a file with other contents has that name; \
                 `--replace` writes over it",
                file.name
            ));
            Ok(DONE)
        }
    }
}

/// The cabinet of a name, without regard to capitals unless two differ in nothing else.
fn cabinet(job: &Job, name: &str) -> anyhow::Result<Key> {
    let (wanted, all) = (name.to_lowercase(), &job.cabinets);
    let exact = all.iter().find(|it| it.name.as_str() == name);
    let loose = || {
        all.iter()
            .find(|it| it.name.as_str().to_lowercase() == wanted)
    };
    let meant = exact.or_else(loose);
    meant.map(|it| it.key).with_context(|| {
        let names = job.cabinets.iter().map(|it| it.name.as_str());
        let names: Vec<&str> = names.collect();
        let names = names.join(", ");
        format!("no cabinet is called `{name}`; the cabinets are {names}")
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
