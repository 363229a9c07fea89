//! Lengths that are typed, and choices that are stepped through.

use super::{make, refused};
use crate::arbitrary::{cabinet_with, job_with, mm, um};
use crate::edit::{Choice, Edit, Measure};
use crate::job::{Back, Fit, Job, Key, Label, TopKind};
use crate::measure::{Length, Unit};

fn set(measure: Measure, value: Length) -> Edit {
    Edit::Measure {
        cabinet: Key(1),
        measure,
        value,
    }
}

fn choose(choice: Choice) -> Edit {
    Edit::Choose {
        cabinet: Key(1),
        choice,
    }
}

fn read(job: &Job, measure: Measure) -> Option<Length> {
    measure.read(job, &job.cabinets[0])
}

#[test]
fn every_length_reads_back_as_it_was_set() {
    for measure in Measure::ALL {
        let start = with_everything();
        let mut job = start.clone();
        let before = read(&job, measure).unwrap();
        let value = before + um(1_500);
        let label = make(&mut job, &set(measure, value));
        assert_eq!(read(&job, measure), Some(value), "{}", measure.words());
        assert_eq!(label, format!("{} {}", measure.words(), value.exact_mm()));
        assert_eq!(refused(&job, &set(measure, value)), "nothing would change");
        // Nothing else has become another one.
        make(&mut job, &set(measure, before));
        assert_eq!(job, start);
    }
}

/// The plain cabinet with a back rail, on feet, its sides notched.
fn with_everything() -> Job {
    let mut job = job_with(|_| ());
    for choice in [Choice::Rail, Choice::Stand, Choice::Notch] {
        make(&mut job, &choose(choice));
    }
    job
}

#[test]
fn words_of_lengths_and_choices_are_unique() {
    let mut words: Vec<&str> = Measure::ALL.map(Measure::words).to_vec();
    words.sort_unstable();
    words.dedup();
    assert_eq!(words.len(), Measure::ALL.len());
    let mut words: Vec<&str> = Choice::ALL.map(Choice::words).to_vec();
    words.sort_unstable();
    words.dedup();
    assert_eq!(words.len(), Choice::ALL.len());
}

#[test]
fn length_outside_its_range_is_refused_with_the_range() {
    let job = job_with(|_| ());
    assert_eq!(
        refused(&job, &set(Measure::Height, mm(4001))),
        "carcass height: 4001, but it is 100 to 4000 mm"
    );
    assert_eq!(
        refused(&job, &set(Measure::OffsetFoot, mm(4))),
        "end offset: 4, but it is 5 to 200 mm"
    );
}

#[test]
fn length_that_the_cabinet_has_not_is_refused() {
    let job = cabinet_with(|cabinet| {
        cabinet.carcass.back = Back::Planted;
        cabinet.carcass.top.kind = TopKind::Panel(Fit::Between);
    });
    assert_eq!(read(&job, Measure::BackTaken), None);
    assert_eq!(
        refused(&job, &set(Measure::BackTaken, mm(20))),
        "this cabinet has its back in no groove or rabbet"
    );
    for (measure, said) in [
        (Measure::Stretcher, "this cabinet has no stretchers"),
        (Measure::Rail, "this cabinet has no back rail"),
        (Measure::Stand, "this cabinet has neither feet nor plinth"),
        (
            Measure::NotchDepth,
            "the sides of this cabinet have no notch",
        ),
    ] {
        assert_eq!(refused(&job, &set(measure, mm(80))), said);
    }
}

#[test]
fn measured_thickness_is_the_boards() {
    let mut job = job_with(|_| ());
    make(&mut job, &set(Measure::Board, um(18_600)));
    assert_eq!(job.cards.boards[0].thickness.value, um(18_600));
    assert_eq!(job.cards.boards[0].nominal, mm(18));
}

#[test]
fn lengths_and_choices_are_seen_from_a_cabinet_that_is_there() {
    let job = job_with(|_| ());
    for measure in Measure::ALL {
        let edit = Edit::Measure {
            cabinet: Key(99),
            measure,
            value: mm(30),
        };
        let refusal = refused(&job, &edit);
        assert!(
            refusal == "there is no cabinet 99" || refusal.contains("but it is"),
            "{refusal}"
        );
    }
    for choice in Choice::ALL {
        let edit = Edit::Choose {
            cabinet: Key(99),
            choice,
        };
        assert_eq!(refused(&job, &edit), "there is no cabinet 99");
    }
}

#[test]
fn every_choice_comes_round_to_where_it_began() {
    for choice in Choice::ALL {
        let start = job_with(|_| ());
        let mut job = start.clone();
        let value = |job: &Job| choice.value(job, &job.cabinets[0]).to_string();
        let mut seen = vec![value(&job)];
        loop {
            let label = make(&mut job, &choose(choice));
            if job == start {
                break;
            }
            assert!(label.ends_with(&value(&job)), "{label}");
            assert!(!seen.contains(&value(&job)), "{}", value(&job));
            seen.push(value(&job));
        }
        assert!(seen.len() >= 2, "{seen:?}");
    }
}

#[test]
fn rabbet_keeps_the_distance_of_the_groove() {
    let mut job = job_with(|_| ());
    make(&mut job, &set(Measure::BackTaken, mm(16)));
    make(&mut job, &choose(Choice::Back));
    assert_eq!(job.cabinets[0].carcass.back, Back::Rabbet { run: mm(16) });
}

#[test]
fn title_and_unit_are_changed_once() {
    let mut job = job_with(|_| ());
    let title = Edit::Title(Label::known("kiln room"));
    assert_eq!(make(&mut job, &title), "title kiln room");
    assert_eq!(refused(&job, &title), "nothing would change");
    make(&mut job, &Edit::Unit(Unit::Inch));
    assert_eq!(
        refused(&job, &Edit::Unit(Unit::Inch)),
        "nothing would change"
    );
}
