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
    // 800 - 1.5 - 1.5 - 2 * 3 is 791; a third of it is 263.67.
    let third = mm(791).split(3).next().unwrap();
    let feet = [0, 1, 2].map(|at| um(1_500) + (third + mm(3)) * at);
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
