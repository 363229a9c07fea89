//! Every figure and formula the program goes by, and where each comes from; read off the places that use them.
//!
//! ```text
//! strength, solve, grid, layout   formulas, constants, tables --\
//! check, parts, propose           guesses ----------------------+
//! job, edit                       house: defaults --------------+--> Figure, Figure, ...
//! cards                           house: starter cards ---------/
//! ```

mod constants;
mod formulas;
mod guesses;
mod house;
mod tables;

use alloc::borrow::Cow;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use crate::measure::Length;
use crate::source::Standing;

/// A figure or a formula.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// Where the program uses it.
    pub used: &'static str,
    /// What it is.
    pub what: Cow<'static, str>,
    /// The figure with its unit, or the formula.
    pub value: Cow<'static, str>,
    /// Where it comes from.
    pub standing: Standing,
}

fn figure(
    used: &'static str,
    what: impl Into<Cow<'static, str>>,
    value: impl Into<Cow<'static, str>>,
    standing: Standing,
) -> Figure {
    Figure {
        used,
        what: what.into(),
        value: value.into(),
        standing,
    }
}

/// Every figure, by where it is used.
#[must_use]
pub fn figures() -> Vec<Figure> {
    let mut all = formulas::all();
    all.extend(constants::all());
    all.extend(guesses::all());
    all.extend(tables::all());
    all.extend(house::all());
    all
}

fn mm(length: Length) -> String {
    format!("{} mm", length.exact_mm())
}

#[cfg(test)]
mod tests;
