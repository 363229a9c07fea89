//! Standards, acts and codes: boards, creep, loads on shelves, units.

use gablerow_core::measure::{Length, Unit, parse_length};
use gablerow_core::solve::hinges::CHARTS;
use gablerow_core::strength::{
    CREEPS, Creep, LIMITS, LOADS, Section, elasticity, line_load_of_pressure, may_tip_over, sag,
};

use crate::case::{Case, Disagreement, Kind, Mark, Source, around};
use crate::fixture::{fronts, job, mm, um};

static EN_312: Source = Source {
    author: "CEN",
    title: "EN 312, Particleboards - Specifications",
    year: "edition not named by those who quote it",
    clause: "table of type P2, modulus of elasticity in bending; on a board maker's sheet and on a page about inspection",
    mark: Mark::Pages,
};

static EN_622_5: Source = Source {
    author: "CEN",
    title: "EN 622-5, Fibreboards - Specifications - Requirements for dry process boards (MDF)",
    year: "edition not named by the one who quotes it",
    clause: "general purpose, dry; on a board maker's sheet",
    mark: Mark::Page,
};

static EUROCODE_5: Source = Source {
    author: "CEN",
    title: "EN 1995-1-1, Eurocode 5, Design of timber structures, kdef",
    year: "by way of NTC 2018, table 4.4.V",
    clause: "2.2.3 and table 3.2, service class 1",
    mark: Mark::Page,
};

static KCMA: Source = Source {
    author: "Kitchen Cabinet Manufacturers Association",
    title: "ANSI/KCMA A161.1",
    year: "contents of 2012",
    clause: "5.1, by a text copy on timberpart.com; its inch figure is misprinted, the metric one is right",
    mark: Mark::Page,
};

static DIN_68930: Source = Source {
    author: "DIN",
    title: "DIN 68930, kitchen furniture, load class L50",
    year: "edition not named by the one who quotes it",
    clause: "50 kg/m2, quoted by myhomebook.de, \"Kuechenschraenke Gewicht\"",
    mark: Mark::Page,
};

static YARD: Source = Source {
    author: "US National Bureau of Standards",
    title: "Refinement of values for the yard and the pound",
    year: "1959",
    clause: "Federal Register notice, in force from 1 July; by way of a metric association's mail archive and NIST SP 811",
    mark: Mark::Page,
};

static CFR_1261: Source = Source {
    author: "US Consumer Product Safety Commission",
    title: "16 CFR part 1261, which makes ASTM F2057-23 mandatory",
    year: "2023",
    clause: "scope: 27 in (686 mm) or more; cpsc.gov",
    mark: Mark::Origin,
};

pub(crate) fn cases() -> Vec<Case> {
    let mut all = elasticities();
    all.extend(creeps());
    all.extend(loads());
    all.extend(units());
    all.push(tip_over());
    all
}

/// Rows of both tables: at their end, which is included, and just over their beginning, which is a threshold.
fn elasticities() -> Vec<Case> {
    let p2 = [
        (3, 4, 1_800.0),
        (4, 6, 1_950.0),
        (6, 13, 1_800.0),
        (13, 20, 1_600.0),
        (20, 25, 1_500.0),
        (25, 32, 1_350.0),
        (32, 40, 1_200.0),
        (40, 50, 1_050.0),
    ];
    let mdf = [
        (6, 9, 2_700.0),
        (9, 12, 2_500.0),
        (12, 19, 2_200.0),
        (19, 30, 2_100.0),
        (30, 45, 1_900.0),
    ];
    let p2 = p2.map(|row| (&EN_312, "particleboard P2", row));
    let mdf = mdf.map(|row| (&EN_622_5, "MDF", row));
    let both = p2.into_iter().chain(mdf);
    both.flat_map(|(source, board, (over, to, printed))| {
        [
            (um(over * 1_000 + 1), Kind::Threshold),
            (mm(to), Kind::Table),
        ]
        .map(|(thickness, kind)| {
            let found = elasticity(board, thickness).map_or(f64::NAN, |row| row.least);
            let name = format!("{board}, {} thick", thickness.exact_mm());
            let case = Case::new("elasticity of boards", name, source, printed, found);
            Case { kind, ..case }
        })
    })
    .collect()
}

