//! Where panels stand, and the bays between them.

use crate::arbitrary::*;
use crate::grid::RowStart;
use crate::job::{
    Back, CardId, Division, Fit, Hand, HolePlace, Job, Key, PanelId, PartWidth, ShelfHeight, Size,
    TopKind,
};
use crate::layout::{Layout, OpenPoint, Upright};
use crate::measure::Length;

const LEFT: PanelId = PanelId::Side(Hand::Left);
const RIGHT: PanelId = PanelId::Side(Hand::Right);
const P: PanelId = PanelId::Partition(Key(9));

#[track_caller]
fn upright(layout: &Layout, id: PanelId) -> &Upright {
    layout.upright(id).unwrap()
}

/// The first hole of a panel and its distance from that panel's foot.
#[track_caller]
fn start(job: &Job, layout: &Layout, id: PanelId) -> (u16, Length) {
    let foot = upright(layout, id).foot.total();
    let end_min = job.shop.limits.to_end;
    let RowStart { hole, offset } = layout.grid.start_above(foot, end_min).unwrap();
    (hole.get(), offset)
}

/// How many holes of the grid a panel has.
#[track_caller]
fn count(job: &Job, layout: &Layout, id: PanelId) -> u16 {
    let (upright, end_min) = (upright(layout, id), job.shop.limits.to_end);
    let (foot, head) = (upright.foot.total(), upright.head.total());
    let holes = layout.grid.within(foot + end_min, head - end_min);
    holes.unwrap().count()
}

// Common practice.
#[test]
fn partition_stands_on_the_bottom_and_starts_at_hole_2() {
    // 800 - 18.6 - 18.6 = 762.8;  16 + 32 - 18.6 = 29.4
    let job = cabinet_x(|_| ());
    let layout = lay_out(&job);
    let partition = upright(&layout, P);
    assert_eq!(partition.foot.total(), um(18_600));
    assert_eq!(partition.length(), um(762_800));
    assert_eq!(partition.depth(), mm(514));
    assert_eq!(start(&job, &layout, P), (2, um(29_400)));
    assert_eq!(count(&job, &layout, P), 23);
    assert_eq!(count(&job, &layout, LEFT), 25);
    // As far from its head as from its foot: 29.4 above hole 24, at 752.
    assert_eq!(partition.head.total() - layout.height(24), um(29_400));
}

#[test]
fn bays_share_what_sides_and_partition_leave() {
    // (940 - 3 * 18.6) / 2 = 442.1
    let layout = lay_out(&cabinet_x(|_| ()));
    let widths: Vec<Length> = layout.bays.iter().map(|bay| bay.width).collect();
    assert_eq!(widths, [um(442_100); 2]);
    let walls = layout.bays.iter().map(|bay| (bay.left, bay.right));
    let expected = [
        (LEFT_INSIDE, partition_face(9, Hand::Left)),
        (partition_face(9, Hand::Right), RIGHT_INSIDE),
    ];
    assert_eq!(walls.collect::<Vec<_>>(), expected);
}

#[test]
fn housed_partition_is_longer_by_both_housings() {
    // 762.8 + 5 + 5 = 772.8;  16 + 32 - (18.6 - 5) = 34.4
    let job = cabinet_x(|job| {
        let partition = partition_of(job);
        (partition.foot.housing, partition.head.housing) = (mm(5), mm(5));
    });
    let layout = lay_out(&job);
    assert_eq!(upright(&layout, P).foot.total(), um(13_600));
    assert_eq!(upright(&layout, P).length(), um(772_800));
    assert_eq!(start(&job, &layout, P), (2, um(34_400)));
    assert_eq!(count(&job, &layout, P), 23);
}

#[test]
fn partition_past_the_bottom_starts_where_the_sides_do() {
    let job = cabinet_x(|job| partition_of(job).foot.runs_past = true);
    let layout = lay_out(&job);
    assert_eq!(upright(&layout, P).foot.total(), Length::ZERO);
    assert_eq!(start(&job, &layout, P), (1, mm(16)));
}

