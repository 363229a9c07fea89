//! How many hinges a door needs. Charts disagree by maker, so they are data, and whoever prints a count names its chart.

use crate::cards::CountChart;
use crate::measure::Length;
use crate::source::{HINGE_ADVICE, HINGE_CHART, Standing};
use crate::strength::POUND;

/// What a chart asks about a door.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DoorFacts {
    /// Width of the door.
    pub width: Length,
    /// Height of the door.
    pub height: Length,
    /// Height of the cabinet it hangs on.
    pub cabinet_height: Length,
    /// What it weighs, in kg.
    pub mass_kg: f64,
}

/// Which height a chart goes by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChartHeight {
    /// The door's.
    Door,
    /// The cabinet's.
    Cabinet,
    /// None: it goes by mass alone.
    None,
}

/// One row of a chart: up to what a number of hinges is enough.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChartRow {
    /// How many hinges.
    pub hinges: u8,
    /// Height up to this, included.
    pub height: Length,
    /// Mass up to this in kg.
    pub mass_kg: f64,
}

/// When a wide door takes another hinge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Widening {
    /// Wider than this.
    Over(Length),
    /// This wide or wider.
    From(Length),
    /// Never.
    Never,
}

/// A chart of hinge counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chart {
    /// Its name, as cards and sheets give it.
    pub name: &'static str,
    /// Which height it goes by.
    pub height: ChartHeight,
    /// Whether a mass of exactly the row's is still in the row.
    pub mass_included: bool,
    /// Its rows, fewest hinges first.
    pub rows: &'static [ChartRow],
    /// When a wide door takes another one.
    pub widening: Widening,
    /// Where it comes from.
    pub standing: Standing,
}

/// The chart that a card names.
#[must_use]
pub fn chart_of(chart: CountChart) -> &'static Chart {
    let [height_and_mass, inches, mass_and_width] = &CHARTS;
    match chart {
        CountChart::HeightAndMass => height_and_mass,
        CountChart::Inches => inches,
        CountChart::MassAndWidth => mass_and_width,
    }
}

const fn row(hinges: u8, height: Length, mass_kg: f64) -> ChartRow {
    ChartRow {
        hinges,
        height,
        mass_kg,
    }
}

const fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

const fn inch(inches: i32) -> Length {
    Length::from_inch_64ths(inches * 64)
}

/// The charts there are; the first is the default.
pub const CHARTS: [Chart; 3] = [
    Chart {
        name: "by-height-and-mass",
        height: ChartHeight::Door,
        mass_included: true,
        rows: &[
            row(2, mm(900), 6.0),
            row(3, mm(1_600), 12.0),
            row(4, mm(2_000), 17.0),
            row(5, mm(2_400), 22.0),
        ],
        widening: Widening::Over(mm(600)),
        standing: Standing::Practice,
    },
    Chart {
        name: "inch-chart",
        height: ChartHeight::Cabinet,
        mass_included: false,
        rows: &[
            row(2, inch(40), 15.0 * POUND),
            row(3, inch(60), 30.0 * POUND),
            row(4, inch(80), 45.0 * POUND),
            row(5, inch(100), 60.0 * POUND),
        ],
        widening: Widening::Never,
        standing: Standing::Published(HINGE_CHART),
    },
    Chart {
        name: "kg-and-width",
        height: ChartHeight::None,
        mass_included: true,
        rows: &[row(2, Length::MAX, 6.0), row(3, Length::MAX, 12.0)],
        widening: Widening::From(mm(650)),
        standing: Standing::Published(HINGE_ADVICE),
    },
];

/// What of a door a chart has no row for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Beyond {
    /// Its height.
    pub height: bool,
    /// Its mass.
    pub mass: bool,
}

/// What a chart says of a door.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Count {
    /// How many hinges: the larger of the two counts, and one more for a wide door.
    pub hinges: u8,
    /// How many its height asks for; 0 when the chart does not go by height.
    pub by_height: u8,
    /// How many its mass asks for.
    pub by_mass: u8,
    /// Whether it is so wide that it takes another one.
    pub wide: bool,
    /// What the chart ends before; the count is then that of its last row, and too few to lean on.
    pub beyond: Beyond,
}

/// How many hinges a chart asks for.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::Length;
/// use gablerow_core::solve::hinges::{CHARTS, DoorFacts, count};
///
/// // 640 x 1000, 7.9 kg: 3 by height, 3 by mass, and one more as it is wider than 600
/// let [width, height] = [640, 1_000].map(Length::from_mm);
/// let door = DoorFacts { width, height, cabinet_height: height, mass_kg: 7.9 };
/// assert_eq!(count(&CHARTS[0], &door).hinges, 4);
/// ```
#[must_use]
pub fn count(chart: &Chart, door: &DoorFacts) -> Count {
    let height = match chart.height {
        ChartHeight::Door => Some(door.height),
        ChartHeight::Cabinet => Some(door.cabinet_height),
        ChartHeight::None => None,
    };
    let heavy = |row: &ChartRow| {
        door.mass_kg > row.mass_kg || (!chart.mass_included && door.mass_kg >= row.mass_kg)
    };
    let most = chart.rows.last().map_or(0, |row| row.hinges);
    let enough = |fits: &dyn Fn(&ChartRow) -> bool| {
        let row = chart.rows.iter().find(|row| fits(row));
        row.map_or((most, true), |row| (row.hinges, false))
    };
    let (by_height, high) = height.map_or((0, false), |height| enough(&|row| height <= row.height));
    let (by_mass, massive) = enough(&|row| !heavy(row));
    let wide = match chart.widening {
        Widening::Over(width) => door.width > width,
        Widening::From(width) => door.width >= width,
        Widening::Never => false,
    };
    Count {
        hinges: by_height.max(by_mass) + u8::from(wide),
        by_height,
        by_mass,
        wide,
        beyond: Beyond {
            height: high,
            mass: massive,
        },
    }
}
