//! What is done at the bench: a sheet to bore by, or for a script.

use gablerow_core::bench::plan_left;
use gablerow_core::job::{Bored, Job};
use gablerow_papers::SetUpRecord;
use gablerow_papers::page::Paper;

use super::table::json_table;
use crate::released::Released;

/// What of the work.
#[derive(Clone, Copy)]
pub(super) enum What {
    /// What is not on record as bored.
    Left,
    /// All of it.
    All,
}

/// The sheet, with the warns of what is bored and the sentences that overrule its stops; empty where every cabinet is held back.
pub(super) fn text(released: &Released, what: What) -> String {
    // Text is as wide whatever paper it is printed on.
    let printer = released.printer(Paper::A4);
    let text = printer.bench_text(what.record(released.job));
    text.unwrap_or_default()
}

pub(super) fn json(released: &Released, what: What) -> anyhow::Result<String> {
    let job = released.free_job();
    let cabinets: Vec<_> = job.cabinets.iter().map(|it| it.key).collect();
    let plan = plan_left(&job, what.record(&job), &cabinets, &job.shop.bench.times);
    json_table(&SetUpRecord::of_plan(&plan, &job))
}

impl What {
    /// The record that is taken as bored.
    fn record(self, job: &Job) -> &[Bored] {
        match self {
            Self::Left => &job.bored,
            Self::All => &[],
        }
    }
}
