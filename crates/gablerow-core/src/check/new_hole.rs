//! Where a hole that is not there yet would be stopped by those that are, by the same rules as the checks.

use alloc::vec::Vec;

use super::opposed::{depths_meet, fasteners_meet};
use super::strand::reach;
use super::strands;
use crate::grid::Run;
use crate::job::{FaceId, Key, Shop};
use crate::layout::{BoreSpec, Layout};
use crate::measure::Length;

/// The holes of a row on which one more hole of another owner would be stopped.
///
/// `x` is the row's setback from the carcass front. On its own face a hole is stopped on the same place and nearer than the
/// least spacing, but for neighbours in one row; on the face behind, where depths or fasteners meet, and nearer than the least
/// spacing to what one of the two is bored through beside. What belongs to `gone` stops nothing. The runs are in no order and may overlap; empty where there is no such face.
#[must_use]
pub fn stopped_holes(
    layout: &Layout,
    shop: &Shop,
    (face, x): (FaceId, Length),
    bore: &BoreSpec,
    gone: &[Key],
) -> Vec<Run> {
    let (limits, same_place) = (&shop.limits, Length::from_counts(1));
    let thickness = layout.upright(face.panel).map(|it| it.thickness);
    let mut stopped = Vec::new();
    for (there, behind) in [(face, false), (face.behind(), true)] {
        let Some(there) = layout.face(there) else {
            continue;
        };
        for strand in strands(there, layout).filter(|it| !gone.contains(&it.spec.owner)) {
            let in_one_row = strand.row.is_some() && strand.x == x;
            // Runs stand on the grid too, so that between their ends each height is a hole of theirs.
            let mut stop = |from, to| stopped.extend(layout.grid.within(from, to));
            let up = |limit| reach(strand.x - x, limit);
            if !behind {
                let limit = if in_one_row {
                    same_place
                } else {
                    limits.near.max(same_place)
                };
                if let Some(up) = up(limit) {
                    stop(strand.low - up, strand.high + up);
                }
                continue;
            }
            let thickness = thickness.unwrap_or_default();
            let meet = depths_meet(thickness, limits, bore, strand.spec)
                || fasteners_meet(thickness, limits, bore, strand.spec);
            if let Some(up) = up(bore.diameter.half() + strand.radius()).filter(|_| meet) {
                stop(strand.low - up, strand.high + up);
            }
            let through = bore.depth.is_none() || strand.spec.depth.is_none();
            match up(limits.near).filter(|_| through && !in_one_row) {
                // The same place is one hole for both.
                Some(up) if strand.x == x => {
                    stop(strand.low - up, strand.low - same_place);
                    stop(strand.low + same_place, strand.low + up);
                }
                Some(up) => stop(strand.low - up, strand.high + up),
                None => {}
            }
        }
    }
    stopped
}

#[cfg(test)]
mod tests;
