//! Setbacks: where the rows of a bay stand, front to back.

use super::House;
use crate::cards::{Runner, RunnerLength};
use crate::job::{BackRule, Bay, Cabinet};
use crate::measure::Length;
use crate::sum::Sum;

/// From the carcass front to where the hardware of this bay begins.
pub(super) fn bay_front(bay: &Bay, house: House) -> Sum {
    moved_back(Sum::default(), bay, house)
}

/// The front row: the front setback, moved back with the bay and with an inset front.
pub(super) fn front_row(bay: &Bay, house: House) -> Sum {
    moved_back(
        Sum::of("front setback", house.shop.setback_front),
        bay,
        house,
    )
}

fn moved_back(from: Sum, bay: &Bay, house: House) -> Sum {
    let from = from.plus("recess of the bay", bay.recess);
    match bay.inset {
        Some(inset) => from
            .plus("inset front", house.front_thickness(inset.front))
            .plus("set-in", inset.set_in),
        None => from,
    }
}

/// From the carcass front to the front face of the back panel.
pub(super) fn inner_depth(cabinet: &Cabinet) -> Sum {
    let back = cabinet.carcass.back;
    Sum::of("depth", cabinet.size.depth).less(back.taken_words(), back.taken())
}

/// The back row, by the job's one rule.
pub(super) fn back_row(cabinet: &Cabinet, front_row: Sum, house: House) -> Sum {
    let setback = house.shop.setback_back;
    match house.shop.back_rule {
        BackRule::FromBackEdge => {
            Sum::of("depth", cabinet.size.depth).less("back setback", setback)
        }
        BackRule::FromBackPanel => inner_depth(cabinet).less("back setback", setback),
        BackRule::OnPitch => {
            let room = inner_depth(cabinet).total() - house.shop.limits.to_back - front_row.total();
            front_row.plus(
                "whole pitches",
                Length::PITCH * room.div_floor(Length::PITCH).max(0),
            )
        }
    }
}

/// The third row of pins, midway between the two others.
pub(super) fn middle_row(front_row: Sum, back_row: Sum) -> Sum {
    let way = back_row.total() - front_row.total();
    Sum::of("front row", front_row.total()).plus("half way to the back row", way.half())
}

/// The second row of an in-line plate.
pub(super) fn in_line_row(front_row: Sum) -> Sum {
    front_row.plus("one pitch", Length::PITCH)
}

/// The row of a runner's first screw.
pub(super) fn runner_first(card: &Runner, bay: &Bay, set_back: u8, house: House) -> Sum {
    let own = Sum::of("runner's own first hole", card.first_hole.value)
        .plus("stand-back", card.stand_back.value);
    moved_back(own, bay, house).plus("set back", Length::PITCH * i32::from(set_back))
}

/// The row of each screw of a runner.
pub(super) fn runner_rows(first: Sum, length: &RunnerLength) -> impl Iterator<Item = Sum> {
    length
        .steps
        .iter()
        .map(move |&step| first.plus("whole pitches", Length::PITCH * i32::from(step)))
}
