//! Elasticity, creep, limits and loads as data; every row says where it comes from.

use crate::measure::Length;
use crate::source::{
    AWS, DIN_68930, EN_312, EN_622_5, EUROCODE_5, KCMA, Standing, WOOD_2010, WOOD_2021,
};

/// How stiff a board of a kind and thickness is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elasticity {
    /// The kind of board, in the words of the trade.
    pub board: &'static str,
    /// Thicknesses over this one.
    pub over: Length,
    /// Thicknesses up to this one, included.
    pub to: Length,
    /// Modulus of elasticity in N/mm2: the least where a range is known.
    pub least: f64,
    /// The most where a range is known, else the same as the least.
    pub most: f64,
    /// Where it comes from.
    pub standing: Standing,
}

const fn row(
    board: &'static str,
    [over, to]: [i32; 2],
    [least, most]: [f64; 2],
    standing: Standing,
) -> Elasticity {
    Elasticity {
        board,
        over: Length::from_mm(over),
        to: Length::from_mm(to),
        least,
        most,
        standing,
    }
}

const fn p2(over_to: [i32; 2], e: f64) -> Elasticity {
    row(
        "particleboard P2",
        over_to,
        [e, e],
        Standing::Published(EN_312),
    )
}

const fn mdf(over_to: [i32; 2], e: f64) -> Elasticity {
    row("MDF", over_to, [e, e], Standing::Published(EN_622_5))
}

const fn any(board: &'static str, range: [f64; 2], standing: Standing) -> Elasticity {
    row(board, [0, 1_000], range, standing)
}

/// Elasticity by kind and thickness. The board makers' least values are for accepting boards, not for design: a data
/// sheet is better. What shops use by habit lies above them.
pub const ELASTICITIES: [Elasticity; 22] = [
    p2([3, 4], 1_800.0),
    p2([4, 6], 1_950.0),
    p2([6, 13], 1_800.0),
    p2([13, 20], 1_600.0),
    p2([20, 25], 1_500.0),
    p2([25, 32], 1_350.0),
    p2([32, 40], 1_200.0),
    p2([40, 100], 1_050.0),
    mdf([6, 9], 2_700.0),
    mdf([9, 12], 2_500.0),
    mdf([12, 19], 2_200.0),
    mdf([19, 30], 2_100.0),
    mdf([30, 45], 1_900.0),
    any(
        "plywood",
        [6_960.0, 8_550.0],
        Standing::Published(WOOD_2010),
    ),
    any(
        "northern red oak",
        [12_500.0, 12_500.0],
        Standing::Published(WOOD_2021),
    ),
    any(
        "sugar maple",
        [12_600.0, 12_600.0],
        Standing::Published(WOOD_2021),
    ),
    any(
        "yellow-poplar",
        [10_900.0, 10_900.0],
        Standing::Published(WOOD_2021),
    ),
    any(
        "Douglas-fir, coast",
        [13_400.0, 13_400.0],
        Standing::Published(WOOD_2021),
    ),
    any(
        "particleboard, by habit",
        [2_500.0, 2_700.0],
        Standing::HouseGuess,
    ),
    any("MDF, by habit", [2_500.0, 3_500.0], Standing::HouseGuess),
    any(
        "birch plywood along the grain, by habit",
        [8_000.0, 9_000.0],
        Standing::HouseGuess,
    ),
    any(
        "hardwood lipping",
        [11_000.0, 11_000.0],
        Standing::HouseGuess,
    ),
];

/// The row of [`ELASTICITIES`] for a kind of board and its thickness.
#[must_use]
pub fn elasticity(board: &str, thickness: Length) -> Option<&'static Elasticity> {
    ELASTICITIES
        .iter()
        .find(|row| row.board == board && row.over < thickness && thickness <= row.to)
}

/// How much a sag grows under a load that stays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Creep {
    /// The kind of board, in the words of the trade.
    pub board: &'static str,
    /// What the sag is multiplied by: 1 + kdef, in heated rooms.
    pub factor: f64,
    /// Where it comes from.
    pub standing: Standing,
}

const fn creep(board: &'static str, factor: f64, standing: Standing) -> Creep {
    Creep {
        board,
        factor,
        standing,
    }
}

