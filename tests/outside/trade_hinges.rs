//! Pages of the trade: overlay, cups, plates, counts of hinges, what doors weigh.

use gablerow_core::cards::{Cards, PlateShape};
use gablerow_core::check::Rule;
use gablerow_core::grid::{Grid, HoleNumber, Run, start_offsets};
use gablerow_core::job::{FrontKind, Hand, HolePlace, Key, Plate};
use gablerow_core::measure::Length;
use gablerow_core::solve::hinges::{
    CHARTS, CUP_DIAMETER, Door, DoorFacts, HingeRow, Mount, OverlayCard, OverlayFit, count, cups,
    fit_overlay, overlay_wanted,
};
use gablerow_core::strength::mass_kg;

use crate::case::{Case, Disagreement, Mark, Source, around};
use crate::fixture::{bay, closed, finds, job, mm, printed, um};

static OVERLAY: Source = Source {
    author: "two hinge makers",
    title: "planning sheets",
    year: "undated",
    clause: "overlay by arm, tab and plate",
    mark: Mark::Pages,
};

static CUP: Source = Source {
    author: "a hinge maker",
    title: "quick reference",
    year: "undated",
    clause: "cups of 35, their centres for tabs of 3 to 8",
    mark: Mark::Page,
};

static PLATE: Source = Source {
    author: "a forum of cabinetmakers and a shop that builds by the grid",
    title: "Odd Cabinet Heights; 32mm, 4988",
    year: "undated",
    clause: "woodweb; davelers.com/32mm/4988.html",
    mark: Mark::Pages,
};

static CUP_HEIGHTS: Source = Source {
    author: "two shops that build by the grid",
    title: "32mm, 4988; 32mm, Drawers",
    year: "undated",
    clause: "davelers.com/32mm/4988.html; dalrun.com/32mm/Drawers",
    mark: Mark::Pages,
};

static INCH_CHART: Source = Source {
    author: "a hinge maker",
    title: "chart of hinge counts by height and weight",
    year: "undated",
    clause: "40, 60, 80, 100 in and 15, 30, 45, 60 lb; bars paired to labels by inference",
    mark: Mark::Page,
};

static KG_CHART: Source = Source {
    author: "a hinge maker",
    title: "advice on hinge counts",
    year: "undated",
    clause: "4 to 6 kg 2, 6 to 12 kg 3, at 650 wide one more",
    mark: Mark::Page,
};

static DENSITIES: Source = Source {
    author: "a board maker",
    title: "sheet of raw particleboard",
    year: "undated",
    clause: "kg/m3: 16 thick 660, 18 to 19 thick 650",
    mark: Mark::Page,
};

static AREAL: Source = Source {
    author: "a timber trade school book",
    title: "Profiwissen 1x1 der Holzprodukte",
    year: "undated",
    clause: "table H1.1: raw P2, 19 thick, 12.6 kg/m2; yumpu.com 62613233, p. 188",
    mark: Mark::Page,
};

static CHART_DOOR: Source = Source {
    author: "two hinge makers",
    title: "charts of hinge counts",
    year: "undated",
    clause: "for doors of 19 particleboard at 750 kg/m3",
    mark: Mark::Pages,
};

static TABS: Source = Source {
    author: "two hinge makers",
    title: "planning sheets",
    year: "undated",
    clause: "tabs of 3 to 7 as usual, in tables to 8; cups 10.5, 12.5, 12.6 or more, and 13 deep",
    mark: Mark::Pages,
};

static SPREAD: Source = Source {
    author: "a hinge maker",
    title: "page on hinges",
    year: "undated",
    clause: "first to last hinge over the width of the door",
    mark: Mark::Page,
};

pub(crate) fn cases() -> Vec<Case> {
    let mut all = overlays();
    all.push(inset_plate());
    all.extend(hinge_card());
    all.extend(cup_centres());
    all.extend(heights());
    all.extend(counts());
    all.extend(densities());
    all
}

/// What a hinge of this arm with this one tab and this one plate in stock laps over.
fn fit(arm: i32, tab: i32, plate: i32) -> OverlayFit {
    let plates = [mm(plate)];
    let card = OverlayCard {
        arm: mm(arm),
        tab_least: mm(tab),
        tab_most: mm(tab),
        tab_step: Length::ZERO,
        plates: &plates,
        cup: CUP_DIAMETER,
    };
    fit_overlay(&card, mm(19)).unwrap()
}

fn overlays() -> Vec<Case> {
    [(3, 0, 19.0), (3, 3, 16.0), (5, 2, 19.0)]
        .map(|(tab, plate, printed)| {
            let name = format!("overlay of arm 16, tab {tab}, plate {plate}");
            let found = fit(16, tab, plate).overlay.total();
            Case::new("hinge relations", name, &OVERLAY, printed, found.mm())
        })
        .into()
}

