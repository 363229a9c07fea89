//! The boxes of space that hardware and fixed panels need.

use super::face;
use crate::arbitrary::*;
use crate::job::{FaceId, Fit, Hand, HolePlace, Job, Key, ShelfHeight, Spacers, TopKind};
use crate::layout::{Item, KeepOut, Span};
use crate::measure::Length;

fn span(from_um: i32, to_um: i32) -> Span {
    Span::new(um(from_um), um(to_um))
}

#[track_caller]
fn one(job: &Job, wall: FaceId, item: Item) -> KeepOut {
    let found = all(job, wall, item);
    assert_eq!(found.len(), 1, "{found:?}");
    found[0]
}

fn all(job: &Job, wall: FaceId, item: Item) -> Vec<KeepOut> {
    let layout = lay_out(job);
    let spaces = face(&layout, wall).keep_outs.iter();
    spaces.filter(|space| space.item == item).copied().collect()
}

/// What fixed panels meet a face, and where: item, owner, x, z.
fn fixed(job: &Job, wall: FaceId) -> Vec<(Item, Option<Key>, Span, Span)> {
    let layout = lay_out(job);
    let spaces = face(&layout, wall).keep_outs.iter();
    let fixed = spaces.filter(|space| space.item.is_fixed_panel());
    fixed
        .map(|space| (space.item, space.owner, space.x, space.z))
        .collect()
}

/// Cabinet X with a hinge plate on holes 3 and 4 of its left side and a shelf on one hole.
fn hinge_and_shelf(hole: i16) -> Job {
    cabinet_x(|job| {
        let bay = bay_of(job, 11);
        bay.plates = vec![plate(3, Hand::Left, 3)];
        bay.shelves = vec![shelf(4, hole)];
    })
}

#[test]
fn hinge_meets_a_shelf_one_hole_too_near() {
    // Plate centre 80 + 16 = 96: 68 to 124. Shelf on hole 5: 144 + 2.5 = 146.5; on hole 4: 114.5 to 133.1.
    let [clear, clash] = [5, 4].map(|hole| {
        let job = hinge_and_shelf(hole);
        let hinge = one(&job, LEFT_INSIDE, Item::Hinge);
        assert_eq!(
            (hinge.x, hinge.z, hinge.u),
            (span(0, 70_000), span(68_000, 124_000), span(0, 15_000))
        );
        (hinge, one(&job, LEFT_INSIDE, Item::Shelf))
    });
    assert_eq!(clear.1.z, span(146_500, 165_100));
    assert_eq!(clash.1.z, span(114_500, 133_100));
    assert!(!clear.0.meets(&clear.1));
    assert!(clash.0.meets(&clash.1));
}

#[test]
fn hinge_takes_space_on_its_own_wall_only() {
    let job = hinge_and_shelf(5);
    assert_eq!(all(&job, partition_face(9, Hand::Left), Item::Hinge), []);
}

// hinge-plate. Source: woodweb "Odd Cabinet Heights"; davelers.com/32mm/4988.html (two pages).
#[test]
fn plate_is_centred_between_its_two_holes() {
    let job = cabinet_with(|cabinet| {
        cabinet.offsets.foot = um(46_500);
        cabinet.opening = bay(1, |bay| bay.plates = vec![plate(3, Hand::Left, 1)]);
    });
    let hinge = one(&job, LEFT_INSIDE, Item::Hinge);
    assert_eq!(hinge.z, span(62_500 - 28_000, 62_500 + 28_000));
}

// rule-clear. Common practice.
#[test]
fn clear_between_shelves_is_whole_pitches_less_a_board() {
    let job = cabinet_x(|job| bay_of(job, 11).shelves = vec![shelf(3, 9), shelf(4, 15)]);
    let shelves = all(&job, LEFT_INSIDE, Item::Shelf);
    // 6 * 32 - 18.6 = 173.4
    assert_eq!(shelves[1].z.from - shelves[0].z.to, um(173_400));
    // 12 behind the front, 2 before the back panel, 1 short of either wall
    assert_eq!(
        (shelves[0].x, shelves[0].u),
        (span(12_000, 512_000), span(1_000, 441_100))
    );
}

#[test]
fn runner_takes_space_from_its_own_front_end() {
    let job = cabinet_x(|job| bay_of(job, 11).runners = vec![runner(3, 4, 500)]);
    for wall in [LEFT_INSIDE, partition_face(9, Hand::Left)] {
        let runner = one(&job, wall, Item::Runner);
        // first screw 37 - own first hole 35 = 2;  hole 4 at 112, 14 below it and 22 above
        assert_eq!(
            (runner.x, runner.z),
            (span(2_000, 502_000), span(98_000, 134_000))
        );
        assert_eq!(runner.u, span(0, 21_000));
        assert_eq!(runner.owner, Some(Key(3)));
    }
}

#[test]
fn spacer_moves_the_runner_out_from_its_wall() {
    let job = cabinet_x(|job| {
        let mut packed = runner(3, 4, 500);
        packed.spacers = Spacers {
            left: mm(8),
            right: Length::ZERO,
        };
        bay_of(job, 11).runners = vec![packed];
    });
    assert_eq!(one(&job, LEFT_INSIDE, Item::Runner).u, span(8_000, 29_000));
    let other_wall = partition_face(9, Hand::Left);
    assert_eq!(one(&job, other_wall, Item::Runner).u, span(0, 21_000));
}

