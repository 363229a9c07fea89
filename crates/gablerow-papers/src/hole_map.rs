//! Who owns which holes, and where they are from the foot of their panel: a line for each face.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::layout::Use;
use gablerow_core::measure::{Length, Unit};

use crate::HoleRecord;
use crate::bench_records::of_cabinet;

/// `G2 left side inside: 3-4 plate 80.0-112.0, 11-16 pin 336.0-496.0`; holes off the grid are not in it.
pub(crate) fn hole_map(holes: &[HoleRecord<'_>], unit: Unit) -> Vec<String> {
    let face = |it: &HoleRecord<'_>| (it.cabinet.clone(), it.copy.clone(), it.face);
    let mut lines = Vec::new();
    for on_face in holes.chunk_by(|a, b| face(a) == face(b)) {
        let Some(first) = on_face.first() else {
            continue;
        };
        let mut places: Vec<(i16, Length, Vec<Use>)> = Vec::new();
        for it in on_face {
            let Some(number) = it.hole.number else {
                continue;
            };
            let uses = it.hole.users.iter().map(|(use_, _)| *use_);
            match places.iter_mut().find(|place| place.0 == number) {
                Some(place) => place.2.extend(uses),
                None => places.push((number, it.from_foot, uses.collect())),
            }
        }
        places.sort_by_key(|place| place.0);
        for (.., uses) in &mut places {
            uses.sort();
            uses.dedup();
        }
        let runs = places.chunk_by(|a, b| a.0 + 1 == b.0 && a.2 == b.2);
        let runs: Vec<String> = runs.map(|run| place_words(run, unit)).collect();
        if !runs.is_empty() {
            let copy = first.is_one_of_many.then_some(first.copy.as_str());
            let name = format!("{} {}", first.name.panel, first.name.word);
            let face = of_cabinet(first.cabinet.as_str(), copy, &name);
            lines.push(format!("{face}: {}", runs.join(", ")));
        }
    }
    lines
}

/// `3-4 plate 80.0-112.0`.
fn place_words(run: &[(i16, Length, Vec<Use>)], unit: Unit) -> String {
    match run {
        [] => String::new(),
        [(number, from, uses)] => format!("{number} {} {}", use_words(uses), from.show(unit)),
        [(first, from, uses), .., (last, to, _)] => {
            let (from, to) = (from.show(unit), to.show(unit));
            format!("{first}-{last} {} {from}-{to}", use_words(uses))
        }
    }
}

/// What a hole is for, each use once: `pin`, `plate and runner`.
fn use_words(uses: &[Use]) -> String {
    let words: Vec<&str> = uses.iter().map(|it| it.word()).collect();
    words.join(" and ")
}
