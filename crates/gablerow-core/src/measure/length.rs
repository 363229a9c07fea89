//! A length is a whole count of 1/8 µm, so that 0.001 mm and 1/64 in are both exact.

use core::iter::Sum;
use core::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// What an operator says when a result leaves the range; see [`Length`].
const OUT_OF_RANGE: &str = "a length left the range of 268 m either way";

/// A distance, as a whole count of 1/8 µm (1 mm = 8000, 1 in = 203 200, 1/64 in = 3175).
///
/// Equality means equality: nothing is rounded, and there is no way in from a float.
///
/// # Range
///
/// A count fits 32 bits up to 268 m either way. No quantity of a job is longer than 10 m, so a sum
/// of a few of them stays inside. The operators therefore panic on overflow; they never wrap. Where
/// a value has not been through a range check yet, [`checked_add`](Length::checked_add) and its
/// like answer `None`.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::Length;
///
/// // Hole 7 of a row that starts 9.5 mm up: 9.5 + 6 * 32 = 201.5
/// let hole = Length::from_um(9_500) + Length::PITCH * 6;
/// assert_eq!(hole, Length::from_um(201_500));
/// ```
#[derive(Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i32);

impl Length {
    /// Counts in one millimetre.
    pub const COUNTS_PER_MM: i32 = 8_000;
    /// Counts in one inch of 25.4 mm.
    ///
    /// Source: international yard and pound agreement, US Federal Register notice of 1 July 1959.
    pub const COUNTS_PER_INCH: i32 = 203_200;
    /// No distance at all.
    pub const ZERO: Self = Self(0);
    /// The longest length, a little over 268 m.
    pub const MAX: Self = Self(i32::MAX);
    /// The most negative length, a little over 268 m the other way.
    pub const MIN: Self = Self(i32::MIN);
    /// Centre to centre of neighbouring holes of a row: 32 mm.
    ///
    /// Source: encyclopedia article "System 32" (de.wikipedia.org); a convention, no standard.
    pub const PITCH: Self = Self::from_mm(32);

    /// A length of whole counts of 1/8 µm.
    #[must_use]
    pub const fn from_counts(counts: i32) -> Self {
        Self(counts)
    }

    /// A length of whole millimetres, within 268 435 either way.
    #[must_use]
    pub const fn from_mm(mm: i32) -> Self {
        Self(mm).times(Self::COUNTS_PER_MM)
    }

    /// A length of whole micrometres: 18.6 mm is `from_um(18_600)`.
    #[must_use]
    pub const fn from_um(um: i32) -> Self {
        Self(um).times(Self::COUNTS_PER_MM / 1_000)
    }

    /// A length of whole 64ths of an inch: 27 23/32 in is `from_inch_64ths(27 * 64 + 46)`.
    #[must_use]
    pub const fn from_inch_64ths(sixty_fourths: i32) -> Self {
        Self(sixty_fourths).times(Self::COUNTS_PER_INCH / 64)
    }

    /// The whole count of 1/8 µm.
    #[must_use]
    pub const fn counts(self) -> i32 {
        self.0
    }

    /// The length in millimetres as a float, for physics and drawings only; geometry keeps counts.
    #[must_use]
    pub fn mm(self) -> f64 {
        f64::from(self.0) / f64::from(Self::COUNTS_PER_MM)
    }

    /// The sum, or `None` outside the range.
    #[must_use]
    pub const fn checked_add(self, other: Self) -> Option<Self> {
        match self.0.checked_add(other.0) {
            Some(counts) => Some(Self(counts)),
            None => None,
        }
    }

    /// The difference, or `None` outside the range.
    #[must_use]
    pub const fn checked_sub(self, other: Self) -> Option<Self> {
        match self.0.checked_sub(other.0) {
            Some(counts) => Some(Self(counts)),
            None => None,
        }
    }

