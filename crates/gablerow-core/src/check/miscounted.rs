//! Rows in which a hole was counted wrong, or that came out elsewhere, by what was measured at the bench.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::range;
use super::{Context, Finding, Rule};
use crate::bench::{Miscount, miscounts, missed};
use crate::counted::counted;
use crate::job::{Copy, Measured, Names, Span};
use crate::layout::Layout;
use crate::measure::Length;

/// Measured distances that miss what is wanted by whole pitches.
pub(super) fn miscounted_hole(cx: &Context, found: &mut Vec<Finding>) {
    each_measured(cx, |copy, layout, names| {
        for miscount in miscounts(cx.job, cx.cabinet.key, copy, layout) {
            let message = message(cx, copy, names, &miscount);
            let owner = |at: usize| miscount.runs.get(at).map(|(_, owner)| *owner);
            let finding = Finding::new(Rule::MiscountedHole, cx.here(), message);
            found.push(finding.about_both((owner(0), owner(1))));
        }
    });
}

/// Measured distances that are off by no whole holes.
pub(super) fn measured_off(cx: &Context, found: &mut Vec<Finding>) {
    each_measured(cx, |copy, layout, names| {
        for measured in missed(cx.job, cx.cabinet.key, copy, layout) {
            let off = measured.is - measured.want;
            let way = if off > Length::ZERO { "long" } else { "short" };
            let in_doubt = match measured.span {
                Span::Rows { .. } => "a setting or the edge in work was wrong",
                Span::Holes { .. } => "the rail or the panel moved",
                Span::ToEnd { .. } => "the panel was not on the stop, or on another",
            };
            let message = format!(
                "{}, {} too {way}: {in_doubt}? measure again before the next panel",
                distance(cx, copy, names, &measured),
                off.abs().show(cx.unit)
            );
            found.push(Finding::new(Rule::MeasuredOff, cx.here(), message).about(copy.key));
        }
    });
}

/// Every copy of a cabinet of which something was measured, as it comes to be laid out, with what its panels are called.
fn each_measured(cx: &Context, mut say: impl FnMut(&Copy, &Layout, &Names)) {
    for copy in &cx.cabinet.copies {
        let own = |it: &Measured| (it.cabinet, it.copy) == (cx.cabinet.key, copy.key);
        if cx.job.measured.iter().any(own) {
            let built = cx.cabinet.built_as(copy);
            say(
                copy,
                &Layout::of(&built, cx.job),
                &Names::of(&built.opening),
            );
        }
    }
}

/// `left side inside, copy 1: hole 3 to hole 20 in row 37.0 is 576.0, not 544.0`.
fn distance(cx: &Context, copy: &Copy, names: &Names, measured: &Measured) -> String {
    let name = names.face(measured.face);
    format!(
        "{} {}, copy {}: {} is {}, not {}",
        name.panel,
        name.word,
        copy.name,
        measured.span.show(cx.unit),
        measured.is.show(cx.unit),
        measured.want.show(cx.unit)
    )
}

/// The distance, `1 hole too far`, and what is in doubt.
fn message(cx: &Context, copy: &Copy, names: &Names, miscount: &Miscount) -> String {
    let measured = &miscount.measured;
    let runs: Vec<String> = miscount
        .runs
        .iter()
        .map(|(run, _)| range(run.0, run.1))
        .collect();
    let count = usize::try_from(miscount.holes.unsigned_abs()).unwrap_or(usize::MAX);
    let count = counted(count, "hole");
    let way = if miscount.holes > 0 { "far" } else { "near" };
    let from = match measured.span {
        Span::ToEnd { end, .. } => end.other().word(),
        Span::Holes { .. } | Span::Rows { .. } => "wrong end",
    };
    format!(
        "{}, {count} too {way}; {} miscounted, or counted from the {from}?",
        distance(cx, copy, names, measured),
        runs.join(" or "),
    )
}

#[cfg(test)]
mod tests;
