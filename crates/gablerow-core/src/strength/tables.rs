//! Elasticity, creep, limits and loads as data; every row says where it comes from.

use crate::measure::Length;

/// Where a value comes from, and how far it may be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Printed, in the words of the source.
    Published(&'static str),
    /// Borrowed from another material, because none is printed for this one.
    StandIn(&'static str),
    /// What the shop goes by; no source.
    HouseGuess,
}

impl Standing {
    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Published(source) => source,
            Self::StandIn(_) => "stand-in",
            Self::HouseGuess => "house guess",
        }
    }

    /// Whether a finding that leans on the value says so.
    #[must_use]
    pub fn is_unproved(self) -> bool {
        !matches!(self, Self::Published(_))
    }
}

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

const P2: &str = "EN 312, type P2 table, least values, quoted on board makers' sheets";
const MDF: &str = "EN 622-5, general purpose, dry, least values, quoted on a board maker's sheet";
const PLYWOOD: &str = "Wood Handbook FPL-GTR-190, Table 12-1";
const SOLID: &str = "Wood Handbook FPL-GTR-282, Table 5-3a, at 12 % moisture";

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
    row("particleboard P2", over_to, [e, e], Standing::Published(P2))
}

const fn mdf(over_to: [i32; 2], e: f64) -> Elasticity {
    row("MDF", over_to, [e, e], Standing::Published(MDF))
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
    any("plywood", [6_960.0, 8_550.0], Standing::Published(PLYWOOD)),
    any(
        "northern red oak",
        [12_500.0, 12_500.0],
        Standing::Published(SOLID),
    ),
    any(
        "sugar maple",
        [12_600.0, 12_600.0],
        Standing::Published(SOLID),
    ),
    any(
        "yellow-poplar",
        [10_900.0, 10_900.0],
        Standing::Published(SOLID),
    ),
    any(
        "Douglas-fir, coast",
        [13_400.0, 13_400.0],
        Standing::Published(SOLID),
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

const EC5: &str = "EN 1995-1-1, 2.2.3 and Table 3.2, service class 1";

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
    creep("solid wood", 1.60, Standing::Published(EC5)),
    creep("plywood", 1.80, Standing::Published(EC5)),
    creep("OSB/3", 2.50, Standing::Published(EC5)),
    creep("particleboard P4", 3.25, Standing::Published(EC5)),
    creep("particleboard P5", 3.25, Standing::Published(EC5)),
    creep("furniture board", 2.0, Standing::HouseGuess),
    creep(
        "furniture board as P5",
        3.25,
        Standing::StandIn("particleboard P5 of EN 1995-1-1, Table 3.2"),
    ),
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

const KCMA: &str = "ANSI/KCMA A161.1, 5.1";
const AWS: &str = "Architectural Woodwork Standards ed. 1, section 10, 1.2.21";

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

/// Even loads to test a shelf with.
pub const LOADS: [ShelfLoad; 4] = [
    ShelfLoad {
        words: "kitchen shelf, class L50",
        pressure: 50.0 * 9.806_65,
        standing: Standing::Published("DIN 68930, quoted on a page about kitchen cabinets"),
    },
    ShelfLoad {
        words: "15 lb on each square foot",
        pressure: 15.0 * PSF,
        standing: Standing::Published(KCMA),
    },
    ShelfLoad {
        words: "40 lb on each square foot",
        pressure: 40.0 * PSF,
        standing: Standing::Published(AWS),
    },
    ShelfLoad {
        words: "50 lb on each square foot: book shelves",
        pressure: 50.0 * PSF,
        standing: Standing::Published(AWS),
    },
];
