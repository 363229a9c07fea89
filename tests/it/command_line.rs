//! The built program without a screen: what it prints, how it ends.

mod bench;
mod checked;
mod holes;
mod papers;
mod parts;
mod refused;
mod shown;
mod sources;
mod written;

use std::fs;
use std::process::{Command, Output, Stdio};

use gablerow::{demo, job_file};
use gablerow_core::check;
use gablerow_core::job::{Acceptance, Copy, Division, HolePlace, Job, Label};
use gablerow_core::measure::Length;
use serde_json::Value;
use tempfile::TempDir;

/// The program in a folder of its own and an environment of its own.
struct Shop {
    folder: TempDir,
}

struct Said {
    code: Option<i32>,
    out: String,
    err: String,
}

impl Shop {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        Self { folder }
    }

    /// A shop with this job in `store.json`.
    fn with(job: &Job) -> Self {
        let shop = Self::new();
        shop.put("store.json", &job_file::write(job));
        shop
    }

    fn put(&self, name: &str, text: &str) {
        fs::write(self.folder.path().join(name), text).unwrap();
    }

    fn command(&self, words: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_gablerow"));
        command
            .args(words)
            .current_dir(self.folder.path())
            .env_clear()
            .stdin(Stdio::null());
        // Without it the program would leave its coverage nowhere.
        if let Some(profile) = std::env::var_os("LLVM_PROFILE_FILE") {
            command.env("LLVM_PROFILE_FILE", profile);
        }
        command
    }

    fn run(&self, words: &[&str]) -> Said {
        said(self.command(words).output().unwrap())
    }

    fn json(&self, words: &[&str]) -> Vec<Value> {
        let said = self.run(words);
        serde_json::from_str(&said.out).unwrap_or_else(|wrong| panic!("{wrong}: {}", said.out))
    }
}

fn said(output: Output) -> Said {
    Said {
        code: output.status.code(),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

/// The demo's first cabinet alone, which has no open stop, with a second copy of it mirrored.
fn without_stops() -> Job {
    let mut job = demo::job().unwrap();
    job.cabinets.truncate(1);
    job.left_at = None;
    let key = job.cabinets[0].free_key();
    job.cabinets[0].copies.push(Copy {
        key,
        name: Label::new("2").unwrap(),
        mirrored: true,
        as_cut: Vec::new(),
    });
    job
}

/// The same with its shelf zone drawn out down to the lower hinge plate.
fn with_stops() -> Job {
    let mut job = without_stops();
    if let Division::Bay(bay) = &mut job.cabinets[0].opening.division {
        bay.zones[0].first = HolePlace::foot(3);
    }
    job
}

/// The same, its stops overruled.
fn overruled() -> Job {
    let mut job = with_stops();
    let found = check::of_job(&job);
    let stops = found.iter().filter(|finding| finding.is_open_stop());
    job.cabinets[0].accepted = stops
        .map(|finding| Acceptance {
            rule: finding.rule_name().to_owned(),
            message: finding.in_mm.clone(),
            reason: Label::new("Ann bores the two by hand").unwrap(),
        })
        .collect();
    job
}

/// A JSON number of mm as a length, digit by digit, so that no float comes between.
fn mm(value: &Value) -> Length {
    let text = value.to_string();
    let (whole, decimals) = text.split_once('.').unwrap_or((&text, "0"));
    let um = format!("{whole}{decimals:0<3}").parse().unwrap();
    Length::from_um(um)
}

/// Holds the two tables of a command about `store.json` against each other, field by field.
fn csv_says_what_json_says(shop: &Shop, command: &str) {
    let records = shop.json(&[command, "store.json", "--json"]);
    let csv = shop.run(&[command, "store.json", "--csv"]).out;
    assert_eq!(csv.matches('\n').count(), csv.matches("\r\n").count());
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let names: Vec<String> = reader
        .headers()
        .unwrap()
        .iter()
        .map(str::to_owned)
        .collect();
    let rows: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), records.len());
    for (row, record) in rows.iter().zip(&records) {
        assert_eq!(row.len(), record.as_object().unwrap().len());
        for (name, field) in names.iter().zip(row) {
            assert!(
                same(field, &record[name]),
                "{name}: {field} {}",
                record[name]
            );
        }
    }
}

/// Whether a field of a CSV record says what a JSON value does.
fn same(field: &str, value: &Value) -> bool {
    match value {
        Value::String(text) => field == text,
        Value::Number(_) => field.parse::<f64>().ok() == value.as_f64(),
        Value::Array(several) if several.is_empty() => field.is_empty(),
        Value::Array(several) => {
            let fields: Vec<&str> = field.split('+').collect();
            fields.len() == several.len()
                && fields
                    .iter()
                    .zip(several)
                    .all(|(field, value)| same(field, value))
        }
        Value::Bool(flag) => field == flag.to_string(),
        Value::Null => field.is_empty(),
        Value::Object(_) => false,
    }
}
