//! Drawer boxes: as wide as their runners leave them, as high as what is above them leaves.
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

use super::{Banded, Grain, Make, Missing, Piece};
use crate::cards::{CardId, Runner as RunnerCard, RunnerKind};
use crate::job::{FrontKind, Key, Label, Runner};
use crate::layout::{BayLayout, FrontLayout, Item, KeepOut, Span};
use crate::measure::Length;
use crate::sum::Sum;

/// What a bottom is shorter than its seat between two grooves, so that it goes in: a house default.
const BOTTOM_SHORTER: Length = Length::from_mm(1);

/// A drawer box on a pair of runners.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BoxPart {
    /// The drawer it belongs to.
    pub front: Key,
    /// What that is called at the bench.
    pub name: Label,
    /// Whether it is behind a door, without a front of its own.
    pub inner: bool,
    /// The bay it runs in.
    pub bay: Key,
    /// Its runners in the cabinet.
    pub runner: Key,
    /// The card of those.
    pub card: CardId,
    /// How it sits on them.
    pub kind: RunnerKind,
    /// Their length by name.
    pub runner_length: Length,
    /// The hole of their screw line.
    pub hole: i16,
    /// Clear width inside the box.
    pub inside: Sum,
    /// Width over both sides of the box.
    pub outside: Sum,
    /// From either side of the box to the wall, or to the spacer on it.
    pub side_gap: Length,
    /// How far spacers move it out of the middle of the bay; toward the right, negative toward the left.
    pub moved: Length,
    /// Front to back.
    pub length: Sum,
    /// From the carcass underside up to its underside.
    pub underside: Sum,
    /// From the lower edge of its front, or of its room, up to its underside.
    pub rise: Sum,
    /// Clear height under it, down to what is fixed there, or to a loose shelf.
    pub clear_below: Sum,
    /// How high it can be.
    pub room: Sum,
    /// How high it is: whole steps of the shop.
    pub height: Length,
    /// How far its bottom stands above the underside of its sides.
    pub recess: Length,
    /// Each of its two sides.
    pub side: Piece,
    /// Its front and its back, which stand between the sides.
    pub end: Piece,
    /// Its bottom, which no card names a board for; from left to right, from front to back.
    pub bottom: [Sum; 2],
}

/// A runner of a bay with its card.
#[derive(Clone, Copy)]
struct Found<'a> {
    bay: &'a BayLayout,
    runner: &'a Runner,
    card: &'a RunnerCard,
    /// Underside of the box, z.
    underside: Sum,
}

