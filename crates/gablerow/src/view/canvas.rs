//! A pen on a buffer: text and characters in a role, cut at the edge of an area.

use std::borrow::Cow;

use gablerow_papers::wrap;
use ratatui::buffer::Buffer;
use ratatui::layout::Rect;
use ratatui::style::Modifier;
use unicode_segmentation::UnicodeSegmentation;
use unicode_width::UnicodeWidthStr;

use crate::theme::{Charset, Glyphs, Role, Theme};

/// A part of the screen to draw on; nothing is drawn outside it.
pub(super) struct Canvas<'a> {
    buffer: &'a mut Buffer,
    area: Rect,
    theme: &'a Theme,
}

/// A role, and what draws dots in it.
pub(super) type Layer<'a> = (Role, &'a dyn Fn(Rect, &mut Buffer));

impl<'a> Canvas<'a> {
    pub(super) fn new(buffer: &'a mut Buffer, area: Rect, theme: &'a Theme) -> Self {
        let area = area.intersection(buffer.area);
        Self {
            buffer,
            area,
            theme,
        }
    }

    /// A part of this part, counted from its upper left corner.
    pub(super) fn part(&mut self, x: u16, y: u16, width: u16, height: u16) -> Canvas<'_> {
        let at = Rect::new(
            self.area.x.saturating_add(x),
            self.area.y.saturating_add(y),
            width,
            height,
        );
        let area = at.intersection(self.area);
        Canvas {
            buffer: self.buffer,
            area,
            theme: self.theme,
        }
    }

    pub(super) fn width(&self) -> u16 {
        self.area.width
    }

    pub(super) fn height(&self) -> u16 {
        self.area.height
    }

    pub(super) fn glyphs(&self) -> &'static Glyphs {
        self.theme.glyphs()
    }

    pub(super) fn charset(&self) -> Charset {
        self.theme.charset()
    }

    /// Fills the whole part with blanks of a role.
    pub(super) fn clear(&mut self, role: Role) {
        let style = self.theme.style(role);
        for y in self.area.top()..self.area.bottom() {
            for x in self.area.left()..self.area.right() {
                self.buffer[(x, y)].reset();
                self.buffer[(x, y)].set_style(style);
            }
        }
    }

    /// One character.
    pub(super) fn set(&mut self, x: u16, y: u16, glyph: char, role: Role) {
        if x < self.area.width && y < self.area.height {
            let style = self.theme.style(role);
            self.buffer[(self.area.x + x, self.area.y + y)]
                .set_char(glyph)
                .set_style(style);
        }
    }

    /// Lays a role over what stands there.
    pub(super) fn over(&mut self, x: u16, y: u16, role: Role) {
        if x < self.area.width && y < self.area.height {
            let style = self.theme.style(role);
            self.buffer[(self.area.x + x, self.area.y + y)].set_style(style);
        }
    }

    /// What draws itself in dots, eight to a cell, layer on layer: a cell has the role of the last one with a dot in it. Where a
    /// terminal has no dots it shows signs as dark as the dots are many.
    pub(super) fn plot(&mut self, layers: &[Layer]) {
        let mut patterns = vec![0; usize::from(self.area.width) * usize::from(self.area.height)];
        for (role, draw) in layers {
            let mut dots = Buffer::empty(self.area);
            draw(self.area, &mut dots);
            for (cell, pattern) in self.area.positions().zip(&mut patterns) {
                let added = pattern_of(dots[cell].symbol());
                if added > 0 {
                    *pattern |= added;
                    self.buffer[cell].set_style(self.theme.style(*role));
                }
            }
        }
        for (cell, pattern) in self.area.positions().zip(patterns) {
            let glyph = match self.theme.charset() {
                Charset::Ascii => darkness(pattern),
                Charset::Unicode if pattern == 0 => ' ',
                Charset::Unicode => char::from_u32(FIRST_PATTERN + pattern).unwrap_or(' '),
            };
            self.buffer[cell].set_char(glyph);
        }
    }

    /// Text from a column on; what does not fit is cut, with a mark. Gives the column after it.
    pub(super) fn text(&mut self, x: u16, y: u16, text: &str, role: Role) -> u16 {
        let room = usize::from(self.area.width.saturating_sub(x));
        if y >= self.area.height || room == 0 {
            return x;
        }
        let fitted = fit(&seen(text), room, self.glyphs().ellipsis);
        let style = self.theme.style(role);
        let mut at = x;
        for grapheme in fitted.graphemes(true) {
            let wide = u16::try_from(grapheme.width()).unwrap_or(1);
            let cell = &mut self.buffer[(self.area.x + at, self.area.y + y)];
            cell.set_symbol(grapheme).set_style(style);
            at = at.saturating_add(wide);
        }
        at
    }

    /// Text that ends at the right edge.
    pub(super) fn text_right(&mut self, y: u16, text: &str, role: Role) {
        let wide = u16::try_from(text.width()).unwrap_or(u16::MAX);
        self.text(self.area.width.saturating_sub(wide), y, text, role);
    }

    /// Text broken into lines at blanks; gives the line after the last one drawn.
    pub(super) fn paragraph(&mut self, y: u16, indent: u16, text: &str, role: Role) -> u16 {
        let room = usize::from(self.area.width.saturating_sub(indent));
        let mut y = y;
        for line in wrap(text, room) {
            if y >= self.area.height {
                return y;
            }
            self.text(indent, y, &line, role);
            y += 1;
        }
        y
    }

    /// Emphasis on a whole line, whatever is written there.
    pub(super) fn mark_line(&mut self, y: u16) {
        for x in 0..self.area.width {
            if y < self.area.height {
                let cell = &mut self.buffer[(self.area.x + x, self.area.y + y)];
                cell.modifier.insert(Modifier::REVERSED);
            }
        }
    }
}

