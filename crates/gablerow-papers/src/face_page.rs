//! A face as a page: the panel at 1:1 or a stated scale, what is needed to bore it around it, and what it is below.
//!
//! ```text
//!              HEAD (704.0 from the foot)
//!   front row 37.0 |<->|                    how far each row is from the front edge
//!          FRONT                  BACK
//!            +---------------------+
//!  11  336.0 |-+---------------+-. | 368.0  hole number and height from the foot; height from the head
//!            +---------------------+
//!          FRONT                  BACK
//!                  |<------------->| 523.0 front row
//!              FOOT
//!  what it is, how it lies, what the signs mean: below, or beside a tall panel
//!  the check rule
//! ```

mod panel;
mod sizes;
mod words;
mod zero;

use alloc::vec::Vec;

use gablerow_core::measure::Length;

use crate::DrawnFace;
use crate::page::{Page, Paper};
use crate::pen::Pen;
use crate::title_block::TitleBlock;

use self::sizes::Sizes;

/// From the edge of a sheet to what is printed on it, in mm.
pub(crate) const MARGIN: f64 = 10.0;
/// What the check rule takes at the foot of a sheet, in mm.
const RULE: f64 = 8.0;
/// How wide the printed part of a sheet at 1:1 is at least, so that what is below the panel has room.
const WIDTH_LEAST: f64 = 190.0;

/// How much smaller than the panel it is drawn, largest first, and how that is written.
const SCALES: [(f64, &str); 6] = [
    (1.0, "1:1"),
    (2.0, "1:2"),
    (2.5, "1:2.5"),
    (5.0, "1:5"),
    (10.0, "1:10"),
    (20.0, "1:20"),
];

/// The sheet that a face is drawn on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FaceSize {
    /// A sheet of paper, and the largest scale at which the panel fits on it.
    Paper(Paper),
    /// 1:1, on a sheet as large as that takes.
    True,
}

/// Where the panel is on the page.
#[derive(Clone, Copy)]
struct Frame {
    /// How much smaller it is drawn.
    divisor: f64,
    /// The left edge of the panel as it is seen, from the left of the page.
    left: f64,
    /// Its right edge.
    right: f64,
    /// Its foot, from the foot of the page.
    foot: f64,
    /// Its head.
    head: f64,
}

impl Frame {
    /// A place of the panel on the page: from its front edge, from its foot.
    fn place(&self, face: &DrawnFace, x: Length, y: Length) -> (f64, f64) {
        (self.across(face, x), self.up(y))
    }

    fn across(&self, face: &DrawnFace, x: Length) -> f64 {
        self.left + face.drawing.from_left(x).mm() / self.divisor
    }

    fn up(&self, y: Length) -> f64 {
        self.foot + y.mm() / self.divisor
    }
}

/// A sheet, how much smaller the panel is drawn on it, and where what is said of it stands.
struct Sheet {
    width: f64,
    height: f64,
    divisor: f64,
    title: TitleBlock,
    /// Whether that stands to the right of the panel, and not below it.
    is_beside: bool,
}