/// Creep factors. The table of EN 1995-1-1 has structural boards only: for particleboard P2 and plain MDF there is a
/// house guess, and the factor of P5 as a stand-in.
pub const CREEPS: [Creep; 7] = [
    creep("solid wood", 1.60, Standing::Published(EUROCODE_5)),
    creep("plywood", 1.80, Standing::Published(EUROCODE_5)),
    creep("OSB/3", 2.50, Standing::Published(EUROCODE_5)),
    creep("particleboard P4", 3.25, Standing::Published(EUROCODE_5)),
    creep("particleboard P5", 3.25, Standing::Published(EUROCODE_5)),
    creep("furniture board", 2.0, Standing::HouseGuess),
    creep("furniture board as P5", 3.25, Standing::StandIn(EUROCODE_5)),
];

/// How far a shelf may sag: the lesser of what is given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// What people call it.
    pub words: &'static str,
    /// The span divided by this, where the limit is a share of the span.
    pub ratio: Option<f64>,
    /// So many mm at most, where the limit has a cap.
    pub most: Option<f64>,
    /// Where it comes from.
    pub standing: Standing,
}

/// Limits, those of the house first: a shelf keeps the first two, see [`house_limit`].
pub const LIMITS: [Limit; 5] = [
    Limit {
        words: "L/200",
        ratio: Some(200.0),
        most: None,
        standing: Standing::HouseGuess,
    },
    Limit {
        words: "3 mm",
        ratio: None,
        most: Some(3.0),
        standing: Standing::HouseGuess,
    },
    Limit {
        words: "L/300 on show",
        ratio: Some(300.0),
        most: None,
        standing: Standing::HouseGuess,
    },
    Limit {
        words: "L/192, at most 6.4 mm",
        ratio: Some(192.0),
        most: Some(6.4),
        standing: Standing::Published(KCMA),
    },
    Limit {
        words: "L/144",
        ratio: Some(144.0),
        most: None,
        standing: Standing::Published(AWS),
    },
];

impl Limit {
    /// How many mm a shelf of this span may sag.
    #[must_use]
    pub fn at(&self, span: Length) -> f64 {
        let share = self.ratio.map_or(f64::INFINITY, |ratio| span.mm() / ratio);
        share.min(self.most.unwrap_or(f64::INFINITY))
    }
}

/// The stricter of the two limits of the house at a span: L/200 on shelves up to 600 long, 3 mm on longer ones.
///
/// The third, for shelves on show, waits for a job that says which ones are.
#[must_use]
pub fn house_limit(span: Length) -> &'static Limit {
    let [share, most, ..] = &LIMITS;
    if most.at(span) < share.at(span) {
        most
    } else {
        share
    }
}

/// An even load on a shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShelfLoad {
    /// What it is for, in the words of the trade.
    pub words: &'static str,
    /// The load in Pa, that is N on each square metre.
    pub pressure: f64,
    /// Where it comes from.
    pub standing: Standing,
}

/// One pound-force on each square foot, in Pa. Source: definition of the pound-force and the foot.
const PSF: f64 = 47.880_26;

/// Even loads that are printed for shelves.
pub const LOADS: [ShelfLoad; 4] = [
    ShelfLoad {
        words: "kitchen shelf, class L50",
        pressure: 50.0 * 9.806_65,
        standing: Standing::Published(DIN_68930),
    },
    ShelfLoad {
        words: "15 lb/ft2",
        pressure: 15.0 * PSF,
        standing: Standing::Published(KCMA),
    },
    ShelfLoad {
        words: "40 lb/ft2",
        pressure: 40.0 * PSF,
        standing: Standing::Published(AWS),
    },
    ShelfLoad {
        words: "50 lb/ft2, book shelves",
        pressure: 50.0 * PSF,
        standing: Standing::Published(AWS),
    },
];

/// A published test of a shelf: an even load, and how far the shelf may sag under it on the day it is loaded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShelfTest {
    /// The load.
    pub load: &'static ShelfLoad,
    /// The limit that the same standard sets.
    pub limit: &'static Limit,
}

/// The tests whose load and limit are both known.
pub const SHELF_TESTS: [ShelfTest; 3] = [
    ShelfTest {
        load: &LOADS[1],
        limit: &LIMITS[3],
    },
    ShelfTest {
        load: &LOADS[2],
        limit: &LIMITS[4],
    },
    ShelfTest {
        load: &LOADS[3],
        limit: &LIMITS[4],
    },
];
