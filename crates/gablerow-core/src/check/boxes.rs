//! Drawer boxes: that there is room for them, as deep, as wide and as high as they are, and what they carry.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::context::doubt;
use super::runners::{at, cure, each};
use super::{Context, Finding, Rule};
use crate::cards::Origin;
use crate::job::FrontKind;
use crate::layout::Item;
use crate::measure::Length;
use crate::parts::{BoxFit, Leaf, Over, box_widths};

/// How much of what a pair of runners carries a drawer may weigh, in percent; a house default.
pub(crate) const LOAD_MOST: f64 = 80.0;

/// Boxes that share their height with a rail at the back, with less depth before it than their runners need.
pub(super) fn box_behind_blocked(cx: &Context, found: &mut Vec<Finding>) {
    let rails = || {
        cx.layout
            .panels
            .iter()
            .filter(|it| it.item == Item::BackRail)
    };
    for fit in cx.boxes.iter().filter(|fit| fit.has_room()) {
        let set_back = Length::PITCH * i32::from(fit.runner.set_back);
        let behind = fit.bay.depth_behind_fronts(cx.shop()) - set_back;
        let need = fit.made.need.value;
        for rail in rails().filter(|rail| rail.z.overlap(fit.z()) > Length::ZERO) {
            let have = behind - (fit.bay.inner_depth.total() - rail.x.from);
            // What does not even fit without the rail is said already.
            if need <= have || need > behind {
                continue;
            }
            let message = format!(
                "{}{}: the back rail at {} leaves {} of depth, {} long needs {}, {} too little; {}",
                doubt(fit.made.need.origin.is_unproved()),
                cx.fitting(fit.runner.key),
                cx.span(rail.z.from, rail.z.to),
                have.show(cx.unit),
                fit.runner.length.show(cx.unit),
                need.show(cx.unit),
                (need - have).show(cx.unit),
                cure(cx, fit.card, have),
            );
            found.push(about(cx, fit, Rule::BoxBehindBlocked, message));
        }
    }
}

/// Drawers that weigh more than their runners shall carry, of those whose contents are known.
pub(super) fn runner_overloaded(cx: &Context, found: &mut Vec<Finding>) {
    for fit in cx.boxes.iter().filter(|fit| fit.has_room()) {
        let wish = cx.cabinet.opening.front(fit.front.key);
        let Some(grams) = wish.and_then(|front| front.load_grams) else {
            continue;
        };
        let leaf = Leaf::of(cx.job, cx.cabinet, cx.layout, fit.front);
        let front = leaf
            .mass_kg()
            .filter(|_| fit.front.kind == FrontKind::Drawer);
        let front = front.unwrap_or_default();
        let (contents, itself) = (f64::from(grams) / 1_000.0, fit.mass_kg() + front);
        let carries = fit.card.load.value;
        let share = (contents + itself) * 100.0 / f64::from(carries);
        if share <= LOAD_MOST {
            continue;
        }
        let message = format!(
            "{}{}: {contents:.1} kg in a drawer of {itself:.1} kg is {:.1}, {share:.0} % of the {carries} kg it carries; \
             {LOAD_MOST:.0} % is the most",
            doubt(fit.card.load.origin.is_unproved()),
            cx.fitting(fit.runner.key),
            contents + itself,
        );
        found.push(about(cx, fit, Rule::RunnerOverloaded, message));
    }
}

/// Box sides thicker than their runners take, and bays too narrow for a box.
pub(super) fn box_width(cx: &Context, found: &mut Vec<Finding>) {
    let Some(board) = cx.job.cards.board(cx.shop().box_board()) else {
        return;
    };
    let side = board.thickness;
    each(cx, |made, runner, card| {
        let said = |message| {
            let finding = Finding::new(Rule::BoxWidth, at(cx, made, runner), message);
            finding.about(runner.key)
        };
        let unproved = |origins: [Origin; 2]| doubt(origins.iter().any(|it| it.is_unproved()));
        if let Some(most) = card.side_most.filter(|most| side.value > most.value) {
            found.push(said(format!(
                "{}{}: sides of {} are {} thick, but it takes {} at most, {} too much; make boxes of a thinner board",
                unproved([most.origin, side.origin]),
                cx.fitting(runner.key),
                board.id,
                side.value.show(cx.unit),
                most.value.show(cx.unit),
                (side.value - most.value).show(cx.unit),
            )));
        }
        let [inside, outside] = box_widths(made, runner, card, side.value);
        if inside.total() <= Length::ZERO {
            found.push(said(format!(
                "{}{}: a bay of {} leaves its box {} over both sides and {} inside; a wider bay has room for one",
                unproved([card.deduct.origin, side.origin]),
                cx.fitting(runner.key),
                made.width.show(cx.unit),
                outside.total().show(cx.unit),
                inside.total().show(cx.unit),
            )));
        }
    });
}

