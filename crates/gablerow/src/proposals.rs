//! What is proposed for a cabinet, a bay or a finding: computed when it is wanted, never kept.

use std::borrow::Cow;

use gablerow_core::check::Finding;
use gablerow_core::job::Job;
use gablerow_core::mend;
use gablerow_core::propose::{self, Proposal};

use crate::app::{App, Asking, Pane, Told};
use crate::scene::Scene;

/// The proposals that lie open; none when there is no such pane.
#[must_use]
pub fn proposals(app: &App) -> Vec<Proposal> {
    let Some(Pane::Proposals { wish, .. }) = app.pane else {
        return Vec::new();
    };
    let (job, cabinet) = (&app.desk.job, app.spot.cabinet);
    match wish {
        Asking::Hardware(also) => propose::for_cabinet(job, cabinet, also),
        Asking::Bay => {
            let scene = Scene::at(job, &app.spot);
            let bay = scene.and_then(|scene| Some(scene.bay_at(app.spot.hole)?.0.key));
            bay.map_or_else(Vec::new, |bay| propose::for_bay(job, cabinet, bay))
        }
        Asking::Mend { finding, .. } => {
            told(app, finding).map_or_else(Vec::new, |finding| mend::fixes(job, &finding))
        }
    }
}

/// The finding that is known by this, as the checks say it now; `None` once it is mended.
#[must_use]
pub fn told(app: &App, known: Told) -> Option<Finding> {
    let scene = Scene::at(&app.desk.job, &app.spot)?;
    let mut findings = scene.findings.into_iter();
    findings.find(|finding| Told::of(finding) == known)
}

/// The job as the screen shows it: with the proposal one is on taken, to see it before it is. `open` are those that lie open.
#[must_use]
pub fn shown<'a>(app: &'a App, open: &[Proposal]) -> Cow<'a, Job> {
    let Some(Pane::Proposals { line, .. }) = app.pane else {
        return Cow::Borrowed(&app.desk.job);
    };
    let mut job = app.desk.job.clone();
    let edit = open.get(line).and_then(|proposal| proposal.edit.as_ref());
    if let Some(step) = edit.and_then(|edit| edit.apply(&job).ok()) {
        step.apply(&mut job);
    }
    Cow::Owned(job)
}
