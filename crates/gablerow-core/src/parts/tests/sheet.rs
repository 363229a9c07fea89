//! A whole base cabinet against its bench sheet: doors, fronts, boxes, shelves, bag.
//!
//! 1000 x 704 x 560 of board measured 18.2; left bay a door hung left and two shelves, right bay three drawers.

use super::{bagged, cut, finished, panel, parts, totals};
use crate::arbitrary::*;
use crate::job::Copy;
use crate::job::{Key, Label};
use crate::measure::Length;
use crate::parts::{Arm, BagKind, Built, Grain};

// Geometry: 472.7 + 16.7 over the side + 7.6 over half the partition = 497.0; 0.497 * 0.701 * 0.019 * 750 = 4.96.
#[test]
fn door_is_as_the_sheet_has_it() {
    let parts = parts(&glaze_store());
    let door = &parts.fronts[0];
    assert_eq!(finished(&door.piece), [mm(701), mm(497)]);
    assert_eq!(cut(&door.piece), [mm(699), mm(495)]);
    assert_eq!(
        (door.piece.grain, door.piece.thickness),
        (Grain::Up, Some(mm(19)))
    );
    assert_eq!(format!("{:.1}", door.mass_kg.unwrap()), "5.0");
    let hanging = door.hanging.as_ref().unwrap();
    assert_eq!((hanging.holes.len(), hanging.asked.unwrap().hinges), (2, 2));
    let fit = hanging.fit.unwrap();
    assert_eq!(
        (hanging.arm, fit.tab, fit.plate),
        (Arm::Full, um(3_500), Length::ZERO)
    );
    assert_eq!(
        (hanging.wanted.total(), fit.residual),
        (um(16_700), um(-200))
    );
    assert_eq!(
        (fit.cup_centre.total(), hanging.cup_depth),
        (mm(21), mm(13))
    );
    let cups = &hanging.cups;
    let from_foot: Vec<Length> = cups.cups.iter().map(|cup| cup.from_foot.total()).collect();
    let from_head: Vec<Length> = cups.cups.iter().map(|cup| cup.from_head.total()).collect();
    assert_eq!(from_foot, [um(94_500), um(606_500)]);
    assert_eq!(from_head, [um(606_500), um(94_500)]);
    assert!(!cups.handed);
}

#[test]
fn drawer_fronts_and_boxes_are_as_the_sheet_has_them() {
    let parts = parts(&glaze_store());
    let fronts = parts.fronts[1..].iter();
    let heights: Vec<Length> = fronts.map(|front| front.piece.length.total()).collect();
    assert_eq!(heights, [mm(253), mm(221), mm(221)]);
    assert_eq!(parts.boxes.len(), 3);
    for made in &parts.boxes {
        assert_eq!(made.rise.total(), um(36_500));
        assert_eq!(made.outside.total(), um(460_700));
        assert_eq!(made.inside.total(), um(430_700));
        assert_eq!((made.length.total(), made.recess), (mm(490), mm(13)));
        assert_eq!(totals(&made.bottom), [um(445_700), mm(475)]);
        assert_eq!((made.side_gap, made.moved), (mm(6), Length::ZERO));
        assert_eq!(finished(&made.side), [mm(490), made.height]);
        assert_eq!(finished(&made.end), [um(430_700), made.height]);
    }
    let rooms: Vec<Length> = parts.boxes.iter().map(|made| made.room.total()).collect();
    assert_eq!(rooms, [mm(231), mm(199), um(157_800)]);
    let heights: Vec<Length> = parts.boxes.iter().map(|made| made.height).collect();
    assert_eq!(heights, [mm(224), mm(192), mm(152)]);
}

#[test]
fn shelves_are_as_the_sheet_has_them() {
    let parts = parts(&glaze_store());
    for shelf in &parts.shelves {
        assert_eq!(finished(&shelf.piece), [um(470_700), mm(526)]);
        assert_eq!(cut(&shelf.piece), [um(470_700), mm(525)]);
    }
    let [low, high] = &parts.shelves[..] else {
        panic!("{:?}", parts.shelves);
    };
    assert_eq!((low.hole, high.hole), (11, 16));
    assert_eq!(low.clear_below.total(), um(320_300));
    assert_eq!(
        [low.clear_above.total(), high.clear_below.total()],
        [um(141_800); 2]
    );
    assert_eq!(high.clear_above.total(), um(169_100));
}

#[test]
fn panels_are_as_the_sheet_has_them() {
    let parts = parts(&glaze_store());
    for side in ["left side", "right side"] {
        assert_eq!(finished(panel(&parts, side)), [mm(704), mm(560)]);
        assert_eq!(cut(panel(&parts, side)), [mm(704), mm(559)]);
    }
    assert_eq!(
        finished(panel(&parts, "partition 1")),
        [um(667_600), mm(540)]
    );
    assert_eq!(finished(panel(&parts, "bottom")), [um(963_600), mm(540)]);
    assert_eq!(cut(panel(&parts, "front stretcher")), [um(963_600), mm(99)]);
    assert_eq!(cut(panel(&parts, "back stretcher")), [um(963_600), mm(100)]);
    let back = parts.back.unwrap();
    assert_eq!(
        (back.width.total(), back.height.total()),
        (um(978_600), mm(703))
    );
}

#[test]
fn bag_is_as_the_sheet_has_it() {
    let parts = parts(&glaze_store());
    let wanted = [
        (BagKind::Hinge, (2, 2)),
        (BagKind::Plate, (2, 2)),
        (BagKind::CupScrew, (4, 5)),
        (BagKind::SystemScrew, (22, 25)),
        (BagKind::Pin, (8, 9)),
        (BagKind::Runner, (3, 3)),
        (BagKind::FrontConnector, (3, 3)),
        (BagKind::Foot, (6, 6)),
    ];
    for (kind, counts) in wanted {
        assert_eq!(bagged(&parts, kind), counts, "{}", kind.words());
    }
    assert_eq!(parts.bag.len(), wanted.len());
    assert_eq!(parts.missing, []);
}

#[test]
fn bag_holds_what_all_copies_take() {
    let mut job = glaze_store();
    job.cabinets[0].copies.push(Copy {
        key: Key(90),
        name: Label::known("2"),
        mirrored: true,
        as_cut: Vec::new(),
    });
    let parts = parts(&job);
    assert_eq!(
        parts.built,
        Built {
            plain: 1,
            mirrored: 1
        }
    );
    assert_eq!(bagged(&parts, BagKind::SystemScrew), (44, 49));
    assert_eq!(bagged(&parts, BagKind::Foot), (12, 12));
}
