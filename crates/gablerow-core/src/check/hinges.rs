//! Hinges: that they reach, that they are enough and far apart, that the door has room beside them.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::doubt;
use super::door::Door;
use super::{Context, Finding, Rule};
use crate::cards::Hinge;
use crate::job::{Hand, PanelId};
use crate::layout::FrontLayout;
use crate::measure::Length;
use crate::parts::Arm;
use crate::solve::hinges::{ChartHeight, Count, OverlayFit, chart_of};

/// Fifths of a door's width that its first and last hinge are apart at least: 0.8, a house default. A maker asks for the
/// whole width.
pub(crate) const SPREAD_FIFTHS: i64 = 4;

/// How far a front row may be off where its door wants it: 0.5, a house default. A hinge takes more by its own adjusting.
pub(crate) const ROW_OFF: Length = Length::from_um(500);

/// Doors whose overlay no tab and plate of the card comes near enough to.
pub(super) fn overlay_unreachable(cx: &Context, found: &mut Vec<Finding>) {
    for door in cx.doors {
        let mut seen: Vec<&Hinge> = Vec::new();
        for plate in &door.plates {
            if seen.iter().any(|other| other.id == plate.card.id) {
                continue;
            }
            seen.push(plate.card);
            let fit = door.leaf.fit(plate.card);
            let off = fit.filter(|fit| fit.residual.abs() > plate.card.adjust.value);
            let Some((rule, message)) = off.map(|fit| unreached(cx, door, plate.card, &fit)) else {
                continue;
            };
            let place = cx.at_fitting(door.place(cx), plate.key);
            let finding = Finding::new(rule, place, message);
            found.push(finding.about_both((Some(door.key()), Some(plate.key))));
        }
    }
}

/// Where a door is off by more than its hinge adjusts; a rule of its own where it would lap over the half of a partition
/// that is another door's.
fn unreached(cx: &Context, door: &Door, card: &Hinge, fit: &OverlayFit) -> (Rule, String) {
    let wanted = door.leaf.front.lap_hung().unwrap_or_default().total();
    let (arm, reach) = door.leaf.arm(card);
    let values = [card.tabs.least, card.tabs.most, card.adjust, reach];
    let doubt = doubt(values.iter().any(|value| value.origin.is_unproved()));
    let (name, residual) = (door.name(cx), fit.residual);
    let setting = format!(
        "{} arm, tab {} and plate {}",
        arm.word(),
        fit.tab.show(cx.unit),
        fit.plate.show(cx.unit)
    );
    let wanted_here = wanted.show(cx.unit);
    let (off, adjusts) = (
        residual.abs().show(cx.unit),
        card.adjust.value.show(cx.unit),
    );
    let wall = door.leaf.front.wall_hung().map(|wall| wall.panel);
    match (arm, wall) {
        (Arm::Half, Some(panel @ PanelId::Partition(_))) if residual > Length::ZERO => {
            let message = format!(
                "{doubt}{name} shares {} and may lap {wanted_here} over it, but {setting} lap {}: {off} over, \
                 and it adjusts {adjusts}; take another arm",
                cx.layout.names.panel(panel),
                (wanted + residual).show(cx.unit)
            );
            (Rule::HalfOverlayArm, message)
        }
        _ => {
            let cure = match arm {
                Arm::Inset => "gap",
                Arm::Full | Arm::Half => "reveal",
            };
            let message = format!(
                "{doubt}{name} wants an overlay of {wanted_here}; {setting} come nearest: {off} off, \
                 and it adjusts {adjusts}; take another hinge or {cure}"
            );
            (Rule::OverlayUnreachable, message)
        }
    }
}

/// Doors whose hinge edge has less beside it than it needs to swing past.
pub(super) fn reveal_too_small(cx: &Context, found: &mut Vec<Finding>) {
    for door in cx.doors {
        let thickness = door.leaf.front.thickness;
        let Some(least) = door.card.least_reveal(thickness) else {
            continue;
        };
        let Some((room, words)) = beside(cx, door.leaf.front) else {
            continue;
        };
        if room >= least.value {
            continue;
        }
        let message = format!(
            "{} is {} thick and needs {} beside its hinge edge to swing past, but {words} is {}; more of it, or a thinner door",
            door.name(cx),
            thickness.show(cx.unit),
            least.value.show(cx.unit),
            room.show(cx.unit)
        );
        let finding = Finding::new(Rule::RevealTooSmall, door.place(cx), message);
        found.push(finding.about(door.key()));
    }
}

