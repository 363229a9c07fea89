//! Proof of `balance`.

use super::super::fixture::*;
use super::*;
use alloc::string::String;

fn sized(height: Length, offset: Length, reference: Reference) -> impl Fn(&mut Case) {
    move |case| {
        case.cabinet().size.height = height;
        case.cabinet().offsets.foot = offset;
        case.cabinet().offsets.head = offset;
        case.shop().reference = reference;
        case.pins(1, 4, 8);
    }
}

fn says(rule: Rule, height: Length, offset: Length, reference: Reference) -> Vec<String> {
    said(rule, sized(height, offset, reference))
}

#[test]
fn side_of_672_with_offset_9_5_is_13_out() {
    assert_eq!(
        says(Rule::Unbalanced, mm(672), um(9_500), Reference::Foot),
        [
            "672.0 high is 13.0 out, holes from the head fall above those from the foot; \
          keep every row on the foot, or 659.0 or 691.0 high, or offsets 16.0"
        ]
    );
}

#[test]
fn balanced_is_up_to_0_3_either_way() {
    for (height, noted) in [
        (um(704_300), false),
        (um(704_301), true),
        (um(703_700), false),
        (um(703_699), true),
    ] {
        let said = says(Rule::Unbalanced, height, mm(16), Reference::Foot);
        assert_eq!(!said.is_empty(), noted, "{height:?}");
        let said = says(Rule::UnbalancedTurned, height, mm(16), Reference::OneStop);
        assert_eq!(!said.is_empty(), noted, "{height:?}");
    }
}

#[test]
fn pair_of_797_with_one_stop_rocks_6() {
    let found = found(
        Rule::UnbalancedTurned,
        sized(mm(797), mm(16), Reference::OneStop),
    );
    assert_eq!(
        found[0].message,
        "797.0 high is 3.0 out: left front and right back rest on the head, shelves rock 6.0; \
         rows from one end, or 768.0 or 800.0 high, or offsets 14.5 or 30.5"
    );
    assert_eq!(found.len(), 2);
}

#[test]
fn every_row_on_the_foot_is_no_stop() {
    assert_eq!(
        says(Rule::UnbalancedTurned, mm(797), mm(16), Reference::Foot),
        [""; 0]
    );
    assert_eq!(
        says(Rule::Unbalanced, mm(797), mm(16), Reference::OneStop),
        [""; 0]
    );
}

#[test]
fn height_of_25_pitches_is_10_out_with_offset_11() {
    assert_eq!(
        says(
            Rule::HeightMultipleOnly,
            mm(800),
            mm(11),
            Reference::OneStop
        ),
        [
            "25 whole pitches, but 10.0 out once 11.0 is taken from each end: \
          left front and right back rest on the head, shelves rock 20.0; rows from one end, \
          or 790.0 or 822.0 high, or offsets 16.0"
        ]
    );
    assert_eq!(
        says(Rule::UnbalancedTurned, mm(800), mm(11), Reference::OneStop),
        [""; 0]
    );
}

#[test]
fn height_of_whole_pitches_passes_with_offset_16_or_32() {
    for offset in [mm(16), mm(32)] {
        assert_eq!(
            says(
                Rule::HeightMultipleOnly,
                mm(800),
                offset,
                Reference::OneStop
            ),
            [""; 0]
        );
    }
}

#[test]
fn half_a_pitch_has_no_direction() {
    assert_eq!(
        says(Rule::Unbalanced, mm(720), mm(16), Reference::Foot),
        [
            "720.0 high is 16.0 out, holes from the head fall midway between; \
          keep every row on the foot, or 704.0 or 736.0 high, or offsets 8.0 or 24.0"
        ]
    );
}

#[test]
fn whole_side_on_the_head_slopes_the_shelf() {
    // A recess of 250 leaves both rows in the back half: the right side's rest on the head.
    let said = said(Rule::UnbalancedTurned, |case| {
        sized(mm(797), mm(16), Reference::OneStop)(case);
        case.bay(1).recess = mm(250);
    });
    assert!(said[0].contains(
        "right front and right back rest on the head, shelves slope 3.0 from side to side"
    ));
}

#[test]
fn face_with_rows_of_its_own_on_both_ends() {
    let found = found(Rule::UnbalancedTurned, |case| {
        case.cabinet().size.height = mm(797);
        case.shop().reference = Reference::OneStop;
        case.row(left_side(), mm(60), 4, 8);
        case.row(left_side(), mm(400), 4, 8);
    });
    assert_eq!(found.len(), 1);
    assert!(
        found[0]
            .message
            .contains("front rows rest on the head, back rows on the foot")
    );
}

#[test]
fn face_with_one_row_turns_nothing() {
    let found = found(Rule::UnbalancedTurned, |case| {
        case.cabinet().size.height = mm(797);
        case.shop().reference = Reference::OneStop;
        case.plate(1, LEFT, 4);
    });
    assert!(found.is_empty());
}

#[test]
fn drawer_whose_rows_are_all_in_front_slopes() {
    let said = said(Rule::UnbalancedTurned, |case| {
        case.cabinet().size.height = mm(797);
        case.shop().reference = Reference::OneStop;
        case.runner(1, 6, 250);
    });
    assert_eq!(
        said,
        [
            "797.0 high is 3.0 out: left front and left back rest on the head, drawers slope 3.0 from side to side; \
             rows from one end, or 768.0 or 800.0 high, or offsets 14.5 or 30.5"
        ]
    );
}
