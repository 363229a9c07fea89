//! Findings, and the exit code a script goes by.

use gablerow::demo;
use gablerow_core::check::{self, Level, RULES};
use gablerow_core::job::{Acceptance, Label};
use gablerow_core::mend;
use serde_json::Value;

use super::{Shop, with_stops, without_stops};

#[test]
fn check_ends_with_1_while_a_stop_is_open() {
    let free = Shop::with(&without_stops()).run(&["check", "store.json"]);
    assert_eq!(
        (free.code, free.err.as_str()),
        (Some(0), ""),
        "{}",
        free.out
    );
    let held = Shop::with(&with_stops()).run(&["check", "store.json"]);
    assert_eq!(
        (held.code, held.err.as_str()),
        (Some(1), ""),
        "{}",
        held.out
    );
    assert!(
        held.out.starts_with("STOP\n  G1, left side, inside\n  - "),
        "{}",
        held.out
    );
    assert!(held.out.contains("[plate-on-pin-hole]"), "{}", held.out);
}

#[test]
fn check_as_json_says_what_the_checks_say() {
    let job = with_stops();
    let shop = Shop::with(&job);
    assert_eq!(shop.run(&["check", "store.json", "--json"]).code, Some(1));
    let records = shop.json(&["check", "store.json", "--json"]);
    let findings = check::of_job(&job);
    assert_eq!(records.len(), findings.len());
    let fields = [
        "rule", "level", "cabinet", "panel", "face", "holes", "message", "fix", "accepted",
    ];
    for (record, finding) in records.iter().zip(&findings) {
        let mut names: Vec<_> = record
            .as_object()
            .unwrap()
            .keys()
            .map(String::as_str)
            .collect();
        let mut wanted = fields;
        names.sort_unstable();
        wanted.sort_unstable();
        assert_eq!(names, wanted);
        assert_eq!(record["rule"], finding.rule_name());
        assert_eq!(record["level"], finding.level.word());
        assert_eq!(record["cabinet"], "G1");
        assert_eq!(record["message"], finding.message.as_str());
        let fixes = mend::fixes(&job, finding);
        let fix = fixes.first().map(|fix| fix.title.as_str());
        assert_eq!(record["fix"].as_str(), fix);
        assert_eq!(record["accepted"], Value::Null);
        let (first, last) = finding.place.holes.map_or((1, 0), |holes| holes);
        assert_eq!(
            record["holes"],
            Value::from((first..=last).collect::<Vec<i16>>())
        );
    }
    let stop = records
        .iter()
        .find(|record| record["rule"] == "plate-on-pin-hole")
        .unwrap();
    assert_eq!(
        (&stop["panel"], &stop["face"], &stop["level"]),
        (&"left side".into(), &"inside".into(), &"stop".into())
    );
}

#[test]
fn an_accepted_stop_is_not_open() {
    let mut job = with_stops();
    let findings = check::of_job(&job);
    job.cabinets[0].accepted = findings
        .iter()
        .map(|finding| Acceptance {
            rule: finding.rule_name().to_owned(),
            message: finding.message.clone(),
            reason: Label::new("bored by hand").unwrap(),
        })
        .collect();
    let shop = Shop::with(&job);
    assert_eq!(shop.run(&["check", "store.json"]).code, Some(0));
    let records = shop.json(&["check", "store.json", "--json"]);
    assert_eq!(records.len(), findings.len());
    assert!(
        records
            .iter()
            .all(|record| record["accepted"] == "bored by hand" && record["fix"].is_null())
    );
}

#[test]
fn the_demo_is_checked_when_no_job_is_named_level_by_level_and_then_by_cabinet() {
    let shop = Shop::new();
    let records = shop.json(&["check", "--json"]);
    let job = demo::job().unwrap();
    let place = |record: &Value| {
        let level = Level::ALL
            .iter()
            .position(|level| record["level"] == level.word());
        let mut names = job.cabinets.iter().map(|cabinet| cabinet.name.as_str());
        (level, names.position(|name| record["cabinet"] == name))
    };
    let places: Vec<_> = records.iter().map(place).collect();
    assert!(places.is_sorted() && places.len() == check::of_job(&job).len());
    assert!(records.iter().any(|record| record["fix"].is_string()));
    assert_eq!(shop.run(&["check"]).code, Some(1));
}

#[test]
fn rules_are_listed_as_json_with_their_level() {
    let records = Shop::new().json(&["rules", "--json"]);
    assert_eq!(records.len(), RULES.len());
    for info in RULES {
        let said = records.iter().find(|record| record["rule"] == info.name);
        let said = said.unwrap_or_else(|| panic!("{}", info.name));
        assert_eq!(
            (&said["level"], &said["help"]),
            (&info.level.word().into(), &info.help.into())
        );
    }
}

#[test]
fn rules_are_listed_as_text_with_their_help() {
    let said = Shop::new().run(&["rules"]);
    assert_eq!((said.code, said.err.as_str()), (Some(0), ""));
    assert!(
        said.out.lines().all(|line| line.len() <= 80),
        "{}",
        said.out
    );
    let words: Vec<&str> = said.out.split_whitespace().collect();
    let text = words.join(" ");
    for info in RULES {
        assert!(
            text.contains(&format!("{} {}", info.name, info.help)),
            "{}",
            info.name
        );
    }
}
