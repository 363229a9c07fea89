//! Hinges against common practice, published pages and geometry.

mod other_searches;

use super::*;
use crate::cards::PlateShape;
use crate::grid::{Grid, HoleNumber, Run};
use crate::measure::Length;
use crate::solve::Interval;
use crate::strength::mass_kg;

fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

fn um(um: i32) -> Length {
    Length::from_um(um)
}

fn run(first: i32, last: i32) -> Run {
    let [first, last] = [first, last].map(|hole| HoleNumber::new(hole).unwrap());
    Run::new(first, last).unwrap()
}

/// A free row of so many holes from 16 up.
fn row(holes: i32) -> HingeRow<'static> {
    HingeRow {
        grid: Grid { first: mm(16) },
        holes: run(1, holes),
        taken: &[],
        barred: &[],
        plate: PlateShape::AlongRow,
        half_zone: mm(28),
    }
}

/// The door of a cabinet of a height, with reveals of 1.5.
fn door(height: i32) -> Door {
    Door {
        foot: um(1_500),
        height: mm(height - 3),
    }
}

#[track_caller]
fn placed(row: &HingeRow<'_>, door: Door, count: u8, expected: &[i32]) {
    let expected: Vec<Length> = expected.iter().map(|&z| mm(z)).collect();
    assert_eq!(place(row, door, count, END_LEAST).centres(), expected);
}

fn from_foot(cups: &DoorCups) -> Vec<Length> {
    cups.cups.iter().map(|cup| cup.from_foot.total()).collect()
}

// rule-chart. Common practice. The two others by one page of a maker each.
#[test]
fn charts_disagree_about_a_wide_door() {
    let [width, height] = [640, 1_000].map(mm);
    let door = DoorFacts {
        width,
        height,
        cabinet_height: height,
        mass_kg: mass_kg(width, height, mm(19), 650.0),
    };
    let counts = CHARTS.map(|chart| count(&chart, &door).hinges);
    assert_eq!(counts, [4, 3, 3]);
    let house = count(&CHARTS[0], &door);
    assert_eq!((house.by_height, house.by_mass, house.wide), (3, 3, true));
}

// rule-chart. Common practice: 900 / 1600 / 2000 / 2400 and 6 / 12 / 17 / 22, the larger; one more over 600 wide.
#[test]
fn the_house_chart_includes_its_own_figures() {
    let door = |width, height, mass_kg| DoorFacts {
        width: mm(width),
        height: mm(height),
        cabinet_height: mm(height),
        mass_kg,
    };
    let house = |width, height, mass| count(&CHARTS[0], &door(width, height, mass));
    let hinges = |width, height, mass| house(width, height, mass).hinges;
    assert_eq!(hinges(600, 900, 6.0), 2);
    assert_eq!(hinges(600, 901, 6.0), 3);
    assert_eq!(hinges(600, 900, 6.1), 3);
    assert_eq!(hinges(601, 900, 6.0), 3);
    assert_eq!(hinges(600, 2_400, 1.0), 5);
    assert_eq!(hinges(300, 800, 17.1), 5);
    assert_eq!(house(600, 2_400, 22.0).beyond, Beyond::default());
    let high = Beyond {
        height: true,
        mass: false,
    };
    assert_eq!(house(600, 2_401, 22.0).beyond, high);
    assert_eq!(hinges(600, 2_401, 30.0), 5, "its last row");
}

// count-inch: cabinet height to 40 / 60 / 80 / 100 in, or mass under 15 / 30 / 45 / 60 lb. Source: one hinge maker's chart.
#[test]
fn the_inch_chart_goes_by_the_cabinet_and_leaves_its_masses_out() {
    let door = |inches: i32, pounds: f64| DoorFacts {
        width: mm(700),
        height: mm(9_000),
        cabinet_height: Length::from_inch_64ths(inches * 64),
        mass_kg: pounds * 0.453_592_37,
    };
    let hinges = |inches, pounds| count(&CHARTS[1], &door(inches, pounds)).hinges;
    assert_eq!(hinges(40, 14.9), 2);
    assert_eq!(hinges(41, 14.9), 3);
    assert_eq!(hinges(40, 15.0), 3);
    assert_eq!(hinges(100, 44.0), 5);
}

// count-kg: 4-6 kg 2, 6-12 kg 3, at 650 one more. Source: one hinge maker's advice page.
#[test]
fn the_mass_chart_takes_another_from_650() {
    let door = |width, mass_kg| DoorFacts {
        width: mm(width),
        height: mm(2_000),
        cabinet_height: mm(2_000),
        mass_kg,
    };
    let count = |width, mass| count(&CHARTS[2], &door(width, mass));
    assert_eq!([649, 650].map(|width| count(width, 7.9).hinges), [3, 4]);
    assert_eq!(count(600, 6.0).hinges, 2);
    assert_eq!(count(600, 6.0).by_height, 0);
    assert!(count(600, 12.1).beyond.mass);
}

