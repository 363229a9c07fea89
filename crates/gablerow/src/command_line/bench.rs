//! What is done at the bench: a sheet to bore by, or for a script.

use gablerow_core::bench::{Plan, Times, plan};
use gablerow_core::job::Job;
use gablerow_papers::{SetUpRecord, bench_text};

use super::table::json_table;

pub(super) fn text(job: &Job) -> String {
    bench_text(&planned(job), job)
}

pub(super) fn json(job: &Job) -> anyhow::Result<String> {
    json_table(&SetUpRecord::of_plan(&planned(job), job))
}

fn planned(job: &Job) -> Plan {
    let cabinets: Vec<_> = job.cabinets.iter().map(|it| it.key).collect();
    plan(job, &cabinets, &Times::default())
}
