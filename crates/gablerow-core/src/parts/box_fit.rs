//! Drawer boxes in their place: as wide as their runners leave them, as high as what is above them leaves.
//!
//! ```text
//!   wall |<- spacer ->|<- gap ->| outside of the box |<- gap ->|<- spacer ->| wall
//!
//!   front  |                   what is fixed above, or the next box
//!          |  +-----------+    less the clear height
//!          |  |    box    |
//!          |  +-----------+    underside: hole - line
//!          |_                  lower edge of the front;  from there up to the underside: rise
//! ```

use alloc::vec::Vec;

use super::{Make, Missing};
use crate::cards::{Board, Runner as RunnerCard, RunnerKind, RunnerLength};
use crate::job::{Cabinet, FrontKind, Hand, Job, Key, Runner};
use crate::layout::{BayLayout, FrontLayout, Item, KeepOut, Layout, Span};
use crate::measure::Length;
use crate::strength::mass_kg;
use crate::sum::Sum;

/// What a box and its runner clear an open door by, and the box a hinge beside it; a house default.
pub const CLEAR_OF_DOOR: Length = Length::from_mm(3);

/// What a bottom is shorter than its seat between two grooves, so that it goes in: a house default.
pub(crate) const BOTTOM_SHORTER: Length = Length::from_mm(1);

/// How thick the bottom of a box is taken to be for its mass, of the board of its sides, since no card names one: a house
/// guess.
pub(crate) const BOTTOM_THICKNESS: Length = Length::from_mm(8);

/// A drawer box on its pair of runners, whether or not there is room for one.
#[derive(Clone, Copy, Debug)]
pub struct BoxFit<'a> {
    /// The drawer it belongs to.
    pub front: &'a FrontLayout,
    /// The bay it runs in.
    pub bay: &'a BayLayout,
    /// Its runners in the cabinet.
    pub runner: &'a Runner,
    /// The card of those.
    pub card: &'a RunnerCard,
    /// Which of the card's lengths they have.
    pub made: &'a RunnerLength,
    /// What its sides, its front and its back are made of.
    pub board: &'a Board,
    /// Clear width inside it.
    pub inside: Sum,
    /// Width over both its sides.
    pub outside: Sum,
    /// Front to back.
    pub length: Sum,
    /// Its bottom, from left to right, from front to back.
    pub bottom: [Sum; 2],
    /// What it and its runners take of the depth, x, with all that the card asks for behind them.
    pub x: Span,
    /// From the carcass underside up to its underside.
    pub underside: Sum,
    /// Top of what is fixed below it, or of a loose shelf there, z.
    pub under: Length,
    /// What ends its room above.
    pub over: Over,
    /// Underside of that, z.
    pub over_at: Length,
    /// How high it can be; not above zero where it cannot be at all.
    pub room: Sum,
    /// How high it is: whole steps of the shop.
    pub height: Length,
}

/// What is above a drawer box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// The box on these runners.
    Box(Key),
    /// A panel, a rail or a loose shelf, and its key where it has one.
    Thing(Item, Option<Key>),
    /// What closes the bay.
    Ceiling,
    /// The head of its front, over which another one stands, or of its room behind a door.
    Head(Key),
}

/// Every drawer box of a cabinet in its place, those with a front of their own first.
#[must_use]
pub fn box_fits<'a>(cabinet: &'a Cabinet, layout: &'a Layout, job: &'a Job) -> Vec<BoxFit<'a>> {
    Make::new(cabinet, layout, job).box_fits()
}

