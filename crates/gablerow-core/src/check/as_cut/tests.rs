//! Proof of `as_cut`.

use super::super::fixture::*;
use super::*;
use crate::job::AsCut;

/// The plain cabinet's copy, its sides 704 high, cut to these lengths.
fn cut(case: &mut Case, left: i32, right: i32) {
    let cut = |hand, length| AsCut {
        length: Some(um(length)),
        ..AsCut::of(PanelId::Side(hand))
    };
    case.cabinet().copies[0].as_cut = [cut(Hand::Left, left), cut(Hand::Right, right)].into();
}

fn length(left: i32) -> Vec<String> {
    said(Rule::AsCutLength, |case| cut(case, left, 704_000))
}

#[test]
fn a_panel_is_cut_again_beyond_a_millimetre_either_way() {
    assert_eq!(length(705_000), [""; 0]);
    assert_eq!(length(703_000), [""; 0]);
    assert_eq!(
        length(705_001),
        [
            "the left side of copy 1 was cut ~1.0 too long, ~705.0 for 704.0; over 1.0 it is cut again"
        ]
    );
    assert_eq!(length(702_999).len(), 1);
    assert_eq!(
        length(701_400),
        [
            "the left side of copy 1 was cut 2.6 too short, 701.4 for 704.0; over 1.0 it is cut again"
        ]
    );
}

#[test]
fn sides_of_one_copy_may_differ_by_half_a_millimetre() {
    let differ = |left, right| said(Rule::PairLengthsDiffer, |case| cut(case, left, right));
    assert_eq!(differ(704_300, 703_800), [""; 0]);
    assert_eq!(
        differ(704_300, 703_700),
        [
            "the sides of copy 1 are 0.6 apart, left 704.3 and right 703.7; over 0.5 the head slopes: trim the longer, or \
          pair it otherwise"
        ]
    );
    assert_eq!(differ(704_300, 703_799).len(), 1);
}

#[test]
fn what_was_not_measured_is_not_off() {
    let found = said(Rule::PairLengthsDiffer, |case| {
        cut(case, 704_900, 0);
        case.cabinet().copies[0].as_cut.pop();
    });
    assert_eq!(found, [""; 0]);
}
