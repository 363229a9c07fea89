//! Pages of the trade: the grid, rows, first holes, boards and bands.

use gablerow_core::cards::Cards;
use gablerow_core::check::Rule;
use gablerow_core::grid::{Grid, HoleNumber, StartOffsets, railed_start_offsets, start_offsets};
use gablerow_core::job::{Back, BackRule, Depth, HolePlace, Inset, Job, Key, Shop, Zone};
use gablerow_core::measure::{Length, Unit, parse_length};

use crate::case::{Case, Disagreement, Mark, Source, nearest};
use crate::fixture::{bay, finds, inset_reveal, job, layout, mm, printed};

static GRID: Source = Source {
    author: "an encyclopedia and a shop that builds by the grid",
    title: "System 32; 32mm, 4988",
    year: "undated",
    clause: "de.wikipedia.org; davelers.com/32mm/4988.html; a convention that no body has issued",
    mark: Mark::Pages,
};

static QUARTER_INCH: Source = Source {
    author: "a woodworking magazine",
    title: "articles on shelf supports",
    year: "undated",
    clause: "issues 82 and 87: pins of 1/4 in",
    mark: Mark::Pages,
};

static FIRST_HOLES: Source = Source {
    author: "a woodworker's site",
    title: "32mm, Basics: start-hole table",
    year: "undated",
    clause: "bellinghambaywoodcraft.com/32mm/Basics",
    mark: Mark::Page,
};

static JOINTS: Source = Source {
    author: "a trade paper and a wood turner",
    title: "System 32; Idee System 32",
    year: "undated",
    clause: "holzwerken.net; wilmshoefer.eu/de/idee/system32.html",
    mark: Mark::Pages,
};

static BACK_ROWS: Source = Source {
    author: "an encyclopedia",
    title: "System 32",
    year: "undated",
    clause: "de.wikipedia.org: 37 from the back edge, or from the face of the back panel",
    mark: Mark::Pages,
};

static BACK_ON_PITCH: Source = Source {
    author: "a shop that builds by the grid",
    title: "32mm, Panels",
    year: "undated",
    clause: "davelers.com/32mm/Panels/150.html: 37 + 32m",
    mark: Mark::Page,
};

static PINS: Source = Source {
    author: "an encyclopedia, copied on a page",
    title: "32 mm cabinetmaking system",
    year: "undated",
    clause: "knowpia.com: pins 15 to 16 long with a collar of about 7, so that about 8 goes in; holes at least 8 deep",
    mark: Mark::Page,
};

static THICKNESSES: Source = Source {
    author: "makers of boards",
    title: "lists of boards",
    year: "undated",
    clause: "16, 18, 19, 22, 25 thick",
    mark: Mark::Pages,
};

static BANDS: Source = Source {
    author: "a maker of bands",
    title: "page on bands",
    year: "undated",
    clause: "0.4 to 3 thick, commonly 0.4, 0.8, 1 and 2",
    mark: Mark::Page,
};

static INSET: Source = Source {
    author: "a woodworker's site and a hinge maker",
    title: "Einlegeboeden - System 32; planning sheet",
    year: "undated",
    clause: "michaelkeutel.de; a sheet: 37 + door + a set-in of 0 to 1.5",
    mark: Mark::Pages,
};

const END_MIN: Length = Length::from_mm(8);

pub(crate) fn cases() -> Vec<Case> {
    let mut all = grid();
    all.extend(setbacks());
    all.extend(starter_boards());
    all.extend(first_holes());
    all
}

