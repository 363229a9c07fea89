//! Small jobs to test with.

use gablerow_core::cards::{Across, Along, Bed, Corner};
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{
    Copy, Depth, Division, Edge, End, FaceId, FreeHole, FreeRow, Front, FrontHeight, FrontKind,
    Hand, HolePlace, Job, Joint, Key, Label, Notch, Opening, PanelId, Part, PartWidth, Partition,
    Plate, Runner, Shelf, SideBySide, Spacers, Zone,
};
use gablerow_core::layout::Layout;
use gablerow_core::measure::{Length, Unit};
use proptest::prelude::*;

use crate::page::{Mark, Page, Point, Text};
use crate::{DrawnCabinet, DrawnFace, Signs};

pub(crate) const SIGNS: Signs = Signs {
    hole_empty: '.',
    hole_barred: '!',
    hole_pin: 'o',
    hole_plate: 'x',
    hole_runner: '=',
    hole_free: '*',
    hole_shared: '&',
    edge_level: '-',
    edge_back: '|',
    edge_front: '#',
    corners: ['+'; 4],
    fixed_panel: '/',
    keep_out: ':',
    diameter: 'D',
};

pub(crate) fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

/// Builds the first cabinet once more, as copy 2.
pub(crate) fn build_another(job: &mut Job, mirrored: bool) {
    job.cabinets[0].copies.push(Copy {
        key: Key(90),
        name: Label::new("2").unwrap(),
        mirrored,
        as_cut: Vec::new(),
    });
}

fn zone(depth: Depth) -> Zone {
    Zone {
        key: Key(7),
        first: HolePlace::foot(9),
        last: HolePlace::foot(10),
        depth,
    }
}

/// A cabinet 600 x 704 x 560 with a shelf zone on holes 9-10.
pub(crate) fn job() -> Job {
    let mut job = Job::plain(Label::new("glaze store").unwrap());
    if let Division::Bay(bay) = &mut job.cabinets[0].opening.division {
        bay.zones.push(zone(Depth::Shop));
    }
    job
}

/// The same with a partition in the middle, key 9, and the zone in both bays.
pub(crate) fn two_bays(depth: Depth) -> Job {
    let mut job = job();
    let part = |key, zone_key| {
        let mut opening = Opening::empty_bay(Key(key));
        if let Division::Bay(bay) = &mut opening.division {
            bay.zones.push(Zone {
                key: Key(zone_key),
                ..zone(depth)
            });
        }
        Part {
            width: PartWidth::Equal,
            opening,
        }
    };
    let partition = Partition {
        key: Key(9),
        board: job.shop.board.clone(),
        recess: Length::ZERO,
        foot: Joint::default(),
        head: Joint::default(),
    };
    job.cabinets[0].opening.division = Division::SideBySide(
        SideBySide {
            first: part(10, 12),
            rest: vec![(partition, part(11, 13))],
        }
        .into(),
    );
    job
}

/// The same with a drawer D1 of 12 modules, a door D2 hung left over it, and a shelf on hole 15 that shall carry 25 kg.
pub(crate) fn drawers() -> Job {
    let mut job = job();
    let (hinge, runner, board) = (
        job.shop.hinge.clone(),
        job.shop.runner.clone(),
        job.shop.board.clone(),
    );
    let opening = &mut job.cabinets[0].opening;
    let plain = |key, name, kind| Front::plain(Key(key), Label::new(name).unwrap(), kind);
    let mut drawer = plain(20, "D1", FrontKind::Drawer);
    drawer.height = FrontHeight::Modules(12);
    let door = plain(21, "D2", FrontKind::Door(Hand::Left));
    opening.fronts = vec![drawer, door];
    if let Division::Bay(bay) = &mut opening.division {
        bay.zones.clear();
        bay.shelves.push(Shelf {
            key: Key(22),
            hole: HolePlace::foot(15),
            board,
            setback_front: mm(12),
            shorter: mm(2),
            load_grams: Some(25_000),
            clear: None,
        });
        bay.runners.push(Runner {
            key: Key(23),
            hole: HolePlace::foot(2),
            card: runner,
            length: mm(500),
            set_back: 0,
            spacers: Spacers::default(),
            serves: None,
        });
        bay.plates = [14, 20]
            .map(|hole: i16| Plate {
                key: Key(u32::from(hole.unsigned_abs()) + 20),
                wall: Hand::Left,
                hole: HolePlace::foot(hole),
                card: hinge.clone(),
                serves: None,
            })
            .into();
    }
    job
}

