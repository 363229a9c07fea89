//! Every case of every family: agreed, counted, and shown to fail when what it holds is wrong.

use std::collections::BTreeMap;
use std::io::Write;

use crate::case::{Case, Disagreement, Kind, Mark, Source, around};
use crate::{
    formats, handbooks, practice, standards, trade_drawers, trade_fronts, trade_heights,
    trade_hinges, trade_pages,
};

/// Cases of published numbers.
fn published() -> Vec<Case> {
    let mut all = standards::cases();
    all.extend(handbooks::cases());
    all.extend(trade_pages::cases());
    all.extend(trade_heights::cases());
    all.extend(trade_fronts::cases());
    all.extend(trade_drawers::cases());
    all.extend(trade_hinges::cases());
    all.extend(formats::cases());
    all
}

fn disagreements() -> Vec<Disagreement> {
    let mut all = standards::disagreements();
    all.extend(handbooks::disagreements());
    all.extend(trade_pages::disagreements());
    all.extend(trade_fronts::disagreements());
    all.extend(trade_drawers::disagreements());
    all.extend(trade_hinges::disagreements());
    all
}

/// Writes where a passing test is heard too.
pub(crate) fn say(text: &str) {
    std::io::stderr().lock().write_all(text.as_bytes()).unwrap();
}

fn by_family(cases: &[Case]) -> BTreeMap<&str, Vec<&Case>> {
    let mut families: BTreeMap<&str, Vec<&Case>> = BTreeMap::new();
    for case in cases {
        families.entry(case.family).or_default().push(case);
    }
    families
}

/// Fails with every case, not the first alone.
fn hold(what: &str, breaches: &[String]) {
    let count = breaches.len();
    assert!(
        breaches.is_empty(),
        "{what}; {count} not:\n{}",
        breaches.join("\n")
    );
}

#[test]
fn computed_numbers_agree_with_published_ones() {
    let cases = published();
    let off: Vec<String> = cases
        .iter()
        .filter(|case| !case.agrees(1.0))
        .map(Case::report)
        .collect();
    hold("computed agrees with printed", &off);

    let mut text = String::from("held against published numbers:\n");
    for (family, cases) in by_family(&cases) {
        let of = |kind| cases.iter().filter(|case| case.kind == kind).count();
        text += &format!(
            "  {family:<28} {:>3} by formula {:>3} of tables {:>3} thresholds {:>3} clauses\n",
            of(Kind::Formula),
            of(Kind::Table),
            of(Kind::Threshold),
            of(Kind::Clause)
        );
    }
    let clauses = cases
        .iter()
        .filter(|case| case.kind == Kind::Clause)
        .count();
    let numbers = || cases.iter().filter(|case| case.kind != Kind::Clause);
    let by = |mark| numbers().filter(|case| case.source.mark == mark).count();
    text += &format!(
        "  {} numbers: {} read at their origin, {} on several pages, {} on one page; {clauses} clauses of formats; {} disagreements stated\n",
        numbers().count(),
        by(Mark::Origin),
        by(Mark::Pages),
        by(Mark::Page),
        disagreements().len()
    );
    say(&text);
}

#[test]
fn rules_of_thumb_are_what_the_program_starts_from() {
    let off: Vec<String> = practice::cases()
        .iter()
        .filter(|case| !case.agrees(1.0))
        .map(Case::report)
        .collect();
    hold("the program starts from its rules of thumb", &off);
}

#[test]
fn nothing_without_a_source_counts_as_published() {
    let unsourced = |source: &Source| matches!(source.mark, Mark::Practice | Mark::Memory);
    assert!(published().iter().all(|case| !unsourced(case.source)));
    assert!(practice::cases().iter().all(|case| unsourced(case.source)));
    assert!(disagreements().iter().all(|case| !unsourced(case.source)));
}

