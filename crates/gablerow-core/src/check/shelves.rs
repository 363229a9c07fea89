//! Loose shelves on their pins: what tips them, what their pins bear, what is clear over them, whether they can be lifted in.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::{doubt, range};
use super::{Context, Finding, Rule};
use crate::job::Zone;
use crate::layout::{
    BayLayout, Item, LIFT_ROOM, SHELF_SETBACK, SHELF_SHORTER, SHELF_TO_BACK, Span,
};
use crate::measure::Length;
use crate::parts::ShelfPart;
use crate::strength::{TIP_LEAST_KG, length_down, tip_overhang};

/// The least that pins bear of a shelf that is pushed to one side; a house default.
pub(crate) const BEARING_LEAST: Length = Length::from_mm(4);

/// Loose shelves that little on their front edge tips.
pub(super) fn shelf_tips(cx: &Context, found: &mut Vec<Finding>) {
    found.extend(
        cx.loose_shelves()
            .iter()
            .filter_map(|shelf| tips(cx, shelf)),
    );
}

fn tips(cx: &Context, shelf: &ShelfPart) -> Option<Finding> {
    let strength = shelf.strength?;
    let tip = strength.tip_kg.filter(|&tip| tip < TIP_LEAST_KG)?;
    let depth = shelf.piece.width.total();
    let most = tip_overhang(strength.mass_kg, depth, TIP_LEAST_KG);
    let most = length_down(most, Length::from_um(500));
    let what = if tip > 0.0 {
        format!("{tip:.1} kg on its front edge tip it, under {TIP_LEAST_KG} (house default)")
    } else {
        "it tips by itself".into()
    };
    let message = format!(
        "{}: {what}; the edge stands {} before its front pins, {} would do: a smaller setback of the pins",
        cx.fitting(shelf.key),
        shelf.overhang.show(cx.unit),
        most.show(cx.unit)
    );
    let place = cx.at_hole(shelf.bay, shelf.hole);
    Some(Finding::new(Rule::ShelfTips, place, message).about(shelf.key))
}

/// Loose shelves that are longer than usual for their bay, and those whose far pins bear too little of them once they are
/// pushed to one side. How far pins stand out is on their card; while that is not known nothing is said of it.
pub(super) fn shelf_length(cx: &Context, found: &mut Vec<Finding>) {
    found.extend(
        cx.loose_shelves()
            .iter()
            .filter_map(|shelf| scrapes(cx, shelf).or_else(|| slips(cx, shelf))),
    );
}

fn scrapes(cx: &Context, shelf: &ShelfPart) -> Option<Finding> {
    let long = shelf.piece.length.total();
    let play = cx.bay(shelf.bay)?.width - long;
    if play >= SHELF_SHORTER || long <= Length::ZERO {
        return None;
    }
    let message = format!(
        "{}: {} shorter than its bay, and goes in where sides bow with {} (common practice): {} long",
        cx.fitting(shelf.key),
        play.show(cx.unit),
        SHELF_SHORTER.show(cx.unit),
        (long + play - SHELF_SHORTER).show(cx.unit)
    );
    let place = cx.at_hole(shelf.bay, shelf.hole);
    Some(Finding::new(Rule::ShelfLength, place, message).about(shelf.key))
}

fn slips(cx: &Context, shelf: &ShelfPart) -> Option<Finding> {
    let out = cx.job.cards.pin(&cx.shop().pin)?.projection?;
    let long = shelf.piece.length.total();
    let play = cx.bay(shelf.bay)?.width - long;
    let bearing = out.value - play;
    if bearing >= BEARING_LEAST || long <= Length::ZERO {
        return None;
    }
    let longest = long + play - SHELF_SHORTER;
    let cure = if out.value - SHELF_SHORTER < BEARING_LEAST {
        format!(
            "pins that stand out {}",
            (BEARING_LEAST + play).show(cx.unit)
        )
    } else {
        format!("a shelf {} long", longest.show(cx.unit))
    };
    let message = format!(
        "{}{}: pushed to one side, its far pins bear {}: they stand out {} less {} it is short; {} (house default) take {cure}",
        doubt(out.origin.is_unproved()),
        cx.fitting(shelf.key),
        bearing.show(cx.unit),
        out.value.show(cx.unit),
        play.show(cx.unit),
        BEARING_LEAST.show(cx.unit)
    );
    let place = cx.at_hole(shelf.bay, shelf.hole);
    Some(Finding::new(Rule::ShelfLength, place, message).about(shelf.key))
}

