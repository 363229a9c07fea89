//! Twins of copies, and of what was measured of them.

use gablerow_core::job;
use gablerow_core::job::{Label, PanelId};

use super::measure::Mm;
use super::text::Text;
use super::twin::{Key, plain, record};

record! {
    /// One built instance of a cabinet.
    Copy = job::Copy {
        /// Its name in the cabinet.
        key: Key,
        /// What it is called in the shop.
        name: Text<Label>,
        /// Built as the mirror image; left out when it is not.
        #[serde(default, skip_serializing_if = "plain")]
        mirrored: bool,
        /// What was measured once the saw had been.
        #[serde(default, skip_serializing_if = "plain")]
        as_cut: Vec<AsCut>,
    }
}

record! {
    /// What was measured of one panel of a copy.
    AsCut = job::AsCut {
        /// The panel, as the copy has it, mirrored or not.
        panel: Text<PanelId>,
        /// Its length, foot to head, in mm.
        #[serde(default, skip_serializing_if = "plain")]
        length: Option<Mm>,
        /// Its thickness, in mm.
        #[serde(default, skip_serializing_if = "plain")]
        thickness: Option<Mm>,
        /// What is free at one end of it between two stops set for its length as planned, in mm; negative where it does not
        /// go in.
        #[serde(default, skip_serializing_if = "plain")]
        play: Option<Mm>,
        /// By how much the diagonal from the front of its foot is longer than the one from the back of its foot, in mm.
        #[serde(default, skip_serializing_if = "plain")]
        diagonals: Option<Mm>,
    }
}
