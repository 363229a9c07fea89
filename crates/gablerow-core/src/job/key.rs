//! Stable names: a key means one thing as long as anything names it.

use core::fmt;

/// The stable name of a cabinet in its job, or of a thing in its cabinet.
///
/// Cabinets are numbered through the job; openings, partitions, fittings, fronts, free rows and copies through their
/// cabinet. A list position is never a name, so that moving or removing one thing leaves all others named as they were.
/// The key of a removed thing is given again only when nothing names it any more, the record of what was bored included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key(pub u32);

impl Key {
    /// The highest key that a file may hold; above it there is room for every key that is still to be given.
    pub const HIGHEST: Self = Self(4_000_000_000);

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
