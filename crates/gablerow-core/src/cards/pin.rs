//! A shelf pin card.

use super::{CardId, Sourced};
use crate::label::Label;
use crate::measure::Length;

/// What is known of a shelf pin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pin {
    /// Its stable name.
    pub id: CardId,
    /// What people call it.
    pub title: Label,
    /// How deep it goes in.
    pub pen: Sourced<Length>,
    /// From the hole's centre up to the underside of the shelf on it.
    pub rise: Sourced<Length>,
    /// How far it stands out of the face under the shelf; `None` until somebody has looked it up.
    pub projection: Option<Sourced<Length>>,
}
