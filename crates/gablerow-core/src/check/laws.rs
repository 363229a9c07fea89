//! What holds of the findings of any cabinet.

use super::fixture::*;
use super::*;
use crate::arbitrary::measure_faces;
use crate::cards::{Origin, Sourced};
use crate::job::{
    Acceptance, Back, Depth, FrontHeight, FrontKind, Hand, HolePlace, Inset, Label, Notch, PinRows,
    Reference, TopKind,
};
use crate::layout::Use;
use crate::measure::{Length, Unit};
use proptest::option::weighted;
use proptest::prelude::*;
use proptest::strategy::ValueTree as _;
use proptest::test_runner::TestRunner;
use std::collections::{BTreeMap, BTreeSet};
use std::string::ToString;

/// One thing put into a cabinet: what, at which hole or height, how far, on which hand.
type Put = (u8, i16, i16, bool, i32);

/// Any cabinet that a person could make in a few minutes.
pub(super) fn any_case() -> impl Strategy<Value = Case> {
    let put = (
        0..20_u8,
        -3..28_i16,
        -3..28_i16,
        any::<bool>(),
        1..700_000_i32,
    );
    let facts = (
        0..4_u8,
        0..4_u8,
        any::<bool>(),
        any::<bool>(),
        200_000..1_200_000_i32,
    );
    let holes_off = weighted(0.3, -2..=2_i32);
    (prop::collection::vec(put, 0..12), facts, holes_off).prop_map(|(puts, facts, holes_off)| {
        let mut case = Case::new();
        let upper = set_facts(&mut case, facts);
        puts.into_iter().for_each(|it| put_in(&mut case, upper, it));
        if let Some(holes) = holes_off {
            let off = |_| Some(Length::PITCH * holes);
            measure_faces(&mut case.job, off);
        }
        case
    })
}

/// Sets what the box is like and divides it; gives the key of the second bay.
fn set_facts(
    case: &mut Case,
    (divided, kind, exposed, one_stop, height): (u8, u8, bool, bool, i32),
) -> u32 {
    case.cabinet().size.height = um(height);
    let carcass = &mut case.cabinet().carcass;
    carcass.sides.exposed_left = exposed;
    carcass.sides.notch = exposed.then_some(Notch {
        height: mm(90),
        depth: mm(55),
    });
    (carcass.back, carcass.top.kind) = match kind {
        0 => (Back::Planted, TopKind::EdgeStretchers(mm(80))),
        1 => (
            Back::Rabbet { run: mm(12) },
            TopKind::FlatStretchers(mm(100)),
        ),
        _ => (carcass.back, carcass.top.kind),
    };
    if kind == 3 {
        let limits = &mut case.shop().limits;
        (limits.near, limits.web, limits.close) = (mm(100), mm(100), mm(100));
        (limits.to_end, limits.to_edge, limits.to_back) = (mm(0), mm(0), mm(100));
    }
    if one_stop {
        case.shop().reference = Reference::OneStop;
    }
    match divided {
        0 => return 1,
        1 => case.part_in_two().recess = mm(i32::from(kind) * 15),
        _ => _ = case.fixed_shelf(um(height / 2)),
    }
    12
}

fn put_drawer_in(
    case: &mut Case,
    (bay, hand): (u32, Hand),
    (what, a, b, far): (u8, i16, i16, i32),
) {
    match what {
        11 => {
            let front = case.front_over(
                bay,
                FrontKind::Drawer,
                FrontHeight::Modules(a.unsigned_abs() + 1),
            );
            let runner = case.runner(bay, b, 450);
            runner.serves = (far % 3 > 0).then_some(front);
            runner.spacers.right = mm(far % 4 * 10);
        }
        12 => {
            case.front_over(bay, FrontKind::Door(hand), SHARE);
            let front = case.front_over(bay, FrontKind::Inner, SHARE);
            case.load(front, far.unsigned_abs() / 10);
            case.runner(bay, a, 300).set_back = u8::from(far % 2 == 0) * 3;
        }
        _ => {
            case.back_rail(mm(40 + far % 300));
            case.shop().box_board = (far % 2 == 0).then(|| card("board-19"));
            case.runner_card().line.value = mm(far % 40);
        }
    }
}

