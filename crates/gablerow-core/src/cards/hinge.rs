//! A hinge card.

use super::{CardId, Sourced};
use crate::label::Label;
use crate::measure::Length;

/// How the plate of a hinge takes its two holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PlateShape {
    /// Two neighbouring holes of one row; its centre is midway between them.
    AlongRow,
    /// Two holes of one number, in the front row and a second row one pitch behind; its centre is on them.
    InLine,
}

/// What is known of a hinge and its plate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hinge {
    /// Its stable name.
    pub id: CardId,
    /// What people call it.
    pub title: Label,
    /// How the plate takes its holes.
    pub plate: PlateShape,
    /// Half the height of the space that plate and arm need, up and down from the plate's centre.
    pub half_zone: Sourced<Length>,
    /// How far that space reaches back from the bay's front.
    pub reach: Sourced<Length>,
    /// How far it stands out from the face.
    pub proud: Sourced<Length>,
    /// How deep the plate's screws go in.
    pub pen: Sourced<Length>,
}
