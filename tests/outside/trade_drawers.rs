//! Pages of the trade: rows of runners, drawer boxes.

use gablerow_core::cards::Cards;
use gablerow_core::job::{CardId, HolePlace, Job, Key, Runner, Shop, Spacers};
use gablerow_core::measure::Length;
use gablerow_core::parts::BoxPart;

use crate::case::{Case, Disagreement, Mark, Source, Within, nearest};
use crate::fixture::{bay, fronts, job, layout, mm, parts, um};

static RUNNER_HOLES: Source = Source {
    author: "a guide to drawers",
    title: "drawer guide",
    year: "undated",
    clause: "conduct.edu.vn/drawer-guide: holes of runners from the front",
    mark: Mark::Page,
};

static BOXES: Source = Source {
    author: "makers of drawer boxes",
    title: "how to measure for a drawer box",
    year: "undated",
    clause: "side-mount 12.7 a side; undermount 42 to the inside of the box",
    mark: Mark::Pages,
};

static BESIDE_LEAST: Source = Source {
    author: "makers of drawer boxes",
    title: "how to measure for a drawer box",
    year: "undated",
    clause: "side-mount, 12.5 a side and up",
    mark: Mark::Pages,
};

static BOX_HEIGHTS: Source = Source {
    author: "makers of drawer boxes",
    title: "how to measure for a drawer box",
    year: "undated",
    clause: "box under its opening: 12.7 side-mount, 20.6 undermount and better 22 to 25",
    mark: Mark::Pages,
};

static DRAWER_RULE: Source = Source {
    author: "a drawer maker",
    title: "general rule for stacks of drawers",
    year: "undated",
    clause: "15 below, 25 between, 10 above",
    mark: Mark::Page,
};

static BEHIND: Source = Source {
    author: "a runner maker",
    title: "sheet of a runner",
    year: "undated",
    clause: "5 or more behind the runner",
    mark: Mark::Page,
};

static BESIDE: Source = Source {
    author: "a maker of drawer boxes",
    title: "how to measure for a drawer box",
    year: "undated",
    clause: "side-mount, 26.99 off the clear width in all",
    mark: Mark::Page,
};

static BEHIND_INCH: Source = Source {
    author: "a runner maker",
    title: "sheet of an undermount runner",
    year: "undated",
    clause: "the body exceeds its name by some 1/2 in",
    mark: Mark::Page,
};

static RUNNER_NAMES: Source = Source {
    author: "makers of runners",
    title: "lists of lengths",
    year: "undated",
    clause: "250, 270, 300, then each 50 to 750",
    mark: Mark::Pages,
};

pub(crate) fn cases() -> Vec<Case> {
    let mut all = runner_card();
    all.extend(runner_rows());
    all.extend(starter_runner_rows());
    all.extend(boxes());
    all.extend(clearances());
    all
}

/// What the starter cards have of what lists and guides print.
fn runner_card() -> Vec<Case> {
    let runner = &Cards::starter().runners[0];
    let prints: Vec<f64> = [250.0, 270.0]
        .into_iter()
        .chain((6..=15).map(|at| f64::from(at) * 50.0))
        .collect();
    let mut all: Vec<Case> = runner
        .lengths
        .iter()
        .map(|length| {
            let name = length.name.mm();
            Case::new(
                "rows of runners",
                format!("runner of {name}"),
                &RUNNER_NAMES,
                nearest(&prints, name),
                name,
            )
            .table()
        })
        .collect();
    let stand_back = runner.stand_back.value.mm();
    all.push(
        Case::new(
            "rows of runners",
            "stand-back",
            &RUNNER_HOLES,
            2.0,
            stand_back,
        )
        .table(),
    );
    all
}

/// Runners of a length on hole 4 of the one bay.
fn put_runner(job: &mut Job, card: &str, length: Length) {
    let made = Runner {
        key: Key(3),
        hole: HolePlace::foot(4),
        card: CardId::new(card).unwrap(),
        length,
        set_back: 0,
        spacers: Spacers::default(),
        serves: None,
    };
    bay(job).runners = vec![made];
}

fn runner_rows() -> Vec<Case> {
    let laid = layout(&job(|job| {
        job.cabinets[0].size.depth = mm(760);
        let longest = job.cards.runners[0].lengths.last_mut().unwrap();
        longest.steps = vec![0, 4, 7, 11, 15, 19];
        let name = longest.name;
        put_runner(job, "runner-under", name);
    }));
    let rows = &laid.face(laid.bays[0].left).unwrap().rows;
    assert_eq!(rows.len(), GUIDE.len());
    let rows = rows.iter().zip(GUIDE);
    rows.enumerate()
        .map(|(at, (row, printed))| {
            let name = format!("hole {} from the front", at + 1);
            Case::new(
                "rows of runners",
                name,
                &RUNNER_HOLES,
                printed,
                row.x.total().mm(),
            )
        })
        .collect()
}

/// What the guide prints, for all lengths in one list.
const GUIDE: [f64; 6] = [37.0, 165.0, 261.0, 389.0, 517.0, 645.0];

/// The rows of the starter runner of a length, from the front.
fn starter_rows(length: Length) -> Vec<f64> {
    let laid = layout(&job(|job| {
        job.cabinets[0].size.depth = mm(760);
        put_runner(job, "runner-under", length);
    }));
    let rows = &laid.face(laid.bays[0].left).unwrap().rows;
    rows.iter().map(|row| row.x.total().mm()).collect()
}

