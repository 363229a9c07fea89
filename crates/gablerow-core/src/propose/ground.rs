//! What bars which holes of a wall for the plates of a door, bay by bay: each has its own front row.
//!
//! ```text
//!        |   . |   upper bay, recessed: row and hardware further back
//!   -----+=====+   halfway between them the one ends and the other begins
//!        | .   |   lower bay
//! ```

use alloc::vec::Vec;

use super::walls::{Fastener, Wall};
use crate::cards::{Hinge, PlateShape};
use crate::grid::Run;
use crate::layout::{BayLayout, Item, Span, Use};
use crate::measure::Length;
use crate::solve::Interval;
use crate::solve::hinges::HingeRow;

/// What bars which holes of the wall a door hangs on.
pub(super) struct Ground<'a> {
    wall: Wall<'a>,
    card: &'a Hinge,
    holes: Run,
    taken: Vec<Run>,
    barred: Vec<Interval>,
}

impl<'a> Ground<'a> {
    /// `None` where no bay sees the wall, or it has no holes.
    pub(super) fn of(wall: Wall<'a>, card: &'a Hinge) -> Option<Self> {
        let mut ground = Self {
            holes: wall.holes()?,
            wall,
            card,
            taken: Vec::new(),
            barred: Vec::new(),
        };
        let layout = ground.wall.layout;
        let bays: Vec<&BayLayout> = layout
            .bays_at(ground.wall.face)
            .map(|(bay, _)| bay)
            .collect();
        for (at, bay) in bays.iter().enumerate() {
            let halfway = |below: &BayLayout, above: &BayLayout| {
                (below.ceiling.total() + above.floor.total()).half()
            };
            let below = at.checked_sub(1).map(|below| halfway(bays[below], bay));
            let above = bays.get(at + 1).map(|above| halfway(bay, above));
            ground.bay(bay, below, above);
        }
        (!bays.is_empty()).then_some(ground)
    }

    /// Adds what bars plates of one bay, whose middles lie between two heights; without one, up or down to the end.
    fn bay(&mut self, bay: &BayLayout, from: Option<Length>, to: Option<Length>) {
        let (wall, card) = (&self.wall, self.card);
        let fastener = Fastener {
            use_: Use::Plate,
            pen: card.pen.value,
        };
        let row = bay.front_row.total();
        let mut taken = wall.taken(row, fastener);
        if card.plate == PlateShape::InLine {
            taken.extend(wall.taken(row + Length::PITCH, fastener));
        }
        let front = row - wall.job.shop.setback_front;
        let (x, u) = (
            Span::new(front, front + card.reach.value),
            Span::new(Length::ZERO, card.proud.value),
        );
        let spaces = wall.spaces(x, u, |item| item != Item::Shelf);
        // A plate's holes and its space reach beyond its middle.
        let within = |reach: Length| {
            let from = from.map_or(Length::MIN, |from| from - reach);
            (from, to.map_or(Length::MAX, |to| to + reach))
        };
        let (low, high) = within(card.plate.rise());
        let grid = wall.layout.grid;
        self.taken.extend(taken.into_iter().filter_map(|run| {
            let from = from.map_or(Some(run.first()), |_| grid.first_from(low))?;
            let to = to.map_or(Some(run.last()), |_| grid.last_to(high))?;
            Run::new(run.first().max(from), run.last().min(to))
        }));
        let (low, high) = within(card.half_zone.value);
        self.barred.extend(spaces.into_iter().filter_map(|space| {
            let (from, to) = (space.from.max(low), space.to.min(high));
            (from < to).then(|| Interval::new(from, to))
        }));
    }

    /// The wall as the search sees it.
    pub(super) fn row(&self) -> HingeRow<'_> {
        HingeRow {
            grid: self.wall.layout.grid,
            holes: self.holes,
            taken: &self.taken,
            barred: &self.barred,
            plate: self.card.plate,
            half_zone: self.card.half_zone.value,
        }
    }
}
