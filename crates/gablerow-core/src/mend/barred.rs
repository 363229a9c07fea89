//! Holes of a bay on which a shelf pin would be wrong: tried by a zone of its own, as everything is that is offered.

use alloc::vec::Vec;

use crate::check::{self, Finding, Level, Rule};
use crate::job::{Cabinet, Depth, FaceId, HolePlace, Job, Key, Zone};
use crate::layout::Layout;
use crate::measure::Length;

/// A hole on which a pin of the bay would be a stop or a warn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Barred {
    /// The wall.
    pub face: FaceId,
    /// From the carcass front to its row.
    pub row: Length,
    /// Its number.
    pub hole: i16,
    /// How much the finding would weigh.
    pub level: Level,
    /// The rule it would break.
    pub rule: Rule,
}

/// The holes on both walls of a bay on which a pin would be a stop or a warn, whether something is bored there already or not;
/// each with the heaviest of the rules that bar it, face by face, row by row, from the foot up.
///
/// One zone over the whole bay is tried, so that the cabinet is laid out and checked once, however high it is. Discs wider than
/// half the pitch may bar the holes beside: then the one that the checks would name is the one that is given.
#[must_use]
pub fn barred(job: &Job, cabinet: &Cabinet, layout: &Layout, bay: Key) -> Vec<Barred> {
    let Some(space) = layout.bays.iter().find(|it| it.key == bay) else {
        return Vec::new();
    };
    let within = |hole: &i16| space.spans(layout.height(*hole));
    let mut holes = (1..=layout.last).filter(within);
    let Some(first) = holes.next() else {
        return Vec::new();
    };
    let run = (first, holes.next_back().unwrap_or(first));
    let Some((layout, key, found)) = tried(job, cabinet, bay, run) else {
        return Vec::new();
    };
    let mut barred: Vec<Barred> = found
        .iter()
        .flat_map(|finding| places(&layout, key, finding))
        .collect();
    barred.sort();
    barred.dedup_by_key(|it| (it.face, it.row, it.hole));
    barred
}

/// Why a pin of the bay would be wrong on one hole of one wall, as the checks would say it: of the heaviest of the rules that
/// bar it. `None` when it would be clean, and when the bay has no open row there.
///
/// The row is given from the carcass front, as in [`Barred`].
#[must_use]
pub fn why_barred(
    job: &Job,
    cabinet: &Cabinet,
    bay: Key,
    (face, row, hole): (FaceId, Length, i16),
) -> Option<Finding> {
    let (layout, key, found) = tried(job, cabinet, bay, (hole, hole))?;
    // A zone of one hole: whatever is said of it on this row is said of this hole.
    let is_here = |it: &Barred| (it.face, it.row) == (face, row);
    let here = found
        .into_iter()
        .filter(|finding| places(&layout, key, finding).iter().any(is_here));
    here.min_by_key(|finding| (finding.level, finding.rule))
}

/// The cabinet with such a zone laid out, the key of the zone, and what is found against it.
fn tried(
    job: &Job,
    cabinet: &Cabinet,
    bay: Key,
    (first, last): (i16, i16),
) -> Option<(Layout, Key, Vec<Finding>)> {
    let mut with = cabinet.clone();
    let key = job.free_key(cabinet.key);
    let zone = Zone {
        key,
        first: HolePlace::foot(first),
        last: HolePlace::foot(last),
        depth: Depth::Shop,
    };
    with.opening.bay_mut(bay)?.zones.push(zone);
    let layout = Layout::of(&with, job);
    let mut found = check::row_by_row(job, &with, &layout);
    found.retain(|it| it.level != Level::Note && it.about.contains(&Some(key)));
    Some((layout, key, found))
}

/// The holes of the zone that a finding of one row names. What is said of no row is said of every row of the zone; what is said
/// of the row beside it, or of the face behind it, is said of the nearest one.
fn places(layout: &Layout, zone: Key, finding: &Finding) -> Vec<Barred> {
    let (Some(face), Some((first, last))) = (finding.place.face, finding.place.holes) else {
        return Vec::new();
    };
    let rows_of = |id: FaceId| {
        let rows = layout.face(id).into_iter().flat_map(|face| &face.rows);
        let own = rows.filter(|row| row.runs.iter().any(|run| run.spec.owner == zone));
        own.map(|row| row.x.total()).collect::<Vec<Length>>()
    };
    let (face, mut rows) = match rows_of(face) {
        none if none.is_empty() => (face.behind(), rows_of(face.behind())),
        rows => (face, rows),
    };
    if let Some(said) = finding.place.row {
        let nearest = rows.iter().copied().min_by_key(|row| (*row - said).abs());
        rows.retain(|row| Some(*row) == nearest);
    }
    let of_row = |row: Length| {
        (first..=last).map(move |hole| Barred {
            face,
            row,
            hole,
            level: finding.level,
            rule: finding.rule,
        })
    };
    rows.into_iter().flat_map(of_row).collect()
}

#[cfg(test)]
mod tests;
