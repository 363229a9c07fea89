//! Every part of a job: to read, for a spreadsheet, for a script.

use gablerow_core::job::Job;
use gablerow_papers::{CabinetParts, PartRecord, csv_table, part_text};

use super::table::json_table;

pub(super) fn text(job: &Job) -> String {
    part_text(job)
}

pub(super) fn csv(job: &Job) -> String {
    csv_table(&records(&CabinetParts::of_job(job)))
}

pub(super) fn json(job: &Job) -> anyhow::Result<String> {
    json_table(&records(&CabinetParts::of_job(job)))
}

fn records<'a>(cabinets: &'a [CabinetParts]) -> Vec<PartRecord<'a>> {
    cabinets.iter().flat_map(CabinetParts::records).collect()
}
