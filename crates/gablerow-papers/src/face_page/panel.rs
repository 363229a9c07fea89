//! The panel itself: outline, areas, rows, holes with their signs.

use alloc::vec::Vec;

use gablerow_core::drawing::{Area, AreaKind};
use gablerow_core::layout::Span;
use gablerow_core::measure::Length;

use super::Frame;
use crate::DrawnFace;
use crate::hole_sign::draw_hole;
use crate::page::TextEnd;
use crate::pen::{self, DASHED, EDGE, HAIR, HEAVY, Pen, SMALL, THIN};

/// How dark the end of a fixed panel is, and what the back takes: 1 is white.
const FIXED_PANEL: f64 = 0.9;
const BACK: f64 = 0.8;
/// The most a sign may take of a pitch to either side, so that two above each other stay apart.
const SIGN_OF_PITCH: f64 = 0.4;

impl DrawnFace<'_> {
    pub(super) fn draw_panel(&self, pen: &mut Pen, frame: &Frame) {
        for x in self.columns() {
            let at = |y| frame.place(self, x, y);
            pen.way(&[at(Length::ZERO), at(self.drawing.length)], HAIR);
        }
        for y in self.heights() {
            let height = frame.up(y);
            pen.way(&[(frame.left, height), (frame.right, height)], HAIR);
        }
        for area in &self.drawing.areas {
            self.draw_area(pen, frame, area);
        }
        let corners = self.drawing.outline.iter();
        let corners: Vec<_> = corners.map(|&(x, y)| frame.place(self, x, y)).collect();
        pen.shape(&corners, Some(EDGE), None);
        // The fourth corner is the upper front one, whatever is notched below it: along the front edge from there to the first.
        let front: Vec<_> = corners[3..].iter().chain(&corners[..1]).copied().collect();
        pen.way(&front, HEAVY);
        for dot in &self.drawing.dots {
            let place = frame.place(self, dot.x, dot.y);
            let radius = dot.hole.diameter.mm() / 2.0 / frame.divisor;
            let most = Length::PITCH.mm() / frame.divisor * SIGN_OF_PITCH;
            draw_hole(pen, place, radius, most, dot.hole.only_use());
        }
    }

    /// Whether a hole is in an area.
    fn is_bored(&self, area: &Area) -> bool {
        let within = |span: Span, at: Length| span.from <= at && at <= span.to;
        let mut dots = self.drawing.dots.iter();
        dots.any(|dot| within(area.x, dot.x) && within(area.y, dot.y))
    }

    fn draw_area(&self, pen: &mut Pen, frame: &Frame, area: &Area) {
        // Of a fixed panel that the upright stands on nothing is on the upright.
        let on_panel = |span: Span, end| (span.from.max(Length::ZERO), span.to.min(end));
        let (x, y) = (
            on_panel(area.x, self.drawing.depth),
            on_panel(area.y, self.drawing.length),
        );
        if x.0 >= x.1 || y.0 >= y.1 {
            return;
        }
        let from = frame.place(self, x.0, y.0);
        let to = frame.place(self, x.1, y.1);
        match area.kind {
            AreaKind::Back => pen.block(from, to, Some(DASHED), Some(BACK)),
            AreaKind::KeepOut(..) => pen.block(from, to, Some(DASHED), None),
            AreaKind::FixedPanel(item, _) => {
                pen.block(from, to, Some(THIN), Some(FIXED_PANEL));
                let (wide, high) = ((to.0 - from.0).abs(), to.1 - from.1);
                let words = item.word();
                if !self.is_bored(area)
                    && high > pen::leading(SMALL)
                    && wide > pen::width(words, SMALL, false)
                {
                    let middle = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
                    pen.beside(middle, TextEnd::Middle, SMALL, words);
                }
            }
        }
    }
}
