//! What the checks have to say.

use alloc::string::String;

use super::{Rule, Strand};
use crate::job::{FaceId, Key, Label};
use crate::measure::Length;

/// How much a finding weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Nothing that leads to boring is printed until it is mended or overruled with a sentence.
    Stop,
    /// It is printed, and the line is on it.
    Warn,
    /// On the screen only.
    Note,
}

impl Level {
    /// All three, the heaviest first.
    pub const ALL: [Self; 3] = [Self::Stop, Self::Warn, Self::Note];

    /// The word of the trade: `stop`, `warn` or `note`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::Warn => "warn",
            Self::Note => "note",
        }
    }

    /// What a person does to a finding that stays as it is: a stop is `overruled`, all else `accepted`.
    #[must_use]
    pub fn quieted(self) -> &'static str {
        match self {
            Self::Stop => "overruled",
            Self::Warn | Self::Note => "accepted",
        }
    }
}

/// Where a finding is; as far down as it goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Place {
    /// The cabinet.
    pub cabinet: Key,
    /// The face; `None` when it is about the whole cabinet.
    pub face: Option<FaceId>,
    /// From the carcass front to the row, or to the centre of a single bore.
    pub row: Option<Length>,
    /// The first and the last hole number, both included.
    pub holes: Option<(i16, i16)>,
}

impl Place {
    /// Somewhere in the cabinet.
    pub(super) fn of(cabinet: Key) -> Self {
        Self {
            cabinet,
            face: None,
            row: None,
            holes: None,
        }
    }

    /// On one of its faces.
    pub(super) fn on(self, face: FaceId) -> Self {
        Self {
            face: Some(face),
            ..self
        }
    }

    /// Where these holes are.
    pub(super) fn at(self, strand: &Strand) -> Self {
        Self {
            row: Some(strand.x),
            holes: strand.holes,
            ..self
        }
    }

    /// From one hole number to another, both included.
    pub(super) fn holes(self, holes: (i16, i16)) -> Self {
        Self {
            holes: Some(holes),
            ..self
        }
    }
}

/// Whether a cabinet of which this was found is held back from being bored: a stop of it is open.
#[must_use]
pub fn is_held_back(findings: &[Finding]) -> bool {
    findings.iter().any(Finding::is_open_stop)
}

/// One thing the checks have to say.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// The rule that is broken.
    pub rule: Rule,
    /// How much it weighs.
    pub level: Level,
    /// Where it is.
    pub place: Place,
    /// What is wrong, by how much, and what would do, in the unit of the job.
    pub message: String,
    /// The same sentence in mm, by which it is accepted: the same facts make the same one, whatever unit is shown.
    pub in_mm: String,
    /// The fittings, fronts, openings or dividers it is about, the first one first.
    pub about: [Option<Key>; 2],
    /// Why a person accepted it.
    pub accepted: Option<Label>,
}

impl Finding {
    pub(super) fn new(rule: Rule, place: Place, message: String) -> Self {
        Self {
            rule,
            level: rule.info().level,
            place,
            in_mm: message.clone(),
            message,
            about: [None; 2],
            accepted: None,
        }
    }

    /// It is about this thing.
    pub(super) fn about(mut self, thing: Key) -> Self {
        self.about = [Some(thing), None];
        self
    }

    /// It is about these two, in whichever order.
    pub(super) fn about_both(mut self, things: (Option<Key>, Option<Key>)) -> Self {
        let mut both = [things.0, things.1];
        both.sort_by_key(|thing| (thing.is_none(), *thing));
        self.about = both;
        self
    }

    /// Whether another finding has to say the same of the same things on the same panel, be it elsewhere or by another
    /// amount: after a change it is this one still.
    #[must_use]
    pub fn is_about_the_same(&self, other: &Self) -> bool {
        let panel = |finding: &Self| finding.place.face.map(|face| face.panel);
        let what = |finding: &Self| (finding.rule, finding.place.cabinet, finding.about);
        what(self) == what(other) && panel(self) == panel(other)
    }

    /// Whether it holds back what leads to boring.
    #[must_use]
    pub fn is_open_stop(&self) -> bool {
        self.level == Level::Stop && self.accepted.is_none()
    }

    /// The name of its rule: `near-miss-rows`.
    #[must_use]
    pub fn rule_name(&self) -> &'static str {
        self.rule.info().name
    }
}
