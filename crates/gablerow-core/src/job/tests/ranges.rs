//! Every length of a job has its range: tables in which each line spoils one of them.

use crate::arbitrary::*;
use crate::cards::Sourced;
use crate::job::{
    AsCut, Back, BackRail, Bay, Bored, Cabinet, Depth, Division, Edge, End, Fastener, FixedShelf,
    FreeHole, FreeRow, FrontHeight, Hand, HolePlace, Inset, Job, Joint, JointBore, Key, Label,
    Notch, Opening, PanelId, Part, PartWidth, Partition, ShelfHeight, Stand, TopKind,
};
use crate::measure::Length;

/// Shorter than any length of a job may be.
const WRONG: Length = mm(-5000);

fn bored_joint() -> Joint {
    let bore = JointBore {
        x: mm(50),
        diameter: mm(8),
        depth: Some(mm(12)),
        fastener: Fastener::Dowel,
    };
    Joint {
        bores: vec![bore],
        ..Joint::default()
    }
}

fn left_bay() -> Opening {
    let mut left = bay(11, |bay| {
        bay.inset = Some(Inset {
            front: Some(mm(19)),
            set_in: mm(1),
        });
        bay.zones = vec![zone(21, 11..=16)];
        bay.shelves = vec![shelf(22, 11)];
        bay.plates = vec![plate(23, Hand::Left, 3)];
        bay.runners = vec![runner(24, 18, 500)];
    });
    left.fronts = vec![door(25, Hand::Left)];
    left
}

fn free_row() -> FreeRow {
    FreeRow {
        key: Key(30),
        face: LEFT_INSIDE,
        purpose: Label::known("screws"),
        edge: Edge::Front,
        setback: mm(60),
        first: HolePlace::foot(3),
        last: HolePlace::foot(5),
        diameter: mm(4),
        depth: Depth::Shop,
    }
}

fn free_hole() -> FreeHole {
    FreeHole {
        key: Key(31),
        face: LEFT_INSIDE,
        purpose: Label::known("lock"),
        edge: Edge::Front,
        setback: mm(20),
        end: End::Head,
        height: mm(100),
        diameter: mm(16),
        depth: Depth::Shop,
    }
}

/// A job that has one of everything that has a length.
fn full() -> Job {
    let job = cabinet_with(|cabinet| {
        let mut shelf = fixed_shelf(26, ShelfHeight::Underside(mm(300)));
        shelf.joint = bored_joint();
        let right = stacked(12, empty(13), shelf, empty(14));
        cabinet.opening = side_by_side(1, left_bay(), [(partition(9), right)]);
        cabinet.carcass.bottom.joint = bored_joint();
        cabinet.carcass.sides.notch = Some(Notch {
            height: mm(100),
            depth: mm(50),
        });
        cabinet.free_rows = vec![free_row()];
        cabinet.free_holes = vec![free_hole()];
        cabinet.copies[0].as_cut = vec![AsCut {
            panel: PanelId::Side(Hand::Left),
            length: Some(mm(704)),
            thickness: Some(mm(18)),
            play: Some(mm(0)),
            diagonals: Some(mm(0)),
        }];
    });
    assert_eq!(job.validate(), Ok(()));
    job
}

fn parts(cabinet: &mut Cabinet) -> (&mut Part, &mut Partition, &mut Part) {
    let Division::SideBySide(parts) = &mut cabinet.opening.division else {
        panic!("no parts");
    };
    let (partition, right) = &mut parts.rest[0];
    (&mut parts.first, partition, right)
}

fn left(cabinet: &mut Cabinet) -> &mut Bay {
    cabinet.opening.bay_mut(Key(11)).unwrap()
}

fn fixed(cabinet: &mut Cabinet) -> &mut FixedShelf {
    let Division::Stacked(parts) = &mut parts(cabinet).2.opening.division else {
        panic!("no fixed shelf");
    };
    &mut parts.rest[0].0
}

fn inset(cabinet: &mut Cabinet) -> &mut Inset {
    left(cabinet).inset.as_mut().unwrap()
}

