//! The bag: hardware by kind, and what to take.

use alloc::vec::Vec;

use super::{Built, Make};
use crate::cards::{CardId, RunnerKind};
use crate::job::{Division, Fastener, Joint, Opening, PinRows, Stand};
use crate::measure::Length;

/// Feet of a cabinet, and how many more where it is wide or a partition stands on its bottom: common practice.
pub(crate) const FEET: [u32; 2] = [4, 2];

/// How many hundredths more is taken of what is small and gets lost: common practice.
pub(crate) const MORE_OF_EACH: u32 = 10;

/// A cabinet is wide above this width: common practice.
pub(crate) const WIDE: Length = Length::from_mm(900);

/// One kind of hardware, and how much of it all that is built of a cabinet takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BagLine {
    /// What it is.
    pub kind: BagKind,
    /// Its card; `None` for what has none.
    pub card: Option<CardId>,
    /// Its length by name, for runners.
    pub length: Option<Length>,
    /// How many there are, or how many pairs.
    pub count: u32,
    /// How many to take along: of what gets lost, a tenth more, rounded up.
    pub take: u32,
}

/// Kinds of hardware.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BagKind {
    /// Hinges without their plates.
    Hinge,
    /// Hinge plates.
    Plate,
    /// Screws of hinge cups.
    CupScrew,
    /// Screws of plates and runners, for system holes.
    SystemScrew,
    /// Shelf pins.
    Pin,
    /// Drawer runners, in pairs.
    Runner,
    /// What joins a box to the front end of its undermount runners, in pairs.
    FrontConnector,
    /// Dowels of joints.
    Dowel,
    /// Screws and screwed connectors of joints.
    Connector,
    /// Feet.
    Foot,
}

impl BagKind {
    /// All of them, in the order of a bag.
    pub const ALL: [Self; 10] = [
        Self::Hinge,
        Self::Plate,
        Self::CupScrew,
        Self::SystemScrew,
        Self::Pin,
        Self::Runner,
        Self::FrontConnector,
        Self::Dowel,
        Self::Connector,
        Self::Foot,
    ];

    /// The words of the trade, for several of them.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Hinge => "hinges",
            Self::Plate => "plates",
            Self::CupScrew => "cup screws",
            Self::SystemScrew => "system screws",
            Self::Pin => "pins",
            Self::Runner => "runners",
            Self::FrontConnector => "front connectors",
            Self::Dowel => "dowels",
            Self::Connector => "connectors",
            Self::Foot => "feet",
        }
    }

    /// Whether it is counted in pairs.
    #[must_use]
    pub fn in_pairs(self) -> bool {
        matches!(self, Self::Runner | Self::FrontConnector)
    }

    /// Whether it is small and gets lost, so that some more is taken.
    #[must_use]
    pub fn gets_lost(self) -> bool {
        matches!(
            self,
            Self::CupScrew | Self::SystemScrew | Self::Pin | Self::Dowel | Self::Connector
        )
    }

    /// How many to take where so many are needed.
    #[must_use]
    pub fn take(self, count: u32) -> u32 {
        if self.gets_lost() {
            count.saturating_add(count.saturating_mul(MORE_OF_EACH).div_ceil(100))
        } else {
            count
        }
    }
}

/// A bag that is being filled.
#[derive(Default)]
struct Bag(Vec<BagLine>);

impl Bag {
    fn put(&mut self, kind: BagKind, card: Option<&CardId>, length: Option<Length>, count: u32) {
        let same = |line: &&mut BagLine| {
            (line.kind, line.card.as_ref(), line.length) == (kind, card, length)
        };
        match self.0.iter_mut().find(same) {
            Some(line) => line.count = line.count.saturating_add(count),
            None if count == 0 => {}
            None => self.0.push(BagLine {
                kind,
                card: card.cloned(),
                length,
                count,
                take: 0,
            }),
        }
    }
}

impl Make<'_> {
    /// The hardware of all that is built.
    pub(super) fn bag(&self, built: Built) -> Vec<BagLine> {
        let mut bag = Bag::default();
        self.fittings(&mut bag);
        self.joints(&mut bag);
        bag.put(BagKind::Foot, None, None, self.feet());
        let mut lines = bag.0;
        for line in &mut lines {
            line.count = line.count.saturating_mul(built.total());
            line.take = line.kind.take(line.count);
        }
        lines.sort_by(|a, b| (a.kind, &a.card, a.length).cmp(&(b.kind, &b.card, b.length)));
        lines
    }

    fn fittings(&self, bag: &mut Bag) {
        for (_, bay) in self.bays() {
            for plate in &bay.plates {
                let card = Some(&plate.card);
                bag.put(BagKind::Hinge, card, None, 1);
                bag.put(BagKind::Plate, card, None, 1);
                bag.put(BagKind::CupScrew, None, None, 2);
                bag.put(BagKind::SystemScrew, None, None, 2);
            }
            for runner in &bay.runners {
                let card = self.cards.runner(&runner.card);
                let rows = card
                    .and_then(|card| card.length(runner.length))
                    .map_or(0, |length| length.steps.len());
                let screws = u32::try_from(2 * rows).unwrap_or(u32::MAX);
                bag.put(BagKind::Runner, Some(&runner.card), Some(runner.length), 1);
                bag.put(BagKind::SystemScrew, None, None, screws);
                if card.is_some_and(|card| card.kind == RunnerKind::Undermount) {
                    bag.put(BagKind::FrontConnector, Some(&runner.card), None, 1);
                }
            }
            let pins = match bay.pin_rows {
                PinRows::Two => 4,
                PinRows::Three => 6,
            };
            for _ in &bay.shelves {
                bag.put(BagKind::Pin, Some(&self.shop.pin), None, pins);
            }
        }
    }

    /// The fasteners of every joint: both ends of what lies, either end of what stands.
    fn joints(&self, bag: &mut Bag) {
        let mut put = |joint: &Joint, ends: u32| {
            for bore in &joint.bores {
                let kind = match bore.fastener {
                    Fastener::Dowel => BagKind::Dowel,
                    Fastener::Connector => BagKind::Connector,
                };
                bag.put(kind, None, None, ends);
            }
        };
        let carcass = &self.cabinet.carcass;
        put(&carcass.bottom.joint, 2);
        put(&carcass.top.joint, 2);
        self.cabinet
            .opening
            .each(&mut |opening| match &opening.division {
                Division::Bay(_) => {}
                Division::SideBySide(parts) => {
                    for (partition, _) in &parts.rest {
                        put(&partition.foot, 1);
                        put(&partition.head, 1);
                    }
                }
                Division::Stacked(parts) => {
                    for (shelf, _) in &parts.rest {
                        put(&shelf.joint, 2);
                    }
                }
            });
    }

    fn feet(&self) -> u32 {
        let [usual, more] = FEET;
        match self.cabinet.carcass.stand {
            Some(Stand::Feet(_)) => {
                let wide = self.cabinet.size.width > WIDE;
                usual
                    + if wide || stands_on_bottom(&self.cabinet.opening) {
                        more
                    } else {
                        0
                    }
            }
            Some(Stand::Plinth(_)) | None => 0,
        }
    }
}

/// Whether a partition stands on the bottom.
fn stands_on_bottom(opening: &Opening) -> bool {
    match &opening.division {
        Division::Bay(_) => false,
        Division::SideBySide(_) => true,
        Division::Stacked(parts) => stands_on_bottom(&parts.first),
    }
}
