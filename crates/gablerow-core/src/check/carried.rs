//! Fronts and what carries them: after a front has moved, its plates and runners may no longer suit it.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Place, Rule};
use crate::layout::Carrier;
use crate::measure::Length;

/// Hinge cups that would not lie on their door, whole.
pub(super) fn cup_off_door(cx: &Context, found: &mut Vec<Finding>) {
    for hung in cx.doors {
        let door = hung.leaf.front;
        for plate in &hung.plates {
            let (foot, head) = (plate.middle - door.foot, door.head() - plate.middle);
            let (from, end) = if foot < head {
                (foot, "foot")
            } else {
                (head, "head")
            };
            let least = plate.card.cup.value.half();
            if from >= least {
                continue;
            }
            let message = format!(
                "{}: its cup would be {} the {end} of {}, but a whole one is {} from it at least; {CURE}",
                cx.fitting(plate.key),
                stands(cx, from, ["from", "past"]),
                cx.front(door.key),
                least.show(cx.unit),
            );
            let place = cx.at_fitting(hung.place(cx), plate.key);
            let finding = Finding::new(Rule::CupOffDoor, place, message);
            found.push(finding.about(plate.key));
        }
    }
}

/// What helps where a front and what carries it stand apart.
pub(super) const CURE: &str = "move it, or stand on the front and take what is proposed";

/// A distance with the word for its side: the second when it is negative.
pub(super) fn stands(cx: &Context, distance: Length, [plus, minus]: [&str; 2]) -> String {
    let word = if distance < Length::ZERO { minus } else { plus };
    format!("{} {word}", distance.abs().show(cx.unit))
}

/// On its own wall; of runners on the left one, where a person looks first.
pub(super) fn place(cx: &Context, carrier: &Carrier) -> Place {
    let bay = cx.layout.bays.iter().find(|bay| bay.key == carrier.bay);
    let place = bay.map_or(cx.here(), |bay| {
        cx.here()
            .on(carrier.wall.map_or(bay.left, |wall| bay.wall(wall)))
    });
    cx.at_fitting(place, carrier.key)
}

#[cfg(test)]
mod tests;
