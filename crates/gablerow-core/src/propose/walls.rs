//! What bars which holes of a wall: holes that are taken, on this face and behind it, and the space of other things.

use alloc::vec::Vec;

use crate::check;
use crate::grid::{HoleNumber, Run};
use crate::job::{FaceId, Job, Key};
use crate::layout::{BoreSpec, Item, Layout, Span, Upright, Use};
use crate::measure::Length;
use crate::solve::Interval;

/// A fastener that looks for holes of the shop's diameter and depth: what it is for, how deep it goes in.
#[derive(Clone, Copy)]
pub(super) struct Fastener {
    pub(super) use_: Use,
    pub(super) pen: Length,
}

/// One wall, as something new sees it.
pub(super) struct Wall<'a> {
    pub(super) job: &'a Job,
    pub(super) layout: &'a Layout,
    pub(super) face: FaceId,
    /// What goes when the new thing comes, and so bars nothing.
    pub(super) gone: &'a [Key],
}

impl Wall<'_> {
    fn upright(&self) -> Option<&Upright> {
        self.layout.upright(self.face.panel)
    }

    /// The holes of the panel.
    pub(super) fn holes(&self) -> Option<Run> {
        let (first, last) = self.upright()?.holes;
        Run::new(HoleNumber::new(first).ok()?, HoleNumber::new(last).ok()?)
    }

    /// Holes of the row at this setback that nothing new may take: those the checks would stop it on.
    pub(super) fn taken(&self, x: Length, fastener: Fastener) -> Vec<Run> {
        let bore = self.bore(fastener);
        check::stopped_holes(
            self.layout,
            &self.job.shop,
            (self.face, x),
            &bore,
            self.gone,
        )
    }

    /// The hole such a fastener gets, whoever will own it.
    fn bore(&self, fastener: Fastener) -> BoreSpec {
        BoreSpec {
            use_: fastener.use_,
            owner: Key(0),
            bay: None,
            diameter: self.job.shop.diameter,
            depth: Some(self.job.shop.depth),
            pen: fastener.pen,
            pen_unproved: false,
        }
    }

    /// The heights that things before the wall take, of those that reach into this depth and out from the face.
    pub(super) fn spaces(&self, x: Span, u: Span, bars: impl Fn(Item) -> bool) -> Vec<Interval> {
        let Some(face) = self.layout.face(self.face) else {
            return Vec::new();
        };
        let spaces = face.keep_outs.iter().filter(|space| {
            bars(space.item)
                && !space.owner.is_some_and(|owner| self.gone.contains(&owner))
                && space.x.overlap(x) > Length::ZERO
                && space.u.overlap(u) > Length::ZERO
        });
        spaces
            .map(|space| Interval::new(space.z.from, space.z.to))
            .collect()
    }
}
