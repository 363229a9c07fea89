//! Pages of the trade: heights of fronts, rows of runners, drawer boxes.

use gablerow_core::cards::Cards;
use gablerow_core::job::{CardId, HolePlace, Job, Key, Runner, Shop, Spacers};
use gablerow_core::measure::Length;
use gablerow_core::parts::BoxPart;

use crate::case::{Case, Disagreement, Mark, Source, Within};
use crate::fixture::{bay, fronts, job, layout, mm, parts, um};

static FRONTS: Source = Source {
    author: "two shops that build by the grid",
    title: "32mm door and drawer heights",
    year: "undated",
    clause: "davelers.com/32mm/4988.html; dalrun.com/32mm/Drawers",
    mark: Mark::Pages,
};

static STACK: Source = Source {
    author: "a shelving maker",
    title: "heights of gables, drawers and doors",
    year: "undated",
    clause: "96 + 11 + 4*221 + 4*3 + 1181 + 11 = 2195",
    mark: Mark::Page,
};

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

pub(crate) fn cases() -> Vec<Case> {
    let mut all = front_heights();
    all.extend(runner_rows());
    all.extend(boxes());
    all.extend(clearances());
    all
}

fn front_heights() -> Vec<Case> {
    let family = "fronts";
    let mut all = Vec::new();
    for (modules, height) in [
        (4, 125.0),
        (5, 157.0),
        (6, 189.0),
        (7, 221.0),
        (8, 253.0),
        (9, 285.0),
        (10, 317.0),
        (12, 381.0),
        (24, 765.0),
        (37, 1_181.0),
    ] {
        // One front more below it takes what is left, so that the height is that of the modules and not what remains.
        let laid = layout(&job(|job| {
            job.cabinets[0].size.height = mm(32 * (i32::from(modules) + 6));
            job.cabinets[0].opening.fronts = fronts(&[6, modules]);
        }));
        let found = laid.fronts[1].height.total();
        all.push(Case::new(
            family,
            format!("{modules} modules"),
            &FRONTS,
            height,
            found.mm(),
        ));
    }
    let laid = layout(&job(|job| {
        job.cabinets[0].size.height = mm(2_195 - 96);
        (job.shop.fronts.reveal_foot, job.shop.fronts.reveal_head) = (mm(11), mm(11));
        job.cabinets[0].opening.fronts = fronts(&[37, 7, 7, 7, 7]);
    }));
    for (name, height, at) in [
        ("door of a stack of 2195", 1_181.0, 0),
        ("its drawers", 221.0, 4),
    ] {
        let found = laid.fronts[at].height.total();
        all.push(Case::new(family, name, &STACK, height, found.mm()));
    }
    let whole = laid.fronts[4].head() + mm(11) + mm(96);
    all.push(Case::new(
        family,
        "the whole stack",
        &STACK,
        2_195.0,
        whole.mm(),
    ));
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
    let printed = [37.0, 165.0, 261.0, 389.0, 517.0, 645.0];
    assert_eq!(rows.len(), printed.len());
    let rows = rows.iter().zip(printed);
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
        case("inside, undermount, in 614", 572.0, under.inside.total()),
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
