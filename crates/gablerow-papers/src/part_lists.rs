//! Which lists of parts there are on paper: what each is called, its columns, what has to be known to read it.

use crate::page::TextEnd;
use crate::sheets::Column;

/// What stands on its left.
const fn left(head: &'static str) -> Column {
    (head, TextEnd::Start)
}

/// Numbers, which end under each other.
const fn right(head: &'static str) -> Column {
    (head, TextEnd::End)
}

/// The columns of the cut list. What the saw makes stands before what becomes of it.
const CUT: [Column; 11] = [
    left(""),
    right("no."),
    left("part"),
    right("CUT length"),
    right("CUT width"),
    right("thick"),
    left("board"),
    left("grain"),
    left("band on"),
    right("length"),
    right("width"),
];

const FRONTS: [Column; 10] = [
    left(""),
    right("no."),
    left("name"),
    left("front"),
    right("width"),
    right("height"),
    right("thick"),
    right("CUT width"),
    right("CUT height"),
    right("mass"),
];

const BOXES: [Column; 10] = [
    left(""),
    right("no."),
    left("name"),
    right("outside"),
    right("inside"),
    right("length"),
    right("height"),
    right("at most"),
    right("rise"),
    right("hole"),
];

const SHELVES: [Column; 11] = [
    left(""),
    right("no."),
    right("bay"),
    right("hole"),
    right("length"),
    right("width"),
    right("thick"),
    right("CUT length"),
    right("CUT width"),
    right("clear below"),
    right("clear above"),
];

const BAG: [Column; 6] = [
    left(""),
    right("take"),
    left("hardware"),
    right("needed"),
    right("length"),
    left("card"),
];

/// A list of parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) enum PartList {
    /// All that is sawn.
    Cut,
    /// Doors and drawer fronts, with hinges and cups.
    Fronts,
    /// Drawer boxes.
    Boxes,
    /// Loose shelves.
    Shelves,
    /// Hardware.
    Bag,
}

impl PartList {
    /// All of them, in the order they are worked through.
    #[cfg(test)]
    pub(crate) const ALL: [Self; 5] = [
        Self::Cut,
        Self::Fronts,
        Self::Boxes,
        Self::Shelves,
        Self::Bag,
    ];

    /// What it is called.
    #[must_use]
    pub(crate) fn word(self) -> &'static str {
        match self {
            Self::Cut => "cut list",
            Self::Fronts => "doors and fronts",
            Self::Boxes => "drawer boxes",
            Self::Shelves => "loose shelves",
            Self::Bag => "bag of hardware",
        }
    }

    /// What has to be known to read it.
    pub(crate) fn key(self) -> &'static str {
        match self {
            Self::Cut => {
                "Lengths run along the grain, which lies up, across or deep in the cabinet. CUT is what the saw makes, without bands \
                 and with what the bander mills off; the last two columns are finished sizes."
            }
            Self::Fronts => {
                "All edges are banded, the grain runs up. CUT is what the saw makes; width, height and thickness are finished."
            }
            Self::Boxes => {
                "Length is from front to back; rise is from the lower edge of the front up to the underside of the box; hole is the \
                 number of the runner's line."
            }
            Self::Shelves => {
                "Lengths run along the grain, from left to right. Shelves lie on pins in the holes named, counted from the foot."
            }
            Self::Bag => {
                "Of what gets lost a tenth more is taken along. Lengths are those by name."
            }
        }
    }

    /// What stands over its columns.
    pub(crate) fn columns(self) -> &'static [Column] {
        match self {
            Self::Cut => &CUT,
            Self::Fronts => &FRONTS,
            Self::Boxes => &BOXES,
            Self::Shelves => &SHELVES,
            Self::Bag => &BAG,
        }
    }
}
