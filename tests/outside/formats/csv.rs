//! Tables between commas: RFC 4180.

use super::{Written, count, replaced, text};
use crate::case::{Case, Mark, Source};

static RFC_4180: Source = Source {
    author: "Y. Shafranovich",
    title: "RFC 4180, Common Format and MIME Type for CSV Files",
    year: "2005",
    clause: "section 2, definition of the format",
    mark: Mark::Origin,
};

pub(super) fn cases(written: &Written) -> Vec<Case> {
    let tables = [
        ("holes", written.run(&["holes", "job.json", "--csv"])),
        ("parts", written.run(&["parts", "job.json", "--csv"])),
        ("paper of holes", written.paper("holes", "csv", "A4")),
        ("paper of labels", written.paper("labels", "csv", "A4")),
    ];
    let mut all = Vec::new();
    for (name, table) in &tables {
        let mut clause = |words: &str, read: fn(&[u8]) -> f64, spoil: fn(&[u8]) -> Vec<u8>| {
            let name = format!("{name}: {words}");
            all.push(Case::clause(
                "CSV", name, &RFC_4180, 0.0, table, read, spoil,
            ));
        };
        clause("records that end in no CRLF", not_crlf, |file| {
            replaced(file, "\r\n", "\n")
        });
        clause(
            "records with other fields than the header",
            uneven,
            |file| text(file).replacen(",", ";", 1).into_bytes(),
        );
        clause("quotes out of place", stray_quotes, |file| {
            replaced(file, "\"\"", "\"")
        });
    }
    all
}

/// What a field was found to be.
#[derive(Default)]
struct Found {
    /// How many fields each record has.
    fields: Vec<usize>,
    /// How many records end otherwise than in CRLF.
    not_crlf: u32,
    /// How many quotes stand in a field that is not quoted, or behind the end of one that is.
    stray: u32,
}

/// Reads records sign by sign, as the grammar of the RFC has them.
fn read(file: &[u8]) -> Found {
    let mut found = Found::default();
    let mut signs = text(file).chars().peekable();
    let mut fields = 1;
    let (mut is_quoted, mut is_start) = (false, true);
    while let Some(sign) = signs.next() {
        match sign {
            '"' if is_start => is_quoted = true,
            // A quote within quotes is written twice; one alone ends the field.
            '"' if is_quoted && signs.next_if_eq(&'"').is_none() => {
                is_quoted = false;
                let ends = |next: &char| matches!(next, ',' | '\r' | '\n');
                found.stray += u32::from(!signs.peek().is_none_or(ends));
            }
            '"' if !is_quoted => found.stray += 1,
            ',' if !is_quoted => fields += 1,
            '\r' | '\n' if !is_quoted => {
                let is_crlf = sign == '\r' && signs.next_if_eq(&'\n').is_some();
                found.not_crlf += u32::from(!is_crlf);
                found.fields.push(std::mem::replace(&mut fields, 1));
            }
            _ => {}
        }
        is_start = !is_quoted && matches!(sign, ',' | '\r' | '\n');
    }
    // The last record may be without an end.
    if !is_start {
        found.fields.push(fields);
    }
    found
}

fn not_crlf(file: &[u8]) -> f64 {
    read(file).not_crlf.into()
}

fn uneven(file: &[u8]) -> f64 {
    let fields = read(file).fields;
    count(fields.iter().filter(|record| **record != fields[0]))
}

fn stray_quotes(file: &[u8]) -> f64 {
    read(file).stray.into()
}
