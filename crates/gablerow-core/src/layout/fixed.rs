//! Fixed panels: the space they take on the faces they meet.

use super::{Item, KeepOut, Span};
use crate::job::{CardId, Key, TopKind};
use crate::measure::Length;
use crate::sum::Sum;

/// A panel between two uprights, or across all of them, where it is seen from the front.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PanelLayout {
    /// What it is.
    pub item: Item,
    /// The fixed shelf it is; `None` for parts of the carcass.
    pub owner: Option<Key>,
    /// The board it is made of.
    pub board: CardId,
    /// From the outer face of the left side to its left end, housing included.
    pub across: Length,
    /// How long it is, housing included.
    pub length: Sum,
    /// Front to back, from the carcass front.
    pub x: Span,
    /// Foot to head, from the carcass underside.
    pub z: Span,
}

/// A horizontal panel that meets the walls of an opening: its box front to back and foot to head.
#[derive(Clone, Copy)]
pub(super) struct FixedPanel {
    pub(super) item: Item,
    pub(super) owner: Option<Key>,
    pub(super) x: Span,
    pub(super) z: Span,
}

impl FixedPanel {
    /// Its keep-out on a wall of an opening of this width.
    pub(super) fn keep_out(self, width: Length) -> KeepOut {
        let Self { item, owner, x, z } = self;
        KeepOut {
            item,
            owner,
            x,
            z,
            u: Span::new(Length::ZERO, width),
        }
    }
}

/// The bottom panel, from the carcass underside up.
pub(super) fn bottom(thickness: Length, inner_depth: Length) -> FixedPanel {
    FixedPanel {
        item: Item::Bottom,
        owner: None,
        x: Span::new(Length::ZERO, inner_depth),
        z: Span::new(Length::ZERO, thickness),
    }
}

/// What holds the carcass at its head: one panel, or a stretcher in front and one behind.
pub(super) fn top(
    kind: TopKind,
    thickness: Length,
    height: Length,
    inner_depth: Length,
) -> [Option<FixedPanel>; 2] {
    let panel = |item, from: Length, to: Length, high: Length| {
        let (x, z) = (Span::new(from, to), Span::new(height - high, height));
        Some(FixedPanel {
            item,
            owner: None,
            x,
            z,
        })
    };
    let pair = |wide: Length, high: Length| {
        let wide = wide.min(inner_depth.half());
        [
            panel(Item::Stretcher, Length::ZERO, wide, high),
            panel(Item::Stretcher, inner_depth - wide, inner_depth, high),
        ]
    };
    match kind {
        TopKind::Panel(_) => [panel(Item::Top, Length::ZERO, inner_depth, thickness), None],
        TopKind::FlatStretchers(width) => pair(width, thickness),
        TopKind::EdgeStretchers(high) => pair(thickness, high),
    }
}

/// A rail on edge before the back panel, right under what closes the carcass above.
pub(super) fn rail(
    thickness: Length,
    height: Length,
    ceiling: Length,
    inner_depth: Length,
) -> FixedPanel {
    FixedPanel {
        item: Item::BackRail,
        owner: None,
        x: Span::new(inner_depth - thickness, inner_depth),
        z: Span::new(ceiling - height, ceiling),
    }
}

/// How much of the height the top takes.
pub(super) fn top_taken(kind: TopKind, thickness: Length) -> (&'static str, Length) {
    match kind {
        TopKind::Panel(_) => ("top", thickness),
        TopKind::FlatStretchers(_) => ("stretcher", thickness),
        TopKind::EdgeStretchers(high) => ("stretcher on edge", high),
    }
}
