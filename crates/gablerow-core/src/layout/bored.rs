//! What is bored into a panel, from which face.

use alloc::vec::Vec;

use super::{Hole, Layout, Upright};
use crate::job::FaceId;

impl Upright {
    /// The holes bored from the face toward the left and from the face toward the right, each place once: a hole bored through
    /// from one face is not bored from the other again.
    #[must_use]
    pub fn bored(&self, layout: &Layout) -> [(FaceId, Vec<Hole>); 2] {
        let [left, right] = &self.faces;
        let (mut left_holes, mut right_holes) = (left.holes(layout), right.holes(layout));
        let absorbs = |one: &Hole, other: &Hole| {
            (one.x, one.z) == (other.x, other.z)
                && one.depth.is_none()
                && one.diameter >= other.diameter
        };
        // Of two alike the one from within the cabinet stays, for that is where they are laid out.
        match left.id.is_outside() {
            true => {
                absorb(&mut right_holes, &mut left_holes, absorbs);
                absorb(&mut left_holes, &mut right_holes, absorbs);
            }
            false => {
                absorb(&mut left_holes, &mut right_holes, absorbs);
                absorb(&mut right_holes, &mut left_holes, absorbs);
            }
        }
        [(left.id, left_holes), (right.id, right_holes)]
    }
}

/// Takes into `holes` what they make needless among the `others`, with its uses.
fn absorb(holes: &mut [Hole], others: &mut Vec<Hole>, absorbs: impl Fn(&Hole, &Hole) -> bool) {
    for hole in holes {
        others.retain(|other| {
            let gone = absorbs(hole, other);
            if gone {
                let new = other.users.iter().filter(|user| !hole.users.contains(user));
                hole.users.extend(new.copied().collect::<Vec<_>>());
            }
            !gone
        });
    }
}
