//! Jobs in which everything stands that a job file can say: the glaze store of a community pottery.

use gablerow_core::cards::{
    self, Across, Along, CardId, Corner, CountChart, Origin, PlateShape, RunnerKind, Sourced,
};
use gablerow_core::grid::HoleNumber;
use gablerow_core::job::{
    Acceptance, AsCut, Back, BackRail, BackRule, BandState, Bay, BenchRules, Bit, Bored, Bottom,
    Cabinet, Carcass, Copy, Datum, Depth, Division, Edge, End, EndOffsets, FaceId, Fastener, Fit,
    FixedShelf, FreeHole, FreeRow, Front, FrontHeight, FrontKind, Gauge, Hand, HolePlace, Inset,
    Job, Joint, JointBore, Key, Label, LeftAt, Measured, Notch, Opening, PanelId, Part, PartWidth,
    Partition, PinRows, Plate, Reference, Revision, Runner, Shelf, ShelfHeight, SideBySide, Sides,
    Size, Spacers, Span, Stacked, Stand, Took, Top, TopKind, Trouble, WorkOrder, Zone,
};
use gablerow_core::measure::{Length, Unit};

fn mm(value: i32) -> Length {
    Length::from_mm(value)
}

fn name(text: &str) -> Label {
    Label::new(text).unwrap()
}

fn card(text: &str) -> CardId {
    CardId::new(text).unwrap()
}

/// Jobs that together use every field and every word.
pub(super) fn all() -> [Job; 3] {
    let plain = Job::plain(name("Glaze store"));
    let mut other = plain.clone();
    other.shop.back_rule = BackRule::FromBackEdge;
    other.cabinets[0].carcass.back = Back::Open;
    other.cabinets[0].carcass.stand = Some(Stand::Feet(mm(100)));
    other.shop.band.on = BandState::AfterBoring;
    other.shop.bench.order = WorkOrder::PanelFirst;
    other.shop.bench.gauge = Gauge::Eye;
    other.cards.hinges[0].chart = CountChart::Inches;
    other.cards.hinges[1].chart = CountChart::MassAndWidth;
    for (zero, along) in Corner::ALL.into_iter().zip(Along::ALL) {
        let mut rail = other.cards.rails[0].clone();
        rail.id = card(&format!("bed-{}", other.cards.rails.len()));
        (rail.bed.zero, rail.bed.along, rail.bed.across) = (zero, along, Across::Toward);
        other.cards.rails.push(rail);
    }
    [plain, glaze_store(), other]
}

/// Two cabinets with everything in them, and a plain one.
pub(super) fn glaze_store() -> Job {
    let mut job = Job::plain(name("Glaze store, room 2"));
    job.unit = Unit::Inch;
    job.shop.back_rule = BackRule::OnPitch;
    job.shop.bit = Bit::Pointed;
    job.shop.reference = Reference::OneStop;
    job.shop.bench.order = WorkOrder::SettingFirst;
    (job.shop.bench.test_depth, job.shop.bench.base_off) = (Some(mm(12)), Some(mm(1)));
    job.cards.boards[0].thickness = Sourced {
        value: Length::from_um(18_600),
        origin: Origin::DataSheet,
    };
    job.cards.pins[0].rise.origin = Origin::Invented;
    let side_mount = |runner: &cards::Runner| runner.kind == RunnerKind::SideMount;
    assert!(job.cards.runners.iter().any(side_mount));
    assert!(
        job.cards
            .hinges
            .iter()
            .any(|hinge| hinge.plate == PlateShape::InLine)
    );
    let mut mirrored = Cabinet::plain(Key(2), name("G2"), &job.shop);
    furnish_shelves(&mut mirrored);
    let mut drawers = Cabinet::plain(Key(7), name("G7 \"wide\""), &job.shop);
    furnish_drawers(&mut drawers);
    job.cabinets.extend([mirrored, drawers]);
    job.bored = bored();
    job.took = vec![Took {
        planned: 65,
        seconds: 80,
    }];
    job.troubles = vec![Trouble {
        cabinet: Key(2),
        copy: Key(51),
        face: FaceId::inside(Hand::Left),
        words: name("the bit wandered at hole 7"),
    }];
    job.measured = measured();
    job.revisions = vec![Revision {
        cabinet: Key(2),
        number: 7,
        word: name("otter"),
    }];
    job.left_at = Some(LeftAt {
        cabinet: Key(7),
        face: FaceId::inside(Hand::Left).behind(),
    });
    job
}

