//! Formulas, in the program's own words.

use alloc::vec::Vec;

use super::{Figure, figure};
use crate::source::{self, Standing};

/// Relations that were printed, in the program's own words; each stands in the code with its source. Where it is used, what it
/// is, the relation, who prints it.
const FORMULAS: [(&str, &str, &str, &source::Source); 16] = [
    (
        "first holes",
        "first hole, gaps on holes",
        "(reveal - gap/2) mod 32",
        source::FIRST_HOLES,
    ),
    (
        "first holes",
        "first hole, gaps between holes",
        "16 more",
        source::FIRST_HOLES,
    ),
    (
        "partitions",
        "first hole on a bottom of t",
        "32k - t/2, o = t/2",
        source::LOWEST_DRAWER,
    ),
    (
        "back rows",
        "from the back edge; from the back panel",
        "37 either way",
        source::SYSTEM_32,
    ),
    (
        "back rows",
        "on whole pitches",
        "37 + 32m",
        source::BACK_ON_PITCH,
    ),
    (
        "front rows",
        "of doors inside the opening",
        "37 + door + set-in",
        source::INSET,
    ),
    (
        "fronts",
        "a front of m modules",
        "32m - gap",
        source::FRONT_HEIGHTS,
    ),
    (
        "hinges",
        "overlay",
        "arm + tab - plate",
        source::HINGE_SHEETS,
    ),
    (
        "hinges",
        "cup from the door's edge",
        "half the cup + tab",
        source::HINGE_CUP,
    ),
    (
        "hinges",
        "middle of a plate along the row",
        "16 above its lower hole",
        source::FRONT_HEIGHTS,
    ),
    (
        "drawer boxes",
        "width",
        "clear width - what the runners take",
        source::BOX_PAGES,
    ),
    (
        "runners",
        "holes from the first",
        "whole pitches",
        source::RUNNER_GUIDE,
    ),
    (
        "sag of shelves",
        "even load on two supports",
        "5*w*L^4 / (384*E*I)",
        source::WOOD_2010,
    ),
    (
        "sag of shelves",
        "I of a board",
        "d*t^3 / 12",
        source::WOOD_2010,
    ),
    (
        "sag of shelves",
        "after years",
        "sag * (1 + kdef)",
        source::EUROCODE_5,
    ),
    (
        "tip-over",
        "closed storage",
        "drawers + what else is closed / 2",
        source::CFR_1261,
    ),
];

/// Relations that were printed, and the one of the trade.
pub(super) fn all() -> Vec<Figure> {
    let printed = FORMULAS
        .iter()
        .map(|&(used, what, value, source)| figure(used, what, value, Standing::Published(source)));
    printed
        .chain([figure(
            "tipping of shelves",
            "load on the front edge that tips a shelf",
            "mass * (d/2 - a) / a",
            Standing::Practice,
        )])
        .collect()
}
