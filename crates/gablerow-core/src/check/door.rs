//! A door that hangs, as the checks look at it: the plates it hangs on and the wall they are on.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Place};
use crate::cards::Hinge;
use crate::job::{Cabinet, FrontKind, Job, Key};
use crate::layout::Layout;
use crate::measure::Length;
use crate::parts::{DoorPlate, Leaf};

/// A door, or one leaf of a pair, that hangs on a plate at least.
#[derive(Debug)]
pub(super) struct Door<'a> {
    pub(super) leaf: Leaf<'a>,
    /// Its plates whose cards are there, upward; never empty.
    pub(super) plates: Vec<DoorPlate<'a>>,
    /// The hinge of the lowest: what holds for the whole door goes by it.
    pub(super) card: &'a Hinge,
}

impl<'a> Door<'a> {
    /// Every door of a cabinet that hangs.
    pub(super) fn all(job: &'a Job, cabinet: &'a Cabinet, layout: &'a Layout) -> Vec<Self> {
        let hung = layout.fronts.iter().filter(|front| front.kind.is_hung());
        let doors = hung.filter_map(|front| {
            let leaf = Leaf::of(job, cabinet, layout, front);
            let plates = leaf.plates();
            let card = plates.first()?.card;
            Some(Self { leaf, plates, card })
        });
        doors.collect()
    }

    /// Its key; both leaves of a pair have one.
    pub(super) fn key(&self) -> Key {
        self.leaf.front.key
    }

    /// What it is called: `door 1`, `the left leaf of doors`.
    pub(super) fn name(&self, cx: &Context) -> String {
        let front = self.leaf.front;
        let name = cx.front(front.key);
        match front.hung.filter(|_| front.kind == FrontKind::Pair) {
            Some(hand) => format!("the {} leaf of {name}", hand.word()),
            None => name.into(),
        }
    }

    /// The wall its plates are on.
    pub(super) fn place(&self, cx: &Context) -> Place {
        let wall = self.leaf.front.wall_hung();
        wall.map_or(cx.here(), |wall| cx.here().on(wall))
    }

    /// The middles of its plates, upward.
    pub(super) fn middles(&self) -> Vec<Length> {
        self.plates.iter().map(|plate| plate.middle).collect()
    }

    /// From the middle of its first plate to that of its last; `None` when it hangs on one alone.
    pub(super) fn spread(&self) -> Option<Length> {
        let [first, .., last] = self.plates.as_slice() else {
            return None;
        };
        Some(last.middle - first.middle)
    }
}
