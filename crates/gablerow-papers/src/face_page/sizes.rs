//! The numbers around the panel: how far rows are from both edges, hole numbers, heights from foot and head.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::measure::Length;

use super::Frame;
use crate::DrawnFace;
use crate::page::TextEnd;
use crate::pen::{self, BODY, HAIR, Pen, SMALL, THIN, spread};

/// From the panel to the texts beside it: where a text stands aside, the line to its height bends here.
const LEADER: f64 = 6.0;
/// From one line of measures to the next.
const LEVEL: f64 = 4.2;
/// What the word of an edge takes, or of an end.
const WORD: f64 = 6.5;
/// Half as long as the stroke across the end of a measure.
const STROKE: f64 = 0.8;
/// Between a text and what stands beside it.
const GAP: f64 = 1.5;

/// What is written around a panel, and the room that takes, in mm of paper.
pub(super) struct Sizes {
    /// From the foot up.
    heights: Vec<Height>,
    /// From the front.
    rows: Vec<Row>,
    /// To the left and to the right of the panel.
    pub(super) beside: f64,
    /// Above it.
    pub(super) above: f64,
    /// Below it.
    pub(super) below: f64,
}

/// A height at which there are holes, and what is written there.
struct Height {
    y: Length,
    number: Option<i16>,
    from_foot: String,
    from_head: String,
}

/// A line of holes, and what is written at its measures.
struct Row {
    x: Length,
    from_front: String,
    from_back: String,
}

impl Sizes {
    pub(super) fn of(face: &DrawnFace) -> Self {
        let heights: Vec<Height> = face.heights().into_iter().map(|y| face.height(y)).collect();
        let rows: Vec<Row> = face.columns().into_iter().map(|x| face.row(x)).collect();
        let mut levels = 0.0;
        let mut widest = pen::width(&face.deep(), SMALL, false);
        for Row {
            from_front,
            from_back,
            ..
        } in &rows
        {
            levels += LEVEL;
            for words in [from_front, from_back] {
                widest = widest.max(pen::width(words, SMALL, false));
            }
        }
        let feet = width_of(&heights, |height| &height.from_foot);
        let heads = width_of(&heights, |height| &height.from_head);
        let numbers = feet + GAP + pen::width("000", SMALL, false);
        Self {
            heights,
            rows,
            beside: LEADER + GAP + widest.max(numbers).max(heads),
            above: WORD + levels + LEVEL + WORD,
            below: WORD + levels + WORD,
        }
    }
}

fn width_of(heights: &[Height], words: impl Fn(&Height) -> &str) -> f64 {
    let widths = heights
        .iter()
        .map(|height| pen::width(words(height), SMALL, false));
    widths.fold(0.0, f64::max)
}

impl DrawnFace<'_> {
    fn show(&self, length: Length) -> String {
        length.show(self.of.job.unit).to_string()
    }

    fn deep(&self) -> String {
        format!("deep {}", self.show(self.drawing.depth))
    }

    fn height(&self, y: Length) -> Height {
        let mut here = self.drawing.dots.iter().filter(|dot| dot.y == y);
        Height {
            y,
            number: here.find_map(|dot| dot.hole.number),
            from_foot: self.show(y),
            from_head: self.show(self.drawing.length - y),
        }
    }

    fn row(&self, x: Length) -> Row {
        let row = self.drawing.rows.iter().find(|row| row.x == x);
        let name = row.map_or("single", |row| row.name.word());
        Row {
            x,
            from_front: format!("{name} {}", self.show(x)),
            from_back: format!("{name} {}", self.show(self.drawing.depth - x)),
        }
    }

    pub(super) fn draw_sizes(&self, pen: &mut Pen, frame: &Frame, sizes: &Sizes) {
        let (front, back) = (
            frame.across(self, Length::ZERO),
            frame.across(self, self.drawing.depth),
        );
        let mut above = Measures {
            pen,
            edge: front,
            panel: frame.head,
            level: frame.head + WORD,
            up: 1.0,
            is_left: front < back,
        };
        for row in &sizes.rows {
            above.measure(frame.across(self, row.x), &row.from_front);
        }
        above.measure(back, &self.deep());
        let head = above.level;
        let mut below = Measures {
            edge: back,
            panel: frame.foot,
            level: frame.foot - WORD,
            up: -1.0,
            is_left: back < front,
            pen,
        };
        for row in sizes.rows.iter().rev() {
            below.measure(frame.across(self, row.x), &row.from_back);
        }
        let foot = below.level;
        let middle = (frame.left + frame.right) / 2.0;
        let words = format!("HEAD, {} from the foot", self.show(self.drawing.length));
        pen.bold((middle, head), TextEnd::Middle, BODY, &words);
        pen.bold((middle, foot - BODY * 0.7), TextEnd::Middle, BODY, "FOOT");
        self.draw_edges(pen, frame);
        draw_heights(pen, frame, &sizes.heights);
    }

    /// FRONT and BACK, at both ends of each edge.
    fn draw_edges(&self, pen: &mut Pen, frame: &Frame) {
        let (left, right) = match self.drawing.is_front_left() {
            true => ("FRONT", "BACK"),
            false => ("BACK", "FRONT"),
        };
        for y in [frame.head + 1.0, frame.foot - 1.0 - SMALL * 0.75] {
            pen.bold((frame.left - GAP, y), TextEnd::End, SMALL, left);
            pen.bold((frame.right + GAP, y), TextEnd::Start, SMALL, right);
        }
    }
}

