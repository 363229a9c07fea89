//! What may be typed.

use std::path::PathBuf;

use clap::builder::{PathBufValueParser, PossibleValuesParser, TypedValueParser};
use clap::{Args, Parser, Subcommand};

use gablerow_papers::kinds::{Format, Kind};
use gablerow_papers::page::Paper;

use super::words;

/// Lays out the bored holes of frameless cabinets on the 32 mm grid.
///
/// Without a command it opens the job on the screen, or the demo job when none is named. Where there is no screen it prints the
/// faces and the findings of that job.
#[derive(Debug, Parser)]
#[command(name = "gablerow", version, args_conflicts_with_subcommands = true)]
#[command(
    after_help = "A job file named like a command is opened with its folder: gablerow ./check"
)]
pub(super) struct Arguments {
    /// The job file; a new one may be named too.
    #[arg(value_parser = job_file())]
    pub(super) job: Option<PathBuf>,
    #[command(subcommand)]
    pub(super) command: Option<Command>,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Print panel faces as text, true to scale: one line is 32 mm, one column 16 mm.
    Face {
        /// The job file.
        #[arg(value_parser = job_file())]
        job: PathBuf,
        /// Which: the name of a cabinet, then as much of `left side inside` or `partition 1 left face` as is wanted; every
        /// face that a bay sees when nothing is said.
        #[arg(value_name = "FACE")]
        face: Vec<String>,
    },
    /// Say what may be wrong: the heaviest level first, cabinet by cabinet.
    ///
    /// Exit code 0: no stop is open; 1: at least one is; 2: the job cannot be read.
    #[command(after_long_help = words::of_findings())]
    Check {
        /// The job file; the demo job when none is named.
        #[arg(value_parser = job_file())]
        job: Option<PathBuf>,
        /// As a JSON array, one finding on a line; `fix` is the least change that was tried and mends it.
        #[arg(long)]
        json: bool,
    },
    /// List every rule of the checks, with its level and what it is about.
    Rules {
        /// As a JSON array, one rule on a line.
        #[arg(long)]
        json: bool,
    },
    /// List every hole of every copy.
    ///
    /// Lengths in JSON and CSV are exact decimals of mm. A hole through the panel is listed once, on the face it is bored from.
    /// A cabinet with an open stop is held back: it is named on the standard error stream, and the exit code is 1. What overrules
    /// a stop is said with the holes; with JSON and CSV on the standard error stream.
    #[command(after_long_help = words::of_holes())]
    Holes {
        /// The job file; the demo job when none is named.
        #[arg(value_parser = job_file())]
        job: Option<PathBuf>,
        /// As a JSON array, one hole on a line.
        #[arg(long, conflicts_with = "csv")]
        json: bool,
        /// As comma-separated values, the names of the columns first.
        #[arg(long)]
        csv: bool,
    },
    /// List what is cut and bought: panels, fronts, drawer boxes, shelves, hardware.
    ///
    /// Lengths in JSON and CSV are exact decimals of mm; what physics gives has three. One record is one part, or one kind of
    /// hardware; a key that says nothing of it is null.
    #[command(after_long_help = words::of_parts())]
    Parts {
        /// The job file; the demo job when none is named.
        #[arg(value_parser = job_file())]
        job: Option<PathBuf>,
        /// As a JSON array, one part on a line.
        #[arg(long, conflicts_with = "csv")]
        json: bool,
        /// As comma-separated values, the names of the columns first.
        #[arg(long)]
        csv: bool,
    },
    /// Print the bench sheet: what is left to bore, set-up by set-up in the order of work of the shop.
    ///
    /// A set-up is one face of one panel under the rail at one setting. The holes are the numbers of the cabinet, and where the
    /// rail counts otherwise its numbers stand beside them. A rail that is too short for a panel is moved along it, pinned in holes
    /// bored before; where there are none the panel is bored from both ends. Below come distances to measure, whose hole is
    /// which, and all parts.
    /// A cabinet with an open stop is held back: it is named on the standard error stream, and the exit code is 1. What overrules
    /// a stop is printed on the sheet, and so is every warn.
    #[command(after_long_help = words::of_set_ups())]
    Bench {
        /// The job file; the demo job when none is named.
        #[arg(value_parser = job_file())]
        job: Option<PathBuf>,
        /// With what is on record as bored already, too.
        #[arg(long)]
        all: bool,
        /// As a JSON array, one set-up on a line.
        #[arg(long)]
        json: bool,
    },
    /// Write papers to a folder: bench sheet, hole tables, drawings, story sticks, lists of parts, labels.
    ///
    /// Files are named by job, cabinet, face and kind, and what is of one cabinet by its revision. A file with other contents is not written over unless that is
    /// asked for: it is named, and the exit code is 1. What is for boring of a cabinet with an open stop is held back: the cabinet
    /// is named on the standard error stream, and the exit code is 1.
    Papers(PapersWanted),
    /// Print the JSON Schema of job files.
    Schema,
    /// List every figure and formula the program goes by, under the source it rests on.
    ///
    /// What is borrowed from another material, common practice and house guesses are told apart from what is printed.
    #[command(after_long_help = words::of_sources())]
    Sources {
        /// As a JSON array, one figure on a line.
        #[arg(long)]
        json: bool,
    },
}

