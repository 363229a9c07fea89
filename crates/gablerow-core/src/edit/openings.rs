//! Dividing an opening by partitions or fixed shelves, and taking a divider away.

use alloc::boxed::Box;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use core::mem;

use super::fittings::keys;
use super::{Refusal, cabinet, change, pins};
use crate::history::Step;
use crate::job::{
    Bay, Cabinet, CardId, Division, FixedShelf, Hand, HolePlace, Job, Joint, Key, Opening, Part,
    PartWidth, Partition, PinRows, Plate, Shelf, ShelfHeight, SideBySide, Stacked,
};
use crate::layout::Layout;
use crate::measure::Length;
use crate::measure::range;

/// Which way an opening is divided.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Way {
    /// Into parts side by side, with partitions between.
    SideBySide,
    /// Into parts above each other, with fixed shelves between.
    Stacked,
}

/// What a division needs: new keys, the board of the dividers, and where they go.
struct Making<'a> {
    keys: &'a mut dyn FnMut() -> Key,
    board: &'a CardId,
    /// Holes of the fixed shelves, from the foot up.
    holes: Vec<i16>,
    /// The highest hole of the grid.
    last: i16,
}

/// Divides an opening that is not divided yet into so many parts. What a bay holds stays in its first part, but plates stay
/// on their wall; of parts above each other, every fitting goes to the part its hole is in. Fronts stay over all of it.
pub(super) fn divide(
    job: &Job,
    key: Key,
    opening: Key,
    way: Way,
    parts: u16,
) -> Result<Step, Refusal> {
    let range = range::PARTS;
    let parts = range
        .check(i64::from(parts))
        .map_err(|wrong| Refusal(format!("{wrong}")))?;
    if parts < 2 {
        return Err(Refusal(
            "one part is no division; 2 or more divide it".into(),
        ));
    }
    let (_, found) = cabinet(job, key)?;
    let layout = Layout::of(found, job);
    let name = super::opening_name(&layout, opening);
    if found.opening.bay(opening).is_none() {
        return Err(Refusal(format!(
            "{name} is divided already; stand in one of its bays"
        )));
    }
    let mut keys = keys(job.free_key(key));
    let mut making = Making {
        keys: &mut keys,
        board: &job.shop.board,
        holes: match way {
            Way::SideBySide => Vec::new(),
            Way::Stacked => shelf_holes(&layout, opening, parts)?,
        },
        last: layout.last,
    };
    change(job, key, |edited| {
        divide_in(&mut edited.opening, opening, way, parts, &mut making);
        let (what, number) = match way {
            Way::SideBySide => ("partition", parts - 1),
            Way::Stacked => ("fixed shelf", parts - 1),
        };
        Ok(match number {
            1 => format!("{what} in {name}"),
            more => format!("{more} times a {what} in {name}"),
        })
    })
}

/// The holes that divide an opening as evenly as the grid has it.
fn shelf_holes(layout: &Layout, opening: Key, parts: u16) -> Result<Vec<i16>, Refusal> {
    let made = layout.opening(opening);
    let made = made.ok_or_else(|| Refusal("there is no such opening".into()))?;
    let height = made.ceiling - made.floor;
    let holes: Vec<i16> = (1..parts)
        .map(|at| {
            let up = i64::from(height.counts()) * i64::from(at) / i64::from(parts);
            let up = Length::from_counts(i32::try_from(up).unwrap_or(0));
            layout.nearest_hole(made.floor + up)
        })
        .collect();
    if holes.is_sorted_by(|one, next| one < next) {
        Ok(holes)
    } else {
        Err(Refusal(format!(
            "{parts} parts, but {} high has no hole for each shelf; take fewer",
            height.mm_1()
        )))
    }
}