#[track_caller]
fn check_start(offset_um: i32, board_um: i32, hole: u16, above_foot_um: i32) -> Layout {
    let job = cabinet_x(|job| {
        board_18(job).thickness.value = um(board_um);
        let cabinet = &mut job.cabinets[0];
        cabinet.size.height = mm(723);
        (cabinet.offsets.foot, cabinet.offsets.head) = (um(offset_um), um(offset_um));
    });
    let layout = lay_out(&job);
    assert_eq!(start(&job, &layout, P), (hole, um(above_foot_um)));
    layout
}

// part-19. Source: davelers.com/32mm/Drawers prints 22.5 as 32 - t/2 (one page).
#[test]
fn partition_on_a_19_bottom_starts_at_22_5() {
    // 723 - 19 - 19 = 685 = 22.5 + 640 + 22.5
    let layout = check_start(9_500, 19_000, 2, 22_500);
    assert_eq!(upright(&layout, P).length(), mm(685));
    assert_eq!(mm(685) - um(22_500) - mm(640), um(22_500));
}

// part-18, part-32, part-zero, run-half. Derived.
#[test]
fn partition_starts_at_least_8_above_its_foot() {
    check_start(46_500, 18_000, 1, 28_500);
    check_start(32_000, 19_000, 1, 13_000);
    check_start(16_000, 16_000, 2, 32_000);
    check_start(25_500, 19_000, 2, 38_500);
}

// part-toe, counted from the carcass underside 100 above the floor: 46.5 + 2 * 32 - 100 = 10.5. Derived.
#[test]
fn counting_starts_with_the_carcass_where_sides_run_to_the_floor() {
    let job = cabinet_x(|job| {
        board_18(job).thickness.value = mm(18);
        let cabinet = &mut job.cabinets[0];
        cabinet.carcass.sides.below = mm(100);
        cabinet.offsets.foot = um(10_500);
    });
    let layout = lay_out(&job);
    for side in [LEFT, RIGHT] {
        assert_eq!(upright(&layout, side).foot.total(), mm(-100));
        assert_eq!(upright(&layout, side).length(), mm(900));
    }
    assert_eq!(layout.height(1), um(10_500));
    assert_eq!(start(&job, &layout, P), (2, um(24_500)));
    assert_eq!(layout.last, 25);
}

// part-packer. Derived: on the sides' stop, behind a packer cut from the bottom board, hole 2 is hole 2.
#[test]
fn packer_of_the_bottom_board_brings_the_partition_onto_the_sides_stop() {
    for board in [16_000, 18_000, 18_213, 18_600, 22_500] {
        let job = cabinet_x(|job| board_18(job).thickness.value = um(board));
        let layout = lay_out(&job);
        let above_foot = layout.height(2) - upright(&layout, P).foot.total();
        assert_eq!(um(board) + above_foot, mm(16 + 32));
    }
}

#[test]
fn bottom_under_the_sides_carries_them() {
    let job = cabinet_x(|job| job.cabinets[0].carcass.bottom.fit = Fit::Across);
    let layout = lay_out(&job);
    assert_eq!(upright(&layout, LEFT).foot.total(), um(18_600));
    assert_eq!(upright(&layout, LEFT).length(), um(781_400));
    assert_eq!(upright(&layout, P).length(), um(762_800));
    assert_eq!(start(&job, &layout, LEFT), (2, um(29_400)));
    // Hole 2 is one height on the side, which begins above hole 1, and on the partition.
    assert_eq!(start(&job, &layout, P), (2, um(29_400)));
}

#[test]
fn top_over_the_sides_ends_them() {
    let job = cabinet_x(|job| job.cabinets[0].carcass.top.kind = TopKind::Panel(Fit::Across));
    let layout = lay_out(&job);
    assert_eq!(upright(&layout, LEFT).length(), um(781_400));
    assert_eq!(upright(&layout, P).length(), um(762_800));
}

