//! Holes that were counted wrong, once the layout has them where they are: then the record does not any more.

use alloc::vec::Vec;

use super::left::{Done, taken_back};
use super::miscount::{Miscount, miscounts, runs};
use crate::grid::HoleNumber;
use crate::job::{Bored, FaceId, Job, Key};
use crate::layout::Layout;
use crate::measure::Length;

/// A run of holes that was bored so many holes farther up than the record has it; farther down when negative.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Moved {
    face: FaceId,
    row: Length,
    run: (i16, i16),
    by: i32,
}

impl Moved {
    fn has(&self, bored: &Bored) -> bool {
        let number = bored.hole.and_then(|hole| i16::try_from(hole.get()).ok());
        let in_run = number.is_some_and(|it| (self.run.0..=self.run.1).contains(&it));
        in_run && (bored.face, bored.from_front) == (self.face, self.row)
    }

    /// The hole where it is.
    fn found(&self, bored: Bored) -> Option<Bored> {
        let number = i64::from(bored.hole?.get()) + i64::from(self.by);
        Some(Bored {
            hole: Some(HoleNumber::new(number).ok()?),
            from_foot: bored.from_foot + Length::PITCH * self.by,
            ..bored
        })
    }
}

/// What goes into the record when a change of a cabinet has moved fittings to where their holes were bored by a miscount: the holes
/// are taken back where they were wanted, and are bored where they were found.
#[must_use]
pub fn recounted(before: &Job, after: &Job, cabinet: Key) -> Vec<Bored> {
    let (Some(was), Some(is)) = (before.cabinet(cabinet), after.cabinet(cabinet)) else {
        return Vec::new();
    };
    let (mut wanted, mut found) = (Vec::new(), Vec::new());
    for copy in &was.copies {
        let [planned, now] =
            [(was, before), (is, after)].map(|(it, job)| Layout::of(&it.built_as(copy), job));
        let mut moves = Vec::new();
        for miscount in miscounts(before, cabinet, copy, &planned) {
            for it in moves_of(&miscount, &now) {
                // Two distances may have one run at an end.
                if !moves.contains(&it) {
                    moves.push(it);
                }
            }
        }
        let record = Done::of(&before.bored, cabinet, copy.key);
        for moved in moves {
            let of_run: Vec<Bored> = record.holes().filter(|it| moved.has(it)).copied().collect();
            // Of a run that was found elsewhere before, and wanted back since, the record has no such holes, or not all.
            if of_run.len() == usize::try_from(moved.run.1 - moved.run.0 + 1).unwrap_or(0) {
                found.extend(of_run.iter().filter_map(|it| moved.found(*it)));
                wanted.extend(of_run.into_iter().map(taken_back));
            }
        }
    }
    // First all that is taken back: a hole of the old run may be one of the new.
    wanted.append(&mut found);
    wanted
}

/// The runs in doubt that a layout has where they were bored.
fn moves_of(miscount: &Miscount, now: &Layout) -> Vec<Moved> {
    let face = miscount.measured.face;
    let moved = |(owner, by): (Key, i32)| {
        let row = miscount.measured.span.rows().next()?;
        let (run, _) = *miscount.runs.iter().find(|(_, it)| *it == owner)?;
        let shift = i16::try_from(by).ok()?;
        let there = ((run.0 + shift, run.1 + shift), owner);
        let runs = runs(row, now.face(face)?, now.upright(face.panel)?);
        runs.contains(&there)
            .then_some(Moved { face, row, run, by })
    };
    miscount.as_bored().into_iter().filter_map(moved).collect()
}
