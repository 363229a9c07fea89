//! What is offered against a finding, and that it does what is said.

use proptest::prelude::*;
use proptest::sample::Index;

use super::fixes;
use crate::arbitrary::*;
use crate::cards::{CardId, Sourced};
use crate::check::{self, Finding, Level, Rule};
use crate::edit::Edit;
use crate::job::{
    BackRail, Depth, Edge, End, FreeHole, Front, FrontHeight, FrontKind, Hand, Job, Key, Label,
    Reference, Runner, TopKind,
};
use crate::propose::Proposal;

pub(super) fn the_finding(job: &Job, rule: Rule) -> Finding {
    let found = check::of_job(job);
    let one = found.iter().find(|finding| finding.rule == rule);
    let rules: Vec<_> = found.iter().map(Finding::rule_name).collect();
    one.unwrap_or_else(|| panic!("{rule:?} is not among {rules:?}"))
        .clone()
}

pub(super) fn titles(job: &Job, rule: Rule) -> Vec<String> {
    let fixes = fixes(job, &the_finding(job, rule));
    fixes.into_iter().map(|fix| fix.title).collect()
}

#[test]
fn plate_on_pins_moves_or_ends_the_pins() {
    let job = bay_with(|bay| {
        bay.zones = [zone(12, 3..=10)].into();
        bay.plates = [plate(13, Hand::Left, 4)].into();
    });
    assert_eq!(
        titles(&job, Rule::PlateOnPinHole),
        [
            "hinge plate to hole 11",
            "pins 3-10 without 4-5",
            "pins 3-10 without 3-5",
            "pins to 6-13",
            "pins 3-10 without 4-10",
            "no hinge plate on 4",
            "no pins 3-10",
        ]
    );
}

#[test]
fn one_fix_ends_pins_wherever_plates_want_their_holes() {
    let job = bay_with(|bay| {
        bay.zones = [zone(12, 3..=20)].into();
        bay.plates = [plate(13, Hand::Left, 5), plate(14, Hand::Right, 15)].into();
    });
    let found = the_finding(&job, Rule::PlateOnPinHole);
    let fix = fixes(&job, &found)
        .into_iter()
        .find(|fix| fix.title == "pins 3-20 without 5-6 and 15-16")
        .unwrap();
    let mut job = job;
    fix.edit.unwrap().apply(&job).unwrap().apply(&mut job);
    let left = check::of_job(&job);
    assert!(left.iter().all(|it| it.rule != Rule::PlateOnPinHole));
    let zones = &job.cabinets[0].opening.bay(Key(1)).unwrap().zones;
    let numbers: Vec<_> = zones.iter().map(|zone| zone.numbers(22)).collect();
    assert_eq!(numbers, [(3, 4), (7, 14), (17, 20)]);
}

#[test]
fn side_off_balance_takes_another_height_offset_or_end() {
    let job = job_with(|job| {
        job.cabinets[0].size.height = mm(797);
        job.shop.reference = Reference::OneStop;
        job.cabinets[0].opening.bay_mut(Key(1)).unwrap().zones = [zone(12, 3..=10)].into();
    });
    let said = titles(&job, Rule::UnbalancedTurned);
    assert_eq!(
        said,
        [
            "height 800",
            "height 768",
            "offsets 14.5 and 14.5",
            "offsets 30.5 and 30.5",
            "stops: rows from the foot"
        ]
    );
}

#[test]
fn side_off_balance_that_stays_on_its_foot_is_not_turned_for_it() {
    let job = job_with(|job| {
        job.cabinets[0].size.height = mm(797);
        job.cabinets[0].opening.bay_mut(Key(1)).unwrap().zones = [zone(12, 3..=10)].into();
    });
    assert_eq!(
        titles(&job, Rule::Unbalanced),
        [
            "height 800",
            "height 768",
            "offsets 14.5 and 14.5",
            "offsets 30.5 and 30.5",
        ]
    );
}

#[test]
fn screw_in_a_shallow_hole_is_bored_deeper() {
    let job = bay_with(|bay| {
        bay.plates = [plate(13, Hand::Left, 4)].into();
    });
    let mut job = job;
    job.shop.depth = mm(9);
    assert_eq!(titles(&job, Rule::DepthShortForScrew)[0], "bore depth 12");
}

