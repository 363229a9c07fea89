//! How doors hang: plates, arms, cups.

use super::{front_of, parts};
use crate::arbitrary::*;
use crate::cards::{CountChart, PlateShape};
use crate::job::{FrontKind, Hand, HolePlace, Inset, Job, Key};
use crate::measure::Length;
use crate::parts::{Arm, Hanging, Missing};

/// The hanging of the only door of cabinet X, which is in its left bay.
fn hanging(change: impl FnOnce(&mut Job)) -> Hanging {
    let job = cabinet_x(|job| {
        put_fronts(job, 11, vec![door(34, Hand::Left)]);
        bay_of(job, 11).plates = vec![plate(20, Hand::Left, 3), plate(21, Hand::Left, 22)];
        change(job);
    });
    parts(&job).fronts[0].hanging.clone().unwrap()
}

// Geometry: wanted 18.6 - 1.5 = 17.1; arm 15, tab 4, plate 2 is 17.0; cup centre 17.5 + 4.
#[test]
fn door_over_a_side_takes_the_full_arm() {
    let hanging = hanging(|_| ());
    let fit = hanging.fit.unwrap();
    assert_eq!(hanging.arm, Arm::Full);
    assert_eq!(hanging.wanted.total(), um(17_100));
    assert_eq!([fit.tab, fit.plate], [mm(4), mm(2)]);
    assert_eq!(
        (fit.residual, fit.cup_centre.total()),
        (um(-100), um(21_500))
    );
}

// Geometry: wanted (18.6 - 3) / 2 = 7.8; arm 6, tab 4, plate 2 is 8.0.
#[test]
fn doors_that_share_a_partition_take_the_half_arm() {
    let hanging = hanging(|job| {
        put_fronts(job, 11, vec![door(34, Hand::Right)]);
        put_fronts(job, 12, vec![door(35, Hand::Right)]);
        bay_of(job, 11)
            .plates
            .iter_mut()
            .for_each(|plate| plate.wall = Hand::Right);
    });
    let fit = hanging.fit.unwrap();
    assert_eq!(
        (hanging.arm, hanging.wanted.total()),
        (Arm::Half, um(7_800))
    );
    assert_eq!([fit.tab, fit.plate, fit.residual], [mm(4), mm(2), um(200)]);
}

// Geometry: with a gap of 0 each has 18.6 / 2 = 9.3; arm 6, tab 3.5, plate 0 is 9.5 and no other is nearer.
#[test]
fn doors_that_touch_over_a_partition_take_the_half_arm() {
    let hanging = hanging(|job| {
        job.shop.fronts.gap = mm(0);
        put_fronts(job, 11, vec![door(34, Hand::Right)]);
        put_fronts(job, 12, vec![door(35, Hand::Right)]);
        bay_of(job, 11)
            .plates
            .iter_mut()
            .for_each(|plate| plate.wall = Hand::Right);
    });
    assert_eq!(
        (hanging.arm, hanging.wanted.total()),
        (Arm::Half, um(9_300))
    );
    assert_eq!(hanging.fit.unwrap().residual, um(200));
}

// Geometry: gap 2, arm -3: tab 3, plate 2 is -2.
#[test]
fn door_inside_the_opening_takes_the_inset_arm() {
    let hanging = hanging(|job| bay_of(job, 11).inset = Some(Inset::default()));
    let fit = hanging.fit.unwrap();
    assert_eq!((hanging.arm, hanging.wanted.total()), (Arm::Inset, mm(-2)));
    assert_eq!([fit.tab, fit.plate, fit.residual], [mm(3), mm(2), mm(0)]);
}

