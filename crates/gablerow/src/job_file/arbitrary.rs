//! Jobs at random, all of them such as a job can be.

use gablerow_core::grid::HoleNumber;
use gablerow_core::job::{
    Bay, Bored, Cabinet, Copy, DRAWER_LOAD_MOST, Datum, Depth, Division, End, FaceId, Front,
    FrontHeight, FrontKind, Hand, HolePlace, Job, Joint, Key, Label, Measured, Opening, PanelId,
    Part, PartWidth, Partition, Plate, SideBySide, Span, Stacked, Took, Trouble, Zone,
};
use gablerow_core::job::{FixedShelf, ShelfHeight};
use gablerow_core::measure::range::{self, Range};
use gablerow_core::measure::{Length, Unit};
use gablerow_core::stamp::revised;
use proptest::prelude::*;
use proptest::sample::select;

/// A length of a range, both ends included.
fn within(range: Range) -> impl Strategy<Value = Length> {
    (range.min.counts()..=range.max.counts()).prop_map(Length::from_counts)
}

fn label() -> impl Strategy<Value = Label> {
    any::<String>()
        .prop_filter_map("no name", |text| Label::new(&text).ok())
        .boxed()
}

fn hand() -> impl Strategy<Value = Hand> + Clone {
    select(vec![Hand::Left, Hand::Right])
}

fn place() -> impl Strategy<Value = HolePlace> {
    (select(Datum::ALL.to_vec()), -400..=400_i16)
        .prop_map(|(datum, count)| HolePlace { datum, count })
}

fn depth() -> impl Strategy<Value = Depth> {
    prop_oneof![
        Just(Depth::Shop),
        Just(Depth::Through),
        within(range::BORE_DEPTH).prop_map(Depth::Blind),
    ]
}

fn front() -> impl Strategy<Value = Front> {
    let share = 1..=125_u16;
    let height = prop_oneof![
        share.clone().prop_map(FrontHeight::Modules),
        share.prop_map(FrontHeight::Ratio),
        within(range::OPENING_SIZE).prop_map(FrontHeight::Fixed),
    ];
    let kind = prop_oneof![
        hand().prop_map(FrontKind::Door),
        Just(FrontKind::Pair),
        Just(FrontKind::Drawer),
        Just(FrontKind::False),
        Just(FrontKind::Inner),
    ];
    let thickness = proptest::option::of(within(range::BOARD_THICKNESS));
    let load = proptest::option::of(0..=DRAWER_LOAD_MOST);
    let front = (label(), kind, height, thickness, load);
    front.prop_map(|(name, kind, height, thickness, load_grams)| Front {
        key: Key(0),
        name,
        kind,
        height,
        thickness,
        load_grams,
    })
}

fn bay(job: &Job) -> impl Strategy<Value = Bay> + use<> {
    let zone = (place(), place(), depth()).prop_map(|(first, last, depth)| Zone {
        key: Key(0),
        first,
        last,
        depth,
    });
    let card = job.shop.hinge.clone();
    let plate = (hand(), place()).prop_map(move |(wall, hole)| Plate {
        key: Key(0),
        wall,
        hole,
        card: card.clone(),
        serves: None,
    });
    let lists = (
        prop::collection::vec(zone, 0..3),
        prop::collection::vec(plate, 0..3),
    );
    (within(range::RECESS), lists).prop_map(|(recess, (zones, plates))| Bay {
        recess,
        zones,
        plates,
        ..Bay::default()
    })
}

fn opening(job: &Job) -> impl Strategy<Value = Opening> + use<> {
    let board = job.shop.board.clone();
    let division = |division| Opening {
        key: Key(0),
        division,
        fronts: Vec::new(),
    };
    let leaf = bay(job).prop_map(Division::Bay).prop_map(division);
    let tree = leaf.prop_recursive(3, 12, 3, move |inner| {
        let (upright, shelf) = (board.clone(), board.clone());
        let width = prop_oneof![
            Just(PartWidth::Equal),
            within(range::OPENING_SIZE).prop_map(PartWidth::Fixed)
        ];
        let part = (width, inner.clone()).prop_map(|(width, opening)| Part { width, opening });
        let partition = within(range::RECESS).prop_map(move |recess| Partition {
            key: Key(0),
            board: upright.clone(),
            recess,
            foot: Joint::default(),
            head: Joint::default(),
        });
        let at = prop_oneof![
            place().prop_map(ShelfHeight::Hole),
            within(range::PANEL_POSITION).prop_map(ShelfHeight::Underside)
        ];
        let fixed = at.prop_map(move |at| FixedShelf {
            key: Key(0),
            board: shelf.clone(),
            at,
            recess: Length::ZERO,
            joint: Joint::default(),
        });
        let beside = prop::collection::vec((partition, part.clone()), 1..3);
        let above = prop::collection::vec((fixed, inner.clone()), 1..3);
        prop_oneof![
            (part, beside).prop_map(|(first, rest)| {
                Division::SideBySide(Box::new(SideBySide { first, rest }))
            }),
            (inner, above)
                .prop_map(|(first, rest)| Division::Stacked(Box::new(Stacked { first, rest }))),
        ]
        .prop_map(division)
    });
    (tree, prop::collection::vec(front(), 0..3))
        .prop_map(|(opening, fronts)| Opening { fronts, ..opening })
}