fn divide_in(opening: &mut Opening, key: Key, way: Way, parts: u16, making: &mut Making) {
    if opening.key == key {
        let division = mem::replace(&mut opening.division, Division::Bay(Bay::default()));
        let Division::Bay(bay) = division else {
            opening.division = division;
            return;
        };
        let first = Opening {
            key: (making.keys)(),
            division: Division::Bay(bay),
            fronts: Vec::new(),
        };
        opening.division = match way {
            Way::SideBySide => {
                let (first, rest) = side_by_side(equal(first), parts, making);
                Division::SideBySide(Box::new(SideBySide { first, rest }))
            }
            Way::Stacked => {
                let (first, rest) = stacked(first, making);
                Division::Stacked(Box::new(Stacked { first, rest }))
            }
        };
        return;
    }
    match &mut opening.division {
        Division::Bay(_) => {}
        Division::SideBySide(row) => {
            let at = part_at(row, key);
            if let (Way::SideBySide, Some(at)) = (way, at)
                && row
                    .part(at)
                    .is_some_and(|part| part.opening.fronts.is_empty())
            {
                divide_part(row, at, parts, making);
                return;
            }
            for part in row.parts_mut() {
                divide_in(&mut part.opening, key, way, parts, making);
            }
        }
        Division::Stacked(stack) => {
            for opening in stack.openings_mut() {
                divide_in(opening, key, way, parts, making);
            }
        }
    }
}

fn part_at(row: &SideBySide, key: Key) -> Option<usize> {
    row.parts().position(|part| part.opening.key == key)
}

fn equal(opening: Opening) -> Part {
    Part {
        width: PartWidth::Equal,
        opening,
    }
}

/// A part of a row divided the same way adds to the row, so that no row lies in a row; new partitions are made like the first
/// one that is there.
fn divide_part(row: &mut SideBySide, at: usize, parts: u16, making: &mut Making) {
    let Some(part) = row.parts_mut().nth(at) else {
        return;
    };
    part.width = PartWidth::Equal;
    let bay = made_like(&part.opening);
    let plates = take_plates(&mut part.opening, Hand::Right);
    let like = row.rest.first().map(|(partition, _)| partition.clone());
    for more in 1..usize::from(parts) {
        let (mut partition, mut part) = next_part(making);
        if let Some(like) = &like {
            partition = Partition {
                key: partition.key,
                ..like.clone()
            };
        }
        part.opening.division = Division::Bay(bay.clone());
        row.rest.insert(at + more - 1, (partition, part));
    }
    if let Some(last) = row.parts_mut().nth(at + usize::from(parts) - 1) {
        put_plates(&mut last.opening, plates);
    }
}

/// Takes the plates out of a bay that are on its wall on one hand.
fn take_plates(opening: &mut Opening, wall: Hand) -> Vec<Plate> {
    let Division::Bay(bay) = &mut opening.division else {
        return Vec::new();
    };
    let plates = mem::take(&mut bay.plates);
    let (taken, kept) = plates.into_iter().partition(|plate| plate.wall == wall);
    bay.plates = kept;
    taken
}

fn put_plates(opening: &mut Opening, plates: Vec<Plate>) {
    if let Division::Bay(bay) = &mut opening.division {
        bay.plates.extend(plates);
    }
}

fn next_part(making: &mut Making) -> (Partition, Part) {
    let partition = Partition {
        key: (making.keys)(),
        board: making.board.clone(),
        recess: Length::ZERO,
        foot: Joint::default(),
        head: Joint::default(),
    };
    (partition, equal(Opening::empty_bay((making.keys)())))
}

/// An empty bay whose front is where that of another one is.
fn made_like(opening: &Opening) -> Bay {
    match &opening.division {
        Division::Bay(bay) => Bay {
            recess: bay.recess,
            inset: bay.inset,
            pin_rows: bay.pin_rows,
            ..Bay::default()
        },
        _ => Bay::default(),
    }
}

fn side_by_side(
    mut first: Part,
    parts: u16,
    making: &mut Making,
) -> (Part, Vec<(Partition, Part)>) {
    let like = made_like(&first.opening);
    let plates = take_plates(&mut first.opening, Hand::Right);
    let rest = (1..parts).map(|_| {
        let (partition, mut part) = next_part(making);
        part.opening.division = Division::Bay(like.clone());
        (partition, part)
    });
    let mut rest: Vec<(Partition, Part)> = rest.collect();
    if let Some((_, last)) = rest.last_mut() {
        put_plates(&mut last.opening, plates);
    }
    (first, rest)
}