// Geometry: door 1245 high from 1.5; plates at 96, 640, 1152: cups 94.5, 638.5, 1150.5 from the foot; 1150.5, 606.5,
// 94.5 from the head. At 1280 the middle one is in the middle.
#[test]
fn middle_cup_out_of_the_middle_makes_the_door_handed() {
    let tall = |height: i32, middle: i16| {
        hanging(|job| {
            job.cabinets[0].size.height = mm(height);
            let mut top = plate(22, Hand::Left, 1);
            top.hole = HolePlace::head(4);
            bay_of(job, 11).plates =
                vec![top, plate(20, Hand::Left, 3), plate(21, Hand::Left, middle)];
        })
    };
    let odd = tall(1248, 20);
    let of = |value: fn(&crate::solve::hinges::Cup) -> Length| -> Vec<Length> {
        odd.cups.cups.iter().map(value).collect()
    };
    assert_eq!(
        of(|cup| cup.from_foot.total()),
        [um(94_500), um(638_500), um(1_150_500)]
    );
    assert_eq!(
        of(|cup| cup.from_head.total()),
        [um(1_150_500), um(606_500), um(94_500)]
    );
    assert_eq!(odd.holes, [3, 20, 36]);
    assert!(odd.cups.handed);
    assert!(!tall(1280, 20).cups.handed);
}

#[test]
fn plate_in_line_has_its_cup_at_its_hole() {
    let hanging = hanging(|job| job.cards.hinges[0].plate = PlateShape::InLine);
    assert_eq!(hanging.cups.cups[0].from_foot.total(), um(78_500));
}

#[test]
fn plates_that_serve_another_door_or_lie_beyond_it_are_not_its_own() {
    let job = cabinet_x(|job| {
        let mut lower = door(34, Hand::Left);
        lower.height = crate::job::FrontHeight::Modules(12);
        put_fronts(job, 11, vec![lower, door(35, Hand::Left)]);
        let mut plates = vec![
            plate(20, Hand::Left, 3),
            plate(21, Hand::Left, 10),
            plate(22, Hand::Left, 14),
            plate(23, Hand::Left, 22),
            plate(24, Hand::Right, 5),
        ];
        plates[1].serves = Some(Key(35));
        bay_of(job, 11).plates = plates;
    });
    let parts = parts(&job);
    let holes = |at: usize| parts.fronts[at].hanging.as_ref().unwrap().holes.clone();
    assert_eq!((holes(0), holes(1)), (vec![3], vec![10, 14, 22]));
}

#[test]
fn each_leaf_of_a_pair_hangs_on_its_own_plates() {
    let job = cabinet_x(|job| {
        put_fronts(job, 1, vec![door(34, Hand::Left)]);
        front_of(job, 34, |front| front.kind = FrontKind::Pair);
        bay_of(job, 11).plates = vec![plate(20, Hand::Left, 3), plate(21, Hand::Left, 22)];
        bay_of(job, 12).plates = vec![plate(22, Hand::Right, 4)];
    });
    let parts = parts(&job);
    let holes: Vec<_> = parts
        .fronts
        .iter()
        .map(|leaf| leaf.hanging.as_ref().unwrap().holes.clone())
        .collect();
    assert_eq!(holes, [vec![3, 22], vec![4]]);
}

// Source of the count: common practice; 640 x 1000 of 19 at 650 kg/m3 is 7.90 kg, which asks for 3, and 1 for its width.
#[test]
fn count_of_hinges_is_that_of_the_chart_of_the_card() {
    let asked = |chart| {
        let hanging = hanging(|job| {
            job.cards.hinges[0].chart = chart;
            job.cards
                .boards
                .iter_mut()
                .for_each(|board| board.density.value = 650);
            let cabinet = &mut job.cabinets[0];
            // (640 + 1.5) * 2 wide, so that the partition's half and the side make a door of 640.
            cabinet.size.width = mm(2 * 640 + 6);
            cabinet.size.height = mm(1_003);
            put_fronts(job, 12, vec![door(35, Hand::Right)]);
        });
        assert_eq!(hanging.chart, chart);
        hanging.asked.unwrap().hinges
    };
    assert_eq!(CountChart::ALL.map(asked), [4, 3, 3]);
}

#[test]
fn hinge_without_plates_in_stock_is_missing() {
    let job = cabinet_x(|job| {
        put_fronts(job, 11, vec![door(34, Hand::Left)]);
        bay_of(job, 11).plates = vec![plate(20, Hand::Left, 3)];
        job.cards.hinges[0].plates = Vec::new();
    });
    let cabinet = &job.cabinets[0];
    let layout = crate::layout::Layout::of(cabinet, &job);
    let parts = crate::parts::Parts::of(cabinet, &layout, &job);
    assert_eq!(parts.missing, [Missing::Stock { front: Key(34) }]);
}
