//! Every job file there is, against the schema by a validator that is not ours.

use std::fs;
use std::path::PathBuf;

use gablerow::job_file;
use gablerow_core::job::{Job, Label};
use jsonschema::Validator;
use serde_json::{Value, json};

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn parsed(path: PathBuf) -> Value {
    serde_json::from_slice(&fs::read(path).unwrap()).unwrap()
}

fn schema() -> Validator {
    jsonschema::validator_for(&parsed(root().join("assets/job.schema.json"))).unwrap()
}

/// Every job file of the project, by its name.
fn job_files() -> Vec<(String, Value)> {
    let jobs = fs::read_dir(root().join("tests/jobs")).unwrap();
    let mut paths: Vec<PathBuf> = jobs.map(|entry| entry.unwrap().path()).collect();
    paths.push(root().join("assets/demo.json"));
    paths.sort();
    paths
        .into_iter()
        .map(|path| (path.display().to_string(), parsed(path)))
        .collect()
}

#[track_caller]
fn valid(schema: &Validator, name: &str, job: &Value) {
    let wrong: Vec<String> = schema
        .iter_errors(job)
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect();
    assert!(wrong.is_empty(), "{name}:\n{}", wrong.join("\n"));
}

#[test]
fn the_schema_is_one_by_its_own_draft() {
    let schema = parsed(root().join("assets/job.schema.json"));
    assert!(jsonschema::meta::is_valid(&schema));
}

#[test]
fn every_job_file_is_as_the_schema_says() {
    let schema = schema();
    let files = job_files();
    assert!(files.len() > 5);
    for (name, job) in &files {
        valid(&schema, name, job);
    }
}

#[test]
fn what_the_program_writes_is_as_the_schema_says() {
    let job = Job::plain(Label::new("glaze store").unwrap());
    let written = serde_json::from_str(&job_file::write(&job)).unwrap();
    valid(&schema(), "a new job", &written);
}

/// Wrong in ways that both the validator and the program refuse: a path into the file, and what stands there instead.
fn faults() -> Vec<(&'static str, Value)> {
    vec![
        ("/format", json!("some other file")),
        ("/version", json!("one")),
        ("/title", json!(7)),
        ("/shop/back_rule", json!("by eye")),
        ("/shop/limits", json!([8, 10])),
        ("/cards/boards/0/thickness", json!("18")),
        ("/cabinets", json!({})),
        ("/cabinets/0/size/height", json!("tall")),
        ("/cabinets/0/opening/key", json!(-1)),
    ]
}

#[test]
fn validator_and_program_refuse_the_same_files() {
    let schema = schema();
    for (name, job) in job_files() {
        for (place, wrong) in faults() {
            let mut broken = job.clone();
            *broken
                .pointer_mut(place)
                .unwrap_or_else(|| panic!("{name} has no {place}")) = wrong;
            assert!(
                !schema.is_valid(&broken),
                "the validator takes {name} with {place} wrong"
            );
            let read = job_file::read(broken.to_string().as_bytes());
            assert!(read.is_err(), "the program takes {name} with {place} wrong");
        }
        let mut more = job.clone();
        more["cabinets"][0]["colour"] = json!("blue");
        assert_eq!(
            schema.is_valid(&more),
            job_file::read(more.to_string().as_bytes()).is_ok(),
            "an unknown field in {name}"
        );
    }
}
