//! What is wrong with a job file, and how that is shown.

use std::fmt::{self, Write};

use gablerow_core::label::is_unsafe;

use super::place;
use super::wrong::Wrong;

/// What is wrong with a job file, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobFileError {
    /// The place in the job, as the file names it: `cabinets[2].size.height`; empty for the file as a whole.
    pub path: String,
    /// The line, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
    /// What stands there and what may stand there.
    pub message: String,
    /// The part of that line around the column, and how many of its characters stand before the column.
    excerpt: (String, usize),
}

/// The most characters of a line that are shown before and after the place.
const AROUND: usize = 70;

impl JobFileError {
    /// The error of a text; a fault that knows no offset is found by its path.
    pub(super) fn of(wrong: &Wrong, text: &str) -> Self {
        let at = wrong.at.unwrap_or_else(|| place::find(text, &wrong.path));
        Self::at(at, &wrong.path, &wrong.message, text)
    }

    /// The error at a byte offset of a text.
    pub(super) fn at(at: usize, path: &str, message: &str, text: &str) -> Self {
        let (before, after) = text.split_at_checked(at).unwrap_or((text, ""));
        let start = before.rfind('\n').map_or(0, |end| end + 1);
        let left = &before[start..];
        let right = after.lines().next().unwrap_or_default();
        let column = left.chars().count() + 1;
        let skipped = (column - 1).saturating_sub(AROUND);
        let left = left.chars().skip(skipped);
        let line = left.chain(right.chars().take(AROUND)).map(safe).collect();
        Self {
            path: path.chars().map(safe).collect(),
            line: before.matches('\n').count() + 1,
            column,
            message: message.chars().map(safe).collect(),
            excerpt: (line, column - 1 - skipped),
        }
    }

    /// The report of several lines, with the place pointed at.
    ///
    /// # Example
    /// ```text
    /// error: cabinets[0].size.height: carcass height: 20000, but it is 100 to 4000 mm
    ///   --> glaze-store.json:74:48
    ///    |
    /// 74 |       "size": {"width": 600, "height": 20000, "depth": 560},
    ///    |                                        ^
    /// ```
    #[must_use]
    pub fn report(&self, file_name: &str) -> String {
        let (text, before) = &self.excerpt;
        let number = self.line.to_string();
        let margin = " ".repeat(number.len());
        let name: String = file_name.chars().map(safe).collect();
        let mut report = String::from("error: ");
        // Writing to a String cannot fail.
        let _ = self.write_what(&mut report);
        let _ = write!(
            report,
            "\n{margin}--> {name}:{}:{}\n{margin} |\n{number} | {text}\n{margin} | {:before$}^\n",
            self.line, self.column, ""
        );
        report
    }

    fn write_what(&self, out: &mut dyn Write) -> fmt::Result {
        match self.path.as_str() {
            "" => out.write_str(&self.message),
            path => write!(out, "{path}: {}", self.message),
        }
    }
}

/// The character itself, or a stand-in for one that could command a terminal or mislead the eye.
fn safe(c: char) -> char {
    match c {
        '\t' => ' ',
        c if is_unsafe(c) => char::REPLACEMENT_CHARACTER,
        c => c,
    }
}

impl fmt::Display for JobFileError {
    /// One line: `line 74, column 48: cabinets[0].size.height: carcass height: 20000, but it is 100 to 4000 mm`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, column {}: ", self.line, self.column)?;
        self.write_what(f)
    }
}

impl std::error::Error for JobFileError {}