#[test]
fn to_touch_is_no_clash() {
    let box_at = |z| KeepOut {
        item: Item::Shelf,
        owner: None,
        x: span(0, 70_000),
        z,
        u: span(0, 15_000),
    };
    let low = box_at(span(0, 20_000));
    assert!(!low.meets(&box_at(span(20_000, 40_000))));
    let opposite = KeepOut {
        u: span(15_000, 30_000),
        ..low
    };
    assert!(
        !low.meets(&opposite),
        "one behind the other, seen from the face"
    );
    let behind = KeepOut {
        x: span(70_000, 90_000),
        ..low
    };
    assert!(!low.meets(&behind));
    assert!(low.meets(&box_at(Span::new(
        um(20_000) - Length::from_counts(1),
        mm(40)
    ))));
    assert_eq!(span(0, 10_000).overlap(span(12_000, 20_000)), mm(-2));
}

const BOTTOM: (Item, Option<Key>) = (Item::Bottom, None);
const STRETCHER: (Item, Option<Key>) = (Item::Stretcher, None);

#[test]
fn bottom_and_flat_stretchers_meet_sides_and_partition_alike() {
    let job = cabinet_x(|_| ());
    let (top, z_top) = (um(781_400), mm(800));
    let expected = [
        (BOTTOM.0, BOTTOM.1, span(0, 514_000), span(0, 18_600)),
        (
            STRETCHER.0,
            STRETCHER.1,
            span(0, 100_000),
            Span::new(top, z_top),
        ),
        (
            STRETCHER.0,
            STRETCHER.1,
            span(414_000, 514_000),
            Span::new(top, z_top),
        ),
    ];
    for wall in [
        LEFT_INSIDE,
        partition_face(9, Hand::Left),
        partition_face(9, Hand::Right),
        RIGHT_INSIDE,
    ] {
        assert_eq!(fixed(&job, wall), expected, "{wall:?}");
    }
}

#[test]
fn stretchers_on_edge_are_thin_and_high() {
    let kind = TopKind::EdgeStretchers(mm(100));
    let job = cabinet_x(|job| job.cabinets[0].carcass.top.kind = kind);
    let stretchers = all(&job, LEFT_INSIDE, Item::Stretcher);
    let places: Vec<_> = stretchers.iter().map(|space| (space.x, space.z)).collect();
    let z = span(700_000, 800_000);
    assert_eq!(places, [(span(0, 18_600), z), (span(495_400, 514_000), z)]);
}

#[test]
fn stretchers_wider_than_half_the_depth_meet_in_the_middle() {
    // 150 - 20 = 130 inside, 65 for each
    let job = cabinet_with(|cabinet| cabinet.size.depth = mm(150));
    let stretchers = all(&job, LEFT_INSIDE, Item::Stretcher);
    let places: Vec<_> = stretchers.iter().map(|space| space.x).collect();
    assert_eq!(places, [span(0, 65_000), span(65_000, 130_000)]);
}

#[test]
fn whole_top_reaches_the_back_panel() {
    let kind = TopKind::Panel(Fit::Between);
    let job = cabinet_x(|job| job.cabinets[0].carcass.top.kind = kind);
    let top = one(&job, LEFT_INSIDE, Item::Top);
    assert_eq!((top.x, top.z), (span(0, 514_000), span(781_400, 800_000)));
}

#[test]
fn partition_on_a_fixed_shelf_meets_that_shelf() {
    let mut shelf = fixed_shelf(8, ShelfHeight::Hole(HolePlace::foot(11)));
    shelf.recess = mm(30);
    let job = cabinet_with(|cabinet| {
        let above = side_by_side(12, empty(13), [(partition(9), empty(14))]);
        cabinet.opening = stacked(1, empty(11), shelf, above);
    });
    let on_shelf = (
        Item::FixedShelf,
        Some(Key(8)),
        span(30_000, 540_000),
        span(327_000, 345_000),
    );
    let panels = fixed(&job, partition_face(9, Hand::Left));
    assert_eq!(panels.len(), 3);
    assert_eq!(panels[0], on_shelf);
    assert!(panels[1..].iter().all(|panel| panel.0 == Item::Stretcher));
    assert!(fixed(&job, LEFT_INSIDE).contains(&on_shelf));
}

#[test]
fn partition_under_a_fixed_shelf_meets_it_and_the_bottom() {
    let job = cabinet_with(|cabinet| {
        let below = side_by_side(12, empty(13), [(partition(9), empty(14))]);
        let shelf = fixed_shelf(8, ShelfHeight::Underside(mm(400)));
        cabinet.opening = stacked(1, below, shelf, empty(11));
    });
    let items: Vec<Item> = fixed(&job, partition_face(9, Hand::Right))
        .iter()
        .map(|panel| panel.0)
        .collect();
    assert_eq!(items, [Item::Bottom, Item::FixedShelf]);
}

#[test]
fn shelf_set_back_deeper_than_its_bay_needs_no_space() {
    let job = bay_with(|bay| {
        let mut deep = shelf(22, 11);
        deep.setback_front = mm(900);
        bay.shelves = vec![deep];
    });
    let layout = lay_out(&job);
    let of_shelf = |keep_out: &&KeepOut| keep_out.item == Item::Shelf;
    let keep_outs = &face(&layout, LEFT_INSIDE).keep_outs;
    let shelf = keep_outs.iter().find(of_shelf).unwrap();
    assert_eq!((shelf.x.from, shelf.x.to), (mm(900), mm(900)));
    assert!(!keep_outs.iter().any(|other| shelf.meets(other)));
}
