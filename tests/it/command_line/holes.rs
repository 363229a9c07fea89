//! The hole table in all its forms.

use gablerow::demo;
use gablerow_core::job::Label;
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use serde_json::Value;

use super::{Shop, csv_says_what_json_says, mm, overruled, with_stops, without_stops};

#[test]
fn holes_as_json_are_those_of_the_layout_for_every_copy() {
    let job = without_stops();
    let shop = Shop::with(&job);
    let records = shop.json(&["holes", "store.json", "--json"]);
    let mut at = records.iter();
    for copy in &job.cabinets[0].copies {
        let cabinet = if copy.mirrored {
            job.cabinets[0].mirrored()
        } else {
            job.cabinets[0].clone()
        };
        let layout = Layout::of(&cabinet, &job);
        for upright in &layout.uprights {
            for face in &upright.faces {
                for hole in face.holes(&layout) {
                    let record = at.next().unwrap();
                    assert_eq!(
                        (&record["cabinet"], &record["copy"]),
                        (&"G1".into(), &copy.name.as_str().into())
                    );
                    assert_eq!(
                        record["panel"],
                        layout.names.panel(face.id.panel).to_string()
                    );
                    assert_eq!(record["face"], face.id.word());
                    assert_eq!(record["row"], hole.row.unwrap().word());
                    assert_eq!(record["hole"], hole.number.unwrap());
                    assert_eq!(mm(&record["mm_from_front"]), hole.x - upright.front.total());
                    assert_eq!(
                        mm(&record["mm_from_front"]) + mm(&record["mm_from_back"]),
                        upright.depth()
                    );
                    assert_eq!(mm(&record["mm_from_foot"]), hole.z - upright.foot.total());
                    assert_eq!(
                        mm(&record["mm_from_foot"]) + mm(&record["mm_from_head"]),
                        upright.length()
                    );
                    assert_eq!(mm(&record["diameter_mm"]), hole.diameter);
                    assert_eq!(mm(&record["depth_mm"]), hole.depth.unwrap());
                    assert_eq!(
                        record["uses"],
                        Value::from(vec![hole.only_use().unwrap().word()])
                    );
                }
            }
        }
    }
    assert_eq!(at.next(), None);
    // The hinge side of the mirrored copy is the other one.
    let plates = |copy: &str| -> Vec<&str> {
        let of = records
            .iter()
            .filter(|record| record["copy"] == copy && record["uses"][0] == "plate");
        of.map(|record| record["panel"].as_str().unwrap()).collect()
    };
    assert_eq!(plates("1"), ["left side"; 4]);
    assert_eq!(plates("2"), ["right side"; 4]);
}

#[test]
fn holes_are_one_record_on_a_line_with_exact_numbers_in_fixed_order() {
    let mut job = without_stops();
    job.cabinets[0].size.depth = Length::from_inch_64ths(22 * 64 + 1);
    let out = Shop::with(&job).run(&["holes", "store.json", "--json"]).out;
    let lines: Vec<&str> = out.lines().collect();
    assert_eq!((lines[0], lines[lines.len() - 1]), ("[", "]"));
    // 22 1/64 in is 559.196875 mm; less 37 it is 522.196875.
    assert_eq!(
        lines[1],
        "{\"cabinet\":\"G1\",\"copy\":\"1\",\"panel\":\"left side\",\"face\":\"inside\",\"row\":\"front\",\
         \"mm_from_front\":37,\"mm_from_back\":522.196875,\"hole\":3,\"mm_from_foot\":80,\"mm_from_head\":624,\
         \"diameter_mm\":5,\"depth_mm\":12,\"uses\":[\"plate\"]},"
    );
}

#[test]
fn csv_and_json_say_the_same() {
    let mut job = without_stops();
    job.cabinets[0].name = Label::new("shelf, \"tall\"").unwrap();
    csv_says_what_json_says(&Shop::with(&job), "holes");
}

#[test]
fn holes_of_a_cabinet_with_an_open_stop_are_held_back() {
    let mut job = demo::job().unwrap();
    job.cabinets.truncate(2);
    job.cabinets[0] = with_stops().cabinets[0].clone();
    let second = job.cabinets[1].name.to_string();
    let shop = Shop::with(&job);
    let said = shop.run(&["holes", "store.json", "--json"]);
    assert_eq!(said.code, Some(1));
    assert!(
        said.err.starts_with("held back: G1, ") && said.err.contains("plate-on-pin-hole"),
        "{}",
        said.err
    );
    let records = shop.json(&["holes", "store.json", "--json"]);
    assert!(
        !records.is_empty()
            && records
                .iter()
                .all(|record| record["cabinet"] == second.as_str())
    );
    let text = shop.run(&["holes", "store.json"]);
    assert_eq!(text.code, Some(1));
    assert!(
        !text.out.contains("G1, ") && text.out.contains(&second),
        "{}",
        text.out
    );
}

#[test]
fn what_overrules_a_stop_is_said_with_its_holes() {
    let shop = Shop::with(&overruled());
    let text = shop.run(&["holes", "store.json"]);
    assert_eq!((text.code, text.err.as_str()), (Some(0), ""));
    assert!(
        text.out.starts_with("G1, overruled stops:\n"),
        "{}",
        text.out
    );
    assert!(
        text.out
            .contains("overruled: Ann bores the two by hand\n\nG1, copy 1, "),
        "{}",
        text.out
    );
    let csv = shop.run(&["holes", "store.json", "--csv"]);
    assert_eq!(csv.code, Some(0));
    assert!(
        csv.err
            .starts_with("overruled: G1, plate-on-pin-hole: Ann bores"),
        "{}",
        csv.err
    );
}

#[test]
fn the_demo_has_holes_when_no_job_is_named() {
    let said = Shop::new().run(&["holes"]);
    // One of its cabinets shows what a stop looks like.
    assert_eq!(said.code, Some(1));
    assert!(
        said.out.starts_with("G1, copy 1, ") && said.err.starts_with("held back: G3, "),
        "{}",
        said.err
    );
}
