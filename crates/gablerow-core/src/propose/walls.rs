//! What bars which holes of a wall: holes that are taken, on this face and behind it, and the space of other things.

use alloc::vec::Vec;

use crate::grid::{HoleNumber, Run};
use crate::job::{FaceId, Job, Key};
use crate::layout::{Item, Layout, Span, Upright};
use crate::measure::Length;
use crate::solve::Interval;

/// A fastener that looks for holes: how deep its hole is, how deep it goes in.
#[derive(Clone, Copy)]
pub(super) struct Fastener {
    pub(super) depth: Length,
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

    /// Holes of the row at this setback that nothing new may take: those of this face, and those behind it that would meet.
    pub(super) fn taken(&self, x: Length, fastener: Fastener) -> Vec<Run> {
        let mut taken = self.runs(self.face, x, |_| true);
        let thickness = self.upright().map_or(Length::ZERO, |it| it.thickness);
        let limits = &self.job.shop.limits;
        let meets = |behind: &crate::layout::BoreSpec| {
            let deep = behind
                .depth
                .is_none_or(|depth| depth + fastener.depth > thickness - limits.web);
            deep || behind.pen + fastener.pen > thickness - limits.spare
        };
        taken.extend(self.runs(self.face.behind(), x, meets));
        taken
    }

    /// The runs at a setback, near enough to be one hole or a bad one, that are not gone.
    fn runs(
        &self,
        face: FaceId,
        x: Length,
        bars: impl Fn(&crate::layout::BoreSpec) -> bool,
    ) -> Vec<Run> {
        let near = self.job.shop.limits.near;
        let Some(face) = self.layout.face(face) else {
            return Vec::new();
        };
        let rows = face
            .rows
            .iter()
            .filter(|row| (row.x.total() - x).abs() < near);
        let runs = rows.flat_map(|row| &row.runs);
        runs.filter(|run| !self.gone.contains(&run.spec.owner) && bars(&run.spec))
            .filter_map(|run| {
                Run::new(
                    HoleNumber::new(run.first).ok()?,
                    HoleNumber::new(run.last).ok()?,
                )
            })
            .collect()
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
