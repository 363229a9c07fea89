//! Constants: units, the grid, house guesses of the code.

use alloc::format;
use alloc::vec::Vec;

use super::{Figure, figure, mm};
use crate::check::THICKNESS_OFF_MOST;
use crate::grid::BALANCED_WITHIN;
use crate::layout::{SHELF_SETBACK, SHELF_SHORTER, SHELF_TO_BACK};
use crate::measure::Length;
use crate::solve::hinges::{END_LEAST, HANDED_OVER};
use crate::source::{self, Standing};
use crate::strength::{
    GRAVITY, POUND, SHELF_LOAD_KG, TIP_LEAST_KG, TIP_OVER_HEIGHT, TIP_OVER_MASS_KG,
    TIP_OVER_STORAGE_DM3,
};

/// Units, the grid, strength, and what the program takes for lack of anything printed.
pub(super) fn all() -> Vec<Figure> {
    let inch = Length::from_counts(Length::COUNTS_PER_INCH);
    let guess = |used, what, length| figure(used, what, mm(length), Standing::HouseGuess);
    let yard = Standing::Published(source::YARD);
    let rule = Standing::Published(source::CFR_1261);
    let grid = Standing::Published(source::SYSTEM_32);
    [
        figure("lengths", "an inch", mm(inch), yard),
        figure("masses", "a pound", format!("{POUND} kg"), yard),
        figure("the grid", "centre to centre", mm(Length::PITCH), grid),
        figure(
            "sag of shelves",
            "weight of 1 kg",
            format!("{GRAVITY} N"),
            Standing::Practice,
        ),
        figure(
            "boards as cut",
            "thickness off the card, most",
            mm(THICKNESS_OFF_MOST),
            Standing::Published(source::EN_312),
        ),
        guess("balance", "counts as balanced within", BALANCED_WITHIN),
        guess("hinges", "first plate from a door's end, least", END_LEAST),
        guess("hinges", "cups this unlike make a door handed", HANDED_OVER),
        guess("shelves", "shorter than their bay", SHELF_SHORTER),
        guess("shelves", "before the back panel", SHELF_TO_BACK),
        guess("shelves", "set back from the front", SHELF_SETBACK),
        figure(
            "sag of shelves",
            "load of a shelf where none is typed",
            format!("{SHELF_LOAD_KG} kg"),
            Standing::HouseGuess,
        ),
        figure(
            "tipping of shelves",
            "least load that may tip a shelf",
            format!("{TIP_LEAST_KG} kg"),
            Standing::HouseGuess,
        ),
        figure(
            "tip-over",
            "height from which a unit with drawers has the note",
            mm(TIP_OVER_HEIGHT),
            rule,
        ),
        figure(
            "tip-over",
            "mass of its scope",
            format!("{TIP_OVER_MASS_KG:.1} kg"),
            rule,
        ),
        figure(
            "tip-over",
            "closed storage of its scope",
            format!("{TIP_OVER_STORAGE_DM3:.1} dm3"),
            rule,
        ),
    ]
    .into()
}
