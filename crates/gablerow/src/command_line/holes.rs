//! Every hole of a job: to read, for a spreadsheet, for a script.

use gablerow_core::job::Job;
use gablerow_papers::{HoleRecord, csv_table, hole_text};

use super::faces::signs;
use super::table::json_table;

pub(super) fn text(job: &Job) -> String {
    hole_text(&HoleRecord::of_job(job), job.unit, &signs())
}

pub(super) fn csv(job: &Job) -> String {
    csv_table(&HoleRecord::of_job(job))
}

pub(super) fn json(job: &Job) -> anyhow::Result<String> {
    json_table(&HoleRecord::of_job(job))
}
