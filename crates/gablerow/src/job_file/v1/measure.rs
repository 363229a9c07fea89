//! Lengths as decimals in mm, read and written exactly; and what is either such a length or a word.

use std::borrow::Cow;
use std::fmt;

use gablerow_core::job;
use gablerow_core::measure::Length;
use serde::de::{self, Deserialize, Deserializer, Visitor};
use serde::ser::{Error as _, Serialize, Serializer};
use serde_json::value::RawValue;

use super::text::TextForm;
use super::twin::Twin;
use crate::job_file::wrong::Wrong;

/// The finest digits of a millimetre that a length has: 0.000125 mm is one count.
const DECIMALS: usize = 6;

/// A length in mm as it is written: an optional minus, digits, and at most six decimals.
///
/// # Errors
/// A sentence when the text has an exponent, is finer than a length can be, or longer.
///
/// # Example
/// `18.6` is 18 * 8000 + 600 000 / 125 = 148 800 counts of 1/8 µm.
pub(super) fn parse_mm(written: &str) -> Result<Length, String> {
    if written.contains(['e', 'E']) {
        return Err(format!(
            "{written}, but a length is written out, such as 704 or 18.6"
        ));
    }
    let (sign, digits) = match written.strip_prefix('-') {
        Some(digits) => (-1, digits),
        None => (1, written),
    };
    let (whole, decimals) = digits.split_once('.').unwrap_or((digits, ""));
    let decimals = decimals.trim_end_matches('0');
    let millionths = format!("{decimals:0<DECIMALS$}").parse::<i64>();
    let fine = || format!("{written}, but the smallest step of a length is 0.000125 mm");
    let long = || format!("{written}, but no length is over 268 m");
    if decimals.len() > DECIMALS {
        return Err(fine());
    }
    let millionths = millionths.map_err(|_| fine())?;
    let per_count = 1_000_000 / i64::from(Length::COUNTS_PER_MM);
    if millionths % per_count != 0 {
        return Err(fine());
    }
    let whole = whole.parse::<i64>().map_err(|_| long())?;
    whole
        .checked_mul(i64::from(Length::COUNTS_PER_MM))
        .and_then(|counts| counts.checked_add(millionths / per_count))
        .and_then(|counts| i32::try_from(sign * counts).ok())
        .map(Length::from_counts)
        .ok_or_else(long)
}

/// What is written either as a length or as a word.
pub(in crate::job_file) trait MeasureForm: Sized {
    /// What is meant, for the message when something else stands there.
    const MEANT: &str;

    /// The value of a length.
    fn of_length(length: Length) -> Self;

    /// The value of a word, or a sentence on what is wrong with it.
    fn of_word(word: &str) -> Result<Self, String>;

    /// The length or the word it is written as.
    fn written(&self) -> Written;
}

/// How a value is written.
pub(in crate::job_file) enum Written {
    /// As a number.
    Length(Length),
    /// As a text.
    Word(Cow<'static, str>),
}

/// A core value that is written as a length in mm or as a word.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(in crate::job_file) struct Measure<T>(T);

/// A length in mm.
pub(in crate::job_file) type Mm = Measure<Length>;

impl<T: MeasureForm + Clone> Twin for Measure<T> {
    type Core = T;

    fn of(core: &T) -> Self {
        Self(core.clone())
    }

    fn into_core(self) -> Result<T, Wrong> {
        Ok(self.0)
    }
}

impl<T: MeasureForm> Serialize for Measure<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0.written() {
            Written::Length(length) => RawValue::from_string(length.exact_mm().to_string())
                .map_err(S::Error::custom)?
                .serialize(serializer),
            Written::Word(word) => serializer.serialize_str(&word),
        }
    }
}

impl<'de, T: MeasureForm> Deserialize<'de> for Measure<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Either<T>(std::marker::PhantomData<T>);

        impl<T: MeasureForm> Visitor<'_> for Either<T> {
            type Value = Measure<T>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(T::MEANT)
            }

            fn visit_bytes<E: de::Error>(self, number: &[u8]) -> Result<Measure<T>, E> {
                let written = std::str::from_utf8(number).map_err(E::custom)?;
                let length = parse_mm(written).map_err(E::custom)?;
                Ok(Measure(T::of_length(length)))
            }

            fn visit_str<E: de::Error>(self, word: &str) -> Result<Measure<T>, E> {
                T::of_word(word).map(Measure).map_err(E::custom)
            }
        }

        // Whoever asks for bytes gets numbers as they are written.
        deserializer.deserialize_bytes(Either(std::marker::PhantomData))
    }
}