fn notch(cabinet: &mut Cabinet) -> &mut Notch {
    cabinet.carcass.sides.notch.as_mut().unwrap()
}

fn bore(cabinet: &mut Cabinet) -> &mut JointBore {
    &mut cabinet.carcass.bottom.joint.bores[0]
}

/// Makes one length of something another one.
type Spoil<T> = fn(&mut T, Length);

const BOX: &[(&str, Spoil<Cabinet>)] = &[
    ("size.width", |it, to| it.size.width = to),
    ("size.height", |it, to| it.size.height = to),
    ("size.depth", |it, to| it.size.depth = to),
    ("offsets.foot", |it, to| it.offsets.foot = to),
    ("offsets.head", |it, to| it.offsets.head = to),
    ("carcass.sides.below", |it, to| it.carcass.sides.below = to),
    ("carcass.sides.notch.height", |it, to| notch(it).height = to),
    ("carcass.sides.notch.depth", |it, to| notch(it).depth = to),
    ("carcass.bottom.joint.housing", |it, to| {
        it.carcass.bottom.joint.housing = to;
    }),
    ("carcass.bottom.joint.bores[0].x", |it, to| bore(it).x = to),
    ("carcass.bottom.joint.bores[0].diameter", |it, to| {
        bore(it).diameter = to;
    }),
    ("carcass.bottom.joint.bores[0].depth", |it, to| {
        bore(it).depth = Some(to);
    }),
    ("carcass.top.kind.width", |it, to| {
        it.carcass.top.kind = TopKind::FlatStretchers(to);
    }),
    ("carcass.top.joint.housing", |it, to| {
        it.carcass.top.joint.housing = to;
    }),
    ("carcass.back.to_front_wall", |it, to| {
        it.carcass.back = Back::Groove {
            to_front_wall: to,
            cut: mm(8),
        }
    }),
    ("carcass.back.cut", |it, to| {
        it.carcass.back = Back::Groove {
            to_front_wall: mm(20),
            cut: to,
        }
    }),
    ("carcass.rail.height", |it, to| {
        let board = it.carcass.top.board.clone();
        it.carcass.rail = Some(BackRail { board, height: to });
    }),
    ("carcass.stand", |it, to| {
        it.carcass.stand = Some(Stand::Plinth(to));
    }),
    ("carcass.back.run", |it, to| {
        it.carcass.back = Back::Rabbet { run: to }
    }),
    ("free_rows[0].setback", |it, to| {
        it.free_rows[0].setback = to;
    }),
    ("free_rows[0].diameter", |it, to| {
        it.free_rows[0].diameter = to;
    }),
    ("free_rows[0].depth", |it, to| {
        it.free_rows[0].depth = Depth::Blind(to);
    }),
    ("free_holes[0].setback", |it, to| {
        it.free_holes[0].setback = to;
    }),
    ("free_holes[0].height", |it, to| {
        it.free_holes[0].height = to;
    }),
    ("free_holes[0].diameter", |it, to| {
        it.free_holes[0].diameter = to;
    }),
    ("free_holes[0].depth", |it, to| {
        it.free_holes[0].depth = Depth::Blind(to);
    }),
    ("copies[0].as_cut[0].length", |it, to| {
        it.copies[0].as_cut[0].length = Some(to);
    }),
    ("copies[0].as_cut[0].play", |it, to| {
        it.copies[0].as_cut[0].play = Some(to);
    }),
    ("copies[0].as_cut[0].diagonals", |it, to| {
        it.copies[0].as_cut[0].diagonals = Some(to);
    }),
    ("copies[0].as_cut[0].thickness", |it, to| {
        it.copies[0].as_cut[0].thickness = Some(to);
    }),
];