#[test]
fn free_hole_beside_a_row_goes_onto_it_or_away() {
    let job = cabinet_with(|cabinet| {
        cabinet.opening.bay_mut(Key(1)).unwrap().zones = [zone(12, 3..=5)].into();
        cabinet.free_holes = [FreeHole {
            key: Key(19),
            face: LEFT_INSIDE,
            purpose: Label::known("cable"),
            edge: Edge::Front,
            setback: mm(41),
            end: End::Foot,
            height: mm(80),
            diameter: mm(5),
            depth: Depth::Shop,
        }]
        .into();
    });
    let said = titles(&job, Rule::NearMissRows);
    assert_eq!(
        said,
        [
            "cable 1 hole down",
            "cable 3 holes up",
            "cable 27 in",
            "cable 47 in",
            "pins 3-5 without 3",
            "pins to 4-6",
            "no cable",
            "no pins 3-5",
        ]
    );
}

/// The plain cabinet with loose shelves on these holes, changed.
fn shelved(holes: &[i16], change: impl FnOnce(&mut Job)) -> Job {
    job_with(|job| {
        let bay = job.cabinets[0].opening.bay_mut(Key(1)).unwrap();
        let shelves = (12..).zip(holes).map(|(key, hole)| shelf(key, *hole));
        bay.shelves = shelves.collect();
        change(job);
    })
}

#[test]
fn sagging_shelf_takes_the_thinnest_board_that_will_do_or_a_partition() {
    let job = shelved(&[9], |job| {
        let like = job.cards.boards[0].clone();
        job.cards.boards.clear();
        for (id, thick) in [
            ("board-18", 18),
            ("board-25", 25),
            ("board-19", 19),
            ("board-22", 22),
        ] {
            let mut board = like.clone();
            (board.id, board.thickness.value) = (CardId::known(id), mm(thick));
            job.cards.boards.push(board);
        }
    });
    assert_eq!(
        titles(&job, Rule::ShelfSags),
        [
            "shelf: board board-19",
            "partition in bay 1",
            "no shelf on 9"
        ]
    );
    let fixes = fixes(&job, &the_finding(&job, Rule::ShelfSags));
    let load = "the shelf stays in the leftmost of 2 bays and bears all of its 25.0 kg there; set shelves in the others, \
                and lower its load to its part";
    assert!(
        fixes[1].why.contains(&load.to_string()),
        "{:?}",
        fixes[1].why
    );
}

#[test]
fn board_of_unknown_stiffness_mends_no_sag() {
    let job = shelved(&[9], |job| {
        let like = job.cards.boards[0].clone();
        job.cards.boards.truncate(1);
        for (thick, stiffness) in [(25, None), (28, like.stiffness)] {
            let mut board = like.clone();
            (board.thickness.value, board.stiffness) = (mm(thick), stiffness);
            board.id = CardId::known(&format!("board-{thick}"));
            job.cards.boards.push(board);
        }
    });
    assert_eq!(titles(&job, Rule::ShelfSags)[0], "shelf: board board-28");
}

// 3.459 kg, 526 deep, 48 before its pins: 11 back 3.386 * (257.5 - 37) / 37 = 20.2, or 60 - 48 + 38.775 in front.
#[test]
fn tipping_shelf_stands_farther_back_or_the_front_rows_farther_forward() {
    let job = shelved(&[9], |job| job.shop.setback_front = mm(60));
    assert_eq!(
        titles(&job, Rule::ShelfTips),
        ["shelf 23 in", "front row 50", "no shelf on 9"]
    );
}

#[test]
fn short_shelf_is_made_as_long_as_usual() {
    let job = shelved(&[9], |job| {
        job.cards.pins[0].projection = Some(Sourced::guess(mm(6)));
        job.cabinets[0].opening.bay_mut(Key(1)).unwrap().shelves[0].shorter = mm(5);
    });
    assert_eq!(
        titles(&job, Rule::ShelfLength),
        ["shelf: shorter by 2.0", "no shelf on 9"]
    );
}