fn other<T: MeasureForm>(word: &str) -> Result<T, String> {
    Err(format!("\"{word}\", but it is {}", T::MEANT))
}

impl MeasureForm for Length {
    const MEANT: &str = "a length in mm without quotes, such as 704 or 18.6";

    fn of_length(length: Length) -> Self {
        length
    }

    fn of_word(word: &str) -> Result<Self, String> {
        other(word)
    }

    fn written(&self) -> Written {
        Written::Length(*self)
    }
}

impl MeasureForm for job::Depth {
    const MEANT: &str = "\"shop\", \"through\", or a depth in mm such as 12";

    fn of_length(length: Length) -> Self {
        Self::Blind(length)
    }

    fn of_word(word: &str) -> Result<Self, String> {
        match word {
            "shop" => Ok(Self::Shop),
            "through" => Ok(Self::Through),
            _ => other(word),
        }
    }

    fn written(&self) -> Written {
        match self {
            Self::Shop => Written::Word("shop".into()),
            Self::Through => Written::Word("through".into()),
            Self::Blind(depth) => Written::Length(*depth),
        }
    }
}

/// How deep a single bore is; core says through as no depth.
impl MeasureForm for Option<Length> {
    const MEANT: &str = "\"through\", or a depth in mm such as 12";

    fn of_length(length: Length) -> Self {
        Some(length)
    }

    fn of_word(word: &str) -> Result<Self, String> {
        match word {
            "through" => Ok(None),
            _ => other(word),
        }
    }

    fn written(&self) -> Written {
        match self {
            None => Written::Word("through".into()),
            Some(depth) => Written::Length(*depth),
        }
    }
}

impl MeasureForm for job::PartWidth {
    const MEANT: &str = "\"equal\", or a width in mm such as 450";

    fn of_length(length: Length) -> Self {
        Self::Fixed(length)
    }

    fn of_word(word: &str) -> Result<Self, String> {
        match word {
            "equal" => Ok(Self::Equal),
            _ => other(word),
        }
    }

    fn written(&self) -> Written {
        match self {
            Self::Equal => Written::Word("equal".into()),
            Self::Fixed(width) => Written::Length(*width),
        }
    }
}

impl MeasureForm for job::ShelfHeight {
    const MEANT: &str =
        "a hole such as \"foot 12\", or the height of the underside in mm such as 350";

    fn of_length(length: Length) -> Self {
        Self::Underside(length)
    }

    fn of_word(word: &str) -> Result<Self, String> {
        match job::HolePlace::parse(word) {
            Ok(place) => Ok(Self::Hole(place)),
            Err(_) => other(word),
        }
    }

    fn written(&self) -> Written {
        match self {
            Self::Hole(place) => Written::Word(place.to_string().into()),
            Self::Underside(height) => Written::Length(*height),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn decimals_are_read_exactly() {
        let counts = |text| parse_mm(text).map(Length::counts);
        assert_eq!(counts("704"), Ok(704 * 8000));
        assert_eq!(counts("18.6"), Ok(148_800));
        assert_eq!(counts("0.000125"), Ok(1));
        assert_eq!(counts("-0.396875"), Ok(-3_175));
        assert_eq!(counts("18.6000000000"), Ok(148_800));
        assert_eq!(counts("-0"), Ok(0));
    }

    #[test]
    fn what_no_length_can_be_is_refused_in_words() {
        let wrong = |text: &str, message: &str| assert_eq!(parse_mm(text), Err(message.into()));
        wrong(
            "0.0001",
            "0.0001, but the smallest step of a length is 0.000125 mm",
        );
        wrong(
            "0.0000001",
            "0.0000001, but the smallest step of a length is 0.000125 mm",
        );
        wrong(
            "7.04e2",
            "7.04e2, but a length is written out, such as 704 or 18.6",
        );
        wrong("268435.456", "268435.456, but no length is over 268 m");
        let long = "9".repeat(400);
        wrong(&long, &format!("{long}, but no length is over 268 m"));
    }

    proptest! {
        #[test]
        fn a_written_length_is_read_as_itself(counts: i32) {
            let length = Length::from_counts(counts);
            prop_assert_eq!(parse_mm(&length.exact_mm().to_string()), Ok(length));
        }
    }
}
