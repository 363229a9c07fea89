//! The list of sizes: lengths that are typed, and choices that are stepped through.

use gablerow_core::edit::{Edit, FreeEdit, FreeLine, New, PartLine};
use gablerow_core::layout::Layout;

use super::{Effect, ask, edit, free};
use crate::action::Action;
use crate::app::{App, Notice, Pane, Purpose};
use crate::size_line::{SizeLine, lines, own_value};

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Some(Pane::Sizes(at)) = app.pane else {
        return Vec::new();
    };
    let lines = lines(app);
    let last = lines.len().saturating_sub(1);
    let cabinet = app.spot.cabinet;
    match action {
        // The list is long, and both its ends are wanted often: it goes round.
        Action::Up => app.pane = Some(Pane::Sizes(at.checked_sub(1).unwrap_or(last))),
        Action::Down => app.pane = Some(Pane::Sizes(if at < last { at + 1 } else { 0 })),
        Action::NextGroup => app.pane = Some(Pane::Sizes(group_after(&lines, at))),
        Action::Leave => app.pane = None,
        Action::Enter => match lines.get(at) {
            Some(&SizeLine::Choice(choice)) => {
                return edit(app, &Edit::Choose { cabinet, choice });
            }
            Some(&SizeLine::Part(part, PartLine::Choice(choice))) => {
                let choose = Edit::PartChoose {
                    cabinet,
                    part,
                    choice,
                };
                return edit(app, &choose);
            }
            Some(&SizeLine::Free(thing, FreeLine::Choice(choice))) => {
                let change = FreeEdit::Choose(thing, choice);
                return free::edit_and_follow(app, &Edit::Free { cabinet, change });
            }
            Some(&line) => match own_value(app, line) {
                Some((thing, value)) if !value.is_typed() => {
                    let next = Edit::OwnValue {
                        cabinet,
                        thing,
                        value: value.name,
                        new: New::Next,
                    };
                    return edit(app, &next);
                }
                _ => begin(app),
            },
            None => {}
        },
        _ => {}
    }
    Vec::new()
}

/// The first line of the group after the one a line is in; after the last group the first.
fn group_after(lines: &[SizeLine], at: usize) -> usize {
    let whose = |line: &SizeLine| line.whose();
    let own = lines.get(at).map(whose);
    let next = lines
        .iter()
        .skip(at)
        .position(|line| Some(line.whose()) != own);
    next.map_or(0, |more| at + more)
}

/// Begins typing the length one is on, with its value to start from.
pub(super) fn begin(app: &mut App) {
    let Some(Pane::Sizes(at)) = app.pane else {
        return;
    };
    let job = &app.desk.job;
    let Some(cabinet) = job.cabinet(app.spot.cabinet) else {
        return;
    };
    let line = lines(app).get(at).copied();
    let own = line.and_then(|line| own_value(app, line));
    if let Some((thing, value)) = own.filter(|(_, value)| value.is_typed()) {
        let offered = value.offered(job.unit);
        return ask(app, Purpose::OwnValue(thing, value.name), &offered);
    }
    let (purpose, value, missing) = match line {
        Some(SizeLine::Measure(measure)) => (
            Purpose::Measure(measure),
            measure.read(job, cabinet),
            measure.missing(),
        ),
        Some(SizeLine::Part(part, PartLine::Measure(measure))) => (
            Purpose::PartMeasure(part, measure),
            measure.read(cabinet, &Layout::of(cabinet, job), part),
            "this part has no such length",
        ),
        Some(SizeLine::Free(thing, FreeLine::Measure(measure))) => (
            Purpose::FreeMeasure(thing, measure),
            measure.read(job, cabinet, thing),
            "it goes through; its way of boring is the line below",
        ),
        Some(SizeLine::Free(thing, FreeLine::Purpose)) => {
            let known = cabinet.free_thing(thing);
            let offered = known.map(|known| known.purpose.to_string());
            return ask(
                app,
                Purpose::FreePurpose(thing),
                &offered.unwrap_or_default(),
            );
        }
        _ => {
            app.notice = Some(Notice::refused(
                "Enter steps through the ways this can be made",
            ));
            return;
        }
    };
    match value {
        Some(value) => {
            let offered = value.exact(job.unit).to_string();
            ask(app, purpose, &offered);
        }
        None => app.notice = Some(Notice::refused(missing)),
    }
}

#[cfg(test)]
mod tests;
