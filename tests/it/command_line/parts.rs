//! The part table in all its forms.

use gablerow::demo;
use gablerow_core::job::{FrontKind, Job, Label};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use gablerow_core::parts::Parts;
use serde_json::{Value, json};

use super::{Shop, csv_says_what_json_says, mm, without_stops};

/// The records of a kind of part of a cabinet of the demo.
fn of_demo(cabinet: &str, kind: &str) -> Vec<Value> {
    let mut records = Shop::new().json(&["parts", "--json"]);
    records.retain(|record| record["cabinet"] == cabinet && record["kind"] == kind);
    records
}

fn column(records: &[Value], key: &str) -> Vec<Value> {
    records.iter().map(|record| record[key].clone()).collect()
}

// Geometry: 704 is 22 modules: 253 + 221 + 221 and two gaps and reveals of 3; holes 48, 304, 528 less line 12;
// 292 - 25 - 36 = 231, 199, 704 - 18.2 - 10 - 516 = 159.8 in steps of 8; 450 - 36.4 - 42 = 371.6 inside.
#[test]
fn three_drawers_of_the_demo_have_their_boxes() {
    let fronts = of_demo("G2", "front");
    assert_eq!(
        column(&fronts, "length_mm"),
        [json!(253), json!(221), json!(221)]
    );
    assert_eq!(
        column(&fronts, "cut_width_mm"),
        [json!(445), json!(445), json!(445)]
    );
    let boxes = of_demo("G2", "box");
    assert_eq!(
        column(&boxes, "rise_mm"),
        [json!(34.5), json!(34.5), json!(34.5)]
    );
    assert_eq!(
        column(&boxes, "height_most_mm"),
        [json!(231), json!(199), json!(159.8)]
    );
    assert_eq!(
        column(&boxes, "height_mm"),
        [json!(224), json!(192), json!(152)]
    );
    assert_eq!(boxes[0]["inside_mm"], 371.6);
    assert_eq!(
        (&boxes[0]["width_mm"], &boxes[0]["length_mm"]),
        (&json!(401.6), &json!(490))
    );
    let pieces = of_demo("G2", "box part");
    assert_eq!(pieces.len(), 9);
    assert_eq!(
        (
            &pieces[2]["part"],
            &pieces[2]["width_mm"],
            &pieces[2]["length_mm"]
        ),
        (&json!("bottom"), &json!(386.6), &json!(475))
    );
}

// Geometry: door 600 - 3 by 704 - 3; plates at 96 and 608, so cups 94.5 from either end; 0.597 * 0.701 * 0.019 * 750.
// Wanted 18.2 - 1.5 = 16.7; arm 15, tab 3.5, plate 2 is 16.5; cup centre 17.5 + 3.5.
#[test]
fn door_of_the_demo_has_its_cups() {
    let door = &of_demo("G1", "front")[0];
    for (key, value) in [
        ("name", json!("door 1")),
        ("part", json!("door, hung left")),
        ("card", json!("hinge-plain")),
        ("width_mm", json!(597)),
        ("length_mm", json!(701)),
        ("cut_width_mm", json!(595)),
        ("cut_length_mm", json!(699)),
        ("banded", json!(["left", "right", "foot", "head"])),
        ("mass_kg", json!(5.964)),
        ("holes", json!([3, 19])),
        ("hinges_asked", json!(2)),
        ("arm", json!("full")),
        ("tab_mm", json!(3.5)),
        ("plate_mm", json!(2)),
        ("residual_mm", json!(-0.2)),
        ("cups_mm_from_foot", json!([94.5, 606.5])),
        ("cups_mm_from_head", json!([606.5, 94.5])),
        ("cups_mm_from_edge", json!(21)),
        ("handed", json!(false)),
        ("inside_mm", Value::Null),
    ] {
        assert_eq!(door[key], value, "{key}");
    }
    let handed = &of_demo("G3", "front")[0];
    assert_eq!(handed["handed"], true);
    assert_eq!(handed["hinges_asked"], 3);
}

