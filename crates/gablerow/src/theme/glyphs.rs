//! The characters things are drawn with, for terminals that show Unicode and for those that do not.

use gablerow_papers::{FrontSigns, Signs};

/// Which characters a terminal shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Charset {
    /// All of Unicode, written as UTF-8.
    Unicode,
    /// ASCII and nothing else.
    Ascii,
}

impl Charset {
    /// The character set for the values of `LC_ALL`, `LC_CTYPE` and `LANG`; a variable that is not
    /// set is an empty string.
    ///
    /// The first of them that is not empty decides, by whether it names UTF-8. With none of them
    /// set the locale is `C`, which is ASCII. Source: POSIX.1-2017, base definitions, 8.2.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow::theme::Charset;
    ///
    /// assert_eq!(Charset::of("", "", "de_AT.UTF-8"), Charset::Unicode);
    /// assert_eq!(Charset::of("C", "", "de_AT.UTF-8"), Charset::Ascii);
    /// ```
    #[must_use]
    pub fn of(lc_all: &str, lc_ctype: &str, lang: &str) -> Self {
        let decides = [lc_all, lc_ctype, lang]
            .into_iter()
            .find(|locale| !locale.is_empty());
        let locale = decides.unwrap_or("C").to_ascii_lowercase();
        if locale.contains("utf-8") || locale.contains("utf8") {
            Self::Unicode
        } else {
            Self::Ascii
        }
    }
}

/// One character for each thing drawn; each is one column wide.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Glyphs {
    /// What a face is drawn with, on screens and on paper alike.
    pub signs: Signs,
    /// What a cabinet is drawn with from the front, on screens and on paper alike.
    pub front: FrontSigns,
    /// Gutter: the hole is on the left panel only.
    pub left_only: char,
    /// Gutter: the hole is on the right panel only.
    pub right_only: char,
    /// Text was cut here.
    pub ellipsis: char,
    /// An arrow up.
    pub arrow_up: char,
    /// An arrow down.
    pub arrow_down: char,
    /// An arrow to the right.
    pub arrow_right: char,
    /// Chosen out of a list.
    pub chosen: char,
    /// A bar: what is done.
    pub bar_done: char,
    /// A bar: what is left.
    pub bar_left: char,
    /// The rail across a panel.
    pub rail: char,
    /// The stop a panel is pushed against.
    pub stop: char,
    /// A packer between stop and panel.
    pub packer: char,
}

const UNICODE: Glyphs = Glyphs {
    signs: Signs::UNICODE,
    front: FrontSigns::UNICODE,
    left_only: '◁',
    right_only: '▷',
    ellipsis: '…',
    arrow_up: '↑',
    arrow_down: '↓',
    arrow_right: '→',
    chosen: '✓',
    bar_done: '▰',
    bar_left: '▱',
    rail: '═',
    stop: '▐',
    packer: '▒',
};

const ASCII: Glyphs = Glyphs {
    signs: Signs::ASCII,
    front: FrontSigns::ASCII,
    left_only: 'L',
    right_only: 'R',
    ellipsis: '~',
    arrow_up: '^',
    arrow_down: 'v',
    arrow_right: '>',
    chosen: '@',
    bar_done: '*',
    bar_left: '_',
    rail: '"',
    stop: '$',
    packer: '&',
};

impl Glyphs {
    /// The characters for a character set.
    #[must_use]
    pub fn of(charset: Charset) -> &'static Self {
        match charset {
            Charset::Unicode => &UNICODE,
            Charset::Ascii => &ASCII,
        }
    }
}

#[cfg(test)]
mod tests {
    use unicode_width::UnicodeWidthChar;

    use super::*;

    /// Every glyph but the corners, and the corners: ASCII has one character for all four of them.
    fn parts(glyphs: &Glyphs) -> (Vec<char>, [char; 4]) {
        // Taken apart by name, so that a new glyph does not compile until it stands here too.
        let Glyphs {
            signs,
            // Proved beside their own table.
            front: _,
            left_only,
            right_only,
            ellipsis,
            arrow_up,
            arrow_down,
            arrow_right,
            chosen,
            bar_done,
            bar_left,
            rail,
            stop,
            packer,
        } = *glyphs;
        let Signs {
            hole_empty,
            hole_barred,
            hole_pin,
            hole_plate,
            hole_runner,
            hole_free,
            hole_shared,
            edge_level,
            edge_back,
            edge_front,
            corners,
            fixed_panel,
            keep_out,
            diameter,
        } = signs;
        let holes = [
            hole_empty,
            hole_barred,
            hole_pin,
            hole_plate,
            hole_runner,
            hole_free,
            hole_shared,
        ];
        let board = [
            edge_level,
            edge_back,
            edge_front,
            fixed_panel,
            keep_out,
            diameter,
        ];
        let marks = [
            left_only,
            right_only,
            ellipsis,
            arrow_up,
            arrow_down,
            arrow_right,
            chosen,
            bar_done,
            bar_left,
            rail,
            stop,
            packer,
        ];
        ([&holes[..], &board, &marks].concat(), corners)
    }

    #[test]
    fn every_glyph_is_one_column_wide() {
        for charset in [Charset::Unicode, Charset::Ascii] {
            let (glyphs, corners) = parts(Glyphs::of(charset));
            for glyph in glyphs.into_iter().chain(corners) {
                assert_eq!(glyph.width(), Some(1), "{glyph}");
                assert!(
                    charset == Charset::Unicode || glyph.is_ascii_graphic(),
                    "{glyph}"
                );
            }
        }
    }

    #[test]
    fn no_two_glyphs_look_alike() {
        for charset in [Charset::Unicode, Charset::Ascii] {
            let (mut glyphs, corners) = parts(Glyphs::of(charset));
            let corners_distinct = if charset == Charset::Unicode { 4 } else { 1 };
            let count = glyphs.len() + corners_distinct;
            glyphs.extend(corners);
            glyphs.sort_unstable();
            glyphs.dedup();
            assert_eq!(glyphs.len(), count, "{glyphs:?}");
        }
    }

    #[test]
    fn charset_follows_the_first_locale_that_is_set() {
        let rows = [
            ("", "", "", Charset::Ascii),
            ("", "", "C", Charset::Ascii),
            ("", "", "POSIX", Charset::Ascii),
            ("", "", "en_US.ISO-8859-1", Charset::Ascii),
            ("", "", "C.UTF-8", Charset::Unicode),
            ("", "", "en_US.utf8", Charset::Unicode),
            ("", "C", "en_US.UTF-8", Charset::Ascii),
            ("", "de_DE.UTF-8", "C", Charset::Unicode),
            ("C", "de_DE.UTF-8", "de_DE.UTF-8", Charset::Ascii),
        ];
        for (lc_all, lc_ctype, lang, charset) in rows {
            assert_eq!(
                Charset::of(lc_all, lc_ctype, lang),
                charset,
                "{lc_all:?} {lc_ctype:?} {lang:?}"
            );
        }
    }
}
