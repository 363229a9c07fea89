//! Exact searches for hinges and drawers on the grid. They take plain inputs, and know no job.
//!
//! ```text
//! hinges     how many; which tab and plate; which holes; where the cups go; two doors on one partition
//! drawers    which hole for each drawer, so that as few drilling patterns as possible are needed
//! ```
//!
//! Every search has a list of aims. A later aim never costs an earlier one anything, and the same input gives the same
//! answer. What cannot be done is an answer too: what stands in the way, and the nearest thing that works.

pub mod drawers;
pub mod hinges;
mod interval;

pub use interval::Interval;
