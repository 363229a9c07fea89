//! Constants: units, the grid, the scope of tip-over.

use alloc::format;
use alloc::vec::Vec;

use super::{Figure, figure, mm};
use crate::check::THICKNESS_OFF_MOST;
use crate::measure::Length;
use crate::source::{self, Standing};
use crate::strength::{GRAVITY, POUND, TIP_OVER_HEIGHT, TIP_OVER_MASS_KG, TIP_OVER_STORAGE_DM3};

/// Constants with a source, and the one of the trade.
pub(super) fn all() -> Vec<Figure> {
    let inch = Length::from_counts(Length::COUNTS_PER_INCH);
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
