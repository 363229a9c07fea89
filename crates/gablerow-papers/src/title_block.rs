//! What says what is drawn: texts below each other, signs with their meanings, the caution.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::cautions::GENERAL;
use gablerow_core::layout::Use;

use crate::hole_sign::draw_hole;
use crate::page::TextEnd;
use crate::pen::{self, BODY, HAIR, Pen, SMALL, Words};

/// What a sign takes before its words.
pub(crate) const SIGN: f64 = 5.0;
/// Between the words of one sign and the next sign.
const GAP: f64 = 5.0;
/// How large the hole of a sign is, in mm of paper.
const SIGN_RADIUS: f64 = 0.7;

/// What says what is drawn, laid out.
pub(crate) struct TitleBlock {
    /// How high it is, in mm.
    pub(crate) height: f64,
    width: f64,
    /// Lines of text, from the top.
    lines: Vec<Words>,
    /// Signs with their words, line by line, each so far from the left.
    signs: Vec<Vec<(f64, Option<Use>, String)>>,
}

/// The use of a hole, and what is said of its sign; of several uses at once it is `None`.
pub(crate) type Meaning = (Option<Use>, String);

impl TitleBlock {
    /// Texts, each with its size and whether it is heavy, and what signs mean, in a room so wide. The caution comes last.
    pub(crate) fn of(texts: &[Words], meanings: Vec<Meaning>, width: f64) -> Self {
        let caution = (SMALL, false, GENERAL.to_string());
        let lines = pen::wrapped(texts.iter().chain([&caution]), width);
        let signs = in_lines(meanings, width);
        let of_signs: f64 = signs.iter().map(|_| pen::leading(BODY)).sum();
        Self {
            height: pen::height(&lines) + of_signs + GAP,
            width,
            lines,
            signs,
        }
    }

    /// Draws it from its upper left corner down: a line, the signs, what is written.
    pub(crate) fn draw(&self, pen: &mut Pen, (left, head): (f64, f64)) {
        let mut y = head - GAP / 2.0;
        pen.way(&[(left, y), (left + self.width, y)], HAIR);
        for signs in &self.signs {
            y -= pen::leading(BODY);
            for (x, only_use, words) in signs {
                let x = left + x;
                draw_hole(pen, (x + SIGN / 2.0, y + 1.0), SIGN_RADIUS, SIGN, *only_use);
                pen.text((x + SIGN, y), TextEnd::Start, SMALL, words);
            }
        }
        for (size, is_bold, words) in &self.lines {
            y -= pen::leading(*size);
            pen.write((left, y), TextEnd::Start, *size, *is_bold, words);
        }
    }
}

/// Signs with their words in lines no wider than the room, each after how far from the left it stands.
fn in_lines(meanings: Vec<Meaning>, width: f64) -> Vec<Vec<(f64, Option<Use>, String)>> {
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
