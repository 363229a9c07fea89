//! What holds for every job.

use proptest::prelude::*;

use super::*;
use crate::edit::Way;
use crate::job::{Depth, Edge, End, FaceId, FreeHole, FreeRow};

/// A plain cabinet, divided and closed in one of the ways a person might.
pub(super) fn closed() -> impl Strategy<Value = Job> {
    let heights = prop::sample::select(vec![640, 704, 800, 1248, 2080]);
    let fronts = prop::collection::vec((0..5_u8, 1..5_u16), 1..5);
    let inset = any::<bool>();
    (heights, 450..1400_i32, fronts, inset, any::<bool>()).prop_map(
        |(height, width, fronts, inset, stacked)| {
            let mut job = cabinet_with(|cabinet| {
                (cabinet.size.height, cabinet.size.width) = (mm(height), mm(width));
                if inset {
                    cabinet.opening = bay(1, |bay| bay.inset = Some(Inset::default()));
                }
            });
            let parts = u16::try_from(fronts.len()).unwrap();
            let way = if stacked {
                Way::Stacked
            } else {
                Way::SideBySide
            };
            let divide = Edit::Divide {
                cabinet: CABINET,
                opening: Key(1),
                way,
                parts,
            };
            if let Ok(step) = divide.apply(&job) {
                step.apply(&mut job);
            }
            let bays: Vec<Key> = lay_out(&job).bays.iter().map(|bay| bay.key).collect();
            for (opening, (kind, count)) in bays.into_iter().zip(fronts) {
                let cabinet = CABINET;
                let door = Edit::Door { cabinet, opening };
                let edits = match kind {
                    0 => vec![door],
                    1 => vec![door.clone(), door],
                    2 => vec![door.clone(), door.clone(), door],
                    3 => vec![Edit::Drawers {
                        cabinet,
                        opening,
                        count,
                    }],
                    _ => vec![
                        door,
                        Edit::InnerDrawers {
                            cabinet,
                            opening,
                            count,
                        },
                    ],
                };
                for edit in edits {
                    if let Ok(step) = edit.apply(&job) {
                        step.apply(&mut job);
                    }
                }
            }
            job
        },
    )
}

/// The same with free holes and free rows on and near the front row, on any face; bays recessed; now and then one door over
/// all of them.
fn bored() -> impl Strategy<Value = Job> {
    let hole = (
        any::<prop::sample::Index>(),
        prop_oneof![Just(37_000), 20_000..60_000_i32, 37_000..520_000_i32],
        prop_oneof![(0..64_i32).prop_map(|half| 16_000 * half), 0..2_080_000_i32],
        prop::sample::select(vec![3, 5, 16]),
        prop::sample::select(vec![None, Some(6), Some(11), Some(13)]),
    );
    let row = (hole.clone(), 1..40_i16, 0..4_i16);
    let holes = prop::collection::vec(hole, 0..6);
    let rows = prop::collection::vec(row, 0..3);
    let recesses = prop::collection::vec(prop::sample::select(vec![0, 3, 40]), 4);
    let over = prop::option::weighted(0.3, any::<bool>());
    let parts = (closed(), holes, rows, recesses, over);
    parts.prop_map(|(mut job, holes, rows, recesses, over)| {
        if let Some(is_left) = over {
            job.cabinets[0]
                .opening
                .each_mut(&mut |opening| opening.fronts.clear());
            let hand = if is_left { Hand::Left } else { Hand::Right };
            let door = front(800, FrontKind::Door(hand), FrontHeight::Ratio(1));
            job.cabinets[0].opening.fronts.push(door);
        }
        let mut recesses = recesses.into_iter().cycle();
        job.cabinets[0].opening.each_bay_mut(&mut |bay| {
            bay.recess = mm(recesses.next().unwrap_or(0));
        });
        let uprights = lay_out(&job).uprights;
        let faces: Vec<FaceId> = uprights
            .iter()
            .flat_map(|upright| upright.faces.iter().map(|face| face.id))
            .collect();
        let deep =
            |depth: Option<i32>| depth.map_or(Depth::Through, |depth| Depth::Blind(mm(depth)));
        let cabinet = &mut job.cabinets[0];
        for (key, (face, setback, height, diameter, depth)) in (900..).zip(holes) {
            cabinet.free_holes.push(FreeHole {
                key: Key(key),
                face: *face.get(&faces),
                purpose: Label::known("lock"),
                edge: Edge::Front,
                setback: um(setback),
                end: End::Foot,
                height: um(height),
                diameter: mm(diameter),
                depth: deep(depth),
            });
        }
        for (key, ((face, setback, _, diameter, depth), first, more)) in (950..).zip(rows) {
            cabinet.free_rows.push(FreeRow {
                key: Key(key),
                face: *face.get(&faces),
                purpose: Label::known("cable"),
                edge: Edge::Front,
                setback: um(setback),
                first: HolePlace::foot(first),
                last: HolePlace::foot(first + more),
                diameter: mm(diameter),
                depth: deep(depth),
            });
        }
        job
    })
}

