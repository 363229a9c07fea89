//! Findings as text and as JSON.

use gablerow_core::check::{self, Finding};
use gablerow_core::job::{Job, Label, Names};
use gablerow_core::mend;
use gablerow_papers::findings_text;
use serde::Serialize;

use super::output::json_lines;

/// A job and what the checks have to say of it: the heaviest level first, cabinets as they come.
pub(super) struct Checked<'a> {
    job: &'a Job,
    findings: Vec<Finding>,
}

/// One finding as JSON.
#[derive(Serialize)]
struct FindingRecord<'a> {
    rule: &'static str,
    level: &'static str,
    /// The name of the cabinet.
    cabinet: &'a str,
    /// The upright; null when it is about the whole cabinet, as is `face`.
    panel: Option<String>,
    face: Option<&'static str>,
    /// Hole numbers; none when it is about no hole of the grid.
    holes: Vec<i16>,
    message: &'a str,
    /// The least change that mends it, of those that were tried; null when none does, and when it is accepted.
    fix: Option<String>,
    /// Why a person accepted it, or the sentence that overrules it; null while it is open.
    accepted: Option<&'a str>,
}

impl<'a> Checked<'a> {
    pub(super) fn of(job: &'a Job) -> Self {
        let mut findings = check::of_job(job);
        // Findings come cabinet by cabinet, and this keeps their order within a level.
        findings.sort_by_key(|finding| finding.level);
        Self { job, findings }
    }

    pub(super) fn has_open_stop(&self) -> bool {
        check::is_held_back(&self.findings)
    }

    pub(super) fn text(&self) -> String {
        findings_text(self.job, &self.findings)
    }

    pub(super) fn json(&self) -> anyhow::Result<String> {
        let records: Vec<_> = self
            .findings
            .iter()
            .map(|finding| self.record(finding))
            .collect();
        json_lines(&records)
    }

    fn record(&self, finding: &'a Finding) -> FindingRecord<'_> {
        let place = finding.place;
        let cabinet = self.job.cabinet(place.cabinet);
        let names = cabinet.map(|cabinet| Names::of(&cabinet.opening));
        let face = place.face.zip(names).map(|(face, names)| names.face(face));
        FindingRecord {
            rule: finding.rule_name(),
            level: finding.level.word(),
            cabinet: cabinet.map_or("", |cabinet| cabinet.name.as_str()),
            panel: face.map(|face| face.panel.to_string()),
            face: face.map(|face| face.word),
            holes: place
                .holes
                .map_or(Vec::new(), |(first, last)| (first..=last).collect()),
            message: &finding.message,
            fix: self.fix(finding),
            accepted: finding.accepted.as_ref().map(Label::as_str),
        }
    }

    fn fix(&self, finding: &Finding) -> Option<String> {
        let is_open = finding.accepted.is_none();
        let fixes = is_open.then(|| mend::fixes(self.job, finding));
        Some(fixes?.into_iter().next()?.title)
    }
}