/// The first of 256 characters for the dots of a cell: the bits of the number added say which there are. Source: Unicode 16.0, Braille Patterns.
const FIRST_PATTERN: u32 = 0x2800;

/// Which dots a character has.
fn pattern_of(symbol: &str) -> u32 {
    let number = symbol.chars().next().map_or(0, u32::from);
    let pattern = number.checked_sub(FIRST_PATTERN);
    pattern.filter(|it| *it < 256).unwrap_or(0)
}

/// A sign as dark as dots are many.
fn darkness(pattern: u32) -> char {
    match pattern.count_ones() {
        0 => ' ',
        1..=2 => '.',
        3..=4 => ':',
        5..=6 => '+',
        _ => '#',
    }
}

/// The text with a replacement character for all that has no width of its own: what is there must not vanish.
fn seen(text: &str) -> Cow<'_, str> {
    if text.graphemes(true).all(|grapheme| grapheme.width() > 0) {
        return Cow::Borrowed(text);
    }
    let shown = text.graphemes(true).map(|grapheme| match grapheme.width() {
        0 => "\u{fffd}",
        _ => grapheme,
    });
    Cow::Owned(shown.collect())
}

/// The text, or as much of it as fits and a mark that it was cut.
fn fit(text: &str, room: usize, ellipsis: char) -> String {
    if text.width() <= room {
        return text.to_owned();
    }
    let mut fitted = String::new();
    for grapheme in text.graphemes(true) {
        if fitted.width() + grapheme.width() + 1 > room {
            break;
        }
        fitted.push_str(grapheme);
    }
    fitted.push(ellipsis);
    fitted
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_has_no_width_is_shown_by_a_stand_in() {
        assert_eq!(seen("glaze store"), "glaze store");
        assert_eq!(seen("e\u{301}"), "e\u{301}");
        assert_eq!(seen("kiln\u{202e}room"), "kiln\u{fffd}room");
    }

    #[test]
    fn text_that_does_not_fit_says_so() {
        assert_eq!(fit("hinge plate", 11, '…'), "hinge plate");
        assert_eq!(fit("hinge plate", 8, '…'), "hinge p…");
    }
}