proptest! {
    #[test]
    fn accepted_proposals_cause_no_stops(mut job in closed()) {
        let before = stops(&job);
        let proposals = for_cabinet(&job, CABINET, None);
        if let Some(edit) = all_in_one(&proposals) {
            edit.apply(&job).unwrap().apply(&mut job);
            prop_assert_eq!(stops(&job), before, "{:#?}", proposals);
        }
    }

    #[test]
    fn accepted_proposals_cause_no_stops_beside_free_holes_and_rows(mut job in bored()) {
        let before = stops(&job);
        let proposals = for_cabinet(&job, CABINET, None);
        if let Some(edit) = all_in_one(&proposals) {
            edit.apply(&job).unwrap().apply(&mut job);
            let new: Vec<Stop> = stops(&job).into_iter().filter(|stop| !before.contains(stop)).collect();
            prop_assert_eq!(new, Vec::<Stop>::new(), "{:#?}", proposals);
        }
    }

    #[test]
    fn taking_and_undoing_is_identity(job in closed()) {
        let mut after = job.clone();
        for proposal in for_cabinet(&job, CABINET, None) {
            let Some(edit) = proposal.edit else { continue };
            let before = after.clone();
            let step = edit.apply(&after).unwrap();
            step.apply(&mut after);
            prop_assert_eq!(after.validate(), Ok(()));
            let mut undone = after.clone();
            step.revert(&mut undone);
            prop_assert_eq!(undone, before);
        }
    }

    #[test]
    fn any_job_can_be_asked_and_answers_alike_twice(job in job()) {
        for cabinet in &job.cabinets {
            let once = for_cabinet(&job, cabinet.key, None);
            prop_assert_eq!(&once, &for_cabinet(&job, cabinet.key, None));
            let mut after = job.clone();
            for proposal in &once {
                prop_assert!(!proposal.title.is_empty() && !proposal.fronts.is_empty());
                if let Some(edit) = &proposal.edit {
                    let step = edit.apply(&after);
                    prop_assert!(step.is_ok(), "{proposal:?} {step:?}");
                    step.unwrap().apply(&mut after);
                }
            }
            if let Some(edit) = all_in_one(&once) {
                let mut at_once = job.clone();
                edit.apply(&job).unwrap().apply(&mut at_once);
                prop_assert_eq!(&at_once, &after);
            }
        }
    }

    #[test]
    fn what_is_so_already_is_said_only_when_asked(mut job in bored()) {
        let Some(edit) = all_in_one(&for_cabinet(&job, CABINET, None)) else {
            return Ok(());
        };
        edit.apply(&job).unwrap().apply(&mut job);
        for again in for_cabinet(&job, CABINET, None) {
            prop_assert!(!again.already, "{}", again.title);
        }
    }
}
