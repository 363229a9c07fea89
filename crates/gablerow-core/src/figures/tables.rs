//! Rows of tables and charts: boards, shelves, hinges.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::{Figure, figure, mm};
use crate::solve::hinges::{CHARTS, Chart, ChartHeight, ChartRow, Widening};
use crate::strength::{CREEPS, ELASTICITIES, LIMITS, LOADS};

/// Every row of every table.
pub(super) fn all() -> Vec<Figure> {
    let mut all: Vec<Figure> = elasticities().collect();
    all.extend(shelves());
    all.extend(CHARTS.iter().flat_map(chart));
    all
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
