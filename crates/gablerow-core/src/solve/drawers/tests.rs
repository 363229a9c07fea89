//! Drawers against common practice, published stacks and geometry.

mod other_searches;

use super::*;
use crate::grid::{Grid, HoleNumber, Run};
use crate::measure::Length;
use crate::solve::Interval;

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

/// A field of a height with gap 3 and reveals 1.5.
fn field(height_um: i32) -> Field {
    Field {
        foot: Length::ZERO,
        head: um(height_um),
        reveal_foot: um(1_500),
        reveal_head: um(1_500),
        gap: mm(3),
    }
}

fn heights(fronts: &Fronts) -> Vec<Length> {
    fronts
        .fronts
        .iter()
        .map(|front| front.height.total())
        .collect()
}

#[track_caller]
fn splits(height_um: i32, way: Split<'_>, expected_um: &[i32]) -> Fronts {
    let fronts = split(&field(height_um), way).unwrap();
    let expected: Vec<Length> = expected_um.iter().map(|&height| um(height)).collect();
    assert_eq!(heights(&fronts), expected);
    fronts
}

/// A stack 800 high between a bottom of 18.6 and a stretcher at 781.4, on fronts from these feet.
fn stack(feet: &[Length]) -> Stack<'_> {
    Stack {
        grid: Grid { first: mm(16) },
        holes: run(1, 25),
        barred: &[],
        feet,
        line: mm(12),
        clear: Clearances {
            below: mm(15),
            between: mm(25),
            above: mm(10),
        },
        floor: um(18_600),
        ceiling: um(781_400),
        fixed: &[],
        distances: Distances {
            wanted: mm(35),
            least: mm(18),
            most: mm(54),
        },
        step: mm(8),
        box_least: mm(40),
    }
}

fn holes(plan: &StackPlan) -> Vec<u16> {
    plan.drawers
        .iter()
        .map(|drawer| drawer.hole.get())
        .collect()
}

/// In tenths of a millimetre, to the nearest.
fn tenths(length: Length) -> i32 {
    (length + um(50)).div_floor(um(100))
}

// rule-modules. Common practice: 25 pitches in 3 drawers are 9, 8 and 8; fronts 285, 253, 253.
#[test]
fn whole_pitches_are_shared_and_the_lowest_gets_one_more() {
    let fronts = splits(800_000, Split::Automatic(3), &[285_000, 253_000, 253_000]);
    assert_eq!(fronts.feet(), [1_500, 289_500, 545_500].map(um));
    assert_eq!(fronts.rest, Length::ZERO);
    assert_eq!(
        fronts.fronts[1]
            .foot
            .show(crate::measure::Unit::Millimetre)
            .to_string(),
        "289.5 = 1.5 (reveal at the foot) + 285.0 (fronts below) + 3.0 (gaps below)"
    );
    let given = splits(
        800_000,
        Split::Modules(&[9, 8, 8]),
        &[285_000, 253_000, 253_000],
    );
    assert_eq!(given, fronts);
}

// stack-front: F = 32m - gap. Source: davelers.com/32mm/4988.html; dalrun.com/32mm/Drawers (two pages).
#[test]
fn a_front_of_whole_pitches_is_one_gap_less() {
    for (module, height) in [
        (4, 125),
        (5, 157),
        (6, 189),
        (7, 221),
        (8, 253),
        (9, 285),
        (10, 317),
    ] {
        let high = i32::from(module) * 32_000;
        splits(high, Split::Modules(&[module]), &[height * 1_000]);
    }
}

// stack-height. Derived: 157 + 3 + 221 + 3 + 381 + 3 = 768 with no reveal at the foot and one of 3 at the head.
#[test]
fn modules_fill_a_field_flush_at_the_foot() {
    let flush = Field {
        foot: Length::ZERO,
        head: mm(768),
        reveal_foot: Length::ZERO,
        reveal_head: mm(3),
        gap: mm(3),
    };
    let fronts = split(&flush, Split::Modules(&[12, 7, 5])).unwrap();
    assert_eq!(heights(&fronts), [381, 221, 157].map(mm));
    assert_eq!(fronts.rest, Length::ZERO);
}

