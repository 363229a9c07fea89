//! What puts marks on a page: lines, areas, texts in few widths and sizes, so that all papers look alike.

use alloc::string::String;
use alloc::vec::Vec;

use unicode_segmentation::UnicodeSegmentation;

use crate::page::{Ink, Line, Mark, Page, Point, Text, TextEnd};
use crate::text::unbroken;
use crate::typeface::Typeface;

/// The thinnest line that a printer holds, for what only guides the eye.
pub(crate) const HAIR: Line = line(0.1, 0.45);
/// What is measured, and signs.
pub(crate) const THIN: Line = line(0.18, 0.0);
/// Edges.
pub(crate) const EDGE: Line = line(0.4, 0.0);
/// The edge that everything starts from.
pub(crate) const HEAVY: Line = line(0.9, 0.0);
/// What is not there to be bored, but needs its space.
pub(crate) const DASHED: Line = Line {
    dash: Some(1.2),
    ..line(0.13, 0.3)
};

/// The size of letters that stand at lines; 7 pt is 2.47 mm.
pub(crate) const SMALL: f64 = 2.6;
/// The size of letters that are read as sentences.
pub(crate) const BODY: f64 = 3.0;
/// The size of what a paper is called.
pub(crate) const TITLE: f64 = 4.5;

/// From the foot of a line of letters to the foot of the next, by their size.
const LEADING: f64 = 1.35;
/// From the foot of letters to half their height, by their size.
const HALF_HEIGHT: f64 = 0.36;

const fn line(width: f64, shade: f64) -> Line {
    Line {
        width,
        shade,
        dash: None,
    }
}

/// From one line of letters of a size to the next.
pub(crate) fn leading(size: f64) -> f64 {
    size * LEADING
}

/// A page in the making.
pub(crate) struct Pen {
    page: Page,
}

impl Pen {
    pub(crate) fn new((width, height): (f64, f64)) -> Self {
        let marks = Vec::new();
        Self {
            page: Page {
                width,
                height,
                marks,
            },
        }
    }

    pub(crate) fn page(self) -> Page {
        self.page
    }

    /// A line from corner to corner.
    pub(crate) fn way(&mut self, corners: &[(f64, f64)], line: Line) {
        self.path(corners, false, Some(line), None);
    }

    /// A closed shape.
    pub(crate) fn shape(&mut self, corners: &[(f64, f64)], line: Option<Line>, fill: Option<f64>) {
        self.path(corners, true, line, fill);
    }

    fn path(
        &mut self,
        corners: &[(f64, f64)],
        is_closed: bool,
        line: Option<Line>,
        fill: Option<f64>,
    ) {
        let corners = corners.iter().map(|&(x, y)| Point { x, y }).collect();
        self.page.marks.push(Mark::Path {
            corners,
            is_closed,
            ink: Ink { line, fill },
        });
    }

    /// A rectangle between two corners.
    pub(crate) fn block(
        &mut self,
        (left, foot): (f64, f64),
        (right, head): (f64, f64),
        line: Option<Line>,
        fill: Option<f64>,
    ) {
        let corners = [(left, foot), (right, foot), (right, head), (left, head)];
        self.shape(&corners, line, fill);
    }

    /// A shaded rectangle between two corners, below all else that is on the page: no line of a neighbour vanishes under it.
    pub(crate) fn ground(&mut self, from: (f64, f64), to: (f64, f64), shade: f64) {
        self.block(from, to, None, Some(shade));
        self.page.marks.rotate_right(1);
    }

    pub(crate) fn ring(&mut self, (x, y): (f64, f64), radius: f64, fill: Option<f64>) {
        self.page.marks.push(Mark::Ring {
            centre: Point { x, y },
            radius,
            ink: Ink {
                line: Some(THIN),
                fill,
            },
        });
    }

    /// A text whose foot line is at a height.
    pub(crate) fn text(&mut self, (x, y): (f64, f64), end: TextEnd, size: f64, words: &str) {
        self.write((x, y), end, size, false, words);
    }

    /// The same, its letters heavy.
    pub(crate) fn bold(&mut self, (x, y): (f64, f64), end: TextEnd, size: f64, words: &str) {
        self.write((x, y), end, size, true, words);
    }

    /// A text with half its height above a line and half below.
    pub(crate) fn beside(&mut self, (x, y): (f64, f64), end: TextEnd, size: f64, words: &str) {
        self.write((x, y - size * HALF_HEIGHT), end, size, false, words);
    }

    /// A text that is heavy or is not.
    pub(crate) fn write(
        &mut self,
        (x, y): (f64, f64),
        end: TextEnd,
        size: f64,
        is_bold: bool,
        words: &str,
    ) {
        self.page.marks.push(Mark::Text(Text {
            at: Point { x, y },
            end,
            size,
            is_bold,
            is_upright: false,
            words: words.into(),
        }));
    }

    /// What shows whether a page was printed true to size: 100 mm, from a corner to the right.
    pub(crate) fn check_rule(&mut self, (x, y): (f64, f64)) {
        self.way(&[(x, y), (x + 100.0, y)], EDGE);
        for step in 0..=10_u8 {
            let at = x + f64::from(step) * 10.0;
            let high = if step % 5 == 0 { 3.0 } else { 1.8 };
            self.way(&[(at, y), (at, y + high)], THIN);
        }
        let words = "100 mm. If a tape reads anything else, print again at 100 %.";
        self.text((x + 103.0, y), TextEnd::Start, SMALL, words);
    }
}

