//! What is done, what is left to do and what is stale: the record of what was bored, held against the layout.
//!
//! Nothing of this is stored. The record is only ever added to; its last entry on a place is what is there.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::vec::Vec;

use super::{Holes, SetUp, work};
use crate::grid::HoleNumber;
use crate::job::{Bored, Cabinet, Copy, End, FaceId, Job, Key, Measured, PanelId};
use crate::layout::{Hole, Layout, Upright};
use crate::measure::Length;

/// A place on a panel: the face, from its front edge as finished, from its foot.
type Place = (FaceId, Length, Length);

/// What was bored of one copy of a cabinet, and not taken back.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Done(BTreeMap<Place, Bored>);

/// The same of every copy: the record is read once, however many they are.
pub(super) struct Record(BTreeMap<(Key, Key), Done>);

impl Record {
    pub(super) fn of<'a>(record: impl IntoIterator<Item = &'a Bored>) -> Self {
        let mut copies: BTreeMap<(Key, Key), Done> = BTreeMap::new();
        for bored in record {
            let of_copy = copies.entry((bored.cabinet, bored.copy)).or_default();
            of_copy.take(bored);
        }
        Self(copies)
    }

    pub(super) fn of_copy(&self, cabinet: Key, copy: Key) -> &Done {
        static NOTHING: Done = Done(BTreeMap::new());
        self.0.get(&(cabinet, copy)).unwrap_or(&NOTHING)
    }
}

impl Done {
    /// What a record says of a copy.
    #[must_use]
    pub fn of(record: &[Bored], cabinet: Key, copy: Key) -> Self {
        let mut done = Self::default();
        let own = |bored: &&Bored| (bored.cabinet, bored.copy) == (cabinet, copy);
        record.iter().filter(own).for_each(|bored| done.take(bored));
        done
    }

    /// What one more entry of the record says.
    fn take(&mut self, bored: &Bored) {
        let place = (bored.face, bored.from_front, bored.from_foot);
        match bored.taken_back {
            true => drop(self.0.remove(&place)),
            false => drop(self.0.insert(place, *bored)),
        }
    }

    /// The holes.
    pub(super) fn holes(&self) -> impl Iterator<Item = &Bored> {
        self.0.values()
    }

    /// Whether a hole of a panel is there as the layout has it.
    #[must_use]
    pub fn has(&self, face: FaceId, hole: &Hole, upright: &Upright) -> bool {
        let bored = self.0.get(&place(face, hole, upright));
        bored.is_some_and(|bored| (bored.diameter, bored.depth) == (hole.diameter, hole.depth))
    }
}

fn place(face: FaceId, hole: &Hole, upright: &Upright) -> Place {
    let (x, z) = (upright.front.total(), upright.foot.total());
    (face, hole.x - x, hole.z - z)
}

/// How far a panel of a copy has come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Progress {
    /// The cabinet.
    pub cabinet: Key,
    /// Which of its copies.
    pub copy: Key,
    /// The panel, as the copy has it.
    pub panel: PanelId,
    /// How many holes are bored as the layout has them.
    pub done: usize,
    /// How many are still to be bored.
    pub left: usize,
    /// What was bored and is wanted no longer, or not so.
    pub stale: Vec<Bored>,
}

/// How far every panel of a job has come, cabinet by cabinet and copy by copy.
#[must_use]
pub fn progress_of_job(job: &Job) -> Vec<Progress> {
    let record = Record::of(&job.bored);
    let of = |cabinet| of_cabinet(job, cabinet, &record);
    job.cabinets.iter().flat_map(of).collect()
}

/// How far every panel of every copy of a cabinet has come, copy by copy.
#[must_use]
pub fn progress_of_cabinet(job: &Job, cabinet: &Cabinet) -> Vec<Progress> {
    let own = job.bored.iter().filter(|it| it.cabinet == cabinet.key);
    of_cabinet(job, cabinet, &Record::of(own))
}

fn of_cabinet(job: &Job, cabinet: &Cabinet, record: &Record) -> Vec<Progress> {
    let done = |copy: &Copy| record.of_copy(cabinet.key, copy.key);
    let of = |copy| of_copy(job, cabinet, copy, done(copy));
    cabinet.copies.iter().flat_map(of).collect()
}

