//! Builders: a plain cabinet and what is different about it.

use core::ops::RangeInclusive;

use crate::cards::{Board, CardId, Runner as RunnerCard};
use crate::job::{
    Back, Bay, Bored, Cabinet, Depth, Division, FaceId, FixedShelf, Front, FrontHeight, FrontKind,
    Hand, HolePlace, Job, Joint, Key, Label, Opening, PanelId, Part, PartWidth, Partition, Plate,
    Runner, Shelf, ShelfHeight, SideBySide, Size, Spacers, Stacked, Stand, Zone,
};
use crate::layout::Layout;
use crate::measure::Length;

pub(crate) const LEFT_INSIDE: FaceId = FaceId {
    panel: PanelId::Side(Hand::Left),
    toward: Hand::Right,
};
pub(crate) const RIGHT_INSIDE: FaceId = FaceId {
    panel: PanelId::Side(Hand::Right),
    toward: Hand::Left,
};

pub(crate) const fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

pub(crate) const fn um(um: i32) -> Length {
    Length::from_um(um)
}

/// A face of the partition with this key.
pub(crate) fn partition_face(key: u32, toward: Hand) -> FaceId {
    FaceId {
        panel: PanelId::Partition(Key(key)),
        toward,
    }
}

/// A job of one plain cabinet of 18 board, 600 x 704 x 560, in which `change` is different.
pub(crate) fn job_with(change: impl FnOnce(&mut Job)) -> Job {
    let mut job = Job::plain(Label::known("glaze store"));
    change(&mut job);
    job
}

/// The plain job with another cabinet.
pub(crate) fn cabinet_with(change: impl FnOnce(&mut Cabinet)) -> Job {
    job_with(|job| change(&mut job.cabinets[0]))
}

/// The plain job with something in the one bay of its cabinet, which has key 1.
pub(crate) fn bay_with(change: impl FnOnce(&mut Bay)) -> Job {
    cabinet_with(|cabinet| cabinet.opening = bay(1, change))
}

/// The layout of the first cabinet.
pub(crate) fn lay_out(job: &Job) -> Layout {
    Layout::of(&job.cabinets[0], job)
}

/// An opening of one bay.
pub(crate) fn bay(key: u32, change: impl FnOnce(&mut Bay)) -> Opening {
    let mut bay = Bay::default();
    change(&mut bay);
    Opening {
        key: Key(key),
        division: Division::Bay(bay),
        fronts: Vec::new(),
    }
}

/// An empty bay.
pub(crate) fn empty(key: u32) -> Opening {
    bay(key, |_| ())
}

/// A partition from front to back panel, butt at both ends.
pub(crate) fn partition(key: u32) -> Partition {
    Partition {
        key: Key(key),
        board: CardId::known("board-18"),
        recess: Length::ZERO,
        foot: Joint::default(),
        head: Joint::default(),
    }
}

/// Openings of equal width with partitions between; key of the whole first.
pub(crate) fn side_by_side<const N: usize>(
    key: u32,
    first: Opening,
    rest: [(Partition, Opening); N],
) -> Opening {
    let part = |opening| Part {
        width: PartWidth::Equal,
        opening,
    };
    let rest = rest.map(|(partition, opening)| (partition, part(opening)));
    Opening {
        key: Key(key),
        division: Division::SideBySide(Box::new(SideBySide {
            first: part(first),
            rest: rest.into(),
        })),
        fronts: Vec::new(),
    }
}

/// A fixed shelf of 18 board, full depth, butt.
pub(crate) fn fixed_shelf(key: u32, at: ShelfHeight) -> FixedShelf {
    FixedShelf {
        key: Key(key),
        board: CardId::known("board-18"),
        at,
        recess: Length::ZERO,
        joint: Joint::default(),
    }
}

/// Two openings with a fixed shelf between; key of the whole first.
pub(crate) fn stacked(key: u32, below: Opening, shelf: FixedShelf, above: Opening) -> Opening {
    Opening {
        key: Key(key),
        division: Division::Stacked(Box::new(Stacked {
            first: below,
            rest: vec![(shelf, above)],
        })),
        fronts: Vec::new(),
    }
}

pub(crate) fn zone(key: u32, holes: RangeInclusive<i16>) -> Zone {
    Zone {
        key: Key(key),
        first: HolePlace::foot(*holes.start()),
        last: HolePlace::foot(*holes.end()),
        depth: Depth::Shop,
    }
}

pub(crate) fn shelf(key: u32, hole: i16) -> Shelf {
    Shelf {
        key: Key(key),
        hole: HolePlace::foot(hole),
        board: CardId::known("board-18"),
        setback_front: mm(12),
        shorter: mm(2),
        load_grams: None,
        clear: None,
    }
}

