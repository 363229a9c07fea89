//! What a job goes by unless a cabinet says otherwise.

use super::CardId;
use crate::measure::Length;

/// House defaults of a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shop {
    /// Front edge to the front row.
    pub setback_front: Length,
    /// To the back row, from the edge or face that the rule names.
    pub setback_back: Length,
    /// Where back rows stand. One rule for the whole job.
    pub back_rule: BackRule,
    /// Diameter of system holes.
    pub diameter: Length,
    /// Depth of blind holes.
    pub depth: Length,
    /// The bit that blind holes are bored with.
    pub bit: Bit,
    /// Which ends of the panels rest on a stop.
    pub reference: Reference,
    /// The board new cabinets are made of.
    pub board: CardId,
    /// The hinge that new plates belong to.
    pub hinge: CardId,
    /// The runner that new drawers run on.
    pub runner: CardId,
    /// The pin that shelves rest on.
    pub pin: CardId,
    /// Distances the checks go by.
    pub limits: Limits,
}

/// Where the back row stands.
///
/// Source: (i) and (ii) "System 32" article, de.wikipedia.org; (iii) davelers.com/32mm/Panels/150.html.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BackRule {
    /// (i) The back setback from the back edge of the side.
    FromBackEdge,
    /// (ii) The back setback from the front face of the back panel.
    FromBackPanel,
    /// (iii) Whole pitches behind the front row.
    OnPitch,
}

impl BackRule {
    /// All three, in the order a user steps through them.
    pub const ALL: [Self; 3] = [Self::FromBackEdge, Self::FromBackPanel, Self::OnPitch];

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::FromBackEdge => "from the back edge",
            Self::FromBackPanel => "from the back panel",
            Self::OnPitch => "on whole pitches",
        }
    }
}

/// The point of a bit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Bit {
    /// Flat, for blind holes.
    Flat,
    /// Pointed, for through holes.
    Pointed,
}

/// Which ends of a panel rest on a stop while its rows are bored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Reference {
    /// Two stops: every row from the foot.
    Foot,
    /// One stop, on the left, the edge in work nearest: *right front* and *left back* rest on the foot, *left front* and
    /// *right back* on the head.
    OneStop,
}

impl Reference {
    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Foot => "rows from the foot",
            Self::OneStop => "one stop, either end",
        }
    }
}

/// Distances the checks go by; shop habit, every one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Limits {
    /// Least distance from a hole's centre to the panel's end.
    pub to_end: Length,
    /// Least distance from a hole's centre to a long edge or a notch.
    pub to_edge: Length,
    /// Least distance from a hole's centre to the groove or rabbet of the back.
    pub to_back: Length,
    /// Least distance between the centres of two holes that are not one.
    pub near: Length,
    /// Least board left under a blind hole of a flat bit.
    pub skin_flat: Length,
    /// Least board left under a blind hole of a pointed bit.
    pub skin_pointed: Length,
    /// Least board left between blind holes bored from both faces.
    pub web: Length,
    /// What a hole must be deeper than its fastener, and what two opposed fasteners must leave between them.
    pub spare: Length,
    /// Distance between two keep-outs under which the screen notes it.
    pub close: Length,
}

impl Limits {
    /// Least board left under a blind hole of this bit.
    #[must_use]
    pub fn skin(&self, bit: Bit) -> Length {
        match bit {
            Bit::Flat => self.skin_flat,
            Bit::Pointed => self.skin_pointed,
        }
    }
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            to_end: Length::from_mm(8),
            to_edge: Length::from_mm(10),
            to_back: Length::from_mm(5),
            near: Length::from_mm(10),
            skin_flat: Length::from_mm(3),
            skin_pointed: Length::from_mm(4),
            web: Length::from_mm(1),
            spare: Length::from_um(500),
            close: Length::from_mm(2),
        }
    }
}

impl Shop {
    /// Common practice, and the starter cards.
    #[must_use]
    pub fn starter() -> Self {
        Self {
            setback_front: Length::from_mm(37),
            setback_back: Length::from_mm(37),
            back_rule: BackRule::FromBackPanel,
            diameter: Length::from_mm(5),
            depth: Length::from_mm(12),
            bit: Bit::Flat,
            reference: Reference::Foot,
            board: CardId::known("board-18"),
            hinge: CardId::known("hinge-plain"),
            runner: CardId::known("runner-under"),
            pin: CardId::known("pin-5"),
            limits: Limits::default(),
        }
    }
}
