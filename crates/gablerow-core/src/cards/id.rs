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
