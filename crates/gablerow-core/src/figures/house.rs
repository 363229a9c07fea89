//! What the house starts from: its defaults, and the starter cards.

use alloc::format;
use alloc::string::ToString;
use alloc::vec::Vec;

use super::{Figure, figure, mm};
use crate::cards::{Card, CardKind, Cards};
use crate::edit::{Content, Value, card_values, shop_values};
use crate::job::Shop;
use crate::measure::Unit;
use crate::source::{self, Standing};

/// House defaults, then the values of starter cards that follow something.
pub(super) fn all() -> Vec<Figure> {
    let defaults = shop_values(&Shop::starter());
    let mut all: Vec<Figure> = defaults.iter().filter_map(house_default).collect();
    all.extend(starter_cards());
    all
}

/// What house defaults rest on; all others are house guesses.
pub(super) const DEFAULTS: [(&str, Standing); 13] = [
    ("front row", Standing::Published(source::SYSTEM_32)),
    ("back row", Standing::Published(source::SYSTEM_32)),
    ("hole diameter", Standing::Published(source::SYSTEM_32)),
    ("clear under", Standing::Published(source::DRAWER_RULE)),
    ("clear between", Standing::Published(source::DRAWER_RULE)),
    ("clear over", Standing::Published(source::DRAWER_RULE)),
    ("gap of fronts", Standing::Published(source::FRONT_HEIGHTS)),
    ("reveal, foot", Standing::Practice),
    ("reveal, head", Standing::Practice),
    ("reveal, side", Standing::Practice),
    ("gap, inset", Standing::Practice),
    ("skin, flat bit", Standing::Practice),
    ("skin, pointed", Standing::Practice),
];

/// A house default that is a length; what is chosen is no figure.
fn house_default(value: &Value) -> Option<Figure> {
    let Content::Length(length) = value.now else {
        return None;
    };
    let words = value.name.words();
    let known = DEFAULTS.iter().find(|(name, _)| *name == words);
    let standing = known.map_or(Standing::HouseGuess, |(_, standing)| *standing);
    Some(figure("house defaults", words, mm(length), standing))
}

/// Values of starter cards that follow something printed: the card, the value, what it follows.
pub(super) const FOLLOWED: [(&str, &str, Standing); 9] = [
    (
        "board-18",
        "stiffness along it",
        Standing::Published(source::EN_312),
    ),
    (
        "board-16",
        "stiffness along it",
        Standing::Published(source::EN_312),
    ),
    (
        "board-18",
        "density",
        Standing::Published(source::BOARD_SHEET),
    ),
    (
        "board-16",
        "density",
        Standing::Published(source::BOARD_SHEET),
    ),
    (
        "hinge-plain",
        "tab, least",
        Standing::Published(source::HINGE_SHEETS),
    ),
    (
        "hinge-plain",
        "tab, most",
        Standing::Published(source::HINGE_SHEETS),
    ),
    ("hinge-plain", "cup", Standing::Published(source::HINGE_CUP)),
    (
        "runner-under",
        "off the width",
        Standing::Published(source::BOX_PAGES),
    ),
    (
        "runner-side",
        "off the width",
        Standing::Published(source::BOX_PAGES),
    ),
];

/// The values of starter cards that follow something; all others are guesses, and each card marks its own.
fn starter_cards() -> Vec<Figure> {
    let cards = Cards::starter();
    let mut found = Vec::new();
    for kind in CardKind::ALL {
        for card in cards.names(kind).iter().filter_map(|name| cards.card(name)) {
            let values = card_values(&card);
            found.extend(values.iter().filter_map(|value| follows(&card, value)));
        }
        found.push(figure(
            "starter cards",
            kind.plural(),
            "all other values, as each card marks them",
            Standing::HouseGuess,
        ));
    }
    found
}

fn follows(card: &Card, value: &Value) -> Option<Figure> {
    let id = card.name().id.to_string();
    let words = value.name.words();
    let (.., standing) = FOLLOWED
        .iter()
        .find(|(card, name, _)| *card == id && *name == words)?;
    let shown = match value.now {
        Content::Length(length) => mm(length),
        _ => value.shown(Unit::Millimetre),
    };
    Some(figure(
        "starter cards",
        format!("{id}: {words}"),
        shown,
        *standing,
    ))
}