/// Drawers without room for a box of one step of the shop, from its underside to what is above.
pub(super) fn top_box_blocked(cx: &Context, found: &mut Vec<Finding>) {
    let rules = &cx.shop().boxes;
    for fit in cx.boxes.iter().filter(|fit| fit.height <= Length::ZERO) {
        let (over, thing, clear) = over(cx, fit);
        let message = format!(
            "{}{}: its box stands at {} under {over} at {}, less {} clear {} is left; the lowest box is {}",
            doubt(fit.card.line.origin.is_unproved()),
            cx.fitting(fit.runner.key),
            fit.underside.total().show(cx.unit),
            fit.over_at.show(cx.unit),
            clear.show(cx.unit),
            fit.room.total().show(cx.unit),
            rules.step.show(cx.unit),
        );
        let finding = about(cx, fit, Rule::TopBoxBlocked, message);
        found.push(finding.about_both((Some(fit.runner.key), thing)));
    }
}

/// What is above a box in words, its key, and how far a box keeps from it.
fn over(cx: &Context, fit: &BoxFit) -> (String, Option<crate::job::Key>, Length) {
    let rules = &cx.shop().boxes;
    match fit.over {
        Over::Box(runner) => (
            format!("the {}", cx.drawer_box(runner)),
            Some(runner),
            rules.between,
        ),
        Over::Thing(_, Some(key)) => (cx.fitting(key), Some(key), rules.above),
        Over::Thing(item, None) => (format!("the {}", item.word()), None, rules.above),
        Over::Head(front) => (
            format!("the head of {}", cx.front(front)),
            Some(front),
            rules.above,
        ),
        Over::Ceiling => ("the ceiling".to_string(), None, rules.above),
    }
}

/// Boxes that stand lower over the floor of their bay than the shop keeps clear, and what the grid then wastes.
pub(super) fn bottom_box_low(cx: &Context, found: &mut Vec<Finding>) {
    let rules = &cx.shop().boxes;
    for fit in cx.boxes {
        let line = fit.card.line;
        let least = fit.bay.floor.total() + rules.below + line.value;
        let is = fit.underside.total() + line.value;
        if is >= least {
            continue;
        }
        let higher = (1..=cx.layout.last).find(|&hole| cx.layout.height(hole) >= least);
        let cure = higher.map_or_else(
            || "no hole is high enough".to_string(),
            |hole| {
                let wasted = (cx.layout.height(hole) - least).show(cx.unit);
                format!("hole {hole} does, and wastes {wasted}")
            },
        );
        let message = format!(
            "{}{}: with a line of {} and {} clear under its box it is {} too low at {}; {cure}",
            doubt(line.origin.is_unproved()),
            cx.fitting(fit.runner.key),
            line.value.show(cx.unit),
            rules.below.show(cx.unit),
            (least - is).show(cx.unit),
            is.show(cx.unit),
        );
        found.push(about(cx, fit, Rule::BottomBoxLow, message));
    }
}

/// Stretchers on edge over a drawer, where one laid flat would leave its box more height.
pub(super) fn stretcher_in_box(cx: &Context, found: &mut Vec<Finding>) {
    for fit in cx.boxes {
        let stretcher = cx.layout.panels.iter().find(|panel| {
            fit.over == Over::Thing(Item::Stretcher, None)
                && panel.item == Item::Stretcher
                && panel.z.from == fit.over_at
        });
        let Some(stretcher) = stretcher else { continue };
        let takes = stretcher.z.to - stretcher.z.from;
        let flat = stretcher.x.to - stretcher.x.from;
        if takes <= flat || !is_on_edge(cx) {
            continue;
        }
        let message = format!(
            "{}: the stretchers on edge take {} of height over its box, {} more than laid flat; turn them",
            cx.fitting(fit.runner.key),
            takes.show(cx.unit),
            (takes - flat).show(cx.unit),
        );
        found.push(about(cx, fit, Rule::StretcherInBox, message));
    }
}

fn is_on_edge(cx: &Context) -> bool {
    let kind = cx.cabinet.carcass.top.kind;
    matches!(kind, crate::job::TopKind::EdgeStretchers(_))
}

/// A finding about a box, at its runners.
fn about(cx: &Context, fit: &BoxFit, rule: Rule, message: String) -> Finding {
    let place = at(cx, fit.bay, fit.runner);
    Finding::new(rule, place, message).about(fit.runner.key)
}

#[cfg(test)]
mod tests;