#[test]
fn stretchers_on_edge_end_the_partition_at_their_lower_edge() {
    // 800 - 18.6 - 100 = 681.4
    let kind = TopKind::EdgeStretchers(mm(100));
    let layout = lay_out(&cabinet_x(|job| job.cabinets[0].carcass.top.kind = kind));
    assert_eq!(upright(&layout, P).length(), um(681_400));
    assert_eq!(upright(&layout, LEFT).length(), mm(800));
}

/// A fixed shelf at hole 11, one bay below it, partition 9 between bays 13 and 14 above it.
fn t_junction() -> Job {
    cabinet_with(|cabinet| {
        let above = side_by_side(12, empty(13), [(partition(9), empty(14))]);
        let shelf = fixed_shelf(8, ShelfHeight::Hole(HolePlace::foot(11)));
        cabinet.opening = stacked(1, empty(11), shelf, above);
    })
}

#[test]
fn partition_stands_on_a_fixed_shelf() {
    // Hole 11 at 336: the shelf from 327 to 345. Head at 704 - 18 = 686. Hole 12 at 368 is 23 above the foot.
    let job = t_junction();
    let layout = lay_out(&job);
    assert_eq!(upright(&layout, P).foot.total(), mm(345));
    assert_eq!(upright(&layout, P).length(), mm(341));
    assert_eq!(start(&job, &layout, P), (12, mm(23)));
    let bay = |key: u32| layout.bays.iter().find(|bay| bay.key == Key(key)).unwrap();
    assert_eq!(bay(11).ceiling.total(), mm(327));
    assert_eq!(bay(13).floor.total(), mm(345));
    assert_eq!(
        [bay(11).width, bay(13).width, bay(14).width],
        [mm(564), mm(273), mm(273)]
    );
    let seen: Vec<Key> = layout
        .bays_at(LEFT_INSIDE)
        .map(|(bay, _)| bay.key)
        .collect();
    assert_eq!(seen, [Key(11), Key(13)], "lowest first");
}

#[test]
fn fixed_shelf_stands_at_any_height_too() {
    let mut job = t_junction();
    let underside = ShelfHeight::Underside(um(301_500));
    let above = side_by_side(12, empty(13), [(partition(9), empty(14))]);
    job.cabinets[0].opening = stacked(1, empty(11), fixed_shelf(8, underside), above);
    // 301.5 + 18 = 319.5
    assert_eq!(upright(&lay_out(&job), P).foot.total(), um(319_500));
}

#[test]
fn half_depth_partition_keeps_its_rows_at_its_own_front() {
    let job = cabinet_x(|job| {
        partition_of(job).recess = mm(250);
        for key in [11, 12] {
            let bay = bay_of(job, key);
            bay.recess = mm(250);
            bay.zones = vec![zone(100 + key, 5..=9)];
        }
    });
    let layout = lay_out(&job);
    // 514 - 250 = 264 deep; its back row is 477 - 250 = 227 from its front, 37 from its back edge.
    assert_eq!(upright(&layout, P).depth(), mm(264));
    let rows = |face| super::rows(&layout, face);
    assert_eq!(
        rows(partition_face(9, Hand::Left)),
        ["front 37: 5-9", "back 227: 5-9"]
    );
    assert_eq!(rows(LEFT_INSIDE), ["front 287: 5-9", "back 477: 5-9"]);
}

#[test]
fn uprights_come_from_left_to_right() {
    let within = side_by_side(12, empty(13), [(partition(8), empty(14))]);
    let job = cabinet_with(|cabinet| {
        cabinet.size.width = mm(1800);
        cabinet.opening = side_by_side(
            1,
            within,
            [(partition(9), empty(15)), (partition(7), empty(16))],
        );
    });
    let ids = |layout: &Layout| {
        layout
            .uprights
            .iter()
            .map(|upright| upright.id)
            .collect::<Vec<_>>()
    };
    let partition = |key| PanelId::Partition(Key(key));
    let expected = [LEFT, partition(8), partition(9), partition(7), RIGHT];
    assert_eq!(ids(&lay_out(&job)), expected);
    let mirrored = Layout::of(&job.cabinets[0].mirrored(), &job);
    assert_eq!(
        ids(&mirrored),
        [LEFT, partition(7), partition(9), partition(8), RIGHT]
    );
}

