//! A length that knows its terms, so that every number can be asked why.

use core::fmt;

use crate::measure::{Length, Unit};

/// One term of a [`Sum`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Term {
    /// What it is, in the words of the trade.
    pub words: &'static str,
    /// How much it adds; negative when it is taken off.
    pub value: Length,
}

/// A length and the terms it was added up from. The code that computes a length builds it, so that no explanation can
/// differ from the number.
///
/// # Example
/// `53 = 16 (back edge to the groove's front wall) + 37 (back setback)`
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sum {
    terms: [Term; Self::MOST],
    used: u8,
    total: Length,
}

impl Sum {
    /// The most terms one length is added up from.
    pub const MOST: usize = 7;

    /// A sum of one term.
    #[must_use]
    pub fn of(words: &'static str, value: Length) -> Self {
        Self::default().push(words, value)
    }

    /// With one more term; a term of nothing is left out.
    #[must_use]
    pub fn plus(self, words: &'static str, value: Length) -> Self {
        if value == Length::ZERO {
            self
        } else {
            self.push(words, value)
        }
    }

    /// Less one more term; a term of nothing is left out.
    #[must_use]
    pub fn less(self, words: &'static str, value: Length) -> Self {
        self.plus(words, -value)
    }

    /// What is left when another sum is taken off; a term that both have falls out.
    ///
    /// # Example
    /// A depth of 560 less a row at 560 (depth) - 20 (groove) - 37 (setback): 57 = 20 (groove) + 37 (setback).
    #[must_use]
    pub fn minus(self, other: &Self) -> Self {
        let mut others = *other;
        let mut left = Self::default();
        for term in self.terms() {
            match others.terms[..usize::from(others.used)]
                .iter_mut()
                .find(|same| *same == term)
            {
                Some(same) => *same = Term::default(),
                None => left = left.push(term.words, term.value),
            }
        }
        others
            .terms()
            .iter()
            .fold(left, |left, term| left.less(term.words, term.value))
    }

    fn push(mut self, words: &'static str, value: Length) -> Self {
        self.total += value;
        let used = usize::from(self.used);
        if let Some(free) = self.terms.get_mut(used) {
            *free = Term { words, value };
            self.used += 1;
        } else if let Some(last) = self.terms.last_mut() {
            last.words = "and the rest";
            last.value += value;
        }
        self
    }

    /// The length itself.
    #[must_use]
    pub fn total(&self) -> Length {
        self.total
    }

    /// The terms, in the order they were added; they add up to [`Self::total`].
    #[must_use]
    pub fn terms(&self) -> &[Term] {
        self.terms.get(..usize::from(self.used)).unwrap_or(&[])
    }
}

/// A [`Sum`] on its way to text.
#[derive(Clone, Copy, Debug)]
pub struct ShownSum<'a> {
    sum: &'a Sum,
    unit: Unit,
}

impl Sum {
    /// As people read it in this unit: `57.0 = 20.0 (back edge to the groove's front wall) + 37.0 (back setback)`.
    #[must_use]
    pub fn show(&self, unit: Unit) -> ShownSum<'_> {
        ShownSum { sum: self, unit }
    }
}

impl fmt::Display for ShownSum<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { sum, unit } = *self;
        write!(f, "{}", sum.total.show(unit))?;
        if sum.used > 0 {
            f.write_str(" =")?;
        }
        for (at, term) in sum.terms().iter().enumerate() {
            let sign = match (at, term.value < Length::ZERO) {
                (0, false) => " ",
                (0, true) => " -",
                (_, false) => " + ",
                (_, true) => " - ",
            };
            write!(f, "{sign}{} ({})", term.value.abs().show(unit), term.words)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const MM: Unit = Unit::Millimetre;

    #[test]
    fn a_sum_reads_as_it_was_added() {
        let sum = Sum::of("depth", Length::from_mm(560))
            .less("back edge to the groove's front wall", Length::from_mm(20))
            .plus("nothing", Length::ZERO)
            .less("back setback", Length::from_mm(37));
        assert_eq!(
            sum.show(MM).to_string(),
            "503.0 = 560.0 (depth) - 20.0 (back edge to the groove's front wall) - 37.0 (back setback)"
        );
    }

    #[test]
    fn a_sum_in_inches_says_what_is_left_over() {
        let sum = Sum::of("depth", Length::from_inch_64ths(22 * 64))
            .less("back setback", Length::from_mm(37));
        assert_eq!(
            sum.show(Unit::Inch).to_string(),
            "20 17/32\" (~+0.3) = 22\" (depth) - 1 15/32\" (~-0.3) (back setback)"
        );
    }

    #[test]
    fn a_sum_of_nothing_is_its_number_alone() {
        assert_eq!(Sum::default().show(MM).to_string(), "0.0");
        assert_eq!(
            Sum::default()
                .less("side runs below", Length::from_mm(100))
                .show(MM)
                .to_string(),
            "-100.0 = -100.0 (side runs below)"
        );
    }

    #[test]
    fn terms_that_both_have_fall_out_of_a_difference() {
        let depth = Sum::of("depth", Length::from_mm(560));
        let groove = Length::from_mm(20);
        let row = depth
            .less("groove", groove)
            .less("back setback", Length::from_mm(37));
        assert_eq!(
            depth.minus(&row).show(MM).to_string(),
            "57.0 = 20.0 (groove) + 37.0 (back setback)"
        );
    }

    proptest! {
        #[test]
        fn a_difference_is_the_difference_of_the_totals(
            a in prop::collection::vec((0..4_usize, -9..9_i32), 0..5),
            b in prop::collection::vec((0..4_usize, -9..9_i32), 0..5),
        ) {
            let words = ["depth", "groove", "recess", "setback"];
            let sum = |terms: &[(usize, i32)]| {
                terms.iter().fold(Sum::default(), |sum, &(w, v)| sum.plus(words[w], Length::from_mm(v)))
            };
            let (a, b) = (sum(&a), sum(&b));
            prop_assert_eq!(a.minus(&b).total(), a.total() - b.total());
        }

        #[test]
        fn terms_add_up_to_the_total(values in prop::collection::vec(-80_000..80_000_i32, 1..12)) {
            let sum = values.iter().fold(Sum::default(), |sum, &v| sum.plus("term", Length::from_counts(v)));
            let whole: Length = values.iter().map(|&v| Length::from_counts(v)).sum();
            prop_assert_eq!(sum.total(), whole);
            prop_assert_eq!(sum.terms().iter().map(|t| t.value).sum::<Length>(), whole);
        }
    }
}