// stack-2195. Source: a shelving maker's page: 96 + 11 + 4 fronts of 221 and 4 gaps of 3 + 1181 + 11.
#[test]
fn a_published_stack_of_four_drawers_and_a_door_is_met() {
    let field = Field {
        foot: mm(96),
        head: mm(2_195),
        reveal_foot: mm(11),
        reveal_head: mm(11),
        gap: mm(3),
    };
    let fronts = split(&field, Split::Modules(&[7, 7, 7, 7, 37])).unwrap();
    assert_eq!(heights(&fronts), [221, 221, 221, 221, 1_181].map(mm));
    assert_eq!(fronts.rest, Length::ZERO);
}

#[test]
fn what_is_beyond_whole_pitches_goes_to_the_lowest_front() {
    let fronts = splits(810_000, Split::Automatic(3), &[295_000, 253_000, 253_000]);
    assert_eq!(fronts.rest, mm(10));
    assert_eq!(
        fronts.fronts[0]
            .height
            .show(crate::measure::Unit::Millimetre)
            .to_string(),
        "295.0 = 288.0 (whole pitches) - 3.0 (gap) + 10.0 (beyond whole pitches)"
    );
    // The lowest front, 10 higher, starts where it did; the others start 10 higher, which is a second pattern.
    let feet = fronts.feet();
    let mut tall = stack(&feet);
    tall.ceiling = um(791_400);
    assert_eq!(place(&tall).unwrap().patterns, [24_500, 34_500].map(um));
}

#[test]
fn equal_fronts_add_up_to_the_count() {
    let fronts = split(&field(800_000), Split::Equal(3)).unwrap();
    assert_eq!(heights(&fronts).iter().sum::<Length>(), mm(791));
    assert!(
        heights(&fronts)
            .iter()
            .all(|&height| tenths(height) == 2_637)
    );
}

#[test]
fn ratios_are_rounded_and_the_rest_goes_to_the_lowest() {
    // 791 in 3 : 2 : 2 is 339, 226, 226; in 2 : 1 : 1 it is 395.5, 197.75 and the same, rounded up to 198.
    splits(
        800_000,
        Split::Ratio(&[3, 2, 2]),
        &[339_000, 226_000, 226_000],
    );
    let fronts = splits(
        800_000,
        Split::Ratio(&[2, 1, 1]),
        &[395_000, 198_000, 198_000],
    );
    assert_eq!(fronts.rest, um(-500));
    splits(
        800_000,
        Split::Ratio(&[u32::MAX, u32::MAX]),
        &[397_000, 397_000],
    );
}

#[test]
fn fixed_fronts_leave_the_rest_to_the_others() {
    let top = [None, None, Some(mm(140))];
    splits(800_000, Split::Fixed(&top), &[325_500, 325_500, 140_000]);
    let all = [Some(mm(500)), Some(mm(294))];
    splits(800_000, Split::Fixed(&all), &[500_000, 294_000]);
}

#[test]
fn a_field_that_cannot_be_split_says_why() {
    let of = |height_um, way: Split<'_>| split(&field(height_um), way).unwrap_err();
    assert_eq!(of(800_000, Split::Equal(0)), NoFronts::Count(0));
    assert_eq!(of(800_000, Split::Equal(65)), NoFronts::Count(65));
    let by = |by| NoFronts::Misfit { by: mm(by) };
    assert_eq!(of(800_000, Split::Modules(&[9, 9, 8])), by(32));
    let short = [Some(mm(500)), Some(mm(290))];
    assert_eq!(of(800_000, Split::Fixed(&short)), by(-4));
    assert_eq!(
        of(800_000, Split::Modules(&[9, 0, 8])),
        NoFronts::Flat { front: 1 }
    );
    assert_eq!(
        of(800_000, Split::Ratio(&[1, 0])),
        NoFronts::Flat { front: 1 }
    );
    assert_eq!(
        of(800_000, Split::Ratio(&[0, 0])),
        NoFronts::Flat { front: 0 }
    );
    assert_eq!(of(60_000, Split::Automatic(3)), NoFronts::Flat { front: 1 });
    let high = [None, Some(mm(900))];
    assert_eq!(
        of(800_000, Split::Fixed(&high)),
        NoFronts::Flat { front: 0 }
    );
    let many = [u16::MAX; FRONTS_MOST];
    assert!(
        matches!(of(800_000, Split::Modules(&many)), NoFronts::Misfit { by } if by > mm(9_000))
    );
}

