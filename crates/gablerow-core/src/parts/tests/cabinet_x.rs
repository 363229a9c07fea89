//! Parts of a cabinet 940 x 800 x 530 of board measured 18.6: two bays and a partition.

use super::{bagged, cut, finished, panel, parts, totals};
use crate::arbitrary::*;
use crate::cards::CardId;
use crate::job::{
    Back, BackRail, Band, Fastener, Fit, Hand, Inset, Job, JointBore, Key, PinRows, ShelfHeight,
    Stand, TopKind,
};
use crate::measure::Length;
use crate::parts::{BagKind, Banded, Missing};

fn stack(change: impl FnOnce(&mut Job)) -> Job {
    cabinet_x(|job| {
        let right = bay_of(job, 12);
        right.runners = vec![runner(31, 2, 500), runner(32, 11, 500), runner(33, 19, 500)];
        put_fronts(job, 12, vec![drawer(34, 9), drawer(35, 8), drawer(36, 8)]);
        change(job);
    })
}

// Geometry: holes 48, 336, 592 less line 12; 324 - 25 - 36 = 263, 231, 781.4 - 10 - 580 = 191.4, in steps of 8.
#[test]
fn three_boxes_share_one_distance_to_their_fronts() {
    let parts = parts(&stack(|_| ()));
    let of = |value: fn(&crate::parts::BoxPart) -> Length| -> Vec<Length> {
        parts.boxes.iter().map(value).collect()
    };
    assert_eq!(
        of(|made| made.underside.total()),
        [mm(36), mm(324), mm(580)]
    );
    assert_eq!(of(|made| made.rise.total()), [um(34_500); 3]);
    assert_eq!(
        of(|made| made.room.total()),
        [mm(263), mm(231), um(191_400)]
    );
    assert_eq!(of(|made| made.height), [mm(256), mm(224), mm(184)]);
    // Down to the bottom, 18.6 thick.
    assert_eq!(
        of(|made| made.clear_below.total()),
        [um(17_400), um(305_400), um(561_400)]
    );
}

// Geometry: 442.1 - 42 = 400.1; with sides of 16 432.1, 5 on either side; 400.1 + 2 * 6 - 1 = 411.1; side-mount 442.1 - 25.4.
// Source of 42 and 25.4: box makers' measuring pages.
#[test]
fn box_is_as_wide_as_its_runners_leave_it() {
    let with = |card: &str| {
        parts(&stack(|job| {
            job.shop.boxes.groove = mm(6);
            job.shop.box_board = Some(CardId::known("board-16"));
            for runner in &mut bay_of(job, 12).runners {
                runner.card = CardId::known(card);
            }
        }))
    };
    let under = &with("runner-under").boxes[0];
    assert_eq!(
        [under.inside.total(), under.outside.total(), under.side_gap],
        [um(400_100), um(432_100), mm(5)]
    );
    assert_eq!(totals(&under.bottom), [um(411_100), mm(474)]);
    assert_eq!(under.length.total(), mm(490));
    let parts = with("runner-side");
    let beside = &parts.boxes[0];
    assert_eq!(
        [
            beside.inside.total(),
            beside.outside.total(),
            beside.side_gap
        ],
        [um(384_700), um(416_700), um(12_700)]
    );
    assert_eq!(beside.length.total(), mm(500));
    assert_eq!(bagged(&parts, BagKind::FrontConnector), (0, 0));
}

// Geometry: 522.8 - 18 - 42 = 462.8, moved by 9.
#[test]
fn spacer_narrows_the_box_and_moves_it_by_half() {
    let job = stack(|job| {
        job.cabinets[0].size.width = um(2 * 522_800 + 3 * 18_600);
        bay_of(job, 12).runners[0].spacers.left = mm(18);
    });
    let parts = parts(&job);
    let [packed, plain, _] = &parts.boxes[..] else {
        panic!("{:?}", parts.boxes);
    };
    assert_eq!((packed.inside.total(), packed.moved), (um(462_800), mm(9)));
    assert_eq!((plain.inside.total(), plain.moved), (um(480_800), mm(0)));
}