fn stacked(mut first: Opening, making: &mut Making) -> (Opening, Vec<(FixedShelf, Opening)>) {
    let last = making.last;
    let holes = mem::take(&mut making.holes);
    let mut rest = Vec::new();
    for (at, &hole) in holes.iter().enumerate() {
        let top = holes.get(at + 1).copied().unwrap_or(i16::MAX);
        let shelf = FixedShelf {
            key: (making.keys)(),
            board: making.board.clone(),
            at: ShelfHeight::Hole(HolePlace::foot(hole)),
            recess: Length::ZERO,
            joint: Joint::default(),
        };
        let mut above = Opening::empty_bay((making.keys)());
        above.division = Division::Bay(made_like(&first));
        if let (Division::Bay(lower), Division::Bay(upper)) =
            (&mut first.division, &mut above.division)
        {
            move_up(lower, upper, hole..top, last);
        }
        rest.push((shelf, above));
    }
    (first, rest)
}

/// Moves what stands at these holes from one bay to another.
fn move_up(lower: &mut Bay, upper: &mut Bay, holes: core::ops::Range<i16>, last: i16) {
    fn split<T>(from: &mut Vec<T>, to: &mut Vec<T>, up: impl Fn(&T) -> bool) {
        let (moved, kept) = mem::take(from).into_iter().partition(up);
        (*from, *to) = (kept, moved);
    }
    let up = |place: HolePlace| holes.contains(&place.number(last));
    split(&mut lower.zones, &mut upper.zones, |zone| {
        holes.contains(&zone.numbers(last).0)
    });
    split(&mut lower.shelves, &mut upper.shelves, |it| up(it.hole));
    split(&mut lower.plates, &mut upper.plates, |it| up(it.hole));
    split(&mut lower.runners, &mut upper.runners, |it| up(it.hole));
}

/// What uniting needs: new keys, and the highest hole of the grid.
struct Joining<'a> {
    keys: &'a mut dyn FnMut() -> Key,
    last: i16,
}

/// Takes a partition or a fixed shelf away. What both bays beside it hold stays, pins and shelves that fall on the same holes
/// once; where only one side is divided, the other must hold nothing.
pub(super) fn unite(job: &Job, key: Key, divider: Key) -> Result<Step, Refusal> {
    let (_, found) = cabinet(job, key)?;
    let name = divider_name(found, job, divider);
    let mut joining = Joining {
        keys: &mut keys(job.free_key(key)),
        last: Layout::last_hole(found, &job.shop),
    };
    change(job, key, |edited| {
        match unite_in(&mut edited.opening, divider, &mut joining) {
            None => Err(Refusal("there is no such partition or shelf".into())),
            Some(false) => Err(Refusal(format!(
                "{name} stays: first take away fronts and divisions beside it"
            ))),
            Some(true) => Ok(format!("no {name}")),
        }
    })
}

fn divider_name(cabinet: &Cabinet, job: &Job, divider: Key) -> String {
    let layout = Layout::of(cabinet, job);
    let partition = layout
        .uprights
        .iter()
        .find(|upright| upright.id.partition() == Some(divider));
    match partition {
        Some(upright) => format!("{}", layout.names.panel(upright.id)),
        None => "fixed shelf".into(),
    }
}

/// Whether the divider was taken away; `None` when it is not here.
fn unite_in(opening: &mut Opening, divider: Key, joining: &mut Joining) -> Option<bool> {
    let done = match &mut opening.division {
        Division::Bay(_) => None,
        Division::SideBySide(row) => match row.rest.iter().position(|it| it.0.key == divider) {
            Some(at) => Some(unite_parts(row, at, joining)),
            None => row
                .parts_mut()
                .find_map(|part| unite_in(&mut part.opening, divider, joining)),
        },
        Division::Stacked(stack) => match stack.rest.iter().position(|it| it.0.key == divider) {
            Some(at) => Some(unite_openings(stack, at, joining)),
            None => stack
                .openings_mut()
                .find_map(|opening| unite_in(opening, divider, joining)),
        },
    };
    if done == Some(true) {
        collapse(opening);
    }
    done
}

