//! What a bay and its cabinet could have.

use proptest::prelude::*;

use super::laws::closed;
use super::*;
use crate::edit::Measure;
use crate::job::{BackRule, RevealScheme};
use crate::measure::Length;

fn titles(job: &Job, bay: u32) -> Vec<String> {
    let made = for_bay(job, CABINET, Key(bay));
    made.into_iter().map(|made| made.title).collect()
}

/// What is true once the proposal of this title is taken.
#[track_caller]
fn taken(job: &Job, bay: u32, title: &str) -> Job {
    let made = for_bay(job, CABINET, Key(bay));
    let found = made.iter().find(|made| made.title.starts_with(title));
    let found = found.unwrap_or_else(|| panic!("{title} is not in {:#?}", titles(job, bay)));
    let mut job = job.clone();
    let step = found.edit.as_ref().unwrap().apply(&job).unwrap();
    step.apply(&mut job);
    job
}

// Geometry: 811 with 16 at either end is 11 over; 800 and 832 balance, and so does an offset of 21.5; 5.5 is too near the end.
#[test]
fn heights_and_offsets_that_balance() {
    let mut job = bay_with(|bay| bay.zones = vec![zone(21, 5..=9)]);
    job.cabinets[0].size.height = mm(811);
    assert_eq!(
        titles(&job, 1),
        [
            "height 800.0, 11.0 lower: balanced",
            "height 832.0, 21.0 higher: balanced",
            "offsets 21.5 and 21.5: this height is balanced",
        ]
    );
    for title in titles(&job, 1) {
        let job = taken(&job, 1, &title);
        let cabinet = &job.cabinets[0];
        let ends = cabinet.offsets.ends(cabinet.size.height);
        assert!(ends.mismatch().is_balanced(), "{title}");
    }
}

// Source: start-hole table, bellinghambaywoodcraft.com/32mm/Basics: 3 at the head and 0 at the foot want 33.5 and 30.5, or 17.5
// and 14.5; a plain 16 at both ends puts such fronts 1.5 off.
#[test]
fn offsets_that_suit_the_reveals() {
    let mut job = cabinet_with(|cabinet| {
        cabinet.opening.fronts = modules(FrontKind::Drawer, [8, 7, 7]);
    });
    job.shop.fronts = job.shop.fronts.with_scheme(RevealScheme::FlushFoot);
    let offsets = |title: &str| {
        let job = taken(&job, 1, title);
        (job.cabinets[0].offsets.foot, job.cabinets[0].offsets.head)
    };
    assert_eq!(offsets("offsets 30.5"), (um(30_500), um(33_500)));
    assert_eq!(offsets("offsets 14.5"), (um(14_500), um(17_500)));
    let settled = taken(&job, 1, "offsets 14.5");
    assert!(
        titles(&settled, 1)
            .iter()
            .all(|title| !title.contains("gaps of fronts"))
    );
}

// Common practice: D 449 with 16 behind the back: back row at 396, a runner row at 389, 7 apart; a setback of 44 lands on it.
#[test]
fn back_row_that_merges_with_a_runner_row() {
    let job = cabinet_x(|job| {
        job.cabinets[0].size.depth = mm(449);
        bay_of(job, 12).runners = vec![runner(41, 11, 400)];
        bay_of(job, 12).zones = vec![zone(42, 15..=18)];
    });
    let merged = taken(&job, 12, "back setback 44.0");
    assert_eq!(merged.shop.setback_back, mm(44));
    let layout = lay_out(&merged);
    let bay = layout.bays.iter().find(|bay| bay.key == Key(12)).unwrap();
    assert_eq!(bay.back_row.total(), mm(389));
    let mut on_pitch = job.clone();
    on_pitch.shop.back_rule = BackRule::OnPitch;
    assert!(
        titles(&on_pitch, 12)
            .iter()
            .all(|title| !title.starts_with("back setback"))
    );
}

// Geometry: hinges at 96 and 608 take 68-124 and 580-636; shelves of 18 on 2.5 stand clear of them on holes 5 to 17.
#[test]
fn shelf_holes_keep_clear_of_hinges() {
    let job = bay_with(|bay| {
        bay.plates = vec![plate(31, Hand::Left, 3), plate(32, Hand::Left, 19)];
    });
    let made = for_bay(&job, CABINET, Key(1));
    assert_eq!(made[0].title, "shelf holes 5-17: clean on both walls");
    assert_eq!(made[0].why[0], "128.5 clear under a shelf on hole 5");
    let after = taken(&job, 1, "shelf holes");
    assert_eq!(stops(&after), Vec::<Stop>::new());
    assert_eq!(
        titles(&after, 1),
        Vec::<String>::new(),
        "there is a zone now"
    );
}

proptest! {
    #[test]
    fn clean_shelf_holes_cause_no_stops(mut job in closed()) {
        if let Some(all) = all_in_one(&for_cabinet(&job, CABINET, None)) {
            all.apply(&job).unwrap().apply(&mut job);
        }
        let before = stops(&job);
        let bays: Vec<Key> = lay_out(&job).bays.iter().map(|bay| bay.key).collect();
        for bay in bays {
            for made in for_bay(&job, CABINET, bay) {
                let Some(edit @ Edit::Pins(_)) = made.edit else { continue };
                let mut after = job.clone();
                edit.apply(&job).unwrap().apply(&mut after);
                prop_assert_eq!(stops(&after), before.clone(), "{}", made.title);
            }
        }
    }

    #[test]
    fn any_bay_of_any_job_can_be_asked(job in job()) {
        for cabinet in &job.cabinets {
            for bay in Layout::of(cabinet, &job).bays {
                for made in for_bay(&job, cabinet.key, bay.key) {
                    prop_assert!(!made.title.is_empty() && !made.why.is_empty());
                    let is_measure = matches!(made.edit, Some(Edit::Measure { measure: Measure::Height, .. }));
                    prop_assert!(!is_measure || cabinet.size.height > Length::ZERO);
                }
            }
        }
    }
}
