//! What a bench sheet is of: a plan, what was found about it, and what is not on it.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::bench::Plan;
use gablerow_core::check::Finding;
use gablerow_core::job::{Cabinet, Job};

/// A plan to bore by, printed by [`bench_text`](crate::bench_text), and as text and on paper by a `kinds::Printer`.
#[derive(Clone, Copy, Debug)]
pub struct BenchSheet<'a> {
    /// What is done, in order.
    pub plan: &'a Plan,
    /// The job with the cabinets that are planned, and no others.
    pub job: &'a Job,
    /// What was found about these: warns, and overruled stops.
    pub findings: &'a [Finding],
    /// The cabinets that are held back, each with [`open_stops`] in words.
    pub held_back: &'a [String],
}

impl BenchSheet<'_> {
    /// `not on this sheet: G3, 2 stops are open`; nothing when none is held back.
    pub(crate) fn held_words(&self) -> Option<String> {
        let held = self.held_back.join("; ");
        (!held.is_empty()).then(|| format!("not on this sheet: {held}"))
    }
}

/// How many stops of a cabinet are open: `2 stops are open`; `None` when none is.
#[must_use]
pub fn open_stops(findings: &[Finding]) -> Option<String> {
    let open = findings.iter().filter(|it| it.is_open_stop()).count();
    match open {
        0 => None,
        1 => Some("1 stop is open".into()),
        many => Some(format!("{many} stops are open")),
    }
}

/// The cabinets that are held back, each as `G3, 2 stops are open`.
#[must_use]
pub(crate) fn held_back(cabinets: &[(&Cabinet, Vec<Finding>)]) -> Vec<String> {
    let held = |(cabinet, findings): &(&Cabinet, Vec<Finding>)| {
        open_stops(findings).map(|count| format!("{}, {count}", cabinet.name))
    };
    cabinets.iter().filter_map(held).collect()
}