// Geometry: the rail hangs 60 below the stretchers at 781.4 and the box, 2 + 490 from the front, ends before it at 495.4.
#[test]
fn box_passes_under_what_it_meets_and_no_more() {
    let top = |depth: Length| {
        let job = stack(|job| {
            job.cabinets[0].carcass.rail = Some(BackRail {
                board: CardId::known("board-18"),
                height: mm(60),
            });
            job.cabinets[0].size.depth = depth;
        });
        parts(&job).boxes[2].room.total()
    };
    assert_eq!(top(mm(560)), um(191_400));
    assert_eq!(top(mm(530)), um(131_400));
    let mut job = stack(|_| ());
    bay_of(&mut job, 12).shelves.push(shelf(40, 24));
    // The shelf's underside: 16 + 23 * 32 + 2.5 = 754.5; less 10 and 580 it is 164.5.
    assert_eq!(parts(&job).boxes[2].room.total(), um(164_500));
    // One on hole 17, 530.5 to 549.1, is 30.9 under the box at 580.
    bay_of(&mut job, 12).shelves[0].hole = crate::job::HolePlace::foot(17);
    assert_eq!(parts(&job).boxes[2].clear_below.total(), um(30_900));
}

#[test]
fn drawer_behind_a_door_has_a_box_in_its_room() {
    let job = cabinet_x(|job| {
        bay_of(job, 11).runners = vec![runner(31, 3, 450)];
        let mut inner = drawer(35, 8);
        inner.kind = crate::job::FrontKind::Inner;
        put_fronts(job, 11, vec![door(34, Hand::Left), inner]);
        bay_of(job, 11).plates = vec![plate(20, Hand::Left, 2), plate(21, Hand::Left, 23)];
    });
    let parts = parts(&job);
    let made = &parts.boxes[0];
    assert!(made.inner);
    // Hole 3 at 80, less 12 and the floor at 18.6.
    assert_eq!(made.rise.total(), um(49_400));
    assert_eq!(parts.fronts.len(), 1);
    assert_eq!(parts.missing, []);
}

#[test]
fn what_drawers_and_doors_lack_is_said() {
    let job = cabinet_x(|job| {
        put_fronts(job, 11, vec![door(34, Hand::Left)]);
        put_fronts(job, 12, vec![drawer(35, 25)]);
    });
    assert_eq!(
        parts(&job).missing,
        [
            Missing::Plates { front: Key(34) },
            Missing::Runners { front: Key(35) }
        ]
    );
    let wide = cabinet_x(|job| {
        let mut front = drawer(35, 25);
        bay_of(job, 12).runners = vec![runner(31, 3, 450)];
        bay_of(job, 12).runners[0].serves = Some(Key(35));
        front.name = crate::job::Label::known("wide");
        put_fronts(job, 1, vec![front]);
    });
    let parts = parts(&wide);
    assert_eq!(parts.missing, [Missing::Bay { front: Key(35) }]);
    assert_eq!((parts.boxes.len(), parts.boxes[0].bay), (1, Key(12)));
}

#[test]
fn box_without_room_is_missing() {
    let job = stack(|job| bay_of(job, 12).runners[1].hole = crate::job::HolePlace::foot(3));
    let parts = parts(&job);
    assert_eq!(parts.boxes.len(), 1);
    assert_eq!(
        parts.missing,
        [
            Missing::Room { front: Key(34) },
            Missing::Runners { front: Key(35) }
        ]
    );
}

// Geometry: shelf 442.1 - 2 by 514 - 2 - 12; undersides 274.5 and 466.5.
// 0.4401 * 0.5 * 0.0186 * 650 = 2.66 kg; (250 - 25) / 25 * 2.66 = 23.9 kg.
#[test]
fn shelves_and_what_tips_them() {
    let job = cabinet_x(|job| bay_of(job, 11).shelves = vec![shelf(22, 15), shelf(23, 9)]);
    let parts = parts(&job);
    let [low, high] = &parts.shelves[..] else {
        panic!("{:?}", parts.shelves);
    };
    assert_eq!(finished(&low.piece), [um(440_100), mm(500)]);
    assert_eq!(
        [low.underside.total(), high.underside.total()],
        [um(274_500), um(466_500)]
    );
    assert_eq!(low.clear_below.total(), um(255_900));
    assert_eq!(low.clear_above.total(), um(173_400));
    assert_eq!(high.clear_above.total(), um(296_300));
    let strength = low.strength.unwrap();
    assert_eq!(format!("{:.2}", strength.mass_kg), "2.66");
    assert_eq!(format!("{:.1}", strength.tip_kg.unwrap()), "23.9");
}