/// Measures from one edge, each on a line of its own, with its words beyond the edge, where no other line is.
struct Measures<'a> {
    pen: &'a mut Pen,
    edge: f64,
    /// The end of the panel they stand at.
    panel: f64,
    /// Where the next one goes.
    level: f64,
    /// 1 above the panel, -1 below it.
    up: f64,
    /// Whether the edge is on the left.
    is_left: bool,
}

impl Measures<'_> {
    fn measure(&mut self, to: f64, words: &str) {
        let (level, beyond) = (self.level + STROKE * self.up, self.panel + self.up);
        let y = self.level;
        self.pen.way(&[(to, beyond), (to, level)], HAIR);
        self.pen
            .way(&[(self.edge, beyond), (self.edge, level)], HAIR);
        self.pen.way(&[(self.edge, y), (to, y)], THIN);
        for x in [self.edge, to] {
            let corners = [(x - STROKE, y - STROKE), (x + STROKE, y + STROKE)];
            self.pen.way(&corners, THIN);
        }
        let (x, end) = match self.is_left {
            true => (self.edge - GAP, TextEnd::End),
            false => (self.edge + GAP, TextEnd::Start),
        };
        self.pen.beside((x, y), end, SMALL, words);
        self.level += LEVEL * self.up;
    }
}

/// Hole numbers and heights up both sides, each with a line to where it belongs.
fn draw_heights(pen: &mut Pen, frame: &Frame, heights: &[Height]) {
    let gap = pen::leading(SMALL);
    let (from, to) = (frame.foot + gap / 2.0, frame.head - gap / 2.0);
    let shown = thinned(heights, (to - from) / gap);
    let wanted: Vec<f64> = shown.iter().map(|height| frame.up(height.y)).collect();
    let feet = width_of(heights, |height| &height.from_foot);
    for (height, place) in shown.iter().zip(spread(&wanted, gap, from, to)) {
        let y = frame.up(height.y);
        for (edge, out) in [(frame.left, -1.0), (frame.right, 1.0)] {
            let corners = [
                (edge + LEADER * out, place),
                (edge + LEADER * out / 3.0, y),
                (edge, y),
            ];
            pen.way(&corners, HAIR);
        }
        let left = frame.left - LEADER - GAP / 2.0;
        pen.beside((left, place), TextEnd::End, SMALL, &height.from_foot);
        if let Some(number) = height.number {
            let left = left - feet - GAP;
            pen.beside((left, place), TextEnd::End, SMALL, &number.to_string());
        }
        let right = frame.right + LEADER + GAP / 2.0;
        pen.beside((right, place), TextEnd::Start, SMALL, &height.from_head);
    }
}

/// The heights there is room for: all of them; or, since neighbours are a pitch apart, the ends of runs; or as many of those, the
/// lowest and the highest among them.
fn thinned(heights: &[Height], most: f64) -> Vec<&Height> {
    let fit = |count: usize| u16::try_from(count).is_ok_and(|count| f64::from(count) <= most + 1.0);
    if fit(heights.len()) {
        return heights.iter().collect();
    }
    let follows = |low: &Height, high: &Height| {
        low.number.is_some() && low.number.map(|number| number + 1) == high.number
    };
    let mut ends = Vec::new();
    for (at, height) in heights.iter().enumerate() {
        let after_neighbour = at > 0 && follows(&heights[at - 1], height);
        let before_neighbour = heights
            .get(at + 1)
            .is_some_and(|next| follows(height, next));
        if !(after_neighbour && before_neighbour) {
            ends.push(height);
        }
    }
    let mut step = 1;
    while step < ends.len() && !fit(ends.len().div_ceil(step) + 1) {
        step += 1;
    }
    let last = ends.len().saturating_sub(1);
    let kept = ends.into_iter().enumerate();
    let mut kept: Vec<&Height> = kept
        .filter(|(at, _)| at % step == 0 || *at == last)
        .map(|(_, height)| height)
        .collect();
    // A panel may be drawn too low for two.
    while !fit(kept.len()) {
        kept.pop();
    }
    kept
}