/// How far every panel of a copy has come that is bored or was, from left to right; panels that are gone come last.
fn of_copy(job: &Job, cabinet: &Cabinet, copy: &Copy, done: &Done) -> Vec<Progress> {
    let layout = Layout::of(&cabinet.built_as(copy), job);
    let mut stale = done.0.clone();
    let mut panels = Vec::new();
    let of = |panel, done, left| Progress {
        cabinet: cabinet.key,
        copy: copy.key,
        panel,
        done,
        left,
        stale: Vec::new(),
    };
    for upright in &layout.uprights {
        let holes = upright.bored(&layout);
        let holes = holes
            .iter()
            .flat_map(|(face, holes)| holes.iter().map(move |it| (*face, it)));
        let (mut there, mut left) = (0, 0);
        for (face, hole) in holes {
            if done.has(face, hole, upright) {
                stale.remove(&place(face, hole, upright));
                there += 1;
            } else {
                left += 1;
            }
        }
        panels.push(of(upright.id, there, left));
    }
    for bored in stale.into_values() {
        let at = panels.iter().position(|it| it.panel == bored.face.panel);
        let at = at.unwrap_or_else(|| {
            panels.push(of(bored.face.panel, 0, 0));
            panels.len() - 1
        });
        panels[at].stale.push(bored);
    }
    panels.retain(|it| it.done + it.left + it.stale.len() > 0);
    panels
}

/// What goes into the record when a panel was cut anew: nothing of it is bored, and nothing measured.
#[must_use]
pub fn cut_anew(job: &Job, cabinet: Key, copy: Key, panel: PanelId) -> (Vec<Bored>, Vec<Measured>) {
    let bored = Done::of(&job.bored, cabinet, copy).0.into_values();
    let bored = bored.filter(|it| it.face.panel == panel);
    let measured = job.measured_of(cabinet, copy).into_values();
    let measured = measured.filter(|it| it.face.panel == panel);
    let back = |measured| Measured {
        taken_back: true,
        ..measured
    };
    (
        bored.map(taken_back).collect(),
        measured.map(back).collect(),
    )
}

/// What goes into the record when the row that was recorded last was not bored after all: one row of one face, its bit and its
/// depth. Nothing when all is taken back already; what is of a cabinet or a copy that is gone stays as it is.
#[must_use]
pub fn last_taken_back(job: &Job) -> Vec<Bored> {
    let row = |it: &Bored| {
        let tool = (it.diameter, it.depth);
        (it.cabinet, it.copy, it.face, it.from_front, tool)
    };
    let copies = |cabinet: &'_ Cabinet| {
        let of = |copy: &Copy| (cabinet.key, copy.key);
        cabinet.copies.iter().map(of).collect::<Vec<_>>()
    };
    let there: BTreeSet<(Key, Key)> = job.cabinets.iter().flat_map(copies).collect();
    let is_there = |it: &&Bored| there.contains(&(it.cabinet, it.copy));
    let (mut gone, mut last) = (BTreeSet::new(), Vec::<Bored>::new());
    for it in job.bored.iter().rev().filter(is_there) {
        let place = (it.cabinet, it.copy, it.face, it.from_front, it.from_foot);
        if it.taken_back {
            gone.insert(place);
        } else if !gone.contains(&place) {
            if last.first().is_some_and(|first| row(first) != row(it)) {
                break;
            }
            last.push(*it);
        }
    }
    last.into_iter().map(taken_back).collect()
}

pub(super) fn taken_back(bored: Bored) -> Bored {
    Bored {
        taken_back: true,
        ..bored
    }
}

/// What goes into the record when a set-up of a plan of this job is done: a line for each of its holes.
#[must_use]
pub fn bored_by(set_up: &SetUp, job: &Job) -> Vec<Bored> {
    let cabinet = job.cabinet(set_up.cabinet);
    let copy = cabinet.and_then(|it| it.copies.iter().find(|copy| copy.key == set_up.copy));
    let (Some(cabinet), Some(copy)) = (cabinet, copy) else {
        return Vec::new();
    };
    let layout = Layout::of(&cabinet.built_as(copy), job);
    let Some(upright) = layout.upright(set_up.face.panel) else {
        return Vec::new();
    };
    let [left, right] = upright.bored(&layout);
    let (_, holes) = if left.0 == set_up.face { left } else { right };
    let longer = copy.longer(upright.id, upright.length());
    let length = upright.length() + longer.unwrap_or(Length::ZERO);
    let is_bored = |hole: &Hole| match (&set_up.holes, hole.number) {
        (Holes::Runs(runs), Some(number)) => {
            runs.iter().any(|run| (run.0..=run.1).contains(&number))
        }
        (Holes::ByTape(lengths), None) => {
            let height = hole.z - upright.foot.total();
            lengths.contains(&match set_up.rest.end {
                End::Foot => height,
                End::Head => length - height,
            })
        }
        _ => false,
    };
    let mut record = Vec::new();
    for hole in holes {
        let place = place(set_up.face, &hole, upright);
        if place.1 != set_up.row || work::tool(&hole, job) != set_up.tool || !is_bored(&hole) {
            continue;
        }
        record.push(Bored {
            cabinet: cabinet.key,
            copy: copy.key,
            face: set_up.face,
            from_front: place.1,
            hole: hole
                .number
                .and_then(|number| HoleNumber::new(i64::from(number)).ok()),
            from_foot: place.2,
            depth: hole.depth,
            diameter: hole.diameter,
            taken_back: false,
        });
    }
    record
}
