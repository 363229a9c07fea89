//! Balanced and unbalanced panels, lengths in micrometres.

use super::*;
use proptest::prelude::*;

const END_MIN: Length = Length::from_mm(8);

fn um(um: i32) -> Length {
    Length::from_um(um)
}

fn alike(height: i32, offset: i32) -> Ends {
    Ends::alike(um(height), um(offset))
}

#[track_caller]
fn check(ends: Ends, count: u16, mismatch: i32) -> Balance {
    let row = ends.balance(END_MIN).unwrap();
    assert_eq!((row.count, row.mismatch.wrapped()), (count, um(mismatch)));
    assert_eq!(row.last + row.left, ends.height);
    row
}

// bal-723, bal-1952, bal-768. Derived.
#[test]
fn whole_pitches_between_the_offsets_are_balanced() {
    check(alike(723_000, 9_500), 23, 0);
    check(alike(1_952_000, 32_000), 60, 0);
    check(alike(768_000, 16_000), 24, 0);
}

// Derived.
#[test]
fn balance_of_five_panels() {
    check(alike(723_000, 9_500), 23, 0);
    let row = check(alike(720_000, 9_500), 22, -3_000);
    assert_eq!((row.last, row.left), (um(681_500), um(38_500)));
    check(alike(2_133_600, 9_500), 67, 2_600);
    check(alike(672_000, 16_000), 21, 0);
    check(alike(811_000, 16_000), 25, 11_000);
}

// turn-720, turn-84in, turn-774, turn-608, turn-864. Derived.
#[test]
fn turning_a_panel_moves_its_holes_by_the_mismatch() {
    for (height, offset, mismatch, balanced) in [
        (720_000, 9_500, -3_000, 723_000),
        (2_133_600, 9_500, 2_600, 2_131_000),
        (774_000, 19_000, 0, 774_000),
        (608_000, 46_500, 3_000, 605_000),
        (864_000, 37_000, -10_000, 874_000),
    ] {
        let ends = alike(height, offset);
        assert_eq!(ends.mismatch().signed(), Some(um(mismatch)));
        let heights = ends.balanced_heights();
        assert!(heights.below == Some(um(balanced)) || heights.above == um(balanced));
    }
}

// turn-784. Derived.
#[test]
fn half_a_pitch_off_has_no_direction() {
    let ends = alike(784_000, 32_000);
    assert_eq!(ends.mismatch().signed(), None);
    assert_eq!(ends.mismatch().size(), um(16_000));
    let expected = BalancedHeights {
        below: Some(um(768_000)),
        above: um(800_000),
    };
    assert_eq!(ends.balanced_heights(), expected);
}

// Derived: 811 with 16 is 11 off; 800 and 832 are balanced, and so is 811 with 21.5.
#[test]
fn unbalanced_height_has_neighbours_and_offsets_that_balance() {
    let ends = alike(811_000, 16_000);
    let row = check(ends, 25, 11_000);
    assert_eq!((row.last, row.left), (um(784_000), um(27_000)));
    let expected = BalancedHeights {
        below: Some(um(800_000)),
        above: um(832_000),
    };
    assert_eq!(ends.balanced_heights(), expected);
    let row = check(alike(811_000, 21_500), 25, 0);
    assert_eq!((row.last, row.left), (um(789_500), um(21_500)));
}

#[test]
fn panel_shorter_than_its_offsets_has_no_balanced_height_below() {
    let ends = alike(100_000, 60_000);
    assert_eq!(
        ends.balanced_heights(),
        BalancedHeights {
            below: None,
            above: um(120_000)
        }
    );
    assert_eq!(alike(20_000, 16_000).balance(END_MIN), None);
}

// rule-672. Common practice.
#[test]
fn side_of_672_has_21_holes_and_a_middle() {
    let ends = alike(672_000, 16_000);
    let row = check(ends, 21, 0);
    assert_eq!(
        (ends.foot, row.last, row.left),
        (um(16_000), um(656_000), um(16_000))
    );
    assert_eq!(row.middle_hole(), Some(11));
    assert_eq!(ends.from_head(11), um(336_000));
}

// rule-centre. Common practice.
#[test]
fn middle_hole_needs_an_odd_count() {
    let ends = alike(800_000, 16_000);
    let row = check(ends, 25, 0);
    assert_eq!(row.middle_hole(), Some(13));
    assert_eq!(ends.from_head(13), um(400_000));
    assert_eq!(check(alike(832_000, 16_000), 26, 0).middle_hole(), None);
    assert_eq!(
        check(alike(811_000, 16_000), 25, 11_000).middle_hole(),
        None
    );
}

