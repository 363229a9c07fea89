//! Handbooks that were read on their own pages: beams, wood, longest shelves.

use gablerow_core::measure::Length;
use gablerow_core::strength::{
    Creep, ELASTICITIES, LIMITS, LOADS, Section, Standing, elasticity, line_load_of_pressure,
    longest_span, sag,
};

use crate::case::{Case, Disagreement, Mark, Source, Within, around};
use crate::fixture::{mm, tested_with};

static WOOD_2010: Source = Source {
    author: "Forest Products Laboratory",
    title: "Wood handbook: wood as an engineering material, FPL-GTR-190",
    year: "2010",
    clause: "eq. 9-2 to 9-4 and table 9-1",
    mark: Mark::Origin,
};

static WOOD_2010_BOARDS: Source = Source {
    author: "Forest Products Laboratory",
    title: "Wood handbook: wood as an engineering material, FPL-GTR-190",
    year: "2010",
    clause: "table 12-1; the order of the panel ranges is that of a text copy",
    mark: Mark::Origin,
};

static WOOD_2021: Source = Source {
    author: "Forest Products Laboratory",
    title: "Wood handbook: wood as an engineering material, FPL-GTR-282",
    year: "2021",
    clause: "table 5-3a (in psi 5-3b), at 12 % moisture; by two copies in public code repositories",
    mark: Mark::Pages,
};

static AWS: Source = Source {
    author: "Architectural Woodwork Institute and others",
    title: "Architectural Woodwork Standards, ed. 1",
    year: "2009",
    clause: "4.4.14.10.11-13, p. 279; limit and loads section 10, 1.2.21, p. 253",
    mark: Mark::Origin,
};

/// The day the load comes.
pub(crate) const NO_CREEP: Creep = Creep {
    board: "any",
    factor: 1.0,
    standing: Standing::HouseGuess,
};

/// Newtons on a square millimetre in a pound-force on a square inch: 4.448 221 615 260 5 N on 25.4^2 mm2.
const PSI: f64 = 4.448_221_615_260_5 / (25.4 * 25.4);

pub(crate) fn cases() -> Vec<Case> {
    let mut all = beams();
    all.extend(woods());
    all.extend(longest_shelves());
    all.extend(loads());
    all
}

/// The constants the program's sag goes by, taken out of its results.
fn beams() -> Vec<Case> {
    let family = "sag of a beam";
    let (depth, thickness, e, load) = (mm(420), mm(19), 1_600.0, 0.3);
    let section = Section::board(depth, thickness, e);
    let (d, t) = (depth.mm(), thickness.mm());
    let constant = move |span: Length, stiffness: f64| {
        let l = span.mm();
        sag(section, span, load, &NO_CREEP).now * stiffness / (load * l.powi(4))
    };
    let exact = around(1e-9, "a ratio of whole numbers");
    let whole = |name, span, stiffness: f64| {
        let found = constant(span, stiffness);
        Case::new(family, name, &WOOD_2010, 5.0 / 384.0, found).within(exact)
    };
    vec![
        whole(
            "kb, even load, simply supported, 534",
            mm(534),
            section.stiffness(),
        ),
        whole(
            "kb, even load, simply supported, 880",
            mm(880),
            e * d * t.powi(3) / 12.0,
        ),
        Case::new(
            family,
            "breadth times depth^3 over the moment of inertia",
            &WOOD_2010,
            12.0,
            e * d * t.powi(3) / section.stiffness(),
        )
        .within(exact),
    ]
}

fn woods() -> Vec<Case> {
    let of = |board: &str| ELASTICITIES.iter().find(|row| row.board == board).unwrap();
    let family = "elasticity of boards";
    let solid = [
        ("northern red oak", 12_500.0),
        ("sugar maple", 12_600.0),
        ("yellow-poplar", 10_900.0),
        ("Douglas-fir, coast", 13_400.0),
    ];
    let mut all: Vec<Case> = solid
        .into_iter()
        .map(|(wood, printed)| Case::new(family, wood, &WOOD_2021, printed, of(wood).least).table())
        .collect();
    let oak = of("northern red oak").least / PSI;
    all.push(
        Case::new(family, "northern red oak in psi", &WOOD_2021, 1.82e6, oak)
            .within(around(
                8_000.0,
                "rounded to 10 000 psi there and to 100 N/mm2 here",
            ))
            .table(),
    );
    let plywood = of("plywood");
    for (name, printed, found) in [
        ("plywood, least", 6_960.0, plywood.least),
        ("plywood, most", 8_550.0, plywood.most),
    ] {
        all.push(Case::new(family, name, &WOOD_2010_BOARDS, printed, found).table());
    }
    all
}

/// The load of these words in the table, in Pa.
fn pressure(pounds: u8) -> f64 {
    let words = format!("{pounds} lb/ft2");
    let load = LOADS.iter().find(|load| load.words.starts_with(&words));
    load.unwrap().pressure
}

