//! Jobs for tests: builders that let a test name only what it is about, and any job that a job file can hold.

mod build;
mod cards;
mod edits;
mod fittings;
mod jobs;
mod measured;
mod openings;
mod shop;

use proptest::prelude::*;

pub(crate) use build::*;
pub(crate) use edits::{Wish, wish};
pub(crate) use jobs::job;
pub(crate) use measured::{measure_faces, measured_job};

use crate::job::{Datum, Hand, HolePlace};
use crate::measure::Length;
use crate::measure::range::Range;

/// Any length of a range: whole millimetres as people type them, any count, and both bounds.
pub(crate) fn within(range: &Range) -> impl Strategy<Value = Length> + Clone + use<> {
    let (min, max) = (range.min, range.max);
    let whole = min.counts() / Length::COUNTS_PER_MM..=max.counts() / Length::COUNTS_PER_MM;
    prop_oneof![
        6 => whole.prop_map(Length::from_mm),
        3 => (min.counts()..=max.counts()).prop_map(Length::from_counts),
        1 => prop::sample::select(vec![min, max]),
    ]
}

pub(crate) fn hand() -> impl Strategy<Value = Hand> + Clone {
    prop::sample::select(vec![Hand::Left, Hand::Right])
}

pub(crate) fn datum() -> impl Strategy<Value = Datum> + Clone {
    prop::sample::select(Datum::ALL.to_vec())
}

/// Any place that a job can hold; most of them lie on the grid of a common cabinet.
pub(crate) fn place() -> impl Strategy<Value = HolePlace> + Clone {
    (datum(), prop_oneof![9 => -2..30_i16, 1 => -400..=400_i16])
        .prop_map(|(datum, count)| HolePlace { datum, count })
}
