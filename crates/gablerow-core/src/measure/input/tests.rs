//! Texts people type, and texts nobody should.

use super::InputErrorKind as Kind;
use super::*;
use proptest::prelude::*;

const MM: Unit = Unit::Millimetre;
const IN: Unit = Unit::Inch;

#[track_caller]
fn check(text: &str, display: Unit, expected: Length) {
    assert_eq!(parse_length(text, display), Ok(expected), "{text}");
}

#[track_caller]
fn check_um(text: &str, um: i32) {
    check(text, MM, Length::from_um(um));
}

/// In 64ths of an inch, with inches as the display unit.
#[track_caller]
fn check_64ths(text: &str, sixty_fourths: i32) {
    check(text, IN, Length::from_inch_64ths(sixty_fourths));
}

#[track_caller]
fn check_error(text: &str, at: usize, kind: Kind) {
    let error = parse_length(text, MM).unwrap_err();
    assert_eq!((error.at, error.kind), (at, kind), "{text}");
}

#[test]
fn millimetres() {
    for text in [
        "704", " 704 ", "704mm", "704 MM", "70.4cm", "0.704m", "704.0", "704.", "+704",
    ] {
        check_um(text, 704_000);
    }
    check_um("704.5", 704_500);
    check_um("704,5", 704_500);
    check_um("71.5cm", 715_000);
    check_um("0.7m", 700_000);
    check_um(".5", 500);
    check_um("704 1/2", 704_500);
    check_um("-18.6", -18_600);
    check_um("\u{2212}18.6", -18_600);
    check("0.000125", MM, Length::from_counts(1));
}

// Derived: 31 5/16 in = 795.3375 mm = 6 362 700 counts.
#[test]
fn inches() {
    check("31 5/16\"", MM, Length::from_counts(6_362_700));
    check("31.3125\"", MM, Length::from_counts(6_362_700));
    let expected = 27 * 64 + 46;
    for text in [
        "27 23/32",
        "27 23/32\"",
        "27-23/32\"",
        "27-23/32",
        "27  23 / 32 in",
        "27.71875",
    ] {
        check_64ths(text, expected);
    }
    for text in [
        "27\u{2033}",
        "27\u{201d}",
        "27\u{201c}",
        "27''",
        "27in",
        "27 inch",
        "27 Inches",
    ] {
        check(text, MM, Length::from_inch_64ths(27 * 64));
    }
    check_64ths("23/32\"", 46);
    check_64ths("-1 1/2\"", -96);
    check("27-23/32\"", MM, Length::from_inch_64ths(expected));
}

#[test]
fn feet_and_inches() {
    for text in [
        "2' 4\"",
        "2'4\"",
        "2'-4\"",
        "2' 4",
        "2 ft 4 in",
        "2ft4in",
        "2 feet 4 inches",
        "28\"",
        "2\u{2032} 4\u{2033}",
        "2\u{2019} 4\u{201d}",
        "2\u{2018}4''",
        "2 1/3'",
        "2'+4\"",
    ] {
        check(text, MM, Length::from_inch_64ths(28 * 64));
    }
    for text in [
        "2'4 1/2\"",
        "2' 4-1/2\"",
        "2'-4 1/2\"",
        "2'-4-1/2\"",
        "2' 4.5",
    ] {
        check(text, MM, Length::from_inch_64ths(28 * 64 + 32));
    }
    check("2'", MM, Length::from_inch_64ths(24 * 64));
    check("2' 1/2\"", MM, Length::from_inch_64ths(24 * 64 + 32));
}

#[test]
fn hyphen_joins_inches_and_subtracts_anything_else() {
    check_um("704-1/2", 703_500);
    check_um("704-1/2mm", 703_500);
    check_um("2'-18mm", 609_600 - 18_000);
    check_um("2'-18", 609_600 - 18_000);
    check_64ths("2'-18", 42 * 64);
    check_64ths("30-1/2", 30 * 64 + 32);
    check_64ths("30 - 1/2", 29 * 64 + 32);
    check_64ths("30-2-1/2", 27 * 64 + 32);
    check_64ths("30-2", 28 * 64);
}

#[test]
fn small_sums() {
    check_um("22*32", 704_000);
    check_um("32*22+16", 720_000);
    check_um("16 + 32 \u{d7} 22", 720_000);
    check_um("704-2*18.2", 667_600);
    check_um("704 - 2*18.2 - 3", 664_600);
    check_um("704/2", 352_000);
    check_um("2*3*4", 24_000);
    check_64ths("2*3 1/2", 7 * 64);
}

