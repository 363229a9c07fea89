//! What was bored before something changed: holes on record that the layout wants no longer, or elsewhere.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::bench::{Progress, progress_of_cabinet};
use crate::counted::counted;
use crate::job::{Bored, Copy, FaceId};
use crate::layout::{Layout, Row, RowName};
use crate::measure::Length;

/// Panels with holes that the layout has no more, and so a sheet in somebody's hands that is out of date.
pub(super) fn sheet_out_of_date(cx: &Context, found: &mut Vec<Finding>) {
    each_stale(cx, |copy, layout, panel| {
        let moved: Vec<&Bored> = moved_back(layout, panel).iter().map(|it| it.0).collect();
        let gone: Vec<&Bored> = panel
            .stale
            .iter()
            .filter(|it| !moved.contains(it))
            .collect();
        if gone.is_empty() {
            return;
        }
        let (what, name) = (holes(cx, &gone), cx.panel_of(copy, panel.panel));
        let message = format!(
            "{name}: {what} on record and wanted no longer; plug what is in the way, and bore by a new sheet"
        );
        found.push(Finding::new(Rule::SheetOutOfDate, cx.here(), message).about(copy.key));
    });
}

/// Back rows that were bored for another back, or another setback.
pub(super) fn back_type_changed(cx: &Context, found: &mut Vec<Finding>) {
    each_stale(cx, |copy, layout, panel| {
        let moved = moved_back(layout, panel);
        let Some((old, new)) = moved.first() else {
            return;
        };
        let message = format!(
            "{}: {} of the back row bored {} from the front edge, which is {} now; bore again, or keep the old back",
            cx.panel_of(copy, panel.panel),
            counted(moved.len(), "hole"),
            old.from_front.show(cx.unit),
            new.show(cx.unit)
        );
        found.push(Finding::new(Rule::BackTypeChanged, cx.here(), message).about(copy.key));
    });
}

/// Every panel of every copy with something on record that is wanted no longer, with what the copy comes to.
fn each_stale(cx: &Context, mut say: impl FnMut(&Copy, &Layout, &Progress)) {
    if !cx.job.bored.iter().any(|it| it.cabinet == cx.cabinet.key) {
        return;
    }
    let mut panels = progress_of_cabinet(cx.job, cx.cabinet);
    panels.retain(|it| !it.stale.is_empty());
    for copy in &cx.cabinet.copies {
        let mut of_copy = panels.iter().filter(|it| it.copy == copy.key).peekable();
        if of_copy.peek().is_some() {
            let layout = Layout::of(&cx.cabinet.built_as(copy), cx.job);
            of_copy.for_each(|it| say(copy, &layout, it));
        }
    }
}

/// The holes on record that are a back row of their face as it was before: one that is elsewhere now, all of it; each with where
/// that is, from the front edge.
fn moved_back<'a>(layout: &Layout, panel: &'a Progress) -> Vec<(&'a Bored, Length)> {
    let Some(upright) = layout.upright(panel.panel) else {
        return Vec::new();
    };
    let mut rows: BTreeMap<(FaceId, Length), Vec<&Bored>> = BTreeMap::new();
    // In front of the middle it was the front row's.
    let is_behind = |it: &&Bored| it.from_front * 2 > upright.depth();
    for bored in panel.stale.iter().filter(is_behind) {
        let row = (bored.face, bored.from_front);
        rows.entry(row).or_default().push(bored);
    }
    let mut moved = Vec::new();
    for ((face, from_front), bored) in rows {
        let number = |it: &&Bored| i16::try_from(it.hole?.get()).ok();
        let numbers: BTreeSet<i16> = bored.iter().filter_map(number).collect();
        let is_all_there = |row: &&Row| {
            let mut wanted = row.runs.iter().flat_map(|run| run.first..=run.last);
            wanted.all(|number| numbers.contains(&number))
        };
        let mut back = upright.face(face.toward).rows.iter();
        let back = back.find(|row| row.name == RowName::Back && is_all_there(row));
        let x = back.map(|row| row.x.total() - upright.front.total());
        if let Some(x) = x.filter(|x| *x != from_front) {
            moved.extend(bored.into_iter().map(|it| (it, x)));
        }
    }
    moved
}

/// `holes 12, 13 at 37.0`, or `1 hole off the grid`.
fn holes(cx: &Context, gone: &[&Bored]) -> String {
    let numbers: Vec<String> = gone
        .iter()
        .filter_map(|it| Some(it.hole?.to_string()))
        .collect();
    let at = gone.first().map_or(Length::ZERO, |it| it.from_front);
    let one_row = gone.iter().all(|it| it.from_front == at);
    match (numbers.len() == gone.len(), one_row, &numbers[..]) {
        (true, true, [one]) => format!("hole {one} {} from the front is", at.show(cx.unit)),
        (true, true, many) => format!(
            "holes {} {} from the front are",
            many.join(", "),
            at.show(cx.unit)
        ),
        _ => format!("{} are", counted(gone.len(), "hole")),
    }
}

#[cfg(test)]
mod tests;
