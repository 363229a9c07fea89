//! Names a user types: short, one line, and safe to show.

use alloc::string::{String, ToString};
use core::fmt;

/// A name of one line: 1 to 60 characters, none of which commands a terminal or turns the reading order.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Label(String);

/// Why a text is no [`Label`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LabelError {
    /// Nothing but spaces.
    Empty,
    /// More than [`Label::MAX_CHARS`] characters.
    Long {
        /// How many there are.
        chars: usize,
    },
    /// A character that no name needs: control, reading direction, line separator, tag.
    Unsafe(char),
}

impl Label {
    /// The most characters a name may have.
    pub const MAX_CHARS: usize = 60;

    /// A name of the text, spaces at either end left off.
    ///
    /// # Errors
    /// - the text is empty or longer than [`Self::MAX_CHARS`];
    /// - it holds a character that could command a terminal or mislead the eye.
    pub fn new(text: &str) -> Result<Self, LabelError> {
        let text = text.trim();
        let chars = text.chars().count();
        if let Some(bad) = text.chars().find(|&c| is_unsafe(c)) {
            return Err(LabelError::Unsafe(bad));
        }
        match chars {
            0 => Err(LabelError::Empty),
            _ if chars > Self::MAX_CHARS => Err(LabelError::Long { chars }),
            _ => Ok(Self(text.to_string())),
        }
    }

    /// A name this crate wrote itself and knows to be right.
    pub(crate) fn known(text: &str) -> Self {
        Self(text.to_string())
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// Control characters, marks that turn the reading order, line separators, unseen joiners and tags.
#[must_use]
pub fn is_unsafe(c: char) -> bool {
    c.is_control()
        || matches!(c,
            '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}'
            | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

impl fmt::Display for Label {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

impl fmt::Display for LabelError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "a name needs at least one character"),
            Self::Long { chars } => {
                write!(
                    f,
                    "{chars} characters, but a name has at most {}",
                    Label::MAX_CHARS
                )
            }
            Self::Unsafe(bad) => {
                write!(
                    f,
                    "the character U+{:04X} is not shown in names; leave it out",
                    u32::from(*bad)
                )
            }
        }
    }
}

impl core::error::Error for LabelError {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spaces_at_the_ends_are_left_off() {
        assert_eq!(Label::new("  G2 ").map(|l| l.to_string()), Ok("G2".into()));
    }

    #[test]
    fn a_name_cannot_command_the_terminal() {
        for bad in ["a\u{1b}[2J", "a\u{202e}b", "a\nb", "a\u{e0041}", "\u{9b}2J"] {
            assert!(
                matches!(Label::new(bad), Err(LabelError::Unsafe(_))),
                "{bad:?}"
            );
        }
    }

    #[test]
    fn length_is_counted_in_characters() {
        assert!(Label::new(&"ß".repeat(60)).is_ok());
        assert_eq!(
            Label::new(&"ß".repeat(61)),
            Err(LabelError::Long { chars: 61 })
        );
        assert_eq!(Label::new("   "), Err(LabelError::Empty));
    }
}
