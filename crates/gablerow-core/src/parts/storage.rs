//! What a unit weighs and holds closed: what the scope of a rule on tip-over asks of it.

use super::{BoxPart, Parts, Piece};
use crate::cards::Cards;
use crate::job::{Cabinet, Job};
use crate::layout::{FrontLayout, Layout, Span};
use crate::measure::Length;
use crate::strength::{ScopeUnit, mass_kg};

impl Parts {
    /// The unit as the scope of tip-over sees it.
    ///
    /// Its mass is that of its boards: neither of its back, which no card names a board for, nor of box bottoms and hardware.
    /// A drawer holds what its box holds up to the top of its sides, its bottom taken as nothing; one without a box yet,
    /// what is behind its front.
    #[must_use]
    pub fn scope_unit(&self, cabinet: &Cabinet, layout: &Layout, job: &Job) -> ScopeUnit {
        let boxed = |front: &FrontLayout| self.boxes.iter().any(|made| made.front == front.key);
        let drawers = layout.fronts.iter().filter(|it| it.kind.is_drawer());
        let unboxed = drawers.filter(|front| !boxed(front) && front.kind.is_seen());
        let doors = layout.fronts.iter().filter(|it| it.kind.is_hung());
        let behind = |front| behind_dm3(front, layout, job);
        let inner = self.boxes.iter().filter(|made| made.inner);
        let inner: f64 = inner.map(inside_dm3).sum();
        let in_boxes: f64 = self.boxes.iter().map(inside_dm3).sum();
        ScopeUnit {
            height: cabinet.standing_height(),
            mass_kg: self.boards_kg(&job.cards),
            drawers_dm3: in_boxes + unboxed.map(behind).sum::<f64>(),
            behind_doors_dm3: (doors.map(behind).sum::<f64>() - inner).max(0.0),
        }
    }

    /// What its boards weigh, in kg.
    fn boards_kg(&self, cards: &Cards) -> f64 {
        let weighed = |piece: &Piece| {
            let density = cards.board(&piece.board)?.density.value;
            let [length, width] = [piece.length, piece.width].map(|side| side.total());
            Some(mass_kg(length, width, piece.thickness?, density.into()))
        };
        let panels = self.panels.iter().map(|part| &part.piece);
        let fronts = self.fronts.iter().map(|part| &part.piece);
        let shelves = self.shelves.iter().map(|part| &part.piece);
        let boxes = self.boxes.iter();
        let boxes = boxes.flat_map(|made| [&made.side, &made.side, &made.end, &made.end]);
        let all = panels.chain(fronts).chain(shelves).chain(boxes);
        all.filter_map(weighed).sum()
    }
}

/// The volume of a box of these sides, in dm3.
fn dm3([width, height, depth]: [Length; 3]) -> f64 {
    let side = |length: Length| length.max(Length::ZERO).mm() / 100.0;
    side(width) * side(height) * side(depth)
}

/// What a drawer box holds.
fn inside_dm3(made: &BoxPart) -> f64 {
    let ends = made.end.thickness.unwrap_or(Length::ZERO) * 2;
    let high = made.height - made.recess;
    dm3([made.inside.total(), high, made.length.total() - ends])
}

/// What is behind a front, bay by bay: as wide and as high as it covers the clear space, as deep as a drawer could be.
fn behind_dm3(front: &FrontLayout, layout: &Layout, job: &Job) -> f64 {
    let covered = |one: Span, other: Span| {
        let (from, to) = (one.from.max(other.from), one.to.min(other.to));
        (to - from).max(Length::ZERO)
    };
    let bays = layout.bays.iter();
    bays.map(|bay| {
        let wide = covered(bay.width_span(), Span::new(front.left, front.right()));
        let high = covered(bay.height_span(), Span::new(front.foot, front.head()));
        dm3([wide, high, bay.depth_behind_fronts(&job.shop)])
    })
    .sum()
}
