//! Standards, acts and codes: boards, creep, loads on shelves, units.

use gablerow_core::check::Rule;
use gablerow_core::job::{AsCut, FrontKind, Hand, PanelId, Shop};
use gablerow_core::measure::{Length, Unit, parse_length};
use gablerow_core::solve::hinges::CHARTS;
use gablerow_core::strength::{
    CREEPS, Creep, GRAVITY, LIMITS, LOADS, ScopeUnit, Section, TIP_OVER_MASS_KG,
    TIP_OVER_STORAGE_DM3, elasticity, line_load_of_pressure, may_tip_over, sag,
};

use crate::case::{Case, Disagreement, Kind, Mark, Source, around};
use crate::fixture::{all_boards, closed, finds, fronts, job, layout, mm, parts, tested_with, um};

static EN_312: Source = Source {
    author: "CEN",
    title: "EN 312, Particleboards - Specifications",
    year: "edition not named by those who quote it",
    clause: "table of type P2, modulus of elasticity in bending; on a board maker's sheet and on a page about inspection",
    mark: Mark::Pages,
};

static EN_312_TABLE_1: Source = Source {
    author: "CEN",
    title: "EN 312, Particleboards - Specifications",
    year: "edition not named by those who quote it",
    clause: "table 1, sanded boards: 0.3 in thickness either way; on makers' sheets",
    mark: Mark::Pages,
};

static EN_14323: Source = Source {
    author: "CEN",
    title: "EN 14323, melamine-faced boards",
    year: "edition not named by those who quote it",
    clause: "thickness, 0.2 below 15 and 0.3 from there, or from -0.3 to +0.5; on two makers' sheets that disagree",
    mark: Mark::Page,
};

static ANSI_A208_2: Source = Source {
    author: "ANSI",
    title: "ANSI A208.2, MDF",
    year: "quoted in 2014",
    clause: "thickness, 0.125 either way; Surface & Panel 2014, p. 16",
    mark: Mark::Page,
};

static BOARDS: Source = Source {
    author: "a woodworking shop",
    title: "page on the thickness of plywood",
    year: "undated",
    clause: "3/4 in plywood measured 11/16 in, 17.5 mm",
    mark: Mark::Page,
};

static SEFA: Source = Source {
    author: "SEFA",
    title: "test of shelves of laboratory casework",
    year: "undated",
    clause: "40 lb/ft2; online.flippingbook.com/view/516797401/6",
    mark: Mark::Page,
};

static EN_14749: Source = Source {
    author: "CEN",
    title: "EN 14749, storage furniture of homes and kitchens, and worktops",
    year: "2016",
    clause: "general clauses: 10 N counts as 1 kg; 123doc.top 13756267",
    mark: Mark::Page,
};

static MDF_INFO: Source = Source {
    author: "makers of MDF",
    title: "using MDF: fixing, screwing",
    year: "undated",
    clause: "mdf-info.eu/using-mdf/fixing/screwing: a screw in a face 12 from the edge and 25 from a corner",
    mark: Mark::Page,
};

static SCREW_EDGES: Source = Source {
    author: "a page of answers",
    title: "how far screws stay from an edge",
    year: "undated",
    clause: "experts123.com: no. 6, 8, 10 at 1/2, 5/8, 1 in",
    mark: Mark::Page,
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
    clause: "scope: 27 in (686 mm), 30 lb (13.6 kg), 3.2 ft3 (90.6 dm3) of closed storage, or more of each; cpsc.gov",
    mark: Mark::Origin,
};

static F2057: Source = Source {
    author: "ASTM",
    title: "F2057-23, Standard safety specification for clothing storage units",
    year: "2023",
    clause: "what counts as storage: drawers full, other closed space half; cpsc.gov and sn.astm.org",
    mark: Mark::Pages,
};