/// The same with the upper plate of the door a hole lower, so that the door does not fit turned end for end.
pub(crate) fn handed_door() -> Job {
    let mut job = drawers();
    if let Division::Bay(bay) = &mut job.cabinets[0].opening.division {
        bay.plates[1].hole = HolePlace::foot(19);
    }
    job
}

/// A row of holes 8-10 through the whole panel, at the front setback.
pub(crate) fn through_row(face: FaceId) -> FreeRow {
    FreeRow {
        key: Key(30),
        face,
        purpose: Label::new("end panel screws").unwrap(),
        edge: Edge::Front,
        setback: mm(37),
        first: HolePlace::foot(8),
        last: HolePlace::foot(10),
        diameter: mm(5),
        depth: Depth::Through,
    }
}

/// Every face of a layout, panel by panel from the left, left face before right face.
pub(crate) fn faces(layout: &Layout) -> Vec<FaceId> {
    let uprights = layout.uprights.iter();
    let both = |panel| [Hand::Left, Hand::Right].map(|toward| FaceId { panel, toward });
    uprights.flat_map(|upright| both(upright.id)).collect()
}

/// What is made of a job's first cabinet as it is drawn, with its state and a sentence that overrules a stop.
pub(crate) fn with_drawn<T>(job: &Job, make: impl FnOnce(DrawnCabinet) -> T) -> T {
    let cabinet = &job.cabinets[0];
    let layout = Layout::of(cabinet, job);
    make(DrawnCabinet {
        job,
        cabinet,
        layout: &layout,
        copies: "",
        stamp: "rev 7 OTTER",
        remarks: &["Overruled: the back row is 30.0 from the edge.".into()],
    })
}

/// What is made of each of its faces, after what is drawn of it.
pub(crate) fn each_drawn<T>(
    job: &Job,
    bed: Option<&Bed>,
    make: impl Fn(DrawnFace) -> T,
) -> Vec<(FaceDrawing, T)> {
    with_drawn(job, |of| {
        let face = |id| {
            let drawing = FaceDrawing::of(of.layout, id, &[]).unwrap();
            let made = make(DrawnFace {
                of,
                drawing: &drawing,
                bed,
            });
            (drawing, made)
        };
        faces(of.layout).into_iter().map(face).collect()
    })
}

/// Jobs of one cabinet with two bays: any sizes and joints of its uprights, zones through or not, plates and runners that may
/// share the holes of a zone, a free row and a free hole of any bore, off the grid.
pub(crate) fn any_job() -> impl Strategy<Value = Job> {
    let counts =
        |from: i32, to: i32| (from * 8..to * 8).prop_map(|eighths| Length::from_um(eighths * 125));
    let size = (
        counts(100, 3_000),
        counts(210, 1_800),
        0..200,
        proptest::option::of((1..90, 1..200)),
    );
    let bore = (
        counts(5, 200),
        counts(50, 900),
        counts(3, 36),
        proptest::option::of(counts(3, 15)),
    );
    let fittings = (
        prop::sample::select(vec![Hand::Left, Hand::Right]),
        1..40_i16,
    );
    (size, bore, fittings, any::<bool>()).prop_map(|(size, bore, (wall, hole), is_inch)| {
        let mut job = two_bays(if hole % 2 == 0 {
            Depth::Shop
        } else {
            Depth::Through
        });
        if is_inch {
            job.unit = Unit::Inch;
        }
        let (height, depth, below, notch) = size;
        let cabinet = &mut job.cabinets[0];
        (
            cabinet.size.height,
            cabinet.size.depth,
            cabinet.carcass.sides.below,
        ) = (height, depth, mm(below));
        cabinet.carcass.sides.notch = notch.map(|(height, depth)| Notch {
            height: mm(height),
            depth: mm(depth),
        });
        fit_bays(&mut job, wall, hole);
        free_bores(&mut job, wall, bore);
        job
    })
}

/// Plates on one wall of each bay, and a pair of runners.
fn fit_bays(job: &mut Job, wall: Hand, hole: i16) {
    let (hinge, runner) = (job.shop.hinge.clone(), job.shop.runner.clone());
    job.cabinets[0].opening.each_bay_mut(&mut |bay| {
        let key = bay.zones[0].key.0 * 10;
        let plate = |hole: i16| Plate {
            key: Key(key + u32::from(hole.unsigned_abs())),
            wall,
            hole: HolePlace::foot(hole),
            card: hinge.clone(),
            serves: None,
        };
        bay.plates = [hole, hole + 4].map(plate).into();
        bay.runners.push(Runner {
            key: Key(key + 90),
            hole: HolePlace::foot(hole % 12 + 1),
            card: runner.clone(),
            length: mm(450),
            set_back: 0,
            spacers: Spacers::default(),
            serves: None,
        });
    });
}

