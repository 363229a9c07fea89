//! Cabinets as a list, and findings a person has accepted.

use super::{make, refused};
use crate::arbitrary::{LEFT_INSIDE, bored_hole, job_with};
use crate::edit::Edit;
use crate::job::{Acceptance, AsCut, Bored, Hand, Job, Key, Label, PanelId};

fn name(text: &str) -> Label {
    Label::new(text).unwrap()
}

fn names(job: &Job) -> Vec<&str> {
    job.cabinets
        .iter()
        .map(|cabinet| cabinet.name.as_str())
        .collect()
}

fn add(after: Option<u32>, text: &str) -> Edit {
    Edit::Add {
        after: after.map(Key),
        name: name(text),
    }
}

/// Cabinets A1, G2 and G3 with keys 1, 2 and 3.
fn three() -> Job {
    let mut job = job_with(|_| ());
    make(&mut job, &add(None, "G2"));
    make(&mut job, &add(None, "G3"));
    job
}

#[test]
fn cabinet_is_added_after_another_or_at_the_end() {
    let mut job = three();
    assert_eq!(make(&mut job, &add(Some(1), "A2")), "add cabinet A2");
    assert_eq!(names(&job), ["A1", "A2", "G2", "G3"]);
    assert_eq!(job.cabinets[1].key, Key(4));
    assert_eq!(
        refused(&job, &add(Some(99), "A3")),
        "there is no cabinet 99"
    );
}

#[test]
fn key_of_a_cabinet_that_was_bored_is_not_given_again() {
    let mut job = three();
    make(&mut job, &Edit::Remove { cabinet: Key(3) });
    make(&mut job, &add(None, "G4"));
    assert_eq!(
        job.cabinets[2].key,
        Key(3),
        "nothing was bored of the one before"
    );
    job.bored = vec![Bored {
        cabinet: Key(8),
        ..bored_hole(LEFT_INSIDE)
    }];
    make(&mut job, &add(None, "G5"));
    assert_eq!(job.cabinets[3].key, Key(9));
}

#[test]
fn no_two_cabinets_have_one_name() {
    let job = three();
    let taken = "there is a cabinet G2 already; take another name";
    assert_eq!(refused(&job, &add(None, "G2")), taken);
    let rename = |cabinet, text| Edit::Rename {
        cabinet,
        name: name(text),
    };
    assert_eq!(refused(&job, &rename(Key(1), "G2")), taken);
    assert_eq!(refused(&job, &rename(Key(2), "G2")), "nothing would change");
    let duplicate = Edit::Duplicate {
        cabinet: Key(1),
        name: name("G2"),
    };
    assert_eq!(refused(&job, &duplicate), taken);
}

#[test]
fn duplicate_is_like_its_original_but_unmeasured() {
    let mut job = three();
    job.cabinets[1].copies[0].as_cut = vec![AsCut::of(PanelId::Side(Hand::Left))];
    let duplicate = Edit::Duplicate {
        cabinet: Key(2),
        name: name("G4"),
    };
    assert_eq!(make(&mut job, &duplicate), "copy G2 as G4");
    assert_eq!(names(&job), ["A1", "G2", "G4", "G3"]);
    let mut expected = job.cabinets[1].clone();
    (expected.key, expected.name) = (Key(4), name("G4"));
    expected.copies[0].as_cut.clear();
    assert_eq!(job.cabinets[2], expected);
}

#[test]
fn last_cabinet_stays() {
    let mut job = three();
    for key in [2, 1] {
        make(&mut job, &Edit::Remove { cabinet: Key(key) });
    }
    assert_eq!(names(&job), ["G3"]);
    assert_eq!(
        refused(&job, &Edit::Remove { cabinet: Key(3) }),
        "a job keeps at least one cabinet; add another one first"
    );
}

#[test]
fn job_without_a_key_left_takes_no_further_cabinet() {
    let job = job_with(|job| job.cabinets[0].key = Key(u32::MAX));
    assert_eq!(
        refused(&job, &add(None, "G2")),
        "a job has at most 10000 cabinets; begin another job"
    );
}

#[test]
fn a_stop_is_overruled_with_a_sentence_and_a_warn_for_any_reason() {
    let mut job = job_with(|_| ());
    let accept = |rule: &str, reason: &str| Edit::Accept {
        cabinet: Key(1),
        acceptance: Acceptance {
            rule: rule.into(),
            message: "holes 7.0 apart".into(),
            reason: name(reason),
        },
    };
    assert_eq!(
        refused(&job, &accept("near-miss-rows", "is fine")),
        "a sentence overrules a stop: who says so, and why"
    );
    let said = make(
        &mut job,
        &accept("near-miss-rows", "Ann plugs the back row"),
    );
    assert_eq!(said, "overruled near-miss-rows");
    let said = make(&mut job, &accept("shelf-at-hinge", "seen"));
    assert_eq!(said, "accepted shelf-at-hinge");
}

#[test]
fn acceptance_replaces_an_earlier_one_of_the_same_finding() {
    let mut job = job_with(|_| ());
    let accept = |reason: &str| Edit::Accept {
        cabinet: Key(1),
        acceptance: Acceptance {
            rule: "near-miss".into(),
            message: "holes 7.0 apart".into(),
            reason: name(reason),
        },
    };
    assert_eq!(make(&mut job, &accept("seen")), "accepted near-miss");
    make(&mut job, &accept("seen at the bench"));
    assert_eq!(job.cabinets[0].accepted.len(), 1);
    assert_eq!(
        job.cabinets[0].accepted[0].reason,
        name("seen at the bench")
    );
    let withdraw = Edit::Withdraw {
        cabinet: Key(1),
        message: "holes 7.0 apart".into(),
    };
    make(&mut job, &withdraw);
    assert_eq!(job.cabinets[0].accepted, []);
    assert_eq!(refused(&job, &withdraw), "nothing would change");
}
