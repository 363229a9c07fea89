//! A drawer runner card.

use alloc::vec::Vec;

use super::{CardId, Sourced};
use crate::label::Label;
use crate::measure::Length;

/// How the box sits on its runners.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RunnerKind {
    /// On top of them; they are hidden.
    Undermount,
    /// Between them.
    SideMount,
}

/// What is known of a runner.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Runner {
    /// Its stable name.
    pub id: CardId,
    /// What people call it.
    pub title: Label,
    /// How the box sits on it.
    pub kind: RunnerKind,
    /// From the runner's own front end to its first hole.
    pub first_hole: Sourced<Length>,
    /// How far its front end stands behind the panel's front edge.
    pub stand_back: Sourced<Length>,
    /// From the box's underside up to the screw line.
    pub line: Sourced<Length>,
    /// The space it needs below the screw line.
    pub below: Sourced<Length>,
    /// The space it needs above the screw line.
    pub above: Sourced<Length>,
    /// How far it stands out from the face.
    pub width: Sourced<Length>,
    /// How deep its screws go in.
    pub pen: Sourced<Length>,
    /// What comes off the clear width: to the inside of the box where it rides on top, to its outside between the runners.
    pub deduct: Sourced<Length>,
    /// What comes off the runner's length by name to the length of the box.
    pub shorter: Sourced<Length>,
    /// How far the box's bottom stands above the underside of its sides.
    pub recess: Sourced<Length>,
    /// What a pair carries, in kg.
    pub load: Sourced<u32>,
    /// The thickest side of a box that it takes; `None` until somebody has looked it up.
    pub side_most: Option<Sourced<Length>>,
    /// The lengths it comes in, shortest first; never empty.
    pub lengths: Vec<RunnerLength>,
}

/// One of the lengths a runner comes in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RunnerLength {
    /// The length by name.
    pub name: Length,
    /// The inner depth it needs.
    pub need: Sourced<Length>,
    /// Whole pitches from the first screw to each screw, the first being 0; ascending.
    pub steps: Vec<u8>,
}

impl Runner {
    /// The length by that name.
    #[must_use]
    pub fn length(&self, name: Length) -> Option<&RunnerLength> {
        self.lengths.iter().find(|length| length.name == name)
    }

    /// The longest that an inner depth takes, or the shortest there is.
    #[must_use]
    pub fn longest_within(&self, inner_depth: Length) -> Option<&RunnerLength> {
        let fits = |length: &&RunnerLength| length.need.value <= inner_depth;
        let name = |length: &&RunnerLength| length.name;
        let longest = self.lengths.iter().filter(fits).max_by_key(name);
        longest.or_else(|| self.lengths.iter().min_by_key(name))
    }
}
