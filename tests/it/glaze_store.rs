//! The glaze store's base cabinet comes out of the program with every figure of its sheet.
//!
//! Common practice and geometry: base 1000 x 704 x 560 of board measured 18.2, a door with two shelves on the left, three drawers
//! on the right; reveals 1.5, gap 3, arm 13, runner line 10, back in a groove 20 from the back edge.

use std::collections::BTreeMap;
use std::process::Command;

use gablerow::job_file;
use serde_json::{Value, json};

use crate::key_script::golden;

const FILE: &str = "tests/jobs/glaze_store_sheet.json";

fn path() -> String {
    format!("{}/../../{FILE}", env!("CARGO_MANIFEST_DIR"))
}

fn printed(words: &[&str]) -> Vec<u8> {
    let output = Command::new(env!("CARGO_BIN_EXE_gablerow"))
        .args(words)
        .output()
        .unwrap();
    assert!(output.status.success());
    output.stdout
}

fn records(command: &str) -> Vec<Value> {
    serde_json::from_slice(&printed(&[command, &path(), "--json"])).unwrap()
}

#[track_caller]
fn says(record: &Value, expected: &Value) {
    for (key, value) in expected.as_object().unwrap() {
        assert_eq!(&record[key], value, "{key} of {record:#}");
    }
}

#[test]
fn its_job_file_is_as_the_program_writes_it() {
    let job = job_file::read(&std::fs::read(path()).unwrap()).unwrap();
    let written = job_file::write(&job);
    assert_eq!(written, golden(FILE, &written));
}

#[test]
fn doors_boxes_and_shelves_are_those_of_the_sheet() {
    let parts = records("parts");
    let of =
        |kind: &str| -> Vec<&Value> { parts.iter().filter(|part| part["kind"] == kind).collect() };
    let fronts = of("front");
    says(
        fronts[0],
        &json!({
            "width_mm": 497, "length_mm": 701, "cut_width_mm": 495, "cut_length_mm": 699,
            "holes": [3, 19], "hinges_asked": 2, "arm": "full", "plate_mm": 0, "tab_mm": 3.5, "residual_mm": -0.2,
            "cups_mm_from_foot": [94.5, 606.5], "cups_mm_from_head": [606.5, 94.5], "cups_mm_from_edge": 21, "handed": false,
        }),
    );
    let heights: Vec<&Value> = fronts[1..].iter().map(|it| &it["length_mm"]).collect();
    assert_eq!(heights, [&json!(253), &json!(221), &json!(221)]);
    for (made, (height, hole)) in of("box").iter().zip([(224, 2), (192, 10), (152, 17)]) {
        says(
            made,
            &json!({"width_mm": 460.7, "inside_mm": 430.7, "length_mm": 490, "height_mm": height, "rise_mm": 36.5, "holes": [hole]}),
        );
    }
    for (shelf, (below, above)) in of("shelf").iter().zip([(320.3, 141.8), (141.8, 169.1)]) {
        says(
            shelf,
            &json!({"length_mm": 470.7, "width_mm": 526, "cut_width_mm": 525, "clear_below_mm": below, "clear_above_mm": above}),
        );
    }
    let partition = parts.iter().find(|part| part["part"] == "partition 1");
    says(
        partition.unwrap(),
        &json!({"length_mm": 667.6, "width_mm": 540}),
    );
}

#[test]
fn holes_are_those_of_the_sheet() {
    let holes = records("holes");
    assert_eq!(holes.len(), 46);
    let mut faces: BTreeMap<(String, String), usize> = BTreeMap::new();
    for hole in &holes {
        let words = ["panel", "face"].map(|key| hole[key].as_str().unwrap().to_owned());
        let [panel, face] = words;
        *faces.entry((panel, face)).or_default() += 1;
    }
    let counts: Vec<usize> = faces.into_values().collect();
    assert_eq!(
        counts,
        [16, 12, 9, 9],
        "left side, both faces of the partition, right side"
    );
    let on = |panel: &str, number: u16| {
        let mut own = holes
            .iter()
            .filter(|hole| hole["panel"] == panel && hole["hole"] == number);
        own.next().unwrap()["mm_from_foot"].clone()
    };
    assert_eq!(on("left side", 3), json!(80));
    assert_eq!(on("partition 1", 11), json!(317.8));
    assert_eq!(on("partition 1", 2), json!(29.8));
    let setbacks = |use_: &str| {
        let own = holes.iter().filter(|hole| {
            hole["panel"] == "right side" && hole["uses"].as_array().unwrap().contains(&json!(use_))
        });
        let mut found: Vec<String> = own.map(|hole| hole["mm_from_front"].to_string()).collect();
        found.sort();
        found.dedup();
        found
    };
    assert_eq!(setbacks("runner"), ["261", "37", "453"]);
}

#[test]
fn bench_sheet_is_as_printed() {
    let sheet = String::from_utf8(printed(&["bench", &path()])).unwrap();
    assert_eq!(sheet, golden("tests/screens/glaze_store_bench.txt", &sheet));
    assert!(sheet.lines().all(|line| line.chars().count() <= 80));
}

#[test]
fn set_ups_are_those_of_the_sheet() {
    let set_ups = records("bench");
    let holes: i64 = set_ups.iter().map(|it| it["count"].as_i64().unwrap()).sum();
    assert_eq!((set_ups.len(), holes), (10, 46));
    let left = set_ups
        .iter()
        .find(|it| it["panel"] == "left side" && it["setting_mm"] == 37);
    says(
        left.unwrap(),
        &json!({
            "bit": "flat", "diameter_mm": 5, "through": false, "depth_mm": 12, "from_edge": "front", "reference_end": "foot",
            "packer": false, "stop_mm": 16, "face": "inside", "edge_toward_you": "front", "foot_to_your": "right",
            "holes": [3, 4, 11, 12, 13, 14, 15, 16, 19, 20], "count": 10,
        }),
    );
    let packed = set_ups.iter().filter(|it| it["packer"] == true);
    assert!(packed.clone().all(|it| it["panel"] == "partition 1"));
    assert_eq!(packed.count(), 5);
}
