//! How far drawer boxes stand above the feet of their fronts: after a front has moved, its runners may no longer suit it.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::carried::{CURE, place, stands};
use super::context::doubt;
use super::{Context, Finding, Rule};
use crate::cards::Runner as Card;
use crate::job::{BoxRules, FrontHeight, FrontKind};
use crate::layout::{Carrier, FrontLayout, Layout};
use crate::measure::Length;

/// The most distances that one sentence lists; a house default.
const LISTED: usize = 4;

/// A drawer with a front of its own, on the runners that carry its box.
#[derive(Clone, Copy)]
struct Drawer<'a> {
    front: &'a FrontLayout,
    carrier: Carrier,
    card: &'a Card,
    /// From the foot of the front up to the underside of the box.
    rise: Length,
}

impl Drawer<'_> {
    /// Whether its runners stand in the hole nearest to the foot of its front, as if the box hung on its own underside.
    fn is_at_foot(&self, layout: &Layout) -> bool {
        let away = layout.height(self.carrier.hole) - self.front.foot;
        away.abs() * 2 <= Length::PITCH
    }
}

/// Every drawer with a front that runs on something.
fn drawers<'a>(cx: &'a Context) -> impl Iterator<Item = Drawer<'a>> {
    let fronts = cx.layout.fronts.iter();
    let drawers = fronts.filter(|it| it.kind == FrontKind::Drawer);
    drawers.filter_map(|front| {
        let carrier = cx.layout.box_carrier(cx.cabinet, front)?;
        let bay = cx.cabinet.opening.bay(carrier.bay)?;
        let runner = bay.runners.iter().find(|it| it.key == carrier.key)?;
        let card = cx.job.cards.runner(&runner.card)?;
        Some(Drawer {
            front,
            carrier,
            card,
            rise: cx.layout.height(carrier.hole) - card.line.value - front.foot,
        })
    })
}

/// The least and the most a box stands above the foot of its front.
fn meant(rules: &BoxRules) -> (Length, Length) {
    (rules.rise_least, rules.rise_most.max(rules.rise_least))
}

/// The drawers whose box stands as the shop does not have it, those whose line was left out or the others.
fn off<'a>(cx: &'a Context, line_left_out: bool) -> impl Iterator<Item = Drawer<'a>> {
    let (least, most) = meant(&cx.shop().boxes);
    drawers(cx).filter(move |drawer| {
        !(least..=most).contains(&drawer.rise) && drawer.is_at_foot(cx.layout) == line_left_out
    })
}

/// Runners whose hole was taken at the lower edge of the front, as if their screw line were the underside of the box.
pub(super) fn runner_line_ignored(cx: &Context, found: &mut Vec<Finding>) {
    let (least, most) = meant(&cx.shop().boxes);
    for drawer in off(cx, true) {
        let Drawer {
            front,
            carrier,
            card,
            rise,
        } = drawer;
        let message = format!(
            "{}{}: taken at the foot of {} without its line of {}; its box stands {} that, {} above is meant; {}",
            doubt(card.line.origin.is_unproved()),
            cx.fitting(carrier.key),
            cx.front(front.key),
            card.line.value.show(cx.unit),
            stands(cx, rise, ["above", "below"]),
            cx.span(least, most),
            suits(cx, &drawer),
        );
        let finding = Finding::new(Rule::RunnerLineIgnored, place(cx, &carrier), message);
        found.push(finding.about(carrier.key));
    }
}

/// The hole that brings the box nearest to where the shop wants it, clear of the floor.
fn suits(cx: &Context, drawer: &Drawer) -> String {
    let rules = &cx.shop().boxes;
    let (least, most) = meant(rules);
    let bay = cx.layout.bays.iter();
    let floor = bay
        .filter(|bay| bay.key == drawer.carrier.bay)
        .map(|bay| bay.floor.total())
        .max();
    let away = |hole: i16| {
        let underside = cx.layout.height(hole) - drawer.card.line.value;
        let rise = underside - drawer.front.foot;
        let clear = floor.is_none_or(|floor| underside - floor >= rules.below);
        let legal = clear && (least..=most).contains(&rise);
        legal.then_some(((rise - rules.rise).abs(), hole))
    };
    let nearest = (1..=cx.layout.last).filter_map(away).min();
    nearest.map_or_else(
        || "no hole suits it".into(),
        |(_, hole)| format!("hole {hole} suits it"),
    )
}

/// Drawer boxes that stand lower or higher behind their front than the shop has them.
pub(super) fn box_off_front(cx: &Context, found: &mut Vec<Finding>) {
    let (least, most) = meant(&cx.shop().boxes);
    for drawer in off(cx, false) {
        let carrier = drawer.carrier;
        let message = format!(
            "{}: its box stands {} the foot of {}, but {} above it is what the shop has; {CURE}",
            cx.fitting(carrier.key),
            stands(cx, drawer.rise, ["above", "below"]),
            cx.front(drawer.front.key),
            cx.span(least, most),
        );
        let finding = Finding::new(Rule::BoxOffFront, place(cx, &carrier), message);
        found.push(finding.about(carrier.key));
    }
}

/// Stacks of drawers whose boxes stand differently behind their fronts: each distance is another drilling of the fronts.
pub(super) fn fronts_off_grid(cx: &Context, found: &mut Vec<Finding>) {
    for bay in &cx.layout.bays {
        let own = || drawers(cx).filter(|drawer| drawer.front.opening == bay.key);
        let mut rises: Vec<Length> = own().map(|drawer| drawer.rise).collect();
        rises.sort_unstable();
        rises.dedup();
        if rises.len() < 2 {
            continue;
        }
        let cure = if own().all(|drawer| is_of_modules(cx, drawer.front)) {
            "the lowest front has what whole modules leave over"
        } else {
            "fronts of whole modules need one"
        };
        let message = format!(
            "the boxes of {} stand {} above the feet of their fronts: {} drillings; {cure}",
            cx.opening(bay.key),
            listed(cx, &rises),
            rises.len(),
        );
        let finding = Finding::new(Rule::FrontsOffGrid, cx.here(), message);
        found.push(finding.about(bay.key));
    }
}

fn is_of_modules(cx: &Context, front: &FrontLayout) -> bool {
    let wish = cx.cabinet.opening.front(front.key);
    wish.is_some_and(|wish| matches!(wish.height, FrontHeight::Modules(_)))
}

/// `23.8, 34.5 and 45.2`; of many the first ones.
fn listed(cx: &Context, lengths: &[Length]) -> String {
    let words = |length: &Length| format!("{}", length.show(cx.unit));
    let (last, before) = match lengths {
        [before @ .., last] if lengths.len() <= LISTED => (words(last), before),
        _ => (
            format!("{} more", lengths.len() - LISTED),
            &lengths[..LISTED.min(lengths.len())],
        ),
    };
    let before: Vec<String> = before.iter().map(words).collect();
    format!("{} and {last}", before.join(", "))
}

#[cfg(test)]
mod tests;
