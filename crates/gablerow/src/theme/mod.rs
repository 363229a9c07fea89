//! How things look: the colours and characters of a terminal, chosen once from its environment.
//!
//! ```text
//! NO_COLOR, TERM, COLORTERM  -> Depth   -+
//!                                        +-> Theme -> style(Role), glyphs()
//! LC_ALL, LC_CTYPE, LANG     -> Charset -+
//! ```
//!
//! Views name a [`Role`], never a colour. Meaning never rests on colour alone: what differs in
//! colour differs in its glyph or its word too.

mod colour;
mod glyphs;
mod roles;

pub use colour::{Depth, rgb_of_index};
pub use glyphs::{Charset, Glyphs};
pub use roles::Role;

use ratatui::style::Style;

/// The looks of one terminal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Theme {
    charset: Charset,
    /// Brought down to the terminal's depth once, because a frame asks for thousands of them.
    styles: [Style; Role::COUNT],
}

impl Theme {
    /// The looks at a depth of colour, in a character set.
    #[must_use]
    pub fn new(depth: Depth, charset: Charset) -> Self {
        Self {
            charset,
            styles: roles::styles(depth),
        }
    }

    /// The looks for an environment, given as a look-up of its variables by name.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow::theme::{Charset, Depth, Theme};
    ///
    /// let theme = Theme::of(|name| (name == "TERM").then(|| "xterm-256color".to_owned()));
    /// assert_eq!(theme, Theme::new(Depth::Indexed, Charset::Ascii));
    /// ```
    #[must_use]
    pub fn of(variable: impl Fn(&str) -> Option<String>) -> Self {
        let variable = |name: &str| variable(name).unwrap_or_default();
        Self::new(
            Depth::of(
                &variable("NO_COLOR"),
                &variable("COLORTERM"),
                &variable("TERM"),
            ),
            Charset::of(
                &variable("LC_ALL"),
                &variable("LC_CTYPE"),
                &variable("LANG"),
            ),
        )
    }

    /// Which characters the terminal shows.
    #[must_use]
    pub fn charset(&self) -> Charset {
        self.charset
    }

    /// The style of a role.
    #[must_use]
    pub fn style(&self, role: Role) -> Style {
        self.styles[role as usize]
    }

    /// The characters to draw with.
    #[must_use]
    pub fn glyphs(&self) -> &'static Glyphs {
        Glyphs::of(self.charset)
    }
}
