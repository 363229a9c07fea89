//! Fronts: wishes for doors and drawers over an opening.

use super::{Hand, Key, Label};
use crate::measure::Length;

/// A wish for what closes an opening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Front {
    /// Its name in the cabinet.
    pub key: Key,
    /// What it is called at the bench: `D1`.
    pub name: Label,
    /// What it is.
    pub kind: FrontKind,
    /// Its thickness.
    pub thickness: Length,
}

/// What a front is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FrontKind {
    /// One door, hung on this hand.
    Door(Hand),
    /// Two doors, hung on either hand.
    Pair,
    /// A drawer front; listed from the foot up.
    Drawer(FrontHeight),
    /// A front that neither opens nor pulls.
    False(FrontHeight),
}

/// How the height of one of several fronts is found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FrontHeight {
    /// Whole pitches, less one gap.
    Modules(u16),
    /// So high.
    Fixed(Length),
    /// A share of what is left, in this proportion to the other shares.
    Ratio(u16),
}