    /// The length taken `factor` times, or `None` outside the range.
    #[must_use]
    pub const fn checked_mul(self, factor: i32) -> Option<Self> {
        match self.0.checked_mul(factor) {
            Some(counts) => Some(Self(counts)),
            None => None,
        }
    }

    /// The distance without its direction.
    #[must_use]
    pub fn abs(self) -> Self {
        if self < Self::ZERO { -self } else { self }
    }

    /// How many whole `step`s fit, rounded downward: -1 mm holds -1 steps of 32 mm.
    ///
    /// # Panics
    ///
    /// When `step` is not above zero.
    #[must_use]
    pub const fn div_floor(self, step: Self) -> i32 {
        assert!(step.0 > 0, "lengths are counted in steps above zero");
        self.0.div_euclid(step.0)
    }

    /// What is left above the whole steps of [`div_floor`](Self::div_floor): from zero (included)
    /// to `step` (left out).
    ///
    /// # Panics
    ///
    /// When `step` is not above zero.
    #[must_use]
    pub const fn rem_floor(self, step: Self) -> Self {
        assert!(step.0 > 0, "lengths are counted in steps above zero");
        Self(self.0.rem_euclid(step.0))
    }

    /// How far off the nearest whole `pitch`: above -pitch/2 (left out), up to +pitch/2 (included).
    ///
    /// # Panics
    ///
    /// When `pitch` is not above zero.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::measure::Length;
    ///
    /// // 811 - 2 * 16 = 779 = 24 * 32 + 11;  701 = 22 * 32 - 3
    /// assert_eq!(Length::from_mm(779).wrap_to(Length::PITCH), Length::from_mm(11));
    /// assert_eq!(Length::from_mm(701).wrap_to(Length::PITCH), Length::from_mm(-3));
    /// ```
    #[must_use]
    pub const fn wrap_to(self, pitch: Self) -> Self {
        let above = self.rem_floor(pitch).0;
        if above > pitch.0 - above {
            Self(above - pitch.0)
        } else {
            Self(above)
        }
    }

    /// Half the length, exact for an even count; an odd one gives the count below, 1/16 µm short.
    ///
    /// Every whole micrometre and every 32nd of an inch halves exactly; odd 64ths do not.
    #[must_use]
    pub const fn half(self) -> Self {
        Self(self.0.div_euclid(2))
    }

    /// That many parts, in order; they add up to the whole exactly and differ by one count at most.
    ///
    /// There are no parts at all when `parts` is 0.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::measure::Length;
    ///
    /// let parts: Vec<i32> = Length::from_counts(8).split(3).map(Length::counts).collect();
    /// assert_eq!(parts, [2, 3, 3]);
    /// ```
    pub fn split(self, parts: u16) -> impl Iterator<Item = Self> {
        let up_to = move |part: i64| (i64::from(self.0) * part).div_euclid(i64::from(parts));
        (0..i64::from(parts)).map(move |part| Self::from_wide(up_to(part + 1) - up_to(part)))
    }

    /// A count that is known to fit.
    pub(super) fn from_wide(counts: i64) -> Self {
        match i32::try_from(counts) {
            Ok(counts) => Self(counts),
            Err(_) => panic!("{OUT_OF_RANGE}"),
        }
    }

    const fn times(self, factor: i32) -> Self {
        match self.checked_mul(factor) {
            Some(product) => product,
            None => panic!("{}", OUT_OF_RANGE),
        }
    }
}

impl Add for Length {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self::from_wide(i64::from(self.0) + i64::from(other.0))
    }
}

impl Sub for Length {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self::from_wide(i64::from(self.0) - i64::from(other.0))
    }
}

impl Neg for Length {
    type Output = Self;

    fn neg(self) -> Self {
        Self::from_wide(-i64::from(self.0))
    }
}

impl Mul<i32> for Length {
    type Output = Self;

