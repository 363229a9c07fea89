//! Words and numbers of states.

use alloc::collections::BTreeSet;

use super::*;
use crate::edit::{Edit, Measure};
use crate::job::{AsCut, Key};

fn plain() -> Job {
    Job::plain(Label::known("glaze store"))
}

fn stamp(job: &Job) -> Stamp {
    let cabinet = &job.cabinets[0];
    Stamp::now(job, cabinet)
}

fn deep(job: &mut Job, mm: i32) {
    let edit = Edit::Measure {
        cabinet: Key(1),
        measure: Measure::Depth,
        value: Length::from_mm(mm),
    };
    edit.apply(job).unwrap().apply(job);
}

#[test]
fn words_are_short_plain_and_all_different() {
    let all: BTreeSet<_> = WORDS.iter().collect();
    assert_eq!(all.len(), WORDS.len());
    assert!(WORDS.is_sorted());
    for word in WORDS {
        assert!((3..=8).contains(&word.len()), "{word}");
        assert!(
            word.bytes().all(|letter| letter.is_ascii_lowercase()),
            "{word}"
        );
    }
}

#[test]
fn no_two_words_of_one_length_differ_by_one_letter() {
    for (at, one) in WORDS.iter().enumerate() {
        for other in &WORDS[at + 1..] {
            let differ = one.bytes().zip(other.bytes()).filter(|(a, b)| a != b);
            assert!(
                one.len() != other.len() || differ.count() > 1,
                "{one}, {other}"
            );
        }
    }
}

#[test]
fn a_saved_change_of_consequence_raises_the_number_and_no_other_does() {
    let mut job = plain();
    let first = stamp(&job);
    assert_eq!(first.number, 1);
    job.revisions = revised(&job);
    assert_eq!(stamp(&job), first, "saved, but the same");
    job.cabinets[0].name = Label::known("G2");
    assert_eq!(stamp(&job), first, "a name is of no consequence");
    deep(&mut job, 561);
    let second = stamp(&job);
    assert_eq!(second.number, 2);
    assert_ne!(second.word, first.word);
    deep(&mut job, 560);
    assert_eq!(stamp(&job), first, "taken back before it was saved");
    deep(&mut job, 561);
    job.revisions = revised(&job);
    deep(&mut job, 560);
    let third = stamp(&job);
    assert_eq!(
        (third.number, third.word),
        (3, first.word),
        "the number tells them apart"
    );
}

#[test]
fn what_was_measured_is_of_consequence_where_it_is_bored_otherwise_for_it() {
    let before = stamp(&plain());
    let of = |rail: i32, cut: AsCut| {
        let mut job = plain();
        let covered = u32::try_from(rail).unwrap();
        job.cards
            .rails
            .iter_mut()
            .for_each(|it| it.index_holes.value = covered);
        job.cabinets[0].copies[0].as_cut.push(cut);
        stamp(&job).word
    };
    let panel = AsCut::of(PanelId::Side(Hand::Left));
    let long = |um| AsCut {
        length: Some(Length::from_um(um)),
        ..panel
    };
    assert_ne!(of(30, long(703_600)), before.word);
    let without = [
        long(704_000),
        long(703_700),
        AsCut {
            diagonals: Some(Length::from_mm(1)),
            thickness: Some(Length::from_mm(18)),
            ..panel
        },
    ];
    for cut in without {
        assert_eq!(of(30, cut), before.word, "{cut:?}");
    }
    // A rail of 10 is shorter than the side.
    assert_ne!(of(10, long(703_700)), before.word);
    assert_eq!(of(10, long(704_000)), before.word);
}

#[test]
fn it_is_shown_in_capitals() {
    let stamp = Stamp {
        number: 7,
        word: "otter",
    };
    assert_eq!(stamp.to_string(), "rev 7 OTTER");
}