/// Gives everything in an opening a key of its own, from `next` on.
fn number(opening: &mut Opening, next: &mut impl FnMut() -> Key) {
    opening.key = next();
    opening
        .fronts
        .iter_mut()
        .for_each(|front| front.key = next());
    match &mut opening.division {
        Division::Bay(bay) => {
            bay.zones.iter_mut().for_each(|zone| zone.key = next());
            bay.plates.iter_mut().for_each(|plate| plate.key = next());
        }
        Division::SideBySide(parts) => {
            number(&mut parts.first.opening, next);
            for (partition, part) in &mut parts.rest {
                partition.key = next();
                number(&mut part.opening, next);
            }
        }
        Division::Stacked(parts) => {
            number(&mut parts.first, next);
            for (shelf, opening) in &mut parts.rest {
                shelf.key = next();
                number(opening, next);
            }
        }
    }
}

fn cabinet(job: &Job) -> impl Strategy<Value = Cabinet> + use<> {
    let shop = job.shop.clone();
    let size = (within(range::CARCASS_WIDTH), within(range::CARCASS_HEIGHT));
    let copies = prop::collection::vec((label(), any::<bool>()), 1..3);
    (size, within(range::END_OFFSET), opening(job), copies).prop_map(
        move |((width, height), foot, mut opening, copies)| {
            let name = Label::new("A").unwrap();
            let mut cabinet = Cabinet::plain(Key(0), name, &shop);
            (cabinet.size.width, cabinet.size.height) = (width, height);
            cabinet.offsets.foot = foot;
            let mut last = Key(0);
            let mut next = || {
                last = last.next();
                last
            };
            number(&mut opening, &mut next);
            cabinet.opening = opening;
            let copy = |(name, mirrored)| Copy {
                key: next(),
                name,
                mirrored,
                as_cut: Vec::new(),
            };
            cabinet.copies = copies.into_iter().map(copy).collect();
            cabinet
        },
    )
}

fn bored() -> impl Strategy<Value = Bored> {
    let panel = prop_oneof![
        hand().prop_map(PanelId::Side),
        (0..=Key::HIGHEST.0).prop_map(|key| PanelId::Partition(Key(key)))
    ];
    let face = (panel, hand()).prop_map(|(panel, toward)| FaceId { panel, toward });
    let place = (within(range::PANEL_POSITION), within(range::PANEL_POSITION));
    let depth = prop::option::of(within(range::BORE_DEPTH));
    let hole = prop::option::of(
        (1..=400_u16).prop_filter_map("hole", |number| HoleNumber::new(number).ok()),
    );
    let keys = (0..=Key::HIGHEST.0, 0..=Key::HIGHEST.0);
    let diameter = within(range::HOLE_DIAMETER);
    (keys, face, place, hole, depth, diameter, any::<bool>()).prop_map(
        |((cabinet, copy), face, (from_front, from_foot), hole, depth, diameter, taken_back)| {
            Bored {
                cabinet: Key(cabinet),
                copy: Key(copy),
                face,
                from_front,
                hole,
                from_foot,
                depth,
                diameter,
                taken_back,
            }
        },
    )
}

fn took() -> impl Strategy<Value = Took> {
    (any::<u32>(), any::<u32>()).prop_map(|(planned, seconds)| Took { planned, seconds })
}

fn trouble() -> impl Strategy<Value = Trouble> {
    (bored(), label()).prop_map(|(bored, words)| Trouble {
        cabinet: bored.cabinet,
        copy: bored.copy,
        face: bored.face,
        words,
    })
}

fn measured() -> impl Strategy<Value = Measured> {
    (bored(), bored(), 0..3_u8).prop_map(|(one, other, kind)| {
        let hole = |it: Bored| it.hole.unwrap_or(HoleNumber::FIRST);
        let row = one.from_front;
        Measured {
            cabinet: one.cabinet,
            copy: one.copy,
            face: one.face,
            span: match kind {
                0 => Span::Holes {
                    row,
                    first: hole(one),
                    last: hole(other),
                },
                1 => Span::ToEnd {
                    row,
                    hole: hole(one),
                    end: if one.taken_back { End::Foot } else { End::Head },
                },
                _ => Span::Rows {
                    first: row,
                    last: other.from_front,
                },
            },
            want: one.from_foot,
            is: other.from_foot,
            taken_back: other.taken_back,
        }
    })
}

/// A job that [`Job::validate`] has nothing to say about.
pub(crate) fn job() -> impl Strategy<Value = Job> {
    let plain = Job::plain(Label::new("A").unwrap());
    let cabinets = prop::collection::vec(cabinet(&plain), 1..4);
    let unit = select(vec![Unit::Millimetre, Unit::Inch]);
    let bored = prop::collection::vec(bored(), 0..3);
    let bench = (
        bored,
        prop::collection::vec(took(), 0..3),
        prop::collection::vec(trouble(), 0..2),
        prop::collection::vec(measured(), 0..3),
    );
    (label(), unit, cabinets, bench).prop_map(move |(title, unit, mut cabinets, bench)| {
        let (bored, took, troubles, measured) = bench;
        for (at, cabinet) in cabinets.iter_mut().enumerate() {
            cabinet.key = Key(u32::try_from(at).unwrap());
            cabinet.name = Label::new(&format!("A{at}")).unwrap();
        }
        let plain = plain.clone();
        let mut job = Job {
            title,
            unit,
            cabinets,
            bored,
            took,
            troubles,
            measured,
            ..plain
        };
        job.revisions = revised(&job);
        job
    })
}
