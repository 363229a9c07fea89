//! CSV and JSON as the program prints them, read by other readers.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

use serde_json::Value;

const JOBS: [&str; 3] = [
    "three_bays.json",
    "glaze_store_sheet.json",
    "mirrored_copy.json",
];

fn said(words: [&str; 2], job: &str) -> Vec<u8> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../tests/jobs")
        .join(job);
    let mut command = Command::new(env!("CARGO_BIN_EXE_gablerow"));
    let said = command
        .arg(words[0])
        .arg(path)
        .arg(words[1])
        .output()
        .unwrap();
    assert!(
        said.status.success(),
        "{}",
        String::from_utf8_lossy(&said.stderr)
    );
    said.stdout
}

/// A value of a JSON record as it stands in a field of comma-separated values, lists with `+` between.
fn field(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => text.clone(),
        Value::Array(values) => values.iter().map(field).collect::<Vec<_>>().join("+"),
        other => other.to_string(),
    }
}

/// Numbers that are the same may be written in two ways: 37 and 37.0.
fn same(one: &str, other: &str) -> bool {
    let numbers = (one.parse::<f64>(), other.parse::<f64>());
    one == other || matches!(numbers, (Ok(one), Ok(other)) if one == other)
}

// Source: RFC 4180, Y. Shafranovich, Common Format and MIME Type for CSV Files, 2005, 2; RFC 8259, T. Bray, The JavaScript
// Object Notation (JSON) Data Interchange Format, 2017, whose clauses were not read again.
#[test]
fn both_forms_of_a_table_say_the_same_to_other_readers() {
    for (command, job) in ["holes", "parts"]
        .into_iter()
        .flat_map(|command| JOBS.map(|job| (command, job)))
    {
        let json: Vec<serde_json::Map<String, Value>> =
            serde_json::from_slice(&said([command, "--json"], job)).unwrap();
        let text = said([command, "--csv"], job);
        let mut reader = csv::ReaderBuilder::new()
            .flexible(false)
            .from_reader(text.as_slice());
        let head: Vec<String> = reader
            .headers()
            .unwrap()
            .iter()
            .map(str::to_owned)
            .collect();
        let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
        assert_eq!(rows.len(), json.len(), "{command} {job}");
        assert!(!rows.is_empty(), "{command} {job}");
        for (row, record) in rows.iter().zip(&json) {
            let keys: BTreeSet<&str> = record.keys().map(String::as_str).collect();
            assert_eq!(keys, head.iter().map(String::as_str).collect());
            for (name, found) in head.iter().zip(row) {
                assert!(
                    same(found, &field(&record[name])),
                    "{command} {job} {name}: {found} and {}",
                    record[name]
                );
            }
        }
    }
}

#[test]
fn lines_of_a_table_end_as_the_standard_has_it() {
    for command in ["holes", "parts"] {
        let text = String::from_utf8(said([command, "--csv"], JOBS[0])).unwrap();
        assert!(text.ends_with("\r\n"));
        assert_eq!(text.matches('\n').count(), text.matches("\r\n").count());
        assert!(!text.starts_with('\u{feff}'));
    }
}
