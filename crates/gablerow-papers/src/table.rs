//! Tables for others: records of named columns, the same ones in every form they are given in.

use alloc::borrow::Cow;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::measure::Length;

use crate::csv::{guarded, push_record};

/// One column of a table.
#[derive(Clone, Copy, Debug)]
pub struct Column {
    /// Its name: small letters and underlines; the unit last.
    pub name: &'static str,
    /// What it says, in one line.
    pub help: &'static str,
}

/// What stands in a column.
#[derive(Clone, Debug, PartialEq)]
pub enum Value<'a> {
    /// A name that a person typed.
    Name(&'a str),
    /// A word of the trade.
    Word(Cow<'static, str>),
    /// Several words of the trade, none of which has a blank.
    Words(Vec<&'static str>),
    /// Several phrases.
    Phrases(Vec<String>),
    /// A count.
    Number(i64),
    /// Several counts.
    Numbers(Vec<i64>),
    /// A length, in mm.
    Length(Length),
    /// Several lengths, in mm.
    Lengths(Vec<Length>),
    /// A quantity of physics, which is good to three decimals at most.
    Quantity(f64),
    /// Yes or no.
    Flag(bool),
    /// Nothing: the column says nothing of this record.
    Nothing,
}

/// What has a row in a table.
pub trait Tabled {
    /// The columns, in order.
    const COLUMNS: &'static [Column];

    /// What stands in each of the columns.
    fn values(&self) -> Vec<Value<'_>>;
}

/// Makes a record [`Tabled`]: each column's name, what it says, and how its value comes from the record.
macro_rules! columns {
    ($record:ty; $($name:ident $help:literal = |$of:ident| $value:expr;)+) => {
        impl $crate::Tabled for $record {
            const COLUMNS: &'static [$crate::Column] = &[
                $($crate::Column { name: stringify!($name), help: $help },)+
            ];

            fn values(&self) -> alloc::vec::Vec<$crate::Value<'_>> {
                alloc::vec![$({ let $of = self; $value },)+]
            }
        }
    };
}

pub(crate) use columns;

impl Value<'_> {
    /// A quantity as every form gives it.
    #[must_use]
    pub fn quantity(quantity: f64) -> String {
        format!("{quantity:.3}")
    }
}

/// A table as comma-separated values, the names of the columns first; lines end with carriage return and line feed.
///
/// Lengths are exact decimals of mm; several words, counts or lengths stand with `+` between, several phrases
/// with `; `; names that a spreadsheet
/// might take for a formula begin with an apostrophe. Source: RFC 4180.
#[must_use]
pub fn csv_table<R: Tabled>(records: &[R]) -> String {
    let mut out = String::new();
    push_record(&mut out, R::COLUMNS.iter().map(|column| column.name.into()));
    for record in records {
        push_record(&mut out, record.values().into_iter().map(field));
    }
    out
}

fn field(value: Value<'_>) -> Cow<'_, str> {
    match value {
        Value::Name(name) => guarded(name),
        Value::Word(word) => word,
        Value::Words(words) => words.join("+").into(),
        Value::Phrases(phrases) => phrases.join("; ").into(),
        Value::Number(number) => number.to_string().into(),
        Value::Numbers(numbers) => joined(&numbers),
        Value::Length(length) => length.exact_mm().to_string().into(),
        Value::Lengths(lengths) => {
            let lengths: Vec<_> = lengths.iter().map(|length| length.exact_mm()).collect();
            joined(&lengths)
        }
        Value::Quantity(quantity) => Value::quantity(quantity).into(),
        Value::Flag(flag) => flag.to_string().into(),
        Value::Nothing => "".into(),
    }
}

fn joined(items: &[impl ToString]) -> Cow<'static, str> {
    let items: Vec<String> = items.iter().map(ToString::to_string).collect();
    items.join("+").into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use gablerow_core::job::Label;

    struct Sample<'a> {
        name: &'a Label,
        at: Vec<Length>,
    }

    columns! {
        Sample<'_>;
        name "what it is called" = |sample| Value::Name(sample.name.as_str());
        at_mm "where" = |sample| Value::Lengths(sample.at.clone());
        holes "which" = |_sample| Value::Numbers([3, 19].into());
        kg "how heavy" = |_sample| Value::Quantity(4.965_18);
        checks "how" = |_sample| Value::Phrases(["a b", "c"].map(String::from).into());
        handed "whether" = |_sample| Value::Flag(false);
        nothing "never" = |_sample| Value::Nothing;
    }

    #[test]
    fn every_kind_of_value_has_one_field() {
        let name = Label::new("=D1").unwrap();
        let sample = Sample {
            name: &name,
            at: [94_500, 606_500].map(Length::from_um).into(),
        };
        assert_eq!(
            csv_table(&[sample]),
            "name,at_mm,holes,kg,checks,handed,nothing\r\n'=D1,94.5+606.5,3+19,4.965,a b; c,false,\r\n"
        );
    }
}
