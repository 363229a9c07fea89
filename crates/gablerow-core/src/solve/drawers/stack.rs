//! Which hole each drawer of a stack takes: an exact search.
//!
//! ```text
//! aims, in order   1  no new stop: free holes, clearances kept, boxes of the least height at least, d inside its range
//!                  2  fewest different box-to-front distances d: each one more is another drilling pattern
//!                  3  least deviation of d from the wanted one, summed
//!                  4  tallest boxes, summed
//!                  5  lowest holes
//! ```

use alloc::boxed::Box;
use alloc::vec::Vec;

use super::chain::{Candidate, Chain};
use super::patterns;
use crate::grid::{Grid, HoleNumber, Run};
use crate::measure::Length;
use crate::solve::Interval;
use crate::sum::Sum;

/// The air a drawer box needs. The usual 15, 25 and 10 mm are common practice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clearances {
    /// Below a box, to whatever is fixed there.
    pub below: Length,
    /// Between a box and the one above.
    pub between: Length,
    /// Above a box, to whatever is fixed there.
    pub above: Length,
}

/// How far above the lower edge of its front a box stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Distances {
    /// The distance wanted.
    pub wanted: Length,
    /// The least that will do, included.
    pub least: Length,
    /// The most that will do, included.
    pub most: Length,
}

/// A stack of drawers that look for holes.
#[derive(Clone, Copy, Debug)]
pub struct Stack<'a> {
    /// The cabinet's grid.
    pub grid: Grid,
    /// The holes that both walls have.
    pub holes: Run,
    /// Holes no runner may take on one wall or the other; see [`Interval::bars`].
    pub barred: &'a [Run],
    /// Lower edge of each front, z, upward.
    pub feet: &'a [Length],
    /// From a box's underside up to the runner's screw line.
    pub line: Length,
    /// The air the boxes need.
    pub clear: Clearances,
    /// What is fixed below the stack ends here, z: the upper face of the bottom panel.
    pub floor: Length,
    /// What is fixed above the stack begins here, z: the underside of a stretcher.
    pub ceiling: Length,
    /// Whatever else is fixed, between the drawers.
    pub fixed: &'a [Interval],
    /// From box to front.
    pub distances: Distances,
    /// Box heights are whole steps of this; 0 takes them as they come.
    pub step: Length,
    /// The least height of a box that is worth making.
    pub box_least: Length,
}

/// A drawer that has its hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DrawerPlace {
    /// The hole of its runners.
    pub hole: HoleNumber,
    /// Underside of its box, z.
    pub underside: Sum,
    /// From the lower edge of its front up to the box: d.
    pub distance: Sum,
    /// How high the box can be.
    pub room: Sum,
    /// The height it gets, in whole steps.
    pub height: Length,
    /// What is lost to the steps.
    pub lost: Length,
}

/// A hole for each drawer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StackPlan {
    /// The drawers, upward.
    pub drawers: Vec<DrawerPlace>,
    /// The different box-to-front distances, ascending; one is the aim.
    pub patterns: Vec<Length>,
    /// What the grid loses below the lowest box.
    pub lost_below: Sum,
}

/// Why a hole cannot serve a drawer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blocked {
    /// The walls have no such hole.
    OffRow,
    /// No runner may take it.
    Barred,
    /// The box would stand lower than the floor and the clearance allow.
    Low {
        /// By how much.
        by: Length,
    },
    /// The box would meet something fixed, or come too near.
    Fixed(Interval),
    /// Between what is below and above, no box of the least height finds room.
    NoRoom,
}

/// A hole that would suit a drawer's front, and what stands in the way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BlockedHole {
    /// The hole.
    pub hole: HoleNumber,
    /// What stands in the way.
    pub why: Blocked,
}

/// A stack that finds no holes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NoPlan {
    /// The drawer that cannot be placed, the lowest being 0.
    pub drawer: usize,
    /// Every hole with a distance inside the range; none when no height on the grid has one.
    pub holes: Vec<BlockedHole>,
    /// The nearest that works: distances outside their range by as little as possible, or else boxes lower than the least.
    pub nearest: Option<Box<StackPlan>>,
}

/// A hole for each drawer.
///
/// # Errors
/// - [`NoPlan`] when there is none; a stack without drawers always has one.
///
/// # Example
///
/// ```
/// use gablerow_core::grid::{Grid, HoleNumber, Run};
/// use gablerow_core::measure::Length;
/// use gablerow_core::solve::drawers::{Clearances, Distances, Stack, place};
///
/// // Fronts from 1.5, 289.5 and 545.5; holes 2, 11, 19 at 48, 336, 592, less line 12 and front: 34.5 each
/// let mm = Length::from_mm;
/// let stack = Stack {
///     grid: Grid { first: mm(16) },
///     holes: Run::new(HoleNumber::FIRST, HoleNumber::new(25).unwrap()).unwrap(),
///     barred: &[],
///     feet: &[1_500, 289_500, 545_500].map(Length::from_um),
///     line: mm(12),
///     clear: Clearances { below: mm(15), between: mm(25), above: mm(10) },
///     floor: Length::from_um(18_600),
///     ceiling: Length::from_um(781_400),
///     fixed: &[],
///     distances: Distances { wanted: mm(35), least: mm(18), most: mm(54) },
///     step: mm(8),
///     box_least: mm(40),
/// };
/// let plan = place(&stack).unwrap();
/// assert_eq!(plan.patterns, [Length::from_um(34_500)]);
/// assert_eq!(plan.drawers.iter().map(|drawer| drawer.hole.get()).collect::<Vec<_>>(), [2, 11, 19]);
/// assert_eq!(plan.drawers[0].height, mm(256));
/// ```
pub fn place(stack: &Stack<'_>) -> Result<StackPlan, NoPlan> {
    let chain = Chain::new(stack, stack.box_least, false);
    match patterns::fewest(&chain) {
        Some(best) => Ok(stack.plan(&best)),
        None => Err(stack.no_plan(&chain)),
    }
}