/// Loose shelves over which less is clear than was asked for.
pub(super) fn clear_opening_short(cx: &Context, found: &mut Vec<Finding>) {
    let shelves = cx.loose_shelves();
    let short = |(at, _): (usize, &ShelfPart)| clear_short(cx, &shelves, at);
    found.extend(shelves.iter().enumerate().filter_map(short));
}

fn clear_short(cx: &Context, shelves: &[ShelfPart], at: usize) -> Option<Finding> {
    let shelf = shelves.get(at)?;
    let wanted = cx.cabinet.loose_shelf(shelf.key)?.clear?;
    let (thickness, clear) = (shelf.piece.thickness?, shelf.clear_above.total());
    let short = wanted - clear;
    if short <= Length::ZERO {
        return None;
    }
    let (hole, underside) = (cx.layout.height(shelf.hole), shelf.underside.total());
    // From the foot up: the next one of the same bay lies over it.
    let above = shelves.get(at + 1).filter(|above| above.bay == shelf.bay);
    let ceiling = if above.is_some() { "shelf" } else { "ceiling" };
    let [clear, wanted, short_words, over, hole, rise, board] = [
        clear,
        wanted,
        short,
        clear + underside + thickness,
        hole,
        underside - hole,
        thickness,
    ]
    .map(|length| length.show(cx.unit));
    let message = format!(
        "{}: {clear} clear over it ({ceiling} at {over} less hole {hole}, rise {rise}, board {board}), {wanted} asked: {short_words} short; {}",
        cx.fitting(shelf.key),
        clear_holes(cx, shelf, above, short)
    );
    let place = cx.at_hole(shelf.bay, shelf.hole);
    Some(Finding::new(Rule::ClearOpeningShort, place, message).about(shelf.key))
}

/// The holes that give so much more over a shelf: a lower one for it, a higher one for the shelf above.
fn clear_holes(
    cx: &Context,
    shelf: &ShelfPart,
    above: Option<&ShelfPart>,
    short: Length,
) -> String {
    let holes = -(-short).div_floor(Length::PITCH);
    let way = Length::PITCH * holes;
    let moved = |hole: i16, by: i32| {
        let number = i16::try_from(i32::from(hole) + by).ok()?;
        (1..=cx.layout.last).contains(&number).then_some(number)
    };
    let lower = (shelf.clear_below.total() >= way).then(|| moved(shelf.hole, -holes));
    let higher = above.filter(|above| above.clear_above.total() >= way + LIFT_ROOM);
    let higher = higher.map(|above| moved(above.hole, holes));
    match (lower.flatten(), higher.flatten()) {
        (Some(own), Some(other)) => format!("hole {own} gives it, or {other} for the one above"),
        (Some(own), None) => format!("hole {own} gives it"),
        (None, Some(other)) => format!("hole {other} for the one above gives it"),
        (None, None) => "no hole gives it".into(),
    }
}

/// Loose shelves, and the highest holes of zones, with too little room over them for a shelf to be lifted in.
pub(super) fn no_lift_room(cx: &Context, found: &mut Vec<Finding>) {
    let shelves = cx.loose_shelves();
    found.extend(shelves.iter().filter_map(|shelf| lift(cx, shelf)));
    for (made, bay) in cx.bays() {
        let zones = bay.zones.iter();
        found.extend(zones.filter_map(|zone| zone_lift(cx, made, zone)));
    }
}

