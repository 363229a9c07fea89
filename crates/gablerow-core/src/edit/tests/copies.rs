//! Copies: added, named and taken away, as long as nothing of them is bored.

use super::{make, refused};
use crate::arbitrary::{LEFT_INSIDE, bored_hole, job_with};
use crate::edit::{CopyEdit, Edit};
use crate::job::{AsCut, Bored, Hand, Job, Key, Label, PanelId};
use crate::measure::Length;

fn edit(change: CopyEdit) -> Edit {
    Edit::Copies {
        cabinet: Key(1),
        change,
    }
}

fn add(mirrored: bool, name: &str) -> Edit {
    edit(CopyEdit::Add {
        mirrored,
        name: Label::new(name).unwrap(),
    })
}

fn copies(job: &Job) -> Vec<(u32, &str, bool)> {
    let copies = job.cabinets[0].copies.iter();
    copies
        .map(|copy| (copy.key.0, copy.name.as_str(), copy.mirrored))
        .collect()
}

#[test]
fn copies_are_plain_or_mirrored_and_each_has_a_name_of_its_own() {
    let mut job = job_with(|_| ());
    assert_eq!(make(&mut job, &add(false, "2")), "copy 2 of A1");
    assert_eq!(make(&mut job, &add(true, "3")), "copy 3 of A1, mirrored");
    let (first, last) = (copies(&job)[0], copies(&job)[2]);
    assert_eq!((first.1, last.1, last.2), ("1", "3", true));
    let taken = "there is a copy 2 of A1 already; take another name";
    assert_eq!(refused(&job, &add(true, "2")), taken);
    let rename = |name| edit(CopyEdit::Rename(Key(last.0), Label::new(name).unwrap()));
    assert_eq!(refused(&job, &rename("2")), taken);
    assert_eq!(
        make(&mut job, &rename("by the kiln")),
        "copy 3 of A1 is by the kiln"
    );
}

#[test]
fn the_last_copy_and_one_of_which_something_is_bored_stay() {
    let mut job = job_with(|_| ());
    let first = job.cabinets[0].copies[0].key;
    assert_eq!(
        refused(&job, &edit(CopyEdit::Remove(first))),
        "A1 is built at least once; to build none of it remove the cabinet"
    );
    make(&mut job, &add(false, "2"));
    let second = job.cabinets[0].copies[1].key;
    job.bored = vec![Bored {
        cabinet: Key(1),
        copy: second,
        ..bored_hole(LEFT_INSIDE)
    }];
    assert_eq!(
        refused(&job, &edit(CopyEdit::Remove(second))),
        "1 hole is bored of copy 2 already, so it stays"
    );
    assert_eq!(
        make(&mut job, &edit(CopyEdit::Remove(first))),
        "no copy 1 of A1"
    );
    assert_eq!(
        refused(&job, &edit(CopyEdit::Remove(Key(99)))),
        "there is no copy 99 of A1"
    );
}

#[test]
fn key_of_a_copy_that_is_gone_and_was_bored_is_not_given_again() {
    let mut job = job_with(|_| ());
    job.bored = vec![Bored {
        cabinet: Key(1),
        copy: Key(40),
        ..bored_hole(LEFT_INSIDE)
    }];
    make(&mut job, &add(false, "2"));
    assert_eq!(job.cabinets[0].copies[1].key, Key(41));
}

#[test]
fn lengths_as_cut_are_kept_panel_by_panel_and_what_is_not_measured_is_not() {
    let mut job = job_with(|_| {});
    let copy = job.cabinets[0].copies[0].key;
    let cut = |lengths: &[(Hand, Option<i32>)]| {
        let of = |&(hand, length): &(Hand, Option<i32>)| {
            let length = length.map(Length::from_um);
            AsCut {
                length,
                ..AsCut::of(PanelId::Side(hand))
            }
        };
        edit(CopyEdit::AsCut(copy, lengths.iter().map(of).collect()))
    };
    let both = cut(&[(Hand::Left, Some(703_600)), (Hand::Right, Some(704_000))]);
    assert_eq!(make(&mut job, &both), "copy 1 of A1: 2 panels as cut");
    let length = |job: &Job, hand| job.cabinets[0].copies[0].length_of(PanelId::Side(hand));
    assert_eq!(length(&job, Hand::Left), Some(Length::from_um(703_600)));
    make(&mut job, &cut(&[(Hand::Left, None)]));
    assert_eq!(length(&job, Hand::Left), None);
    assert_eq!(job.cabinets[0].copies[0].as_cut.len(), 1);
    assert_eq!(length(&job, Hand::Right), Some(Length::from_mm(704)));
}
