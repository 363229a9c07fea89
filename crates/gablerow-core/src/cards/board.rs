//! A board card.

use super::{CardId, Sourced};
use crate::label::Label;
use crate::measure::Length;

/// What is known of a board.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Board {
    /// Its stable name.
    pub id: CardId,
    /// What people call it.
    pub title: Label,
    /// Thickness by name.
    pub nominal: Length,
    /// Thickness measured, by batch; every formula uses it.
    pub thickness: Sourced<Length>,
    /// Mass in kg/m3.
    pub density: Sourced<u32>,
}