const LEFT_PART: &[(&str, Spoil<Cabinet>)] = &[
    ("width", |it, to| parts(it).0.width = PartWidth::Fixed(to)),
    ("opening.fronts[0].thickness", |it, to| {
        parts(it).0.opening.fronts[0].thickness = Some(to);
    }),
    ("opening.fronts[0].kind", |it, to| {
        parts(it).0.opening.fronts[0].height = FrontHeight::Fixed(to);
    }),
    ("opening.bay.recess", |it, to| left(it).recess = to),
    ("opening.bay.inset.front", |it, to| {
        inset(it).front = Some(to);
    }),
    ("opening.bay.inset.set_in", |it, to| inset(it).set_in = to),
    ("opening.bay.zones[0].depth", |it, to| {
        left(it).zones[0].depth = Depth::Blind(to);
    }),
    ("opening.bay.shelves[0].setback_front", |it, to| {
        left(it).shelves[0].setback_front = to;
    }),
    ("opening.bay.shelves[0].shorter", |it, to| {
        left(it).shelves[0].shorter = to;
    }),
    ("opening.bay.shelves[0].clear", |it, to| {
        left(it).shelves[0].clear = Some(to);
    }),
    ("opening.bay.runners[0].spacers.left", |it, to| {
        left(it).runners[0].spacers.left = to;
    }),
    ("opening.bay.runners[0].spacers.right", |it, to| {
        left(it).runners[0].spacers.right = to;
    }),
];

const RIGHT_PART: &[(&str, Spoil<Cabinet>)] = &[
    ("partition.recess", |it, to| parts(it).1.recess = to),
    ("partition.foot.housing", |it, to| {
        parts(it).1.foot.housing = to;
    }),
    ("partition.head.housing", |it, to| {
        parts(it).1.head.housing = to;
    }),
    ("part.width", |it, to| {
        parts(it).2.width = PartWidth::Fixed(to);
    }),
    ("part.opening.stacked.rest[0].shelf.at", |it, to| {
        fixed(it).at = ShelfHeight::Underside(to);
    }),
    ("part.opening.stacked.rest[0].shelf.recess", |it, to| {
        fixed(it).recess = to;
    }),
    (
        "part.opening.stacked.rest[0].shelf.joint.housing",
        |it, to| fixed(it).joint.housing = to,
    ),
    (
        "part.opening.stacked.rest[0].shelf.joint.bores[0].x",
        |it, to| fixed(it).joint.bores[0].x = to,
    ),
];

fn bored(job: &mut Job) -> &mut Bored {
    job.bored.push(bored_hole(LEFT_INSIDE));
    &mut job.bored[0]
}

