//! Balance: whether holes counted from either end of a panel fall in the same places.

use crate::measure::Length;

/// How far a panel may be off and still count as balanced: 0.3 mm, a house default.
pub const BALANCED_WITHIN: Length = Length::from_um(300);

/// The height of a panel and the offset its rows start with at either end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ends {
    /// From foot to head.
    pub height: Length,
    /// From the foot to the first hole counted from there.
    pub foot: Length,
    /// From the head to the first hole counted from there.
    pub head: Length,
}

/// How far holes counted from the head fall above those counted from the foot.
///
/// It lies above -16 mm (left out) and up to +16 mm (included), as holes repeat each pitch. At
/// exactly half a pitch its sign means nothing: up is as near as down.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Mismatch(Length);

impl Mismatch {
    /// The mismatch with its direction; `None` at exactly half a pitch, where there is none.
    #[must_use]
    pub fn signed(self) -> Option<Length> {
        (self.0 != Length::PITCH.half()).then_some(self.0)
    }

    /// The mismatch as a step of heights, half a pitch being +16 mm; for sums of pin heights.
    #[must_use]
    pub const fn wrapped(self) -> Length {
        self.0
    }

    /// How large it is, from 0 to 16 mm.
    #[must_use]
    pub fn size(self) -> Length {
        self.0.abs()
    }

    /// Whether the panel counts as balanced: [`BALANCED_WITHIN`] either way, included.
    #[must_use]
    pub fn is_balanced(self) -> bool {
        self.size() <= BALANCED_WITHIN
    }
}

/// The holes of one row of a panel, and how its ends agree.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Balance {
    /// How many holes the row has.
    pub count: u16,
    /// Height of the last hole above the foot.
    pub last: Length,
    /// Left over between the last hole and the head.
    pub left: Length,
    /// How the ends agree.
    pub mismatch: Mismatch,
}

impl Balance {
    /// The hole that is the same one counted from either end: which one, the lowest being 1.
    ///
    /// Only a balanced row of an odd count has one.
    #[must_use]
    pub fn middle_hole(self) -> Option<u16> {
        (self.mismatch.is_balanced() && self.count % 2 == 1).then_some(self.count / 2 + 1)
    }
}

/// The balanced heights next to a height.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BalancedHeights {
    /// The largest one not above the height; `None` when the height is less than its two offsets.
    pub below: Option<Length>,
    /// The smallest one not below the height.
    pub above: Length,
}

impl Ends {
    /// A panel with one offset at both ends.
    #[must_use]
    pub const fn alike(height: Length, offset: Length) -> Self {
        Self {
            height,
            foot: offset,
            head: offset,
        }
    }

    /// Between the first hole counted from the foot and the first counted from the head.
    fn between(self) -> Length {
        self.height - self.foot - self.head
    }

    /// How far holes counted from the head fall above those counted from the foot.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::grid::Ends;
    /// use gablerow_core::measure::Length;
    ///
    /// // 720 - 2 * 9.5 = 701 = 22 * 32 - 3
    /// let ends = Ends::alike(Length::from_mm(720), Length::from_um(9_500));
    /// assert_eq!(ends.mismatch().signed(), Some(Length::from_mm(-3)));
    /// ```
    #[must_use]
    pub fn mismatch(self) -> Mismatch {
        Mismatch(self.between().wrap_to(Length::PITCH))
    }

    /// The row that starts at the foot. A balanced one ends at its head offset; any other goes on
    /// while `end_min` is left between hole and head. `None` when not one hole fits.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::grid::Ends;
    /// use gablerow_core::measure::Length;
    ///
    /// // 811: 16 + 24 * 32 = 784, and 27 are left
    /// let ends = Ends::alike(Length::from_mm(811), Length::from_mm(16));
    /// let row = ends.balance(Length::from_mm(8)).unwrap();
    /// assert_eq!(row.count, 25);
    /// assert_eq!([row.last, row.left], [784, 27].map(Length::from_mm));
    /// ```
    #[must_use]
    pub fn balance(self, end_min: Length) -> Option<Balance> {
        let mismatch = self.mismatch();
        let span = if mismatch.is_balanced() {
            self.between() - mismatch.wrapped()
        } else {
            self.height - self.foot - end_min
        };
        let pitches = span.div_floor(Length::PITCH);
        let count = u16::try_from(pitches + 1).ok().filter(|&count| count > 0)?;
        let last = self.foot + Length::PITCH * pitches;
        Some(Balance {
            count,
            last,
            left: self.height - last,
            mismatch,
        })
    }

    /// Height of a hole counted from the head; the highest is 1.
    #[must_use]
    pub fn from_head(self, hole: u16) -> Length {
        self.height - self.head - Length::PITCH * (i32::from(hole) - 1)
    }

    /// The balanced heights on either side of this one, for its offsets; both are the height itself
    /// when that is balanced to the count.
    #[must_use]
    pub fn balanced_heights(self) -> BalancedHeights {
        let offsets = self.foot + self.head;
        let below = self.between().div_floor(Length::PITCH);
        let above = -(-self.between()).div_floor(Length::PITCH);
        let height = |pitches: i32| offsets + Length::PITCH * pitches;
        BalancedHeights {
            below: (below >= 0).then(|| height(below)),
            above: height(above.max(0)),
        }
    }
}

/// An offset that balances a height when it is used at both ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BalancingOffset {
    /// From either end to the first hole.
    pub offset: Length,
    /// Whether it keeps the least distance to an end.
    pub usable: bool,
}

/// The two offsets below 32 mm that balance a height: one puts holes in the middle of every gap of
/// the other. An odd count has no exact half, and misses by that one count.
///
/// # Example
///
/// ```
/// use gablerow_core::grid::balancing_offsets;
/// use gablerow_core::measure::Length;
///
/// // 811 mod 32 = 11, half of it 5.5, too near the end; 5.5 + 16 = 21.5
/// let [near, far] = balancing_offsets(Length::from_mm(811), Length::from_mm(8));
/// assert_eq!((near.offset, near.usable), (Length::from_um(5_500), false));
/// assert_eq!((far.offset, far.usable), (Length::from_um(21_500), true));
/// ```
#[must_use]
pub fn balancing_offsets(height: Length, end_min: Length) -> [BalancingOffset; 2] {
    let near = height.rem_floor(Length::PITCH).half();
    [near, near + Length::PITCH.half()].map(|offset| BalancingOffset {
        offset,
        usable: offset >= end_min,
    })
}

#[cfg(test)]
mod tests;