    fn mul(self, factor: i32) -> Self {
        self.times(factor)
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Self>>(lengths: I) -> Self {
        lengths.fold(Self::ZERO, Self::add)
    }
}

impl<'a> Sum<&'a Length> for Length {
    fn sum<I: Iterator<Item = &'a Self>>(lengths: I) -> Self {
        lengths.copied().sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Lengths a job can hold, with some room to spare: 20 m either way.
    fn any_length() -> impl Strategy<Value = Length> {
        (-160_000_000..=160_000_000).prop_map(Length::from_counts)
    }

    // unit-64: 1/64 in = 0.396875 mm, whole in counts of 1/8000 mm. Derived.
    #[test]
    fn micrometre_and_64th_are_both_whole() {
        assert_eq!(Length::from_um(1).counts(), 8);
        assert_eq!(Length::from_inch_64ths(1).counts(), 3_175);
        assert_eq!(
            Length::from_inch_64ths(64).counts(),
            Length::COUNTS_PER_INCH
        );
    }

    // Source: US Federal Register notice of 1 July 1959; 1 in = 25.4 mm.
    #[test]
    fn inch_is_25_4_mm() {
        assert_eq!(Length::from_inch_64ths(64), Length::from_um(25_400));
        assert_eq!(Length::from_inch_64ths(31 * 64 + 20).counts(), 6_362_700);
    }

    #[test]
    fn half_of_an_odd_count_is_the_count_below() {
        assert_eq!(Length::from_um(18_600).half(), Length::from_um(9_300));
        assert_eq!(Length::from_counts(3).half(), Length::from_counts(1));
        assert_eq!(Length::from_counts(-3).half(), Length::from_counts(-2));
    }

    #[test]
    fn half_a_pitch_wraps_to_plus_half_a_pitch() {
        let half = Length::from_mm(16);
        assert_eq!(half.wrap_to(Length::PITCH), half);
        assert_eq!((-half).wrap_to(Length::PITCH), half);
        assert_eq!(Length::MAX.wrap_to(Length::MAX), Length::ZERO);
    }

    #[test]
    fn outside_the_range_is_none() {
        assert_eq!(Length::MAX.checked_add(Length::from_counts(1)), None);
        assert_eq!(Length::MIN.checked_sub(Length::from_counts(1)), None);
        assert_eq!(Length::MAX.checked_mul(2), None);
    }

    #[test]
    #[should_panic(expected = "left the range")]
    fn sum_outside_the_range_panics() {
        let _ = Length::MAX + Length::from_counts(1);
    }

    proptest! {
        #[test]
        fn parts_add_up_to_the_whole(whole in any::<i32>(), parts in 1_u16..500) {
            let whole = Length::from_counts(whole);
            let split: Vec<Length> = whole.split(parts).collect();
            prop_assert_eq!(split.len(), usize::from(parts));
            let sum: i64 = split.iter().map(|part| i64::from(part.counts())).sum();
            prop_assert_eq!(sum, i64::from(whole.counts()));
            let (least, most) = (split.iter().min().unwrap(), split.iter().max().unwrap());
            prop_assert!(most.counts() - least.counts() <= 1);
        }

        #[test]
        fn steps_and_rest_give_the_length_back(length in any_length(), step in 1..=8_000_000) {
            let step = Length::from_counts(step);
            let rest = length.rem_floor(step);
            prop_assert!(Length::ZERO <= rest && rest < step);
            prop_assert_eq!(step * length.div_floor(step) + rest, length);
        }

        #[test]
        fn wrap_is_within_half_a_pitch_and_whole_pitches_away(length in any_length()) {
            let wrapped = length.wrap_to(Length::PITCH);
            prop_assert!(-Length::from_mm(16) < wrapped && wrapped <= Length::from_mm(16));
            prop_assert_eq!((length - wrapped).rem_floor(Length::PITCH), Length::ZERO);
        }

        #[test]
        fn subtracting_undoes_adding(a in any_length(), b in any_length()) {
            prop_assert_eq!(a + b - b, a);
            prop_assert_eq!(-(a - b), b - a);
            prop_assert_eq!((a - b).abs(), (b - a).abs());
        }
    }
}