#[test]
fn parts_as_json_are_those_of_the_cabinets() {
    let job = without_stops();
    let records = Shop::with(&job).json(&["parts", "store.json", "--json"]);
    let cabinet = &job.cabinets[0];
    let parts = Parts::of(cabinet, &Layout::of(cabinet, &job), &job);
    let panels: Vec<&Value> = records
        .iter()
        .filter(|record| record["kind"] == "panel")
        .collect();
    // The back has no board, so it is no piece.
    assert_eq!(panels.len(), parts.panels.len() + 1);
    for (record, panel) in panels.iter().zip(&parts.panels) {
        assert_eq!(record["part"], panel.name.to_string());
        assert_eq!(mm(&record["length_mm"]), panel.piece.length.total());
        assert_eq!(mm(&record["cut_width_mm"]), panel.piece.cut_width.total());
        assert_eq!(
            (&record["count"], &record["mirrored"]),
            (&json!(2), &json!(1))
        );
    }
    let bag: Vec<&Value> = records
        .iter()
        .filter(|record| record["kind"] == "hardware")
        .collect();
    assert_eq!(bag.len(), parts.bag.len());
    for (record, line) in bag.iter().zip(&parts.bag) {
        assert_eq!(record["part"], line.kind.words());
        assert_eq!(
            (&record["count"], &record["take"]),
            (&json!(line.count), &json!(line.take))
        );
    }
}

/// The demo with a name that needs quotes, a name like a formula, a drawer without runners, and a load on a shelf.
fn odd() -> Job {
    let mut job = demo::job().unwrap();
    job.cabinets[0].name = Label::new("shelf, \"tall\"").unwrap();
    job.cabinets[0].opening.each_bay_mut(&mut |bay| {
        bay.shelves
            .iter_mut()
            .for_each(|shelf| shelf.load_grams = Some(25_000));
    });
    job.cabinets[2].opening.fronts[0].kind = FrontKind::Drawer;
    job.cabinets[1].size.width = Length::from_inch_64ths(17 * 64 + 1);
    job
}

#[test]
fn csv_and_json_say_the_same() {
    let shop = Shop::with(&odd());
    csv_says_what_json_says(&shop, "parts");
    let records = shop.json(&["parts", "store.json", "--json"]);
    let missing: Vec<&Value> = records
        .iter()
        .filter(|record| record["kind"] == "missing")
        .collect();
    assert_eq!(missing.len(), 1);
    assert_eq!(
        (&missing[0]["part"], &missing[0]["name"]),
        (&json!("drawer without runners"), &json!("door 1"))
    );
}

#[test]
fn a_front_named_like_a_formula_is_none() {
    let mut job = demo::job().unwrap();
    job.cabinets[0].opening.fronts[0].name = Label::new("=1+1").unwrap();
    let csv = Shop::with(&job).run(&["parts", "store.json", "--csv"]).out;
    assert!(csv.contains(",front,'=1+1,\"door, hung left\","), "{csv}");
}

#[test]
fn parts_to_be_read_are_80_columns_wide_at_most() {
    let said = Shop::with(&odd()).run(&["parts", "store.json"]);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""));
    assert!(
        said.out.lines().all(|line| line.chars().count() <= 80),
        "{}",
        said.out
    );
    for section in ["PANELS", "FRONTS", "BOXES", "SHELVES", "BAG", "MISSING"] {
        assert!(said.out.contains(&format!("\n  {section}")), "{section}");
    }
}

#[test]
fn without_a_name_it_is_the_demo() {
    let said = Shop::new().run(&["parts"]);
    assert_eq!(said.code, Some(0));
    assert_eq!(
        said.out
            .lines()
            .filter(|line| line.starts_with('G'))
            .count(),
        3
    );
    assert_eq!(Shop::new().run(&["parts", "gone.json"]).code, Some(2));
    assert_eq!(Shop::new().run(&["parts", "--json", "--csv"]).code, Some(2));
}