/// The plate of an inset door: arm + tab + gap, for the starter card's arm, 6 of tab and a gap of 2.
fn inset_plate() -> Case {
    let hinge = &Cards::starter().hinges[0];
    let plates: Vec<Length> = (0..=20).map(mm).collect();
    let card = OverlayCard {
        arm: hinge.arms.inset.value,
        tab_least: mm(6),
        tab_most: mm(6),
        tab_step: Length::ZERO,
        plates: &plates,
        cup: CUP_DIAMETER,
    };
    let wanted = overlay_wanted(Mount::Inset { gap: mm(2) }).total();
    let found = fit_overlay(&card, wanted).unwrap().plate;
    let printed = hinge.arms.inset.value.mm() + 6.0 + 2.0;
    let name = "plate of an inset door, tab 6, gap 2: arm + tab + gap";
    Case::new("hinge relations", name, &OVERLAY, printed, found.mm())
}

/// What the starter card has of what sheets print.
fn hinge_card() -> Vec<Case> {
    let hinge = &Cards::starter().hinges[0];
    [
        ("tab, least", &TABS, 3.0, hinge.tabs.least.value),
        ("tab, most", &TABS, 7.0, hinge.tabs.most.value),
        (
            "depth of the cup, the most that is printed",
            &TABS,
            13.0,
            hinge.cup_depth.value,
        ),
        ("diameter of the cup", &CUP, 35.0, hinge.cup.value),
    ]
    .map(|(name, source, printed, found)| {
        Case::new("hinge relations", name, source, printed, found.mm()).table()
    })
    .into()
}

fn cup_centres() -> Vec<Case> {
    let prints = [20.5, 21.5, 22.5, 23.5, 24.5, 25.5];
    let tabs = (3..).zip(prints);
    tabs.map(|(tab, printed)| {
        let name = format!("cup from the edge, tab {tab}");
        let found = fit(16, tab, 0).cup_centre.total();
        Case::new("hinge relations", name, &CUP, printed, found.mm())
    })
    .collect()
}

/// Where plates may sit on a row that begins here.
fn row(first: Length) -> HingeRow<'static> {
    HingeRow {
        grid: Grid { first },
        holes: Run::new(HoleNumber::FIRST, HoleNumber::new(24).unwrap()).unwrap(),
        taken: &[],
        barred: &[],
        plate: PlateShape::AlongRow,
        half_zone: Length::ZERO,
    }
}

fn heights() -> Vec<Case> {
    let family = "heights of plates and cups";
    let plate = row(printed(46.5)).legal(Length::ZERO, mm(100))[0].centre;
    let mut all = vec![Case::new(
        family,
        "plate on holes 1 and 2 from 46.5",
        &PLATE,
        62.5,
        plate.mm(),
    )];
    let gap = mm(3);
    let offsets = start_offsets(gap.half(), gap, mm(8));
    let ways = [
        ("registered", offsets.registered, [46.5, 78.5, 110.5]),
        ("shifted", offsets.shifted, [30.5, 62.5, 94.5]),
    ];
    let door = Door {
        foot: gap.half(),
        height: mm(765),
    };
    // Registered: 78.5 from either end, 19 pitches apart.
    let centres = row(offsets.registered).legal(Length::ZERO, mm(800));
    let ends = [1, 20].map(|at| centres[at].centre);
    let [low, high] = [0, 1].map(|at| cups(door, &ends).cups[at].from_foot.total());
    for (name, printed, found) in [
        ("lower cup of a door of 765", 78.5, low),
        ("its upper cup", 686.5, high),
        ("from cup to cup", 608.0, high - low),
    ] {
        all.push(Case::new(family, name, &CUP_HEIGHTS, printed, found.mm()));
    }
    for (way, first, prints) in ways {
        let places = row(first).legal(Length::ZERO, mm(150));
        let centres: Vec<Length> = places.iter().map(|place| place.centre).collect();
        for (cup, printed) in cups(door, &centres).cups.iter().zip(prints) {
            let found = cup.from_foot.total();
            let name = format!("cup from the door's end, {way}");
            all.push(Case::new(family, name, &CUP_HEIGHTS, printed, found.mm()));
        }
    }
    all
}

