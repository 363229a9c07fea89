//! A sheet of paper with what is printed on it. Papers are laid out as pages once; every format only prints them.
//!
//! ```text
//! y
//! ^            Millimetres of paper, from the lower left corner of the sheet:
//! |  o 35.2    what is true to size on the page is true to size under a rule.
//! |
//! +--------> x
//! ```

use alloc::string::String;
use alloc::vec::Vec;

use crate::typeface::Typeface;

/// A place on a page: mm from the lower left corner, to the right and up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Up.
    pub y: f64,
}

/// A size of paper that a printer has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Paper {
    /// 210 x 297. Source: ISO 216.
    A4,
    /// 297 x 420. Source: ISO 216.
    A3,
    /// 8 1/2 x 11 in.
    Letter,
}

impl Paper {
    /// All of them, in the order a user steps through them.
    pub const ALL: [Self; 3] = [Self::A4, Self::A3, Self::Letter];

    /// What it is called.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::A3 => "A3",
            Self::Letter => "Letter",
        }
    }

    /// Width and height in mm, the longer one upright.
    #[must_use]
    pub fn size(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::A3 => (297.0, 420.0),
            Self::Letter => (215.9, 279.4),
        }
    }
}

/// A sheet and what is on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// How wide the sheet is, in mm.
    pub width: f64,
    /// How high, in mm.
    pub height: f64,
    /// What is on it, in the order it is painted.
    pub marks: Vec<Mark>,
}

/// One thing on a page.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// Straight lines from corner to corner.
    Path {
        /// The corners, two at least.
        corners: Vec<Point>,
        /// Whether the last is joined with the first.
        is_closed: bool,
        /// What it is drawn with and filled with.
        ink: Ink,
    },
    /// A circle.
    Ring {
        /// Its centre.
        centre: Point,
        /// Its true radius, in mm of paper.
        radius: f64,
        /// What it is drawn with and filled with.
        ink: Ink,
    },
    /// A line of text.
    Text(Text),
}

/// What a shape is drawn with. A shape with neither is not seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ink {
    /// Its line.
    pub line: Option<Line>,
    /// What is inside: 0 is black, 1 is white.
    pub fill: Option<f64>,
}

/// A line that is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// How wide, in mm.
    pub width: f64,
    /// 0 is black, 1 is white.
    pub shade: f64,
    /// Dashes and the gaps between them, each so long in mm; `None` is one line throughout.
    pub dash: Option<f64>,
}

/// A line of text.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// Where its foot line is.
    pub at: Point,
    /// Which of its ends is there.
    pub end: TextEnd,
    /// How high a line of its type is, in mm: the size of the typeface.
    pub size: f64,
    /// Whether its strokes are heavy.
    pub is_bold: bool,
    /// Whether it runs up the page, a quarter turn to the left.
    pub is_upright: bool,
    /// What it says.
    pub words: String,
}

impl Text {
    /// How wide it is as printed, in mm.
    #[must_use]
    pub fn width(&self) -> f64 {
        Typeface::of(self.is_bold).width(&self.words, self.size)
    }

    /// Where reading begins, on its foot line.
    #[must_use]
    pub fn start(&self) -> Point {
        let back = match self.end {
            TextEnd::Start => 0.0,
            TextEnd::Middle => self.width() / 2.0,
            TextEnd::End => self.width(),
        };
        match self.is_upright {
            true => Point {
                x: self.at.x,
                y: self.at.y - back,
            },
            false => Point {
                x: self.at.x - back,
                y: self.at.y,
            },
        }
    }
}

/// The end of a text that is put somewhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TextEnd {
    /// Where reading begins.
    Start,
    /// Half of it is on either side.
    Middle,
    /// Where reading ends.
    End,
}