/// The creep of a board as the program makes it show: by how much more a shelf sags later than now, as a share.
fn creeps() -> Vec<Case> {
    let more = |creep: &Creep| {
        let section = Section::board(mm(300), mm(18), 1_600.0);
        let sag = sag(
            section,
            mm(764),
            line_load_of_pressure(718.2, mm(300)),
            creep,
        );
        sag.later / sag.now - 1.0
    };
    let kdef = [
        ("solid wood", 0.60),
        ("plywood", 0.80),
        ("OSB/3", 1.50),
        ("particleboard P4", 2.25),
        ("particleboard P5", 2.25),
    ];
    kdef.map(|(board, printed)| {
        let creep = CREEPS.iter().find(|creep| creep.board == board).unwrap();
        Case::new("creep", board, &EUROCODE_5, printed, more(creep)).wrong_at(move |wrong| {
            let factor = creep.factor * wrong;
            more(&Creep { factor, ..*creep })
        })
    })
    .into()
}

fn pressure(words: &str) -> f64 {
    let load = LOADS.iter().find(|load| load.words == words).unwrap();
    load.pressure
}

fn loads() -> Vec<Case> {
    let family = "loads and limits";
    let limit = LIMITS.iter().find(|limit| limit.words.starts_with("L/192"));
    let at = |span| limit.unwrap().at(span);
    vec![
        Case::new(
            family,
            "15 lb on a square foot",
            &KCMA,
            718.0,
            pressure("15 lb on each square foot"),
        )
        .within(around(0.5, "printed in whole pascals")),
        Case::new(family, "sag of a span of 305", &KCMA, 1.6, at(mm(305))).within(around(
            0.012,
            "1.6 is a sixteenth of an inch, 1.5875, to a tenth",
        )),
        Case::new(family, "sag of no shelf is more", &KCMA, 6.4, at(mm(2_400)))
            .within(around(0.05, "printed to a tenth")),
        Case::new(
            family,
            "class L50",
            &DIN_68930,
            490.0,
            pressure("kitchen shelf, class L50"),
        )
        .within(around(0.5, "quoted in whole pascals")),
    ]
}

/// The least height, in whole mm, from which on a cabinet with a drawer carries the note.
fn tip_over() -> Case {
    let carries = |height: &i32| {
        let job = job(|job| {
            job.cabinets[0].size.height = mm(*height);
            job.cabinets[0].opening.fronts = fronts(&[5]);
        });
        let cabinet = &job.cabinets[0];
        may_tip_over(cabinet.standing_height(), cabinet.has_drawers())
    };
    let least = (600..800).find(carries).map_or(f64::NAN, f64::from);
    let name = "height from which clothing storage is in, in mm";
    Case::new("scope of tip-over", name, &CFR_1261, 686.0, least).threshold()
}

fn units() -> Vec<Case> {
    let typed = |text: &str| parse_length(text, Unit::Inch).map_or(f64::NAN, Length::mm);
    let family = "inches and pounds";
    let mut all = vec![
        Case::new(family, "1 in", &YARD, 25.4, typed("1")),
        Case::new(family, "1 yard, as 3 ft", &YARD, 914.4, typed("3 ft")),
        Case::new(family, "1/64 in", &YARD, 0.396_875, typed("1/64")),
        Case::new(
            family,
            "27 in, for the scope of clothing storage",
            &CFR_1261,
            686.0,
            typed("27"),
        )
        .within(around(0.5, "printed in whole mm")),
    ];
    let fifteen = CHARTS[1].rows[0].mass_kg;
    let pound = "a pound in kg, out of a row of 15 lb";
    all.push(Case::new(
        family,
        pound,
        &YARD,
        0.453_592_37,
        fifteen / 15.0,
    ));
    all
}

pub(crate) fn disagreements() -> Vec<Disagreement> {
    let limit = LIMITS.iter().find(|limit| limit.words.starts_with("L/192"));
    let most = |span: Length| limit.unwrap().at(span);
    // The first whole millimetre from which on the cap rules.
    let rules = (1..).map(mm).find(|span| most(*span) < span.mm() / 192.0);
    vec![Disagreement {
        what: "span from which 6.4 mm caps L/192",
        source: &KCMA,
        printed: 1_219.0,
        computed: rules.unwrap().mm(),
        stated: 1_229.0,
        reason: "the page goes by 1/4 in, 6.35, and prints it as 6.4; the program goes by what is printed, so for spans from 1219 to 1229 it allows up to 0.05 more",
    }]
}