const HOUSE: &[(&str, Spoil<Job>)] = &[
    ("shop.setback_front", |it, to| it.shop.setback_front = to),
    ("shop.setback_back", |it, to| it.shop.setback_back = to),
    ("shop.diameter", |it, to| it.shop.diameter = to),
    ("shop.depth", |it, to| it.shop.depth = to),
    ("shop.limits.to_end", |it, to| it.shop.limits.to_end = to),
    ("shop.limits.to_edge", |it, to| it.shop.limits.to_edge = to),
    ("shop.limits.to_back", |it, to| it.shop.limits.to_back = to),
    ("shop.limits.near", |it, to| it.shop.limits.near = to),
    ("shop.limits.skin_flat", |it, to| {
        it.shop.limits.skin_flat = to;
    }),
    ("shop.limits.skin_pointed", |it, to| {
        it.shop.limits.skin_pointed = to;
    }),
    ("shop.limits.web", |it, to| it.shop.limits.web = to),
    ("shop.limits.spare", |it, to| it.shop.limits.spare = to),
    ("shop.limits.close", |it, to| it.shop.limits.close = to),
    ("shop.fronts.gap", |it, to| it.shop.fronts.gap = to),
    ("shop.fronts.reveal_foot", |it, to| {
        it.shop.fronts.reveal_foot = to;
    }),
    ("shop.fronts.reveal_head", |it, to| {
        it.shop.fronts.reveal_head = to;
    }),
    ("shop.fronts.reveal_side", |it, to| {
        it.shop.fronts.reveal_side = to;
    }),
    ("shop.fronts.gap_inset", |it, to| {
        it.shop.fronts.gap_inset = to;
    }),
    ("shop.band.thickness", |it, to| it.shop.band.thickness = to),
    ("shop.band.pre_mill", |it, to| it.shop.band.pre_mill = to),
    ("shop.boxes.groove", |it, to| it.shop.boxes.groove = to),
    ("shop.boxes.step", |it, to| it.shop.boxes.step = to),
    ("shop.boxes.below", |it, to| it.shop.boxes.below = to),
    ("shop.boxes.between", |it, to| it.shop.boxes.between = to),
    ("shop.boxes.above", |it, to| it.shop.boxes.above = to),
    ("shop.boxes.rise", |it, to| it.shop.boxes.rise = to),
    ("shop.boxes.rise_least", |it, to| {
        it.shop.boxes.rise_least = to;
    }),
    ("shop.boxes.rise_most", |it, to| {
        it.shop.boxes.rise_most = to;
    }),
    ("shop.bench.test_depth", |it, to| {
        it.shop.bench.test_depth = Some(to);
    }),
    ("shop.bench.base_off", |it, to| {
        it.shop.bench.base_off = Some(to);
    }),
    ("cards.boards[0].nominal", |it, to| {
        it.cards.boards[0].nominal = to;
    }),
    ("cards.boards[0].thickness", |it, to| {
        it.cards.boards[0].thickness.value = to;
    }),
    ("cards.hinges[0].half_zone", |it, to| {
        it.cards.hinges[0].half_zone.value = to;
    }),
    ("cards.hinges[0].reach", |it, to| {
        it.cards.hinges[0].reach.value = to;
    }),
    ("cards.hinges[0].proud", |it, to| {
        it.cards.hinges[0].proud.value = to;
    }),
    ("cards.hinges[0].pen", |it, to| {
        it.cards.hinges[0].pen.value = to;
    }),
    ("cards.hinges[0].arms.full", |it, to| {
        it.cards.hinges[0].arms.full.value = to;
    }),
    ("cards.hinges[0].arms.half", |it, to| {
        it.cards.hinges[0].arms.half.value = to;
    }),
    ("cards.hinges[0].arms.inset", |it, to| {
        it.cards.hinges[0].arms.inset.value = to;
    }),
    ("cards.hinges[0].tabs.least", |it, to| {
        it.cards.hinges[0].tabs.least.value = to;
    }),
    ("cards.hinges[0].tabs.most", |it, to| {
        it.cards.hinges[0].tabs.most.value = to;
    }),
    ("cards.hinges[0].tabs.step", |it, to| {
        it.cards.hinges[0].tabs.step = to;
    }),
    ("cards.hinges[0].plates[0].height", |it, to| {
        it.cards.hinges[0].plates[0] = to;
    }),
    ("cards.hinges[0].cup", |it, to| {
        it.cards.hinges[0].cup.value = to;
    }),
    ("cards.hinges[0].cup_depth", |it, to| {
        it.cards.hinges[0].cup_depth.value = to;
    }),
    ("cards.hinges[0].intrusion", |it, to| {
        it.cards.hinges[0].intrusion.value = to;
    }),
    ("cards.hinges[0].adjust", |it, to| {
        it.cards.hinges[0].adjust.value = to;
    }),
    ("cards.hinges[0].reveals[0].thickness", |it, to| {
        it.cards.hinges[0].reveals[0].thickness = to;
    }),
    ("cards.hinges[0].reveals[0].least", |it, to| {
        it.cards.hinges[0].reveals[0].least.value = to;
    }),
    ("cards.runners[0].deduct", |it, to| {
        it.cards.runners[0].deduct.value = to;
    }),
    ("cards.runners[0].shorter", |it, to| {
        it.cards.runners[0].shorter.value = to;
    }),
    ("cards.runners[0].recess", |it, to| {
        it.cards.runners[0].recess.value = to;
    }),
    ("cards.runners[0].first_hole", |it, to| {
        it.cards.runners[0].first_hole.value = to;
    }),
    ("cards.runners[0].stand_back", |it, to| {
        it.cards.runners[0].stand_back.value = to;
    }),
    ("cards.runners[0].line", |it, to| {
        it.cards.runners[0].line.value = to;
    }),
    ("cards.runners[0].below", |it, to| {
        it.cards.runners[0].below.value = to;
    }),
    ("cards.runners[0].above", |it, to| {
        it.cards.runners[0].above.value = to;
    }),
    ("cards.runners[0].width", |it, to| {
        it.cards.runners[0].width.value = to;
    }),
    ("cards.runners[0].pen", |it, to| {
        it.cards.runners[0].pen.value = to;
    }),
    ("cards.runners[0].lengths[0].name", |it, to| {
        it.cards.runners[0].lengths[0].name = to;
    }),
    ("cards.runners[0].lengths[0].need", |it, to| {
        it.cards.runners[0].lengths[0].need.value = to;
    }),
    ("cards.pins[0].pen", |it, to| {
        it.cards.pins[0].pen.value = to;
    }),
    ("cards.pins[0].rise", |it, to| {
        it.cards.pins[0].rise.value = to;
    }),
    ("cards.pins[0].projection", |it, to| {
        it.cards.pins[0].projection = Some(Sourced::guess(to));
    }),
    ("cards.connectors[0].diameter", |it, to| {
        it.cards.connectors[0].diameter.value = to;
    }),
    ("cards.connectors[0].depth", |it, to| {
        it.cards.connectors[0].depth.value = to;
    }),
    ("cards.connectors[0].edge", |it, to| {
        it.cards.connectors[0].edge.value = to;
    }),
    ("cards.rails[0].pitch", |it, to| {
        it.cards.rails[0].pitch.value = to;
    }),
    ("cards.rails[0].reach_least", |it, to| {
        it.cards.rails[0].reach_least.value = to;
    }),
    ("cards.rails[0].reach_most", |it, to| {
        it.cards.rails[0].reach_most.value = to;
    }),
    ("cards.rails[0].width", |it, to| {
        it.cards.rails[0].width.value = to;
    }),
    ("cards.rails[0].support", |it, to| {
        it.cards.rails[0].support.value = to;
    }),
    ("cards.rails[0].play", |it, to| {
        it.cards.rails[0].play.value = to;
    }),
    ("cards.rails[0].bed.length", |it, to| {
        it.cards.rails[0].bed.length.value = to;
    }),
    ("cards.rails[0].bed.width", |it, to| {
        it.cards.rails[0].bed.width.value = to;
    }),
    ("cards.rails[0].stops[0].offset", |it, to| {
        it.cards.rails[0].stops[0] = to;
    }),
    ("bored[0].diameter", |it, to| bored(it).diameter = to),
    ("bored[0].from_front", |it, to| bored(it).from_front = to),
    ("bored[0].from_foot", |it, to| bored(it).from_foot = to),
    ("bored[0].depth", |it, to| bored(it).depth = Some(to)),
];

#[track_caller]
fn check(path: &str, spoil: impl FnOnce(&mut Job)) {
    let mut job = full();
    spoil(&mut job);
    let fault = job.validate().unwrap_err();
    assert_eq!(fault.path, path);
    assert!(fault.problem.contains("-5000"), "{fault}");
}

#[test]
fn every_length_of_a_cabinet_has_its_range() {
    let first = "opening.side_by_side.first.";
    let rest = "opening.side_by_side.rest[0].";
    for (outer, table) in [("", BOX), (first, LEFT_PART), (rest, RIGHT_PART)] {
        for (path, spoil) in table {
            let path = format!("cabinets[0].{outer}{path}");
            check(&path, |job| spoil(&mut job.cabinets[0], WRONG));
        }
    }
}

#[test]
fn every_length_of_shop_cards_and_record_has_its_range() {
    for (path, spoil) in HOUSE {
        check(path, |job| spoil(job, WRONG));
    }
}
