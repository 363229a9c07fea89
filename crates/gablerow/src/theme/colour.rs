//! How many colours a terminal shows, and colours brought down to what it shows.

use ratatui::style::{Color, Style};

/// How many colours a terminal shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Depth {
    /// None: bold, underlined, dim and reversed only.
    Plain,
    /// The sixteen named colours, as the terminal's owner has set them.
    Sixteen,
    /// 256 colours by number.
    Indexed,
    /// Red, green and blue of eight bits each.
    True,
}

impl Depth {
    /// The depth for the values of `NO_COLOR`, `COLORTERM` and `TERM`; a variable that is not set
    /// is an empty string.
    ///
    /// - `NO_COLOR` that is not empty, `TERM` empty or `dumb`: no colours;
    /// - `COLORTERM` `truecolor` or `24bit`: true colour;
    /// - `TERM` with `256color` in it: 256 colours;
    /// - everything else: sixteen.
    ///
    /// Source: no-color.org for `NO_COLOR`; the others are common practice.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow::theme::Depth;
    ///
    /// assert_eq!(Depth::of("", "truecolor", "xterm"), Depth::True);
    /// assert_eq!(Depth::of("1", "truecolor", "xterm"), Depth::Plain);
    /// ```
    #[must_use]
    pub fn of(no_color: &str, colorterm: &str, term: &str) -> Self {
        if !no_color.is_empty() || term.is_empty() || term == "dumb" {
            Self::Plain
        } else if ["truecolor", "24bit"].contains(&colorterm) {
            Self::True
        } else if term.contains("256color") {
            Self::Indexed
        } else {
            Self::Sixteen
        }
    }
}

/// The steps of the colour cube behind the indices 16 to 231.
const CUBE: [u8; 6] = [0, 95, 135, 175, 215, 255];

/// Red, green and blue behind an index from 16 to 255: a 6 x 6 x 6 cube, then 24 greys.
///
/// `None` below 16: those are the named colours, which look as the terminal's owner has set them.
/// Source: the palette of xterm, which all terminals with 256 colours share.
///
/// # Example
///
/// ```
/// use gablerow::theme::rgb_of_index;
///
/// // 110 - 16 = 94 = 2 x 36 + 3 x 6 + 4: steps 2, 3 and 4 of the cube.
/// assert_eq!(rgb_of_index(110), Some((135, 175, 215)));
/// // The greys start at 8 and go up by 10.
/// assert_eq!(rgb_of_index(233), Some((18, 18, 18)));
/// ```
#[must_use]
pub fn rgb_of_index(index: u8) -> Option<(u8, u8, u8)> {
    if index >= 232 {
        let grey = 8 + (index - 232) * 10;
        return Some((grey, grey, grey));
    }
    let place = usize::from(index.checked_sub(16)?);
    Some((CUBE[place / 36], CUBE[place / 6 % 6], CUBE[place % 6]))
}

/// The same style for a terminal with 256 colours: each colour by the index that comes nearest.
pub(super) fn indexed(style: Style) -> Style {
    Style {
        fg: style.fg.map(nearest),
        bg: style.bg.map(nearest),
        ..style
    }
}

/// The index that comes nearest to a colour of red, green and blue; every other colour as it is.
fn nearest(colour: Color) -> Color {
    let Color::Rgb(red, green, blue) = colour else {
        return colour;
    };
    let distance = |index: &u8| {
        rgb_of_index(*index).map_or(u32::MAX, |(r, g, b)| {
            [(red, r), (green, g), (blue, b)]
                .iter()
                .map(|(wanted, found)| u32::from(wanted.abs_diff(*found)).pow(2))
                .sum()
        })
    };
    (16..=255)
        .min_by_key(distance)
        .map_or(colour, Color::Indexed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn depth_follows_the_environment() {
        let rows = [
            ("", "", "", Depth::Plain),
            ("", "", "dumb", Depth::Plain),
            ("", "truecolor", "dumb", Depth::Plain),
            ("1", "truecolor", "xterm-256color", Depth::Plain),
            ("", "truecolor", "xterm", Depth::True),
            ("", "24bit", "xterm", Depth::True),
            ("", "yes", "xterm-256color", Depth::Indexed),
            ("", "", "xterm-256color", Depth::Indexed),
            ("", "", "xterm", Depth::Sixteen),
            ("", "", "linux", Depth::Sixteen),
        ];
        for (no_color, colorterm, term, depth) in rows {
            assert_eq!(
                Depth::of(no_color, colorterm, term),
                depth,
                "{no_color:?} {colorterm:?} {term:?}"
            );
        }
    }

    #[test]
    fn an_index_is_nearest_to_its_own_colour() {
        for index in 16..=255 {
            let (red, green, blue) = rgb_of_index(index).unwrap();
            let Color::Indexed(found) = nearest(Color::Rgb(red, green, blue)) else {
                panic!("{index} came back as no index");
            };
            // Black, white and a few greys stand in both the cube and the greys.
            assert_eq!(rgb_of_index(found), rgb_of_index(index));
        }
    }

    #[test]
    fn named_colours_stay_as_the_owner_set_them() {
        assert_eq!(rgb_of_index(15), None);
        assert_eq!(nearest(Color::Red), Color::Red);
        assert_eq!(nearest(Color::Reset), Color::Reset);
    }
}
