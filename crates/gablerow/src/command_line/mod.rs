//! The command line: everything the screens show, as text and as JSON.
//!
//! ```text
//! words typed -> arguments -> job read -> faces | check | holes | parts | rules | bench | papers -> output -> exit code
//!                   |            |
//!                mistyped     error: what, where, what next
//! ```
//!
//! # Exit codes
//!
//! | code | |
//! | --- | --- |
//! | 0 | done; `check`, `holes`, `bench`, `papers`: no stop is open |
//! | 1 | `check`: at least one stop is open; `holes`, `bench`, `papers`: at least one cabinet is held back; `papers`: a file was not written over |
//! | 2 | the job cannot be read, the words typed make no sense, or the output cannot be written |
//!
//! Whoever reads the output may stop early, as `head` does: the rest is dropped without a word, and the exit code is what it
//! would have been.
//!
//! # Words
//!
//! These may stand in the output of `holes`, `check`, `rules`, `parts` and `bench`, and no others:
//!
//! | field | words |
//! | --- | --- |
//! | `panel` | `left side`, `right side`, `partition N`, counted from the left; of openings above each other the lower first |
//! | `face` | `inside`, `outside` of a side; `left face`, `right face` of a partition |
//! | `row` | `front`, `back`, `middle`, `in line`, `runner`, `free` |
//! | `uses` | `pin`, `plate`, `runner`, `dowel`, `connector`, `free` |
//! | `level` | `stop`, `warn`, `note` |
//! | `kind` | `panel`, `front`, `box`, `box part`, `shelf`, `hardware`, `missing` |
//! | `grain` | `up`, `across`, `deep` |
//! | `banded` | `front`, `foot`, `left`, `right`, `head` |
//! | `arm` | `full`, `half`, `inset` |

mod arguments;
mod bench;
mod check;
mod faces;
mod holes;
mod mistyped;
mod output;
mod papers;
mod parts;
mod reading;
mod rules;
mod table;
mod words;

use std::ffi::OsString;
use std::path::Path;
use std::process::ExitCode;

use clap::Parser;
use gablerow_core::figures::figures;
use gablerow_core::job::Job;
use gablerow_papers::source_text;

use crate::released::Released;
use crate::shop_folder::Environment;
use crate::{demo, program, terminal};
use arguments::{Arguments, Command};

/// Done.
const DONE: u8 = 0;
/// At least one stop is open.
const STOPPED: u8 = 1;
/// It could not be done.
const FAILED: u8 = 2;

/// The shape of a job file.
const SCHEMA: &str = include_str!("../../../../assets/job.schema.json");

/// Does what the words of a command line ask for, the program's name first, in an environment; gives the exit code.
///
/// What is wrong is said on the standard error stream.
#[must_use]
pub fn run(words: impl IntoIterator<Item = OsString>, environment: Environment<'_>) -> ExitCode {
    let words: Vec<OsString> = words.into_iter().collect();
    let code = match Arguments::try_parse_from(&words) {
        Ok(arguments) => perform(&arguments, environment),
        Err(usage) => match mistyped::words(words.get(1..).unwrap_or_default()) {
            Some(wrong) if usage.use_stderr() => Err(wrong),
            _ => output::usage(&usage),
        },
    };
    ExitCode::from(code.unwrap_or_else(|error| {
        output::complain(&error);
        FAILED
    }))
}

fn perform(arguments: &Arguments, environment: Environment<'_>) -> anyhow::Result<u8> {
    match &arguments.command {
        None => open(arguments.job.as_deref(), environment),
        Some(Command::Face { job, face }) => {
            let job = reading::job(job)?;
            output::print(&faces::text(&job, &faces::selected(&job, face)?))
        }
        Some(Command::Check { job, json }) => {
            let job = job_or_demo(job.as_deref())?;
            let checked = check::Checked::of(&job);
            output::print(&if *json {
                checked.json()?
            } else {
                checked.text()
            })?;
            Ok(held(checked.has_open_stop()))
        }
        Some(Command::Holes { job, json, csv }) => {
            let job = job_or_demo(job.as_deref())?;
            let released = Released::of(&job);
            output::print(&match (json, csv) {
                (true, _) => holes::json(&released)?,
                (_, true) => holes::csv(&released),
                _ => holes::text(&released),
            })?;
            if *json || *csv {
                output::say_each(released.overruled());
            }
            Ok(held(say_held_back(&released)))
        }
        Some(Command::Rules { json }) => {
            output::print(&if *json { rules::json()? } else { rules::text() })
        }
        Some(Command::Parts { job, json, csv }) => {
            let job = job_or_demo(job.as_deref())?;
            output::print(&match (json, csv) {
                (true, _) => parts::json(&job)?,
                (_, true) => parts::csv(&job),
                _ => parts::text(&job),
            })
        }
        Some(Command::Bench { job, all, json }) => {
            let job = job_or_demo(job.as_deref())?;
            let what = if *all {
                bench::What::All
            } else {
                bench::What::Left
            };
            let released = Released::of(&job);
            output::print(&match json {
                true => bench::json(&released, what)?,
                false => bench::text(&released, what),
            })?;
            if *json {
                output::say_each(released.overruled());
            }
            Ok(held(say_held_back(&released)))
        }
        Some(Command::Papers(wanted)) => papers::perform(wanted),
        Some(Command::Schema) => output::print(SCHEMA),
        Some(Command::Sources { json }) => output::print(&if *json {
            table::json_table(&figures())?
        } else {
            source_text()
        }),
    }
}

/// Says which cabinets are held back, and by what; whether any is.
fn say_held_back(released: &Released) -> bool {
    let held = released.held_back();
    output::say_each(held.iter().map(|it| format!("{it}; see `gablerow check`")));
    !held.is_empty()
}

/// The exit code of what stops may hold back.
fn held(is_held: bool) -> u8 {
    if is_held { STOPPED } else { DONE }
}

/// The job of a file, or the demo when none is named.
fn job_or_demo(path: Option<&Path>) -> anyhow::Result<Job> {
    match path {
        Some(path) => reading::job(path),
        None => Ok(demo::job()?),
    }
}

/// Opens a job on the screen, or shows it as text where there is none.
fn open(path: Option<&Path>, environment: Environment<'_>) -> anyhow::Result<u8> {
    if let Some(wrong) = path.and_then(mistyped::job) {
        return Err(wrong);
    }
    if terminal::is_terminal() {
        return program::run(path, environment);
    }
    let job = job_or_demo(path)?;
    let faces = faces::text(&job, &faces::selected(&job, &[])?);
    let checks = check::Checked::of(&job).text();
    output::print(&format!("{}\n\n{faces}\n{checks}", job.title))
}