/// The pitch as holes of a face have it, and what they are bored with.
fn grid() -> Vec<Case> {
    let family = "the grid";
    let laid = layout(&job(|job| put_zone(job, 5, 9)));
    let face = laid.face(laid.bays[0].left).unwrap();
    let row = &face.rows[0];
    let holes: Vec<_> = face
        .holes(&laid)
        .into_iter()
        .filter(|hole| hole.x == row.x.total())
        .collect();
    let pitch = holes[1].z - holes[0].z;
    let diameter = holes[0].diameter;
    let quarter = parse_length("1/4 in", Unit::Millimetre).map_or(f64::NAN, Length::mm);
    vec![
        Case::new(family, "centre to centre", &GRID, 32.0, pitch.mm()),
        Case::new(family, "diameter of a hole", &GRID, 5.0, diameter.mm()).table(),
        Case::new(
            family,
            "front row, doors over the edge",
            &GRID,
            37.0,
            row.x.total().mm(),
        )
        .table(),
        Case::new(
            family,
            "what of a pin goes in",
            &PINS,
            8.0,
            Cards::starter().pins[0].pen.value.mm(),
        )
        .table(),
        Case::new(
            family,
            "hole 7 where the first is at 16",
            &GRID,
            208.0,
            Grid { first: mm(16) }
                .height(HoleNumber::new(7).unwrap())
                .mm(),
        ),
        Case::new(family, "pin of 1/4 in", &QUARTER_INCH, 6.35, quarter),
    ]
}

/// Thicknesses of starter boards and of the starter band, each against the nearest that is printed. The board for boxes is of
/// no printed thickness.
fn starter_boards() -> Vec<Case> {
    let case = |name: &str, source, prints: &[f64], found: f64| {
        Case::new(
            "boards and bands",
            name,
            source,
            nearest(prints, found),
            found,
        )
        .table()
    };
    let boards = Cards::starter().boards.into_iter();
    let mut all: Vec<Case> = boards
        .filter(|board| board.id.as_str() != "board-15")
        .map(|board| {
            let prints = [16.0, 18.0, 19.0, 22.0, 25.0];
            case(board.id.as_str(), &THICKNESSES, &prints, board.nominal.mm())
        })
        .collect();
    let band = Shop::starter().band.thickness.mm();
    all.push(case("band", &BANDS, &[0.4, 0.8, 1.0, 2.0], band));
    all
}

/// Where rows stand in a side of a depth, its back so far from the back edge.
fn back_row(rule: BackRule, depth: i32, back: i32) -> f64 {
    let laid = layout(&job(|job| {
        job.shop.back_rule = rule;
        job.cabinets[0].size.depth = mm(depth);
        job.cabinets[0].carcass.back = Back::Groove {
            to_front_wall: mm(back),
            cut: mm(8),
        };
    }));
    laid.bays[0].back_row.total().mm()
}

/// Where the front row stands behind an inset door 22 thick.
fn inset_row(set_in: f64) -> f64 {
    let laid = layout(&job(|job| {
        bay(job).inset = Some(Inset {
            front: Some(mm(22)),
            set_in: printed(set_in),
        });
    }));
    laid.bays[0].front_row.total().mm()
}

/// Rows by the printed rules, on the depths and doors that these are worked through with.
fn setbacks() -> Vec<Case> {
    let backs = [
        (
            "530 deep, from the back edge",
            &BACK_ROWS,
            BackRule::FromBackEdge,
            [530, 16],
            530.0 - 37.0,
        ),
        (
            "530 deep, from a back panel 16 in",
            &BACK_ROWS,
            BackRule::FromBackPanel,
            [530, 16],
            530.0 - 16.0 - 37.0,
        ),
        (
            "530 deep, on whole pitches",
            &BACK_ON_PITCH,
            BackRule::OnPitch,
            [530, 16],
            37.0 + 32.0 * 14.0,
        ),
        (
            "560 deep, on whole pitches",
            &GRID,
            BackRule::OnPitch,
            [560, 20],
            37.0 + 32.0 * 15.0,
        ),
    ];
    let backs = backs.map(|(name, source, rule, [depth, back], printed)| {
        let name = format!("back row, {name}");
        Case::new(
            "setbacks of rows",
            name,
            source,
            printed,
            back_row(rule, depth, back),
        )
    });
    let insets = [0.0, 1.0, 1.5].map(|set_in| {
        let name = format!("front row behind a door of 22, set in {set_in}");
        let printed = 37.0 + 22.0 + set_in;
        Case::new("setbacks of rows", name, &INSET, printed, inset_row(set_in))
    });
    backs.into_iter().chain(insets).collect()
}

