//! What a job goes by unless a cabinet says otherwise.

use super::{BenchRules, CardId};
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
    /// The board of fronts; `None` is the board of new cabinets.
    pub front_board: Option<CardId>,
    /// The board of drawer boxes; `None` is the board of new cabinets.
    pub box_board: Option<CardId>,
    /// The connector that panels are held together by; `None` until one is chosen.
    pub connector: Option<CardId>,
    /// The rail that holes are bored with; `None` until one is chosen.
    pub rail: Option<CardId>,
    /// Gaps and reveals of fronts.
    pub fronts: FrontRules,
    /// The band of edges that are seen.
    pub band: Band,
    /// How drawer boxes are made and spaced.
    pub boxes: BoxRules,
    /// How it works at the bench.
    pub bench: BenchRules,
}

/// Gaps and reveals. One scheme for the whole job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct FrontRules {
    /// Between two fronts.
    pub gap: Length,
    /// From the carcass underside up to the lowest front; 0 is flush.
    pub reveal_foot: Length,
    /// From the highest front up to the carcass top.
    pub reveal_head: Length,
    /// From the outer face of a side in to a front over its edge.
    pub reveal_side: Length,
    /// All around a front that stands inside the opening.
    pub gap_inset: Length,
}

/// The two usual schemes of reveals.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RevealScheme {
    /// Half a gap at either end: doors fit either hand.
    Split,
    /// None at the foot, a gap at the head.
    FlushFoot,
    /// Anything else.
    Own,
}

impl FrontRules {
    /// Which scheme the reveals at foot and head follow.
    #[must_use]
    pub fn scheme(&self) -> RevealScheme {
        if (self.reveal_foot, self.reveal_head) == (self.gap.half(), self.gap.half()) {
            RevealScheme::Split
        } else if (self.reveal_foot, self.reveal_head) == (Length::ZERO, self.gap) {
            RevealScheme::FlushFoot
        } else {
            RevealScheme::Own
        }
    }

    /// The same gaps with the reveals of a scheme; `Own` changes nothing.
    #[must_use]
    pub fn with_scheme(self, scheme: RevealScheme) -> Self {
        let (reveal_foot, reveal_head) = match scheme {
            RevealScheme::Split => (self.gap.half(), self.gap.half()),
            RevealScheme::FlushFoot => (Length::ZERO, self.gap),
            RevealScheme::Own => (self.reveal_foot, self.reveal_head),
        };
        Self {
            reveal_foot,
            reveal_head,
            ..self
        }
    }
}

impl RevealScheme {
    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Split => "split",
            Self::FlushFoot => "flush foot",
            Self::Own => "as typed",
        }
    }
}

impl Default for FrontRules {
    /// Common practice: a gap of 3, half of it at every edge of the carcass; 2 around inset fronts.
    fn default() -> Self {
        Self {
            gap: Length::from_mm(3),
            reveal_foot: Length::from_um(1_500),
            reveal_head: Length::from_um(1_500),
            reveal_side: Length::from_um(1_500),
            gap_inset: Length::from_mm(2),
        }
    }
}

/// The band of edges that are seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Band {
    /// Its thickness.
    pub thickness: Length,
    /// What the bander takes off an edge before it glues.
    pub pre_mill: Length,
    /// Whether it is on when a panel is bored.
    pub on: BandState,
}

/// Whether the band is on when a panel is bored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BandState {
    /// Banded first, then bored.
    BeforeBoring,
    /// Bored first, then banded: settings are smaller by the band.
    AfterBoring,
}

impl BandState {
    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::BeforeBoring => "on before boring",
            Self::AfterBoring => "on after boring",
        }
    }
}

impl Default for Band {
    /// A band of 1.0, on before boring, without pre-mill.
    fn default() -> Self {
        Self {
            thickness: Length::from_mm(1),
            pre_mill: Length::ZERO,
            on: BandState::BeforeBoring,
        }
    }
}

/// How drawer boxes are made and spaced; shop habit, every one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct BoxRules {
    /// How deep the bottom stands in its grooves.
    pub groove: Length,
    /// Box heights are whole multiples of it.
    pub step: Length,
    /// Clear height under the lowest box.
    pub below: Length,
    /// Clear height between two boxes.
    pub between: Length,
    /// Clear height over the highest box.
    pub above: Length,
    /// From a front's lower edge up to its box's underside, as wished.
    pub rise: Length,
    /// The least that may be.
    pub rise_least: Length,
    /// The most that may be.
    pub rise_most: Length,
}

impl Default for BoxRules {
    /// Clearances are common practice. Source of 15, 25, 10: one drawer maker's general rule. The rest are house defaults.
    fn default() -> Self {
        Self {
            groove: Length::from_mm(8),
            step: Length::from_mm(8),
            below: Length::from_mm(15),
            between: Length::from_mm(25),
            above: Length::from_mm(10),
            rise: Length::from_mm(35),
            rise_least: Length::from_mm(18),
            rise_most: Length::from_mm(54),
        }
    }
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Bit {
    /// Flat, for blind holes.
    Flat,
    /// Pointed, for through holes.
    Pointed,
}

impl Bit {
    /// The word of the trade: `flat` or `pointed`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Flat => "flat",
            Self::Pointed => "pointed",
        }
    }
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
            front_board: Some(CardId::known("board-19")),
            box_board: Some(CardId::known("board-15")),
            connector: Some(CardId::known("connector-cam")),
            rail: Some(CardId::known("rail-long")),
            fronts: FrontRules::default(),
            band: Band::default(),
            boxes: BoxRules::default(),
            bench: BenchRules::default(),
        }
    }

    /// The board fronts are made of.
    #[must_use]
    pub fn front_board(&self) -> &CardId {
        self.front_board.as_ref().unwrap_or(&self.board)
    }

    /// The board drawer boxes are made of.
    #[must_use]
    pub fn box_board(&self) -> &CardId {
        self.box_board.as_ref().unwrap_or(&self.board)
    }
}