pub(crate) fn cases() -> Vec<Case> {
    let mut all = elasticities();
    all.extend(creeps());
    all.extend(loads());
    all.extend(units());
    all.push(tip_over());
    all.extend(scope());
    all.extend(tolerances());
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

/// In Pa: a pound-force of 0.453 592 37 kg at 9.806 65 m/s2, on a foot of 0.3048 m by itself.
const POUND_ON_SQUARE_FOOT: f64 = 0.453_592_37 * 9.806_65 / (0.304_8 * 0.304_8);

fn loads() -> Vec<Case> {
    let family = "loads and limits";
    let limit = LIMITS.iter().find(|limit| limit.words.starts_with("L/192"));
    let at = |span| limit.unwrap().at(span);
    let class = LOADS.iter().find(|load| load.words.ends_with("class L50"));
    let class = class.unwrap().pressure;
    vec![
        Case::new(
            family,
            "15 lb on a square foot",
            &KCMA,
            718.0,
            tested_with("15 lb/ft2"),
        )
        .within(around(0.5, "printed in whole pascals")),
        Case::new(family, "sag of a span of 305", &KCMA, 1.6, at(mm(305))).within(around(
            0.012,
            "1.6 is a sixteenth of an inch, 1.5875, to a tenth",
        )),
        Case::new(family, "sag of no shelf is more", &KCMA, 6.4, at(mm(2_400)))
            .within(around(0.05, "printed to a tenth")),
        Case::new(family, "class L50", &DIN_68930, 490.0, class)
            .within(around(0.5, "quoted in whole pascals")),
        Case::new(
            family,
            "class L50, kg on a square metre",
            &DIN_68930,
            50.0,
            class / GRAVITY,
        )
        .within(around(
            0.02,
            "the program takes 9.81 N for the weight of 1 kg",
        )),
        Case::new(
            family,
            "40 lb on a square foot, in Pa",
            &SEFA,
            40.0 * POUND_ON_SQUARE_FOOT,
            tested_with("40 lb/ft2"),
        )
        .within(around(1e-3, "a pound on a square foot in seven digits")),
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

/// What a unit of 600 x 704 x 560 of 18 board, and so 564 x 668 x 540 clear, has with one front over its opening.
fn behind(kind: FrontKind) -> ScopeUnit {
    let job = job(|job| job.cabinets[0].opening = closed(10, kind));
    parts(&job).scope_unit(&job.cabinets[0], &layout(&job), &job)
}

fn scope() -> Vec<Case> {
    let family = "scope of tip-over";
    let clear = 5.64 * 6.68 * 5.40;
    let counted = |kind| behind(kind).storage_dm3() / clear;
    let float = around(1e-6, "a ratio of volumes, through floats");
    vec![
        Case::new(
            family,
            "mass, 30 lb, in kg",
            &CFR_1261,
            13.6,
            TIP_OVER_MASS_KG,
        )
        .within(around(0.05, "printed to a tenth")),
        Case::new(
            family,
            "closed storage, 3.2 ft3, in dm3",
            &CFR_1261,
            90.6,
            TIP_OVER_STORAGE_DM3,
        )
        .within(around(0.05, "printed to a tenth")),
        Case::new(
            family,
            "share that counts of what is behind a door",
            &F2057,
            0.5,
            counted(FrontKind::Door(Hand::Left)),
        )
        .within(float),
        Case::new(
            family,
            "share that counts of a drawer",
            &F2057,
            1.0,
            counted(FrontKind::Drawer),
        )
        .within(float),
    ]
}

/// The most, in mm, that a panel of a board of this thickness may be thicker, or thinner, than the board's card says
/// before a finding says that it is.
fn thickness_off(board: i32, way: i32) -> f64 {
    let is_off = |by: i32| {
        let job = job(|job| {
            all_boards(job, mm(board));
            job.cabinets[0].copies[0].as_cut = vec![AsCut {
                thickness: Some(mm(board) + um(by * way)),
                ..AsCut::of(PanelId::Side(Hand::Left))
            }];
        });
        finds(Rule::AsCutThickness, &job)
    };
    f64::from((0..2_000).find(|by| is_off(by + 1)).unwrap()) / 1_000.0
}

fn tolerances() -> Vec<Case> {
    [
        ("a board of 18, thicker", &EN_312_TABLE_1, 18, 1),
        ("a board of 18, thinner", &EN_312_TABLE_1, 18, -1),
        ("a faced board of 15, either way", &EN_14323, 15, 1),
        ("a faced board of 16, thinner", &EN_14323, 16, -1),
    ]
    .map(|(name, source, board, way)| {
        Case::new(
            "tolerances of boards",
            name,
            source,
            0.3,
            thickness_off(board, way),
        )
        .threshold()
    })
    .into()
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
        Case::new(family, "11/16 in", &BOARDS, 17.5, typed("11/16"))
            .within(around(0.05, "printed to a tenth")),
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
    let limits = Shop::starter().limits;
    let of_shop =
        "a limit of the shop for every board and every hole, not of screws; it can be typed";
    let to_edge = |what, source, printed| Disagreement {
        what,
        source,
        printed,
        computed: limits.to_edge.mm(),
        stated: 10.0,
        reason: of_shop,
    };
    let of_card = "the card of a board does not say what the board is; the one figure there is, is that of sanded particleboard";
    let off = |what, source, printed, board, way| Disagreement {
        what,
        source,
        printed,
        computed: thickness_off(board, way),
        stated: 0.3,
        reason: of_card,
    };
    vec![
        off("thickness of a faced board below 15", &EN_14323, 0.2, 12, 1),
        off(
            "thickness of a faced board, thicker, by another sheet",
            &EN_14323,
            0.5,
            18,
            1,
        ),
        off("thickness of MDF", &ANSI_A208_2, 0.125, 18, 1),
        Disagreement {
            what: "N for the weight of 1 kg",
            source: &EN_14749,
            printed: 10.0,
            computed: GRAVITY,
            stated: 9.81,
            reason: "tests of furniture round it up, and so load more; a sag is reckoned with what the load weighs",
        },
        to_edge("a screw in the face of MDF from its edge", &MDF_INFO, 12.0),
        to_edge("a screw no. 6 from an edge", &SCREW_EDGES, 12.7),
        to_edge("a screw no. 8 from an edge", &SCREW_EDGES, 15.875),
        to_edge("a screw no. 10 from an edge", &SCREW_EDGES, 25.4),
        Disagreement {
            what: "a screw in the face of MDF from its corner",
            source: &MDF_INFO,
            printed: 25.0,
            computed: limits.to_end.mm(),
            stated: 8.0,
            reason: of_shop,
        },
        Disagreement {
            what: "span from which 6.4 mm caps L/192",
            source: &KCMA,
            printed: 1_219.0,
            computed: rules.unwrap().mm(),
            stated: 1_229.0,
            reason: "the page goes by 1/4 in, 6.35, and prints it as 6.4; the program goes by what is printed, so for spans from 1219 to 1229 it allows up to 0.05 more",
        },
    ]
}