impl BoxFit<'_> {
    /// From either side of the box to the wall, or to the spacer on it.
    #[must_use]
    pub fn side_gap(&self) -> Length {
        let spacers = self.runner.spacers;
        let clear = self.bay.width - spacers.left - spacers.right;
        (clear - self.outside.total()).half()
    }

    /// Whether the box has a width, a length and a height.
    #[must_use]
    pub fn has_room(&self) -> bool {
        let least = self.inside.total().min(self.length.total());
        least.min(self.height) > Length::ZERO
    }

    /// The heights it takes, z.
    #[must_use]
    pub fn z(&self) -> Span {
        let underside = self.underside.total();
        Span::new(underside, underside + self.height)
    }

    /// What it takes before a wall, out from it.
    #[must_use]
    pub fn before(&self, wall: Hand) -> Span {
        let [near, far] = [wall, wall.other()].map(|it| self.runner.spacers.on(it));
        let gap = self.side_gap();
        Span::new(near + gap, self.bay.width - far - gap)
    }

    /// What it weighs in kg: sides, front, back and bottom, without what is on its front.
    #[must_use]
    pub fn mass_kg(&self) -> f64 {
        let thickness = self.board.thickness.value;
        let density = f64::from(self.board.density.value);
        let around = (self.length.total() + self.inside.total()) * 2;
        let [across, deep] = self.bottom.map(|it| it.total());
        mass_kg(around, self.height, thickness, density)
            + mass_kg(across, deep, BOTTOM_THICKNESS, density)
    }
}

/// A runner of a bay with its card.
#[derive(Clone, Copy)]
struct Found<'a> {
    bay: &'a BayLayout,
    runner: &'a Runner,
    card: &'a RunnerCard,
    made: &'a RunnerLength,
    /// What it takes of the depth, x.
    x: Span,
    /// Underside of the box, z.
    underside: Sum,
}

