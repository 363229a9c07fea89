//! Fronts and what carries them: after a front has moved, its plates and runners may no longer suit it.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Place, Rule};
use crate::layout::Carrier;
use crate::measure::Length;

/// Hinge cups that would not lie on their door, whole.
pub(super) fn cup_off_door(cx: &Context, found: &mut Vec<Finding>) {
    for door in cx.layout.fronts.iter().filter(|it| it.kind.is_hung()) {
        for carrier in cx.layout.carriers(cx.cabinet, door) {
            let bay = cx.cabinet.opening.bay(carrier.bay);
            let plates = bay.map_or(&[][..], |bay| &bay.plates);
            let plate = plates.iter().find(|plate| plate.key == carrier.key);
            let Some(card) = plate.and_then(|plate| cx.job.cards.hinge(&plate.card)) else {
                continue;
            };
            let middle = cx.layout.height(carrier.hole) + card.plate.rise();
            let (foot, head) = (middle - door.foot, door.head() - middle);
            let (from, end) = if foot < head {
                (foot, "foot")
            } else {
                (head, "head")
            };
            let least = card.cup.value.half();
            if from >= least {
                continue;
            }
            let message = format!(
                "{}: its cup would be {} the {end} of {}, but a whole one is {} from it at least; {CURE}",
                cx.fitting(carrier.key),
                stands(cx, from, ["from", "past"]),
                cx.front(door.key),
                least.show(cx.unit),
            );
            let finding = Finding::new(Rule::CupOffDoor, place(cx, &carrier), message);
            found.push(finding.about(carrier.key));
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
    let holes = cx.fitting_holes(carrier.key);
    let on_grid = holes.filter(|(first, last)| *first >= 1 && *last <= cx.layout.last);
    on_grid.map_or(place, |holes| place.holes(holes))
}

#[cfg(test)]
mod tests;
