//! What cabinets come to: panels, rows, holes, keep-outs.

mod carcass;
mod faces;
mod fronts;
mod keep_outs;
mod laws;
mod mirror;
mod setbacks;
mod sheet;

use super::{Face, Layout, OffGrid};
use crate::job::{FaceId, HolePlace};
use crate::measure::Length;

#[track_caller]
fn face(layout: &Layout, id: FaceId) -> &Face {
    layout.face(id).unwrap()
}

/// The rows of a face as a bench sheet has them, setbacks from the panel's front edge: `front 37: 3-4 11-16`.
#[track_caller]
fn rows(layout: &Layout, id: FaceId) -> Vec<String> {
    let front = layout.upright(id.panel).unwrap().front.total();
    let face = face(layout, id);
    let holes = face.holes(layout);
    let row = |row: &super::Row| {
        let x = row.x.total();
        let numbers = holes
            .iter()
            .filter(|hole| hole.x == x)
            .filter_map(|hole| hole.number);
        let setback = (x - front).exact_mm().to_string();
        format!("{} {setback}: {}", row.name.word(), runs(numbers))
    };
    face.rows.iter().map(row).collect()
}

/// Ascending numbers with neighbours drawn together: `3-4 11-16 19`.
fn runs(numbers: impl Iterator<Item = i16>) -> String {
    let mut runs: Vec<(i16, i16)> = Vec::new();
    for number in numbers {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == number => *last = number,
            _ => runs.push((number, number)),
        }
    }
    let written = runs.iter().map(|&(first, last)| match last - first {
        0 => first.to_string(),
        _ => format!("{first}-{last}"),
    });
    written.collect::<Vec<_>>().join(" ")
}

/// Places a face was asked for and the grid does not have.
fn missing(face: &Face) -> Vec<(HolePlace, i16)> {
    let place = |off: &OffGrid| (off.place, off.number);
    face.off_grid.iter().map(place).collect()
}

/// Distance between two rows of a face, by their setbacks in order.
fn between(face: &Face, a: usize, b: usize) -> Length {
    face.rows[b].x.total() - face.rows[a].x.total()
}