/// What is free beside the hinge edge of a door, and what that is: to the wall of an opening it stands in, to the front
/// that has the other half of the edge, or half of that when the other one swings too; else to the far face of its upright.
fn beside(cx: &Context, front: &FrontLayout) -> Option<(Length, &'static str)> {
    let lap = front.lap_hung()?.total();
    if front.set_in.is_some() {
        return Some((-lap, "the gap"));
    }
    let wall = front.wall_hung()?;
    let alone = cx.layout.upright(wall.panel)?.thickness - lap;
    let nearest = cx.layout.fronts.iter().filter_map(|other| {
        let (facing, apart) = match front.hung? {
            Hand::Left => (other.wall_right, front.left - other.right()),
            Hand::Right => (other.wall_left, other.left - front.right()),
        };
        let beside = other.kind.is_seen() && other.set_in.is_none() && facing == wall.behind();
        let same_height = other.foot < front.head() && front.foot < other.head();
        (beside && same_height).then(|| {
            if other.wall_hung() == Some(facing) {
                (apart.half(), "half the gap")
            } else {
                (apart, "the gap")
            }
        })
    });
    let nearest = nearest.min_by_key(|(room, _)| *room);
    Some(nearest.unwrap_or((alone, "the reveal")))
}

/// Doors on fewer hinges than the card's chart asks for; a door on one or none is not carried.
pub(super) fn hinges_too_few(cx: &Context, found: &mut Vec<Finding>) {
    for door in cx.doors {
        let hinges = door.plates.len();
        let Some(asked) = door.leaf.asked(door.card) else {
            continue;
        };
        if hinges < 2 || hinges >= usize::from(asked.hinges) {
            continue;
        }
        let at_least = if asked.beyond.height || asked.beyond.mass {
            " at least"
        } else {
            ""
        };
        let message = format!(
            "{} hangs on {hinges} hinges, and the chart {} asks for {}{at_least}: {}",
            door.name(cx),
            door.card.chart.words(),
            asked.hinges,
            why(cx, door, asked)
        );
        let finding = Finding::new(Rule::HingesTooFew, door.place(cx), message);
        found.push(finding.about(door.key()));
    }
}

/// What of a door asks for how many hinges.
fn why(cx: &Context, door: &Door, asked: Count) -> String {
    let front = door.leaf.front;
    let mut why = String::new();
    let high = match chart_of(door.card.chart).height {
        ChartHeight::Door => Some(("", front.height.total())),
        ChartHeight::Cabinet => Some(("a cabinet ", cx.cabinet.size.height)),
        ChartHeight::None => None,
    };
    if let Some((of, height)) = high {
        why = format!(
            "{} for {of}{} high, ",
            asked.by_height,
            height.show(cx.unit)
        );
    }
    let mass = door.leaf.mass_kg().unwrap_or_default();
    why += &format!("{} for {mass:.1} kg", asked.by_mass);
    if asked.wide {
        why += &format!(", 1 more for {} wide", front.width.total().show(cx.unit));
    }
    why
}

/// Doors whose first and last hinge are near each other for their width.
pub(super) fn hinges_too_close(cx: &Context, found: &mut Vec<Finding>) {
    for door in cx.doors {
        let Some(apart) = door.spread() else {
            continue;
        };
        let width = door.leaf.front.width.total();
        let fifths = |length: Length, times: i64| i64::from(length.counts()) * times;
        if fifths(apart, 5) >= fifths(width, SPREAD_FIFTHS) {
            continue;
        }
        let least = i32::try_from(fifths(width, SPREAD_FIFTHS) / 5).map(Length::from_counts);
        let message = format!(
            "{} is {} wide, and its first and last hinge are {} apart, {} at least; move them outward",
            door.name(cx),
            width.show(cx.unit),
            apart.show(cx.unit),
            least.unwrap_or(width).show(cx.unit)
        );
        let finding = Finding::new(Rule::HingesTooClose, door.place(cx), message);
        found.push(finding.about(door.key()));
    }
}

/// Plates in a front row that does not stand where their door wants it: a bay is inset or not, the door over it otherwise.
pub(super) fn inset_on_overlay_row(cx: &Context, found: &mut Vec<Finding>) {
    for door in cx.doors {
        let front = door.leaf.front;
        for (made, bay) in cx.bays() {
            if !door.plates.iter().any(|plate| plate.bay == made.key) {
                continue;
            }
            // Where a door stands inside already tells the recess of its bay.
            let behind = front
                .set_in
                .map_or(bay.recess, |set_in| front.thickness + set_in);
            let now = made.front_row.total();
            let wanted = cx.shop().setback_front + behind;
            let off = wanted - now;
            if off.abs() <= ROW_OFF {
                continue;
            }
            let (off, wrong) = if off > Length::ZERO {
                let off = off.show(cx.unit);
                (off, format!("forward, and it would stand {off} proud"))
            } else {
                ((-off).show(cx.unit), "back".into())
            };
            let message = format!(
                "the plates of {} are {off} too far {wrong}: in {} the front row is at {}, and belongs at {}",
                door.name(cx),
                cx.opening(made.key),
                now.show(cx.unit),
                wanted.show(cx.unit)
            );
            let place = door.place(cx);
            let finding = Finding::new(Rule::InsetOnOverlayRow, place, message);
            found.push(finding.about_both((Some(door.key()), Some(made.key))));
        }
    }
}

#[cfg(test)]
mod tests;