/// Pin holes of the one bay, from one number up to another.
fn put_zone(job: &mut Job, first: i16, last: i16) {
    bay(job).zones = vec![Zone {
        key: Key(3),
        first: HolePlace::foot(first),
        last: HolePlace::foot(last),
        depth: Depth::Shop,
    }];
}

fn first_holes() -> Vec<Case> {
    let family = "first hole from the reveal";
    // Reveal, least distance to the end, then what the page prints for registered and shifted.
    let rows = [
        ("full overlay, split", 1.5, 8, Some(32.0), Some(16.0)),
        ("half overlay, 19 board", 11.0, 8, Some(9.5), Some(25.5)),
        ("half overlay, 16 board", 9.5, 8, Some(8.0), Some(24.0)),
        (
            "inset without rails, 19 board",
            22.0,
            0,
            Some(20.5),
            Some(4.5),
        ),
        ("4.5 at both ends", 4.5, 8, Some(35.0), Some(19.0)),
        ("3 at the head", 3.0, 8, Some(33.5), Some(17.5)),
        ("0 at the foot", 0.0, 8, Some(30.5), Some(14.5)),
        ("0 at the foot, a pitch up", 0.0, 40, None, Some(46.5)),
        ("10 at the head", 10.0, 8, Some(8.5), Some(24.5)),
        ("10 at the head, a pitch up", 10.0, 40, None, Some(56.5)),
    ];
    let mut all = Vec::new();
    let mut both = |name: &str, offsets: StartOffsets, prints: [Option<f64>; 2]| {
        let found = [
            ("registered", offsets.registered),
            ("shifted", offsets.shifted),
        ];
        for ((way, found), prints) in found.into_iter().zip(prints) {
            let Some(prints) = prints else { continue };
            let name = format!("{name}, {way}");
            all.push(Case::new(family, name, &FIRST_HOLES, prints, found.mm()));
        }
    };
    for (name, reveal, end_min, registered, shifted) in rows {
        let offsets = start_offsets(printed(reveal), mm(3), mm(end_min));
        both(name, offsets, [registered, shifted]);
    }
    for (name, rail, registered, shifted) in [
        ("inset with rails of 19", 19, 9.5, 25.5),
        ("inset with rails of 16", 16, 8.0, 24.0),
    ] {
        both(
            name,
            railed_start_offsets(mm(rail), END_MIN),
            [Some(registered), Some(shifted)],
        );
    }
    for (board, offset) in [(19, 9.5), (18, 9.0), (16, 8.0)] {
        let found = railed_start_offsets(mm(board), END_MIN).registered;
        let name = format!("joint centred in a bottom of {board}");
        all.push(Case::new(family, name, &JOINTS, offset, found.mm()));
    }
    all
}

/// The shallowest hole, to a tenth of a mm, that no finding calls too shallow for the starter pin.
fn least_depth() -> f64 {
    let is_short = |tenths: i32| {
        let job = job(|job| {
            put_zone(job, 5, 9);
            job.shop.depth = Length::from_um(100) * tenths;
        });
        finds(Rule::DepthShortForScrew, &job)
    };
    f64::from((10..200).find(|tenths| !is_short(*tenths)).unwrap()) / 10.0
}

pub(crate) fn disagreements() -> Vec<Disagreement> {
    // The reveal of an inset door, and the first holes that the program has for it.
    let reveal = inset_reveal(16);
    let first = start_offsets(reveal, mm(3), Length::ZERO);
    let inset = |what, printed, computed: Length, stated| Disagreement {
        what,
        source: &FIRST_HOLES,
        printed,
        computed: computed.mm(),
        stated,
        reason: "an inset reveal is t + gap, 19 for a board of 16 and a gap of 3; the offsets of the page do fit the reveal beside them",
    };
    vec![
        Disagreement {
            what: "depth of a hole for a pin, least",
            source: &PINS,
            printed: 8.0,
            computed: least_depth(),
            stated: 8.5,
            reason: "the page asks for no more than what goes in; the program leaves 0.5 under it, a limit of the shop",
        },
        inset("inset reveal of a board of 16", 20.5, reveal, 19.0),
        inset("its first hole, registered", 19.0, first.registered, 17.5),
        inset("its first hole, shifted", 3.0, first.shifted, 1.5),
    ]
}
