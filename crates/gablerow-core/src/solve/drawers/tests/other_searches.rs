//! The search for drawers against trying everything, and against an integer program.

use good_lp::{
    Expression, ProblemVariables, Solution, SolverModel, Variable, constraint, microlp, variable,
};
use proptest::prelude::*;

use super::*;

/// A stack, as plain values.
#[derive(Clone, Debug)]
struct Case {
    holes: i32,
    barred: Vec<Run>,
    fixed: Vec<Interval>,
    feet: Vec<Length>,
    line: Length,
    distances: Distances,
    step: Length,
    box_least: Length,
}

impl Case {
    fn stack(&self) -> Stack<'_> {
        let mut stack = stack(&self.feet);
        stack.holes = run(1, self.holes);
        stack.barred = &self.barred;
        stack.fixed = &self.fixed;
        stack.line = self.line;
        stack.ceiling = Length::PITCH * self.holes;
        stack.distances = self.distances;
        stack.step = self.step;
        stack.box_least = self.box_least;
        stack
    }
}

/// Fronts mostly of whole pitches, with odd ones between, on a row that has about room for them.
fn any_case(
    drawers: core::ops::RangeInclusive<usize>,
    pitches: i32,
    range: i32,
) -> impl Strategy<Value = Case> {
    let odd = prop_oneof![4 => Just(0), 1 => 1..32_i32];
    let front = (2..=pitches, odd).prop_map(|(pitches, odd)| pitches * 32 + odd);
    let fronts = prop::collection::vec(front, drawers);
    (fronts, -10..=40_i32).prop_flat_map(move |(fronts, foot)| {
        let high: i32 = fronts.iter().sum();
        let holes = (high + foot.max(0)) / 32 + 1;
        let barred = prop::collection::vec((1..=holes, 0..=1_i32), 0..3);
        let fixed = prop::collection::vec((0..=high, 5..=30_i32), 0..2);
        let distances = (0..=40_i32, 20..=range, 0..=60_i32);
        let step = prop_oneof![3 => 0..=10_i32, 1 => Just(64)];
        let boxes = (step, 8..=60_i32);
        (barred, fixed, distances, 5..=30_i32, boxes).prop_map(
            move |(barred, fixed, (least, range, wanted), line, (step, box_least))| Case {
                holes,
                barred: barred
                    .iter()
                    .map(|&(hole, more)| run(hole, hole + more))
                    .collect(),
                fixed: fixed
                    .iter()
                    .map(|&(from, thick)| Interval::new(mm(from), mm(from + thick)))
                    .collect(),
                feet: fronts
                    .iter()
                    .scan(foot, |foot, &front| {
                        *foot += front;
                        Some(mm(*foot - front))
                    })
                    .collect(),
                line: mm(line),
                distances: Distances {
                    wanted: mm(wanted),
                    least: mm(least),
                    most: mm(least + range),
                },
                step: mm(step),
                box_least: mm(box_least),
            },
        )
    })
}

/// Fronts of two families, with many holes barred, so that one pattern for a family is often not enough.
fn any_families() -> impl Strategy<Value = Case> {
    let odd = prop::collection::vec(prop::bool::ANY, 4..=6);
    let barred = prop::collection::vec(1..=24_i32, 3..=9);
    (odd, barred, 36..=110_i32).prop_map(|(odd, barred, range)| Case {
        holes: 26,
        barred: barred.iter().map(|&hole| run(hole, hole)).collect(),
        fixed: Vec::new(),
        feet: (0..)
            .zip(&odd)
            .map(|(at, &odd)| mm(at * 128 + if odd { 7 } else { 0 }))
            .collect(),
        line: mm(12),
        distances: Distances {
            wanted: mm(35),
            least: mm(0),
            most: mm(range),
        },
        step: mm(8),
        box_least: mm(24),
    })
}

/// What an answer is worth, written down a second time, in counts: different distances, deviation, box heights below
/// zero, holes.
type Worth = (usize, i32, i32, i32);

/// Height of a box between its underside and the one above; none when it would make a stop. Written down a second time.
fn box_height(case: &Case, underside: Length, next: Option<Length>) -> Option<Length> {
    let clear = stack(&[]).clear;
    let mut top = Length::PITCH * case.holes - clear.above;
    for fixed in &case.fixed {
        if fixed.from >= underside {
            top = top.min(fixed.from - clear.above);
        } else if fixed.to + clear.below > underside {
            return None;
        }
    }
    if let Some(next) = next {
        top = top.min(next - clear.between);
    }
    let room = top - underside;
    let height = if case.step == Length::ZERO {
        room
    } else {
        room - room.rem_floor(case.step)
    };
    (height >= case.box_least && underside >= um(18_600) + clear.below).then_some(height)
}

fn hole_height(hole: i32) -> Length {
    Length::from_mm(16) + Length::PITCH * (hole - 1)
}