impl<'a> Make<'a> {
    /// The box of every drawer, those with a front of their own first.
    pub(super) fn boxes(&mut self) -> Vec<BoxPart> {
        let layout = self.layout;
        let all = self.runners();
        let mut made = Vec::new();
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
                made.extend(self.box_on(found, front, &all));
            }
        }
        made
    }

    /// Every runner whose card has its length.
    fn runners(&mut self) -> Vec<Found<'a>> {
        let (layout, cards) = (self.layout, self.cards);
        let mut found = Vec::new();
        for (bay, owned) in self.bays() {
            for runner in &owned.runners {
                let card = cards.runner(&runner.card);
                let Some(card) = card.filter(|card| card.length(runner.length).is_some()) else {
                    self.no_card(&runner.card);
                    continue;
                };
                let line = layout.height(runner.hole.number(layout.last));
                let underside = Sum::of("hole", line).less("runner line", card.line.value);
                found.push(Found {
                    bay,
                    runner,
                    card,
                    underside,
                });
            }
        }
        found
    }

    /// The box on a pair of runners; `None` when there is no room for one.
    fn box_on(&mut self, found: Found, front: &FrontLayout, all: &[Found]) -> Option<BoxPart> {
        let Found {
            bay,
            runner,
            card,
            underside,
        } = found;
        let rules = self.shop.boxes;
        let board = self.shop.box_board();
        let Some(side) = self.cards.board(board).map(|card| card.thickness.value) else {
            self.no_card(board);
            return None;
        };
        let [inside, outside] = widths(found, side);
        let length = Sum::of("runner", runner.length).less("shorter", card.shorter.value);
        let room = self.room(found, front, all);
        let height = stepped(room.total(), rules.step);
        let least = inside.total().min(length.total()).min(height);
        if least <= Length::ZERO {
            self.miss(Missing::Room { front: front.key });
            return None;
        }
        let spacers = runner.spacers;
        let clear = bay.width - spacers.left - spacers.right;
        let high = Sum::of("height", height);
        let groove = rules.groove;
        let bottom = [
            inside
                .plus("grooves", groove * 2)
                .less("shorter", BOTTOM_SHORTER),
            length.less("one side's thickness", side),
        ];
        Some(BoxPart {
            front: front.key,
            name: self.cabinet.opening.front(front.key)?.name.clone(),
            inner: front.kind == FrontKind::Inner,
            bay: bay.key,
            runner: runner.key,
            card: card.id.clone(),
            kind: card.kind,
            runner_length: runner.length,
            hole: runner.hole.number(self.layout.last),
            inside,
            outside,
            side_gap: (clear - outside.total()).half(),
            moved: (spacers.left - spacers.right).half(),
            length,
            underside,
            rise: underside.less("lower edge of the front", front.foot),
            clear_below: Sum::of("underside of the box", underside.total())
                .less("what is below", self.under(found, underside.total())),
            room,
            height,
            recess: card.recess.value,
            side: self.piece(board, [length, high], Banded::None, Grain::Deep),
            end: self.piece(board, [inside, high], Banded::None, Grain::Across),
            bottom,
        })
    }

    /// How high a box can be: up to the next one above it in its bay, or to what stands above it, whichever leaves less; the
    /// highest one no higher than its front where another stands over that, or than its room behind a door.
    fn room(&self, found: Found<'a>, front: &FrontLayout, all: &[Found]) -> Sum {
        let rules = self.shop.boxes;
        let own = found.underside.total();
        let next = all
            .iter()
            .filter(|other| other.bay.key == found.bay.key)
            .map(|other| other.underside.total())
            .filter(|underside| *underside > own)
            .min();
        let fixed = self.obstacle(found, own);
        let end = self.layout.box_end(front).filter(|_| next.is_none());
        let over = end.map_or(fixed, |end| end.min(fixed));
        let over = Sum::of("what is above", over).less("clear above", rules.above);
        let under_next = next.map(|next| {
            Sum::of("underside of the box above", next).less("clear between", rules.between)
        });
        under_next
            .filter(|next| next.total() < over.total())
            .unwrap_or(over)
            .less("underside of the box", own)
    }

    /// The underside of the lowest thing above a height that a box on these runners would meet, or else the ceiling of its
    /// bay.
    fn obstacle(&self, found: Found<'a>, from: Length) -> Length {
        let above = self.in_the_way(found).map(|z| z.from);
        let ceiling = found.bay.ceiling.total();
        above.filter(|z| *z >= from).fold(ceiling, Length::min)
    }

    /// The top of the highest thing below a height that a box on these runners would stand on, or else the floor of its bay.
    fn under(&self, found: Found<'a>, from: Length) -> Length {
        let below = self.in_the_way(found).map(|z| z.to);
        let floor = found.bay.floor.total();
        below.filter(|z| *z <= from).fold(floor, Length::max)
    }

    /// The heights of fixed panels, rails and loose shelves on either wall that a box on these runners passes.
    fn in_the_way(&self, found: Found<'a>) -> impl Iterator<Item = Span> + use<'a> {
        let runner = found.runner.key;
        let walls = [found.bay.left, found.bay.right].map(|wall| {
            let face = self.layout.face(wall);
            face.map_or(&[][..], |face| &face.keep_outs)
        });
        let own = walls[0].iter().find(|space| space.owner == Some(runner));
        let along = own.map_or(Span::new(Length::ZERO, Length::MAX), |space| space.x);
        let meets = move |space: &&'a KeepOut| {
            !matches!(space.item, Item::Hinge | Item::Runner)
                && space.x.overlap(along) > Length::ZERO
        };
        let spaces = walls.into_iter().flatten();
        spaces.filter(meets).map(|space| space.z)
    }
}

/// Inside and outside width: what comes off the clear width is named by the card.
fn widths(found: Found, side: Length) -> [Sum; 2] {
    let clear = Sum::of("clear width", found.bay.width)
        .less("spacer left", found.runner.spacers.left)
        .less("spacer right", found.runner.spacers.right)
        .less("runners", found.card.deduct.value);
    match found.card.kind {
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
