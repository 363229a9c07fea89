//! Exact fractions for typed numbers.

/// A fraction in lowest terms with a denominator above zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Ratio {
    numerator: i128,
    denominator: i128,
}

/// Arithmetic answers `None` where a step leaves 128 bits.
impl Ratio {
    pub(super) const ZERO: Self = Self::whole(0);
    pub(super) const ONE: Self = Self::whole(1);

    pub(super) const fn whole(number: i128) -> Self {
        Self {
            numerator: number,
            denominator: 1,
        }
    }

    /// `None` for a denominator of zero, too.
    pub(super) fn new(numerator: i128, denominator: i128) -> Option<Self> {
        let common = greatest_common_divisor(numerator, denominator)?;
        let common = if denominator < 0 { -common } else { common };
        (denominator != 0).then(|| Self {
            numerator: numerator / common,
            denominator: denominator / common,
        })
    }

    pub(super) fn plus(self, other: Self) -> Option<Self> {
        let left = self.numerator.checked_mul(other.denominator)?;
        let right = other.numerator.checked_mul(self.denominator)?;
        let denominator = self.denominator.checked_mul(other.denominator)?;
        Self::new(left.checked_add(right)?, denominator)
    }

    pub(super) fn times(self, other: Self) -> Option<Self> {
        Self::new(
            self.numerator.checked_mul(other.numerator)?,
            self.denominator.checked_mul(other.denominator)?,
        )
    }

    pub(super) fn negated(self) -> Option<Self> {
        Self::new(self.numerator.checked_neg()?, self.denominator)
    }

    /// The whole number at or below it, and whether that is exact.
    pub(super) const fn floor(self) -> (i128, bool) {
        (
            self.numerator.div_euclid(self.denominator),
            self.denominator == 1,
        )
    }
}

fn greatest_common_divisor(a: i128, b: i128) -> Option<i128> {
    let (mut a, mut b) = (a.checked_abs()?, b.checked_abs()?);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    Some(a)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ratio(numerator: i128, denominator: i128) -> Ratio {
        Ratio::new(numerator, denominator).unwrap()
    }

    #[test]
    fn fractions_are_kept_in_lowest_terms() {
        assert_eq!(ratio(46, 64), ratio(23, 32));
        assert_eq!(ratio(1, -2), ratio(-1, 2));
        assert_eq!(ratio(0, -7), Ratio::ZERO);
        assert_eq!(Ratio::new(1, 0), None);
        assert_eq!(Ratio::new(0, 0), None);
    }

    #[test]
    fn sums_and_products_are_exact() {
        assert_eq!(ratio(1, 3).plus(ratio(1, 6)), Some(ratio(1, 2)));
        assert_eq!(ratio(2, 3).times(ratio(3, 4)), Some(ratio(1, 2)));
        assert_eq!(ratio(1, 2).negated(), Some(ratio(-1, 2)));
    }

    #[test]
    fn floor_goes_down_on_either_side_of_zero() {
        assert_eq!(ratio(7, 2).floor(), (3, false));
        assert_eq!(ratio(-7, 2).floor(), (-4, false));
        assert_eq!(ratio(-8, 2).floor(), (-4, true));
    }

    #[test]
    fn leaving_128_bits_is_none() {
        let large = Ratio::whole(i128::MAX);
        assert_eq!(large.plus(Ratio::ONE), None);
        assert_eq!(large.times(large), None);
        assert_eq!(Ratio::whole(i128::MIN).negated(), None);
        assert_eq!(ratio(1, i128::MAX).plus(ratio(1, i128::MAX - 1)), None);
    }
}
