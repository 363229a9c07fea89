//! What is wrong with a text that should be a length.

use core::fmt;

use crate::measure::Length;

/// Why a text is not a length, and where.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct InputError {
    /// What is wrong.
    pub kind: InputErrorKind,
    /// Where it is wrong, in bytes from the start of the text; always at the edge of a character.
    pub at: usize,
    /// The same place in characters, the first being 1.
    pub column: usize,
}

/// What can be wrong with a text that should be a length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InputErrorKind {
    /// Nothing but spaces.
    Empty,
    /// A number should stand here: at the start, after a sign, or below a fraction stroke.
    NumberMissing,
    /// A character that can stand nowhere, or not here.
    Misplaced(char),
    /// A word that is no unit.
    UnknownUnit,
    /// A second decimal mark in one number.
    SecondDecimalMark,
    /// A fraction with a decimal number in it.
    DecimalInFraction,
    /// A fraction of so many nothings.
    DivisionByZero,
    /// Two lengths multiplied: an area.
    TwoLengths,
    /// A number of more digits than [`DIGITS_MAX`].
    TooManyDigits,
    /// A sum whose numbers grow past what can be worked out exactly.
    TooIntricate,
    /// Outside 268 m either way.
    TooLong,
    /// Between two counts of 1/8 µm.
    TooFine {
        /// The nearest length below it.
        below: Length,
        /// The nearest length above it.
        above: Length,
    },
}

/// The most digits a typed number can have, before and after its decimal mark taken together.
pub const DIGITS_MAX: usize = 12;

impl fmt::Display for InputError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.kind.has_place() {
            write!(f, "character {}: ", self.column)?;
        }
        self.kind.fmt(f)
    }
}

impl InputErrorKind {
    /// Whether it sits at one place of the text rather than in all of it.
    const fn has_place(self) -> bool {
        !matches!(
            self,
            Self::Empty | Self::TooIntricate | Self::TooLong | Self::TooFine { .. }
        )
    }
}

impl fmt::Display for InputErrorKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match *self {
            Self::Misplaced(char) => {
                let shown = char.escape_debug();
                return write!(
                    f,
                    "`{shown}` does not fit here; a sum is written with + - *"
                );
            }
            Self::TooManyDigits => {
                return write!(
                    f,
                    "more than {DIGITS_MAX} digits; round the number to 0.001 mm"
                );
            }
            Self::TooFine { below, above } => {
                let [below, above] = [below, above].map(Length::exact_mm);
                return write!(
                    f,
                    "finer than 1/8000 mm; type {below}mm or {above}mm instead"
                );
            }
            Self::Empty => "nothing typed; type a length such as 704 or 2' 4\"",
            Self::NumberMissing => "a number is missing; type one such as 704 or 1/2",
            Self::UnknownUnit => "not a unit of length; write mm, cm, m, in or ft, or leave it out",
            Self::SecondDecimalMark => "a second decimal mark; leave out marks between thousands",
            Self::DecimalInFraction => "a decimal in a fraction; write 23/32 or 0.71875",
            Self::DivisionByZero => "a fraction over 0; write one such as 23/32",
            Self::TwoLengths => "two lengths multiplied are an area; leave out one of the units",
            Self::TooIntricate => "too much to work out exactly; type the result instead",
            Self::TooLong => "longer than 268 m; check the units and the sum",
        })
    }
}

impl core::error::Error for InputError {}
