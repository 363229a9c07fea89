//! Findings a person has accepted.

use alloc::string::String;

use super::Label;

/// One accepted finding: it stays quiet until what it says changes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Acceptance {
    /// The rule, by its name.
    pub rule: String,
    /// Exactly what the finding said. A changed figure makes another sentence, and the finding comes back.
    pub message: String,
    /// Why it is accepted.
    pub reason: Label,
}
