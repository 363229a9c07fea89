//! What of a job may be bored: an open stop holds its cabinet back.

use std::fmt;

use gablerow_core::check::{self, Finding, Level, is_held_back};
use gablerow_core::job::{Cabinet, Job, Key};
use gablerow_core::layout::Layout;
use gablerow_papers::kinds::Printer;
use gablerow_papers::open_stops;
use gablerow_papers::page::Paper;

/// The cabinets of a job, and which of them may be bored.
#[derive(Clone, Debug)]
pub struct Released<'a> {
    /// The whole job.
    pub job: &'a Job,
    /// Each cabinet with its stops and warns, whatever was said to them.
    cabinets: Vec<(&'a Cabinet, Vec<Finding>)>,
}

/// A cabinet that is held back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HeldBack {
    /// What it is called.
    pub cabinet: String,
    /// `2 stops are open`.
    pub count: String,
    /// The rule of each of its open stops, in the order of the findings.
    pub rules: Vec<&'static str>,
}

impl fmt::Display for HeldBack {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        let mut rules: Vec<&str> = Vec::new();
        for rule in &self.rules {
            if !rules.contains(rule) {
                rules.push(rule);
            }
        }
        let (name, count, rules) = (&self.cabinet, &self.count, rules.join(", "));
        write!(f, "held back: {name}, {count}: {rules}")
    }
}

impl<'a> Released<'a> {
    /// All cabinets of a job.
    #[must_use]
    pub fn of(job: &'a Job) -> Self {
        Self::of_one(job, None)
    }

    /// The one cabinet of a job, or all of them when none is named.
    #[must_use]
    pub fn of_one(job: &'a Job, one: Option<Key>) -> Self {
        let of = |cabinet: &'a Cabinet| {
            let mut findings = check::of_cabinet(job, cabinet, &Layout::of(cabinet, job));
            findings.retain(|finding| finding.level != Level::Note);
            (cabinet, findings)
        };
        let wanted = |cabinet: &&Cabinet| one.is_none_or(|key| cabinet.key == key);
        let cabinets = job.cabinets.iter().filter(wanted).map(of).collect();
        Self { job, cabinets }
    }

    /// What prints papers of them on sheets of a size.
    #[must_use]
    pub fn printer(&self, paper: Paper) -> Printer<'_> {
        Printer {
            job: self.job,
            chosen: &self.cabinets,
            paper,
        }
    }

    /// The cabinets without an open stop, each with its overruled stops and its warns.
    pub fn free(&self) -> impl Iterator<Item = (&'a Cabinet, &[Finding])> {
        let all = self.cabinets.iter();
        let free = all.filter(|(_, findings)| !is_held_back(findings));
        free.map(|(cabinet, findings)| (*cabinet, findings.as_slice()))
    }

    /// The cabinets that may be bored, and those that are held back.
    #[must_use]
    pub fn keys(&self) -> (Vec<Key>, Vec<Key>) {
        let keys = |held: bool| {
            let is_it = move |it: &&(&Cabinet, Vec<Finding>)| is_held_back(&it.1) == held;
            let cabinets = self.cabinets.iter().filter(is_it);
            cabinets.map(|(cabinet, _)| cabinet.key).collect()
        };
        (keys(false), keys(true))
    }

    /// The job without the cabinets that are held back.
    #[must_use]
    pub fn free_job(&self) -> Job {
        Job {
            cabinets: self.free().map(|(cabinet, _)| cabinet.clone()).collect(),
            ..self.job.clone()
        }
    }

    /// What overrules the stops of what may be bored, a sentence each.
    #[must_use]
    pub fn overruled(&self) -> Vec<String> {
        let mut said = Vec::new();
        for (cabinet, findings) in self.free() {
            for stop in findings.iter().filter(|it| it.level == Level::Stop) {
                if let Some(reason) = &stop.accepted {
                    let (name, rule) = (&cabinet.name, stop.rule_name());
                    said.push(format!("overruled: {name}, {rule}: {reason}"));
                }
            }
        }
        said
    }

    /// The cabinets that are held back, and by what.
    #[must_use]
    pub fn held_back(&self) -> Vec<HeldBack> {
        let held = |(cabinet, findings): &(&Cabinet, Vec<Finding>)| {
            let open = findings.iter().filter(|stop| stop.is_open_stop());
            let rules: Vec<&str> = open.map(Finding::rule_name).collect();
            Some(HeldBack {
                cabinet: cabinet.name.to_string(),
                count: open_stops(findings)?,
                rules,
            })
        };
        self.cabinets.iter().filter_map(held).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rule_is_named_once_however_many_of_its_stops_are_open() {
        let held = HeldBack {
            cabinet: "G3".to_owned(),
            count: "3 stops are open".to_owned(),
            rules: vec!["plate-on-pin-hole", "hole-off-panel", "plate-on-pin-hole"],
        };
        assert_eq!(
            held.to_string(),
            "held back: G3, 3 stops are open: plate-on-pin-hole, hole-off-panel"
        );
    }
}
