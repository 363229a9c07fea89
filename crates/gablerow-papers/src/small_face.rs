//! Faces as small pictures side by side: enough to see which panel is meant and what is bored where.

use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::drawing::{AreaKind, FaceDrawing};
use gablerow_core::job::Edge;
use gablerow_core::measure::Length;

use crate::hole_sign::draw_hole;
use crate::page::TextEnd;
use crate::pen::{self, EDGE, HAIR, HEAVY, Pen, SMALL, spread};
use crate::sheets::Sheets;
use crate::text::run_words;

/// The most a panel is wide and high in a picture, in mm of paper.
const WIDE: f64 = 33.0;
const HIGH: f64 = 52.0;
/// From the panel to what stands beside, above and below it.
const OFF: f64 = 1.2;
/// From one picture to the next.
const GAP: f64 = 4.0;
/// How dark the end of a fixed panel is: 1 is white.
const FIXED_PANEL: f64 = 0.85;
/// The most a sign may take of a pitch to either side.
const SIGN_OF_PITCH: f64 = 0.4;

/// A face to be drawn small.
pub(crate) struct SmallFace {
    name: String,
    face: FaceDrawing,
    /// Runs of hole numbers with the heights they stand at: the middle of each, from the foot, in mm of the panel.
    runs: Vec<(String, f64)>,
}

impl SmallFace {
    pub(crate) fn of(name: String, face: FaceDrawing) -> Self {
        let mut numbers: Vec<i16> = face.dots.iter().filter_map(|dot| dot.hole.number).collect();
        numbers.sort_unstable();
        numbers.dedup();
        let run = |run: &[i16]| {
            let (first, last) = (*run.first()?, *run.last()?);
            let middle = (face.height(first).mm() + face.height(last).mm()) / 2.0;
            Some((run_words((first, last)), middle))
        };
        let runs = numbers
            .chunk_by(|a, b| a + 1 == *b)
            .filter_map(run)
            .collect();
        Self { name, face, runs }
    }

    /// Draws faces in as many lines as they take, all to one scale, feet down.
    pub(crate) fn push(sheets: &mut Sheets, faces: &[Self]) {
        let divisor = faces.iter().map(Self::divisor).fold(1.0, f64::max);
        let beside = faces.iter().map(Self::beside).fold(0.0, f64::max);
        let across = |small: &Self| beside + small.face.depth.mm() / divisor;
        let widest = faces.iter().map(across).fold(WIDE / 2.0 + beside, f64::max) + GAP;
        let mut fit = 1_u16;
        while f64::from(fit + 1) * widest - GAP <= sheets.width() {
            fit += 1;
        }
        for line in faces.chunks(usize::from(fit)) {
            let titles: Vec<Vec<String>> =
                line.iter().map(|small| small.title(widest - GAP)).collect();
            let panel = line
                .iter()
                .map(|small| small.high(divisor))
                .fold(0.0, f64::max);
            let lines = titles.iter().map(Vec::len).max().unwrap_or_default();
            let lines = f64::from(u16::try_from(lines).unwrap_or(u16::MAX));
            let below = (lines + 1.0) * pen::leading(SMALL) + OFF;
            let (pen, (mut left, head)) = sheets.picture(panel + below + 2.0 * OFF);
            for (small, title) in line.iter().zip(titles) {
                let foot = head - OFF - panel;
                small.draw(pen, (left + beside, foot), divisor);
                let mut y = foot - OFF - 2.0 * pen::leading(SMALL) + OFF;
                for words in title {
                    pen.bold((left, y), TextEnd::Start, SMALL, &words);
                    y -= pen::leading(SMALL);
                }
                left += widest;
            }
        }
    }

    /// How much smaller it is drawn at least.
    fn divisor(&self) -> f64 {
        let (depth, length) = (self.face.depth.mm(), self.face.length.mm());
        (depth / WIDE).max(length / HIGH)
    }

    /// How wide what stands beside it is.
    fn beside(&self) -> f64 {
        let widths = self
            .runs
            .iter()
            .map(|(words, _)| pen::width(words, SMALL, false));
        widths.fold(0.0, f64::max) + OFF
    }

    /// How high it is, or what stands beside it.
    fn high(&self, divisor: f64) -> f64 {
        let numbers = f64::from(u16::try_from(self.runs.len()).unwrap_or(u16::MAX));
        (self.face.length.mm() / divisor).max(numbers * pen::leading(SMALL))
    }

    fn title(&self, room: f64) -> Vec<String> {
        pen::lines(&self.name, SMALL, true, room)
    }

    /// The panel from its lower left corner, with its hole numbers to the left and what its edges are below.
    fn draw(&self, pen: &mut Pen, (left, foot): (f64, f64), divisor: f64) {
        let face = &self.face;
        let at = |x: Length, y: Length| {
            (
                left + face.from_left(x).mm() / divisor,
                foot + y.mm() / divisor,
            )
        };
        for area in &face.areas {
            if let AreaKind::FixedPanel(..) = area.kind {
                let clip = |along: Length, end: Length| along.max(Length::ZERO).min(end);
                let from = at(
                    clip(area.x.from, face.depth),
                    clip(area.y.from, face.length),
                );
                let to = at(clip(area.x.to, face.depth), clip(area.y.to, face.length));
                pen.block(from, to, None, Some(FIXED_PANEL));
            }
        }
        let corners: Vec<_> = face.outline.iter().map(|&(x, y)| at(x, y)).collect();
        pen.shape(&corners, Some(EDGE), None);
        let front: Vec<_> = corners[3..].iter().chain(&corners[..1]).copied().collect();
        pen.way(&front, HEAVY);
        let most = Length::PITCH.mm() / divisor * SIGN_OF_PITCH;
        for dot in &face.dots {
            let radius = dot.hole.diameter.mm() / 2.0 / divisor;
            draw_hole(pen, at(dot.x, dot.y), radius, most, dot.hole.only_use());
        }
        let wanted: Vec<f64> = self
            .runs
            .iter()
            .map(|(_, middle)| foot + middle / divisor)
            .collect();
        let gap = pen::leading(SMALL);
        let top = foot + self.high(divisor);
        let places = spread(&wanted, gap, foot, top - gap / 2.0);
        for ((words, middle), y) in self.runs.iter().zip(places) {
            let from = (left - OFF, y);
            pen.beside(from, TextEnd::End, SMALL, words);
            pen.way(
                &[(left - OFF * 0.8, y), (left, foot + middle / divisor)],
                HAIR,
            );
        }
        let below = foot - pen::leading(SMALL);
        let edge = if face.is_front_left() {
            Edge::Front
        } else {
            Edge::Back
        };
        let width = face.depth.mm() / divisor;
        let [near, far] = [edge, edge.other()].map(|edge| edge.word().to_uppercase());
        let both = pen::width(&near, SMALL, false) + pen::width(&far, SMALL, false);
        pen.text((left, below), TextEnd::Start, SMALL, &near);
        if both + OFF <= width {
            pen.text((left + width, below), TextEnd::End, SMALL, &far);
        }
    }
}
