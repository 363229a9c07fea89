//! Which holes the plates of a door take: an exact search over the places where a plate makes no new stop.
//!
//! ```text
//! aims, in order   1  no new stop: only legal places, plates apart from each other
//!                  2  the count asked for, then the distance kept from both ends of the door
//!                  3  least deviation from even spacing: all of it, then the largest
//!                  4  equal distances from both ends
//!                  5  the higher holes
//! ```

use alloc::vec::Vec;

use super::even::Even;
use super::search::Search;
use super::{Door, HingeRow, LegalCentre};
use crate::measure::Length;
use crate::sum::Sum;

/// From either end of a door to the middle of its first plate, at least: 70 mm, a house default.
pub const END_LEAST: Length = Length::from_mm(70);

/// A plate that has its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Where it sits.
    pub at: LegalCentre,
    /// Its middle, z, from its lowest hole.
    pub centre: Sum,
    /// Where even spacing would have it, z, to the count below.
    pub target: Length,
}

/// All plates of a door.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placement {
    /// The plates, upward; fewer than asked for where no more find room.
    pub plates: Vec<Placed>,
    /// How many were asked for.
    pub asked: u8,
    /// The distance that was kept from both ends; less than asked for where the door is too short.
    pub end_least: Length,
}

impl Placement {
    /// From each plate to the next, upward.
    pub fn distances(&self) -> impl Iterator<Item = Length> {
        let middles = |pair: &[Placed]| pair[1].at.centre - pair[0].at.centre;
        self.plates.windows(2).map(middles)
    }

    /// From the lowest plate to the highest; 0 with fewer than two.
    #[must_use]
    pub fn span(&self) -> Length {
        self.distances().sum()
    }

    /// The middles of the plates, upward.
    #[must_use]
    pub fn centres(&self) -> Vec<Length> {
        self.plates.iter().map(|plate| plate.at.centre).collect()
    }
}

/// Places for so many plates. Where that many find no room, as many as do; where the door is too short for the distance
/// from its ends, only the plates' own space is kept inside it.
///
/// # Example
///
/// ```
/// use gablerow_core::cards::PlateShape;
/// use gablerow_core::grid::{Grid, HoleNumber, Run};
/// use gablerow_core::measure::Length;
/// use gablerow_core::solve::hinges::{Door, END_LEAST, HingeRow, place};
///
/// // H 1248: ends 96 and 1152, their middle 624 is a tie of 608 and 640, and the higher wins
/// let holes = Run::new(HoleNumber::FIRST, HoleNumber::new(39).unwrap()).unwrap();
/// let row = HingeRow {
///     grid: Grid { first: Length::from_mm(16) },
///     holes,
///     taken: &[],
///     barred: &[],
///     plate: PlateShape::AlongRow,
///     half_zone: Length::from_mm(28),
/// };
/// let door = Door { foot: Length::from_um(1_500), height: Length::from_mm(1_245) };
/// assert_eq!(place(&row, door, 3, END_LEAST).centres(), [96, 640, 1_152].map(Length::from_mm));
/// ```
#[must_use]
pub fn place(row: &HingeRow<'_>, door: Door, count: u8, end_least: Length) -> Placement {
    let ends = [end_least, row.half_zone.min(end_least)];
    let legal = ends.map(|end| row.legal(door.foot + end, door.head() - end));
    let room = [0, 1].map(|at| most(&legal[at], row.apart()));
    let found = usize::from(count).min(room[1]);
    let at = usize::from(found > room[0]);
    let even = Even::between(&legal[at], door, found);
    let placed = |(hinge, place): (usize, LegalCentre)| Placed {
        at: place,
        centre: centre(row, place),
        target: even.target(hinge),
    };
    let best = Search::new(&legal[at], door, &even, row.apart()).best();
    Placement {
        plates: best.into_iter().enumerate().map(placed).collect(),
        asked: count,
        end_least: ends[at],
    }
}

/// The middle of a plate from its lowest hole.
fn centre(row: &HingeRow<'_>, at: LegalCentre) -> Sum {
    let hole = row.grid.height(at.hole);
    Sum::of("lower hole of the plate", hole).plus("half a pitch", at.centre - hole)
}

/// How many plates find room at most: the lowest places first leave the most.
fn most(legal: &[LegalCentre], apart: Length) -> usize {
    let mut count = 0;
    let mut next = Length::MIN;
    for place in legal.iter().map(|legal| legal.centre) {
        if place >= next {
            count += 1;
            next = place + apart;
        }
    }
    count
}