/// Rows of starter runners, each against the nearest that the guide prints; the one it does not print is stated below.
fn starter_runner_rows() -> Vec<Case> {
    let lengths = Cards::starter().runners.remove(0).lengths;
    let rows = lengths.into_iter().flat_map(|length| {
        let rows = starter_rows(length.name).into_iter();
        rows.map(move |row| (length.name.mm(), row))
    });
    rows.filter(|row| *row != (500.0, ODD_ROW))
        .map(|(name, row)| {
            let words = format!("runner of {name}, row at {row}");
            let printed = nearest(&GUIDE, row);
            Case::new("rows of runners", words, &RUNNER_HOLES, printed, row).table()
        })
        .collect()
}

/// The last row of the starter runner of 500.
const ODD_ROW: f64 = 453.0;

/// The box on such runners in a bay of a width, of sides of a thickness.
fn drawer_box(card: &str, width: i32, side: Length) -> BoxPart {
    let parts = parts(&job(|job| {
        let board = job
            .cards
            .boards
            .iter()
            .find(|board| board.id == job.shop.board);
        let thickness = board.unwrap().thickness.value;
        job.cabinets[0].size.width = mm(width) + thickness * 2;
        job.cabinets[0].opening.fronts = fronts(&[22]);
        let sides = job.shop.box_board().clone();
        let sides = job.cards.boards.iter_mut().find(|board| board.id == sides);
        sides.unwrap().thickness.value = side;
        put_runner(job, card, mm(500));
    }));
    parts.boxes[0].clone()
}

fn boxes() -> Vec<Case> {
    let family = "drawer boxes";
    let beside = drawer_box("runner-side", 614, mm(15));
    let under = drawer_box("runner-under", 614, mm(15));
    let case =
        |name: &str, printed, found: Length| Case::new(family, name, &BOXES, printed, found.mm());
    let mut all = vec![
        case("outside, side-mount, in 614", 588.6, beside.outside.total()),
        case("beside it, either side", 12.7, beside.side_gap),
        Case::new(
            family,
            "the same, 12.5 and up",
            &BESIDE_LEAST,
            12.5,
            beside.side_gap.mm(),
        )
        .within(Within {
            below: 0.0,
            above: 0.2 + 1e-9,
            why: "the pages print 12.5 as the least, others 12.7",
        }),
        case("inside, undermount, in 614", 572.0, under.inside.total()),
        case(
            "from carcass to the inside of the box",
            21.0,
            (mm(614) - under.inside.total()).half(),
        ),
        case("outside of sides of 15", 602.0, under.outside.total()),
    ];
    // What two pages say comes off the clear width for the outside, least and most where they differ.
    for (side, least, most) in [
        (13_000, 16.0, 16.0),
        (15_000, 12.0, 12.0),
        (15_875, 9.5, 10.3),
        (12_700, 15.9, 16.7),
    ] {
        let made = drawer_box("runner-under", 614, um(side));
        let less = mm(614) - made.outside.total();
        let within = Within {
            below: 1e-9,
            above: most - least + 1e-9,
            why: "the pages print figures this far apart",
        };
        let name = format!("off the clear width, sides of {}", um(side).exact_mm());
        all.push(case(&name, least, less).within(within));
    }
    all
}

/// The air that boxes get.
fn clearances() -> Vec<Case> {
    let air = Shop::starter().boxes;
    [
        ("clear below a box", 15.0, air.below),
        ("clear between boxes", 25.0, air.between),
        ("clear above a box", 10.0, air.above),
    ]
    .map(|(name, printed, found)| {
        Case::new("drawer boxes", name, &DRAWER_RULE, printed, found.mm()).table()
    })
    .into()
}

pub(crate) fn disagreements() -> Vec<Disagreement> {
    let shop = Shop::starter();
    let length = &Cards::starter().runners[0].lengths[0];
    let above = |printed, what| Disagreement {
        what,
        source: &BOX_HEIGHTS,
        printed,
        computed: shop.boxes.above.mm(),
        stated: 10.0,
        reason: "the house default follows the one drawer maker who prints 15, 25 and 10 together; it is a value of the shop, and a sheet decides",
    };
    vec![
        above(12.7, "clear above a box between its runners"),
        above(20.6, "clear above a box on its runners"),
        above(22.0, "the same, as advised"),
        Disagreement {
            what: "last row of a runner of 500",
            source: &RUNNER_HOLES,
            printed: 389.0,
            computed: starter_rows(mm(500))[2],
            stated: ODD_ROW,
            reason: "the guide has one list for all lengths, 389 and then 517, which is beyond this runner; the starter card is a house guess",
        },
        Disagreement {
            what: "what a runner at the side takes off the clear width",
            source: &BESIDE,
            printed: 26.99,
            computed: Cards::starter().runners[1].deduct.value.mm(),
            stated: 25.4,
            reason: "makers of boxes print 25.4 on several pages and this one alone more; the card's value decides",
        },
        Disagreement {
            what: "depth an undermount runner of an inch length needs beyond its name",
            source: &BEHIND_INCH,
            printed: 12.7,
            computed: (length.need.value - length.name).mm(),
            stated: 3.0,
            reason: "the starter card is of a metric family; a sheet decides",
        },
        Disagreement {
            what: "depth a runner needs beyond its name",
            source: &BEHIND,
            printed: 5.0,
            computed: (length.need.value - length.name).mm(),
            stated: 3.0,
            reason: "sheets differ from 3 to half an inch; the starter card says that it is a house guess",
        },
    ]
}
