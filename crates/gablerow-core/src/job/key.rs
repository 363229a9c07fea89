//! Stable names: a key is given once and never means another thing.

use core::fmt;

/// The stable name of a cabinet in its job, or of a thing in its cabinet.
///
/// Cabinets are numbered through the job; openings, partitions, fittings, fronts, free rows and copies through their
/// cabinet. A list position is never a name, so that moving or removing one thing leaves all others named as they were.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key(pub u32);

impl Key {
    /// The key after this one.
    #[must_use]
    pub fn next(self) -> Self {
        Self(self.0.saturating_add(1))
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}
