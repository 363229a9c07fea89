//! Plates and runners go with the front they serve.

use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::String;

use super::{Refusal, change};
use crate::history::Step;
use crate::job::{Bay, Cabinet, Division, Job, Key};
use crate::layout::Layout;

/// A step that changes fronts by `edit`, which gives its label: what was set for a front that it carries no more goes in the
/// same step. What was set by hand, for no front, stays, and the label says so.
pub(super) fn change_fronts(
    job: &Job,
    key: Key,
    edit: impl FnOnce(&mut Cabinet) -> Result<String, Refusal>,
) -> Result<Step, Refusal> {
    change(job, key, |edited| {
        let before = carrying(edited, job);
        let label = edit(edited)?;
        edited
            .validate(&job.cards)
            .map_err(|fault| Refusal(fault.problem))?;
        let after = carrying(edited, job);
        let idle = before.difference(&after).copied().collect();
        Ok(format!("{label}{}", let_go(edited, &idle)))
    })
}

/// Every plate and runner that carries a front.
fn carrying(cabinet: &Cabinet, job: &Job) -> BTreeSet<Key> {
    let layout = Layout::of(cabinet, job);
    let fronts = layout.fronts.iter();
    let carriers = fronts.flat_map(|front| layout.carriers(cabinet, front));
    carriers.map(|carrier| carrier.key).collect()
}

/// Takes away what was set for a front and carries none any more; says what went and what stays.
fn let_go(cabinet: &mut Cabinet, idle: &BTreeSet<Key>) -> String {
    let [mut gone, mut left] = [Count::default(); 2];
    cabinet.opening.each(&mut |opening| {
        let Division::Bay(bay) = &opening.division else {
            return;
        };
        for plate in bay.plates.iter().filter(|it| idle.contains(&it.key)) {
            let count = plate.serves.map_or(&mut left, |_| &mut gone);
            count.plates += 1;
        }
        for runner in bay.runners.iter().filter(|it| idle.contains(&it.key)) {
            let count = runner.serves.map_or(&mut left, |_| &mut gone);
            count.runners += 1;
        }
    });
    cabinet.opening.each_bay_mut(&mut |bay: &mut Bay| {
        bay.plates
            .retain(|it| it.serves.is_none() || !idle.contains(&it.key));
        bay.runners
            .retain(|it| it.serves.is_none() || !idle.contains(&it.key));
    });
    let gone = gone.words().map(|words| format!("; {words} less"));
    let left = left
        .words()
        .map(|words| format!("; {words} set by hand left"));
    [gone, left].into_iter().flatten().collect()
}

/// How many of each.
#[derive(Clone, Copy, Default)]
struct Count {
    plates: usize,
    runners: usize,
}

impl Count {
    /// `2 hinge plates and 1 runner`; `None` for nothing.
    fn words(self) -> Option<String> {
        let some = |count: usize, word: &str| match count {
            0 => None,
            1 => Some(format!("1 {word}")),
            more => Some(format!("{more} {word}s")),
        };
        match (
            some(self.plates, "hinge plate"),
            some(self.runners, "runner"),
        ) {
            (Some(plates), Some(runners)) => Some(format!("{plates} and {runners}")),
            (plates, runners) => plates.or(runners),
        }
    }
}
