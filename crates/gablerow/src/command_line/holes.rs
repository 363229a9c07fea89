//! Every hole of what may be bored: to read, for a spreadsheet, for a script. An open stop holds its cabinet back.

use gablerow_core::check::{self, Finding};
use gablerow_core::job::{Cabinet, Job};
use gablerow_core::layout::Layout;
use gablerow_papers::{HoleRecord, csv_table, hole_text, overruled_text};

use super::faces::signs;
use super::output::say;
use super::table::json_table;

/// The cabinets of a job, and which of them may be bored.
pub(super) struct Released<'a> {
    job: &'a Job,
    /// Each cabinet with its stops, open or overruled.
    cabinets: Vec<(&'a Cabinet, Vec<Finding>)>,
}

impl<'a> Released<'a> {
    pub(super) fn of(job: &'a Job) -> Self {
        let of = |cabinet: &'a Cabinet| {
            let mut stops = check::of_cabinet(job, cabinet, &Layout::of(cabinet, job));
            stops.retain(|finding| finding.level == check::Level::Stop);
            (cabinet, stops)
        };
        let cabinets = job.cabinets.iter().map(of).collect();
        Self { job, cabinets }
    }

    /// The cabinets without an open stop, each with what overrules its stops.
    fn free(&self) -> impl Iterator<Item = (&'a Cabinet, &[Finding])> {
        let all = self.cabinets.iter();
        let free = all.filter(|(_, stops)| !stops.iter().any(Finding::is_open_stop));
        free.map(|(cabinet, stops)| (*cabinet, stops.as_slice()))
    }

    fn records(&self) -> Vec<HoleRecord<'a>> {
        let of = |(cabinet, _)| HoleRecord::of_cabinet(cabinet, self.job);
        self.free().flat_map(of).collect()
    }

    /// The hole tables, each cabinet after the sentences that overrule its stops.
    pub(super) fn text(&self) -> String {
        let signs = signs();
        let of = |(cabinet, stops)| {
            let records = HoleRecord::of_cabinet(cabinet, self.job);
            let holes = hole_text(&records, self.job.unit, &signs);
            [overruled_text(cabinet, stops), holes]
        };
        let mut texts: Vec<String> = self.free().flat_map(of).collect();
        texts.retain(|text| !text.is_empty());
        texts.join("\n")
    }

    pub(super) fn csv(&self) -> String {
        csv_table(&self.records())
    }

    pub(super) fn json(&self) -> anyhow::Result<String> {
        json_table(&self.records())
    }

    /// Says what overrules the stops of what may be bored, where the table has no room for it.
    pub(super) fn say_overruled(&self) {
        for (cabinet, stops) in self.free() {
            for stop in stops {
                if let Some(reason) = &stop.accepted {
                    let (name, rule) = (&cabinet.name, stop.rule_name());
                    say(&format!("overruled: {name}, {rule}: {reason}"));
                }
            }
        }
    }

    /// Says which cabinets are held back, and by what; whether any is.
    pub(super) fn say_held_back(&self) -> bool {
        let mut any = false;
        for (cabinet, stops) in &self.cabinets {
            let open = stops.iter().filter(|stop| stop.is_open_stop());
            let mut rules: Vec<&str> = open.map(Finding::rule_name).collect();
            let count = match rules.len() {
                0 => continue,
                1 => "1 stop is open".to_owned(),
                many => format!("{many} stops are open"),
            };
            rules.dedup();
            let (name, rules) = (&cabinet.name, rules.join(", "));
            say(&format!(
                "held back: {name}, {count}: {rules}; see `gablerow check`"
            ));
            any = true;
        }
        any
    }
}
