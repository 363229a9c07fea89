//! What the program's figures rest on, as it prints it.

use std::collections::BTreeSet;

use gablerow_core::cautions::GENERAL;
use gablerow_core::figures::figures;
use gablerow_core::source::SOURCES;

use super::Shop;
use crate::house::source::sources;

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

/// What is common practice or a guess and yet no figure of a cabinet: cautions, how many words or distances a sentence has, how
/// a wrong count is known.
const NO_FIGURES: [&str; 4] = ["AT_THE_BENCH", "LISTED", "SENTENCE_WORDS", "NEAR"];

#[test]
fn every_guess_of_the_code_is_listed() {
    let core = sources("crates/gablerow-core/src");
    let (lists, others): (Vec<_>, Vec<_>) = core
        .iter()
        .partition(|source| source.name.contains("/figures/"));
    let is_word = |sign: char| sign.is_ascii_alphanumeric() || sign == '_';
    let words = lists
        .iter()
        .flat_map(|list| list.text.split(|sign| !is_word(sign)));
    let listed: BTreeSet<&str> = words.collect();
    let mut found = 0;
    for source in others {
        let mut remark = String::new();
        for line in source.text.lines().map(str::trim) {
            if let Some(words) = line.strip_prefix("///") {
                remark = remark + &words.to_lowercase();
                continue;
            }
            let name = line.split_once("const ").and_then(|(_, name)| {
                let (name, kind) = name.split_once(": ")?;
                kind.starts_with(['L', 'f', 'u', 'i', '[']).then_some(name)
            });
            let is_guess = ["house default", "house guess", "common practice"]
                .iter()
                .any(|words| remark.contains(words));
            remark.clear();
            let Some(name) = name.filter(|name| is_guess && !NO_FIGURES.contains(name)) else {
                continue;
            };
            found += 1;
            assert!(listed.contains(name), "{name} of {}", source.name);
        }
    }
    assert!(found > 25, "{found}");
}