#[test]
fn units_belong_to_their_term() {
    check_um("2' + 16", 609_600 + 16_000);
    check_um("1\" + 1cm + 1", 25_400 + 10_000 + 1_000);
    check_um("22*32mm", 704_000);
    check_um("2*1.5*1\"", 76_200);
    check("22*32mm", IN, Length::from_mm(704));
    check("1 + 16mm", IN, Length::from_um(25_400 + 16_000));
    check_um("2*2' 4\"", 2 * 28 * 25_400);
}

#[test]
fn finer_parts_may_add_up_to_whole_counts() {
    check_64ths("1/128 + 1/128", 1);
    check_um("3*1/3", 1_000);
}

// unit-64. Derived: 1/128 in = 127/640 mm is 1587.5 counts of 1/8000 mm.
#[test]
fn finer_than_a_count_is_refused_with_its_neighbours() {
    let [below, above] = [1_587, 1_588].map(Length::from_counts);
    check_error("1/128\"", 0, Kind::TooFine { below, above });
    assert_eq!(
        parse_length("1/128\"", MM).unwrap_err().to_string(),
        "finer than 1/8000 mm; type 0.198375mm or 0.1985mm instead"
    );
    check("0.198375mm", IN, below);
    check_error(
        " 1/3",
        1,
        Kind::TooFine {
            below: Length::from_counts(2_666),
            above: Length::from_counts(2_667),
        },
    );
    check_error(
        "-1/128\"",
        0,
        Kind::TooFine {
            below: -above,
            above: -below,
        },
    );
}

#[test]
fn errors_know_kind_and_place() {
    check_error("", 0, Kind::Empty);
    check_error("  ", 0, Kind::Empty);
    check_error("704+", 4, Kind::NumberMissing);
    check_error("--2", 1, Kind::NumberMissing);
    check_error("22**32", 3, Kind::NumberMissing);
    check_error("mm", 0, Kind::NumberMissing);
    check_error("\"", 0, Kind::NumberMissing);
    check_error(".", 0, Kind::NumberMissing);
    check_error("1/", 2, Kind::NumberMissing);
    check_error("(704)", 0, Kind::Misplaced('('));
    check_error("704 18", 4, Kind::Misplaced('1'));
    check_error("2' 18mm", 3, Kind::Misplaced('1'));
    check_error("704 mm 2", 7, Kind::Misplaced('2'));
    check_error("1/2/3", 3, Kind::Misplaced('/'));
    check_error("704 km", 4, Kind::UnknownUnit);
    check_error("22x32", 2, Kind::UnknownUnit);
    check_error("1,234.5", 5, Kind::SecondDecimalMark);
    check_error("1.5/2", 0, Kind::DecimalInFraction);
    check_error("3/1.5", 2, Kind::DecimalInFraction);
    check_error("27 1/0\"", 5, Kind::DivisionByZero);
    check_error("27-1/0\"", 5, Kind::DivisionByZero);
    check_error("2mm*3mm", 4, Kind::TwoLengths);
    check_error("1234567890123", 0, Kind::TooManyDigits);
    check_error("1+0.000000000001", 2, Kind::TooManyDigits);
    check_error("268436", 0, Kind::TooLong);
    check_error("999999999999 ft", 0, Kind::TooLong);
    check_error(
        "999999999999*999999999999*999999999999*999999999999",
        39,
        Kind::TooIntricate,
    );
    check_error(
        "1/999999999989+1/999999999961+1/999999999959+1/999999999937",
        45,
        Kind::TooIntricate,
    );
}

#[test]
fn sentences_say_what_where_and_what_next() {
    let sentence = |text| parse_length(text, MM).unwrap_err().to_string();
    let expected = [
        ("", "nothing typed; type a length such as 704 or 2' 4\""),
        (
            "704+",
            "character 5: a number is missing; type one such as 704 or 1/2",
        ),
        (
            "3\u{2033}=",
            "character 3: `=` does not fit here; a sum is written with + - *",
        ),
        (
            "7 \u{7}",
            "character 3: `\\u{7}` does not fit here; a sum is written with + - *",
        ),
        (
            "7 ell",
            "character 3: not a unit of length; write mm, cm, m, in or ft, or leave it out",
        ),
        (
            "1.2.3",
            "character 4: a second decimal mark; leave out marks between thousands",
        ),
        (
            "1.5/2",
            "character 1: a decimal in a fraction; write 23/32 or 0.71875",
        ),
        (
            "1/0",
            "character 3: a fraction over 0; write one such as 23/32",
        ),
        (
            "2mm*3mm",
            "character 5: two lengths multiplied are an area; leave out one of the units",
        ),
        (
            "1234567890123",
            "character 1: more than 12 digits; round the number to 0.001 mm",
        ),
        ("300m", "longer than 268 m; check the units and the sum"),
    ];
    for (text, expected) in expected {
        assert_eq!(sentence(text), expected);
    }
}

