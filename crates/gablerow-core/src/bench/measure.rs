//! What to measure on a face once its last hole is bored: one hole too far shows at once.

use alloc::collections::BTreeMap;
use alloc::vec::Vec;

use super::{Holes, SetUp};
use crate::grid::HoleNumber;
use crate::job::{FaceId, Key, Span};
use crate::measure::Length;

/// A distance to measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Check {
    /// From where to where.
    pub span: Span,
    /// What it shall be.
    pub want: Length,
}

/// Puts the distances of each face with its last set-up.
pub(super) fn add(set_ups: &mut [SetUp]) {
    let mut faces: BTreeMap<(Key, Key, FaceId), Vec<usize>> = BTreeMap::new();
    for (at, it) in set_ups.iter().enumerate() {
        faces
            .entry((it.cabinet, it.copy, it.face))
            .or_default()
            .push(at);
    }
    for places in faces.into_values() {
        let of_face: Vec<&SetUp> = places.iter().map(|&at| &set_ups[at]).collect();
        let checks = checks(&of_face);
        if let Some(last) = places.last() {
            set_ups[*last].checks = checks;
        }
    }
}

fn checks(face: &[&SetUp]) -> Vec<Check> {
    let mut checks = Vec::new();
    // The longest run of numbers in one row.
    let spans = face.iter().filter_map(|it| Some((ends(&it.holes)?, *it)));
    let longest = spans.max_by_key(|((first, last), _)| *last - *first);
    if let Some(((lowest, highest), it)) = longest
        && let (Ok(first), Ok(last)) = (HoleNumber::new(lowest), HoleNumber::new(highest))
    {
        let row = it.row;
        checks.push(if first == last {
            let (hole, end) = (first, it.rest.end);
            let index = i32::from(it.rest.index(lowest)) - 1;
            Check {
                span: Span::ToEnd { row, hole, end },
                want: it.rest.stop + Length::PITCH * index - it.rest.packer,
            }
        } else {
            Check {
                span: Span::Holes { row, first, last },
                want: Length::PITCH * last.above(first),
            }
        });
    }
    let (near, far) = (
        face.iter().map(|it| it.row).min(),
        face.iter().map(|it| it.row).max(),
    );
    if let Some((first, last)) = near.zip(far).filter(|(near, far)| near < far) {
        checks.push(Check {
            span: Span::Rows { first, last },
            want: last - first,
        });
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