impl DrawnFace<'_> {
    /// The face as a page. Its holes are circles true to the scale, which is stated.
    #[must_use]
    pub fn page(&self, size: FaceSize) -> Page {
        let sizes = Sizes::of(self);
        let sheet = match size {
            FaceSize::True => self.true_sheet(&sizes),
            FaceSize::Paper(paper) => self.sheet_of(paper, &sizes),
        };
        let (depth, length) = self.seen(sheet.divisor);
        let (wide, high) = self.taken(sheet.divisor, &sizes);
        // What is left over is shared between both sides; a title beside the panel is beside it.
        let (left, low) = match sheet.is_beside {
            true => (0.0, sheet.height - 2.0 * MARGIN - RULE - high),
            false => (
                sheet.width - 2.0 * MARGIN - wide,
                sheet.height - 2.0 * MARGIN - RULE - high - sheet.title.height,
            ),
        };
        let title = if sheet.is_beside {
            0.0
        } else {
            sheet.title.height
        };
        let left = MARGIN + left / 2.0 + sizes.beside;
        let foot = MARGIN + RULE + title + low / 2.0 + sizes.below;
        let frame = Frame {
            divisor: sheet.divisor,
            left,
            right: left + depth,
            foot,
            head: foot + length,
        };
        let mut pen = Pen::new((sheet.width, sheet.height));
        self.draw_panel(&mut pen, &frame);
        self.draw_sizes(&mut pen, &frame, &sizes);
        self.draw_zero(&mut pen, &frame);
        pen.check_rule((MARGIN, MARGIN));
        let corner = match sheet.is_beside {
            true => (MARGIN + wide, sheet.height - MARGIN),
            false => (MARGIN, MARGIN + RULE + title),
        };
        sheet.title.draw(&mut pen, corner);
        pen.page()
    }

    /// Depth and length of the panel on the page.
    fn seen(&self, divisor: f64) -> (f64, f64) {
        let (depth, length) = (self.drawing.depth, self.drawing.length);
        (depth.mm() / divisor, length.mm() / divisor)
    }

    /// Width and height of the panel with all that is around it.
    fn taken(&self, divisor: f64, sizes: &Sizes) -> (f64, f64) {
        let (depth, length) = self.seen(divisor);
        (
            depth + 2.0 * sizes.beside,
            length + sizes.above + sizes.below,
        )
    }

    /// The sheet that it takes to draw the panel as large as it is.
    fn true_sheet(&self, sizes: &Sizes) -> Sheet {
        let [(divisor, word), ..] = SCALES;
        let (wide, high) = self.taken(divisor, sizes);
        let width = wide.max(WIDTH_LEAST);
        let title = self.title_block(word, width);
        Sheet {
            width: width + 2.0 * MARGIN,
            height: high + title.height + RULE + 2.0 * MARGIN,
            divisor,
            title,
            is_beside: false,
        }
    }

    /// A sheet of paper with the panel as large as it fits on it: above what is said of it, or beside that.
    fn sheet_of(&self, paper: Paper, sizes: &Sizes) -> Sheet {
        let (width, height) = paper.size();
        let room = (width - 2.0 * MARGIN, height - 2.0 * MARGIN - RULE);
        let sheet = |divisor, title, is_beside| Sheet {
            width,
            height,
            divisor,
            title,
            is_beside,
        };
        for (divisor, word) in SCALES {
            let (wide, high) = self.taken(divisor, sizes);
            if wide > room.0 || high > room.1 {
                continue;
            }
            let title = self.title_block(word, room.0);
            if high + title.height <= room.1 {
                return sheet(divisor, title, false);
            }
            let beside = room.0 - wide;
            if beside >= self.title_width_least() {
                let title = self.title_block(word, beside);
                if title.height <= room.1 {
                    return sheet(divisor, title, true);
                }
            }
        }
        // What no scale brings onto the paper has a sheet of its own size: it can be read on a screen, and nothing is on top of another.
        let [.., (divisor, word)] = SCALES;
        let title = self.title_block(word, room.0);
        let (wide, high) = self.taken(divisor, sizes);
        Sheet {
            width: width.max(wide + 2.0 * MARGIN),
            height: height.max(high + title.height + RULE + 2.0 * MARGIN),
            divisor,
            title,
            is_beside: false,
        }
    }

    /// Every place across at which there are holes, from the front edge.
    fn columns(&self) -> Vec<Length> {
        let mut columns: Vec<Length> = self.drawing.dots.iter().map(|dot| dot.x).collect();
        columns.sort_unstable();
        columns.dedup();
        columns
    }

    /// Every height at which there are holes, from the foot up.
    fn heights(&self) -> Vec<Length> {
        let mut heights: Vec<Length> = self.drawing.dots.iter().map(|dot| dot.y).collect();
        heights.sort_unstable();
        heights.dedup();
        heights
    }
}

#[cfg(test)]
mod tests;
