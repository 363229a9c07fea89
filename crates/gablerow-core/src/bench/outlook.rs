//! What the bench makes of one cabinet, for whoever checks it before anything is bored.

use alloc::vec::Vec;

use super::rest::Rest;
use super::{Bench, Done, Rock, Seconds, SetUp, order, rock, set_ups, work};
use crate::cards::Rail;
use crate::job::{Cabinet, Copy, End, Job, Reference};
use crate::layout::{Layout, Upright};
use crate::measure::Length;

/// What boring a cabinet will be like, without the order of work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outlook {
    /// The set-ups of one copy, as planned, in no order; it is none of the cabinet's, and so the key of their copy says nothing.
    pub set_ups: Vec<SetUp>,
    /// The bays of its measured copies whose shelves will not lie level.
    pub rocks: Vec<Rock>,
}

/// The outlook for a cabinet that comes to this layout.
#[must_use]
pub fn outlook(job: &Job, cabinet: &Cabinet, layout: &Layout) -> Outlook {
    let planned = Copy {
        key: cabinet.key,
        name: cabinet.name.clone(),
        mirrored: false,
        as_cut: Vec::new(),
    };
    let mut bench = Bench::default();
    let measured = cabinet.copies.iter().filter(|it| !it.as_cut.is_empty());
    for copy in measured {
        bench.add(cabinet, copy, job, &Done::default());
    }
    let (layouts, panels) = (bench.layouts, bench.panels);
    Outlook {
        set_ups: set_ups(
            work::lines(cabinet, &planned, layout, job, &Done::default()),
            job,
        ),
        rocks: rock::of(&layouts, &panels, &set_ups(bench.lines, job)),
    }
}

/// What the stops are set to that an upright may rest on.
#[must_use]
pub fn stops(
    job: &Job,
    cabinet: &Cabinet,
    layout: &Layout,
    upright: &Upright,
) -> Vec<(End, Length)> {
    let height = cabinet.size.height;
    let foot = Rest::on_foot(upright, layout);
    let head = Rest::on_head(upright, layout, height, Length::ZERO);
    match job.shop.reference {
        Reference::Foot => [(End::Foot, foot.stop)].into(),
        Reference::OneStop => [(End::Foot, foot.stop), (End::Head, head.stop)].into(),
    }
}

/// Whether the arms of a rail come to a row from one of its edges.
#[must_use]
pub fn is_reached(job: &Job, rail: &Rail, upright: &Upright, row: Length) -> bool {
    let width = upright.back.total() - upright.front.total();
    let settings = work::settings(row, upright, job);
    settings
        .iter()
        .any(|it| work::reaches(rail, it.total(), width))
}

impl Outlook {
    /// What the set-ups take in one order or another, by the shop's own times.
    #[must_use]
    pub fn orders(&self, job: &Job) -> Seconds {
        let rules = &job.shop.bench;
        order::put(&mut self.set_ups.clone(), &rules.times, rules.order)
    }
}
