//! The table of a loose shelf.

use super::slot::Slot;
use super::{Carrier, Lines, Place, Quantity, Table};
use crate::cards::CardKind;
use crate::job::Shelf;
use crate::measure::range;

impl Table for Shelf {
    fn each(&mut self, visit: &mut dyn FnMut(Place<'_>)) {
        let mut lines = Lines {
            visit,
            group: "",
            length: None,
        };
        lines.place(
            "load",
            Quantity::MaybeLoad(Carrier::Shelf),
            Slot::MaybeLoad(&mut self.load_grams),
        );
        lines.place(
            "clear above",
            Quantity::MaybeLength(&range::CLEAR_OPENING, "no wish"),
            Slot::MaybeLength(&mut self.clear),
        );
        lines.place(
            "set back",
            Quantity::Length(&range::SHELF_SETBACK),
            Slot::Length(&mut self.setback_front),
        );
        lines.place(
            "shorter by",
            Quantity::Length(&range::SHELF_SHORTER),
            Slot::Length(&mut self.shorter),
        );
        lines.place(
            "board",
            Quantity::Card(CardKind::Board, ""),
            Slot::Card(&mut self.board),
        );
    }
}