const PLATES: [Length; 3] = [Length::ZERO, Length::from_mm(2), Length::from_mm(4)];

fn card(arm: i32, plates: &[Length]) -> OverlayCard<'_> {
    OverlayCard {
        arm: mm(arm),
        tab_least: mm(3),
        tab_most: mm(7),
        tab_step: um(500),
        plates,
        cup: CUP_DIAMETER,
    }
}

// Geometry: arm + tab - plate for an outer upright, a shared partition of 18.6 and an inset door.
#[test]
fn tab_and_plate_come_nearest_to_the_overlay() {
    let [thickness, reveal] = [18_600, 1_500].map(um);
    let outer = Mount::Outer { thickness, reveal };
    let shared = Mount::Shared {
        thickness,
        gap: mm(3),
    };
    let inset = Mount::Inset { gap: mm(2) };
    for (arm, mount, wanted, tab, plate, residual) in [
        (15, outer, 17_100, 4, 2, -100),
        (6, shared, 7_800, 4, 2, 200),
        (-3, inset, -2_000, 3, 2, 0),
    ] {
        let sum = overlay_wanted(mount);
        assert_eq!(sum.total(), um(wanted));
        let fit = fit_overlay(&card(arm, &PLATES), sum.total()).unwrap();
        assert_eq!((fit.tab, fit.plate), (mm(tab), mm(plate)));
        assert_eq!(fit.residual, um(residual));
        assert_eq!(fit.overlay.total() - sum.total(), fit.residual);
    }
    assert_eq!(
        overlay_wanted(shared)
            .show(crate::measure::Unit::Millimetre)
            .to_string(),
        "7.8 = 9.3 (half the partition) - 1.5 (half the gap)"
    );
}

#[test]
fn no_plate_in_stock_gives_no_overlay() {
    assert_eq!(fit_overlay(&card(15, &[]), mm(17)), None);
}

// hinge-plate. Source: woodweb "Odd Cabinet Heights"; davelers.com/32mm/4988.html (two pages).
#[test]
fn a_plate_on_holes_1_and_2_is_midway_between_them() {
    let mut row = row(20);
    row.grid.first = um(46_500);
    let at = row.legal(Length::ZERO, mm(100))[0];
    assert_eq!((at.hole.get(), at.centre), (1, um(62_500)));
    row.plate = PlateShape::InLine;
    assert_eq!(row.legal(Length::ZERO, mm(100))[0].centre, um(46_500));
}

// Geometry: H 800, o 16, reveals 1.5: plates at 96 and 704, cups at 94.5 from either end.
#[test]
fn two_hinges_stand_alike_from_both_ends() {
    placed(&row(25), door(800), 2, &[96, 704]);
    let cups = cups(door(800), &[96, 704].map(mm));
    assert_eq!(from_foot(&cups), [94_500, 702_500].map(um));
    assert_eq!(cups.cups[1].from_head.total(), um(94_500));
    assert!(!cups.handed);
}

// Geometry: H 1248, target 624 is a tie, and the higher one makes the door handed; at H 1280 the middle is a place.
#[test]
fn a_tie_goes_to_the_higher_hole() {
    placed(&row(39), door(1_248), 3, &[96, 640, 1_152]);
    let placement = place(&row(39), door(1_248), 3, END_LEAST);
    assert_eq!(placement.plates[1].at.hole.get(), 20);
    assert_eq!(placement.plates[1].target, mm(624));
    assert_eq!(placement.plates[1].centre.total(), mm(640));
    assert_eq!(
        placement.distances().collect::<Vec<_>>(),
        [544, 512].map(mm)
    );
    assert_eq!(placement.span(), mm(1_056));

    let handed = cups(door(1_248), &placement.centres());
    assert_eq!(from_foot(&handed), [94_500, 638_500, 1_150_500].map(um));
    let from_head: Vec<Length> = handed
        .cups
        .iter()
        .map(|cup| cup.from_head.total())
        .collect();
    assert_eq!(from_head, [1_150_500, 606_500, 94_500].map(um));
    assert!(handed.handed);

    placed(&row(40), door(1_280), 3, &[96, 640, 1_184]);
    assert!(!cups(door(1_280), &[96, 640, 1_184].map(mm)).handed);
}

// Geometry: reveals 0 and 4 on H 800 put the cups 96 from the foot and 92 from the head.
#[test]
fn unlike_reveals_make_a_door_handed() {
    let door = Door {
        foot: Length::ZERO,
        height: mm(796),
    };
    let cups = cups(door, &[96, 704].map(mm));
    assert_eq!((cups.asymmetry, cups.handed), (mm(4), true));
}

