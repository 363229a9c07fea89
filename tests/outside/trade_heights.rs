//! Pages of the trade: balanced heights, partitions.

use gablerow_core::grid::{Ends, Grid};
use gablerow_core::measure::Length;

use crate::case::{Case, Mark, Source, around};
use crate::fixture::{mm, printed};

static WALL_HEIGHTS: Source = Source {
    author: "a cabinet shop",
    title: "wall cabinets, nominal sizes",
    year: "undated",
    clause: "gohci.com/CabWallNom.htm, heights with a first hole at 46.5",
    mark: Mark::Page,
};

static CUSTOM_HEIGHTS: Source = Source {
    author: "a forum of cabinetmakers",
    title: "Custom Cabinet Heights and the 32mm System",
    year: "undated",
    clause: "woodweb",
    mark: Mark::Page,
};

static BALANCING: Source = Source {
    author: "a forum of cabinetmakers",
    title: "Panel and Door Balancing",
    year: "undated",
    clause: "woodweb",
    mark: Mark::Page,
};

static LOWEST_DRAWER: Source = Source {
    author: "a shop that builds by the grid",
    title: "32mm, Drawers",
    year: "undated",
    clause: "davelers.com/32mm/Drawers, and Drawers/207.html for the 43.5",
    mark: Mark::Page,
};

/// The least distance from a hole to an end.
const END_MIN: Length = Length::from_mm(8);

pub(crate) fn cases() -> Vec<Case> {
    let mut all = heights();
    all.extend(heights_in_inches());
    all.extend(partitions());
    all
}

/// The balanced height next to a height that is 1 mm less, with offsets that may be wrong by a factor.
fn balanced(height: f64, [foot, head]: [f64; 2], wrong: f64) -> f64 {
    let offset = |offset: f64| printed((offset * wrong * 1_000.0).round() / 1_000.0);
    let ends = Ends {
        height: printed(height - 1.0),
        foot: offset(foot),
        head: offset(head),
    };
    ends.balanced_heights().above.mm()
}

fn heights() -> Vec<Case> {
    let family = "balanced heights";
    let rows = [
        (&WALL_HEIGHTS, 605.0, [46.5, 46.5], 17.0),
        (&WALL_HEIGHTS, 637.0, [46.5, 46.5], 18.0),
        (&WALL_HEIGHTS, 669.0, [46.5, 46.5], 19.0),
        (&WALL_HEIGHTS, 608.0, [46.5, 49.5], 17.0),
        (&CUSTOM_HEIGHTS, 317.0, [46.5, 46.5], 8.0),
        (&CUSTOM_HEIGHTS, 327.0, [46.5, 56.5], 8.0),
        (&BALANCING, 2_131.0, [9.5, 9.5], 67.0),
        (&BALANCING, 774.0, [19.0, 19.0], 24.0),
    ];
    let mut all = Vec::new();
    for (source, height, offsets, count) in rows {
        let name = format!("first holes {} and {}", offsets[0], offsets[1]);
        all.push(
            Case::new(family, name.clone(), source, height, height)
                .wrong_at(move |wrong| balanced(height, offsets, wrong)),
        );
        let ends = Ends {
            height: printed(height),
            foot: printed(offsets[0]),
            head: printed(offsets[1]),
        };
        let row = ends.balance(END_MIN);
        let balanced = row.filter(|row| row.mismatch.is_balanced());
        let found = balanced.map_or(f64::NAN, |row| row.count.into());
        let name = format!("holes of {height}, {name}");
        all.push(Case::new(family, name, source, count, found));
    }
    let off = Ends::alike(mm(608), printed(46.5)).mismatch().wrapped();
    all.push(Case::new(
        family,
        "608 with 46.5 at both ends is off by",
        &WALL_HEIGHTS,
        3.0,
        off.mm(),
    ));
    all
}

fn heights_in_inches() -> Vec<Case> {
    let family = "balanced heights";
    let cut = |inches: i32, offset: f64| {
        let ends = Ends::alike(Length::from_inch_64ths(inches * 64), printed(offset));
        ends.balanced_heights().below.unwrap().mm() / 25.4
    };
    let thousandth = around(0.000_5, "printed to a thousandth of an inch");
    vec![
        Case::new(
            family,
            "cut of an 84 in panel, in inches",
            &BALANCING,
            83.898,
            cut(84, 9.5),
        )
        .within(thousandth),
        Case::new(
            family,
            "cut of a 31 in panel, in inches",
            &BALANCING,
            30.472,
            cut(31, 19.0),
        )
        .within(thousandth),
    ]
}

fn partitions() -> Vec<Case> {
    let family = "partitions and lowest drawers";
    let above = |first: f64, board: i32| {
        let grid = Grid {
            first: printed(first),
        };
        grid.start_above(mm(board), END_MIN).unwrap().offset.mm()
    };
    vec![
        Case::new(
            family,
            "32 - t/2 at 19",
            &LOWEST_DRAWER,
            22.5,
            above(9.5, 19),
        ),
        Case::new(
            family,
            "the same, shifted",
            &LOWEST_DRAWER,
            38.5,
            above(25.5, 19),
        ),
        Case::new(
            family,
            "a hole at 62.5 over a bottom of 19",
            &LOWEST_DRAWER,
            43.5,
            above(62.5, 19),
        ),
    ]
}