fn unite_parts(row: &mut SideBySide, at: usize, joining: &mut Joining) -> bool {
    let Some((_, mut right)) = row.rest.get(at).cloned() else {
        return false;
    };
    let Some(left) = row.parts_mut().nth(at) else {
        return false;
    };
    plates_go(&mut left.opening, Hand::Right);
    plates_go(&mut right.opening, Hand::Left);
    let Some(united) = both(&left.opening, &right.opening, joining) else {
        return false;
    };
    left.opening = united;
    // Two typed widths leave the space of the partition to be shared.
    left.width = PartWidth::Equal;
    row.rest.remove(at);
    true
}

/// Plates go with the panel they are screwed to: those of every bay that has its wall on this hand where the opening has it.
fn plates_go(opening: &mut Opening, wall: Hand) {
    match &mut opening.division {
        Division::Bay(bay) => bay.plates.retain(|plate| plate.wall != wall),
        Division::SideBySide(row) => {
            let last = row.rest.len();
            let at = match wall {
                Hand::Left => 0,
                Hand::Right => last,
            };
            if let Some(part) = row.parts_mut().nth(at) {
                plates_go(&mut part.opening, wall);
            }
        }
        Division::Stacked(stack) => {
            let openings = stack.openings_mut();
            openings.for_each(|opening| plates_go(opening, wall));
        }
    }
}

fn unite_openings(stack: &mut Stacked, at: usize, joining: &mut Joining) -> bool {
    let Some((_, upper)) = stack.rest.get(at).cloned() else {
        return false;
    };
    let Some(lower) = stack.openings_mut().nth(at) else {
        return false;
    };
    let Some(united) = both(lower, &upper, joining) else {
        return false;
    };
    *lower = united;
    stack.rest.remove(at);
    true
}

/// One opening that holds what both hold; `None` when that cannot be said in one.
fn both(one: &Opening, other: &Opening, joining: &mut Joining) -> Option<Opening> {
    let empty = |opening: &Opening| {
        matches!(&opening.division, Division::Bay(bay) if bay.holds_nothing())
            && opening.fronts.is_empty()
    };
    match (&one.division, &other.division) {
        _ if empty(other) => Some(one.clone()),
        _ if empty(one) => Some(other.clone()),
        (Division::Bay(bay), Division::Bay(more))
            if one.fronts.is_empty() || other.fronts.is_empty() =>
        {
            let mut bay = bay.clone();
            pins::join(&mut bay, &more.zones, joining.last, joining.keys);
            join_shelves(&mut bay, &more.shelves, joining.last);
            if more.pin_rows == PinRows::Three {
                bay.pin_rows = PinRows::Three;
            }
            bay.plates.extend(more.plates.iter().cloned());
            bay.runners.extend(more.runners.iter().cloned());
            Some(Opening {
                key: one.key,
                division: Division::Bay(bay),
                fronts: [&one.fronts[..], &other.fronts[..]].concat(),
            })
        }
        _ => None,
    }
}

/// Adds the shelves of another bay but those on holes that have one already.
fn join_shelves(bay: &mut Bay, others: &[Shelf], last: i16) {
    for other in others {
        let same = |own: &Shelf| own.hole.number(last) == other.hole.number(last);
        if !bay.shelves.iter().any(same) {
            bay.shelves.push(other.clone());
        }
    }
    bay.shelves.sort_by_key(|shelf| shelf.hole.number(last));
}

/// A division with one part left is none: the part takes its place, and fronts over either stay.
fn collapse(opening: &mut Opening) {
    let part = match &mut opening.division {
        Division::SideBySide(row) if row.rest.is_empty() => &mut row.first.opening,
        Division::Stacked(stack) if stack.rest.is_empty() => &mut stack.first,
        _ => return,
    };
    let part = mem::replace(part, Opening::empty_bay(opening.key));
    opening.division = part.division;
    opening.fronts.extend(part.fronts);
}
