//! One direction of a projection: which cells a length falls into.

use gablerow_core::layout::Span;
use gablerow_core::measure::Length;

use super::Cells;

/// One direction of the projection.
#[derive(Clone, Copy)]
pub(super) struct Axis {
    /// What is drawn.
    whole: Span,
    /// Where the first cell begins.
    pub(super) start: Length,
    /// What one cell stands for.
    pub(super) step: Length,
    /// How many cells there are, at least one.
    pub(super) count: u16,
}

impl Axis {
    /// From the leftmost edge on; the last column is there when more than half of it is.
    pub(super) fn across(whole: Span, step: Length) -> Self {
        let least = Length::from_counts(1);
        Self::counted(whole, whole.from, step, least)
    }

    /// Lines on the grid, so that a hole is in the middle of its line; the first and the last are there when half of them is.
    pub(super) fn up(whole: Span, first_hole: Length, step: Length) -> Self {
        let half = Length::PITCH.half();
        let below = (whole.from - first_hole + Length::PITCH).div_floor(Length::PITCH);
        let start = first_hole - half + Length::PITCH * below;
        Self::counted(whole, start, step, Length::ZERO)
    }

    fn counted(whole: Span, start: Length, step: Length, less: Length) -> Self {
        let count = (whole.to - start + step.half() - less).div_floor(step);
        Self {
            whole,
            start,
            step,
            count: u16::try_from(count.max(1)).unwrap_or(u16::MAX),
        }
    }

    /// The boundary between cells nearest to an edge; the edges of the whole are drawn to, however narrow a reveal is.
    fn edge(self, at: Length) -> u16 {
        let half = self.step.half();
        let nearest = (at - self.start + half).div_floor(self.step);
        if at - self.whole.from < half {
            return 0;
        }
        if self.whole.to - at < half {
            return self.count;
        }
        let nearest = u16::try_from(nearest.max(0)).unwrap_or(u16::MAX);
        nearest.min(self.count)
    }

    /// From edge to edge, one cell at least.
    pub(super) fn between(self, span: Span) -> Cells {
        let from = self.edge(span.from).min(self.count - 1);
        let to = self.edge(span.to).max(from + 1);
        Cells { from, to }
    }

    /// A board: as many cells as it is thick, one at least, about its middle or at the end of the whole that it reaches.
    pub(super) fn board(self, span: Span) -> Cells {
        let thick = (span.to - span.from + self.step.half()).div_floor(self.step);
        let thick = u16::try_from(thick.max(1))
            .unwrap_or(u16::MAX)
            .min(self.count);
        let half = self.step.half() * i32::from(thick);
        let from = if span.from <= self.whole.from {
            0
        } else if span.to >= self.whole.to {
            self.count
        } else if thick == 1 {
            self.cell(span.middle())
        } else {
            self.edge(span.middle() - half)
        };
        let from = from.min(self.count - thick);
        Cells {
            from,
            to: from + thick,
        }
    }

    /// The cell that a place falls into, or the nearest.
    fn cell(self, at: Length) -> u16 {
        let cell = (at - self.start).div_floor(self.step).max(0);
        u16::try_from(cell).unwrap_or(u16::MAX).min(self.count - 1)
    }
}
