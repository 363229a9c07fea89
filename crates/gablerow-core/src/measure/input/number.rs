//! Numbers: whole, decimal, fraction, mixed.

use super::cursor::{
    Cursor, is_decimal_mark, is_digit, is_foot_mark, is_inch_mark, is_minus, is_plus, is_stroke,
    is_times,
};
use super::error::{DIGITS_MAX, InputError, InputErrorKind as Kind};
use super::ratio::Ratio;

/// A number without its unit.
pub(super) struct Number {
    pub(super) value: Ratio,
    /// Nothing but digits, so that a fraction may follow.
    pub(super) is_whole: bool,
}

impl Cursor<'_> {
    /// `704`, `704.5`, `704,5`, `.5`, `23/32` or `27 23/32`.
    pub(super) fn number(&mut self) -> Result<Number, InputError> {
        let start = *self;
        if let Some(value) = self.fraction()? {
            return Ok(Number {
                value,
                is_whole: false,
            });
        }
        let whole = self.take_while(is_digit);
        if self.eat(is_decimal_mark) {
            let value = self.decimals(start, whole)?;
            return Ok(Number {
                value,
                is_whole: false,
            });
        }
        if whole.is_empty() {
            return Err(start.error(start.kind_without_number()));
        }
        let value = Ratio::whole(start.value_of(&[whole])?);
        let mut ahead = *self;
        if ahead.skip_spaces()
            && let Some(fraction) = ahead.fraction()?
        {
            *self = ahead;
            let value = value
                .plus(fraction)
                .ok_or_else(|| start.error(Kind::TooIntricate))?;
            return Ok(Number {
                value,
                is_whole: false,
            });
        }
        Ok(Number {
            value,
            is_whole: true,
        })
    }

    /// The rest of a decimal number, its mark being read.
    fn decimals(&mut self, start: Self, whole: &str) -> Result<Ratio, InputError> {
        let decimals = self.take_while(is_digit);
        if whole.is_empty() && decimals.is_empty() {
            return Err(start.error(Kind::NumberMissing));
        }
        if self.peek().is_some_and(is_decimal_mark) {
            return Err(self.error(Kind::SecondDecimalMark));
        }
        let mut ahead = *self;
        if ahead.eat_past_spaces(is_stroke) {
            return Err(start.error(Kind::DecimalInFraction));
        }
        let digits = start.value_of(&[whole, decimals])?;
        let per_whole = decimals.chars().fold(1, |power, _| power * 10);
        Ratio::new(digits, per_whole).ok_or_else(|| start.error(Kind::TooIntricate))
    }

    /// `23/32`, or `None` and no step further when no fraction stands here.
    pub(super) fn fraction(&mut self) -> Result<Option<Ratio>, InputError> {
        let mut ahead = *self;
        let numerator = ahead.take_while(is_digit);
        if numerator.is_empty() || !ahead.eat_past_spaces(is_stroke) {
            return Ok(None);
        }
        let numerator = self.value_of(&[numerator])?;
        ahead.skip_spaces();
        let below = ahead;
        let denominator = ahead.take_while(is_digit);
        if ahead.peek().is_some_and(is_decimal_mark) {
            return Err(below.error(Kind::DecimalInFraction));
        }
        if denominator.is_empty() {
            return Err(below.error(Kind::NumberMissing));
        }
        let denominator = below.value_of(&[denominator])?;
        let fraction = Ratio::new(numerator, denominator);
        *self = ahead;
        fraction
            .map(Some)
            .ok_or_else(|| below.error(Kind::DivisionByZero))
    }

    /// The number these digits make when written one behind the other, the first standing here.
    fn value_of(self, parts: &[&str]) -> Result<i128, InputError> {
        let digits = || parts.iter().flat_map(|part| part.bytes());
        if digits().count() > DIGITS_MAX {
            return Err(self.error(Kind::TooManyDigits));
        }
        Ok(digits().fold(0, |value, digit| value * 10 + i128::from(digit - b'0')))
    }

    /// What to say where no number begins.
    fn kind_without_number(self) -> Kind {
        match self.peek() {
            Some(char) if !may_follow_a_number(char) => Kind::Misplaced(char),
            _ => Kind::NumberMissing,
        }
    }
}

fn may_follow_a_number(char: char) -> bool {
    char.is_alphabetic()
        || [
            is_plus,
            is_minus,
            is_times,
            is_stroke,
            is_inch_mark,
            is_foot_mark,
        ]
        .iter()
        .any(|kind| kind(char))
}
