//! Every way known to ruin a panel is on one of four lists, and each list keeps its promise.

use std::collections::BTreeSet;
use std::process::Command;

use gablerow_core::check::RULES;

use crate::house::source::sources;

const LIVE: &str = include_str!("../rules/live.txt");
const BENCH: &str = include_str!("../rules/bench.txt");
const ROOM: &str = include_str!("../rules/room.txt");
const IMPOSSIBLE: &str = include_str!("../rules/impossible.txt");
const OWN: &str = include_str!("../rules/own.txt");

/// Common practice: what cabinetmakers know to go wrong, counted when the lists were made.
const KNOWN_TO_GO_WRONG: usize = 82;

/// The first word of each line, and the rest of it.
fn lines(list: &str) -> impl Iterator<Item = (&str, &str)> {
    let lines = list.lines().filter(|line| !line.starts_with('#'));
    lines.map(|line| line.split_once(' ').unwrap_or((line, "")))
}

fn names(list: &str) -> BTreeSet<&str> {
    lines(list).map(|(name, _)| name).collect()
}

#[test]
fn four_lists_hold_all_that_goes_wrong_and_nothing_twice() {
    let lists = [LIVE, BENCH, ROOM, IMPOSSIBLE];
    let all: BTreeSet<&str> = lists.into_iter().flat_map(names).collect();
    let count: usize = lists.iter().map(|list| lines(list).count()).sum();
    assert_eq!((all.len(), count), (KNOWN_TO_GO_WRONG, KNOWN_TO_GO_WRONG));
}

#[test]
fn what_is_live_is_a_rule_and_every_rule_is_on_a_list() {
    let rules: BTreeSet<&str> = RULES.iter().map(|info| info.name).collect();
    let listed: BTreeSet<&str> = names(LIVE).union(&names(OWN)).copied().collect();
    assert_eq!(rules, listed);
}

#[test]
fn what_is_no_rule_of_the_bench_says_why() {
    for (name, reason) in lines(BENCH) {
        assert!(reason.split(' ').count() >= 10, "{name}: {reason}");
    }
}

#[test]
fn what_cannot_go_wrong_has_a_law_that_says_so() {
    let sources = sources("crates");
    for (name, law) in lines(IMPOSSIBLE) {
        let head = format!("fn {law}(");
        let found = sources.iter().any(|source| source.text.contains(&head));
        assert!(found && !law.is_empty(), "{name}: there is no law `{law}`");
    }
}

#[test]
fn rules_are_listed_by_the_program_with_their_help() {
    let output = Command::new(env!("CARGO_BIN_EXE_gablerow"))
        .arg("rules")
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(0));
    let said = String::from_utf8(output.stdout).unwrap();
    // Help may be wrapped; words stay in order.
    let words: Vec<&str> = said.split_whitespace().collect();
    let said = words.join(" ");
    for info in RULES {
        assert!(said.contains(info.name), "{}", info.name);
        assert!(said.contains(info.help), "{}", info.help);
    }
}
