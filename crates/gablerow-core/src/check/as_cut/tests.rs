//! Proof of `as_cut`.

use super::super::fixture::*;
use super::*;
use crate::check::of_job;
use crate::job::{AsCut, FaceId, Reference};

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

/// What a rule says of the plain cabinet, its left side measured.
fn measured(rule: Rule, cut: AsCut) -> Vec<String> {
    said(rule, |case| {
        case.row(LEFT_SIDE, mm(37), 3, 5);
        case.row(LEFT_SIDE, mm(423), 3, 5);
        case.cabinet().copies[0].as_cut = [cut].into();
    })
}

const LEFT_SIDE: FaceId = FaceId {
    panel: PanelId::Side(LEFT),
    toward: RIGHT,
};

#[test]
fn a_panel_between_two_stops_says_its_length_by_its_play() {
    let of = |play| {
        let cut = AsCut {
            play: Some(um(play)),
            ..AsCut::of(PanelId::Side(LEFT))
        };
        measured(Rule::AsCutLength, cut)
    };
    assert_eq!(of(1_000), [""; 0]);
    assert_eq!(
        of(1_200),
        [
            "the left side of copy 1 was cut 1.2 too short, 702.8 for 704.0; over 1.0 it is cut again"
        ]
    );
    assert_eq!(of(-1_200).len(), 1, "it does not go in");
}

/// Over 560 of depth and 704 of height the diagonal is 899.56: 2.0 * 899.56 / 1408 is 1.277, and 386 / 560 of that 0.88. By hand.
#[test]
fn diagonals_say_how_far_rows_are_apart_in_height() {
    let of = |apart| {
        let cut = AsCut {
            diagonals: Some(um(apart)),
            ..AsCut::of(PanelId::Side(LEFT))
        };
        measured(Rule::FootEndNotSquare, cut)
    };
    assert_eq!(of(1_100), [""; 0]);
    assert_eq!(of(-2_000), of(2_000));
    assert_eq!(
        of(2_000),
        [
            "the diagonals of the left side of copy 1 are 2.0 apart: an end is ~1.3 out of square, and rows ~0.9 apart in height \
             if both ends lean alike, twice that if one is true"
        ]
    );
}

#[test]
fn a_board_is_as_thick_as_its_card_within_three_tenths() {
    let of = |thick| {
        let cut = AsCut {
            thickness: Some(um(thick)),
            ..AsCut::of(PanelId::Side(LEFT))
        };
        measured(Rule::AsCutThickness, cut)
    };
    assert_eq!(of(18_300), [""; 0]);
    assert_eq!(
        of(17_600),
        [
            "the left side of copy 1 is 17.6 thick, 18.0 by its card; over 0.3 off the bays beside it are as much off: measure the batch"
        ]
    );
}

/// Each side may be off by 1.0, and with diagonals apart that much more: rows that rest on either end then rock too much to be bored.
#[test]
fn nobody_bores_a_shelf_that_rocks_much() {
    let rules = |diagonals: [i32; 2]| {
        let mut case = Case::new();
        case.pins(1, 4, 8);
        case.shop().reference = Reference::OneStop;
        case.shop().rail = None;
        cut(&mut case, 703_700, 703_700);
        let cuts = &mut case.cabinet().copies[0].as_cut;
        for (cut, apart) in cuts.iter_mut().zip(diagonals) {
            cut.diagonals = Some(um(apart));
        }
        let found = of_job(&case.job).into_iter();
        let rock = |it: &Finding| matches!(it.rule, Rule::ShelfRocks | Rule::ShelfRocksMuch);
        let found: Vec<Rule> = found.filter(rock).map(|it| it.rule).collect();
        found
    };
    assert_eq!(rules([0, 0]), [Rule::ShelfRocks]);
    assert_eq!(rules([2_000, -2_000]), [Rule::ShelfRocksMuch]);
}

/// With one stop the left front and the right back row rest on the head: 0.3 short there, 0.3 long here, and the shelf is
/// twisted by 0.6.
#[test]
fn shelves_rock_by_the_errors_of_both_sides() {
    let with = |left, right| {
        said(Rule::ShelfRocks, |case| {
            case.pins(1, 4, 8);
            case.shop().reference = Reference::OneStop;
            case.shop().rail = None;
            cut(case, left, right);
        })
    };
    assert_eq!(with(703_700, 704_000), [""; 0]);
    assert_eq!(
        with(703_700, 703_700),
        [
            "shelves of bay 1 of copy 1 will rock 0.6, for its panels were cut longer or shorter and rest on either end"
        ]
    );
}
