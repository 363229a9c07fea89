//! Twins of a cabinet and of the findings accepted for it.

use gablerow_core::job;
use gablerow_core::job::Label;

use super::carcass::{Carcass, EndOffsets, Size};
use super::copy::Copy;
use super::free::{FreeHole, FreeRow};
use super::opening::Opening;
use super::text::Text;
use super::twin::{Key, plain, record};

record! {
    /// A frameless cabinet: its facts and its wishes.
    Cabinet = job::Cabinet {
        /// Its stable name in the job.
        key: Key,
        /// What it is called in the shop.
        name: Text<Label>,
        /// Outer sizes.
        size: Size,
        /// Where the grid begins.
        offsets: EndOffsets,
        /// The box itself.
        carcass: Carcass,
        /// The space within.
        opening: Opening,
        /// Rows that faces own themselves.
        #[serde(default, skip_serializing_if = "plain")]
        free_rows: Vec<FreeRow>,
        /// Holes that faces own themselves.
        #[serde(default, skip_serializing_if = "plain")]
        free_holes: Vec<FreeHole>,
        /// What is built of it; at least one.
        copies: Vec<Copy>,
        /// Findings a person has accepted.
        #[serde(default, skip_serializing_if = "plain")]
        accepted: Vec<Acceptance>,
    }
}

record! {
    /// One accepted finding.
    Acceptance = job::Acceptance {
        /// The rule, by its name.
        rule: Text<String>,
        /// Exactly what the finding said.
        message: Text<String>,
        /// Why it is accepted.
        reason: Text<Label>,
    }
}