#[test]
fn short_pins_give_way_to_longer_ones() {
    let job = shelved(&[9], |job| {
        job.cards.pins[0].projection = Some(Sourced::guess(mm(5)));
        for (id, out) in [("pin-short", 4), ("pin-long", 9)] {
            let mut pin = job.cards.pins[0].clone();
            (pin.id, pin.projection) = (CardId::known(id), Some(Sourced::guess(mm(out))));
            job.cards.pins.push(pin);
        }
    });
    assert_eq!(
        titles(&job, Rule::ShelfLength),
        ["pin pin-long", "no shelf on 9"]
    );
}

#[test]
fn more_is_clear_over_a_shelf_once_it_is_lower_or_the_next_one_higher() {
    let job = shelved(&[5, 9, 15], |job| {
        let bay = job.cabinets[0].opening.bay_mut(Key(1)).unwrap();
        bay.shelves[1].clear = Some(mm(200));
    });
    assert_eq!(
        titles(&job, Rule::ClearOpeningShort),
        ["shelf to 8", "shelf to 16", "no shelf on 9"]
    );
}

#[test]
fn no_room_to_lift_a_shelf_in_costs_a_hole() {
    let high = shelved(&[21], |_| ());
    assert_eq!(
        titles(&high, Rule::NoLiftRoom),
        ["shelf to 20", "no shelf on 21"]
    );
    let pins = bay_with(|bay| bay.zones = [zone(12, 3..=21)].into());
    assert_eq!(
        titles(&pins, Rule::NoLiftRoom),
        ["pins 3-21 without 21", "pins to 2-20", "no pins 3-21"]
    );
}

/// A cabinet with one drawer over its bay, on runners at a hole.
fn one_drawer(hole: i16, change: impl FnOnce(&mut Job)) -> Job {
    job_with(|job| {
        let opening = &mut job.cabinets[0].opening;
        opening.fronts = [Front {
            height: FrontHeight::Ratio(1),
            ..drawer(30, 1)
        }]
        .into();
        let bay = opening.bay_mut(Key(1)).unwrap();
        bay.runners = [Runner {
            serves: Some(Key(30)),
            ..runner(31, hole, 500)
        }]
        .into();
        change(job);
    })
}

#[test]
fn runners_at_the_foot_of_their_front_move_to_the_hole_of_their_line() {
    let job = one_drawer(1, |_| ());
    assert_eq!(
        titles(&job, Rule::RunnerLineIgnored),
        ["runner to 2", "D1: runners 500.0 on 2", "no runner on 1"]
    );
    assert_eq!(titles(&job, Rule::BottomBoxLow)[0], "runner to 2");
}

#[test]
fn a_box_before_a_rail_takes_shorter_runners_or_another_rail() {
    let job = one_drawer(19, |job| {
        job.cabinets[0].size.depth = mm(540);
        job.cabinets[0].carcass.rail = Some(BackRail {
            board: CardId::known("board-18"),
            height: mm(200),
        });
    });
    assert_eq!(
        titles(&job, Rule::BoxBehindBlocked),
        [
            "runner 450",
            "runner to 15",
            "back rail none",
            "no runner on 19"
        ]
    );
}

#[test]
fn a_blocked_box_moves_down() {
    let job = one_drawer(21, |job| job.shop.boxes.above = mm(40));
    assert_eq!(
        titles(&job, Rule::TopBoxBlocked),
        ["runner to 20", "D1: runners 500.0 on 2", "no runner on 21"]
    );
}

#[test]
fn stretchers_on_edge_become_a_top() {
    let job = one_drawer(2, |job| {
        job.cabinets[0].carcass.top.kind = TopKind::EdgeStretchers(mm(80));
    });
    assert_eq!(
        titles(&job, Rule::StretcherInBox),
        ["top between the sides", "no runner on 2"]
    );
}

#[test]
fn a_heavy_drawer_takes_stronger_runners() {
    let job = one_drawer(2, |job| {
        job.cabinets[0].opening.fronts[0].load_grams = Some(10_000);
        job.cards.runners[1].load.value = 60;
    });
    assert_eq!(
        titles(&job, Rule::RunnerOverloaded),
        ["runner to 12", "runners: runner-side", "no runner on 2"]
    );
}