/// A plate along the row.
pub(crate) fn plate(key: u32, wall: Hand, hole: i16) -> Plate {
    Plate {
        key: Key(key),
        wall,
        hole: HolePlace::foot(hole),
        card: CardId::known("hinge-plain"),
        serves: None,
    }
}

pub(crate) fn runner(key: u32, hole: i16, length: i32) -> Runner {
    Runner {
        key: Key(key),
        hole: HolePlace::foot(hole),
        card: CardId::known("runner-under"),
        length: mm(length),
        set_back: 0,
        spacers: Spacers::default(),
        serves: None,
    }
}

pub(crate) fn door(key: u32, hung: Hand) -> Front {
    Front {
        key: Key(key),
        name: Label::known("D1"),
        kind: FrontKind::Door(hung),
        height: FrontHeight::Ratio(1),
        thickness: Some(mm(19)),
        load_grams: None,
    }
}

/// A drawer of whole modules, named D1.
pub(crate) fn drawer(key: u32, modules: u16) -> Front {
    Front {
        key: Key(key),
        name: Label::known("D1"),
        kind: FrontKind::Drawer,
        height: FrontHeight::Modules(modules),
        thickness: None,
        load_grams: None,
    }
}

/// The card of the 18 board.
pub(crate) fn board_18(job: &mut Job) -> &mut Board {
    job.cards.boards.first_mut().unwrap()
}

/// The card of the one runner.
pub(crate) fn runner_card(job: &mut Job) -> &mut RunnerCard {
    job.cards.runners.first_mut().unwrap()
}

/// A base cabinet 940 x 800 x 530 of board measured 18.6: bottom and flat stretchers between the sides, back in a
/// groove whose front wall is 16 from the back edge, partition 9 between bays 11 and 12.
pub(crate) fn cabinet_x(change: impl FnOnce(&mut Job)) -> Job {
    job_with(|job| {
        board_18(job).thickness.value = um(18_600);
        let cabinet = &mut job.cabinets[0];
        cabinet.size = Size {
            width: mm(940),
            height: mm(800),
            depth: mm(530),
        };
        cabinet.carcass.back = Back::Groove {
            to_front_wall: mm(16),
            cut: mm(8),
        };
        cabinet.opening = side_by_side(1, empty(11), [(partition(9), empty(12))]);
        change(job);
    })
}

/// The partition of [`cabinet_x`], to be changed.
pub(crate) fn partition_of(job: &mut Job) -> &mut Partition {
    let Division::SideBySide(parts) = &mut job.cabinets[0].opening.division else {
        panic!("the cabinet has no partition");
    };
    &mut parts.rest[0].0
}

/// The bay with this key, to be changed.
pub(crate) fn bay_of(job: &mut Job, key: u32) -> &mut Bay {
    job.cabinets[0].opening.bay_mut(Key(key)).unwrap()
}

/// A base cabinet 1000 x 704 x 560 of board measured 18.2 on feet: left bay 11 a door hung left and two shelves, right bay
/// 12 three drawers, partition 9 between.
pub(crate) fn glaze_store() -> Job {
    job_with(|job| {
        board_18(job).thickness.value = um(18_200);
        runner_card(job).line.value = mm(10);
        job.cards.hinges[0].arms.full.value = mm(13);
        let cabinet = &mut job.cabinets[0];
        cabinet.size = Size {
            width: mm(1000),
            height: mm(704),
            depth: mm(560),
        };
        cabinet.carcass.stand = Some(Stand::Feet(mm(100)));
        let mut left = bay(11, |bay| {
            bay.zones = vec![zone(21, 11..=16)];
            bay.shelves = vec![shelf(22, 11), shelf(23, 16)];
            bay.plates = vec![plate(24, Hand::Left, 3), plate(25, Hand::Left, 19)];
        });
        left.fronts = vec![door(26, Hand::Left)];
        let mut right = bay(12, |bay| {
            bay.runners = vec![runner(31, 2, 500), runner(32, 10, 500), runner(33, 17, 500)];
        });
        right.fronts = vec![drawer(34, 8), drawer(35, 7), drawer(36, 7)];
        cabinet.opening = side_by_side(1, left, [(partition(9), right)]);
    })
}

/// Gives an opening of the first cabinet these fronts.
pub(crate) fn put_fronts(job: &mut Job, opening: u32, fronts: Vec<Front>) {
    let mut fronts = Some(fronts);
    job.cabinets[0].opening.each_mut(&mut |found| {
        if found.key == Key(opening) {
            found.fronts = fronts.take().unwrap();
        }
    });
    assert_eq!(fronts, None);
}

/// A hole bored on a face of the first cabinet's first copy.
pub(crate) fn bored_hole(face: FaceId) -> Bored {
    Bored {
        cabinet: Key(1),
        copy: Key(2),
        face,
        from_front: mm(37),
        hole: None,
        from_foot: mm(100),
        depth: Some(mm(12)),
        diameter: mm(5),
        taken_back: false,
    }
}
