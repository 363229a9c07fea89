//! Where the cups go in the door, and whether the door is handed.

use alloc::vec::Vec;

use super::Door;
use crate::measure::Length;
use crate::sum::Sum;

/// Cups that differ by more than this from both ends make a door handed: 0.5 mm, a house default.
pub const HANDED_OVER: Length = Length::from_um(500);

/// One cup of a door.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cup {
    /// From the door's foot up to the cup's middle.
    pub from_foot: Sum,
    /// From the door's head down to it.
    pub from_head: Sum,
}

/// All cups of a door.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DoorCups {
    /// The cups, upward.
    pub cups: Vec<Cup>,
    /// Of the cups counted from either end, the largest difference: from the foot less from the head.
    pub asymmetry: Length,
    /// Whether the door is handed: turned end for end, it does not fit.
    pub handed: bool,
}

/// The cups of a door, from the middles of its plates, upward.
#[must_use]
pub fn cups(door: Door, plates: &[Length]) -> DoorCups {
    let cup = |&z: &Length| Cup {
        from_foot: Sum::of("middle of the plate", z).less("foot of the door", door.foot),
        from_head: Sum::of("head of the door", door.head()).less("middle of the plate", z),
    };
    let cups: Vec<Cup> = plates.iter().map(cup).collect();
    let pairs = cups.iter().zip(cups.iter().rev());
    let asymmetry = pairs
        .map(|(low, high)| low.from_foot.total() - high.from_head.total())
        .max_by_key(|off| off.abs())
        .unwrap_or_default();
    DoorCups {
        cups,
        asymmetry,
        handed: asymmetry.abs() > HANDED_OVER,
    }
}
