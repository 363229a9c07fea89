//! The holes of a face, expanded and merged: one entry for each place a bit goes in.

use alloc::vec::Vec;

use super::{BoreSpec, Face, Layout, RowName, Use};
use crate::job::Key;
use crate::measure::Length;

/// One hole as it is bored.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hole {
    /// Its row; `None` for a single bore that meets no row.
    pub row: Option<RowName>,
    /// From the carcass front to its centre.
    pub x: Length,
    /// From the carcass underside to its centre.
    pub z: Length,
    /// Its number on the cabinet's grid; `None` off the grid.
    pub number: Option<i16>,
    /// The widest diameter asked for.
    pub diameter: Length,
    /// The deepest depth asked for; `None` is through.
    pub depth: Option<Length>,
    /// What it is for and whose it is, in the order they were asked for.
    pub users: Vec<(Use, Key)>,
}

impl Hole {
    fn of(
        row: Option<RowName>,
        x: Length,
        z: Length,
        number: Option<i16>,
        spec: &BoreSpec,
    ) -> Self {
        let users = [(spec.use_, spec.owner)].into();
        Self {
            row,
            x,
            z,
            number,
            diameter: spec.diameter,
            depth: spec.depth,
            users,
        }
    }

    /// What it is for, when it has one use only.
    #[must_use]
    pub fn only_use(&self) -> Option<Use> {
        let (first, _) = *self.users.first()?;
        self.users
            .iter()
            .all(|&(use_, _)| use_ == first)
            .then_some(first)
    }

    fn share(&mut self, spec: &BoreSpec) {
        self.diameter = self.diameter.max(spec.diameter);
        self.depth = match (self.depth, spec.depth) {
            (Some(a), Some(b)) => Some(a.max(b)),
            _ => None,
        };
        if !self.users.contains(&(spec.use_, spec.owner)) {
            self.users.push((spec.use_, spec.owner));
        }
    }
}

impl Face {
    /// The holes bored from this face, row by row from the front, each row from the foot up; single bores last.
    #[must_use]
    pub fn holes(&self, layout: &Layout) -> Vec<Hole> {
        let mut holes = Vec::new();
        for row in &self.rows {
            let start = holes.len();
            let first = row.runs.iter().map(|run| run.first).min().unwrap_or(1);
            let last = row.runs.iter().map(|run| run.last).max().unwrap_or(0);
            for number in first..=last {
                let mut users = row
                    .runs
                    .iter()
                    .filter(|run| (run.first..=run.last).contains(&number));
                let Some(run) = users.next() else { continue };
                let z = layout.height(number);
                let mut hole = Hole::of(Some(row.name), row.x.total(), z, Some(number), &run.spec);
                users.for_each(|run| hole.share(&run.spec));
                holes.push(hole);
            }
            for bore in self.bores.iter().filter(|bore| bore.x == row.x.total()) {
                if let Some(hole) = holes[start..].iter_mut().find(|hole| hole.z == bore.z) {
                    hole.share(&bore.spec);
                }
            }
        }
        let rows_end = holes.len();
        for bore in &self.bores {
            let here = |hole: &Hole| hole.x == bore.x && hole.z == bore.z;
            if holes[..rows_end].iter().any(here) {
                continue;
            }
            match holes[rows_end..].iter_mut().find(|hole| here(hole)) {
                Some(hole) => hole.share(&bore.spec),
                None => {
                    let number = layout.number_at(bore.z);
                    holes.push(Hole::of(None, bore.x, bore.z, number, &bore.spec));
                }
            }
        }
        holes
    }
}
