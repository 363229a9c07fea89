//! Numbers with the unit written behind them.

use super::cursor::{Cursor, is_digit, is_foot_mark, is_inch_mark, is_minus};
use super::error::{InputError, InputErrorKind as Kind};
use super::ratio::Ratio;
use crate::measure::{Length, Unit};

/// A unit as it may be written behind a number.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Mark {
    Millimetre,
    Centimetre,
    Metre,
    Inch,
    Foot,
}

const WORDS: [(&str, Mark); 9] = [
    ("mm", Mark::Millimetre),
    ("cm", Mark::Centimetre),
    ("m", Mark::Metre),
    ("in", Mark::Inch),
    ("inch", Mark::Inch),
    ("inches", Mark::Inch),
    ("ft", Mark::Foot),
    ("foot", Mark::Foot),
    ("feet", Mark::Foot),
];

impl Mark {
    /// Counts of 1/8 µm in one of them.
    fn counts(self) -> Ratio {
        Ratio::whole(match self {
            Self::Millimetre => i128::from(Length::COUNTS_PER_MM),
            Self::Centimetre => i128::from(Length::COUNTS_PER_MM) * 10,
            Self::Metre => i128::from(Length::COUNTS_PER_MM) * 1_000,
            Self::Inch => i128::from(Length::COUNTS_PER_INCH),
            Self::Foot => i128::from(Length::COUNTS_PER_INCH) * 12,
        })
    }
}

/// Counts of 1/8 µm in one of the display unit.
pub(super) fn counts_per(display: Unit) -> Ratio {
    match display {
        Unit::Millimetre => Mark::Millimetre.counts(),
        Unit::Inch => Mark::Inch.counts(),
    }
}

/// A number as typed, or with its unit.
pub(super) enum Quantity {
    /// No unit is written.
    Plain(Ratio),
    /// A unit is written: so many counts of 1/8 µm.
    Counts(Ratio),
}

impl Cursor<'_> {
    /// A number with its unit, if one is written; feet take their inches along.
    pub(super) fn quantity(&mut self, display: Unit) -> Result<Quantity, InputError> {
        let start = *self;
        let (value, mark) = self.marked_number(display)?;
        let Some(mark) = mark else {
            return Ok(Quantity::Plain(value));
        };
        let too_intricate = || start.error(Kind::TooIntricate);
        let mut counts = value.times(mark.counts()).ok_or_else(too_intricate)?;
        if mark == Mark::Foot
            && let Some(inches) = self.inches_behind_feet(display)?
        {
            counts = inches
                .times(Mark::Inch.counts())
                .and_then(|inches| inches.plus(counts))
                .ok_or_else(too_intricate)?;
        }
        Ok(Quantity::Counts(counts))
    }

    /// The `4 1/2"` of `2' 4 1/2"`. The mark may be missing, but a hyphen in place of the space
    /// joins inches only: `2'-18mm` is a difference.
    fn inches_behind_feet(&mut self, display: Unit) -> Result<Option<Ratio>, InputError> {
        let mut ahead = *self;
        let is_joined = !ahead.skip_spaces() && ahead.eat(is_minus);
        if !ahead.peek().is_some_and(is_digit) {
            return Ok(None);
        }
        let (inches, mark) = ahead.marked_number(display)?;
        let is_inches = match mark {
            Some(mark) => mark == Mark::Inch,
            None => !is_joined || display == Unit::Inch,
        };
        if is_inches {
            *self = ahead;
        }
        Ok(is_inches.then_some(inches))
    }

    fn marked_number(&mut self, display: Unit) -> Result<(Ratio, Option<Mark>), InputError> {
        let start = *self;
        let number = self.number()?;
        if number.is_whole
            && let Some((fraction, mark)) = self.joined_fraction(display)?
        {
            let sum = number.value.plus(fraction);
            return Ok((sum.ok_or_else(|| start.error(Kind::TooIntricate))?, mark));
        }
        Ok((number.value, self.mark()?))
    }

    /// The `-23/32"` of `27-23/32"`. Only inches are written so; in mm the hyphen is a minus.
    fn joined_fraction(
        &mut self,
        display: Unit,
    ) -> Result<Option<(Ratio, Option<Mark>)>, InputError> {
        let mut ahead = *self;
        if !ahead.eat(is_minus) {
            return Ok(None);
        }
        let Some(fraction) = ahead.fraction()? else {
            return Ok(None);
        };
        let mark = ahead.mark()?;
        let is_inches = mark.map_or(display == Unit::Inch, |mark| mark == Mark::Inch);
        if is_inches {
            *self = ahead;
        }
        Ok(is_inches.then_some((fraction, mark)))
    }

    /// The unit that is written here or behind spaces.
    fn mark(&mut self) -> Result<Option<Mark>, InputError> {
        if self.eat_past_spaces(is_inch_mark) {
            return Ok(Some(Mark::Inch));
        }
        if self.eat_past_spaces(is_foot_mark) {
            let is_doubled = self.eat(is_foot_mark);
            return Ok(Some(if is_doubled { Mark::Inch } else { Mark::Foot }));
        }
        let mut ahead = *self;
        ahead.skip_spaces();
        let start = ahead;
        let word = ahead.take_while(char::is_alphabetic);
        if word.is_empty() {
            return Ok(None);
        }
        *self = ahead;
        let known = WORDS
            .iter()
            .find(|(known, _)| known.eq_ignore_ascii_case(word));
        known
            .map(|&(_, mark)| Some(mark))
            .ok_or_else(|| start.error(Kind::UnknownUnit))
    }
}