/// What of a job is written to which folder, and how.
#[derive(Debug, Args)]
pub(super) struct PapersWanted {
    /// The job file; the demo job when none is named.
    #[arg(value_parser = job_file())]
    pub(super) job: Option<PathBuf>,
    /// The folder; it is made when it is not there yet.
    #[arg(long, value_name = "DIR", required_unless_present = "list")]
    pub(super) to: Option<PathBuf>,
    /// These kinds of paper and no others, with commas between.
    #[arg(long, value_name = "KINDS", value_delimiter = ',', ignore_case = true, value_parser = kinds())]
    pub(super) only: Vec<Kind>,
    /// This cabinet and no other.
    #[arg(long, value_name = "NAME")]
    pub(super) cabinet: Option<String>,
    /// In this format, what has it; each kind in its first one when nothing is said.
    #[arg(long, ignore_case = true, value_parser = formats())]
    pub(super) format: Option<Format>,
    /// The sheets that are printed on.
    #[arg(long, ignore_case = true, value_parser = papers(), default_value = "A4")]
    pub(super) sheet: Paper,
    /// Write over files with other contents.
    #[arg(long)]
    pub(super) replace: bool,
    /// Print every kind of paper, with its formats, and write nothing.
    #[arg(long)]
    pub(super) list: bool,
}

/// A path that is not `-`: nothing is read from the standard input.
fn job_file() -> impl TypedValueParser<Value = PathBuf> {
    PathBufValueParser::new().try_map(|path| match path.as_os_str() == "-" {
        true => Err("- is no file, and nothing is read from the standard input; name a job file"),
        false => Ok(path),
    })
}

/// One of several values by its word.
fn by_word<T: Copy + Send + Sync + 'static>(
    all: &'static [T],
    word: fn(T) -> &'static str,
) -> impl TypedValueParser<Value = T> {
    PossibleValuesParser::new(all.iter().map(|it| word(*it))).try_map(move |typed| {
        let is_meant = |it: &&T| word(**it).eq_ignore_ascii_case(&typed);
        all.iter().find(is_meant).copied().ok_or("no such word")
    })
}

fn kinds() -> impl TypedValueParser<Value = Kind> {
    by_word(&Kind::ALL, Kind::word)
}

fn formats() -> impl TypedValueParser<Value = Format> {
    by_word(&Format::ALL, Format::word)
}

fn papers() -> impl TypedValueParser<Value = Paper> {
    by_word(&Paper::ALL, Paper::word)
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_command_line_is_sound() {
        Arguments::command().debug_assert();
    }
}