/// Loads back in pounds on a square foot, and the limit as so many to the span.
fn loads() -> Vec<Case> {
    let family = "loads and limits";
    // A foot is 12 inches, so a pound on a square foot is a 144th of one on a square inch.
    let pounds = |pascals: f64| pascals * 1e-6 / PSI * 144.0;
    let float = around(1e-5, "a pound on a square foot in seven digits");
    let limit = LIMITS.iter().find(|limit| limit.words == "L/144").unwrap();
    let span = mm(900);
    vec![
        Case::new(
            family,
            "shelves, lb/ft2",
            &AWS,
            40.0,
            pounds(tested_with("40 lb")),
        )
        .within(float),
        Case::new(
            family,
            "book shelves, lb/ft2",
            &AWS,
            50.0,
            pounds(tested_with("50 lb")),
        )
        .within(float),
        Case::new(
            family,
            "span over sag",
            &AWS,
            144.0,
            span.mm() / limit.at(span),
        ),
    ]
}

/// The longest shelf in inches of an elasticity in psi and a thickness in 64ths.
fn longest(psi: f64, sixty_fourths: i32, pounds: u8) -> f64 {
    let limit = LIMITS.iter().find(|limit| limit.words == "L/144").unwrap();
    let depth = mm(300);
    let section = Section::board(depth, Length::from_inch_64ths(sixty_fourths), psi * PSI);
    let load = line_load_of_pressure(pressure(pounds), depth);
    longest_span(section, load, &NO_CREEP, limit) / 25.4
}

fn longest_shelves() -> Vec<Case> {
    let rows = [
        ("Douglas-fir plywood", 950_000.0, 48, [40.0, 37.0]),
        ("Douglas-fir plywood", 950_000.0, 64, [53.0, 49.0]),
        (
            "the same, faced with hardwood",
            1_800_000.0,
            48,
            [49.0, 46.0],
        ),
        (
            "the same, faced with hardwood",
            1_800_000.0,
            64,
            [66.0, 61.0],
        ),
        ("solid northern red oak", 1_820_000.0, 48, [49.0, 46.0]),
        ("solid northern red oak", 1_820_000.0, 64, [66.0, 61.0]),
    ];
    let within = Within {
        below: 0.05,
        above: 0.75,
        why: "whole inches, mostly rounded down, and some 0.02 up",
    };
    rows.into_iter()
        .flat_map(|(board, psi, thick, printed)| {
            [(40, printed[0]), (50, printed[1])].map(|(pounds, inches)| {
                let name = format!("{board}, {thick}/64 in, {pounds} lb/ft2");
                Case::new("longest shelves", name, &AWS, inches, 0.0)
                    .wrong_at(move |wrong| longest(psi * wrong, thick, pounds))
                    .within(within)
            })
        })
        .collect()
}

/// The coefficient ks of shear, out of what a sag of the program is beyond bending; shear goes by G = E/16.
fn shear_coefficient() -> f64 {
    let (depth, thickness, span, e, load) = (mm(420), mm(19), mm(900), 12_500.0, 0.3);
    let section = Section::board(depth, thickness, e);
    let l = span.mm();
    let bent = 5.0 / 384.0 * load * l.powi(4) / section.stiffness();
    let beyond = sag(section, span, load, &NO_CREEP).now - bent;
    beyond * e / 16.0 * (5.0 / 6.0 * depth.mm() * thickness.mm()) / (load * l * l)
}

pub(crate) fn disagreements() -> Vec<Disagreement> {
    let fir = ELASTICITIES
        .iter()
        .find(|row| row.board == "Douglas-fir, coast");
    let least = |board: &str| elasticity(board, mm(18)).unwrap().least;
    let habit = |board: &str| elasticity(&format!("{board}, by habit"), mm(18)).unwrap();
    let by_habit = |what, printed, computed, stated| Disagreement {
        what,
        source: &WOOD_2010_BOARDS,
        printed,
        computed,
        stated,
        reason: "what shops use by habit; the program marks the row as a house guess",
    };
    let of_grade = "the program goes by the least a standard asks of the board, and the handbook prints what boards were found to have";
    vec![
        Disagreement {
            what: "elasticity of MDF of 18",
            source: &WOOD_2010_BOARDS,
            printed: 3_590.0,
            computed: least("MDF"),
            stated: 2_200.0,
            reason: of_grade,
        },
        Disagreement {
            what: "elasticity of particleboard of 18, least",
            source: &WOOD_2010_BOARDS,
            printed: 2_760.0,
            computed: least("particleboard P2"),
            stated: 1_600.0,
            reason: of_grade,
        },
        by_habit("MDF, by habit, most", 3_590.0, habit("MDF").most, 3_500.0),
        by_habit(
            "particleboard, by habit, least",
            2_760.0,
            habit("particleboard").least,
            2_500.0,
        ),
        by_habit(
            "particleboard, by habit, most",
            4_140.0,
            habit("particleboard").most,
            2_700.0,
        ),
        Disagreement {
            what: "elasticity of Douglas-fir, coast",
            source: &WOOD_2010_BOARDS,
            printed: 13_440.0,
            computed: fir.unwrap().least,
            stated: 13_400.0,
            reason: "the newer edition rounds to 100 N/mm2; the program copies that one",
        },
        Disagreement {
            what: "ks, the share of shear under an even load",
            source: &WOOD_2010,
            printed: 0.125,
            computed: shear_coefficient(),
            stated: 0.0,
            reason: "shear is left out: on a shelf of 19 that is 900 long it is under a hundredth of the sag",
        },
    ]
}