/// The glaze store as files have it that were written before fronts were laid out.
pub(super) fn first_glaze_store() -> Job {
    let mut job = glaze_store();
    (job.took, job.troubles, job.revisions) = (Vec::new(), Vec::new(), Vec::new());
    job.measured.clear();
    job.bored
        .iter_mut()
        .for_each(|bored| bored.taken_back = false);
    (job.shop.front_board, job.shop.box_board) = (None, None);
    (job.shop.connector, job.shop.rail) = (None, None);
    job.shop.bench = BenchRules::default();
    (job.cards.connectors, job.cards.rails) = (Vec::new(), Vec::new());
    job.cards.boards.truncate(2);
    for board in &mut job.cards.boards {
        (board.stiffness, board.creep) = (None, None);
    }
    for hinge in &mut job.cards.hinges {
        hinge.reveals.clear();
    }
    job.cards.pins[0].projection = None;
    let shelves = job.cabinets[1].opening.bay_mut(Key(12));
    let shelves = shelves.into_iter().flat_map(|bay| &mut bay.shelves);
    shelves.for_each(|shelf| (shelf.clear, shelf.shorter) = (None, mm(2)));
    let mut side_mount = job.cards.runners[0].clone();
    side_mount.id = card("runner-side");
    side_mount.kind = RunnerKind::SideMount;
    job.cards.runners[1] = side_mount;
    let copies = &mut job.cabinets[1].copies;
    for cut in copies.iter_mut().flat_map(|copy| &mut copy.as_cut) {
        (cut.play, cut.diagonals) = (None, None);
    }
    let drawers = &mut job.cabinets[2];
    (drawers.carcass.rail, drawers.carcass.stand) = (None, None);
    drawers.opening.fronts.truncate(5);
    for runner in &mut job.cards.runners {
        runner.side_most = None;
    }
    job
}

/// A door over two bays of half-depth partition, on a fixed shelf; mirrored copies; everything a face owns itself.
fn furnish_shelves(cabinet: &mut Cabinet) {
    cabinet.size = Size {
        width: mm(900),
        height: Length::from_inch_64ths(31 * 64 + 32),
        depth: mm(560),
    };
    cabinet.offsets = EndOffsets {
        foot: Length::from_um(9_500),
        head: mm(16),
    };
    cabinet.carcass = housed_carcass();
    cabinet.opening = shelf_openings();
    let face = FaceId::inside(Hand::Right);
    cabinet.free_rows = vec![FreeRow {
        key: Key(40),
        face,
        purpose: name("third pin row"),
        edge: Edge::Back,
        setback: mm(64),
        first: HolePlace::foot(2),
        last: HolePlace::head(2),
        diameter: mm(5),
        depth: Depth::Through,
    }];
    let hole = |key, edge, end, depth| FreeHole {
        key: Key(key),
        face: face.behind(),
        purpose: name("cam lock"),
        edge,
        setback: mm(40),
        end,
        height: Length::from_um(320_125),
        diameter: mm(20),
        depth,
    };
    cabinet.free_holes = vec![
        hole(41, Edge::Front, End::Head, Depth::Shop),
        hole(42, Edge::Back, End::Foot, Depth::Blind(mm(13))),
    ];
    cabinet.copies = vec![
        copy(50, "left of the kiln", false, Vec::new()),
        copy(51, "right of the kiln", true, as_cut()),
    ];
    cabinet.accepted = vec![Acceptance {
        rule: "unbalanced".into(),
        message: "left side: 1.1 mm from foot to head; \"A/B\" \\ ⌀ 5".into(),
        reason: name("the head is trimmed on site"),
    }];
}

fn copy(key: u32, called: &str, mirrored: bool, as_cut: Vec<AsCut>) -> Copy {
    Copy {
        key: Key(key),
        name: name(called),
        mirrored,
        as_cut,
    }
}

