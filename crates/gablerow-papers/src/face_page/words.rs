//! What is said of a face: which it is, how it lies, what the numbers and the signs mean.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::layout::{Hole, Use};

use crate::hole_table::bore;
use crate::pen::{self, BODY, SMALL, TITLE};
use crate::title_block::{Meaning, SIGN, TitleBlock};
use crate::{DrawnFace, Signs};

/// How narrow a room for sentences may be, in mm.
const WIDTH_LEAST: f64 = 55.0;

/// What the numbers around the panel are.
const READ: &str = "On the left hole numbers and heights from the foot, on the right heights from the head, to hole centres. \
    Grey: ends of fixed panels, back. Dashed: what fittings need.";

impl DrawnFace<'_> {
    /// All that is said of it when it is drawn at a scale, in a room so wide.
    pub(super) fn title_block(&self, scale: &str, width: f64) -> TitleBlock {
        let read = match self.drawing.dots.is_empty() {
            true => "Nothing is bored from this face.",
            false => READ,
        };
        let mut texts = Vec::from([
            (TITLE, true, self.title()),
            (BODY, false, self.heading(scale)),
            (BODY, true, self.lie()),
            (SMALL, false, format!("{read} {}", self.of.job.unit.key())),
        ]);
        texts.extend(self.zero_words().map(|words| (BODY, true, words)));
        texts.extend(self.of.remarks(width));
        TitleBlock::of(&texts, self.meanings(), width)
    }

    /// How wide a room that takes at least: as wide as what is said of any sign.
    pub(super) fn title_width_least(&self) -> f64 {
        let meanings = self.meanings().into_iter();
        let widths = meanings.map(|(_, words)| SIGN + pen::width(&words, SMALL, false));
        widths.fold(WIDTH_LEAST, f64::max)
    }

    /// Job, revision, size, board and scale.
    fn heading(&self, scale: &str) -> String {
        let (size, board) = (self.size(self.of.job.unit), self.board());
        let heading = self.of.heading();
        format!("{heading}{size}, {board}. Scale {scale}.")
    }

    /// What the signs stand for: each use and bore on this face once, with its count.
    fn meanings(&self) -> Vec<Meaning> {
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
            let bore = bore(hole, self.of.job.unit, &Signs::UNICODE);
            (only_use, format!("{meaning} {bore} ({count})"))
        };
        found.into_iter().map(words).collect()
    }
}
