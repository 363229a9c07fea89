//! What says what is drawn: which face it is, how it lies, what the signs mean.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::layout::{Hole, Use};

use super::panel::draw_sign;
use crate::hole_table::bore;
use crate::page::TextEnd;
use crate::pen::{self, BODY, HAIR, Pen, SMALL, TITLE};
use crate::source_list::CAUTION;
use crate::{DrawnFace, Signs};

/// What a sign takes before its words.
const SIGN: f64 = 5.0;
/// Between the words of one sign and the next sign.
const GAP: f64 = 5.0;
/// How narrow a room for sentences may be.
const WIDTH_LEAST: f64 = 55.0;
/// How large the hole of a sign is, in mm of paper.
const SIGN_RADIUS: f64 = 0.7;

/// What says what is drawn, laid out.
pub(super) struct TitleBlock {
    /// How high it is, in mm.
    pub(super) height: f64,
    width: f64,
    /// Lines of text, from the top.
    lines: Vec<Words>,
    /// Signs with their words, line by line, each so far from the left.
    signs: Vec<Vec<(f64, Option<Use>, String)>>,
}

/// A line of text: its size, whether it is heavy, what it says.
type Words = (f64, bool, String);

impl TitleBlock {
    /// What is said of a face drawn at a scale, in a room so wide.
    pub(super) fn of(face: &DrawnFace, scale: &str, width: f64) -> Self {
        let mut texts = Vec::from([
            (TITLE, true, face.title()),
            (BODY, false, face.heading(scale)),
            (BODY, true, face.lie()),
            (SMALL, false, READ.to_string()),
        ]);
        texts.extend(face.zero_words().map(|words| (BODY, true, words)));
        texts.extend(
            face.remarks
                .iter()
                .map(|remark| (BODY, true, remark.clone())),
        );
        texts.push((SMALL, false, CAUTION.to_string()));
        let mut lines: Vec<Words> = Vec::new();
        for (size, is_bold, words) in texts {
            let wrapped = pen::lines(&words, size, is_bold, width).into_iter();
            lines.extend(wrapped.map(|line| (size, is_bold, line)));
        }
        let signs = in_lines(face.meanings(), width);
        let sizes = lines.iter().map(|&(size, ..)| size);
        let sizes = sizes.chain(signs.iter().map(|_| BODY));
        Self {
            height: sizes.map(pen::leading).sum::<f64>() + GAP,
            width,
            lines,
            signs,
        }
    }

    /// How wide a room for it is at least: as wide as the words of any sign.
    pub(super) fn width_least(face: &DrawnFace) -> f64 {
        let meanings = face.meanings().into_iter();
        let widths = meanings.map(|(_, words)| SIGN + pen::width(&words, SMALL, false));
        widths.fold(WIDTH_LEAST, f64::max)
    }

    /// Draws it from its upper left corner down: a line, the signs, what is written.
    pub(super) fn draw(&self, pen: &mut Pen, (left, head): (f64, f64)) {
        let mut y = head - GAP / 2.0;
        pen.way(&[(left, y), (left + self.width, y)], HAIR);
        for signs in &self.signs {
            y -= pen::leading(BODY);
            for (x, only_use, words) in signs {
                let x = left + x;
                draw_sign(pen, (x + SIGN / 2.0, y + 1.0), SIGN_RADIUS, SIGN, *only_use);
                pen.text((x + SIGN, y), TextEnd::Start, SMALL, words);
            }
        }
        for (size, is_bold, words) in &self.lines {
            y -= pen::leading(*size);
            match is_bold {
                true => pen.bold((left, y), TextEnd::Start, *size, words),
                false => pen.text((left, y), TextEnd::Start, *size, words),
            }
        }
    }
}

/// What the numbers around the panel are.
const READ: &str = "On the left hole numbers and heights from the foot, on the right heights from the head, to hole centres. \
    Grey: ends of fixed panels, back. Dashed: what fittings need.";

impl DrawnFace<'_> {
    /// Job, revision, size, board and scale.
    fn heading(&self, scale: &str) -> String {
        let mut heading = format!("{}. ", self.job.title);
        if !self.stamp.is_empty() {
            heading.push_str(&format!("{}. ", self.stamp));
        }
        let (size, board) = (self.size(self.job.unit), self.board());
        heading + &format!("{size}, {board}. Scale {scale}.")
    }

    /// What the signs stand for: each use and bore on this face once, with its count.
    fn meanings(&self) -> Vec<(Option<Use>, String)> {
        let mut found: Vec<(&Hole, usize)> = Vec::new();
        let kind = |hole: &Hole| (hole.only_use(), hole.diameter, hole.depth);
        for dot in &self.drawing.dots {
            match found
                .iter_mut()
                .find(|(hole, _)| kind(hole) == kind(&dot.hole))
            {
                Some((_, count)) => *count += 1,
                None => found.push((&dot.hole, 1)),
            }
        }
        found.sort_by_key(|(hole, _)| kind(hole));
        let words = |(hole, count): (&Hole, usize)| {
            let only_use = hole.only_use();
            let meaning = only_use.map_or("shared", Use::word);
            let bore = bore(hole, self.job.unit, &Signs::UNICODE);
            (only_use, format!("{meaning} {bore} ({count})"))
        };
        found.into_iter().map(words).collect()
    }
}

/// Signs with their words in lines no wider than the room, each after how far from the left it stands.
fn in_lines(
    meanings: Vec<(Option<Use>, String)>,
    width: f64,
) -> Vec<Vec<(f64, Option<Use>, String)>> {
    let mut lines: Vec<Vec<_>> = Vec::new();
    let mut at = 0.0;
    for (only_use, words) in meanings {
        let wide = SIGN + pen::width(&words, SMALL, false);
        match lines.last_mut() {
            Some(line) if at + wide <= width => line.push((at, only_use, words)),
            _ => {
                at = 0.0;
                lines.push([(at, only_use, words)].into());
            }
        }
        at += wide + GAP;
    }
    lines
}
