//! Runners and the depth they have.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::doubt;
use super::{Context, Finding, Place, Rule};
use crate::cards::Runner as Card;
use crate::job::Runner;
use crate::layout::{BayLayout, Face, Run, Use};
use crate::measure::Length;

/// Runners that need more depth than there is behind the fronts.
pub(super) fn runner_too_long(cx: &Context, found: &mut Vec<Finding>) {
    each(cx, |made, runner, card| {
        let Some(length) = card.length(runner.length) else {
            return;
        };
        let set_back = Length::PITCH * i32::from(runner.set_back);
        let have = made.depth_behind_fronts(cx.shop()) - set_back;
        let need = length.need.value;
        if need <= have {
            return;
        }
        let message = format!(
            "{}{}: {} long needs {} and has {}, {} too little; {}",
            doubt(length.need.origin.is_unproved()),
            cx.fitting(runner.key),
            runner.length.show(cx.unit),
            need.show(cx.unit),
            have.show(cx.unit),
            (need - have).show(cx.unit),
            cure(cx, card, have)
        );
        let finding = Finding::new(Rule::RunnerTooLong, at(cx, made, runner), message);
        found.push(finding.about(runner.key));
    });
}

/// The longest of the card's lengths that fits in a depth.
pub(super) fn cure(cx: &Context, card: &Card, have: Length) -> String {
    let longest = card.longest_within(have);
    let fits = longest.filter(|length| length.need.value <= have);
    fits.map_or_else(
        || "no length of the card fits".into(),
        |length| format!("{} fits", length.name.show(cx.unit)),
    )
}

/// Runners whose card does not stand them back from the front edge.
pub(super) fn runner_row_flush(cx: &Context, found: &mut Vec<Finding>) {
    each(cx, |made, runner, card| {
        if card.stand_back.value > Length::ZERO {
            return;
        }
        let own = card.first_hole.value;
        let message = format!(
            "{}{}: its row is {} + stand-back {} = {}, the front will not pull up tight; {}",
            doubt(card.stand_back.origin.is_unproved()),
            cx.fitting(runner.key),
            own.show(cx.unit),
            card.stand_back.value.show(cx.unit),
            own.show(cx.unit),
            "give the card its stand-back"
        );
        let finding = Finding::new(Rule::RunnerRowFlush, at(cx, made, runner), message);
        found.push(finding.about(runner.key));
    });
}

/// Free rows where runners have their holes, or should have: on the line of their screws or on the front row, over holes of
/// runners and more than those.
pub(super) fn runner_rows_whole(cx: &Context, found: &mut Vec<Finding>) {
    for (_, face) in cx.faces() {
        let runners: Vec<i16> = runners_at(cx, face);
        let front_rows: Vec<Length> = cx
            .layout
            .bays_at(face.id)
            .map(|(bay, _)| bay.front_row.total())
            .collect();
        for row in &face.rows {
            let is_runner = |run: &&Run| run.spec.use_ == Use::Runner;
            let screws: Vec<i16> = row
                .runs
                .iter()
                .filter(is_runner)
                .map(|it| it.first)
                .collect();
            if screws.is_empty() && !front_rows.contains(&row.x.total()) {
                continue;
            }
            for run in row.runs.iter().filter(|run| run.spec.use_ == Use::Free) {
                let within = |hole: &&i16| (run.first..=run.last).contains(*hole);
                let bored = usize::try_from(run.last - run.first + 1).unwrap_or_default();
                let needed = screws.iter().filter(within).count();
                if !runners.iter().any(|hole| within(&hole)) || bored <= needed {
                    continue;
                }
                let message = format!(
                    "{}: {bored} holes where runners need {needed}; {} fewer to bore on this face without the row",
                    cx.owner(&run.spec),
                    bored - needed,
                );
                let place = Place {
                    row: Some(row.x.total()),
                    ..cx.here().on(face.id).holes((run.first, run.last))
                };
                let finding = Finding::new(Rule::RunnerRowsWhole, place, message);
                found.push(finding.about(run.spec.owner));
            }
        }
    }
}

/// The hole numbers of the runners on a face, each once.
fn runners_at(cx: &Context, face: &Face) -> Vec<i16> {
    let mut holes = Vec::new();
    for (made, _) in cx.layout.bays_at(face.id) {
        let bay = cx.cabinet.opening.bay(made.key);
        let runners = bay.map_or(&[][..], |bay| &bay.runners);
        holes.extend(runners.iter().map(|it| it.hole.number(cx.layout.last)));
    }
    holes.sort_unstable();
    holes.dedup();
    holes
}

/// Every runner that has a card, in its bay.
pub(super) fn each(cx: &Context, mut visit: impl FnMut(&BayLayout, &Runner, &Card)) {
    for (made, bay) in cx.bays() {
        for runner in &bay.runners {
            if let Some(card) = cx.job.cards.runner(&runner.card) {
                visit(made, runner, card);
            }
        }
    }
}

/// On the left wall, where a person looks first; the right one is its mirror image.
pub(super) fn at(cx: &Context, made: &BayLayout, runner: &Runner) -> Place {
    cx.at_hole(made.key, runner.hole.number(cx.layout.last))
}

#[cfg(test)]
mod tests;
