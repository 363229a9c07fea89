//! Which tab and plate give a wanted overlay: overlay = arm + tab - plate.
//!
//! *Arm* is the overlay of a hinge with no tab on a plate of height 0, *tab* the board between cup and door edge, *plate*
//! the plate's height. Source: two hinge makers' planning sheets print this relation with other letters.

use crate::measure::Length;
use crate::sum::Sum;

/// The usual cup. Source: a hinge maker's quick-reference page.
pub const CUP_DIAMETER: Length = Length::from_mm(35);

/// How a door meets the upright its plate is on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mount {
    /// It covers the upright's whole edge of this thickness but the reveal.
    Outer {
        /// Thickness of the upright, measured.
        thickness: Length,
        /// From the upright's outer face to the door's edge: half the gap, or a reveal.
        reveal: Length,
    },
    /// It shares the partition's edge with another door.
    Shared {
        /// Thickness of the partition, measured.
        thickness: Length,
        /// Between the two doors.
        gap: Length,
    },
    /// It stands inside the opening.
    Inset {
        /// Between door and upright.
        gap: Length,
    },
}

/// The overlay a mount wants, from the terms it is made of; below zero for an inset door.
#[must_use]
pub fn overlay_wanted(mount: Mount) -> Sum {
    match mount {
        Mount::Outer { thickness, reveal } => {
            Sum::of("thickness of the upright", thickness).less("reveal", reveal)
        }
        Mount::Shared { thickness, gap } => {
            // Both halves are taken from one difference, so that they make the whole.
            Sum::of("half the partition", thickness.half())
                .plus("half the gap", (thickness - gap).half() - thickness.half())
        }
        Mount::Inset { gap } => Sum::default().less("gap", gap),
    }
}

/// What a hinge card says of overlay.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OverlayCard<'a> {
    /// Its arm.
    pub arm: Length,
    /// The least tab.
    pub tab_least: Length,
    /// The most, included.
    pub tab_most: Length,
    /// From one tab to the next; 0 when there is only the least.
    pub tab_step: Length,
    /// Heights of the plates in stock, in any order.
    pub plates: &'a [Length],
    /// Diameter of its cup.
    pub cup: Length,
}

/// A tab and a plate, and what they give.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OverlayFit {
    /// The tab.
    pub tab: Length,
    /// The plate's height.
    pub plate: Length,
    /// The overlay they give.
    pub overlay: Sum,
    /// How far that is over the wanted one; below zero when it is less.
    pub residual: Length,
    /// From the door's hinge edge to the middle of the cup.
    pub cup_centre: Sum,
}

/// The tab and plate that come nearest to a wanted overlay; of equal ones the lowest plate, then the least tab. `None`
/// without a plate in stock.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::Length;
/// use gablerow_core::solve::hinges::{CUP_DIAMETER, OverlayCard, fit_overlay};
///
/// // Wanted 17.1: 15 + 4 - 2 = 17, and the cup's middle is 17.5 + 4 from the edge
/// let plates = [0, 2, 4].map(Length::from_mm);
/// let card = OverlayCard {
///     arm: Length::from_mm(15),
///     tab_least: Length::from_mm(3),
///     tab_most: Length::from_mm(7),
///     tab_step: Length::from_um(500),
///     plates: &plates,
///     cup: CUP_DIAMETER,
/// };
/// let fit = fit_overlay(&card, Length::from_um(17_100)).unwrap();
/// assert_eq!([fit.tab, fit.plate], [4, 2].map(Length::from_mm));
/// assert_eq!(fit.residual, Length::from_um(-100));
/// assert_eq!(fit.cup_centre.total(), Length::from_um(21_500));
/// ```
#[must_use]
pub fn fit_overlay(card: &OverlayCard<'_>, wanted: Length) -> Option<OverlayFit> {
    let pairs = card.plates.iter().flat_map(|&plate| {
        nearest_tabs(card, wanted - card.arm + plate).map(move |tab| (plate, tab))
    });
    let off = |plate: Length, tab: Length| card.arm + tab - plate - wanted;
    let (plate, tab) = pairs.min_by_key(|&(plate, tab)| (off(plate, tab).abs(), plate, tab))?;
    Some(OverlayFit {
        tab,
        plate,
        overlay: Sum::of("arm", card.arm)
            .plus("tab", tab)
            .less("plate", plate),
        residual: off(plate, tab),
        cup_centre: Sum::of("half the cup", card.cup.half()).plus("tab", tab),
    })
}

/// The tabs of a card next below and next above an ideal one.
fn nearest_tabs(card: &OverlayCard<'_>, ideal: Length) -> [Length; 2] {
    if card.tab_step <= Length::ZERO || card.tab_most < card.tab_least {
        return [card.tab_least; 2];
    }
    let steps = (card.tab_most - card.tab_least).div_floor(card.tab_step);
    let below = (ideal - card.tab_least).div_floor(card.tab_step);
    [below, below + 1].map(|step| card.tab_least + card.tab_step * step.clamp(0, steps))
}
