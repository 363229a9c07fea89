//! What to measure on a face once its last hole is bored: one hole too far shows at once.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::vec::Vec;
use core::cmp::Reverse;

use super::{Holes, SetUp};
use crate::grid::HoleNumber;
use crate::job::{End, FaceId, Key, Span};
use crate::measure::Length;

/// A distance to measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Check {
    /// From where to where.
    pub span: Span,
    /// What it shall be.
    pub want: Length,
}

/// What to measure on each face of each copy.
pub(super) type Faces = BTreeMap<(Key, Key, FaceId), Vec<Check>>;

/// The distances of every face, from all of its set-ups.
pub(super) fn checks_of_faces(set_ups: &[SetUp]) -> Faces {
    let mut faces: BTreeMap<(Key, Key, FaceId), Vec<&SetUp>> = BTreeMap::new();
    for it in set_ups {
        faces.entry(face_of(it)).or_default().push(it);
    }
    let checks = |(face, of_face): (_, Vec<&SetUp>)| (face, checks(&of_face));
    faces.into_iter().map(checks).collect()
}

/// Puts the distances of each face with its last set-up.
pub(super) fn add(set_ups: &mut [SetUp], mut faces: Faces) {
    for it in set_ups.iter_mut().rev() {
        it.checks = faces.remove(&face_of(it)).unwrap_or_default();
    }
}

fn face_of(it: &SetUp) -> (Key, Key, FaceId) {
    (it.cabinet, it.copy, it.face)
}

fn checks(face: &[&SetUp]) -> Vec<Check> {
    let mut checks = Vec::new();
    // The longest run of numbers in one row; of several the one nearest the front, whatever the order of work.
    let spans = face.iter().filter_map(|it| Some((ends(&it.holes)?, *it)));
    let longest = spans.min_by_key(|((first, last), it)| {
        let longest_first = Reverse(*last - *first);
        (longest_first, it.row, it.tool, *first, it.rest.end)
    });
    if let Some(((lowest, highest), it)) = longest
        && let (Ok(first), Ok(last)) = (HoleNumber::new(lowest), HoleNumber::new(highest))
    {
        let (row, end) = (it.row, it.rest.end);
        if first != last {
            checks.push(Check {
                span: Span::Holes { row, first, last },
                want: Length::PITCH * last.above(first),
            });
        }
        // A row that begins one hole too far is right in itself.
        let hole = match end {
            End::Foot => first,
            End::Head => last,
        };
        let number = if hole == first { lowest } else { highest };
        let before = i32::from(it.rest.index(number)) - 1;
        checks.push(Check {
            span: Span::ToEnd { row, hole, end },
            want: it.rest.stop + Length::PITCH * before - it.rest.packer,
        });
    }
    let rows: BTreeSet<Length> = face.iter().map(|it| it.row).collect();
    let mut rows = rows.into_iter();
    if let Some(first) = rows.next() {
        checks.extend(rows.map(|last| Check {
            span: Span::Rows { first, last },
            want: last - first,
        }));
    }
    checks
}

/// The lowest and the highest number.
fn ends(holes: &Holes) -> Option<(i16, i16)> {
    match holes {
        Holes::Runs(runs) => Some((runs.first()?.0, runs.last()?.1)),
        Holes::ByTape(_) => None,
    }
}