/// Holes by which a front's distance is in range, or all of them, that are not barred.
fn open(case: &Case, foot: Length, any_distance: bool) -> Vec<i32> {
    let barred = |hole: i32| {
        let hole = HoleNumber::new(hole).unwrap();
        case.barred.iter().any(|run| run.contains(hole))
    };
    let fits = |hole: i32| {
        let distance = hole_height(hole) - case.line - foot;
        any_distance || (case.distances.least <= distance && distance <= case.distances.most)
    };
    (1..=case.holes)
        .filter(|&hole| !barred(hole) && fits(hole))
        .collect()
}

/// Every stack of holes that makes no stop, with its box heights.
fn choices(
    case: &Case,
    any_distance: bool,
    holes: &mut Vec<i32>,
    see: &mut dyn FnMut(&[i32], &[Length]),
) {
    let drawer = holes.len();
    let Some(&foot) = case.feet.get(drawer) else {
        let undersides: Vec<Length> = holes
            .iter()
            .map(|&hole| hole_height(hole) - case.line)
            .collect();
        let next = undersides.iter().copied().skip(1).map(Some).chain([None]);
        let heights = undersides
            .iter()
            .zip(next)
            .map(|(&at, next)| box_height(case, at, next));
        if let Some(heights) = heights.collect::<Option<Vec<Length>>>() {
            see(holes, &heights);
        }
        return;
    };
    for hole in open(case, foot, any_distance) {
        if holes.last().is_none_or(|&below| below < hole) {
            holes.push(hole);
            choices(case, any_distance, holes, see);
            holes.pop();
        }
    }
}

fn worth(case: &Case, holes: &[i32], heights: &[Length]) -> Worth {
    let each = holes.iter().zip(&case.feet);
    let distances: Vec<Length> = each
        .map(|(&hole, &foot)| hole_height(hole) - case.line - foot)
        .collect();
    let off = distances
        .iter()
        .map(|&d| (d - case.distances.wanted).abs().counts());
    let different: std::collections::BTreeSet<Length> = distances.iter().copied().collect();
    (
        different.len(),
        off.sum(),
        -heights.iter().map(|height| height.counts()).sum::<i32>(),
        holes.iter().sum(),
    )
}

/// How far outside their range the distances are, in all.
fn outside(case: &Case, holes: &[i32]) -> i32 {
    let each = holes.iter().zip(&case.feet);
    each.map(|(&hole, &foot)| {
        let distance = hole_height(hole) - case.line - foot;
        let out = (case.distances.least - distance).max(distance - case.distances.most);
        out.counts().max(0)
    })
    .sum()
}

