//! From a finding to what would mend it: edits that were tried, and what each of them costs.
//!
//! ```text
//! Finding -- moves  holes  carcass  wishes  doors  drawers  shelves  bench: what might help --> Edit
//!    | trial    made on a copy, laid out and checked again
//!    |          kept when the finding is gone and no stop is new
//!    v
//! Proposal { edit, title, why }, the least change first -- taken --> one Step, one undo
//! ```
//!
//! The same trial, turned round, says beforehand which holes of a bay are barred ([`barred`]), and why one of them is ([`why_barred`]).
//!
//! What might help may be guessed freely, since nothing is offered that the checks themselves did not find good.

mod barred;
mod bench;
mod carcass;
mod doors;
mod drawers;
mod holes;
mod moves;
mod shelves;
mod trial;
mod wishes;

use alloc::vec::Vec;

pub use barred::{Barred, barred, why_barred};

use trial::Trial;

use crate::check::Finding;
use crate::job::Job;
use crate::propose::Proposal;

/// The most fixes that are offered for one finding.
const MOST: usize = 8;

/// What would mend a finding, the least change first; none when only other facts would, such as a measured board.
///
/// Each one was tried: it removes the finding, and no stop is open with it that was not open before. Where a fitting can be
/// moved, its nearest clean holes below and above are among them.
#[must_use]
pub fn fixes(job: &Job, finding: &Finding) -> Vec<Proposal> {
    let Some(mut trial) = Trial::of(job, finding) else {
        return Vec::new();
    };
    moves::offer(&mut trial);
    holes::offer(&mut trial);
    carcass::offer(&mut trial);
    drawers::offer(&mut trial);
    wishes::offer(&mut trial);
    doors::offer(&mut trial);
    shelves::offer(&mut trial);
    bench::offer(&mut trial);
    trial.proposals(MOST)
}

#[cfg(test)]
mod tests;
