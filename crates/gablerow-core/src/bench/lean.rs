//! Ends that are out of square: what the diagonals of a panel say of them, and what that does to its rows.

use crate::measure::Length;

/// How far an end is out of square over the depth, by how far the diagonals are apart, where both ends lean alike: geometry.
/// Where one end is true the other is twice that.
///
/// `(d1 - d2) * sqrt(height^2 + depth^2) / (2 * height)`, rounded toward zero. Above zero the back of the foot is higher than its
/// front, when `d1` begins at the front of the foot.
#[must_use]
pub fn lean(apart: Length, height: Length, depth: Length) -> Length {
    let square = |length: Length| i64::from(length.counts()) * i64::from(length.counts());
    let diagonal = (square(height) + square(depth)).unsigned_abs().isqrt();
    let diagonal = Length::from_counts(i32::try_from(diagonal).unwrap_or(i32::MAX));
    share(apart, diagonal, height * 2)
}

/// How much higher a row comes to be for an end that leans so far over the depth, so far behind another: each is bored as far
/// from the end as the other, there where it stands.
#[must_use]
pub fn shift(lean: Length, behind: Length, depth: Length) -> Length {
    share(lean, behind, depth)
}

/// A length times one over another, rounded toward zero; nothing of nothing.
fn share(length: Length, of: Length, whole: Length) -> Length {
    let product = i64::from(length.counts()) * i64::from(of.counts());
    let share = product.checked_div(i64::from(whole.counts())).unwrap_or(0);
    Length::from_counts(i32::try_from(share).unwrap_or(i32::MAX))
}
