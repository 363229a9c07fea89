//! Runners and the depth they have.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::doubt;
use super::{Context, Finding, Place, Rule};
use crate::cards::{Runner as Card, RunnerLength};
use crate::job::Runner;
use crate::layout::BayLayout;
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
        let fits = card
            .longest_within(have)
            .filter(|length| length.need.value <= have);
        let message = format!(
            "{}{}: {} long needs {} and has {}, {} too little; {}",
            doubt(length.need.origin.is_unproved()),
            cx.fitting(runner.key),
            runner.length.show(cx.unit),
            need.show(cx.unit),
            have.show(cx.unit),
            (need - have).show(cx.unit),
            cure(cx, fits)
        );
        let finding = Finding::new(Rule::RunnerTooLong, at(cx, made, runner), message);
        found.push(finding.about(runner.key));
    });
}

fn cure(cx: &Context, fits: Option<&RunnerLength>) -> String {
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

fn each(cx: &Context, mut visit: impl FnMut(&BayLayout, &Runner, &Card)) {
    for (made, bay) in cx.bays() {
        for runner in &bay.runners {
            if let Some(card) = cx.job.cards.runner(&runner.card) {
                visit(made, runner, card);
            }
        }
    }
}

fn at(cx: &Context, made: &BayLayout, runner: &Runner) -> Place {
    cx.at_hole(made.key, runner.hole.number(cx.layout.last))
}

#[cfg(test)]
mod tests;
