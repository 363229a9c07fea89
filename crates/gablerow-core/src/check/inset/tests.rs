//! Proof of `inset`.

use std::string::String;

use super::super::fixture::*;
use super::*;
use crate::job::{Front, FrontKind, Inset, Key, Label};

/// What is said of a door of 19 inside the left bay, set in by 1, beside a partition with this recess.
fn with_recess(recess: i32) -> Vec<String> {
    said(Rule::InsetBeforeEdge, |case| {
        case.part_in_two().recess = mm(recess);
        case.bay(1).inset = Some(Inset {
            front: Some(mm(19)),
            set_in: mm(1),
        });
        let door = Front::plain(
            Key(30),
            Label::new("door 1").unwrap(),
            FrontKind::Door(LEFT),
        );
        case.cabinet().opening.each_mut(&mut |opening| {
            if opening.key == Key(1) {
                opening.fronts = vec![door.clone()];
            }
        });
    })
}

#[test]
fn a_partition_may_be_recessed_as_long_as_its_edge_is_beside_the_front() {
    assert_eq!(with_recess(0), Vec::<String>::new());
    assert_eq!(with_recess(19), Vec::<String>::new());
    assert_eq!(
        with_recess(20),
        [
            "door 1 stands inside, 1.0-20.0 behind the carcass front, but the edge of partition 1 is 20.0 behind it; recess that less, or let the front lap over"
        ]
    );
}