fn put_in(case: &mut Case, upper: u32, (what, a, b, right, far): Put) {
    let (bay, hand) = if right {
        (upper, Hand::Right)
    } else {
        (1, Hand::Left)
    };
    let outside = (far % 5 == 0).then(|| left_side().behind());
    let face = outside.unwrap_or(if upper == 12 && far % 2 == 0 {
        partition(hand)
    } else {
        left_side()
    });
    let depth = match far % 3 {
        0 => Depth::Through,
        1 => Depth::Blind(mm(9)),
        _ => Depth::Shop,
    };
    match what {
        0 => case.pins(bay, a, b).depth = depth,
        1 => {
            let zone = case.pins(bay, 1, 1);
            (zone.first, zone.last) = (HolePlace::middle(a / 4 - 3), HolePlace::middle(b / 4));
        }
        2 => _ = case.shelf(bay, a),
        9 => {
            let shelf = case.shelf(bay, b);
            shelf.load_grams = (far % 2 == 0).then_some(far.unsigned_abs());
            shelf.clear = (far % 3 == 0).then_some(um(far.max(1_000)));
            shelf.setback_front = um(far % 60_000);
            shelf.shorter = um(far % 5_000).abs();
        }
        10 => {
            let out = um(far / 50);
            case.pin_card().projection = right.then_some(Sourced::guess(out));
            *case.board() = mm(3 + far % 30);
            let board = &mut case.job.cards.boards[0];
            board.creep = (far % 2 == 0).then_some(Sourced {
                value: 325,
                origin: Origin::DataSheet,
            });
        }
        3 => _ = case.plate(bay, hand, a),
        4 => case.plate(bay, hand, b).card = card("hinge-in-line"),
        5 => {
            let length = [250, 400, 550][usize::from(right) + usize::from(far % 2 == 0)];
            case.runner(bay, a, length).spacers.left = mm(far % 30);
        }
        6 => case.row(face, um(far), a, b).depth = depth,
        7 => case.hole(face, um(far), um(far / 2)).depth = depth,
        11..=15 => put_door(case, upper, (what - 3, a, b, right, far)),
        16..=18 => put_drawer_in(case, (bay, hand), (what - 5, a, b, far)),
        _ => {
            case.bay(bay).inset = Some(Inset {
                front: Some(mm(19)),
                set_in: um(far % 1_500),
            });
            case.bay(bay).pin_rows = PinRows::Three;
        }
    }
}

/// Hangs a door over a bay, or over all of them, with none to four plates, of any thickness and with any gaps.
fn put_door(case: &mut Case, upper: u32, (what, a, b, right, far): Put) {
    let (bay, hand) = if right {
        (upper, Hand::Right)
    } else {
        (1, Hand::Left)
    };
    // Two of these share the partition.
    let hand = if what == 11 { hand.other() } else { hand };
    let opening = match what {
        8 if upper == 12 => 10,
        _ => bay,
    };
    let mut holes = [a, b, a + 7, b - 5];
    let mut many = usize::from(far % 5 != 0) * 2 + usize::from(far % 3 == 0);
    if what == 9 {
        // As far from the foot as from the head: plates of a door that is not handed.
        case.cabinet().size.height = mm(704);
        let low = a.abs() % 8 + 2;
        ([holes[0], holes[1]], many) = ([low, 22 - low], 2);
    }
    let door = case.door(opening, hand, bay, &holes[..many]);
    let tens = Length::from_um(far % 30 * 1_000);
    door.thickness = (far % 2 == 0).then_some(mm(12) + tens);
    match what {
        10 => door.kind = FrontKind::Pair,
        11 => door.height = FrontHeight::Ratio(2),
        _ => {}
    }
    if what == 10 {
        case.plate(bay, hand.other(), a);
        case.plate(bay, hand.other(), b);
    }
    if what == 11 {
        case.shop().fronts.gap = um(far % 4_000);
        case.shop().fronts.reveal_side = um(far % 3_000);
        case.hinge_card().arms.full.value = mm(far % 30);
        case.hinge_card().arms.half.value = mm(far % 20);
    }
    if what == 12 {
        case.runner_card().lengths[2].name = um(304_000 + far % 1_600);
    }
}

fn rules(job: &Job, cabinet: &Cabinet) -> BTreeMap<&'static str, usize> {
    let mut rules = BTreeMap::new();
    for finding in of_cabinet(job, cabinet, &Layout::of(cabinet, job)) {
        *rules.entry(finding.rule_name()).or_default() += 1;
    }
    rules
}

