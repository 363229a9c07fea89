//! Panels of the carcass: uprights, what lies between them, the back.

use alloc::vec::Vec;
use core::fmt;

use super::{Banded, Grain, Make, Piece};
use crate::job::{Back, Key, PanelName as UprightName, TopKind};
use crate::layout::{Item, PanelLayout, Upright};
use crate::measure::Length;
use crate::sum::Sum;

/// What a back panel is shorter than its seat, in each direction, so that it goes in: a house default.
pub(crate) const BACK_SHORTER: Length = Length::from_mm(1);

/// A panel of the carcass.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PanelPart {
    /// What it is called.
    pub name: PanelName,
    /// The partition or fixed shelf it is; `None` for parts of the carcass.
    pub key: Option<Key>,
    /// The piece of board.
    pub piece: Piece,
}

/// What a panel is called; uprights and fixed shelves as all the rest of the program calls them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PanelName {
    /// A side or a partition.
    Upright(UprightName),
    /// The bottom.
    Bottom,
    /// A whole top.
    Top,
    /// The stretcher in front.
    FrontStretcher,
    /// The stretcher behind.
    BackStretcher,
    /// The rail before the back panel.
    BackRail,
    /// A fixed shelf, by its number.
    FixedShelf(u16),
}

impl fmt::Display for PanelName {
    /// `left side`, `partition 1`, `front stretcher`, `fixed shelf 2`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Upright(name) => name.fmt(f),
            Self::Bottom => f.write_str("bottom"),
            Self::Top => f.write_str("top"),
            Self::FrontStretcher => f.write_str("front stretcher"),
            Self::BackStretcher => f.write_str("back stretcher"),
            Self::BackRail => f.write_str("back rail"),
            Self::FixedShelf(number) => write!(f, "fixed shelf {number}"),
        }
    }
}

/// The back panel. No card names its board, so it has no thickness, no band and no cut size of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BackPart {
    /// From left to right.
    pub width: Sum,
    /// From foot to head; the grain runs up.
    pub height: Sum,
}

impl Make<'_> {
    /// The uprights from left to right, then what lies between them from the foot up.
    pub(super) fn panels(&mut self) -> Vec<PanelPart> {
        let layout = self.layout;
        let mut made = Vec::new();
        for upright in &layout.uprights {
            made.extend(self.upright(upright));
        }
        for panel in &layout.panels {
            made.push(self.between(panel));
        }
        made
    }

    fn upright(&mut self, upright: &Upright) -> Option<PanelPart> {
        let board = self.cabinet.board_of(upright.id)?;
        let name = PanelName::Upright(self.layout.names.panel(upright.id));
        let size = [
            upright.head.minus(&upright.foot),
            upright.back.minus(&upright.front),
        ];
        Some(PanelPart {
            name,
            key: upright.id.partition(),
            piece: self.piece(board, size, Banded::Front, Grain::Up),
        })
    }

    fn between(&mut self, panel: &PanelLayout) -> PanelPart {
        let on_edge = panel.item == Item::BackRail
            || panel.item == Item::Stretcher
                && matches!(self.cabinet.carcass.top.kind, TopKind::EdgeStretchers(_));
        let in_front = panel.x.from == Length::ZERO;
        let name = match panel.item {
            Item::Bottom => PanelName::Bottom,
            Item::Stretcher if in_front => PanelName::FrontStretcher,
            Item::Stretcher => PanelName::BackStretcher,
            Item::BackRail => PanelName::BackRail,
            Item::FixedShelf => {
                let number = panel.owner.and_then(|key| self.layout.names.shelf(key));
                PanelName::FixedShelf(number.unwrap_or_default())
            }
            Item::Top | Item::Hinge | Item::OpenDoor | Item::Runner | Item::Box | Item::Shelf => {
                PanelName::Top
            }
        };
        let banded = match name {
            PanelName::BackStretcher | PanelName::BackRail => Banded::None,
            PanelName::FrontStretcher if on_edge => Banded::Foot,
            _ => Banded::Front,
        };
        let width = if on_edge {
            Sum::of("height", panel.z.to - panel.z.from)
        } else {
            Sum::of("to its back edge", panel.x.to).less("to its front edge", panel.x.from)
        };
        PanelPart {
            name,
            key: panel.owner,
            piece: self.piece(&panel.board, [panel.length, width], banded, Grain::Across),
        }
    }

    /// The back panel. It passes behind the bottom and the top, which end at its front face, so it is as high as the carcass.
    ///
    /// | seat | width | height |
    /// | --- | --- | --- |
    /// | groove | inner width, its depth on both sides, 1 shorter | height, 1 shorter |
    /// | rabbet, in half the thickness of the sides | inner width, half a side on both sides, 1 shorter | height, 1 shorter |
    /// | planted | width, 1 shorter at both edges | height, 1 shorter at both edges |
    pub(super) fn back(&mut self) -> Option<BackPart> {
        let carcass = &self.cabinet.carcass;
        let size = self.cabinet.size;
        let side = self
            .cards
            .board(&carcass.sides.board)
            .map_or(Length::ZERO, |card| card.thickness.value);
        let inner = Sum::of("width", size.width)
            .less("left side", side)
            .less("right side", side);
        let seated = |words, depth: Length| BackPart {
            width: inner
                .plus(words, depth)
                .plus(words, depth)
                .less("shorter", BACK_SHORTER),
            height: Sum::of("height", size.height).less("shorter", BACK_SHORTER),
        };
        match carcass.back {
            Back::Groove { cut, .. } => Some(seated("in the groove", cut)),
            Back::Rabbet { .. } => Some(seated("in the rabbet", side.half())),
            Back::Planted => Some(BackPart {
                width: Sum::of("width", size.width).less("shorter", BACK_SHORTER * 2),
                height: Sum::of("height", size.height).less("shorter", BACK_SHORTER * 2),
            }),
            Back::Open => None,
        }
    }
}
