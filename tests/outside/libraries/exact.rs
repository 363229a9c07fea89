//! Lengths and the grid against exact fractions.

use gablerow_core::grid::{Ends, Grid, HoleNumber, start_offsets};
use gablerow_core::measure::{Length, Unit, parse_length};
use num_rational::Ratio;
use proptest::prelude::*;

/// An exact number of mm.
type Mm = Ratio<i128>;

fn exact(length: Length) -> Mm {
    Mm::new(length.counts().into(), 8_000)
}

fn whole(mm: i128) -> Mm {
    Mm::from_integer(mm)
}

/// What is left of a length above whole pitches, from 0 on.
fn above_pitches(mm: Mm) -> Mm {
    mm - (mm / whole(32)).floor() * whole(32)
}

#[test]
fn every_64th_of_an_inch_is_exact_there_and_back() {
    for k in 0..=64 * 120 {
        let typed = format!("{k}/64 in");
        let length = parse_length(&typed, Unit::Millimetre).unwrap();
        // 1 in = 25.4 mm = 127/5. Source: US Federal Register notice of 1 July 1959.
        let inches = Mm::new(k, 64) * Mm::new(127, 5);
        assert_eq!(exact(length), inches, "{typed}");
        let again = parse_length(&length.exact_mm().to_string(), Unit::Millimetre).unwrap();
        assert_eq!(again, length);
    }
}

#[test]
fn a_128th_of_an_inch_lies_between_counts_and_is_refused() {
    let inch = Mm::new(1, 128) * Mm::new(127, 5);
    assert!(!(inch * whole(8_000)).is_integer());
    assert!(parse_length("1/128 in", Unit::Millimetre).is_err());
    assert!(parse_length("2/128 in", Unit::Millimetre).is_ok());
}

#[test]
fn sums_of_pitches_do_not_drift() {
    let grid = Grid {
        first: Length::from_inch_64ths(3),
    };
    let mut height = exact(grid.first);
    for number in 1..=400 {
        let hole = HoleNumber::new(number).unwrap();
        assert_eq!(exact(grid.height(hole)), height, "hole {number}");
        height += whole(32);
    }
}

/// A sum of decimals in mm and fractions in inches, typed and in exact fractions.
fn sums() -> impl Strategy<Value = (String, Mm)> {
    let decimal = (0..2_000_000_i128).prop_map(|um| {
        let text = format!("{}.{:03}", um / 1_000, um % 1_000);
        (text, Mm::new(um, 1_000))
    });
    let fraction = (0..60_i128, 0..64_i128).prop_map(|(inches, part)| {
        let text = format!("{inches} {part}/64 in");
        (text, (whole(inches) + Mm::new(part, 64)) * Mm::new(127, 5))
    });
    let term = prop_oneof![decimal, fraction];
    prop::collection::vec((any::<bool>(), term), 1..8).prop_map(|terms| {
        let mut text = String::new();
        let mut total = whole(0);
        for (less, (term, value)) in terms {
            text += &format!(" {} {term}", if less { '-' } else { '+' });
            total += if less { -value } else { value };
        }
        (text, total)
    })
}

proptest! {
    #[test]
    fn typed_sums_are_those_of_exact_fractions((text, total) in sums()) {
        let found = parse_length(&text, Unit::Millimetre).unwrap();
        prop_assert_eq!(exact(found), total, "{}", text);
    }

    #[test]
    fn balance_is_that_of_exact_fractions(
        height in 800_000..24_000_000,
        foot in 0..400_000,
        head in 0..400_000,
    ) {
        let [height, foot, head] = [height, foot, head].map(Length::from_counts);
        let ends = Ends { height, foot, head };
        let mut off = above_pitches(exact(height) - exact(foot) - exact(head));
        if off > whole(16) {
            off -= whole(32);
        }
        prop_assert_eq!(exact(ends.mismatch().wrapped()), off);

        let heights = ends.balanced_heights();
        let above = exact(heights.above) - exact(foot) - exact(head);
        prop_assert_eq!(above_pitches(above), whole(0));
        prop_assert!(heights.above >= height && exact(heights.above) < exact(height) + whole(32));
    }

    #[test]
    fn first_holes_are_those_of_exact_fractions(
        reveal in 0..800_000,
        half_gap in 0..80_000,
        end_min in 0..320_000,
    ) {
        let [reveal, gap, end_min] = [reveal, half_gap * 2, end_min].map(Length::from_counts);
        let found = start_offsets(reveal, gap, end_min);
        let middle = exact(reveal) - exact(gap) / whole(2);
        for (found, shift) in [(found.registered, 0), (found.shifted, 16)] {
            let mut wanted = above_pitches(middle + whole(shift));
            while wanted < exact(end_min) {
                wanted += whole(32);
            }
            prop_assert_eq!(exact(found), wanted);
        }
    }

    #[test]
    fn partitions_start_where_exact_fractions_say(
        first in 0..480_000,
        foot in 0..1_600_000,
        end_min in 0..160_000,
    ) {
        let [first, foot, end_min] = [first, foot, end_min].map(Length::from_counts);
        let found = Grid { first }.start_above(foot, end_min).unwrap();
        let mut number = 1;
        let mut height = exact(first);
        while height - exact(foot) < exact(end_min) {
            height += whole(32);
            number += 1;
        }
        prop_assert_eq!(found.hole.get(), number);
        prop_assert_eq!(exact(found.offset), height - exact(foot));
    }
}
