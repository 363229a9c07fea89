//! What the program's figures rest on, as it prints it.

use std::collections::BTreeSet;

use gablerow_core::cautions::GENERAL;
use gablerow_core::figures::figures;
use gablerow_core::source::SOURCES;

use super::Shop;

#[test]
fn every_figure_is_listed_with_its_source_or_that_it_has_none() {
    let records = Shop::new().json(&["sources", "--json"]);
    assert_eq!(records.len(), figures().len());
    let mut named = BTreeSet::new();
    for record in &records {
        let has_source = record["source"].is_string();
        match record["standing"].as_str().unwrap() {
            "published" | "stand-in" => assert!(has_source, "{record}"),
            "common practice" | "house guess" => assert!(!has_source, "{record}"),
            other => panic!("{other}"),
        }
        named.extend(record["source"].as_str());
        assert_eq!(record["author"].is_string(), has_source);
        assert_eq!(record["year"].is_string(), has_source);
    }
    let sources: BTreeSet<&str> = SOURCES.iter().map(|source| source.name).collect();
    assert_eq!(named, sources);
}

#[test]
fn the_caution_stands_below_the_sources_and_below_strength() {
    let shop = Shop::new();
    for (words, above) in [("sources", "PUBLISHED"), ("parts", "STRENGTH")] {
        let said = shop.run(&[words]);
        assert_eq!(said.code, Some(0));
        let text = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
        let (before, _) = text.split_once(GENERAL).unwrap();
        assert!(before.contains(above), "{text}");
    }
}