// rule-stop. Common practice.
#[test]
fn stop_with_several_faces_on_a_side_of_800() {
    let on_16 = check(alike(800_000, 16_000), 25, 0);
    let on_32 = check(alike(800_000, 32_000), 24, 0);
    assert_eq!(on_16.last, um(784_000));
    assert_eq!(on_32.last - um(16_000), on_16.last - Length::PITCH);
    assert_eq!(alike(800_000, 11_000).mismatch().signed(), Some(um(10_000)));
}

// pins-cut. Derived: a length error is a mismatch, and a head stop of that much more cures it.
#[test]
fn cutting_error_is_the_mismatch_of_a_balanced_plan() {
    assert_eq!(alike(799_600, 16_000).mismatch().signed(), Some(um(-400)));
    assert_eq!(alike(797_000, 16_000).mismatch().signed(), Some(um(-3_000)));
    let cured = Ends {
        height: um(797_000),
        foot: um(16_000),
        head: um(13_000),
    };
    assert_eq!(cured.mismatch().signed(), Some(um(0)));
}

#[test]
fn balanced_up_to_three_tenths() {
    for (height, balanced) in [
        (799_700, true),
        (800_300, true),
        (799_699, false),
        (800_301, false),
    ] {
        assert_eq!(alike(height, 16_000).mismatch().is_balanced(), balanced);
    }
    check(alike(799_700, 16_000), 25, -300);
    check(alike(800_300, 16_000), 25, 300);
}

prop_compose! {
    fn any_ends()(
        height in 800_000..=32_000_000,
        foot in 40_000..=1_600_000,
        head in 40_000..=1_600_000,
    ) -> Ends {
        let [height, foot, head] = [height, foot, head].map(Length::from_counts);
        Ends { height, foot, head }
    }
}

proptest! {
    #[test]
    fn mismatch_is_at_most_half_a_pitch(ends in any_ends()) {
        prop_assert!(ends.mismatch().size() <= um(16_000));
    }

    #[test]
    fn mismatch_repeats_each_pitch(ends in any_ends()) {
        let taller = Ends { height: ends.height + Length::PITCH, ..ends };
        prop_assert_eq!(taller.mismatch(), ends.mismatch());
    }

    #[test]
    fn turning_twice_is_no_turn(ends in any_ends()) {
        let turned = Ends { foot: ends.head, head: ends.foot, ..ends };
        let back = Ends { foot: turned.head, head: turned.foot, ..turned };
        prop_assert_eq!(back, ends);
        prop_assert_eq!(turned.mismatch(), ends.mismatch());
    }

    #[test]
    fn mismatch_is_nothing_exactly_when_the_height_is_balanced(ends in any_ends()) {
        let heights = ends.balanced_heights();
        let balanced = heights.below == Some(ends.height) && heights.above == ends.height;
        prop_assert_eq!(ends.mismatch().wrapped() == Length::ZERO, balanced);
    }

    #[test]
    fn balanced_heights_enclose_the_height_and_are_balanced(ends in any_ends()) {
        let BalancedHeights { below, above } = ends.balanced_heights();
        prop_assert!(above >= ends.height);
        for height in below.into_iter().chain([above]) {
            let mismatch = Ends { height, ..ends }.mismatch();
            prop_assert_eq!(mismatch.wrapped(), Length::ZERO);
        }
        if let Some(below) = below {
            prop_assert!(below <= ends.height && above - below <= Length::PITCH);
        }
    }

    #[test]
    fn balancing_offsets_balance_to_the_count(height in 800_000..=32_000_000) {
        let height = Length::from_counts(height);
        let odd = Length::from_counts(height.counts() % 2);
        for found in balancing_offsets(height, END_MIN) {
            prop_assert_eq!(Ends::alike(height, found.offset).mismatch().wrapped(), odd);
            prop_assert_eq!(found.usable, found.offset >= END_MIN);
        }
    }

    #[test]
    fn holes_from_the_head_stand_off_by_the_mismatch(ends in any_ends(), hole in 1_u16..100) {
        let off = (ends.from_head(hole) - ends.foot).wrap_to(Length::PITCH);
        prop_assert_eq!(off, ends.mismatch().wrapped());
    }
}