#[test]
fn a_plate_moves_off_a_fixed_shelf_and_taken_holes() {
    let shelf = [Interval::new(mm(390), mm(409))];
    let mut row = row(25);
    row.barred = &shelf;
    // 384 and 416 have the shelf in their 28 either way; 352 and 448 are equally far from 400.
    placed(&row, door(800), 3, &[96, 448, 704]);
    let taken = [run(14, 15)];
    row.taken = &taken;
    placed(&row, door(800), 3, &[96, 352, 704]);
}

/// Bars every place of a free row but those with these middles, all multiples of 32.
fn but(middles: &[i32], to: i32) -> Vec<Interval> {
    let places = (1..=to / 32).map(|at| at * 32);
    let barred = places.filter(|place| !middles.contains(place));
    barred
        .map(|place| Interval::around(mm(place), mm(1)))
        .collect()
}

// Targets 288 and 480. 352 and 608 are 64 and 128 off, 192 and 384 are 96 and 96 off: as much in all.
#[test]
fn of_two_sums_alike_the_one_with_the_smaller_largest_deviation_wins() {
    let barred = but(&[96, 192, 352, 384, 608, 672], 768);
    let mut row = row(24);
    row.barred = &barred;
    placed(&row, door(768), 4, &[96, 192, 384, 672]);
}

// Targets 416 and 576. 320 and 512, and 480 and 672, are 160 off in all; 480 and 512 were less, but meet.
#[test]
fn places_of_two_best_answers_are_not_mixed() {
    let barred = but(&[96, 256, 320, 480, 512, 672, 736], 832);
    let mut row = row(26);
    row.barred = &barred;
    placed(&row, door(832), 5, &[96, 256, 480, 672, 736]);
}

#[test]
fn a_zone_that_only_touches_is_legal() {
    let touching = [
        Interval::new(mm(124), mm(143)),
        Interval::new(mm(40), mm(68)),
    ];
    let mut row = row(25);
    row.barred = &touching;
    placed(&row, door(800), 2, &[96, 704]);
}

#[test]
fn as_many_as_find_room_are_placed() {
    let placement = place(&row(25), door(800), 20, END_LEAST);
    assert_eq!((placement.asked, placement.plates.len()), (20, 12));
    // From 28 within either end, 32 to 768: eleven times 64, and 32 to spare.
    assert_eq!((placement.end_least, placement.span()), (mm(28), mm(736)));
    assert!(placement.distances().all(|distance| distance >= mm(64)));
    placed(&row(25), door(800), 1, &[416]);
    placed(&row(25), door(800), 0, &[]);
    placed(&row(1), door(800), 2, &[]);
}

#[test]
fn a_short_door_keeps_the_count_rather_than_its_ends() {
    let placement = place(&row(5), door(160), 2, END_LEAST);
    assert_eq!(placement.centres(), [32, 128].map(mm));
    assert_eq!(placement.end_least, mm(28));
}

// Geometry, H 800: left 96 and 640, right 160 and 704; cups 94.5 and 638.5, the other door is the same upside down.
#[test]
fn one_pattern_serves_two_doors_on_one_partition() {
    let found = opposed(&row(25), &row(25), door(800), 2, END_LEAST).unwrap();
    let z = |places: &[LegalCentre]| places.iter().map(|at| at.centre).collect::<Vec<_>>();
    assert_eq!(z(&found.left), [96, 640].map(mm));
    assert_eq!(z(&found.right), [160, 704].map(mm));
    assert_eq!(from_foot(&found.cups), [94_500, 638_500].map(um));
    let right = cups(door(800), &z(&found.right));
    let turned = right.cups.iter().rev().map(|cup| cup.from_head.total());
    assert_eq!(turned.collect::<Vec<_>>(), from_foot(&found.cups));
}

#[test]
fn doors_off_the_grid_have_no_common_pattern() {
    let mut door = door(800);
    door.height = mm(796);
    let found = opposed(&row(25), &row(25), door, 2, END_LEAST);
    assert_eq!(found, Err(NoOpposed::OffGrid { by: mm(-1) }));
}

#[test]
fn doors_too_short_for_a_pattern_say_how_many_find_room() {
    let found = opposed(&row(10), &row(10), door(320), 6, END_LEAST);
    assert_eq!(found, Err(NoOpposed::NoRoom { most: 1 }));
    let found = opposed(&row(2), &row(2), door(64), 1, END_LEAST);
    assert_eq!(found, Err(NoOpposed::NoRoom { most: 0 }));
}