fn taken(plan: &StackPlan) -> (Vec<i32>, Vec<Length>) {
    (
        plan.drawers
            .iter()
            .map(|drawer| drawer.hole.get().into())
            .collect(),
        plan.drawers.iter().map(|drawer| drawer.height).collect(),
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    #[test]
    fn no_choice_of_holes_is_better(case in prop_oneof![any_case(1..=5, 4, 110), any_families()]) {
        let mut best: Option<Worth> = None;
        choices(&case, false, &mut Vec::new(), &mut |holes, heights| {
            let worth = worth(&case, holes, heights);
            best = Some(best.map_or(worth, |best| best.min(worth)));
        });
        match place(&case.stack()) {
            Ok(plan) => {
                let (holes, heights) = taken(&plan);
                prop_assert_eq!(Some(worth(&case, &holes, &heights)), best);
                prop_assert_eq!(plan.patterns.len(), best.unwrap().0);
                prop_assert!(outside(&case, &holes) == 0);
            }
            Err(refused) => {
                prop_assert_eq!(best, None);
                prop_assert!(refused.drawer < case.feet.len());
            }
        }
    }

    #[test]
    fn nothing_nearer_works(case in any_case(1..=3, 3, 34)) {
        let Err(refused) = place(&case.stack()) else { return Ok(()) };
        let mut least: Option<i32> = None;
        choices(&case, true, &mut Vec::new(), &mut |holes, _| {
            let outside = outside(&case, holes);
            least = Some(least.map_or(outside, |least| least.min(outside)));
        });
        let low = |plan: &StackPlan| plan.drawers.iter().any(|at| at.height < case.box_least);
        match (least, refused.nearest) {
            (Some(least), Some(plan)) => {
                prop_assert_eq!(outside(&case, &taken(&plan).0), least);
                prop_assert!(least > 0 && !low(&plan));
                let drawer = &plan.drawers[refused.drawer];
                prop_assert!(case.stack().outside(drawer.distance.total()) > Length::ZERO);
            }
            (None, Some(plan)) => prop_assert!(low(&plan)),
            (found, None) => prop_assert_eq!(found, None),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn an_integer_program_finds_nothing_better(case in any_case(6..=10, 6, 80)) {
        let theirs = program(&case);
        match place(&case.stack()) {
            Ok(plan) => {
                let (holes, heights) = taken(&plan);
                let mine = worth(&case, &holes, &heights);
                let mm = |counts: i32| f64::from(counts) / 8_000.0;
                let mine = [mine.0 as f64, mm(mine.1), mm(mine.2), f64::from(mine.3)];
                let theirs = theirs.unwrap();
                let off = mine.iter().zip(&theirs).map(|(a, b)| (a - b).abs());
                prop_assert!(off.fold(0.0, f64::max) < 1e-3, "{mine:?} {theirs:?}");
            }
            Err(_) => prop_assert_eq!(theirs, None),
        }
    }
}

/// The variables of an integer program for a stack.
struct Program<'a> {
    case: &'a Case,
    /// Drawer, hole, whether it takes it.
    takes: Vec<(usize, i32, Variable)>,
    /// Drawer, hole, the next drawer's hole, height of the box between, whether both are taken.
    steps: Vec<(usize, i32, Option<i32>, Length, Variable)>,
    /// Every distance, ascending, and whether some drawer has it.
    distances: Vec<(Length, Variable)>,
}

impl<'a> Program<'a> {
    fn new(case: &'a Case, open: &[Vec<i32>], vars: &mut ProblemVariables) -> Self {
        let (mut takes, mut steps) = (Vec::new(), Vec::new());
        for (drawer, holes) in open.iter().enumerate() {
            let nexts: Vec<Option<i32>> = match open.get(drawer + 1) {
                Some(nexts) => nexts.iter().copied().map(Some).collect(),
                None => vec![None],
            };
            for &hole in holes {
                takes.push((drawer, hole, vars.add(variable().binary())));
                let underside = hole_height(hole) - case.line;
                for &next in &nexts {
                    let above = next.map(|next| hole_height(next) - case.line);
                    if let Some(height) = box_height(case, underside, above) {
                        steps.push((drawer, hole, next, height, vars.add(variable().min(0.0))));
                    }
                }
            }
        }
        let distance = |take: &(usize, i32, Variable)| distance(case, take.0, take.1);
        let different: std::collections::BTreeSet<Length> = takes.iter().map(distance).collect();
        let used = |at| (at, vars.add(variable().min(0.0).max(1.0)));
        Self {
            case,
            takes,
            steps,
            distances: different.into_iter().map(used).collect(),
        }
    }

    fn aims(&self) -> [Expression; 4] {
        let wanted = self.case.distances.wanted;
        let off = |drawer, hole| (distance(self.case, drawer, hole) - wanted).abs().mm();
        let takes = || self.takes.iter();
        [
            self.distances.iter().map(|(_, used)| used).sum(),
            takes()
                .map(|&(drawer, hole, take)| off(drawer, hole) * take)
                .sum(),
            self.steps
                .iter()
                .map(|&(.., height, step)| -height.mm() * step)
                .sum(),
            takes().map(|&(_, hole, take)| f64::from(hole) * take).sum(),
        ]
    }

    /// Each drawer takes one hole, by a step from below and with a step upward; a distance that is had is used.
    fn rules(&self) -> Vec<good_lp::Constraint> {
        let mut rules = Vec::new();
        for drawer in 0..self.case.feet.len() {
            let of = self.takes.iter().filter(|take| take.0 == drawer);
            let one: Expression = of.map(|take| take.2).sum();
            rules.push(constraint!(one == 1.0));
        }
        for &(drawer, hole, take) in &self.takes {
            let has = distance(self.case, drawer, hole);
            let used = self.distances.iter().find(|(at, _)| *at == has).unwrap().1;
            rules.push(constraint!(take <= used));
            let steps = || self.steps.iter();
            let leaving = steps().filter(|s| (s.0, s.1) == (drawer, hole));
            let leaving: Expression = leaving.map(|s| s.4).sum();
            rules.push(constraint!(leaving == take));
            if drawer > 0 {
                let coming = steps().filter(|s| s.0 + 1 == drawer && s.2 == Some(hole));
                let coming: Expression = coming.map(|s| s.4).sum();
                rules.push(constraint!(coming == take));
            }
        }
        rules
    }
}

fn distance(case: &Case, drawer: usize, hole: i32) -> Length {
    hole_height(hole) - case.line - case.feet[drawer]
}

/// All four aims by an integer program over the steps from one drawer to the next, one after the other, each keeping what
/// the ones before it reached.
fn program(case: &Case) -> Option<Vec<f64>> {
    let open = case.feet.iter().map(|&foot| open(case, foot, false));
    let open: Vec<Vec<i32>> = open.collect();
    let mut reached: Vec<f64> = Vec::new();
    for aim in 0..4 {
        let mut vars = ProblemVariables::new();
        let program = Program::new(case, &open, &mut vars);
        let aims = program.aims();
        let mut model = vars.minimise(aims[aim].clone()).using(microlp);
        for rule in program.rules() {
            model.add_constraint(rule);
        }
        for (aim, &reached) in aims.iter().zip(&reached) {
            model.add_constraint(constraint!(aim.clone() <= reached + 1e-4));
        }
        reached.push(model.solve().ok()?.eval(aims[aim].clone()));
    }
    Some(reached)
}
