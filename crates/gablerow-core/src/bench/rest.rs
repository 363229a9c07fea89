//! What of a panel lies on the stop, and what that does to the numbers on the rail.

use crate::job::End;
use crate::layout::{Layout, Upright};
use crate::measure::Length;

/// The thickest packer, as thick as two boards: up to it the numbers on the rail are the cabinet's own. A house default.
pub const PACKER_MOST: Length = Length::from_mm(64);

/// The end of a panel that rests on the stop.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Rest {
    /// Which end.
    pub end: End,
    /// From the stop to the first index hole.
    pub stop: Length,
    /// What is laid between stop and panel, so that the stop stays the sides' own; nothing when zero.
    pub packer: Length,
    /// The cabinet's hole whose place is under the first index hole.
    pub first: i16,
}

impl Rest {
    /// By its foot. A panel that stands higher than the sides gets a packer; one that runs below them another stop.
    pub(super) fn on_foot(upright: &Upright, layout: &Layout) -> Self {
        let foot = upright.foot.total();
        let (stop, packer, first) = rest(layout.grid.first, foot);
        Self {
            end: End::Foot,
            stop,
            packer,
            first: 1 - first,
        }
    }

    /// By its head; the carcass is so high. A panel that was cut so much longer has its head so much further out, and the
    /// stop makes up for that; negative when it was cut shorter.
    pub(super) fn on_head(
        upright: &Upright,
        layout: &Layout,
        height: Length,
        longer: Length,
    ) -> Self {
        // Holes counted from the head stand where the grid's highest is.
        let top = layout.last.max(1);
        let head = height - upright.head.total() - longer;
        let (stop, packer, first) = rest(height - layout.height(top), head);
        Self {
            end: End::Head,
            stop,
            packer,
            first: top + first,
        }
    }

    /// The index hole over a hole of the cabinet, counted from 1 at the stop.
    #[must_use]
    pub fn index(&self, hole: i16) -> i16 {
        match self.end {
            End::Foot => hole - self.first + 1,
            End::Head => self.first - hole + 1,
        }
    }
}

/// Stop, packer and how many index holes come before the sides' first, for a panel whose end is so far inward of the sides';
/// fewer than none where the first index hole is over a higher one.
fn rest(stock: Length, inward: Length) -> (Length, Length, i16) {
    if inward > PACKER_MOST {
        // What stands on a fixed shelf begins so many pitches up, and only the rest of it is a packer: no hole of the panel is
        // before the first index hole then.
        let up = (inward - stock).div_floor(Length::PITCH).max(0);
        let first = i16::try_from(-up).unwrap_or(i16::MIN);
        return (stock, inward - Length::PITCH * up, first);
    }
    if inward >= Length::ZERO {
        return (stock, inward, 0);
    }
    // It runs beyond: whole pitches of that are index holes, the rest is another value of the stop.
    let beyond = (-inward).div_floor(Length::PITCH);
    let stop = stock - inward - Length::PITCH * beyond;
    (
        stop,
        Length::ZERO,
        i16::try_from(beyond).unwrap_or(i16::MAX),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_packer_is_no_thicker_than_two_boards_and_the_rail_counts_the_rest() {
        let mm = |tenths: i32| Length::from_um(tenths * 100);
        let stock = mm(160);
        // On the bottom board, on a thick one, and on a fixed shelf 665.1 up: 20 pitches are 640.
        for (inward, packer, first) in [(182, 182, 0), (640, 640, 0), (6651, 251, -20)] {
            assert_eq!(rest(stock, mm(inward)), (stock, mm(packer), first));
        }
        // 16 - 25.1 + 10 pitches is where the same hole is without all of it: 16 - 665.1 + 30 pitches.
        assert_eq!(
            stock - mm(251) + Length::PITCH * 10,
            stock - mm(6651) + Length::PITCH * 30
        );
    }
}
