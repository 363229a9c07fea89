//! The searches for hinges against trying everything, and against an integer program.

use good_lp::{
    Expression, ProblemVariables, Solution, SolverModel, Variable, constraint, microlp, variable,
};
use proptest::prelude::*;

use super::*;

/// A row, as plain values.
#[derive(Clone, Debug)]
struct Case {
    first: Length,
    holes: i32,
    taken: Vec<Run>,
    barred: Vec<Interval>,
    plate: PlateShape,
    half_zone: Length,
    door: Door,
    count: u8,
}

impl Case {
    fn row(&self) -> HingeRow<'_> {
        HingeRow {
            grid: Grid { first: self.first },
            holes: run(1, self.holes),
            taken: &self.taken,
            barred: &self.barred,
            plate: self.plate,
            half_zone: self.half_zone,
        }
    }
}

fn any_case(holes: core::ops::RangeInclusive<i32>, count: u8) -> impl Strategy<Value = Case> {
    (holes, 0..=count, 8..=40_i32, 20..=40_i32).prop_flat_map(|(holes, count, first, half)| {
        let high = holes * 32;
        let taken = prop::collection::vec((1..=holes, 0..=2_i32), 0..6);
        let barred = prop::collection::vec((0..high, 10..=60_i32), 0..4);
        let door = (-20..=60_i32, high / 2..=high);
        let plate = prop_oneof![Just(PlateShape::AlongRow), Just(PlateShape::InLine)];
        (taken, barred, plate, door).prop_map(move |(taken, barred, plate, door)| Case {
            first: mm(first),
            holes,
            taken: taken
                .iter()
                .map(|&(hole, more)| run(hole, hole + more))
                .collect(),
            barred: barred
                .iter()
                .map(|&(from, thick)| Interval::new(mm(from), mm(from + thick)))
                .collect(),
            plate,
            half_zone: mm(half),
            door: Door {
                foot: mm(door.0),
                height: mm(door.1),
            },
            count,
        })
    })
}

/// What an answer is worth, written down a second time: all deviation and the largest, in parts of a count, how unlike
/// both ends are, and hole numbers below zero.
type Worth = (i64, i64, i64, i64);

/// Targets of so many hinges as numerators, and their denominator.
fn targets(legal: &[LegalCentre], door: Door, count: i64) -> (Vec<i64>, i64) {
    let z = |at: &LegalCentre| i64::from(at.centre.counts());
    let both = i64::from(door.foot.counts()) + i64::from(door.head().counts());
    if count == 1 {
        return (vec![both], 2);
    }
    let first = z(&legal[0]);
    let last = legal
        .iter()
        .map(z)
        .max_by_key(|&last| (-(last + first - both).abs(), last));
    let target = |hinge| first * (count - 1 - hinge) + last.unwrap() * hinge;
    ((0..count).map(target).collect(), count - 1)
}

fn worth(places: &[LegalCentre], legal: &[LegalCentre], door: Door) -> Worth {
    let z: Vec<i64> = places.iter().map(|at| at.centre.counts().into()).collect();
    if z.is_empty() {
        return (0, 0, 0, 0);
    }
    let (targets, parts) = targets(legal, door, i64::try_from(z.len()).unwrap());
    let offs = z
        .iter()
        .zip(&targets)
        .map(|(z, target)| (z * parts - target).abs());
    let offs: Vec<i64> = offs.collect();
    let both = i64::from(door.foot.counts()) + i64::from(door.head().counts());
    let half = z.len().div_ceil(2);
    let unlike = z
        .iter()
        .zip(z.iter().rev())
        .take(half)
        .map(|(low, high)| (low + high - both).abs());
    (
        offs.iter().sum(),
        offs.iter().copied().max().unwrap(),
        unlike.sum(),
        -places
            .iter()
            .map(|at| i64::from(at.hole.get()))
            .sum::<i64>(),
    )
}

/// Every choice of so many places that are apart.
fn choices(
    legal: &[LegalCentre],
    apart: Length,
    count: usize,
    so_far: &mut Vec<LegalCentre>,
    see: &mut dyn FnMut(&[LegalCentre]),
) {
    if so_far.len() == count {
        return see(so_far);
    }
    for (at, &place) in legal.iter().enumerate() {
        if so_far
            .last()
            .is_none_or(|last| place.centre - last.centre >= apart)
        {
            so_far.push(place);
            choices(&legal[at + 1..], apart, count, so_far, see);
            so_far.pop();
        }
    }
}

