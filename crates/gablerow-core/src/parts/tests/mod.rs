//! What cabinets are made of.

mod cabinet_x;
mod hanging;
mod laws;
mod sheet;
mod storage;

use super::{BagKind, Parts, Piece};
use crate::job::{Job, Key};
use crate::layout::Layout;
use crate::measure::Length;
use crate::sum::Sum;

/// The parts of the first cabinet.
fn parts(job: &Job) -> Parts {
    assert_eq!(job.validate(), Ok(()));
    let cabinet = &job.cabinets[0];
    Parts::of(cabinet, &Layout::of(cabinet, job), job)
}

/// Length and width, finished.
fn finished(piece: &Piece) -> [Length; 2] {
    [piece.length.total(), piece.width.total()]
}

/// Length and width, as the saw makes them.
fn cut(piece: &Piece) -> [Length; 2] {
    [piece.cut_length.total(), piece.cut_width.total()]
}

/// The panel of this name.
#[track_caller]
fn panel<'a>(parts: &'a Parts, name: &str) -> &'a Piece {
    let mut panels = parts.panels.iter();
    let found = panels.find(|panel| panel.name.to_string() == name);
    &found
        .unwrap_or_else(|| panic!("no {name}: {:?}", parts.panels))
        .piece
}

fn totals(sums: &[Sum]) -> Vec<Length> {
    sums.iter().map(Sum::total).collect()
}

/// What is needed and what is taken of a kind.
fn bagged(parts: &Parts, kind: BagKind) -> (u32, u32) {
    let lines = parts.bag.iter().filter(|line| line.kind == kind);
    lines.fold((0, 0), |(count, take), line| {
        (count + line.count, take + line.take)
    })
}

/// A front of this key with other facts.
fn front_of(job: &mut Job, key: u32, change: impl Fn(&mut crate::job::Front)) {
    job.cabinets[0].opening.each_mut(&mut |opening| {
        opening
            .fronts
            .iter_mut()
            .filter(|front| front.key == Key(key))
            .for_each(&change);
    });
}
