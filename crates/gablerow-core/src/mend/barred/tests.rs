//! Barred holes are those on which a pin of its own would be found fault with.

use alloc::collections::BTreeSet;

use proptest::prelude::*;

use super::{Barred, barred, tried, why_barred};
use crate::arbitrary::*;
use crate::check::{Finding, Level, Rule};
use crate::job::{Cabinet, Division, FaceId, Hand, Job, Key, Notch, PinRows};
use crate::layout::Layout;

fn of_bay(job: &Job, bay: u32) -> Vec<Barred> {
    let cabinet = &job.cabinets[0];
    barred(job, cabinet, &Layout::of(cabinet, job), Key(bay))
}

fn holes(all: &[Barred], face: FaceId, rule: Rule) -> BTreeSet<i16> {
    let of = |it: &&Barred| it.face == face && it.rule == rule;
    all.iter().filter(of).map(|it| it.hole).collect()
}

/// What is found against pins on the holes of a run.
fn against_pins(job: &Job, cabinet: &Cabinet, bay: Key, run: (i16, i16)) -> Vec<Finding> {
    tried(job, cabinet, bay, run).map_or_else(Vec::new, |(_, _, found)| found)
}

#[test]
fn plates_and_runners_bar_their_own_holes() {
    let job = bay_with(|bay| {
        bay.zones.clear();
        bay.plates = [plate(13, Hand::Left, 5)].into();
        bay.runners = [runner(14, 12, 500)].into();
    });
    let all = of_bay(&job, 1);
    let [left, right] = [Hand::Left, Hand::Right].map(FaceId::inside);
    assert_eq!(holes(&all, left, Rule::PlateOnPinHole), [5, 6].into());
    assert_eq!(holes(&all, right, Rule::PlateOnPinHole), [].into());
    for face in [left, right] {
        assert_eq!(holes(&all, face, Rule::PinAndRunnerShare), [12].into());
    }
}

// 16 above the underside hole 1 has its disc at 13.5-18.5, on the end of a bottom of 18.
#[test]
fn the_end_of_a_bottom_bars_the_lowest_hole_of_both_rows() {
    let job = bay_with(|bay| bay.zones.clear());
    let said = against_pins(&job, &job.cabinets[0], Key(1), (1, 1));
    let rules: BTreeSet<_> = said.iter().map(|it| (it.level, it.rule)).collect();
    assert_eq!(rules, [(Level::Warn, Rule::HoleInJoint)].into());
    assert_eq!(against_pins(&job, &job.cabinets[0], Key(1), (2, 2)), []);
    assert_eq!(against_pins(&job, &job.cabinets[0], Key(99), (1, 1)), []);
}

// The notch takes hole 2 of the front row and of the middle row in the same words, and leaves the back row alone.
#[test]
fn what_two_of_three_rows_break_does_not_bar_the_third() {
    let mut job = bay_with(|bay| {
        bay.zones.clear();
        bay.pin_rows = PinRows::Three;
    });
    job.cabinets[0].carcass.sides.notch = Some(Notch {
        depth: mm(300),
        height: mm(60),
    });
    let said = against_pins(&job, &job.cabinets[0], Key(1), (2, 2));
    let all = of_bay(&job, 1).into_iter();
    let here = all.filter(|it| (it.face, it.hole) == (FaceId::inside(Hand::Left), 2));
    let barred: Vec<_> = here.map(|it| (it.row, it.rule)).collect();
    let by_notch = [37, 270].map(|row| (mm(row), Rule::ToeNotchEatsRow));
    assert_eq!(barred, by_notch, "{said:?}");
}

// A plate on 5 and 6 of the left wall takes the front row there, and no other.
#[test]
fn one_hole_of_one_row_is_told_why_it_is_barred() {
    let job = bay_with(|bay| {
        bay.zones.clear();
        bay.plates = [plate(13, Hand::Left, 5)].into();
    });
    let cabinet = &job.cabinets[0];
    let [left, right] = [Hand::Left, Hand::Right].map(FaceId::inside);
    // As it is with pins, both of its rows are there.
    let pinned = bay_with(|bay| bay.zones = [zone(12, 3..=5)].into());
    let layout = Layout::of(&pinned.cabinets[0], &pinned);
    let rows: Vec<_> = layout
        .face(left)
        .unwrap()
        .rows
        .iter()
        .map(|row| row.x.total())
        .collect();
    let rule = |face, row, hole| {
        why_barred(&job, cabinet, Key(1), (face, row, hole)).map(|finding| finding.rule)
    };
    assert_eq!(rule(left, rows[0], 5), Some(Rule::PlateOnPinHole));
    assert_eq!(rule(left, rows[1], 5), None);
    assert_eq!(rule(left, rows[0], 9), None);
    assert_eq!(rule(right, rows[0], 5), None);
    assert_eq!(rule(right, rows[0], 1), Some(Rule::HoleInJoint));
    assert_eq!(why_barred(&job, cabinet, Key(99), (left, rows[0], 5)), None);
}

#[test]
fn a_bay_that_is_not_there_has_no_barred_holes() {
    assert_eq!(of_bay(&bay_with(|_| {}), 99), []);
}

fn bays(cabinet: &Cabinet) -> Vec<Key> {
    let mut bays = Vec::new();
    cabinet.opening.each(&mut |opening| {
        if let Division::Bay(_) = opening.division {
            bays.push(opening.key);
        }
    });
    bays
}

proptest! {
    // Each case tries every hole of every bay.
    #![proptest_config(ProptestConfig { cases: ProptestConfig::default().cases / 8, ..ProptestConfig::default() })]

    #[test]
    fn one_zone_over_the_bay_bars_what_pins_one_by_one_bar(mut job in job()) {
        // Discs as wide as the pitch, or as far apart, meet those of the next hole, which is then the one that is named.
        (job.shop.diameter, job.shop.limits.near) = (mm(5), mm(25));
        job.cabinets.iter_mut().for_each(|cabinet| cabinet.free_holes.clear());
        let Some(cabinet) = job.cabinets.first() else { return Ok(()) };
        let layout = Layout::of(cabinet, &job);
        for bay in bays(cabinet) {
            let all = barred(&job, cabinet, &layout, bay);
            let at_once: BTreeSet<i16> = all.iter().map(|it| it.hole).collect();
            let Some(space) = layout.bays.iter().find(|it| it.key == bay) else { continue };
            let carries = |hole: i16| {
                let mut faces = [space.left, space.right].into_iter().filter_map(|face| layout.face(face));
                faces.any(|face| face.holes(&layout).iter().any(|it| it.number == Some(hole)))
            };
            let within = |hole: &i16| space.spans(layout.height(*hole)) && !carries(*hole);
            for hole in (1..=layout.last).filter(within) {
                let alone = against_pins(&job, cabinet, bay, (hole, hole));
                let here = alone.iter().any(|it| it.place.face.is_some() && it.place.holes.is_some());
                prop_assert_eq!(at_once.contains(&hole), here, "bay {} hole {}: {:?}", bay, hole, alone);
                for it in all.iter().filter(|it| it.hole == hole) {
                    let said = why_barred(&job, cabinet, bay, (it.face, it.row, hole));
                    prop_assert_eq!(said.as_ref().map(|finding| finding.rule), Some(it.rule), "{:?}: {:?} of {:?}", it, said, alone);
                }
            }
        }
    }
}
