//! What is done at the bench: a sheet to bore by, or for a script.

use gablerow_core::bench::{Plan, plan_left};
use gablerow_core::job::Job;
use gablerow_papers::{BenchSheet, SetUpRecord, bench_text};

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
    let job = released.free_job();
    if job.cabinets.is_empty() {
        return String::new();
    }
    let findings: Vec<_> = released
        .free()
        .flat_map(|(_, findings)| findings)
        .cloned()
        .collect();
    bench_text(&BenchSheet {
        plan: &planned(&job, what),
        job: &job,
        findings: &findings,
        held_back: &released.held_back_words(),
    })
}

pub(super) fn json(released: &Released, what: What) -> anyhow::Result<String> {
    let job = released.free_job();
    json_table(&SetUpRecord::of_plan(&planned(&job, what), &job))
}

fn planned(job: &Job, what: What) -> Plan {
    let cabinets: Vec<_> = job.cabinets.iter().map(|it| it.key).collect();
    let record = match what {
        What::Left => &job.bored[..],
        What::All => &[],
    };
    plan_left(job, record, &cabinets, &job.shop.bench.times)
}
