//! Doors as a whole: whether they fit turned end for end, and what it takes to hang them on the other hand.

use alloc::format;
use alloc::vec::Vec;

use super::door::Door;
use super::keep_outs::is_clear_of;
use super::{Context, Finding, Rule, Strand, stopped_holes, strands};
use crate::grid::Run;
use crate::job::{Division, FaceId, FrontKind, PanelId};
use crate::layout::{Face, FrontLayout, Upright};
use crate::measure::Length;
use crate::parts::Leaf;
use crate::solve::hinges::cups;

/// Doors whose cups stand otherwise from the foot than from the head.
pub(super) fn door_handed(cx: &Context, found: &mut Vec<Finding>) {
    for door in cx.doors.iter().filter(|door| door.spread().is_some()) {
        let cups = cups(door.leaf.door(), &door.middles());
        if !cups.handed {
            continue;
        }
        let further = if cups.asymmetry > Length::ZERO {
            "further from the foot than from the head"
        } else {
            "nearer to the foot than to the head"
        };
        let message = format!(
            "{} is handed: its cups stand {} {further}; its label marks the FOOT END",
            door.name(cx),
            cups.asymmetry.abs().show(cx.unit)
        );
        let finding = Finding::new(Rule::DoorHanded, door.place(cx), message);
        found.push(finding.about(door.key()));
    }
}

/// Doors that could hang on the other hand as well, had the other wall their holes.
pub(super) fn door_side_change(cx: &Context, found: &mut Vec<Finding>) {
    for door in cx.doors {
        let Some((holes, face)) = other_side(cx, door) else {
            continue;
        };
        // A partition is told by its number, and so by no article.
        let the = if matches!(face.id.panel, PanelId::Partition(_)) {
            ""
        } else {
            "the "
        };
        let message = format!(
            "the plates of {} are on its {} alone; {holes} more holes in {the}{} would let it hang there too",
            door.name(cx),
            door.leaf.front.hung.map_or("side", |hand| hand.word()),
            cx.layout.names.panel(face.id.panel)
        );
        let finding = Finding::new(Rule::DoorSideChange, cx.here().on(face.id), message);
        found.push(finding.about(door.key()));
    }
}

/// How many holes the other wall of a door's one bay would need, and that wall; `None` unless the door could hang there:
/// it is single and not handed, its hinge reaches, no plate is there yet, and each hole and each hinge has room.
fn other_side<'a>(cx: &Context<'a>, door: &Door) -> Option<(i32, &'a Face)> {
    let front = door.leaf.front;
    let hung = front.hung?;
    let turned = FrontLayout {
        hung: Some(hung.other()),
        ..*front
    };
    let bay = cx.bays().find(|(made, _)| made.key == front.opening)?;
    let over_one_bay = matches!(front.kind, FrontKind::Door(_)) && in_one_bay(cx, door);
    if !over_one_bay || door.spread().is_none() {
        return None;
    }
    let within = |hole| (front.foot..=front.head()).contains(&cx.layout.height(hole));
    let other_hand = hung.other();
    let mut plates = bay.1.plates.iter().filter(|plate| plate.wall == other_hand);
    let bored = plates.any(|plate| within(plate.hole.number(cx.layout.last)));
    let fit = Leaf {
        front: &turned,
        ..door.leaf
    };
    let residual = fit.fit(door.card)?.residual.abs();
    let handed = cups(door.leaf.door(), &door.middles()).handed;
    if bored || handed || residual > door.card.adjust.value {
        return None;
    }
    let other = Other::of(cx, turned.wall_hung()?)?;
    let own = cx.layout.face(front.wall_hung()?)?;
    let mut holes = 0;
    for plate in &door.plates {
        let mine = |strand: &Strand| strand.spec.owner == plate.key;
        for strand in strands(own, cx.layout).filter(mine) {
            holes += other.takes(cx, strand).then(|| strand.count())?;
        }
        let mut spaces = own.keep_outs.iter();
        let space = spaces.find(|space| space.owner == Some(plate.key))?;
        if !is_clear_of(space, other.face) {
            return None;
        }
    }
    (holes > 0).then_some((holes, other.face))
}

/// Whether the opening of a door is a bay, and all its plates are in it.
fn in_one_bay(cx: &Context, door: &Door) -> bool {
    let opening = door.leaf.front.opening;
    let mut one = false;
    cx.cabinet.opening.each(&mut |part| {
        one |= part.key == opening && matches!(part.division, Division::Bay(_));
    });
    one && door.plates.iter().all(|plate| plate.bay == opening)
}

/// The wall that would get the holes.
struct Other<'a> {
    upright: &'a Upright,
    face: &'a Face,
}

impl<'a> Other<'a> {
    fn of(cx: &Context<'a>, face: FaceId) -> Option<Self> {
        let upright = cx.layout.upright(face.panel)?;
        let face = upright.face(face.toward);
        Some(Self { upright, face })
    }

    /// Whether holes like these of the wall across have room here: on the panel, clear of its edges and of every hole of
    /// this face and of the one behind.
    fn takes(&self, cx: &Context, strand: Strand) -> bool {
        let Self { upright, face } = *self;
        let limits = cx.limits();
        let Some((first, last)) = strand.holes else {
            return false;
        };
        let (front, back) = (upright.front.total(), upright.back.total());
        let inside = upright.holes.0 <= first
            && last <= upright.holes.1
            && front + limits.to_edge <= strand.x
            && strand.x <= back - limits.to_edge
            && strand.x <= back - upright.back_taken - limits.to_back;
        let in_notch = upright.notch.is_some_and(|notch| {
            strand.low < upright.foot.total() + notch.height + limits.to_edge
                && strand.x < front + notch.depth + limits.to_edge
        });
        let skin = limits.skin(cx.shop().bit);
        let deep = strand.spec.depth.unwrap_or(upright.thickness);
        let there = (face.id, strand.x);
        let stopped = stopped_holes(cx.layout, cx.shop(), there, strand.spec, &[]);
        let meets = |run: &Run| {
            let (low, high) = (i32::from(run.first().get()), i32::from(run.last().get()));
            low <= last.into() && i32::from(first) <= high
        };
        inside && !in_notch && deep + skin <= upright.thickness && !stopped.iter().any(meets)
    }
}

#[cfg(test)]
mod tests;
