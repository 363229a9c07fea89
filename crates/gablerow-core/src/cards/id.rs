//! The stable name of a card.

use alloc::string::{String, ToString};
use core::fmt;

/// The stable name of a card in its job: `board-18`, `hinge-clip`. Small letters, digits and hyphens.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CardId(String);

/// A text that is no card id.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CardIdError;

impl CardId {
    /// The most characters of an id.
    pub const MAX_CHARS: usize = 40;

    /// An id of the text.
    ///
    /// # Errors
    /// When the text is empty, too long, or holds anything but small letters, digits and hyphens.
    pub fn new(text: &str) -> Result<Self, CardIdError> {
        let fits = (1..=Self::MAX_CHARS).contains(&text.len())
            && text
                .bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-');
        if fits {
            Ok(Self(text.to_string()))
        } else {
            Err(CardIdError)
        }
    }

    /// An id of a text that this crate wrote itself; only the starter cards use it.
    pub(crate) fn known(text: &str) -> Self {
        Self(text.to_string())
    }

    /// An id made of a title: its letters and digits, small, with hyphens for all else; `card` where none is left.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::cards::CardId;
    ///
    /// assert_eq!(CardId::of_title("Cup hinge, 110°").as_str(), "cup-hinge-110");
    /// ```
    #[must_use]
    pub fn of_title(title: &str) -> Self {
        let mut text = String::new();
        for word in title.split(|c: char| !c.is_ascii_alphanumeric()) {
            if !word.is_empty() {
                text.push('-');
                text.push_str(&word.to_ascii_lowercase());
            }
        }
        let text: String = text.chars().skip(1).take(Self::MAX_CHARS).collect();
        Self::new(text.trim_end_matches('-')).unwrap_or_else(|_| Self::known("card"))
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for CardId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

impl fmt::Display for CardIdError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "a card's id has 1 to {} small letters, digits and hyphens, such as hinge-clip",
            CardId::MAX_CHARS
        )
    }
}

impl core::error::Error for CardIdError {}
