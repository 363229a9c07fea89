//! Fronts and what carries them: after a front has moved, its plates and runners may no longer suit it.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Place, Rule};
use crate::job::{FrontKind, Key};
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
                name(cx, door.key),
                least.show(cx.unit),
            );
            let finding = Finding::new(Rule::CupOffDoor, place(cx, &carrier), message);
            found.push(finding.about(carrier.key));
        }
    }
}

/// Drawer boxes that stand lower or higher behind their front than the shop has them.
pub(super) fn box_off_front(cx: &Context, found: &mut Vec<Finding>) {
    let rules = &cx.shop().boxes;
    let (least, most) = (rules.rise_least, rules.rise_most.max(rules.rise_least));
    let drawers = cx.layout.fronts.iter();
    for front in drawers.filter(|it| it.kind == FrontKind::Drawer) {
        let Some(carrier) = cx.layout.box_carrier(cx.cabinet, front) else {
            continue;
        };
        let bay = cx.cabinet.opening.bay(carrier.bay);
        let runners = bay.map_or(&[][..], |bay| &bay.runners);
        let runner = runners.iter().find(|runner| runner.key == carrier.key);
        let Some(card) = runner.and_then(|runner| cx.job.cards.runner(&runner.card)) else {
            continue;
        };
        let rise = cx.layout.height(carrier.hole) - card.line.value - front.foot;
        if (least..=most).contains(&rise) {
            continue;
        }
        let message = format!(
            "{}: its box stands {} the foot of {}, but {} above it is what the shop has; {CURE}",
            cx.fitting(carrier.key),
            stands(cx, rise, ["above", "below"]),
            name(cx, front.key),
            cx.span(least, most),
        );
        let finding = Finding::new(Rule::BoxOffFront, place(cx, &carrier), message);
        found.push(finding.about(carrier.key));
    }
}

/// What helps against both.
const CURE: &str = "move it, or stand on the front and take what is proposed";

/// A distance with the word for its side: the second when it is negative.
fn stands(cx: &Context, distance: Length, [plus, minus]: [&str; 2]) -> String {
    let word = if distance < Length::ZERO { minus } else { plus };
    format!("{} {word}", distance.abs().show(cx.unit))
}

fn name<'a>(cx: &Context<'a>, key: Key) -> &'a str {
    let front = cx.cabinet.opening.front(key);
    front.map_or("its front", |front| front.name.as_str())
}

/// On its own wall; of runners on the left one, where a person looks first.
fn place(cx: &Context, carrier: &Carrier) -> Place {
    let bay = cx.layout.bays.iter().find(|bay| bay.key == carrier.bay);
    let place = bay.map_or(cx.here(), |bay| {
        cx.here()
            .on(carrier.wall.map_or(bay.left, |wall| bay.wall(wall)))
    });
    match cx.fitting_holes(carrier.key) {
        Some(holes) => place.holes(holes),
        None => place,
    }
}

#[cfg(test)]
mod tests;
