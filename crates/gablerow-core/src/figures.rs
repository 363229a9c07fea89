//! Every figure and formula the program goes by, and where each comes from; read off the places that use them.
//!
//! ```text
//! strength, solve, grid, layout   tables, charts, constants --\
//! job, edit                       house defaults -------------+--> Figure, Figure, ...
//! cards                           starter cards --------------/
//! ```

use alloc::borrow::Cow;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::cards::{Card, CardKind, Cards};
use crate::edit::{Content, Value, card_values, shop_values};
use crate::grid::BALANCED_WITHIN;
use crate::job::Shop;
use crate::layout::{SHELF_SETBACK, SHELF_SHORTER, SHELF_TO_BACK};
use crate::measure::{Length, Unit};
use crate::solve::hinges::{
    CHARTS, Chart, ChartHeight, ChartRow, END_LEAST, HANDED_OVER, POUND, Widening,
};
use crate::source::{self, Standing};
use crate::strength::{
    CREEPS, ELASTICITIES, GRAVITY, LIMITS, LOADS, SHELF_LOAD_KG, TIP_LEAST_KG, TIP_OVER_HEIGHT,
};

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
    let mut all = formulas();
    all.extend(constants());
    all.extend(elasticities());
    all.extend(shelves());
    all.extend(CHARTS.iter().flat_map(chart));
    all.extend(
        shop_values(&Shop::starter())
            .iter()
            .filter_map(house_default),
    );
    all.extend(starter_cards());
    all
}

/// Relations that were printed, in the program's own words; each stands in the code with its source. Where it is used, what it
/// is, the relation, who prints it.
const FORMULAS: [(&str, &str, &str, &source::Source); 15] = [
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
];

fn formulas() -> Vec<Figure> {
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

fn mm(length: Length) -> String {
    format!("{} mm", length.exact_mm())
}

fn constants() -> Vec<Figure> {
    let inch = Length::from_counts(Length::COUNTS_PER_INCH);
    let guess = |used, what, length| figure(used, what, mm(length), Standing::HouseGuess);
    let yard = Standing::Published(source::YARD);
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
            Standing::Published(source::CFR_1261),
        ),
    ]
    .into()
}

/// What a range of one or two figures reads like.
fn range(least: f64, most: f64) -> String {
    if least < most {
        format!("{least} to {most}")
    } else {
        least.to_string()
    }
}

fn elasticities() -> impl Iterator<Item = Figure> {
    ELASTICITIES.iter().map(|row| {
        let alike = ELASTICITIES.iter().filter(|other| other.board == row.board);
        let what = match alike.count() {
            1 => row.board.to_string(),
            _ => format!(
                "{}, over {} to {}",
                row.board,
                row.over.exact_mm(),
                row.to.exact_mm()
            ),
        };
        let value = format!("{} N/mm2", range(row.least, row.most));
        figure("elasticity", what, value, row.standing)
    })
}

fn shelves() -> Vec<Figure> {
    let creeps = CREEPS.iter().map(|row| {
        figure(
            "creep",
            row.board,
            format!("{} times", row.factor),
            row.standing,
        )
    });
    let limits = LIMITS.iter().map(|row| {
        let ratio = row.ratio.map(|ratio| format!("L/{ratio}"));
        let most = row.most.map(|most| format!("{most} mm"));
        let value: Vec<String> = ratio.into_iter().chain(most).collect();
        figure(
            "limits of sag",
            row.words,
            value.join(", at most "),
            row.standing,
        )
    });
    let loads = LOADS.iter().map(|row| {
        figure(
            "loads",
            row.words,
            format!("{:.0} Pa", row.pressure),
            row.standing,
        )
    });
    creeps.chain(limits).chain(loads).collect()
}

/// A chart of hinge counts, a figure a row.
fn chart(chart: &'static Chart) -> Vec<Figure> {
    let height = |row: &ChartRow| match chart.height {
        ChartHeight::Door => format!("door to {}, ", mm(row.height)),
        ChartHeight::Cabinet => format!("cabinet to {}, ", mm(row.height)),
        ChartHeight::None => String::new(),
    };
    let up_to = if chart.mass_included { "to" } else { "under" };
    let rows = chart.rows.iter().map(|row| {
        let what = format!("{} hinges, {}", row.hinges, chart.name);
        let value = format!("{}{up_to} {:.1} kg", height(row), row.mass_kg);
        figure("hinge counts", what, value, chart.standing)
    });
    let wider = match chart.widening {
        Widening::Over(width) => Some(format!("wider than {}", mm(width))),
        Widening::From(width) => Some(format!("from {} wide", mm(width))),
        Widening::Never => None,
    };
    let what = format!("one hinge more, {}", chart.name);
    let wider = wider.map(|wider| figure("hinge counts", what, wider, chart.standing));
    rows.chain(wider).collect()
}

/// What house defaults rest on; all others are house guesses.
const DEFAULTS: [(&str, Standing); 13] = [
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
const FOLLOWED: [(&str, &str, Standing); 9] = [
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::SOURCES;

    #[test]
    fn every_source_carries_a_figure_and_is_in_the_table() {
        let found: Vec<_> = figures()
            .iter()
            .filter_map(|figure| figure.standing.source())
            .collect();
        for source in SOURCES {
            assert!(found.contains(source), "nothing rests on {}", source.name);
        }
        for source in found {
            assert!(
                SOURCES.contains(&source),
                "{} is not in the table",
                source.name
            );
        }
    }

    #[test]
    fn every_default_and_every_followed_value_is_there_once() {
        let all = figures();
        let count = |used: &str, what: &str| {
            all.iter()
                .filter(|figure| figure.used == used && figure.what == what)
                .count()
        };
        for (name, standing) in DEFAULTS {
            assert_ne!(standing, Standing::HouseGuess);
            assert_eq!(count("house defaults", name), 1, "{name}");
        }
        for (card, name, _) in FOLLOWED {
            assert_eq!(
                count("starter cards", &format!("{card}: {name}")),
                1,
                "{card} {name}"
            );
        }
    }

    #[test]
    fn figures_are_those_the_program_goes_by() {
        let all = figures();
        let value = |what: &str| {
            all.iter()
                .find(|figure| figure.what == what)
                .map(|figure| figure.value.as_ref())
        };
        assert_eq!(value("an inch"), Some("25.4 mm"));
        assert_eq!(value("particleboard P2, over 13 to 20"), Some("1600 N/mm2"));
        assert_eq!(value("plywood"), Some("6960 to 8550 N/mm2"));
        assert_eq!(value("clear between"), Some("25 mm"));
        assert_eq!(value("runner-side: off the width"), Some("25.4 mm"));
        assert_eq!(
            value("2 hinges, by-height-and-mass"),
            Some("door to 900 mm, to 6.0 kg")
        );
        assert_eq!(
            value("L/192, at most 6.4 mm"),
            Some("L/192, at most 6.4 mm")
        );
    }

    #[test]
    fn no_figure_is_listed_twice() {
        let all = figures();
        for (at, figure) in all.iter().enumerate() {
            assert!(!all[..at].contains(figure), "{figure:?}");
        }
    }
}
