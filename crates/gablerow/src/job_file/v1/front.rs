//! Twin of a front.

use gablerow_core::job;
use gablerow_core::job::{FrontKind, Label};

use super::measure::Mm;
use super::text::Text;
use super::twin::{Key, record};

record! {
    /// A wish for what closes an opening.
    Front = job::Front {
        /// Its name in the cabinet.
        key: Key,
        /// What it is called at the bench.
        name: Text<Label>,
        /// What it is, with its hand or its height.
        kind: Text<FrontKind>,
        /// Its thickness, in mm.
        thickness: Mm,
    }
}
