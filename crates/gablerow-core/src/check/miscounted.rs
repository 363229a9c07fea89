//! Rows in which a hole was counted wrong, by what was measured at the bench.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::range;
use super::{Context, Finding, Rule};
use crate::bench::{Miscount, miscounts};
use crate::counted::counted;
use crate::job::{Copy, Names, Span};
use crate::layout::Layout;

/// Measured distances that miss what is wanted by whole pitches.
pub(super) fn miscounted_hole(cx: &Context, found: &mut Vec<Finding>) {
    let own = |it: &crate::job::Measured| it.cabinet == cx.cabinet.key;
    if !cx.job.measured.iter().any(own) {
        return;
    }
    for copy in &cx.cabinet.copies {
        let built = cx.cabinet.built_as(copy);
        let layout = Layout::of(&built, cx.job);
        let names = Names::of(&built.opening);
        for miscount in miscounts(cx.job, cx.cabinet.key, copy, &layout) {
            let message = message(cx, copy, &names, &miscount);
            let owner = |at: usize| miscount.runs.get(at).map(|(_, owner)| *owner);
            let finding = Finding::new(Rule::MiscountedHole, cx.here(), message);
            found.push(finding.about_both((owner(0), owner(1))));
        }
    }
}

/// `left side inside, copy 1: hole 3 to hole 20 in row 37.0 is 576.0, not 544.0, 1 hole too far`, and what is in doubt.
fn message(cx: &Context, copy: &Copy, names: &Names, miscount: &Miscount) -> String {
    let measured = &miscount.measured;
    let name = names.face(measured.face);
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
        "{} {}, copy {}: {} is {}, not {}, {count} too {way}; {} miscounted, or counted from the {from}?",
        name.panel,
        name.word,
        copy.name,
        measured.span.show(cx.unit),
        measured.is.show(cx.unit),
        measured.want.show(cx.unit),
        runs.join(" or "),
    )
}

#[cfg(test)]
mod tests;
