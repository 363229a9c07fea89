//! What figures of strength rest on, in the words that stand beside them wherever they are shown.

use alloc::format;
use alloc::string::String;

use super::{LIMITS, Standing, TIP_LEAST_KG};
use crate::cards::Board;
use crate::source::WOOD_2010;

/// What the sag of a shelf is reckoned by, and both limits of the house.
#[must_use]
pub fn sag_rests_on() -> String {
    let [share, most, ..] = &LIMITS;
    let limits = [share, most].map(|limit| format!("{}: {}", limit.words, limit.standing.words()));
    format!("sag: {}; {}", WOOD_2010.name, limits.join("; "))
}

/// What the load that tips a shelf is reckoned by, and the least that is wished.
#[must_use]
pub fn tip_rests_on() -> String {
    let practice = Standing::Practice.words();
    let guess = Standing::HouseGuess.words();
    format!("load that tips: {practice}; {TIP_LEAST_KG} kg wished at least: {guess}")
}

/// The figures of a board that strength is reckoned with, each with its origin.
#[must_use]
pub fn board_rests_on(board: &Board) -> String {
    let density = board.density;
    let of_density = density.origin.words();
    let mut line = format!("{}: {} kg/m3: {of_density}", board.id, density.value);
    if let Some(stiffness) = board.stiffness {
        line += &format!("; {} N/mm2: {}", stiffness.value, stiffness.origin.words());
    }
    if let Some(creep) = board.creep {
        line += &format!("; after years {} %: {}", creep.value, creep.origin.words());
    }
    line
}