#[test]
fn box_sides_too_thick_are_made_of_another_board() {
    let job = one_drawer(2, |job| {
        job.shop.box_board = Some(CardId::known("board-18"));
    });
    assert_eq!(
        titles(&job, Rule::BoxWidth),
        [
            "runners: runner-side",
            "board of boxes board-16",
            "board of boxes board-15",
            "no runner on 2"
        ]
    );
}

#[test]
fn a_stack_of_two_becomes_whole_modules() {
    let job = job_with(|job| {
        let opening = &mut job.cabinets[0].opening;
        let share = |key| Front {
            height: FrontHeight::Ratio(1),
            ..drawer(key, 1)
        };
        opening.fronts = [share(30), share(31)].into();
        opening.fronts[0].height = FrontHeight::Fixed(mm(360));
        let on = |key, hole, front| Runner {
            serves: Some(Key(front)),
            ..runner(key, hole, 500)
        };
        let bay = opening.bay_mut(Key(1)).unwrap();
        bay.runners = [on(32, 2, 30), on(33, 13, 31)].into();
    });
    assert_eq!(titles(&job, Rule::FrontsOffGrid), ["D1 of 11 modules"]);
}

#[test]
fn a_drawer_behind_a_door_is_packed_out() {
    let job = one_drawer(5, |job| {
        let fronts = &mut job.cabinets[0].opening.fronts;
        fronts[0].kind = FrontKind::Inner;
        fronts.insert(0, door(29, Hand::Left));
    });
    assert_eq!(
        titles(&job, Rule::InnerDrawerFouls),
        ["D1: runners 500.0 on 5", "no D1", "no runner on 5"]
    );
}

/// Every fix of one of the findings of a job.
fn tried(job: &Job, index: Index) -> Option<(Finding, Vec<Proposal>)> {
    let found = check::of_job(job);
    let open: Vec<_> = found
        .into_iter()
        .filter(|it| it.accepted.is_none())
        .collect();
    let finding = (!open.is_empty()).then(|| index.get(&open).clone())?;
    let fixes = fixes(job, &finding);
    Some((finding, fixes))
}

fn open_stops(job: &Job) -> Vec<Finding> {
    let found = check::of_job(job).into_iter();
    found.filter(Finding::is_open_stop).collect()
}

proptest! {
    // Each case tries dozens of edits, and checks the cabinet for each.
    #![proptest_config(ProptestConfig { cases: ProptestConfig::default().cases / 8, ..ProptestConfig::default() })]

    #[test]
    fn every_fix_removes_its_finding_and_opens_no_stop(job in measured_job(), index in any::<Index>()) {
        let Some((finding, fixes)) = tried(&job, index) else { return Ok(()) };
        let before = open_stops(&job);
        for fix in fixes {
            let mut after = job.clone();
            let edit = fix.edit.expect("a fix that cannot be had");
            let step = edit.apply(&job).expect("a fix that is refused");
            step.apply(&mut after);
            prop_assert_eq!(after.validate(), Ok(()));
            // Nobody gives up a door for a note.
            prop_assert!(finding.level != Level::Note || !matches!(edit, Edit::NoFront { .. }), "{}", fix.title);
            let left = check::of_job(&after);
            prop_assert!(!left.iter().any(|it| it.is_about_the_same(&finding)), "{}: {}", fix.title, finding.message);
            for stop in left.iter().filter(|it| it.is_open_stop()) {
                let same = |it: &&Finding| it.is_about_the_same(stop);
                let (was, is) = (before.iter().filter(same).count(), left.iter().filter(|it| it.is_open_stop()).filter(same).count());
                prop_assert!(is <= was, "{} opens {}: {}", fix.title, stop.rule_name(), stop.message);
            }
            step.revert(&mut after);
            prop_assert_eq!(&after, &job);
        }
    }

    #[test]
    fn the_least_change_comes_first_and_nothing_twice(job in job(), index in any::<Index>()) {
        let Some((_, fixes)) = tried(&job, index) else { return Ok(()) };
        let edits: Vec<&Edit> = fixes.iter().filter_map(|fix| fix.edit.as_ref()).collect();
        for (at, edit) in edits.iter().enumerate() {
            prop_assert!(!edits[at + 1..].contains(edit));
        }
        prop_assert!(fixes.iter().all(|fix| !fix.title.is_empty() && !fix.why.is_empty()));
    }
}
