//! What to measure on a face once its last hole is bored: one hole too far shows at once.

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Holes, SetUp};
use crate::job::{FaceId, Key};
use crate::measure::Length;

/// A distance to measure, centre to centre or to an end.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Check {
    /// From where to where: `hole 3 to hole 20`.
    pub words: String,
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
    let longest = spans.max_by_key(|((first, last), _)| last - first);
    if let Some(((first, last), row)) = longest {
        if first == last {
            let index = i32::from(row.rest.index(first)) - 1;
            let want = row.rest.stop + Length::PITCH * index - row.rest.packer;
            let words = format!("hole {first} to the {}", row.rest.end.word());
            checks.push(Check { words, want });
        } else {
            let words = format!("hole {first} to hole {last}");
            let want = Length::PITCH * (i32::from(last) - i32::from(first));
            checks.push(Check { words, want });
        }
    }
    let (near, far) = (
        face.iter().map(|it| it.row).min(),
        face.iter().map(|it| it.row).max(),
    );
    let apart = near.zip(far).map(|(near, far)| far - near);
    if let Some(want) = apart.filter(|apart| *apart > Length::ZERO) {
        let words = "first row to last row".into();
        checks.push(Check { words, want });
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
