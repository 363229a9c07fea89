//! Which balanced carcass stands under a worktop: odd millimetres belong to the plinth, never to a panel.

use alloc::vec::Vec;

use crate::grid::Ends;
use crate::measure::Length;
use crate::sum::Sum;

/// What a carcass stands between.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Under {
    /// Upper face of the worktop above the floor.
    pub worktop: Length,
    /// Thickness of the worktop, measured; 0 without one.
    pub thickness: Length,
    /// The least plinth, included.
    pub plinth_least: Length,
    /// The highest plinth, included.
    pub plinth_most: Length,
}

/// A balanced carcass and the plinth it stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OnPlinth {
    /// Height of the carcass.
    pub carcass: Length,
    /// Height of the plinth.
    pub plinth: Sum,
}

/// Every balanced carcass that fits, the lowest first; `foot` and `head` are its end offsets.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::{Length, Unit};
/// use gablerow_core::solve::heights::{Under, carcasses};
///
/// // 915 - 38 = 877, less a plinth of 90 to 150: 727 to 787, and 32 + 32k gives 736 on 141 and 768 on 109
/// let [worktop, thickness, plinth_least, plinth_most, offset] = [915, 38, 90, 150, 16].map(Length::from_mm);
/// let under = Under { worktop, thickness, plinth_least, plinth_most };
/// let found = carcasses(&under, offset, offset);
/// assert_eq!(found.iter().map(|found| found.carcass).collect::<Vec<_>>(), [736, 768].map(Length::from_mm));
/// assert_eq!(found[0].plinth.show(Unit::Millimetre).to_string(), "141.0 = 915.0 (worktop) - 38.0 (its thickness) - 736.0 (carcass)");
/// ```
#[must_use]
pub fn carcasses(under: &Under, foot: Length, head: Length) -> Vec<OnPlinth> {
    let room = under.worktop - under.thickness;
    let least = Ends {
        height: room - under.plinth_most,
        foot,
        head,
    };
    let first = least.balanced_heights().above;
    let count = (room - under.plinth_least - first).div_floor(Length::PITCH) + 1;
    let on_plinth = |step: i32| {
        let carcass = first + Length::PITCH * step;
        let plinth = Sum::of("worktop", under.worktop)
            .less("its thickness", under.thickness)
            .less("carcass", carcass);
        OnPlinth { carcass, plinth }
    };
    (0..count).map(on_plinth).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn every_balanced_carcass_on_an_allowed_plinth_is_found(
            worktop in 300..1_200_i32,
            plinth in (0..120_i32, 0..120_i32),
            ends in (8..40_i32, 8..40_i32),
        ) {
            let [foot, head] = [ends.0, ends.1].map(Length::from_mm);
            let under = Under {
                worktop: Length::from_mm(worktop),
                thickness: Length::from_mm(38),
                plinth_least: Length::from_mm(plinth.0),
                plinth_most: Length::from_mm(plinth.0 + plinth.1),
            };
            let fits = |carcass: &i32| {
                let plinth = Length::from_mm(worktop - 38 - carcass);
                let pitches = (carcass - ends.0 - ends.1) % 32 == 0 && *carcass >= ends.0 + ends.1;
                pitches && under.plinth_least <= plinth && plinth <= under.plinth_most
            };
            let expected: Vec<Length> = (0..1_200).filter(fits).map(Length::from_mm).collect();
            let found = carcasses(&under, foot, head);
            for found in &found {
                let all = found.carcass + found.plinth.total() + under.thickness;
                prop_assert_eq!(all, under.worktop);
            }
            let found: Vec<Length> = found.iter().map(|found| found.carcass).collect();
            prop_assert_eq!(found, expected);
        }
    }
}