fn lift(cx: &Context, shelf: &ShelfPart) -> Option<Finding> {
    let made = cx.bay(shelf.bay)?;
    let back = made.inner_depth.total() - SHELF_TO_BACK;
    let depth = Span::new(back - shelf.piece.width.total(), back);
    let top = shelf.underside.total() + shelf.piece.thickness?;
    let (item, room) = room_over(cx, made, shelf.hole, depth, top)?;
    // Without any room it is in the way of the panel, which is told as that.
    if room < Length::ZERO || room >= LIFT_ROOM {
        return None;
    }
    // A whole pitch is more than the room that is asked for.
    let is_free = shelf.hole > 1 && shelf.clear_below.total() >= Length::PITCH;
    let cure = match is_free {
        true => format!("hole {} has room", shelf.hole - 1),
        false => "no lower hole is free".into(),
    };
    let message = format!(
        "{}: {} from its top to the {} over it, and lifting it in takes {} (house default); {cure}",
        cx.fitting(shelf.key),
        room.show(cx.unit),
        item.word(),
        LIFT_ROOM.show(cx.unit)
    );
    let place = cx.at_hole(shelf.bay, shelf.hole);
    Some(Finding::new(Rule::NoLiftRoom, place, message).about(shelf.key))
}

/// The highest holes of a zone on which a shelf of the shop's board, set back as usual, could not be lifted in.
fn zone_lift(cx: &Context, made: &BayLayout, zone: &Zone) -> Option<Finding> {
    let thickness = cx.job.cards.board(&cx.shop().board)?.thickness.value;
    let rise = cx.job.cards.pin(&cx.shop().pin)?.rise.value;
    let front = made.inner_depth.total() - made.depth_behind_fronts(cx.shop()) + SHELF_SETBACK;
    let depth = Span::new(front, made.inner_depth.total() - SHELF_TO_BACK);
    let room = |hole: i16| {
        let top = cx.layout.height(hole) + rise + thickness;
        room_over(cx, made, hole, depth, top).filter(|(_, room)| *room < LIFT_ROOM)
    };
    let (first, last) = zone.numbers(cx.layout.last);
    let holes = first.max(1)..=last.min(cx.layout.last);
    let mut holes = holes
        .rev()
        .skip_while(|&hole| !made.spans(cx.layout.height(hole)));
    let highest = holes.next()?;
    let (item, over) = room(highest)?;
    let lowest = holes.take_while(|&hole| room(hole).is_some()).last();
    let lowest = lowest.unwrap_or(highest);
    let what = if over < Length::ZERO {
        format!("would be {} in the {}", (-over).show(cx.unit), item.word())
    } else {
        format!("has {} to the {} over it", over.show(cx.unit), item.word())
    };
    let word = if lowest == highest { "hole" } else { "holes" };
    let message = format!(
        "{}: a shelf on {highest} {what}, and lifting one in takes {} (house default); drop {word} {}",
        cx.fitting(zone.key),
        LIFT_ROOM.show(cx.unit),
        range(lowest, highest)
    );
    let place = cx.here().on(made.left).holes((lowest, highest));
    Some(Finding::new(Rule::NoLiftRoom, place, message).about(zone.key))
}

/// The fixed panel next over a hole of a bay, within a depth, and the room from a height up to it; below zero where that
/// height is in the panel or past it.
fn room_over(
    cx: &Context,
    made: &BayLayout,
    hole: i16,
    depth: Span,
    top: Length,
) -> Option<(Item, Length)> {
    let z = cx.layout.height(hole);
    let walls = [made.left, made.right];
    let faces = walls.into_iter().filter_map(|wall| cx.layout.face(wall));
    let over = faces.flat_map(|face| &face.keep_outs).filter(|keep_out| {
        keep_out.item.is_fixed_panel()
            && keep_out.z.to > z
            && keep_out.x.overlap(depth) > Length::ZERO
    });
    let next = over.min_by_key(|keep_out| (keep_out.z.from, keep_out.item))?;
    Some((next.item, next.z.from - top))
}

#[cfg(test)]
mod tests;
