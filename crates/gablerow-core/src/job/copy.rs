//! Copies of a cabinet, and what has been measured of each.

use alloc::vec::Vec;

use super::{Key, Label, PanelId};
use crate::measure::Length;

/// One built instance of a cabinet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Copy {
    /// Its name in the cabinet.
    pub key: Key,
    /// What it is called in the shop.
    pub name: Label,
    /// Built as the mirror image: left and right change places.
    pub mirrored: bool,
    /// What tape and caliper read once the saw has been.
    pub as_cut: Vec<AsCut>,
}

impl Copy {
    /// How long a panel of it was cut, as measured; `None` when it was not measured.
    #[must_use]
    pub fn length_of(&self, panel: PanelId) -> Option<Length> {
        let cut = self.as_cut.iter().find(|cut| cut.panel == panel);
        cut.and_then(|cut| cut.length)
    }
}

/// What was measured of one panel of a copy. Named as the copy has it, mirrored or not.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct AsCut {
    /// The panel.
    pub panel: PanelId,
    /// Its length, foot to head.
    pub length: Option<Length>,
    /// Its thickness.
    pub thickness: Option<Length>,
}
