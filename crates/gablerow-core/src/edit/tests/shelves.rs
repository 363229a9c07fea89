//! What is typed of a loose shelf.

use super::{make, refused, run};
use crate::arbitrary::job_with;
use crate::cards::CardId;
use crate::edit::{Content, Edit, New, Value, shelf_values};
use crate::job::{Job, Key, Shelf};
use crate::measure::{Length, Unit};

const MM: fn(i32) -> Length = Length::from_mm;

/// A job with a loose shelf on hole 9.
fn with_shelf() -> (Job, Key) {
    let mut job = job_with(|_| ());
    make(&mut job, &Edit::Shelves(run(9, 9)));
    let key = shelf(&job).key;
    (job, key)
}

fn shelf(job: &Job) -> &Shelf {
    job.cabinets[0].loose_shelves()[0]
}

fn value(job: &Job, words: &str) -> Value {
    let mut values = shelf_values(shelf(job)).into_iter();
    values.find(|value| value.name.words() == words).unwrap()
}

fn set(job: &Job, words: &str, new: New) -> Edit {
    Edit::OwnValue {
        cabinet: job.cabinets[0].key,
        thing: shelf(job).key,
        value: value(job, words).name,
        new,
    }
}

/// Types a text for a value, and gives the label of the step.
fn typed(job: &mut Job, words: &str, text: &str) -> String {
    let content = value(job, words).parse(text, Unit::Millimetre).unwrap();
    let edit = set(job, words, New::To(content));
    make(job, &edit)
}

#[test]
fn what_is_typed_of_a_shelf_is_kept_and_can_be_taken_back() {
    let (mut job, _) = with_shelf();
    assert_eq!(typed(&mut job, "load", "35.5 kg"), "shelf: load 35.5 kg");
    assert_eq!(
        typed(&mut job, "clear above", "320"),
        "shelf: clear above 320.0"
    );
    assert_eq!(
        typed(&mut job, "clear above", "+10"),
        "shelf: clear above 330.0"
    );
    assert_eq!(typed(&mut job, "set back", "5"), "shelf: set back 5.0");
    assert_eq!(typed(&mut job, "shorter by", "3"), "shelf: shorter by 3.0");
    let next = set(&job, "board", New::Next);
    assert_eq!(make(&mut job, &next), "shelf: board board-16");
    let made = shelf(&job).clone();
    assert_eq!((made.load_grams, made.clear), (Some(35_500), Some(MM(330))));
    assert_eq!((made.setback_front, made.shorter), (MM(5), MM(3)));
    assert_eq!(made.board, CardId::known("board-16"));
    assert_eq!(typed(&mut job, "load", ""), "shelf: load 25 kg (house)");
    assert_eq!(
        typed(&mut job, "clear above", ""),
        "shelf: clear above no wish"
    );
    assert_eq!((shelf(&job).load_grams, shelf(&job).clear), (None, None));
}

#[test]
fn load_is_typed_in_kg_with_one_decimal() {
    let (job, _) = with_shelf();
    let load = value(&job, "load");
    let read = |text: &str| load.parse(text, Unit::Inch);
    for (text, grams) in [
        ("25", 25_000),
        ("7.5", 7_500),
        ("7,5 kg", 7_500),
        ("0kg", 0),
        ("0.1", 100),
    ] {
        assert_eq!(read(text), Ok(Content::MaybeLoad(Some(grams))), "{text}");
    }
    for text in ["7.55", "-1", ".5", "5.", "1e3", "kg", "99999999", "7.5.1"] {
        assert_eq!(
            read(text).unwrap_err().to_string(),
            "a load is kg with one decimal at most, such as 25 or 7.5",
            "{text}"
        );
    }
}

#[test]
fn what_stands_in_a_file_is_offered_as_it_is() {
    let (mut job, _) = with_shelf();
    let bay = job.cabinets[0].opening.bay_mut(Key(1)).unwrap();
    bay.shelves[0].load_grams = Some(12_345);
    assert_eq!(value(&job, "load").offered(Unit::Millimetre), "12.345");
    assert_eq!(value(&job, "load").shown(Unit::Millimetre), "12.345 kg");
}

#[test]
fn what_no_shelf_can_have_is_refused_in_words() {
    let (job, key) = with_shelf();
    let to = |words, content| set(&job, words, New::To(content));
    for (edit, said) in [
        (
            to("load", Content::MaybeLoad(Some(1_000_100))),
            "1000.1 kg, but a shelf carries at most 1000 kg",
        ),
        (
            to("clear above", Content::MaybeLength(Some(MM(0)))),
            "clear opening: 0, but it is 1 to 4000 mm",
        ),
        (
            to("set back", Content::Length(MM(-1))),
            "shelf setback: -1, but it is 0 to 1500 mm",
        ),
        (to("load", Content::MaybeLoad(None)), "nothing would change"),
        (
            Edit::OwnValue {
                cabinet: job.cabinets[0].key,
                thing: key.next(),
                value: value(&job, "load").name,
                new: New::Next,
            },
            "there is no such loose shelf or front any more",
        ),
    ] {
        assert_eq!(refused(&job, &edit), said);
    }
}
