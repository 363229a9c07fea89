//! The last line of defence before the terminal: no text may command it or mislead the eye.
//!
//! Texts of a job are cleaned where they enter. What slips through, or comes from elsewhere, is
//! caught here, cell by cell.

use std::ops::RangeInclusive;

use ratatui::buffer::Buffer;
use unicode_segmentation::UnicodeSegmentation;
use unicode_width::UnicodeWidthStr;

use crate::theme::Charset;

/// A base with its marks has at most this many characters; more is a tower over the lines above.
/// Living scripts need up to six: common practice.
const CELL_CHARACTERS_MAX: usize = 8;

/// Characters without a picture of their own, other than controls: format characters, marks that
/// turn the direction of text, fillers, variation selectors, tags, line and paragraph separators.
///
/// In ascending order. Source: Unicode 16, `Default_Ignorable_Code_Point`, general category `Cf`,
/// and U+2028 to U+2029.
const HIDDEN: [RangeInclusive<char>; 30] = [
    '\u{ad}'..='\u{ad}',
    '\u{34f}'..='\u{34f}',
    '\u{600}'..='\u{605}',
    '\u{61c}'..='\u{61c}',
    '\u{6dd}'..='\u{6dd}',
    '\u{70f}'..='\u{70f}',
    '\u{890}'..='\u{891}',
    '\u{8e2}'..='\u{8e2}',
    '\u{115f}'..='\u{1160}',
    '\u{17b4}'..='\u{17b5}',
    '\u{180b}'..='\u{180f}',
    '\u{200b}'..='\u{200f}',
    '\u{2028}'..='\u{202e}',
    '\u{2060}'..='\u{206f}',
    '\u{3164}'..='\u{3164}',
    '\u{fe00}'..='\u{fe0f}',
    '\u{feff}'..='\u{feff}',
    '\u{ffa0}'..='\u{ffa0}',
    '\u{fff0}'..='\u{fffb}',
    '\u{110bd}'..='\u{110bd}',
    '\u{110cd}'..='\u{110cd}',
    '\u{13430}'..='\u{1343f}',
    '\u{1bca0}'..='\u{1bca3}',
    '\u{1d173}'..='\u{1d17a}',
    '\u{e0000}'..='\u{e0fff}',
    // Not characters at all.
    '\u{fdd0}'..='\u{fdef}',
    '\u{fffe}'..='\u{ffff}',
    '\u{1fffe}'..='\u{1ffff}',
    '\u{2fffe}'..='\u{2ffff}',
    '\u{3fffe}'..='\u{10ffff}',
];

/// Whether a character has a picture: not a control, none that terminals hide.
#[must_use]
pub fn is_shown(c: char) -> bool {
    c.is_ascii_graphic()
        || c == ' '
        || !(c.is_control() || HIDDEN.iter().any(|range| range.contains(&c)))
}

/// Puts a visible stand-in into every cell whose symbol is not one picture of one or two columns:
/// `▯`, or `?` on an ASCII terminal, which shows nothing beyond ASCII.
pub(super) fn make_safe(buffer: &mut Buffer, charset: Charset) {
    let stand_in = match charset {
        Charset::Unicode => '▯',
        Charset::Ascii => '?',
    };
    for cell in &mut buffer.content {
        if !is_safe(cell.symbol(), charset) {
            cell.set_char(stand_in);
        }
    }
}

/// Whether a cell may be written as it is.
fn is_safe(symbol: &str, charset: Charset) -> bool {
    if let [byte] = symbol.as_bytes() {
        return matches!(byte, b' '..=b'~');
    }
    charset == Charset::Unicode
        && symbol.chars().count() <= CELL_CHARACTERS_MAX
        && symbol.graphemes(true).count() == 1
        && symbol.chars().all(is_shown)
        && matches!(symbol.width(), 1 | 2)
}

#[cfg(test)]
mod tests {
    use ratatui::layout::Rect;

    use super::*;

    /// What a cell with this symbol shows.
    fn shown(symbol: &str, charset: Charset) -> String {
        let mut buffer = Buffer::empty(Rect::new(0, 0, 1, 1));
        buffer[(0, 0)].set_symbol(symbol);
        make_safe(&mut buffer, charset);
        buffer[(0, 0)].symbol().to_owned()
    }

    #[test]
    fn pictures_pass_as_they_are() {
        for symbol in [" ", "a", "~", "ä", "a\u{301}", "⌀", "●", "漢", "½", "⣿"] {
            assert_eq!(shown(symbol, Charset::Unicode), symbol);
        }
    }

    #[test]
    fn what_commands_or_misleads_is_replaced() {
        let tower = format!("a{}", "\u{301}".repeat(100));
        let hostile = [
            "\u{1b}",
            "\u{7}",
            "\n",
            "\t",
            "\0",
            "\u{7f}",
            "\u{9b}",
            "\u{1b}[2J",
            "\u{202e}",
            "\u{2067}",
            "\u{2028}",
            "\u{200d}",
            "\u{feff}",
            "\u{e0041}",
            "a\u{200b}",
            "⚠\u{fe0f}",
            "\u{ad}",
            "\u{3164}",
            "",
            "ab",
            "\u{301}",
            &tower,
        ];
        for symbol in hostile {
            assert_eq!(shown(symbol, Charset::Unicode), "▯", "{symbol:?}");
            assert_eq!(shown(symbol, Charset::Ascii), "?", "{symbol:?}");
        }
    }

    #[test]
    fn an_ascii_terminal_gets_ascii_only() {
        assert_eq!(shown("a", Charset::Ascii), "a");
        assert_eq!(shown("ä", Charset::Ascii), "?");
        assert_eq!(shown("漢", Charset::Ascii), "?");
    }

    #[test]
    fn every_single_character_is_safe_afterwards() {
        for c in '\0'..=char::MAX {
            for charset in [Charset::Unicode, Charset::Ascii] {
                let symbol = shown(c.encode_utf8(&mut [0; 4]), charset);
                assert!(!symbol.chars().any(char::is_control), "{c:?}");
                assert!(symbol.chars().all(is_shown), "{c:?}");
                assert!(matches!(symbol.width(), 1 | 2), "{c:?}");
            }
        }
    }

    #[test]
    fn hidden_characters_are_in_order_and_apart() {
        for pair in HIDDEN[..25].windows(2) {
            assert!(pair[0].end() < pair[1].start(), "{pair:?}");
        }
    }
}
