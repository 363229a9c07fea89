//! What is written, and what becomes of a reader that has gone.

use std::io::{self, ErrorKind, Write};

use anyhow::{Context, Error};
use gablerow_core::label::is_unsafe;
use gablerow_core::measure::Length;
use gablerow_papers::Value;
use serde::ser::{Error as _, Serialize, Serializer};
use serde_json::value::RawValue;

use super::{DONE, FAILED};
use crate::job_file::UnreadableJob;

/// Writes all of a text to the standard output. A reader that has gone has had enough, which is no error.
pub(super) fn print(text: &str) -> anyhow::Result<u8> {
    quietly(write_to(&mut io::stdout().lock(), text))
        .context("the output cannot be written; look at the disk it goes to")?;
    Ok(DONE)
}

fn write_to(out: &mut impl Write, text: &str) -> io::Result<()> {
    out.write_all(text.as_bytes())?;
    out.flush()
}

fn quietly(written: io::Result<()>) -> io::Result<()> {
    match written {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other,
    }
}

/// Shows help, version, or what is wrong with the words typed.
pub(super) fn usage(usage: &clap::Error) -> anyhow::Result<u8> {
    quietly(usage.print()).context("the help cannot be written; look at the disk it goes to")?;
    Ok(if usage.use_stderr() { FAILED } else { DONE })
}

/// Says what is wrong: what, where, what next. There is nobody left to tell when that cannot be written.
pub(super) fn complain(error: &Error) {
    let text = match error.downcast_ref::<UnreadableJob>() {
        Some(unreadable) => unreadable.report(),
        None => format!("error: {}\n", shown(&format!("{error:#}"))),
    };
    let _ = write_to(&mut io::stderr().lock(), &text);
}

/// Says something beside the output: what hinders nothing, or what is left out of it.
pub(super) fn say(text: &str) {
    let _ = write_to(&mut io::stderr().lock(), &format!("{}\n", shown(text)));
}

/// Says each of these on a line of its own.
pub(super) fn say_each(texts: impl IntoIterator<Item = String>) {
    texts.into_iter().for_each(|text| say(&text));
}

/// A text that cannot command a terminal, whatever stands in a file name; its lines stay lines.
pub(super) fn shown(text: &str) -> String {
    let stand_in = |c| {
        if is_unsafe(c) && c != '\n' {
            char::REPLACEMENT_CHARACTER
        } else {
            c
        }
    };
    text.chars().map(stand_in).collect()
}

/// A JSON array with one record on a line, so that two of them can be compared line by line.
pub(super) fn json_lines<T: Serialize>(records: &[T]) -> anyhow::Result<String> {
    let lines = records
        .iter()
        .map(serde_json::to_string)
        .collect::<Result<Vec<_>, _>>();
    let lines = lines.context("a record cannot be written as JSON")?;
    Ok(match lines.is_empty() {
        true => "[]\n".into(),
        false => format!("[\n{}\n]\n", lines.join(",\n")),
    })
}

/// A length as a JSON number: mm, every decimal it has and no other.
pub(super) struct ExactMm(pub(super) Length);

/// A quantity of physics as a JSON number, with the decimals it is good to.
pub(super) struct Quantity(pub(super) f64);

impl Serialize for ExactMm {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        as_number(self.0.exact_mm().to_string(), serializer)
    }
}

impl Serialize for Quantity {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        as_number(Value::quantity(self.0), serializer)
    }
}

/// A number as it is written, digit by digit.
fn as_number<S: Serializer>(digits: String, serializer: S) -> Result<S::Ok, S::Error> {
    let number = RawValue::from_string(digits).map_err(S::Error::custom)?;
    number.serialize(serializer)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_keep_every_decimal() {
        let length = Length::from_inch_64ths(1);
        assert_eq!(
            json_lines(&[ExactMm(length), ExactMm(Length::from_um(-18_600))]).unwrap(),
            "[\n0.396875,\n-18.6\n]\n"
        );
        assert_eq!(json_lines::<ExactMm>(&[]).unwrap(), "[]\n");
    }

    #[test]
    fn a_reader_that_has_gone_is_no_error_and_a_full_disk_is() {
        assert!(quietly(Err(ErrorKind::BrokenPipe.into())).is_ok());
        assert!(quietly(Err(ErrorKind::StorageFull.into())).is_err());
    }

    #[test]
    fn file_names_cannot_command_the_terminal() {
        assert_eq!(shown("a\u{1b}[2Jb"), "a\u{fffd}[2Jb");
    }
}
