//! Fronts: that something carries them, that they can be hung, that no front stands behind another.

use alloc::format;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::job::{Division, Front, FrontKind, Opening};
use crate::measure::Length;

/// Doors without a hinge and drawers without runners.
pub(super) fn front_not_carried(cx: &Context, found: &mut Vec<Finding>) {
    for front in &cx.layout.fronts {
        let lacks = match (front.kind.is_hung(), front.kind.is_drawer()) {
            (true, _) => "hinge plate",
            (_, true) => "runner",
            _ => continue,
        };
        let carriers = cx.layout.carriers(cx.cabinet, front).len();
        let name = cx.front(front.key);
        let leaf = match front.hung.filter(|_| front.kind == FrontKind::Pair) {
            Some(hand) => format!("the {} leaf of {name}", hand.word()),
            None => name.into(),
        };
        let message = match (carriers, front.kind.is_hung()) {
            (0, _) => format!("{leaf} has no {lacks} yet; set one, or take what is proposed"),
            (1, true) => format!("{leaf} has one hinge plate; a door hangs on two at least"),
            _ => continue,
        };
        let finding = Finding::new(Rule::FrontNotCarried, cx.here(), message);
        found.push(finding.about(front.key));
    }
}

/// Doors too narrow for their hinge, and fronts that have no size at all.
pub(super) fn front_too_small(cx: &Context, found: &mut Vec<Finding>) {
    let card = cx.job.cards.hinge(&cx.job.shop.hinge);
    let reach = card.map_or(Length::ZERO, |card| card.reach.value);
    for front in cx.layout.fronts.iter().filter(|front| front.kind.is_seen()) {
        let (width, height) = (front.width.total(), front.height.total());
        let name = cx.front(front.key);
        let message = if width <= Length::ZERO || height <= Length::ZERO {
            format!(
                "{name} would be {} x {}; make its opening larger, or take a front away",
                width.show(cx.unit),
                height.show(cx.unit)
            )
        } else if front.kind.is_hung() && width < reach {
            format!(
                "{name} is {} wide, but its hinge reaches {} back from the front; hang no door here",
                width.show(cx.unit),
                reach.show(cx.unit)
            )
        } else {
            continue;
        };
        let finding = Finding::new(Rule::FrontTooSmall, cx.here(), message);
        found.push(finding.about(front.key));
    }
}

/// Fronts that are seen, of an opening that an outer opening's fronts hide.
pub(super) fn front_behind_front(cx: &Context, found: &mut Vec<Finding>) {
    hidden(cx, &cx.cabinet.opening, None, found);
}

fn hidden(cx: &Context, opening: &Opening, hider: Option<&Front>, found: &mut Vec<Finding>) {
    let seen = |front: &&Front| front.kind.is_seen();
    if let Some(hider) = hider {
        for front in opening.fronts.iter().filter(seen) {
            let message = format!(
                "{} stands behind {}; make it a drawer behind, or take one of them away",
                front.name, hider.name
            );
            let finding = Finding::new(Rule::FrontBehindFront, cx.here(), message);
            found.push(finding.about_both((Some(front.key), Some(hider.key))));
        }
    }
    let hider = hider.or(opening.fronts.iter().find(seen));
    opening.each_part(&mut |part| hidden(cx, part, hider, found));
}

/// Drawers over an opening that is divided: a box runs between two walls.
pub(super) fn drawer_over_bays(cx: &Context, found: &mut Vec<Finding>) {
    cx.cabinet.opening.each(&mut |opening| {
        if matches!(opening.division, Division::Bay(_)) {
            return;
        }
        let drawers = opening.fronts.iter().filter(|front| front.kind.is_drawer());
        for front in drawers {
            let message = format!(
                "{} is a drawer over {}, but a box runs between two walls; put it on one bay, or make it a false front",
                front.name,
                cx.opening(opening.key)
            );
            let finding = Finding::new(Rule::DrawerOverBays, cx.here(), message);
            found.push(finding.about(front.key));
        }
    });
}

/// Drawers behind a door where there is no door.
pub(super) fn inner_without_door(cx: &Context, found: &mut Vec<Finding>) {
    without_door(cx, &cx.cabinet.opening, false, found);
}

fn without_door(cx: &Context, opening: &Opening, hung: bool, found: &mut Vec<Finding>) {
    let hung = hung || opening.fronts.iter().any(|front| front.kind.is_hung());
    let inner = |front: &&Front| front.kind == FrontKind::Inner;
    if !hung && opening.fronts.iter().any(|front| inner(&front)) {
        let names: Vec<&str> = opening
            .fronts
            .iter()
            .filter(inner)
            .map(|front| front.name.as_str())
            .collect();
        let (stand, them) = match names.len() {
            1 => ("stands", "it a front"),
            _ => ("stand", "them fronts"),
        };
        let message = format!(
            "{} {stand} behind no door; hang one, or give {them}",
            names.join(", ")
        );
        let finding = Finding::new(Rule::InnerWithoutDoor, cx.here(), message);
        found.push(finding.about(opening.key));
    }
    opening.each_part(&mut |part| without_door(cx, part, hung, found));
}

#[cfg(test)]
mod tests;