// Geometry, H 800, three drawers: holes 2, 11, 19, one pattern of 34.5, boxes 256, 224, 184.
#[test]
fn module_fronts_need_one_pattern() {
    let feet = [1_500, 289_500, 545_500].map(um);
    let plan = place(&stack(&feet)).unwrap();
    assert_eq!(holes(&plan), [2, 11, 19]);
    let undersides = plan.drawers.iter().map(|drawer| drawer.underside.total());
    assert_eq!(undersides.collect::<Vec<_>>(), [36, 324, 580].map(mm));
    assert_eq!(plan.patterns, [um(34_500)]);
    let rooms = plan.drawers.iter().map(|drawer| drawer.room.total());
    assert_eq!(
        rooms.collect::<Vec<_>>(),
        [263_000, 231_000, 191_400].map(um)
    );
    let heights = plan.drawers.iter().map(|drawer| drawer.height);
    assert_eq!(heights.collect::<Vec<_>>(), [256, 224, 184].map(mm));
    assert_eq!(plan.drawers[2].lost, um(7_400));
    assert_eq!(
        plan.drawers[2]
            .room
            .show(crate::measure::Unit::Millimetre)
            .to_string(),
        "191.4 = 781.4 (underside of what is fixed above) - 10.0 (clear above) - 580.0 (underside of the box)"
    );
    assert_eq!(
        plan.drawers[1]
            .distance
            .show(crate::measure::Unit::Millimetre)
            .to_string(),
        "34.5 = 336.0 (hole) - 12.0 (runner line) - 289.5 (foot of the front)"
    );
}

// Geometry: equal fronts of the same stack take holes 2, 10, 19 and three patterns: 34.5, 23.8, 45.2.
#[test]
fn equal_fronts_need_three_patterns() {
    let feet = split(&field(800_000), Split::Equal(3)).unwrap().feet();
    let plan = place(&stack(&feet)).unwrap();
    assert_eq!(holes(&plan), [2, 10, 19]);
    let patterns: Vec<i32> = plan.patterns.iter().map(|&d| tenths(d)).collect();
    assert_eq!(patterns, [238, 345, 452]);
}

// Geometry: with line 12 hole 2 loses 2.4; with line 24 the least height is 57.6, and hole 3 loses 22.4.
#[test]
fn a_high_runner_line_costs_height_below_the_lowest_box() {
    let feet = [um(1_500)];
    let plan = place(&stack(&feet)).unwrap();
    assert_eq!(
        (holes(&plan), plan.lost_below.total()),
        (vec![2], um(2_400))
    );
    let mut high = stack(&feet);
    high.line = mm(24);
    high.distances.most = mm(55);
    let plan = place(&high).unwrap();
    assert_eq!(
        (holes(&plan), plan.lost_below.total()),
        (vec![3], um(22_400))
    );
    assert_eq!(
        plan.lost_below
            .show(crate::measure::Unit::Millimetre)
            .to_string(),
        "22.4 = 56.0 (underside of the lowest box) - 18.6 (floor) - 15.0 (clear below)"
    );
}

#[test]
fn a_drawer_without_a_hole_is_named_with_the_nearest_that_works() {
    let feet = [um(1_500)];
    let mut high = stack(&feet);
    high.line = mm(24);
    let refused = place(&high).unwrap_err();
    let hole = HoleNumber::new(2).unwrap();
    // 18.6 + 15 + 24 = 57.6, and hole 2 is at 48.
    let why = Blocked::Low { by: um(9_600) };
    assert_eq!(refused.drawer, 0);
    assert_eq!(refused.holes, [BlockedHole { hole, why }]);
    let nearest = refused.nearest.unwrap();
    assert_eq!(
        (holes(&nearest), nearest.patterns.clone()),
        (vec![3], vec![um(54_500)])
    );
}