impl<'a> Make<'a> {
    /// The box of every drawer in its place, those with a front of their own first.
    pub(super) fn box_fits(&mut self) -> Vec<BoxFit<'a>> {
        let layout = self.layout;
        let all = self.runners();
        let mut fits = Vec::new();
        for kind in [FrontKind::Drawer, FrontKind::Inner] {
            for front in layout.fronts.iter().filter(|front| front.kind == kind) {
                if !layout.bays.iter().any(|bay| bay.key == front.opening) {
                    self.miss(Missing::Bay { front: front.key });
                }
                let carrier = layout.box_carrier(self.cabinet, front);
                let of = |runner: Key| all.iter().find(|found| found.runner.key == runner);
                let Some(&found) = carrier.and_then(|carrier| of(carrier.key)) else {
                    self.miss(Missing::Runners { front: front.key });
                    continue;
                };
                let fit = self.box_on(found, front, &all);
                if fit.is_some_and(|fit| !fit.has_room()) {
                    self.miss(Missing::Room { front: front.key });
                }
                fits.extend(fit);
            }
        }
        fits
    }

    /// Every runner whose card has its length.
    fn runners(&mut self) -> Vec<Found<'a>> {
        let (layout, cards) = (self.layout, self.cards);
        let mut found = Vec::new();
        for (bay, owned) in self.bays() {
            for runner in &owned.runners {
                let card = cards.runner(&runner.card);
                let made = card.and_then(|card| Some((card, card.length(runner.length)?)));
                let Some((card, made)) = made else {
                    self.no_card(&runner.card);
                    continue;
                };
                let line = layout.height(runner.hole.number(layout.last));
                let underside = Sum::of("hole", line).less("runner line", card.line.value);
                found.push(Found {
                    bay,
                    runner,
                    card,
                    made,
                    x: self.depth_taken(bay, runner, card, made),
                    underside,
                });
            }
        }
        found
    }

    fn depth_taken(
        &self,
        bay: &BayLayout,
        runner: &Runner,
        card: &RunnerCard,
        made: &RunnerLength,
    ) -> Span {
        let set_back = Length::PITCH * i32::from(runner.set_back);
        let front = bay.front_row.total() - self.shop.setback_front + set_back;
        let from = front + card.stand_back.value;
        Span::new(from, (from + runner.length).max(front + made.need.value))
    }

    /// The box on a pair of runners; `None` when its board has no card.
    fn box_on(
        &mut self,
        found: Found<'a>,
        front: &'a FrontLayout,
        all: &[Found],
    ) -> Option<BoxFit<'a>> {
        let Found {
            bay,
            runner,
            card,
            made,
            x,
            underside,
        } = found;
        let rules = self.shop.boxes;
        let Some(board) = self.cards.board(self.shop.box_board()) else {
            self.no_card(self.shop.box_board());
            return None;
        };
        let side = board.thickness.value;
        let [inside, outside] = box_widths(bay, runner, card, side);
        let length = Sum::of("runner", runner.length).less("shorter", card.shorter.value);
        let (over, over_at, room) = self.room(found, front, all);
        let bottom = [
            inside
                .plus("grooves", rules.groove * 2)
                .less("shorter", BOTTOM_SHORTER),
            length.less("one side's thickness", side),
        ];
        Some(BoxFit {
            front,
            bay,
            runner,
            card,
            made,
            board,
            inside,
            outside,
            length,
            bottom,
            x,
            underside,
            under: self.under(found, underside.total()),
            over,
            over_at,
            room,
            height: stepped(room.total(), rules.step),
        })
    }

    /// How high a box can be, what ends that and at which height: the next box above it in its bay, or what stands above it,
    /// whichever leaves less; the highest one no higher than its front where another stands over that, or than its room
    /// behind a door.
    fn room(&self, found: Found<'a>, front: &FrontLayout, all: &[Found]) -> (Over, Length, Sum) {
        let rules = self.shop.boxes;
        let own = found.underside.total();
        let next = all
            .iter()
            .filter(|other| other.bay.key == found.bay.key)
            .map(|other| (other.underside.total(), other.runner.key))
            .filter(|(underside, _)| *underside > own)
            .min();
        let (mut over, mut at) = self.obstacle(found, own);
        let end = self.layout.box_end(front).filter(|_| next.is_none());
        if let Some(end) = end.filter(|end| *end < at) {
            (over, at) = (Over::Head(front.key), end);
        }
        let room = Sum::of("what is above", at).less("clear above", rules.above);
        let under_next = next.map(|(next, key)| {
            let room = Sum::of("underside of the box above", next);
            (
                Over::Box(key),
                next,
                room.less("clear between", rules.between),
            )
        });
        let (over, at, room) = under_next
            .filter(|(_, _, next)| next.total() < room.total())
            .unwrap_or((over, at, room));
        (over, at, room.less("underside of the box", own))
    }

    /// The lowest thing above a height that a box on these runners would meet and its underside, or else the ceiling of its
    /// bay.
    fn obstacle(&self, found: Found<'a>, from: Length) -> (Over, Length) {
        let ceiling = found.bay.ceiling.total();
        let above = self.in_the_way(found);
        let above = above.filter(|thing| thing.z.from >= from && thing.z.from <= ceiling);
        above
            .min_by_key(|thing| (thing.z.from, thing.item, thing.owner))
            .map_or((Over::Ceiling, ceiling), |thing| {
                (Over::Thing(thing.item, thing.owner), thing.z.from)
            })
    }

    /// The top of the highest thing below a height that a box on these runners would stand on, or else the floor of its bay.
    fn under(&self, found: Found<'a>, from: Length) -> Length {
        let below = self.in_the_way(found).map(|thing| thing.z.to);
        let floor = found.bay.floor.total();
        below.filter(|z| *z <= from).fold(floor, Length::max)
    }

    /// Fixed panels, rails and loose shelves on either wall that a box on these runners passes.
    fn in_the_way(&self, found: Found<'a>) -> impl Iterator<Item = &'a KeepOut> + use<'a> {
        let layout = self.layout;
        let walls = [found.bay.left, found.bay.right].map(|wall| {
            let face = layout.face(wall);
            face.map_or(&[][..], |face| &face.keep_outs)
        });
        let meets = move |space: &&'a KeepOut| {
            (space.item == Item::Shelf || space.item.is_fixed_panel())
                && space.x.overlap(found.x) > Length::ZERO
        };
        walls.into_iter().flatten().filter(meets)
    }
}

/// Inside and outside width of a box whose sides are so thick: what comes off the clear width is named by the card.
#[must_use]
pub fn box_widths(bay: &BayLayout, runner: &Runner, card: &RunnerCard, side: Length) -> [Sum; 2] {
    let clear = Sum::of("clear width", bay.width)
        .less("spacer left", runner.spacers.left)
        .less("spacer right", runner.spacers.right)
        .less("runners", card.deduct.value);
    match card.kind {
        RunnerKind::Undermount => [clear, clear.plus("sides of the box", side * 2)],
        RunnerKind::SideMount => [clear.less("sides of the box", side * 2), clear],
    }
}

/// A height in whole steps; as it comes when there are none.
fn stepped(room: Length, step: Length) -> Length {
    if step > Length::ZERO {
        step * room.div_floor(step)
    } else {
        room
    }
}
