//! Every hole of a job: to read, for a spreadsheet, for a script.

use gablerow_core::job::Job;
use gablerow_papers::{COLUMNS, HoleRecord, Value, hole_csv, hole_text};
use serde::ser::{Serialize, SerializeMap, Serializer};

use super::faces::signs;
use super::output::{ExactMm, json_lines};

/// One hole as JSON: a field for each of the [`COLUMNS`].
struct HoleFields<'a>(HoleRecord<'a>);

/// One field.
struct Field<'a>(Value<'a>);

pub(super) fn text(job: &Job) -> String {
    hole_text(&HoleRecord::of_job(job), job.unit, &signs())
}

pub(super) fn csv(job: &Job) -> String {
    hole_csv(&HoleRecord::of_job(job))
}

pub(super) fn json(job: &Job) -> anyhow::Result<String> {
    let records: Vec<_> = HoleRecord::of_job(job)
        .into_iter()
        .map(HoleFields)
        .collect();
    json_lines(&records)
}

impl Serialize for HoleFields<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut fields = serializer.serialize_map(Some(COLUMNS.len()))?;
        for column in COLUMNS {
            fields.serialize_entry(column.name, &Field((column.value)(&self.0)))?;
        }
        fields.end()
    }
}

impl Serialize for Field<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match &self.0 {
            Value::Name(name) => name.serialize(serializer),
            Value::Word(word) => word.serialize(serializer),
            Value::Words(words) => words.serialize(serializer),
            Value::Number(number) => number.serialize(serializer),
            Value::Length(length) => ExactMm(*length).serialize(serializer),
            Value::Nothing => serializer.serialize_none(),
        }
    }
}
