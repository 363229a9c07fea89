//! A piece of board: its finished size, its bands, and the size the saw makes.

use super::Make;
use crate::cards::CardId;
use crate::job::Band;
use crate::measure::Length;
use crate::sum::Sum;

/// A piece of board.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// The board it is made of.
    pub board: CardId,
    /// As measured; `None` when the board's card is not there.
    pub thickness: Option<Length>,
    /// Along the grain, finished.
    pub length: Sum,
    /// Across the grain, finished.
    pub width: Sum,
    /// Which edges are banded.
    pub banded: Banded,
    /// Which way the grain runs in the cabinet.
    pub grain: Grain,
    /// Along the grain, as the saw makes it.
    pub cut_length: Sum,
    /// Across the grain, as the saw makes it.
    pub cut_width: Sum,
}

/// Which edges of a piece are banded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Banded {
    /// None.
    None,
    /// The front edge.
    Front,
    /// The lower edge of a piece that stands on edge.
    Foot,
    /// All four.
    All,
}

/// Which way the grain of a piece runs in the cabinet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Grain {
    /// From foot to head.
    Up,
    /// From left to right.
    Across,
    /// From front to back.
    Deep,
}

impl Banded {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::None, Self::Front, Self::Foot, Self::All];

    /// The edges, in the words of the trade.
    #[must_use]
    pub fn edges(self) -> &'static [&'static str] {
        match self {
            Self::None => &[],
            Self::Front => &["front"],
            Self::Foot => &["foot"],
            Self::All => &["left", "right", "foot", "head"],
        }
    }

    /// How many banded edges take from the length, how many from the width. A single one runs along the grain.
    #[must_use]
    pub fn across(self) -> [i32; 2] {
        match self {
            Self::None => [0, 0],
            Self::Front | Self::Foot => [0, 1],
            Self::All => [2, 2],
        }
    }
}

impl Grain {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Up, Self::Across, Self::Deep];

    /// The word of the trade.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Up => "up",
            Self::Across => "across",
            Self::Deep => "deep",
        }
    }
}

/// What the saw makes of a finished measure: less a band on each banded edge, and with what the bander mills off there.
pub(super) fn cut(finished: Sum, edges: i32, band: &Band) -> Sum {
    finished
        .less("bands", band.thickness * edges)
        .plus("pre-mill", band.pre_mill * edges)
}

impl Make<'_> {
    /// A piece of a board, `length` along the grain and `width` across it.
    pub(super) fn piece(
        &mut self,
        board: &CardId,
        [length, width]: [Sum; 2],
        banded: Banded,
        grain: Grain,
    ) -> Piece {
        let thickness = self.cards.board(board).map(|card| card.thickness.value);
        if thickness.is_none() {
            self.no_card(board);
        }
        let [over_length, over_width] = banded.across();
        Piece {
            board: board.clone(),
            thickness,
            length,
            width,
            banded,
            grain,
            cut_length: cut(length, over_length, &self.shop.band),
            cut_width: cut(width, over_width, &self.shop.band),
        }
    }
}