/// Legal places, found the slow way.
fn legal(case: &Case, from: Length, to: Length) -> Vec<LegalCentre> {
    let mut found = Vec::new();
    for hole in 1..=case.holes {
        let taken = |hole: i32| {
            let hole = HoleNumber::new(hole).unwrap();
            i32::from(hole.get()) > case.holes || case.taken.iter().any(|run| run.contains(hole))
        };
        let low = case.first + Length::PITCH * (hole - 1);
        let (centre, taken) = match case.plate {
            PlateShape::AlongRow => (low + mm(16), taken(hole) || taken(hole + 1)),
            PlateShape::InLine => (low, taken(hole)),
        };
        let [low, high] = [centre - case.half_zone, centre + case.half_zone];
        let barred = case
            .barred
            .iter()
            .any(|barred| !(barred.to <= low || high <= barred.from));
        if !taken && !barred && from <= centre && centre <= to {
            let hole = HoleNumber::new(hole).unwrap();
            found.push(LegalCentre { hole, centre });
        }
    }
    found
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn no_choice_of_places_is_better(case in any_case(2..=18, 6)) {
        let row = case.row();
        let placement = place(&row, case.door, case.count, END_LEAST);
        let found: Vec<LegalCentre> = placement.plates.iter().map(|plate| plate.at).collect();
        let mut best: Option<(Worth, Vec<LegalCentre>)> = None;
        'more: for count in (0..=usize::from(case.count)).rev() {
            for end in [END_LEAST, case.half_zone] {
                let legal = legal(&case, case.door.foot + end, case.door.head() - end);
                choices(&legal, row.apart(), count, &mut Vec::new(), &mut |places| {
                    let worth = worth(places, &legal, case.door);
                    if best.as_ref().is_none_or(|(best, _)| worth < *best) {
                        best = Some((worth, legal.clone()));
                    }
                });
                if best.is_some() {
                    prop_assert_eq!(found.len(), count);
                    break 'more;
                }
            }
        }
        let (best, legal) = best.unwrap();
        prop_assert!(found.iter().all(|at| legal.contains(at)));
        prop_assert!(placement.distances().all(|distance| distance >= row.apart()));
        prop_assert_eq!(worth(&found, &legal, case.door), best);
    }

    #[test]
    fn no_common_pattern_is_better(case in any_case(4..=16, 5), other in any_case(16..=16, 0)) {
        let mut case = case;
        // A door whose middle falls on the grid, so that there are patterns at all.
        case.door.height = case.first * 2 - case.door.foot * 2 + Length::PITCH * (case.holes - 1);
        let right = Case { barred: other.barred, taken: other.taken, ..case.clone() };
        let found = opposed(&case.row(), &right.row(), case.door, case.count, END_LEAST);
        let (from, to) = (case.door.foot + END_LEAST, case.door.head() - END_LEAST);
        let behind = legal(&right, from, to);
        let mirror = |at: &LegalCentre| case.door.mirror(at.centre);
        let has_mirror = |at: &LegalCentre| behind.iter().any(|b| b.centre == mirror(at));
        let legal: Vec<LegalCentre> = legal(&case, from, to).into_iter().filter(has_mirror).collect();
        let holes = |at: Length| match case.plate {
            PlateShape::AlongRow => vec![at - mm(16), at + mm(16)],
            PlateShape::InLine => vec![at],
        };
        let best = |count: usize| {
            let mut best: Option<(i64, i64, i64)> = None;
            choices(&legal, case.row().apart(), count, &mut Vec::new(), &mut |places| {
                let left: Vec<Length> = places.iter().flat_map(|at| holes(at.centre)).collect();
                let right: Vec<Length> = places.iter().flat_map(|at| holes(mirror(at))).collect();
                if left.iter().all(|hole| !right.contains(hole)) {
                    let worth = worth(places, &legal, case.door);
                    let worth = (worth.0, worth.1, -worth.3);
                    best = Some(best.map_or(worth, |best| best.min(worth)));
                }
            });
            best
        };
        match found {
            Ok(found) => {
                let worth = worth(&found.left, &legal, case.door);
                prop_assert_eq!(Some((worth.0, worth.1, -worth.3)), best(case.count.into()));
                let mirrored: Vec<Length> = found.left.iter().rev().map(mirror).collect();
                let right: Vec<Length> = found.right.iter().map(|at| at.centre).collect();
                prop_assert_eq!(mirrored, right);
            }
            Err(NoOpposed::NoRoom { most }) => {
                prop_assert!(best(case.count.into()).is_none());
                let all = (0..case.count).rev().find(|&count| best(count.into()).is_some());
                prop_assert_eq!(most, all.unwrap_or(0));
            }
            Err(NoOpposed::OffGrid { .. }) => prop_assert!(false, "the door is on the grid"),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn an_integer_program_finds_nothing_better(case in any_case(38..=42, 6)) {
        let row = case.row();
        let placement = place(&row, case.door, case.count, END_LEAST);
        let found: Vec<LegalCentre> = placement.plates.iter().map(|plate| plate.at).collect();
        if found.len() < 2 {
            return Ok(());
        }
        let end = placement.end_least;
        let legal = row.legal(case.door.foot + end, case.door.head() - end);
        let mine = worth(&found, &legal, case.door);
        let theirs = program(&legal, case.door, found.len(), row.apart());
        let parts = f64::from(8_000 * (u16::try_from(found.len()).unwrap() - 1));
        prop_assert!((mine.0 as f64 / parts - theirs.0).abs() < 1e-3, "{mine:?} {theirs:?}");
        prop_assert!((mine.1 as f64 / parts - theirs.1).abs() < 1e-3, "{mine:?} {theirs:?}");
        prop_assert!((mine.2 as f64 / 8_000.0 - theirs.2).abs() < 1e-3, "{mine:?} {theirs:?}");
        prop_assert!((mine.3 as f64 - theirs.3).abs() < 1e-3, "{mine:?} {theirs:?}");
    }
}

/// All four aims by an integer program, one after the other, each keeping what the ones before it reached.
fn program(legal: &[LegalCentre], door: Door, count: usize, apart: Length) -> (f64, f64, f64, f64) {
    let (targets, parts) = targets(legal, door, i64::try_from(count).unwrap());
    let off = |hinge: usize, at: usize| {
        (legal[at].centre.mm() - targets[hinge] as f64 / parts as f64 / 8_000.0).abs()
    };
    let mut reached: Vec<f64> = Vec::new();
    for aim in 0..4 {
        let mut vars = ProblemVariables::new();
        let x: Vec<Vec<Variable>> = (0..count)
            .map(|_| {
                (0..legal.len())
                    .map(|_| vars.add(variable().binary()))
                    .collect()
            })
            .collect();
        let largest = vars.add(variable().min(0.0));
        let unlike: Vec<Variable> = (0..count.div_ceil(2))
            .map(|_| vars.add(variable().min(0.0)))
            .collect();
        let sum = |hinge: usize, of: &dyn Fn(usize) -> f64| -> Expression {
            x[hinge].iter().enumerate().map(|(at, &x)| of(at) * x).sum()
        };
        let z = |hinge: usize| sum(hinge, &|at| legal[at].centre.mm());
        let hole = |at: usize| -f64::from(legal[at].hole.get());
        let aims: [Expression; 4] = [
            (0..count)
                .map(|hinge| sum(hinge, &|at| off(hinge, at)))
                .sum(),
            largest.into(),
            unlike.iter().sum(),
            (0..count).map(|hinge| sum(hinge, &hole)).sum(),
        ];
        let mut model = vars.minimise(aims[aim].clone()).using(microlp);
        for hinge in 0..count {
            model.add_constraint(constraint!(sum(hinge, &|_| 1.0) == 1.0));
            model.add_constraint(constraint!(sum(hinge, &|at| off(hinge, at)) <= largest));
            if hinge > 0 {
                model.add_constraint(constraint!(z(hinge) - z(hinge - 1) >= apart.mm()));
            }
        }
        for (ring, &unlike) in unlike.iter().enumerate() {
            let both = door.foot.mm() + door.head().mm();
            let off = z(ring) + z(count - 1 - ring) - both;
            model.add_constraint(constraint!(off.clone() <= unlike));
            model.add_constraint(constraint!(off >= -1.0 * unlike));
        }
        for (aim, &reached) in aims.iter().zip(&reached) {
            model.add_constraint(constraint!(aim.clone() <= reached + 1e-4));
        }
        let solution = model.solve().unwrap();
        reached.push(solution.eval(aims[aim].clone()));
    }
    (reached[0], reached[1], reached[2], reached[3])
}
