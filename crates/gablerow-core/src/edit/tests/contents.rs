//! What is typed of a drawer.

use super::{make, refused};
use crate::arbitrary::job_with;
use crate::check::{self, Rule};
use crate::edit::{Content, Edit, New, Value, ValueName, own_values};
use crate::job::{Front, FrontKind, Hand, Job, Key};
use crate::measure::Unit;
use crate::propose::{all_in_one, for_cabinet};

/// A job with three drawers, the lowest of them on runners that carry 30 kg.
fn with_drawers() -> Job {
    let mut job = job_with(|_| ());
    make(&mut job, &drawers(3));
    job
}

fn drawers(count: u16) -> Edit {
    Edit::Drawers {
        cabinet: Key(1),
        opening: Key(1),
        count,
    }
}

fn lowest(job: &Job) -> &Front {
    &job.cabinets[0].opening.fronts[0]
}

fn contents(job: &Job) -> Value {
    own_values(&job.cabinets[0], lowest(job).key).remove(0)
}

fn set(job: &Job, value: ValueName, grams: Option<u32>) -> Edit {
    Edit::OwnValue {
        cabinet: Key(1),
        thing: lowest(job).key,
        value,
        new: New::To(Content::MaybeLoad(grams)),
    }
}

#[test]
fn what_a_drawer_holds_is_typed_in_kg_and_taken_back_by_nothing() {
    let mut job = with_drawers();
    assert_eq!(contents(&job).shown(Unit::Millimetre), "not known");
    assert_eq!(contents(&job).offered(Unit::Millimetre), "");
    for (text, grams, said) in [
        ("12.5 kg", Some(12_500), "D1: contents 12.5 kg"),
        ("0", Some(0), "D1: contents 0 kg"),
        ("500", Some(500_000), "D1: contents 500 kg"),
        ("", None, "D1: contents not known"),
    ] {
        let value = contents(&job);
        let content = value.parse(text, Unit::Inch).unwrap();
        assert_eq!(content, Content::MaybeLoad(grams), "{text}");
        let edit = set(&job, value.name, grams);
        assert_eq!(make(&mut job, &edit), said);
        assert_eq!(lowest(&job).load_grams, grams);
    }
}

#[test]
fn what_no_drawer_can_hold_is_refused_in_words() {
    let job = with_drawers();
    let name = contents(&job).name;
    assert_eq!(
        refused(&job, &set(&job, name, Some(500_100))),
        "500.1 kg, but a drawer holds at most 500 kg"
    );
    assert_eq!(
        refused(&job, &set(&job, name, None)),
        "nothing would change"
    );
    let mut gone = job.clone();
    gone.cabinets[0].opening.fronts.clear();
    assert_eq!(
        refused(&gone, &set(&job, name, Some(1_000))),
        "there is no such loose shelf or front any more"
    );
}

#[test]
fn drawers_alone_hold_something() {
    let mut job = with_drawers();
    let name = contents(&job).name;
    let (key, edit) = (lowest(&job).key, set(&job, name, Some(1_000)));
    for (kind, holds) in [
        (FrontKind::Drawer, 1),
        (FrontKind::Inner, 1),
        (FrontKind::False, 0),
        (FrontKind::Pair, 0),
        (FrontKind::Door(Hand::Left), 0),
    ] {
        job.cabinets[0].opening.fronts[0].kind = kind;
        assert_eq!(own_values(&job.cabinets[0], key).len(), holds, "{kind:?}");
    }
    assert_eq!(refused(&job, &edit), "there is no contents here");
}

#[test]
fn typed_contents_are_what_its_runners_are_checked_with() {
    let mut job = with_drawers();
    let overloaded = |job: &Job| {
        let found = check::of_job(job).into_iter();
        found.filter(|it| it.rule == Rule::RunnerOverloaded).count()
    };
    let runners = all_in_one(&for_cabinet(&job, Key(1), None)).unwrap();
    make(&mut job, &runners);
    assert_eq!(overloaded(&job), 0, "not known");
    let name = contents(&job).name;
    let light = set(&job, name, Some(10_000));
    make(&mut job, &light);
    assert_eq!(overloaded(&job), 0);
    let heavy = set(&job, name, Some(30_000));
    make(&mut job, &heavy);
    assert_eq!(overloaded(&job), 1);
}
