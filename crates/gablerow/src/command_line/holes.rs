//! Every hole of what may be bored: to read, for a spreadsheet, for a script.

use gablerow_papers::{HoleRecord, csv_table, hole_text, overruled_text};

use super::faces::signs;
use super::table::json_table;
use crate::released::Released;

/// The hole tables, each cabinet after the sentences that overrule its stops.
pub(super) fn text(released: &Released) -> String {
    let (job, signs) = (released.job, signs());
    let of = |(cabinet, findings)| {
        let holes = hole_text(&HoleRecord::of_cabinet(cabinet, job), job.unit, &signs);
        [overruled_text(cabinet, findings), holes]
    };
    let mut texts: Vec<String> = released.free().flat_map(of).collect();
    texts.retain(|text| !text.is_empty());
    texts.join("\n")
}

pub(super) fn csv(released: &Released) -> String {
    csv_table(&records(released))
}

pub(super) fn json(released: &Released) -> anyhow::Result<String> {
    json_table(&records(released))
}

fn records<'a>(released: &Released<'a>) -> Vec<HoleRecord<'a>> {
    let of = |(cabinet, _)| HoleRecord::of_cabinet(cabinet, released.job);
    released.free().flat_map(of).collect()
}
