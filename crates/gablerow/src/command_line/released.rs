//! What of a job may be bored: an open stop holds its cabinet back.

use anyhow::bail;
use gablerow_core::check::{self, Finding, Level, is_held_back};
use gablerow_core::job::{Cabinet, Job};
use gablerow_core::layout::Layout;

use super::output::{say, shown};

/// The cabinets of a job, and which of them may be bored.
pub(super) struct Released<'a> {
    pub(super) job: &'a Job,
    /// Each cabinet with its stops and warns, whatever was said to them.
    cabinets: Vec<(&'a Cabinet, Vec<Finding>)>,
}

impl<'a> Released<'a> {
    pub(super) fn of(job: &'a Job) -> Self {
        let of = |cabinet: &'a Cabinet| {
            let mut findings = check::of_cabinet(job, cabinet, &Layout::of(cabinet, job));
            findings.retain(|finding| finding.level != Level::Note);
            (cabinet, findings)
        };
        let cabinets = job.cabinets.iter().map(of).collect();
        Self { job, cabinets }
    }

    /// All of them, with their stops and warns.
    pub(super) fn cabinets(&self) -> &[(&'a Cabinet, Vec<Finding>)] {
        &self.cabinets
    }

    /// Leaves out every cabinet but the one of a name, without regard to capitals.
    ///
    /// # Errors
    /// No cabinet is called that; what they are called, is said.
    pub(super) fn keep_only(&mut self, name: &str) -> anyhow::Result<()> {
        let wanted = name.to_lowercase();
        let is_meant = |cabinet: &Cabinet| cabinet.name.as_str().to_lowercase() == wanted;
        if !self.job.cabinets.iter().any(is_meant) {
            let names = self.job.cabinets.iter().map(|it| it.name.as_str());
            let names: Vec<&str> = names.collect();
            bail!(
                "no cabinet is called `{}`; the cabinets are {}",
                shown(name),
                names.join(", ")
            );
        }
        self.cabinets.retain(|(cabinet, _)| is_meant(cabinet));
        Ok(())
    }

    /// The cabinets without an open stop, each with its overruled stops and its warns.
    pub(super) fn free(&self) -> impl Iterator<Item = (&'a Cabinet, &[Finding])> {
        let all = self.cabinets.iter();
        let free = all.filter(|(_, findings)| !is_held_back(findings));
        free.map(|(cabinet, findings)| (*cabinet, findings.as_slice()))
    }

    /// The job without the cabinets that are held back.
    pub(super) fn free_job(&self) -> Job {
        Job {
            cabinets: self.free().map(|(cabinet, _)| cabinet.clone()).collect(),
            ..self.job.clone()
        }
    }

    /// Says what overrules the stops of what may be bored, where the table has no room for it.
    pub(super) fn say_overruled(&self) {
        for (cabinet, findings) in self.free() {
            let stops = findings.iter().filter(|it| it.level == Level::Stop);
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
        for (cabinet, findings) in &self.cabinets {
            let open = findings.iter().filter(|stop| stop.is_open_stop());
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
