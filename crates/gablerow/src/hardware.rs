//! What is proposed to carry the fronts of a cabinet: computed when it is wanted, never kept.

use std::borrow::Cow;

use gablerow_core::job::Job;
use gablerow_core::propose::{self, Proposal};

use crate::app::{App, Pane};

/// The proposals that lie open; none when there is no such pane.
#[must_use]
pub fn proposals(app: &App) -> Vec<Proposal> {
    match app.pane {
        Some(Pane::Hardware { also, .. }) => {
            propose::for_cabinet(&app.desk.job, app.spot.cabinet, also)
        }
        _ => Vec::new(),
    }
}

/// The job as the screen shows it: with the proposal one is on taken, to see it before it is.
#[must_use]
pub fn shown(app: &App) -> Cow<'_, Job> {
    let Some(Pane::Hardware { line, .. }) = app.pane else {
        return Cow::Borrowed(&app.desk.job);
    };
    let mut job = app.desk.job.clone();
    let proposal = proposals(app).into_iter().nth(line);
    let step = proposal.and_then(|proposal| proposal.edit?.apply(&job).ok());
    if let Some(step) = step {
        step.apply(&mut job);
    }
    Cow::Owned(job)
}
