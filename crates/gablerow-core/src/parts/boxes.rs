//! Drawer boxes: what of them is cut.

use alloc::vec::Vec;

use super::{Banded, BoxFit, Grain, Make, Piece};
use crate::cards::{CardId, RunnerKind};
use crate::job::{FrontKind, Key, Label, Spacers};
use crate::measure::Length;
use crate::sum::Sum;

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
    /// What lies between its runners and the walls.
    pub spacers: Spacers,
    /// How far those move it out of the middle of the bay; toward the right, negative toward the left.
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

impl Make<'_> {
    /// The box of every drawer, those with a front of their own first.
    pub(super) fn boxes(&mut self) -> Vec<BoxPart> {
        let fits = self.box_fits();
        fits.iter().filter_map(|fit| self.made_box(fit)).collect()
    }

    /// The parts of a box; `None` when there is no room for one.
    fn made_box(&mut self, fit: &BoxFit) -> Option<BoxPart> {
        let BoxFit {
            front,
            runner,
            card,
            inside,
            length,
            ..
        } = *fit;
        if !fit.has_room() {
            return None;
        }
        let board = self.shop.box_board();
        let high = Sum::of("height", fit.height);
        Some(BoxPart {
            front: front.key,
            name: self.cabinet.opening.front(front.key)?.name.clone(),
            inner: front.kind == FrontKind::Inner,
            bay: fit.bay.key,
            runner: runner.key,
            card: card.id.clone(),
            kind: card.kind,
            runner_length: runner.length,
            hole: runner.hole.number(self.layout.last),
            inside,
            outside: fit.outside,
            side_gap: fit.side_gap(),
            spacers: runner.spacers,
            moved: (runner.spacers.left - runner.spacers.right).half(),
            length,
            underside: fit.underside,
            rise: fit.underside.less("lower edge of the front", front.foot),
            clear_below: Sum::of("underside of the box", fit.underside.total())
                .less("what is below", fit.under),
            room: fit.room,
            height: fit.height,
            recess: card.recess.value,
            side: self.piece(board, [length, high], Banded::None, Grain::Deep),
            end: self.piece(board, [inside, high], Banded::None, Grain::Across),
            bottom: fit.bottom,
        })
    }
}
