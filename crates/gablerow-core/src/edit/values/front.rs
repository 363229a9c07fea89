//! The table of a front: what a drawer holds. Its other values are lengths and choices of a part of the cabinet.

use super::slot::Slot;
use super::{Carrier, Lines, Place, Quantity, Table};
use crate::job::Front;

impl Table for Front {
    fn each(&mut self, visit: &mut dyn FnMut(Place<'_>)) {
        if !self.kind.is_drawer() {
            return;
        }
        let mut lines = Lines {
            visit,
            group: "",
            length: None,
        };
        lines.place(
            "contents",
            Quantity::MaybeLoad(Carrier::Drawer),
            Slot::MaybeLoad(&mut self.load_grams),
        );
    }
}
