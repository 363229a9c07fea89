//! Records of comma-separated values. Source: RFC 4180.

use alloc::borrow::Cow;
use alloc::format;
use alloc::string::String;

/// Adds one record: fields between commas, carriage return and line feed after the last.
pub(crate) fn push_record<'a>(out: &mut String, fields: impl Iterator<Item = Cow<'a, str>>) {
    for (at, field) in fields.enumerate() {
        if at > 0 {
            out.push(',');
        }
        if field.contains(['"', ',', '\r', '\n']) {
            out.push('"');
            out.push_str(&field.replace('"', "\"\""));
            out.push('"');
        } else {
            out.push_str(&field);
        }
    }
    out.push_str("\r\n");
}

/// A text that no spreadsheet takes for a formula: one that might be begins with an apostrophe.
///
/// A formula begins with `=`, `+`, `-` or `@`, a tab or a carriage return; some programs pass over blanks and quotes before
/// it, and take the full-width forms too. Source: CWE-1236.
///
/// # Example
/// `=1+1` becomes `'=1+1`; `G2` stays.
pub(crate) fn guarded(text: &str) -> Cow<'_, str> {
    let passed_over =
        |c: char| c == '"' || c == '\'' || (c.is_whitespace() && c != '\t' && c != '\r');
    let start = text.trim_start_matches(passed_over).chars().next();
    let formula = |c| {
        matches!(
            c,
            '=' | '+' | '-' | '@' | '\t' | '\r' | '＝' | '＋' | '－' | '＠'
        )
    };
    match start.is_some_and(formula) {
        true => Cow::Owned(format!("'{text}")),
        false => Cow::Borrowed(text),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_might_be_a_formula_begins_with_an_apostrophe() {
        for text in [
            "=1+1",
            "+1",
            "-1",
            "@sum",
            "\t=1",
            "\r=1",
            " =1",
            "\"=1",
            "'=1",
            "＝1",
            "\u{a0}－1",
        ] {
            assert_eq!(guarded(text), format!("'{text}"), "{text:?}");
        }
        for text in ["", "G2", "G-2", "2 = 3", "'tall'"] {
            assert_eq!(guarded(text), text, "{text:?}");
        }
    }

    #[test]
    fn fields_with_commas_quotes_and_breaks_are_quoted() {
        let mut out = String::new();
        push_record(
            &mut out,
            ["a,b", "say \"4\"", "two\nlines", "plain", ""]
                .map(Cow::from)
                .into_iter(),
        );
        assert_eq!(out, "\"a,b\",\"say \"\"4\"\"\",\"two\nlines\",plain,\r\n");
    }

    proptest! {
        #[test]
        fn every_record_reads_back(rows in proptest::collection::vec(proptest::collection::vec("[a\",\r\n =é]{0,6}", 2), 1..5)) {
            let mut out = String::new();
            for row in &rows {
                push_record(&mut out, row.iter().map(|field| Cow::from(field.as_str())));
            }
            let mut reader = ::csv::ReaderBuilder::new().has_headers(false).from_reader(out.as_bytes());
            let read: Vec<Vec<String>> = reader.records().map(|record| record.unwrap().iter().map(Into::into).collect()).collect();
            prop_assert_eq!(read, rows);
        }
    }
}