/// The cases of the laws below reach the rules of loose shelves and of measured faces: a law that meets none of them proves nothing of them.
#[test]
fn cases_reach_every_rule_of_shelves_and_what_was_miscounted() {
    let mut runner = TestRunner::deterministic();
    let mut reached = BTreeSet::new();
    for _ in 0..400 {
        let case = any_case().new_tree(&mut runner).unwrap().current();
        reached.extend(of_job(&case.job).into_iter().map(|finding| finding.rule));
    }
    for rule in [
        Rule::ShelfSags,
        Rule::ShelfTips,
        Rule::ShelfLength,
        Rule::ClearOpeningShort,
        Rule::NoLiftRoom,
        Rule::MiscountedHole,
        Rule::MeasuredOff,
    ] {
        assert!(reached.contains(&rule), "{rule:?}");
    }
}

proptest! {
    #[test]
    fn a_rule_looked_for_alone_finds_what_all_find_of_it(case in any_case()) {
        let (job, cabinet) = (&case.job, &case.job.cabinets[0]);
        let layout = Layout::of(cabinet, job);
        let all = of_cabinet(job, cabinet, &layout);
        for info in RULES {
            let of_it: Vec<&Finding> = all.iter().filter(|it| it.rule == info.rule).collect();
            let alone = of_rule(info.rule, job, cabinet, &layout);
            prop_assert_eq!(alone.iter().collect::<Vec<_>>(), of_it, "{}", info.name);
        }
    }

    #[test]
    fn every_place_exists(case in any_case()) {
        prop_assert_eq!(case.job.validate(), Ok(()));
        let layout = Layout::of(&case.job.cabinets[0], &case.job);
        for Finding { rule, place, .. } in of_job(&case.job) {
            prop_assert_eq!(place.cabinet, case.job.cabinets[0].key);
            prop_assert!(place.face.is_none_or(|face| layout.face(face).is_some()));
            let Some((first, last)) = place.holes else { continue };
            prop_assert!(first <= last);
            prop_assert!(rule == Rule::HoleOffPanel || 1 <= first && last <= layout.last, "{:?}", rule);
        }
    }

    #[test]
    fn stops_come_first_and_no_sentence_twice(case in any_case()) {
        let found = of_job(&case.job);
        prop_assert!(found.is_sorted_by_key(|finding| finding.level));
        for (at, finding) in found.iter().enumerate() {
            let same = |other: &Finding| (other.rule, other.place, &other.message) == (finding.rule, finding.place, &finding.message);
            prop_assert!(!found[at + 1..].iter().any(same));
        }
    }

    #[test]
    fn sentences_are_short_and_of_one_line(case in any_case()) {
        for Finding { rule, message, .. } in of_job(&case.job) {
            let long = message.chars().count();
            prop_assert!((20..=190).contains(&long), "{long} {rule:?}: {message}");
            prop_assert!(!message.contains('\n') && !message.ends_with('.'));
        }
    }

    #[test]
    fn unit_changes_what_is_said_and_nothing_else(mut case in any_case()) {
        let metric = of_job(&case.job);
        case.job.unit = Unit::Inch;
        let inches = of_job(&case.job);
        prop_assert_eq!(inches.len(), metric.len());
        for (inch, mm) in inches.into_iter().zip(metric) {
            prop_assert!(inch.message.chars().count() <= 300, "{}", inch.message);
            prop_assert_eq!(Finding { message: mm.message.clone(), ..inch }, mm);
        }
    }

    #[test]
    fn mirror_image_breaks_the_same_rules(case in any_case()) {
        let cabinet = &case.job.cabinets[0];
        let mut mirrored = case.job.clone();
        for measured in &mut mirrored.measured {
            measured.face = measured.face.mirrored();
        }
        let broken = |job, cabinet: &Cabinet| {
            let mut broken = rules(job, cabinet);
            // One stop is on the left, so what rests on it is not mirrored, nor the edge it is worked from.
            if case.job.shop.reference == Reference::OneStop {
                broken.remove(Rule::RailReIndex.info().name);
                broken.remove(Rule::ArmReach.info().name);
            }
            broken
        };
        prop_assert_eq!(broken(&case.job, cabinet), broken(&mirrored, &cabinet.mirrored()));
    }

    /// No finding says that one runner of a pair has other holes than its mate: it cannot be.
    #[test]
    fn runners_of_a_pair_have_the_same_holes_in_the_same_rows(case in any_case()) {
        let layout = Layout::of(&case.job.cabinets[0], &case.job);
        for bay in &layout.bays {
            let [left, right] = [bay.left, bay.right].map(|wall| {
                let rows = &layout.face(wall).unwrap().rows;
                let runs = rows.iter().flat_map(|row| row.runs.iter().map(move |run| (row.x.total(), run)));
                let own = runs.filter(|(_, run)| run.spec.use_ == Use::Runner && run.spec.bay == Some(bay.key));
                own.map(|(x, run)| (x, run.first, run.last, run.spec.owner)).collect::<Vec<_>>()
            });
            prop_assert_eq!(left, right);
        }
    }

    #[test]
    fn accepting_every_finding_leaves_none_open(mut case in any_case()) {
        let accepted = of_job(&case.job).into_iter().map(|finding| Acceptance {
            rule: finding.rule_name().to_string(),
            message: finding.message,
            reason: Label::new("as built").unwrap(),
        });
        case.cabinet().accepted = accepted.collect();
        prop_assert!(of_job(&case.job).iter().all(|finding| finding.accepted.is_some()));
    }

    #[test]
    fn strands_come_near_as_their_holes_do(
        (x, z) in (0..40_i32, -100..400_i32),
        (a, b, near) in (1..8_i16, 1..8_i16, 1..90_i32),
    ) {
        let mut case = Case::new();
        case.row(left_side(), mm(60), a, b);
        case.hole(left_side(), mm(60 + x), mm(200 + z));
        let layout = Layout::of(&case.job.cabinets[0], &case.job);
        let all: Vec<Strand> = strands(layout.face(left_side()).unwrap(), &layout).collect();
        let (row, bore) = (all[0], all[1]);
        let distances = (a.min(b)..=a.max(b)).map(|hole| {
            let up = layout.height(hole) - bore.low;
            (f64::from(x).powi(2) + up.mm().powi(2), hole)
        });
        let nearer: Vec<i16> = distances
            .clone()
            .filter(|(squared, _)| *squared < f64::from(near * near))
            .map(|(_, hole)| hole)
            .collect();
        let said = row.nearer(bore, mm(near)).and_then(|(mine, _)| mine.holes);
        prop_assert_eq!(said, nearer.first().map(|&first| (first, nearer[nearer.len() - 1])));
        prop_assert_eq!(bore.nearer(row, mm(near)).is_some(), said.is_some());
        let least = distances.map(|(squared, _)| squared.sqrt()).fold(f64::MAX, f64::min);
        prop_assert!((row.distance(bore).mm() - least).abs() < 0.001);
        prop_assert_eq!(row.distance(bore), bore.distance(row));
    }

    #[test]
    fn runs_come_near_as_their_holes_do(
        x in 0..40_i32,
        (a, b, c, d) in (1..12_i16, 0..6_i16, 1..12_i16, 0..6_i16),
        near in 1..100_i32,
    ) {
        let mut case = Case::new();
        case.row(left_side(), mm(60), a, a + b);
        case.row(left_side(), mm(60 + x), c, c + d);
        let layout = Layout::of(&case.job.cabinets[0], &case.job);
        let all: Vec<Strand> = strands(layout.face(left_side()).unwrap(), &layout).collect();
        let (one, other) = (all[0], all[1]);
        let squared = |i: i16, j: i16| x * x + (32 * i32::from(i - j)).pow(2);
        let nearer: Vec<i16> = (a..=a + b)
            .filter(|&i| (c..=c + d).any(|j| squared(i, j) < near * near))
            .collect();
        let said = one.nearer(other, mm(near)).and_then(|(mine, _)| mine.holes);
        prop_assert_eq!(said, nearer.first().map(|&first| (first, nearer[nearer.len() - 1])));
        let least = (a..=a + b).flat_map(|i| (c..=c + d).map(move |j| squared(i, j))).min();
        let least = f64::from(least.unwrap_or_default()).sqrt();
        prop_assert!((one.distance(other).mm() - least).abs() < 0.001);
    }
}

/// Rules that jobs of these laws reach; a rule they never break proves nothing of its sentences.
#[test]
fn laws_reach_the_rules_of_doors() {
    let mut runner = TestRunner::deterministic();
    let mut missed: Vec<Rule> = [
        Rule::CupOffDoor,
        Rule::OverlayUnreachable,
        Rule::HalfOverlayArm,
        Rule::InsetOnOverlayRow,
        Rule::RevealTooSmall,
        Rule::HingesTooFew,
        Rule::HingesTooClose,
        Rule::DoorHanded,
        Rule::DoorSideChange,
        Rule::InsetOverlayMixed,
        Rule::PartitionNominalThickness,
        Rule::UnitsMixed,
        Rule::OpposedPlates,
    ]
    .into();
    for _ in 0..3_000 {
        let case = any_case().new_tree(&mut runner).unwrap().current();
        let found = of_job(&case.job);
        missed.retain(|rule| found.iter().all(|finding| finding.rule != *rule));
        if missed.is_empty() {
            return;
        }
    }
    panic!("never broken: {missed:?}");
}