/// A free row and a free hole of one bore on a face of the partition: the hole's setback and height, diameter, depth.
fn free_bores(job: &mut Job, toward: Hand, bore: (Length, Length, Length, Option<Length>)) {
    let (setback, height, diameter, depth) = bore;
    let depth = depth.map_or(Depth::Through, Depth::Blind);
    let face = FaceId {
        panel: PanelId::Partition(Key(9)),
        toward,
    };
    let cabinet = &mut job.cabinets[0];
    cabinet.free_rows.push(FreeRow {
        diameter,
        depth,
        ..through_row(face)
    });
    cabinet.free_holes.push(FreeHole {
        key: Key(31),
        face,
        purpose: Label::new("cable").unwrap(),
        edge: Edge::Back,
        setback,
        end: End::Head,
        height,
        diameter,
        depth,
    });
}

/// What the texts of a page say.
pub(crate) fn texts(page: &Page) -> Vec<&str> {
    let mut found = Vec::new();
    for mark in &page.marks {
        if let Mark::Text(text) = mark {
            found.push(text.words.as_str());
        }
    }
    found
}

/// Beds with any zero corner and any axes.
pub(crate) fn any_bed() -> impl Strategy<Value = Bed> {
    let corner = prop::sample::select(Corner::ALL.to_vec());
    let along = prop::sample::select(Along::ALL.to_vec());
    let across = prop::sample::select(Across::ALL.to_vec());
    (corner, along, across).prop_map(|(zero, along, across)| Bed {
        zero,
        along,
        across,
        ..Bed::default()
    })
}

/// The box a text takes, as left, foot, right, head.
fn text_box(text: &Text) -> [f64; 4] {
    let (wide, Point { x, y }) = (text.width(), text.start());
    let (down, up) = (text.size * 0.22, text.size * 0.75);
    match text.is_upright {
        false => [x, y - down, x + wide, y + up],
        true => [x - up, y, x + down, y + wide],
    }
}

/// Fails when two texts of a page overlap, or one is smaller than 7 pt or beyond the sheet, or a line thinner than 0.25 pt.
pub(crate) fn assert_legible(page: &Page) {
    const POINT: f64 = 25.4 / 72.0;
    let mut boxes: Vec<([f64; 4], &str)> = Vec::new();
    for mark in &page.marks {
        match mark {
            Mark::Text(text) => {
                assert!(text.size >= 7.0 * POINT, "too small: {text:?}");
                let [left, foot, right, head] = text_box(text);
                let is_on_sheet =
                    left >= 0.0 && foot >= 0.0 && right <= page.width && head <= page.height;
                assert!(is_on_sheet, "beyond the sheet: {text:?}");
                for (other, words) in &boxes {
                    let is_apart = right <= other[0]
                        || other[2] <= left
                        || head <= other[1]
                        || other[3] <= foot;
                    assert!(is_apart, "{words:?} and {:?} overlap", text.words);
                }
                boxes.push(([left, foot, right, head], &text.words));
            }
            Mark::Path { ink, .. } | Mark::Ring { ink, .. } => {
                assert!(ink.line.is_none_or(|line| line.width >= 0.25 * POINT));
            }
        }
    }
}

/// The same, and fails when anything is where a printer does not print: within 5 mm of the edge of the sheet.
pub(crate) fn assert_printed(page: &Page) {
    const UNPRINTED: f64 = 5.0;
    assert_legible(page);
    for mark in &page.marks {
        let [left, foot, right, head] = match mark {
            Mark::Text(text) => text_box(text),
            Mark::Path { corners, .. } => path_box(corners),
            Mark::Ring {
                centre: Point { x, y },
                radius,
                ..
            } => [x - radius, y - radius, x + radius, y + radius],
        };
        let is_printed = left.min(foot) >= UNPRINTED
            && right <= page.width - UNPRINTED
            && head <= page.height - UNPRINTED;
        assert!(is_printed, "beyond what is printed: {mark:?}");
    }
}

/// The box that a path takes, as left, foot, right, head.
fn path_box(corners: &[Point]) -> [f64; 4] {
    let x = corners.iter().map(|corner| corner.x);
    let y = corners.iter().map(|corner| corner.y);
    [
        x.clone().fold(f64::INFINITY, f64::min),
        y.clone().fold(f64::INFINITY, f64::min),
        x.fold(f64::NEG_INFINITY, f64::max),
        y.fold(f64::NEG_INFINITY, f64::max),
    ]
}