#[test]
fn a_barred_hole_moves_all_drawers_of_one_pattern() {
    let feet = [1_500, 289_500, 545_500].map(um);
    let barred = [run(11, 11)];
    let mut stack = stack(&feet);
    stack.barred = &barred;
    let refused = place(&stack).unwrap_err();
    assert_eq!(refused.drawer, 1);
    assert_eq!(refused.holes[0].why, Blocked::Barred);
    assert_eq!(holes(&refused.nearest.unwrap()), [2, 12, 19]);
    stack.distances.most = mm(70);
    let plan = place(&stack).unwrap();
    assert_eq!(
        (holes(&plan), plan.patterns),
        (vec![3, 12, 20], vec![um(66_500)])
    );
}

// Geometry: hinges at 96 and 704 bar holes 2-4 and 21-23 for runners that need 14 below and 22 above.
#[test]
fn hinges_bar_the_holes_beside_them() {
    let grid = Grid { first: mm(16) };
    let barred = [96, 704].map(|at| {
        let zone = Interval::around(mm(at), mm(28));
        zone.bars(grid, mm(14), mm(22))
    });
    assert_eq!(barred, [Some(run(2, 4)), Some(run(21, 23))]);
    // 110 - 14 = 96 and 82 + 22 = 104: one hole would touch the piece at either side, and may.
    let touching = Interval::new(mm(70), mm(98));
    assert_eq!(touching.bars(grid, mm(14), mm(22)), Some(run(3, 3)));
    assert_eq!(
        Interval::new(mm(0), mm(1)).bars(grid, Length::ZERO, Length::ZERO),
        None
    );
}

#[test]
fn a_fixed_shelf_between_drawers_takes_its_clearances() {
    let feet = [1_500, 289_500, 545_500].map(um);
    let shelf = [Interval::new(mm(280), um(298_600))];
    let mut stack = stack(&feet);
    stack.fixed = &shelf;
    let plan = place(&stack).unwrap();
    assert_eq!(holes(&plan), [2, 11, 19]);
    // 280 - 10 - 36 = 234; and 324 is over 298.6 + 15.
    assert_eq!(plan.drawers[0].room.total(), mm(234));
    let shelf = [Interval::new(mm(280), um(309_100))];
    stack.fixed = &shelf;
    let refused = place(&stack).unwrap_err();
    assert_eq!(
        (refused.drawer, refused.holes[0].why),
        (1, Blocked::Fixed(shelf[0]))
    );
}

#[test]
fn boxes_too_low_to_make_are_offered_lower() {
    let feet = [1_500, 65_500].map(um);
    let refused = place(&stack(&feet)).unwrap_err();
    assert_eq!((refused.drawer, refused.holes[0].why), (1, Blocked::NoRoom));
    let nearest = refused.nearest.unwrap();
    assert_eq!(
        holes(&nearest),
        [2, 5],
        "the next box up leaves room for the lowest"
    );
    let mut low = stack(&feet);
    low.ceiling = mm(140);
    let refused = place(&low).unwrap_err();
    assert_eq!(refused.drawer, 0);
    let nearest = refused.nearest.unwrap();
    assert!(
        nearest
            .drawers
            .iter()
            .any(|drawer| drawer.height < low.box_least)
    );
}

#[test]
fn what_cannot_be_built_at_all_has_no_nearest() {
    let feet = [um(1_500)];
    let mut stack = stack(&feet);
    stack.ceiling = mm(40);
    let refused = place(&stack).unwrap_err();
    assert_eq!((refused.drawer, refused.nearest), (0, None));
    stack.holes = run(1, 1);
    assert_eq!(place(&stack).unwrap_err().holes[0].why, Blocked::OffRow);
}

#[test]
fn a_stack_without_drawers_has_a_plan() {
    let plan = place(&stack(&[])).unwrap();
    assert_eq!((plan.drawers.len(), plan.patterns.len()), (0, 0));
}

#[test]
fn box_heights_without_a_step_are_as_they_come() {
    let feet = [um(1_500)];
    let mut stack = stack(&feet);
    stack.step = Length::ZERO;
    let plan = place(&stack).unwrap();
    assert_eq!(
        (plan.drawers[0].height, plan.drawers[0].lost),
        (um(735_400), Length::ZERO)
    );
}