fn as_cut() -> Vec<AsCut> {
    vec![
        AsCut {
            length: Some(Length::from_um(799_700)),
            thickness: Some(Length::from_um(18_550)),
            ..AsCut::of(PanelId::Side(Hand::Left))
        },
        AsCut {
            play: Some(Length::from_um(300)),
            diagonals: Some(Length::from_um(-1_300)),
            ..AsCut::of(PanelId::Partition(Key(30)))
        },
    ]
}

fn housed_carcass() -> Carcass {
    let bore = |x, depth, fastener| JointBore {
        x: mm(x),
        diameter: mm(8),
        depth,
        fastener,
    };
    let joint = Joint {
        housing: Length::from_um(6_350),
        runs_past: true,
        bores: vec![
            bore(37, Some(mm(12)), Fastener::Dowel),
            bore(260, None, Fastener::Connector),
        ],
    };
    Carcass {
        sides: Sides {
            board: card("board-18"),
            below: mm(100),
            notch: Some(Notch {
                height: mm(100),
                depth: mm(50),
            }),
            exposed_left: true,
            exposed_right: true,
        },
        bottom: Bottom {
            board: card("board-16"),
            fit: Fit::Across,
            joint,
        },
        top: Top {
            board: card("board-18"),
            kind: TopKind::Panel(Fit::Between),
            joint: Joint::default(),
        },
        back: Back::Rabbet { run: mm(9) },
        rail: None,
        stand: None,
    }
}

/// A partition that stands on a fixed shelf, one door over the two bays it makes.
fn shelf_openings() -> Opening {
    let over_both = Front {
        key: Key(20),
        name: name("D1"),
        kind: FrontKind::Door(Hand::Left),
        height: FrontHeight::Ratio(1),
        thickness: Some(mm(19)),
        load_grams: None,
    };
    let right = Bay {
        recess: mm(200),
        inset: Some(Inset {
            front: Some(mm(19)),
            set_in: mm(2),
        }),
        ..Bay::default()
    };
    let partition = Partition {
        key: Key(30),
        board: card("board-16"),
        recess: mm(200),
        foot: Joint {
            housing: mm(5),
            ..Joint::default()
        },
        head: Joint::default(),
    };
    let upper = SideBySide {
        first: Part {
            width: PartWidth::Fixed(mm(400)),
            opening: bay(12, full_bay()),
        },
        rest: vec![(
            partition,
            Part {
                width: PartWidth::Equal,
                opening: bay(13, right),
            },
        )],
    };
    let shelf = |key, at| FixedShelf {
        key: Key(key),
        board: card("board-18"),
        at,
        recess: mm(3),
        joint: Joint::default(),
    };
    let stacked = Stacked {
        first: bay(10, Bay::default()),
        rest: vec![
            (
                shelf(31, ShelfHeight::Hole(HolePlace::foot(6))),
                Opening {
                    key: Key(11),
                    division: Division::SideBySide(Box::new(upper)),
                    fronts: vec![over_both],
                },
            ),
            (
                shelf(32, ShelfHeight::Underside(Length::from_um(650_500))),
                bay(14, Bay::default()),
            ),
        ],
    };
    Opening {
        key: Key(1),
        division: Division::Stacked(Box::new(stacked)),
        fronts: Vec::new(),
    }
}

fn bay(key: u32, bay: Bay) -> Opening {
    Opening {
        key: Key(key),
        division: Division::Bay(bay),
        fronts: Vec::new(),
    }
}