/// Places for labels that want to be at certain heights, in order, none nearer than `gap` to the next and all of them from
/// `from` to `to`: each as near to where it belongs as the others let it.
///
/// They are moved as blocks: labels that push each other share the way. More labels than there is room for stand past `to`.
pub(crate) fn spread(wanted: &[f64], gap: f64, from: f64, to: f64) -> Vec<f64> {
    // With every label taken down by the gaps before it, `gap` apart is in order; pooled means put them in order.
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    let mut before = 0.0;
    for height in wanted {
        let mut block = (height - before, 1);
        before += gap;
        while let Some(&(sum, count)) = blocks.last() {
            if sum * as_f64(block.1) <= block.0 * as_f64(count) {
                break;
            }
            block = (block.0 + sum, block.1 + count);
            blocks.pop();
        }
        blocks.push(block);
    }
    let highest = to - (before - gap);
    let mut places = Vec::with_capacity(wanted.len());
    let mut before = 0.0;
    for (sum, count) in blocks {
        let mean = (sum / as_f64(count)).min(highest).max(from);
        for _ in 0..count {
            places.push(mean + before);
            before += gap;
        }
    }
    places
}

/// A count of labels; no page has more than a `u16` of them.
fn as_f64(count: usize) -> f64 {
    f64::from(u16::try_from(count).unwrap_or(u16::MAX))
}

/// A text: its size, whether it is heavy, what it says.
pub(crate) type Words = (f64, bool, String);

/// Texts in lines, none wider than the room.
pub(crate) fn wrapped<'a>(texts: impl IntoIterator<Item = &'a Words>, room: f64) -> Vec<Words> {
    let in_lines = |(size, is_bold, words): &Words| {
        let (size, is_bold) = (*size, *is_bold);
        let lines = lines(words, size, is_bold, room).into_iter();
        lines.map(move |line| (size, is_bold, line))
    };
    texts.into_iter().flat_map(in_lines).collect()
}

/// How high lines of text are below each other, in mm.
pub(crate) fn height(lines: &[Words]) -> f64 {
    lines.iter().map(|(size, ..)| leading(*size)).sum()
}

/// How wide a text of this size is as printed, in mm.
pub(crate) fn width(words: &str, size: f64, is_bold: bool) -> f64 {
    Typeface::of(is_bold).width(words, size)
}

/// Lines of a text as printed, none wider than the room: broken at blanks, and where a word alone is wider than the room,
/// within it.
pub(crate) fn lines(words: &str, size: f64, is_bold: bool, room: f64) -> Vec<String> {
    let face = Typeface::of(is_bold);
    let words = face.printed(words);
    let width = |text: &str| face.width(text, size);
    let blank = width(" ");
    let mut lines = Vec::new();
    let (mut line, mut filled) = (String::new(), 0.0);
    for word in unbroken(&words, |piece| width(piece) <= room) {
        let wide = width(word);
        if !line.is_empty() && filled + blank + wide <= room {
            line.push(' ');
            line.push_str(word);
            filled += blank + wide;
            continue;
        }
        if !line.is_empty() {
            lines.push(core::mem::take(&mut line));
            filled = 0.0;
        }
        if wide <= room {
            line.push_str(word);
            filled = wide;
            continue;
        }
        for letter in word.graphemes(true) {
            let wide = width(letter);
            if !line.is_empty() && filled + wide > room {
                lines.push(core::mem::take(&mut line));
                filled = 0.0;
            }
            line.push_str(letter);
            filled += wide;
        }
    }
    lines.push(line);
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn labels_with_room_stay_where_they_belong() {
        assert_eq!(spread(&[1.0, 5.0, 9.0], 3.0, 0.0, 10.0), [1.0, 5.0, 9.0]);
        assert_eq!(spread(&[], 3.0, 0.0, 10.0), [0.0; 0]);
    }

    // 4 and 5 share the way: 1.5 either side of 4.5.
    #[test]
    fn labels_that_push_each_other_share_the_way() {
        assert_eq!(spread(&[4.0, 5.0], 3.0, 0.0, 10.0), [3.0, 6.0]);
        assert_eq!(spread(&[0.5, 1.0], 3.0, 0.0, 10.0), [0.0, 3.0]);
        assert_eq!(spread(&[9.0, 9.5], 3.0, 0.0, 10.0), [7.0, 10.0]);
    }

    #[test]
    fn lines_break_at_blanks_and_within_words_that_are_wider_than_the_room() {
        let room = width("1234567", 3.0, false);
        assert_eq!(lines("of letters ", 3.0, false, room), ["of", "letters"]);
        assert_eq!(
            lines("a 12345678901", 3.0, false, room),
            ["a", "1234567", "8901"]
        );
    }

    #[test]
    fn a_fraction_stays_with_its_whole_number_and_what_it_is_rounded_by_where_there_is_room() {
        let broken = |widest: &str| {
            let room = width(widest, 3.0, true);
            lines("3 of ~22 25/32\" (+0.1)", 3.0, true, room)
        };
        assert_eq!(broken("~22 25/32\""), ["3 of", "~22 25/32\"", "(+0.1)"]);
        assert_eq!(broken("~22 25/32\" (+0.1)"), ["3 of", "~22 25/32\" (+0.1)"]);
    }

    proptest! {
        #[test]
        fn spread_labels_keep_their_order_their_gap_and_their_room(
            mut wanted in proptest::collection::vec(0.0..100.0_f64, 0..20)
        ) {
            wanted.sort_by(f64::total_cmp);
            let places = spread(&wanted, 5.0, 0.0, 100.0);
            prop_assert_eq!(places.len(), wanted.len());
            prop_assert!(places.windows(2).all(|pair| pair[1] - pair[0] > 4.999_999));
            prop_assert!(places.iter().all(|place| (-1e-9..100.000_001).contains(place)));
        }
    }
}