// 880 x 420 x 19 of E 1600 under 25 kg sags 5.67, and twice that after years; the shelf weighs nothing here.
// Source of the formula: Wood Handbook FPL-GTR-190, eq. 9-2 to 9-4.
#[test]
fn shelf_sags_under_its_load_and_more_after_years() {
    let sagging = |change: fn(&mut Job)| {
        let job = cabinet_x(|job| {
            job.cabinets[0].size.width = mm(882 * 2) + um(3 * 19_000);
            let board = board_18(job);
            board.thickness.value = mm(19);
            board.density.value = 0;
            let bay = bay_of(job, 11);
            bay.shelves = vec![shelf(22, 9)];
            bay.shelves[0].load_grams = Some(25_000);
            bay.shelves[0].setback_front = mm(92);
            change(job);
        });
        let cabinet = &job.cabinets[0];
        let layout = crate::layout::Layout::of(cabinet, &job);
        crate::parts::Parts::of(cabinet, &layout, &job).shelves[0]
            .strength
            .unwrap()
    };
    let strength = sagging(|_| ());
    assert_eq!(format!("{:.2}", strength.now.unwrap()), "5.67");
    assert_eq!(format!("{:.1}", strength.later.unwrap()), "11.3");
    assert_eq!(strength.pin_kg, Some(6.25));
    let no_creep = sagging(|job| board_18(job).creep = None);
    assert_eq!((no_creep.now, no_creep.later), (strength.now, None));
    let unknown = sagging(|job| board_18(job).stiffness = None);
    assert_eq!((unknown.now, unknown.later), (None, None));
    let six = sagging(|job| bay_of(job, 11).pin_rows = PinRows::Three);
    assert_eq!(format!("{:.3}", six.pin_kg.unwrap()), "4.167");
}

#[test]
fn front_of_an_inset_bay_takes_depth_from_its_shelves() {
    let job = cabinet_x(|job| {
        let bay = bay_of(job, 11);
        bay.shelves = vec![shelf(22, 9)];
        bay.inset = Some(Inset {
            front: Some(mm(19)),
            set_in: mm(1),
        });
    });
    // 514 - 2 - 12 - 20
    assert_eq!(parts(&job).shelves[0].piece.width.total(), mm(480));
}

// Geometry: 940 - 2 * 18.6 = 902.8; bottom 902.8 x 514; back 902.8 + 2 * 8 - 1 = 917.8.
#[test]
fn carcass_panels_follow_from_finished_sizes() {
    let parts = parts(&cabinet_x(|_| ()));
    assert_eq!(finished(panel(&parts, "bottom")), [um(902_800), mm(514)]);
    assert_eq!(
        finished(panel(&parts, "partition 1")),
        [um(762_800), mm(514)]
    );
    assert_eq!(
        finished(panel(&parts, "back stretcher")),
        [um(902_800), mm(100)]
    );
    assert_eq!(parts.back.unwrap().width.total(), um(917_800));
}

// A side 530 deep with a band of 1 and a pre-mill of 0.5 is cut 529.5; without pre-mill 529.
#[test]
fn cut_is_finished_less_band_and_with_pre_mill() {
    let depth = |pre_mill| {
        let job = cabinet_x(|job| {
            job.shop.band = Band {
                pre_mill,
                ..Band::default()
            };
        });
        cut(panel(&parts(&job), "left side"))[1]
    };
    assert_eq!(depth(um(500)), um(529_500));
    assert_eq!(depth(Length::ZERO), mm(529));
}

