//! Proof that the list is whole, and that its figures are those the program goes by.

use super::house::{DEFAULTS, FOLLOWED};
use super::*;
use crate::source::SOURCES;

#[test]
fn every_source_carries_a_figure_and_is_in_the_table() {
    let found: Vec<_> = figures()
        .iter()
        .filter_map(|figure| figure.standing.source())
        .collect();
    for source in SOURCES {
        assert!(found.contains(source), "nothing rests on {}", source.name);
    }
    for source in found {
        assert!(
            SOURCES.contains(&source),
            "{} is not in the table",
            source.name
        );
    }
}

#[test]
fn every_default_and_every_followed_value_is_there_once() {
    let all = figures();
    let count = |used: &str, what: &str| {
        all.iter()
            .filter(|figure| figure.used == used && figure.what == what)
            .count()
    };
    for (name, standing) in DEFAULTS {
        assert_ne!(standing, Standing::HouseGuess);
        assert_eq!(count("house defaults", name), 1, "{name}");
    }
    for (card, name, _) in FOLLOWED {
        assert_eq!(
            count("starter cards", &format!("{card}: {name}")),
            1,
            "{card} {name}"
        );
    }
}

#[test]
fn figures_are_those_the_program_goes_by() {
    let all = figures();
    let value = |what: &str| {
        all.iter()
            .find(|figure| figure.what == what)
            .map(|figure| figure.value.as_ref())
    };
    assert_eq!(value("an inch"), Some("25.4 mm"));
    assert_eq!(value("particleboard P2, over 13 to 20"), Some("1600 N/mm2"));
    assert_eq!(value("plywood"), Some("6960 to 8550 N/mm2"));
    assert_eq!(value("clear between"), Some("25 mm"));
    assert_eq!(value("runner-side: off the width"), Some("25.4 mm"));
    assert_eq!(
        value("2 hinges, by-height-and-mass"),
        Some("door to 900 mm, to 6.0 kg")
    );
    assert_eq!(
        value("L/192, at most 6.4 mm"),
        Some("L/192, at most 6.4 mm")
    );
}

#[test]
fn no_figure_is_listed_twice() {
    let all = figures();
    for (at, figure) in all.iter().enumerate() {
        assert!(!all[..at].contains(figure), "{figure:?}");
    }
}
