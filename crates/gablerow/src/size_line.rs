//! The lines of the list of sizes: what update steps through and view shows.

use gablerow_core::edit::{Choice, Measure};

/// A line of the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeLine {
    /// A length.
    Measure(Measure),
    /// A choice.
    Choice(Choice),
}

/// The lines of the list, in their order.
pub fn lines() -> impl Iterator<Item = SizeLine> {
    let measures = Measure::ALL.into_iter().map(SizeLine::Measure);
    measures.chain(Choice::ALL.into_iter().map(SizeLine::Choice))
}
