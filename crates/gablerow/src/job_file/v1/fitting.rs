//! Twins of what a bay owns: zones, shelves, plates, runners. Each is one line of the file.

use gablerow_core::job;
use gablerow_core::job::{CardId, HolePlace};

use super::first;
use super::measure::{Measure, Mm};
use super::text::Text;
use super::twin::{Key, plain, record, words};

words! {
    /// Which rows of a bay carry its pins.
    #[derive(Default)]
    PinRows = job::PinRows {
        /// Front row and back row.
        #[default]
        Two = "two",
        /// A third row midway, for deep shelves.
        Three = "three",
    }
}

words! {
    /// Left or right, seen from the front of the cabinet.
    Hand = job::Hand {
        /// To the left.
        Left = "left",
        /// To the right.
        Right = "right",
    }
}

record! {
    /// A run of pin holes on both walls of a bay, both ends included.
    Zone = job::Zone {
        /// Its name in the cabinet.
        key: Key,
        /// The lowest hole.
        first: Text<HolePlace>,
        /// The highest hole.
        last: Text<HolePlace>,
        /// How deep its holes are, in mm.
        depth: Measure<job::Depth>,
    }
}

record! {
    /// A loose shelf on the pins of one hole number.
    Shelf = job::Shelf {
        /// Its name in the cabinet.
        key: Key,
        /// The hole its pins stand in.
        hole: Text<HolePlace>,
        /// The board it is made of.
        board: Text<CardId>,
        /// From the bay's front to the shelf's front edge, in mm; left out when flush.
        #[serde(default, skip_serializing_if = "plain")]
        setback_front: Mm,
        /// How much shorter it is than its bay is wide, in mm.
        #[serde(default = "first::shelf_shorter")]
        shorter: Mm,
        /// The load it shall carry, in grams; a wish.
        #[serde(default, skip_serializing_if = "plain")]
        load_grams: Option<u32>,
        /// The clear height wanted over it, in mm; a wish.
        #[serde(default, skip_serializing_if = "plain")]
        clear: Option<Mm>,
    }
}

record! {
    /// A hinge plate on one wall of a bay.
    Plate = job::Plate {
        /// Its name in the cabinet.
        key: Key,
        /// The wall it is screwed to.
        wall: Hand,
        /// Its hole; of a plate along the row the lower of its two.
        hole: Text<HolePlace>,
        /// The hinge card.
        card: Text<CardId>,
        /// The key of the door it carries.
        #[serde(default, skip_serializing_if = "plain")]
        serves: Option<Key>,
    }
}

record! {
    /// A pair of drawer runners, one on each wall of a bay.
    Runner = job::Runner {
        /// Its name in the cabinet.
        key: Key,
        /// The hole of its screw line.
        hole: Text<HolePlace>,
        /// The runner card.
        card: Text<CardId>,
        /// Which of the card's lengths, by its name in mm.
        length: Mm,
        /// Whole pitches it is set back from the usual place; left out for none.
        #[serde(default, skip_serializing_if = "plain")]
        set_back: u8,
        /// Packing between the walls and the runners; left out for none.
        #[serde(default, skip_serializing_if = "plain")]
        spacers: Spacers,
        /// The key of the drawer front it carries.
        #[serde(default, skip_serializing_if = "plain")]
        serves: Option<Key>,
    }
}

record! {
    /// Packing between each wall and the runner on it.
    #[derive(Copy, Default)]
    Spacers = job::Spacers {
        /// On the left wall, in mm; left out for none.
        #[serde(default, skip_serializing_if = "plain")]
        left: Mm,
        /// On the right wall, in mm; left out for none.
        #[serde(default, skip_serializing_if = "plain")]
        right: Mm,
    }
}