#[test]
fn back_follows_its_seat() {
    let back = |back| {
        let made = parts(&cabinet_x(|job| job.cabinets[0].carcass.back = back)).back;
        made.map(|back| [back.width.total(), back.height.total()])
    };
    // 902.8 + 2 * 9.3 - 1
    assert_eq!(
        back(Back::Rabbet { run: mm(12) }),
        Some([um(920_400), mm(799)])
    );
    assert_eq!(back(Back::Planted), Some([mm(938), mm(798)]));
    assert_eq!(back(Back::Open), None);
}

#[test]
fn edge_stretchers_and_rail_are_as_wide_as_they_are_high() {
    let job = cabinet_x(|job| {
        let carcass = &mut job.cabinets[0].carcass;
        carcass.top.kind = TopKind::EdgeStretchers(mm(90));
        carcass.rail = Some(BackRail {
            board: CardId::known("board-16"),
            height: mm(80),
        });
    });
    let parts = parts(&job);
    let front = panel(&parts, "front stretcher");
    assert_eq!((finished(front)[1], front.banded), (mm(90), Banded::Foot));
    assert_eq!(panel(&parts, "back stretcher").banded, Banded::None);
    let rail = panel(&parts, "back rail");
    assert_eq!((finished(rail)[1], rail.thickness), (mm(80), Some(mm(16))));
}

#[test]
fn panels_across_the_sides_are_as_long_as_the_cabinet_is_wide() {
    let job = cabinet_x(|job| {
        let carcass = &mut job.cabinets[0].carcass;
        carcass.bottom.fit = Fit::Across;
        carcass.top.kind = TopKind::Panel(Fit::Across);
    });
    let parts = parts(&job);
    assert_eq!(finished(panel(&parts, "bottom"))[0], mm(940));
    assert_eq!(finished(panel(&parts, "top")), [mm(940), mm(514)]);
    assert_eq!(finished(panel(&parts, "left side"))[0], um(762_800));
}

#[test]
fn fixed_shelf_is_banded_in_front_and_named_from_the_foot() {
    let job = cabinet_with(|cabinet| {
        let upper = stacked(
            3,
            empty(12),
            fixed_shelf(9, ShelfHeight::Underside(mm(500))),
            empty(13),
        );
        let mut shelf = fixed_shelf(8, ShelfHeight::Underside(mm(300)));
        shelf.recess = mm(20);
        cabinet.opening = stacked(1, empty(11), shelf, upper);
    });
    let parts = parts(&job);
    let low = panel(&parts, "fixed shelf 1");
    assert_eq!(finished(low), [mm(564), mm(520)]);
    assert_eq!(low.banded, Banded::Front);
    assert_eq!(finished(panel(&parts, "fixed shelf 2")), [mm(564), mm(540)]);
}

#[test]
fn joints_take_their_fasteners_at_every_end() {
    let bore = |fastener| JointBore {
        x: mm(50),
        diameter: mm(8),
        depth: Some(mm(12)),
        fastener,
    };
    let job = cabinet_x(|job| {
        let bottom = &mut job.cabinets[0].carcass.bottom.joint;
        bottom.bores = vec![bore(Fastener::Dowel), bore(Fastener::Connector)];
        partition_of(job).foot.bores = vec![bore(Fastener::Dowel)];
    });
    let parts = parts(&job);
    assert_eq!(bagged(&parts, BagKind::Dowel), (3, 4));
    assert_eq!(bagged(&parts, BagKind::Connector), (2, 3));
}

#[test]
fn feet_are_more_under_a_partition_or_a_wide_cabinet() {
    let feet = |wide: i32, divided: bool| {
        let job = cabinet_with(|cabinet| {
            cabinet.size.width = mm(wide);
            cabinet.carcass.stand = Some(Stand::Feet(mm(100)));
            if divided {
                cabinet.opening = side_by_side(1, empty(11), [(partition(9), empty(12))]);
            }
        });
        bagged(&parts(&job), BagKind::Foot).0
    };
    assert_eq!([feet(900, false), feet(901, false)], [4, 6]);
    assert_eq!([feet(900, true), feet(901, true)], [6, 6]);
    assert_eq!(bagged(&parts(&cabinet_x(|_| ())), BagKind::Foot), (0, 0));
}