fn counts() -> Vec<Case> {
    let family = "hinge counts";
    let inches = |high: i32, pounds: f64| DoorFacts {
        width: mm(400),
        height: mm(400),
        cabinet_height: Length::from_inch_64ths(high),
        mass_kg: pounds * 0.453_592_37,
    };
    let kilos = |width: i32, mass_kg: f64| DoorFacts {
        width: mm(width),
        height: mm(1_000),
        cabinet_height: mm(1_000),
        mass_kg,
    };
    let mut all = Vec::new();
    let mut case =
        |name: String, source: &'static Source, printed: u8, chart: usize, door: DoorFacts| {
            let found = count(&CHARTS[chart], &door).hinges;
            all.push(Case::new(family, name, source, printed.into(), found.into()).threshold());
        };
    for (hinges, high, pounds) in [(2, 40, 15.0), (3, 60, 30.0), (4, 80, 45.0), (5, 100, 60.0)] {
        case(
            format!("height to {high} in"),
            &INCH_CHART,
            hinges,
            1,
            inches(high * 64, 1.0),
        );
        case(
            format!("mass under {pounds} lb"),
            &INCH_CHART,
            hinges,
            1,
            inches(64, pounds - 0.01),
        );
        if hinges < 5 {
            case(
                format!("height over {high} in"),
                &INCH_CHART,
                hinges + 1,
                1,
                inches(high * 64 + 1, 1.0),
            );
            case(
                format!("mass of {pounds} lb"),
                &INCH_CHART,
                hinges + 1,
                1,
                inches(64, pounds),
            );
        }
    }
    for (name, hinges, width, mass) in [
        ("4 kg", 2, 600, 4.0),
        ("6 kg", 2, 600, 6.0),
        ("over 6 kg", 3, 600, 6.01),
        ("12 kg", 3, 600, 12.0),
        ("10 kg, 650 wide", 4, 650, 10.0),
        (
            "a door of 7.9 kg, 640 wide",
            3,
            640,
            mass_kg(mm(640), mm(1_000), mm(19), 650.0),
        ),
    ] {
        case(name.to_owned(), &KG_CHART, hinges, 2, kilos(width, mass));
    }
    all
}

/// What a square metre of a starter board weighs, and a board's density out of that.
fn densities() -> Vec<Case> {
    let boards = Cards::starter().boards;
    let rows = [
        ("board-16", &DENSITIES, 660.0),
        ("board-18", &DENSITIES, 650.0),
        ("board-19", &CHART_DOOR, 750.0),
    ];
    rows.map(|(id, source, printed)| {
        let board = boards.iter().find(|board| board.id.as_str() == id).unwrap();
        let thickness = board.thickness.value;
        let mass = mass_kg(
            mm(1_000),
            mm(1_000),
            thickness,
            f64::from(board.density.value),
        );
        let found = mass / thickness.mm() * 1_000.0;
        Case::new("densities of boards", id, source, printed, found)
            .within(around(1e-6, "whole kg/m3, through a float"))
            .table()
    })
    .into()
}

/// How many of its widths the widest door has between its hinges that no finding calls too close: plates on holes 3 and 10,
/// so 224 apart, and doors of whole mm.
fn least_spread() -> f64 {
    let close = |width: i32| {
        let job = job(|job| {
            job.cabinets[0].size.width = mm(width);
            let card = job.shop.hinge.clone();
            job.cabinets[0].opening = closed(10, FrontKind::Door(Hand::Left));
            bay(job).plates = [3, 10]
                .map(|hole| Plate {
                    key: Key(60 + u32::try_from(hole).unwrap()),
                    wall: Hand::Left,
                    hole: HolePlace::foot(hole),
                    card: card.clone(),
                    serves: None,
                })
                .into();
        });
        finds(Rule::HingesTooClose, &job)
    };
    // A door is 3 narrower than its cabinet.
    let widest = (200..400).find(|width| close(width + 1)).unwrap() - 3;
    224.0 / f64::from(widest)
}

pub(crate) fn disagreements() -> Vec<Disagreement> {
    let boards = Cards::starter().boards;
    let front = boards
        .iter()
        .find(|board| board.id.as_str() == "board-19")
        .unwrap();
    let areal = |density: f64| mass_kg(mm(1_000), mm(1_000), um(19_000), density);
    vec![
        Disagreement {
            what: "a square metre of 19 particleboard by the density of another maker, in kg",
            source: &AREAL,
            printed: 12.6,
            computed: areal(650.0),
            stated: 12.35,
            reason: "12.6 is 663 kg/m3; makers differ by 2 %, and a data sheet decides",
        },
        Disagreement {
            what: "a square metre of the starter board for fronts, in kg",
            source: &AREAL,
            printed: 12.6,
            computed: areal(f64::from(front.density.value)),
            stated: 14.25,
            reason: CHART_DOOR.clause,
        },
        Disagreement {
            what: "first to last hinge, in widths of the door",
            source: &SPREAD,
            printed: 1.0,
            computed: least_spread(),
            stated: 0.8,
            reason: "one maker asks for the whole width; the house default warns under 0.8 of it",
        },
    ]
}
