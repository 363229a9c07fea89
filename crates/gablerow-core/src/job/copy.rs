//! Copies of a cabinet, and what has been measured of each.

use alloc::vec::Vec;

use super::{Key, Label, PanelId};
use crate::measure::Length;

/// What a length may be off without anything being done about it, either way. Source of nothing: a house default.
pub const LENGTH_OFF: Length = Length::from_um(300);

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
    /// What was measured of a panel of it.
    #[must_use]
    pub fn cut(&self, panel: PanelId) -> Option<&AsCut> {
        self.as_cut.iter().find(|cut| cut.panel == panel)
    }

    /// How long a panel of it was cut, by the tape; `None` when it was not measured.
    #[must_use]
    pub fn length_of(&self, panel: PanelId) -> Option<Length> {
        self.cut(panel)?.length
    }

    /// How much longer than planned a panel of it was cut, as measured; `None` when it was not measured.
    #[must_use]
    pub fn longer(&self, panel: PanelId, planned: Length) -> Option<Length> {
        self.cut(panel)?.longer(planned)
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
    /// What is free at one end of it between two stops set for its length as planned; negative where it does not go in.
    pub play: Option<Length>,
    /// By how much the diagonal from the front of its foot is longer than the one from the back of its foot.
    pub diagonals: Option<Length>,
}

impl AsCut {
    /// Nothing measured yet.
    #[must_use]
    pub fn of(panel: PanelId) -> Self {
        Self {
            panel,
            length: None,
            thickness: None,
            play: None,
            diagonals: None,
        }
    }

    /// How much longer than planned it is: by the tape, else by its play. `None` when neither was measured.
    #[must_use]
    pub fn longer(&self, planned: Length) -> Option<Length> {
        let by_tape = self.length.map(|length| length - planned);
        by_tape.or(self.play.map(|play| -play))
    }

    /// Whether nothing was measured.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::of(self.panel)
    }
}