/// Zones of every depth, shelves, and plates on both walls.
fn full_bay() -> Bay {
    let zone = |key, first, last, depth| Zone {
        key: Key(key),
        first: HolePlace::foot(first),
        last,
        depth,
    };
    let plate = |key, wall, hinge, serves| Plate {
        key: Key(key),
        wall,
        hole: HolePlace::head(3),
        card: card(hinge),
        serves,
    };
    Bay {
        pin_rows: PinRows::Three,
        zones: vec![
            zone(60, 3, HolePlace::foot(9), Depth::Shop),
            zone(61, 10, HolePlace::head(6), Depth::Blind(mm(10))),
            zone(62, 14, HolePlace::middle(-2), Depth::Through),
        ],
        shelves: vec![Shelf {
            key: Key(63),
            hole: HolePlace::of(5, Datum::Middle, 22),
            board: card("board-18"),
            setback_front: mm(5),
            shorter: mm(3),
            load_grams: Some(35_000),
            clear: Some(mm(320)),
        }],
        plates: vec![
            plate(64, Hand::Left, "hinge-plain", Some(Key(20))),
            plate(65, Hand::Right, "hinge-in-line", None),
        ],
        ..Bay::default()
    }
}

/// Three drawers and a false front over one bay, in a carcass on stretchers.
fn furnish_drawers(cabinet: &mut Cabinet) {
    cabinet.carcass.top.kind = TopKind::EdgeStretchers(mm(80));
    cabinet.carcass.back = Back::Planted;
    cabinet.carcass.rail = Some(BackRail {
        board: card("board-16"),
        height: mm(90),
    });
    cabinet.carcass.stand = Some(Stand::Plinth(mm(120)));
    let front = |key: u32, kind, height| Front {
        key: Key(key),
        name: name(&format!("F{key}")),
        kind,
        height,
        thickness: Some(Length::from_um(18_600)),
        load_grams: None,
    };
    cabinet.opening.fronts = vec![
        front(20, FrontKind::Drawer, FrontHeight::Modules(9)),
        front(
            21,
            FrontKind::Drawer,
            FrontHeight::Fixed(Length::from_um(220_500)),
        ),
        front(22, FrontKind::Drawer, FrontHeight::Ratio(2)),
        front(23, FrontKind::False, FrontHeight::Modules(3)),
        front(24, FrontKind::Pair, FrontHeight::Ratio(1)),
        Front {
            thickness: None,
            ..front(25, FrontKind::Inner, FrontHeight::Modules(6))
        },
        front(26, FrontKind::Door(Hand::Right), FrontHeight::Modules(12)),
        Front {
            load_grams: Some(6_500),
            ..front(27, FrontKind::Drawer, FrontHeight::Modules(4))
        },
    ];
    let runner = |key, hole, set_back, spacers, serves| Runner {
        key: Key(key),
        hole: HolePlace::foot(hole),
        card: card("runner-side"),
        length: mm(500),
        set_back,
        spacers,
        serves,
    };
    let packed = Spacers {
        left: mm(12),
        right: Length::ZERO,
    };
    let bay = cabinet.opening.bay_mut(Key(1)).unwrap();
    bay.runners = vec![
        runner(30, 2, 0, Spacers::default(), Some(Key(20))),
        runner(31, 11, 1, packed, None),
    ];
}

fn bored() -> Vec<Bored> {
    let bored = |panel, toward, hole, depth| Bored {
        cabinet: Key(2),
        copy: Key(51),
        face: FaceId { panel, toward },
        from_front: mm(37),
        hole,
        from_foot: Length::from_um(201_500),
        depth,
        diameter: mm(5),
        taken_back: false,
    };
    let partition = PanelId::Partition(Key(30));
    vec![
        bored(
            PanelId::Side(Hand::Left),
            Hand::Right,
            HoleNumber::new(7).ok(),
            Some(mm(12)),
        ),
        Bored {
            taken_back: true,
            ..bored(partition, Hand::Left, None, None)
        },
    ]
}

/// A distance of each kind.
fn measured() -> Vec<Measured> {
    let hole = |number: i64| HoleNumber::new(number).unwrap();
    let row = mm(37);
    let spans = [
        Span::Holes {
            row,
            first: hole(3),
            last: hole(20),
        },
        Span::ToEnd {
            row,
            hole: hole(7),
            end: End::Head,
        },
        Span::Rows {
            first: row,
            last: mm(503),
        },
    ];
    let measured = |span| Measured {
        cabinet: Key(2),
        copy: Key(51),
        face: FaceId::inside(Hand::Left),
        span,
        want: mm(544),
        is: Length::from_um(575_700),
        taken_back: false,
    };
    spans.map(measured).to_vec()
}
