//! A whole base cabinet against its bench sheet: every hole, its setbacks and its heights from both feet.
//!
//! 1000 x 704 x 560 of board measured 18.2; left bay a door hung left and two shelves, right bay three drawers.

use super::{face, rows};
use crate::arbitrary::*;
use crate::job::{FaceId, Hand, Key};
use crate::layout::{Layout, Use};
use crate::measure::Length;

const P: u32 = 9;

fn p_left() -> FaceId {
    partition_face(P, Hand::Left)
}

fn p_right() -> FaceId {
    partition_face(P, Hand::Right)
}

#[test]
fn every_row_is_where_the_sheet_has_it() {
    let layout = lay_out(&glaze_store());
    let drawers = [
        "front 37: 2 10 17",
        "runner 261: 2 10 17",
        "runner 453: 2 10 17",
    ];
    assert_eq!(
        rows(&layout, LEFT_INSIDE),
        ["front 37: 3-4 11-16 19-20", "back 503: 11-16"]
    );
    assert_eq!(
        rows(&layout, p_left()),
        ["front 37: 11-16", "back 503: 11-16"]
    );
    assert_eq!(rows(&layout, p_right()), drawers);
    assert_eq!(rows(&layout, RIGHT_INSIDE), drawers);
    for outside in [LEFT_INSIDE.behind(), RIGHT_INSIDE.behind()] {
        assert_eq!(face(&layout, outside).holes(&layout), []);
    }
}

#[test]
fn counts_agree_with_the_sheet() {
    let layout = lay_out(&glaze_store());
    let holes = |id| face(&layout, id).holes(&layout);
    let counts = [LEFT_INSIDE, p_left(), p_right(), RIGHT_INSIDE].map(|id| holes(id).len());
    assert_eq!(counts, [16, 12, 9, 9]);
    let all = [LEFT_INSIDE, p_left(), p_right(), RIGHT_INSIDE]
        .map(holes)
        .concat();
    let of = |wanted| {
        let has = |hole: &&crate::layout::Hole| hole.users.iter().any(|(use_, _)| *use_ == wanted);
        all.iter().filter(has).count()
    };
    assert_eq!([of(Use::Plate), of(Use::Pin), of(Use::Runner)], [4, 24, 18]);
    assert_eq!(layout.last, 22);
    for hole in &all {
        assert_eq!((hole.diameter, hole.depth), (mm(5), Some(mm(12))));
    }
}

#[test]
fn shelves_and_their_zone_share_holes() {
    let layout = lay_out(&glaze_store());
    let holes = face(&layout, LEFT_INSIDE).holes(&layout);
    let users = |number| {
        let at = holes.iter().find(|hole| hole.number == Some(number));
        at.unwrap().users.clone()
    };
    assert_eq!(users(11), [(Use::Pin, Key(21)), (Use::Pin, Key(22))]);
    assert_eq!(users(12), [(Use::Pin, Key(21))]);
    assert_eq!(users(3), [(Use::Plate, Key(24))]);
}

/// Heights of holes above the foot of a panel.
fn above_foot(layout: &Layout, id: FaceId, numbers: &[i16]) -> Vec<Length> {
    let foot = layout.upright(id.panel).unwrap().foot.total();
    let height = |number: &i16| layout.height(*number) - foot;
    numbers.iter().map(height).collect()
}

#[test]
fn heights_stand_from_both_feet() {
    let layout = lay_out(&glaze_store());
    let numbers = [2, 3, 4, 10, 11, 16, 17, 19, 20];
    let sides = [
        48_000, 80_000, 112_000, 304_000, 336_000, 496_000, 528_000, 592_000, 624_000,
    ];
    assert_eq!(above_foot(&layout, LEFT_INSIDE, &numbers), sides.map(um));
    assert_eq!(above_foot(&layout, RIGHT_INSIDE, &numbers), sides.map(um));
    let partition = above_foot(&layout, p_left(), &[2, 10, 11, 16, 17]);
    assert_eq!(
        partition,
        [29_800, 285_800, 317_800, 477_800, 509_800].map(um)
    );
}

#[test]
fn set_ups_from_the_back_edge_agree() {
    let layout = lay_out(&glaze_store());
    let from_back = |id: FaceId, row: usize| {
        let upright = layout.upright(id.panel).unwrap();
        upright.back.total() - face(&layout, id).rows[row].x.total()
    };
    assert_eq!(from_back(LEFT_INSIDE, 1), mm(57));
    assert_eq!(from_back(p_left(), 1), mm(37));
    assert_eq!(from_back(p_right(), 2), mm(87));
    assert_eq!(from_back(RIGHT_INSIDE, 2), mm(107));
}

#[test]
fn first_measurements_and_check_distances_agree() {
    let layout = lay_out(&glaze_store());
    let length = |id: FaceId| layout.upright(id.panel).unwrap().length();
    assert_eq!(
        [LEFT_INSIDE, p_left(), RIGHT_INSIDE].map(length),
        [mm(704), um(667_600), mm(704)]
    );
    assert_eq!(layout.height(20) - layout.height(3), mm(544));
    assert_eq!(layout.height(17) - layout.height(2), mm(480));
    assert_eq!(super::between(face(&layout, LEFT_INSIDE), 0, 1), mm(466));
    assert_eq!(super::between(face(&layout, RIGHT_INSIDE), 0, 1), mm(224));
    assert_eq!(super::between(face(&layout, RIGHT_INSIDE), 0, 2), mm(416));
    assert_eq!(layout.upright(p_left().panel).unwrap().depth(), mm(540));
}

#[test]
fn bays_and_shelves_agree() {
    let layout = lay_out(&glaze_store());
    // (1000 - 3 * 18.2) / 2 = 472.7;  shelf 472.7 - 2 wide
    assert_eq!(
        [layout.bays[0].width, layout.bays[1].width],
        [um(472_700); 2]
    );
    let shelves: Vec<_> = face(&layout, LEFT_INSIDE)
        .keep_outs
        .iter()
        .filter(|space| space.item == crate::layout::Item::Shelf)
        .collect();
    assert_eq!(shelves[0].u.to - shelves[0].u.from, um(470_700));
    assert_eq!(shelves[0].x.to - shelves[0].x.from, mm(526));
    // clear below, between, above: 338.5 - 18.2;  498.5 - 338.5 - 18.2;  704 - 18.2 - 498.5 - 18.2
    assert_eq!(
        shelves[0].z.from - layout.bays[0].floor.total(),
        um(320_300)
    );
    assert_eq!(shelves[1].z.from - shelves[0].z.to, um(141_800));
    assert_eq!(
        layout.bays[0].ceiling.total() - shelves[1].z.to,
        um(169_100)
    );
}
