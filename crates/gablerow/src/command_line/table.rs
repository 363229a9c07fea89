//! Tables as JSON: a record on a line, a key for each column.

use gablerow_papers::{Tabled, Value};
use serde::ser::{Serialize, SerializeMap, Serializer};

use super::output::{ExactMm, Quantity, json_lines};

/// A table as a JSON array, one record on a line.
pub(super) fn json_table<R: Tabled>(records: &[R]) -> anyhow::Result<String> {
    let records: Vec<_> = records.iter().map(Fields).collect();
    json_lines(&records)
}

/// One record: a key for each of its columns.
struct Fields<'a, R>(&'a R);

/// What stands in one column.
struct Field<'a>(Value<'a>);

impl<R: Tabled> Serialize for Fields<'_, R> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut fields = serializer.serialize_map(Some(R::COLUMNS.len()))?;
        for (column, value) in R::COLUMNS.iter().zip(self.0.values()) {
            fields.serialize_entry(column.name, &Field(value))?;
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
            Value::Phrases(phrases) => phrases.serialize(serializer),
            Value::Number(number) => number.serialize(serializer),
            Value::Numbers(numbers) => numbers.serialize(serializer),
            Value::Length(length) => ExactMm(*length).serialize(serializer),
            Value::Lengths(lengths) => serializer.collect_seq(lengths.iter().copied().map(ExactMm)),
            Value::Quantity(quantity) => Quantity(*quantity).serialize(serializer),
            Value::Flag(flag) => flag.serialize(serializer),
            Value::Nothing => serializer.serialize_none(),
        }
    }
}