#[test]
fn counts_that_do_not_divide_go_to_one_part() {
    let job = cabinet_with(|cabinet| {
        cabinet.size.width = mm(1000) + Length::from_counts(1);
        cabinet.opening = side_by_side(
            1,
            empty(13),
            [(partition(8), empty(12)), (partition(9), empty(11))],
        );
    });
    // 1000 - 4 * 18 = 928 mm and one count: 7 424 001 = 3 * 2 474 667, which divides; one more does not.
    let mut wider = job.clone();
    wider.cabinets[0].size.width += Length::from_counts(1);
    let counts = |job: &Job| {
        lay_out(job)
            .bays
            .iter()
            .map(|bay| bay.width.counts())
            .collect::<Vec<_>>()
    };
    assert_eq!(counts(&job), [2_474_667, 2_474_667, 2_474_667]);
    assert_eq!(counts(&wider), [2_474_667, 2_474_667, 2_474_668]);
}

#[test]
fn what_fixed_widths_leave_over_is_said() {
    let mut job = cabinet_x(|_| ());
    let Division::SideBySide(parts) = &mut job.cabinets[0].opening.division else {
        panic!("no parts");
    };
    parts.first.width = PartWidth::Fixed(mm(400));
    parts.rest[0].1.width = PartWidth::Fixed(mm(450));
    let layout = lay_out(&job);
    // 940 - 3 * 18.6 - 400 - 450 = 34.2
    let left_over = um(34_200);
    assert_eq!(
        layout.open_points,
        [OpenPoint::Widths {
            opening: Key(1),
            left_over
        }]
    );
    assert_eq!(layout.bays[0].width, mm(400));
}

#[track_caller]
fn check_no_space(width: i32, height: i32, depth: i32, expected: &[OpenPoint]) {
    let job = job_with(|job| {
        board_18(job).thickness.value = mm(60);
        job.cabinets[0].carcass.back = Back::Rabbet { run: mm(60) };
        job.cabinets[0].size = Size {
            width: mm(width),
            height: mm(height),
            depth: mm(depth),
        };
    });
    assert_eq!(lay_out(&job).open_points, expected);
}

#[test]
fn opening_without_width_height_or_depth_is_said() {
    let said = [OpenPoint::NoSpace { opening: Key(1) }];
    check_no_space(121, 121, 61, &[]);
    check_no_space(120, 121, 61, &said);
    check_no_space(121, 120, 61, &said);
    check_no_space(121, 121, 60, &said);
}

#[test]
fn partition_past_a_fixed_shelf_stands_at_its_underside() {
    // The shelf of 16 board lies from 328 to 344.
    let mut partition = partition(9);
    partition.foot.runs_past = true;
    let mut shelf = fixed_shelf(8, ShelfHeight::Hole(HolePlace::foot(11)));
    shelf.board = CardId::known("board-16");
    let above = side_by_side(12, empty(13), [(partition, empty(14))]);
    let job = cabinet_with(|cabinet| cabinet.opening = stacked(1, empty(11), shelf, above));
    assert_eq!(upright(&lay_out(&job), P).foot.total(), mm(328));
}

#[test]
fn mates_carry_the_other_ends_of_the_same_shelves() {
    let layout = lay_out(&cabinet_x(|_| ()));
    let [left, right] = [Hand::Left, Hand::Right].map(|hand| partition_face(9, hand));
    for (face, mate) in [(LEFT_INSIDE, left), (right, RIGHT_INSIDE)] {
        assert_eq!(layout.mate(face, layout.height(1)), Some(mate));
        assert_eq!(layout.mate(mate, layout.height(1)), Some(face));
    }
    assert_eq!(layout.mate(LEFT_INSIDE.behind(), layout.height(1)), None);
    let inner: Vec<_> = layout.inner_faces().collect();
    assert_eq!(inner, [LEFT_INSIDE, left, right, RIGHT_INSIDE]);
}