impl Stack<'_> {
    /// How far a distance lies outside its range.
    pub(super) fn outside(&self, distance: Length) -> Length {
        let (below, above) = (
            self.distances.least - distance,
            distance - self.distances.most,
        );
        below.max(above).max(Length::ZERO)
    }

    /// What stands in the way of a box on a hole, other boxes left aside.
    pub(super) fn blocked(&self, hole: HoleNumber) -> Option<Blocked> {
        if !self.holes.contains(hole) {
            return Some(Blocked::OffRow);
        }
        if self.barred.iter().any(|run| run.contains(hole)) {
            return Some(Blocked::Barred);
        }
        let underside = self.grid.height(hole) - self.line;
        let low = self.floor + self.clear.below - underside;
        if low > Length::ZERO {
            return Some(Blocked::Low { by: low });
        }
        let near =
            |fixed: &&Interval| fixed.from < underside && underside < fixed.to + self.clear.below;
        self.fixed.iter().find(near).map(|&at| Blocked::Fixed(at))
    }

    /// Underside of the lowest fixed thing above a height.
    pub(super) fn ceiling_above(&self, underside: Length) -> Length {
        let above = self.fixed.iter().map(|fixed| fixed.from);
        let above = above.filter(|&from| from >= underside);
        above.fold(self.ceiling, Length::min)
    }

    /// A box height in whole steps.
    pub(super) fn stepped(&self, room: Length) -> Length {
        if self.step > Length::ZERO {
            self.step * room.div_floor(self.step)
        } else {
            room
        }
    }

    fn plan(&self, best: &[Candidate]) -> StackPlan {
        let place = |(drawer, at): (usize, &Candidate)| {
            let (hole, own) = (self.grid.height(at.hole), "underside of the box");
            let over = Sum::of("underside of what is fixed above", at.ceiling)
                .less("clear above", self.clear.above)
                .less(own, at.underside);
            let between = best.get(drawer + 1).map(|next| {
                Sum::of("underside of the box above", next.underside)
                    .less("clear between", self.clear.between)
                    .less(own, at.underside)
            });
            let room = between
                .filter(|between| between.total() <= over.total())
                .unwrap_or(over);
            let height = self.stepped(room.total());
            let underside = Sum::of("hole", hole).less("runner line", self.line);
            DrawerPlace {
                hole: at.hole,
                underside,
                distance: underside.less("foot of the front", self.feet[drawer]),
                room,
                height,
                lost: room.total() - height,
            }
        };
        let drawers: Vec<DrawerPlace> = best.iter().enumerate().map(place).collect();
        let mut patterns: Vec<Length> = drawers.iter().map(|at| at.distance.total()).collect();
        patterns.sort_unstable();
        patterns.dedup();
        let lowest = drawers.first().map(|lowest| {
            Sum::of("underside of the lowest box", lowest.underside.total())
                .less("floor", self.floor)
                .less("clear below", self.clear.below)
        });
        StackPlan {
            drawers,
            patterns,
            lost_below: lowest.unwrap_or_default(),
        }
    }

    /// Which drawer cannot be placed, and the nearest that works. The chain is the one that found nothing.
    fn no_plan(&self, chain: &Chain<'_>) -> NoPlan {
        let nearest = [self.box_least, Length::ZERO]
            .into_iter()
            .find_map(|least| {
                let best = Chain::new(self, least, true).best(&|_, _| true)?;
                Some(Box::new(self.plan(&best.places)))
            });
        let odd = |place: &DrawerPlace| {
            self.outside(place.distance.total()) > Length::ZERO || place.height < self.box_least
        };
        let odd = nearest
            .as_ref()
            .and_then(|plan| plan.drawers.iter().position(odd));
        let drawer = odd.unwrap_or_else(|| chain.stuck());
        NoPlan {
            drawer,
            holes: self.suiting(drawer),
            nearest,
        }
    }

    /// The holes whose distance to a front is inside the range, each with what stands in the way.
    fn suiting(&self, drawer: usize) -> Vec<BlockedHole> {
        let Some(&foot) = self.feet.get(drawer) else {
            return Vec::new();
        };
        let line = foot + self.line;
        let run = self
            .grid
            .within(line + self.distances.least, line + self.distances.most);
        let why = |hole: HoleNumber| BlockedHole {
            hole,
            why: self.blocked(hole).unwrap_or(Blocked::NoRoom),
        };
        run.map_or_else(Vec::new, |run| run.holes().map(why).collect())
    }
}
