//! Proof of `check`.

use super::fixture::*;
use super::*;
use crate::job::{Acceptance, HolePlace, Label, Reference};
use std::string::ToString;

#[test]
fn plain_cabinet_with_a_balanced_layout_has_no_findings() {
    let mut case = Case::new();
    case.pins(1, 8, 15);
    case.shelf(1, 10).load_grams = Some(15_000);
    case.plate(1, LEFT, 3);
    case.plate(1, LEFT, 19);
    assert_eq!(of_job(&case.job), []);
}

#[test]
fn accepted_finding_keeps_its_reason_until_its_sentence_changes() {
    let mut case = Case::new();
    case.pins(1, 3, 8);
    case.plate(1, LEFT, 3);
    let [open] = of_job(&case.job).try_into().unwrap();
    assert!(open.is_open_stop());
    let reason = Label::new("a screw holds the pin").unwrap();
    case.cabinet().accepted.push(Acceptance {
        rule: open.rule_name().to_string(),
        message: open.message.clone(),
        reason: reason.clone(),
    });
    let [quiet] = of_job(&case.job).try_into().unwrap();
    assert_eq!(quiet.accepted, Some(reason));
    assert!(!quiet.is_open_stop());
    case.bay(1).zones[0].last = HolePlace::foot(9);
    let [back] = of_job(&case.job).try_into().unwrap();
    assert!(back.is_open_stop());
}

#[test]
fn acceptance_of_another_rule_or_cabinet_does_not_count() {
    let mut case = Case::new();
    case.pins(1, 3, 8);
    case.plate(1, LEFT, 3);
    let [open] = of_job(&case.job).try_into().unwrap();
    case.cabinet().accepted.push(Acceptance {
        rule: "shared-hole".into(),
        message: open.message.clone(),
        reason: Label::new("no").unwrap(),
    });
    assert!(of_job(&case.job)[0].is_open_stop());
}

#[test]
fn levels_weigh_as_they_are_listed() {
    assert!(Level::Stop < Level::Warn && Level::Warn < Level::Note);
    assert_eq!(Level::ALL.map(Level::word), ["stop", "warn", "note"]);
}

#[test]
fn findings_are_said_in_the_unit_of_the_job_and_accepted_in_either() {
    let mut case = Case::new();
    case.cabinet().size.height = mm(700);
    case.job.shop.reference = Reference::Foot;
    let [metric] = of_job(&case.job).try_into().unwrap();
    assert_eq!(metric.message, metric.in_mm);
    case.job.unit = Unit::Inch;
    let [shown] = of_job(&case.job).try_into().unwrap();
    assert_eq!(shown.in_mm, metric.in_mm);
    assert_eq!(
        shown.message,
        "27 9/16\" (~-0.1) high is ~5/32\" out, holes from the head fall below those from the foot; \
         keep every row on the foot, or 26 15/32\" (~-0.3) or 27 23/32\" (~-0.1) high, \
         or offsets 9/16\" (~-0.3) or 1 3/16\" (~-0.2)"
    );
    case.cabinet().accepted.push(Acceptance {
        rule: shown.rule_name().to_string(),
        message: shown.in_mm,
        reason: Label::new("rows rest on the foot").unwrap(),
    });
    for unit in [Unit::Inch, Unit::Millimetre] {
        case.job.unit = unit;
        assert!(of_job(&case.job)[0].accepted.is_some());
    }
}