#[test]
fn signs_change_the_value_that_stands_there() {
    let onto = |text| parse_onto(text, Length::from_mm(704), MM);
    assert_eq!(onto(" +2"), Ok(Length::from_mm(706)));
    assert_eq!(onto("-2"), Ok(Length::from_mm(702)));
    assert_eq!(onto("\u{2212}2+1"), Ok(Length::from_mm(703)));
    assert_eq!(onto("0-2"), Ok(Length::from_mm(-2)));
    assert_eq!(onto("720"), Ok(Length::from_mm(720)));
    assert_eq!(onto(" +268000").unwrap_err().kind, Kind::TooLong);
    assert_eq!(onto(" +268000").unwrap_err().at, 1);
    assert_eq!(onto("+").unwrap_err().kind, Kind::NumberMissing);
}

// unit-trip. Derived: every 64th of an inch is a whole count.
#[test]
fn all_64ths_up_to_10_feet_are_read_back_exactly() {
    for sixty_fourths in 0..=10 * 12 * 64 {
        let length = Length::from_inch_64ths(sixty_fourths);
        for unit in [MM, IN] {
            check(&length.exact(unit).to_string(), unit, length);
        }
        check(&format!("{sixty_fourths}/64\""), MM, length);
        if sixty_fourths % 2 == 0 {
            check(&length.inches_32().to_string(), MM, length);
        }
    }
}

/// Texts made of what lengths are made of, so that many get far into the reader.
fn any_near_miss() -> impl Strategy<Value = String> {
    "([0-9]{1,7}|[ .,/*+'\"\u{2032}\u{2212}\u{d7}-]|mm|cm|m|in|ft|1/2|\\PC){0,12}"
}

proptest! {
    #[test]
    fn exact_text_is_read_back_to_the_same_length(counts in any::<i32>()) {
        let length = Length::from_counts(counts);
        for unit in [MM, IN] {
            prop_assert_eq!(parse_length(&length.exact(unit).to_string(), unit), Ok(length));
        }
    }

    #[test]
    fn exact_text_of_round_measures_is_read_back(steps in -40_000..40_000, step in 0_usize..4) {
        let length = Length::from_counts([127, 1_016, 3_175, 8_000][step]) * steps;
        for unit in [MM, IN] {
            prop_assert_eq!(parse_length(&length.exact(unit).to_string(), unit), Ok(length));
        }
    }

    #[test]
    fn any_text_is_a_length_or_an_error_at_an_edge(text in any::<String>()) {
        check_any(&text)?;
    }

    #[test]
    fn near_misses_are_a_length_or_an_error_at_an_edge(text in any_near_miss()) {
        check_any(&text)?;
    }

    /// Against fractions of a millimetre over one common denominator.
    #[test]
    fn sums_of_pitches_inches_and_micrometres_do_not_drift(
        terms in prop::collection::vec((0_i32..30, 0_i32..640, -9_999_i32..9_999), 1..40),
    ) {
        let sum: Length = terms
            .iter()
            .map(|&(pitches, sixty_fourths, um)| {
                let inches = Length::from_inch_64ths(sixty_fourths);
                Length::PITCH * pitches + inches + Length::from_um(um)
            })
            .sum();
        // A pitch, 127/320 mm and 1/1000 mm, each over 8000.
        let eight_thousandths: i128 = terms
            .iter()
            .map(|&(pitches, sixty_fourths, um)| {
                let [pitches, sixty_fourths, um] = [pitches, sixty_fourths, um].map(i128::from);
                32 * 8_000 * pitches + 127 * 25 * sixty_fourths + 8 * um
            })
            .sum();
        prop_assert_eq!(i128::from(sum.counts()), eight_thousandths);

        let text: String = terms
            .iter()
            .map(|&(pitches, sixty_fourths, um)| {
                format!("+ {pitches}*32 + {sixty_fourths}/64\" - {}/1000*1", -um)
                    .replace("- -", "+ ")
            })
            .collect();
        prop_assert_eq!(parse_length(&text, MM), Ok(sum));
    }
}

/// Reading may fail, but says where; and typing over nothing is the same as typing.
fn check_any(text: &str) -> Result<(), TestCaseError> {
    for unit in [MM, IN] {
        let read = parse_length(text, unit);
        if let Err(error) = read {
            prop_assert!(text.is_char_boundary(error.at));
            prop_assert_eq!(error.column, text[..error.at].chars().count() + 1);
            prop_assert!(!error.to_string().is_empty());
        }
        prop_assert_eq!(parse_onto(text, Length::ZERO, unit), read);
    }
    Ok(())
}
