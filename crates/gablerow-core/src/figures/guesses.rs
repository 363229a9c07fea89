//! What the code goes by for lack of anything printed: the trade's habits, and house guesses.

use alloc::format;
use alloc::vec::Vec;

use super::{Figure, figure, mm};
use crate::bench::{COUNTED_WITHIN, MEASURED_OFF_MOST, PACKER_MOST};
use crate::check::{
    BASE_OFF_MOST, BEARING_LEAST, BY_EYE, DEPTH_OFF_MOST, DIFFER_MOST, LOAD_MOST, NEARLY, OFF_MOST,
    ROCK_MOST, ROCK_STOP, ROW_OFF, SHIFT_MOST, SHOW_SKIN, SPREAD_FIFTHS,
};
use crate::grid::BALANCED_WITHIN;
use crate::job::LENGTH_OFF;
use crate::layout::{LIFT_ROOM, SHELF_SETBACK, SHELF_SHORTER, SHELF_TO_BACK};
use crate::measure::Length;
use crate::parts::{
    BACK_SHORTER, BAND_MORE, BAND_OVER, BOARD_MORE, BOTTOM_SHORTER, BOTTOM_THICKNESS,
    CLEAR_OF_DOOR, FEET, MORE_OF_EACH, WIDE,
};
use crate::propose::BOX_LEAST;
use crate::solve::hinges::{END_LEAST, HANDED_OVER};
use crate::source::Standing;
use crate::strength::{SHELF_LOAD_KG, TIP_LEAST_KG};

/// Lengths first, then what is counted, weighed or a share.
pub(super) fn all() -> Vec<Figure> {
    let lengths = LENGTHS
        .iter()
        .map(|&(used, what, length)| figure(used, what, mm(length), Standing::HouseGuess));
    lengths.chain(others()).collect()
}

/// Where a length is used, what it is, the length.
const LENGTHS: [(&str, &str, Length); 29] = [
    ("balance", "counts as balanced within", BALANCED_WITHIN),
    ("hinges", "first plate from a door's end, least", END_LEAST),
    ("hinges", "cups this unlike make a door handed", HANDED_OVER),
    (
        "hinges",
        "front row off where its door wants it, most",
        ROW_OFF,
    ),
    ("shelves", "shorter than their bay", SHELF_SHORTER),
    ("shelves", "before the back panel", SHELF_TO_BACK),
    ("shelves", "set back from the front", SHELF_SETBACK),
    ("shelves", "room over one to lift it in, least", LIFT_ROOM),
    (
        "shelves",
        "borne by pins when pushed aside, least",
        BEARING_LEAST,
    ),
    ("shelves", "rock, most", ROCK_MOST),
    ("shelves", "rock before a stop, most", ROCK_STOP),
    ("drawer boxes", "height worth making, least", BOX_LEAST),
    ("drawer boxes", "clear of an open door", CLEAR_OF_DOOR),
    (
        "drawer boxes",
        "bottom shorter than its seat",
        BOTTOM_SHORTER,
    ),
    ("drawer boxes", "bottom, for its mass", BOTTOM_THICKNESS),
    ("panels", "back shorter than its seat", BACK_SHORTER),
    ("panels", "board behind a face that shows, least", SHOW_SKIN),
    (
        "boards as cut",
        "off before it is cut again, most",
        OFF_MOST,
    ),
    ("boards as cut", "two sides unlike, most", DIFFER_MOST),
    (
        "boards as cut",
        "rows shifted by an end out of square, most",
        SHIFT_MOST,
    ),
    ("bands", "more for each edge", BAND_OVER),
    (
        "at the bench",
        "length off that nothing is done about, most",
        LENGTH_OFF,
    ),
    ("at the bench", "packer, thickest", PACKER_MOST),
    (
        "at the bench",
        "test hole off in depth, most",
        DEPTH_OFF_MOST,
    ),
    ("at the bench", "base off its middle, most", BASE_OFF_MOST),
    (
        "at the bench",
        "a setting by a pencil line is off by",
        BY_EYE,
    ),
    (
        "at the bench",
        "counts as whole holes off within",
        COUNTED_WITHIN,
    ),
    (
        "at the bench",
        "a measured distance off, most",
        MEASURED_OFF_MOST,
    ),
    ("lengths", "read as whole inches within", NEARLY),
];

fn others() -> [Figure; 8] {
    let guess = |used, what, value| figure(used, what, value, Standing::HouseGuess);
    let habit = |used, what, value| figure(used, what, value, Standing::Practice);
    [
        guess(
            "sag of shelves",
            "load of a shelf where none is typed",
            format!("{SHELF_LOAD_KG} kg"),
        ),
        guess(
            "tipping of shelves",
            "least load that may tip a shelf",
            format!("{TIP_LEAST_KG} kg"),
        ),
        guess(
            "hinges",
            "first to last, least",
            format!("{SPREAD_FIFTHS}/5 of the door's width"),
        ),
        guess(
            "runners",
            "drawer, of what they carry, most",
            format!("{LOAD_MOST} %"),
        ),
        guess("bands", "more of all", format!("{BAND_MORE} %")),
        guess("boards", "more of all", format!("{BOARD_MORE} %")),
        habit(
            "counts",
            "feet, and more of a wide cabinet",
            format!("{}, and {} over {}", FEET[0], FEET[1], mm(WIDE)),
        ),
        habit(
            "counts",
            "more of what gets lost",
            format!("{MORE_OF_EACH} %"),
        ),
    ]
}
