//! Lengths as they are typed: one number, or a small sum.
//!
//! ```text
//! sum       [+|-] product { (+|-) product }
//! product   quantity { * quantity }              at most one of them with a unit
//! quantity  number [unit] | number ' [number "]
//! number    704 | 704.5 | 704,5 | 23/32 | 27 23/32 | 27-23/32 (inches only)
//! unit      mm | cm | m | in | " | ft | '        also inch, inches, foot, feet
//! ```
//!
//! A comma is a decimal mark, never one between thousands. A bare number is in the display unit,
//! but in a product with a unit it is a plain factor. Everything is worked out in exact fractions,
//! and only the result must be a whole count of 1/8 µm.

mod cursor;
mod error;
mod number;
mod quantity;
mod ratio;
#[cfg(test)]
mod tests;

pub use error::{DIGITS_MAX, InputError, InputErrorKind};

use self::cursor::{Cursor, is_minus, is_plus, is_times};
use self::quantity::{Quantity, counts_per};
use self::ratio::Ratio;
use super::{Length, Unit};

/// Reads a length; a bare number is in `display`.
///
/// # Errors
///
/// - [`InputErrorKind`] lists what can be wrong; the error knows the place and the way out.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::{Length, Unit, parse_length};
///
/// let read = |text| parse_length(text, Unit::Millimetre).unwrap();
/// assert_eq!(read("704,5"), Length::from_um(704_500));
/// assert_eq!(read("22*32 + 2' 4\""), Length::from_um(704_000 + 28 * 25_400));
/// ```
pub fn parse_length(text: &str, display: Unit) -> Result<Length, InputError> {
    let mut cursor = Cursor::new(text);
    cursor.skip_spaces();
    if cursor.peek().is_none() {
        return Err(Cursor::new(text).error(InputErrorKind::Empty));
    }
    let start = cursor;
    let counts = cursor.sum(display)?;
    whole_counts(counts).map_err(|kind| start.error(kind))
}

/// Reads a length typed over a value: `+2` and `-2` change that value, anything else replaces it.
///
/// A negative value is therefore typed as `0-2`. A field that shows one must not be read back with
/// this unless it was changed.
///
/// # Errors
///
/// - As [`parse_length`], also when the changed value is outside the range.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::{Length, Unit, parse_onto};
///
/// let read = |text| parse_onto(text, Length::from_mm(704), Unit::Millimetre).unwrap();
/// assert_eq!(read("+2"), Length::from_mm(706));
/// assert_eq!(read("-2*18.2"), Length::from_um(667_600));
/// assert_eq!(read("720"), Length::from_mm(720));
/// ```
pub fn parse_onto(text: &str, current: Length, display: Unit) -> Result<Length, InputError> {
    let typed = parse_length(text, display)?;
    let mut cursor = Cursor::new(text);
    cursor.skip_spaces();
    if cursor
        .peek()
        .is_some_and(|char| is_plus(char) || is_minus(char))
    {
        current
            .checked_add(typed)
            .ok_or_else(|| cursor.error(InputErrorKind::TooLong))
    } else {
        Ok(typed)
    }
}

fn whole_counts(counts: Ratio) -> Result<Length, InputErrorKind> {
    let (below, is_exact) = counts.floor();
    let length = |counts: i128| {
        i32::try_from(counts)
            .map(Length::from_counts)
            .map_err(|_| InputErrorKind::TooLong)
    };
    if is_exact {
        length(below)
    } else {
        Err(InputErrorKind::TooFine {
            below: length(below)?,
            above: length(below + 1)?,
        })
    }
}

impl Cursor<'_> {
    /// All the rest of the text, in counts of 1/8 µm.
    fn sum(&mut self, display: Unit) -> Result<Ratio, InputError> {
        let mut total = Ratio::ZERO;
        let mut is_negative = self.eat(is_minus);
        if !is_negative {
            self.eat(is_plus);
        }
        loop {
            self.skip_spaces();
            let start = *self;
            let product = self.product(display)?;
            let signed = if is_negative {
                product.negated()
            } else {
                Some(product)
            };
            total = signed
                .and_then(|signed| total.plus(signed))
                .ok_or_else(|| start.error(InputErrorKind::TooIntricate))?;
            self.skip_spaces();
            is_negative = match self.peek() {
                None => return Ok(total),
                Some(_) if self.eat(is_plus) => false,
                Some(_) if self.eat(is_minus) => true,
                Some(char) => return Err(self.error(InputErrorKind::Misplaced(char))),
            };
        }
    }

    /// Factors joined by `*`, in counts of 1/8 µm.
    fn product(&mut self, display: Unit) -> Result<Ratio, InputError> {
        let mut product = Ratio::ONE;
        let mut has_unit = false;
        loop {
            self.skip_spaces();
            let start = *self;
            let factor = match self.quantity(display)? {
                Quantity::Plain(number) => number,
                Quantity::Counts(_) if has_unit => {
                    return Err(start.error(InputErrorKind::TwoLengths));
                }
                Quantity::Counts(counts) => {
                    has_unit = true;
                    counts
                }
            };
            let too_intricate = || start.error(InputErrorKind::TooIntricate);
            product = product.times(factor).ok_or_else(too_intricate)?;
            if self.eat_past_spaces(is_times) {
                continue;
            }
            return if has_unit {
                Ok(product)
            } else {
                product.times(counts_per(display)).ok_or_else(too_intricate)
            };
        }
    }
}