#[test]
fn every_source_is_named_in_full() {
    let named = |source: &Source, why: &str, what: &str| {
        let Source {
            author,
            title,
            year,
            clause,
            ..
        } = source;
        for words in [author, title, year, clause, why] {
            assert!(!words.trim().is_empty(), "{what}");
        }
    };
    for case in published().iter().chain(&practice::cases()) {
        named(case.source, case.within.why, &case.report());
    }
    for found in disagreements() {
        named(found.source, found.reason, found.what);
    }
}

/// Families that are tables, thresholds or clauses through and through: there is no formula in them to be wrong.
const TABLES_ONLY: [&str; 7] = [
    "CSV",
    "JSON",
    "boards and bands",
    "elasticity of boards",
    "hinge counts",
    "densities of boards",
    "tolerances of boards",
];

#[test]
fn each_family_sees_a_formula_that_is_1_percent_wrong() {
    let cases = published();
    let mut tables: Vec<&str> = Vec::new();
    for (family, cases) in by_family(&cases) {
        let formulas = || cases.iter().filter(|case| case.kind == Kind::Formula);
        if formulas().next().is_none() {
            tables.push(family);
            continue;
        }
        // Either way, not always by one case: figures that were rounded down see one way only.
        for wrong in [0.99, 1.01] {
            assert!(
                formulas().any(|case| !case.agrees(wrong)),
                "{family} passes over {wrong}"
            );
        }
    }
    let mut known = TABLES_ONLY;
    known.sort_unstable();
    assert_eq!(tables, known, "families of nothing but tables");
}

#[test]
fn every_case_of_a_formula_sees_one_that_is_10_percent_wrong() {
    let blind: Vec<String> = published()
        .iter()
        .filter(|case| case.kind == Kind::Formula && !case.sees(0.10))
        .map(Case::report)
        .collect();
    hold("10 % is seen", &blind);
}

#[test]
fn a_slip_in_a_row_of_a_table_is_seen() {
    let blind: Vec<String> = published()
        .iter()
        .filter(|case| case.kind == Kind::Table && !case.sees(0.10))
        .map(Case::report)
        .collect();
    hold("a slip of 10 % is seen", &blind);
}

#[test]
fn a_file_that_breaks_a_clause_is_seen() {
    let blind: Vec<String> = published()
        .iter()
        .filter(|case| case.kind == Kind::Clause && !case.sees(0.10))
        .map(Case::report)
        .collect();
    hold("a spoilt file is seen", &blind);
}

#[test]
fn a_disagreement_is_stated_with_both_figures_and_stays_one() {
    let mut text = String::from("known not to agree:\n");
    for found in disagreements() {
        let Disagreement {
            what,
            source,
            printed,
            computed,
            stated,
            reason,
        } = found;
        text += &format!(
            "  {what}: {} prints {printed}, the program has {computed}: {reason}\n",
            source.title
        );
        assert!(
            (computed - stated).abs() < 5e-4,
            "{what}: {computed} is no longer {stated}"
        );
        assert!(
            (printed - computed).abs() > 1e-9,
            "{what} agrees by now: make it a case"
        );
    }
    say(&text);
}

/// A source for cases that are made up to try the harness.
static MADE_UP: Source = Source {
    author: "nobody",
    title: "made up",
    year: "none",
    clause: "none",
    mark: Mark::Memory,
};

#[test]
fn the_harness_tells_right_from_wrong() {
    let case = |found| Case::new("made up", "", &MADE_UP, 100.0, found);
    assert!(case(100.0).agrees(1.0) && !case(100.1).agrees(1.0));
    let loose = |found| case(found).within(around(2.0, "made up"));
    assert!(loose(98.0).agrees(1.0) && loose(102.0).agrees(1.0));
    assert!(!loose(97.9).agrees(1.0) && !loose(102.1).agrees(1.0));
    assert!(!loose(100.0).sees(0.01) && loose(100.0).sees(0.10));
    // Seen one way only is not seen.
    assert!(!loose(95.0).sees(0.05));
    let cube_root = case(0.0).wrong_at(|wrong: f64| 100.0 * wrong.cbrt());
    assert!(cube_root.agrees(1.0) && cube_root.sees(0.01));
}
