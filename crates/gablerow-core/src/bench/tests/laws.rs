//! What holds of the plan of any job: bored literally, it gives the holes of the layout and no others.

use super::*;
use crate::job::{BandState, Cabinet, Copy, End, Hand, Reference};
use crate::layout::{Layout, Upright};
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::vec;

/// A hole in a panel: from its front edge as finished, from its foot, diameter, depth.
type Bore = (Length, Length, Length, Option<Length>);

/// What is bored into each face.
type Bored = BTreeMap<(Key, Key, FaceId), Vec<Bore>>;

fn wanted(job: &Job, cabinet: &Cabinet, copy: &Copy, bored: &mut Bored) {
    let built = cabinet.built_as(copy);
    let layout = Layout::of(&built, job);
    for upright in &layout.uprights {
        for (face, holes) in upright.bored(&layout) {
            let bores = holes.into_iter().map(|hole| {
                let (x, z) = (
                    hole.x - upright.front.total(),
                    hole.z - upright.foot.total(),
                );
                (x, z, hole.diameter, hole.depth)
            });
            let bores: Vec<Bore> = bores.collect();
            if !bores.is_empty() {
                bored
                    .entry((cabinet.key, copy.key, face))
                    .or_default()
                    .extend(bores);
            }
        }
    }
}

/// Lays the panel down as told, sets the rail as told and bores what is told, from the words of the set-up alone.
fn bore(set_up: &SetUp, upright: &Upright, copy: &Copy, job: &Job) -> Vec<Bore> {
    let width = upright.back.total() - upright.front.total();
    let length = copy.length_of(upright.id).unwrap_or(upright.length());
    let x = match set_up.edge {
        Edge::Back => width - set_up.setting.total(),
        // A band that is missing yet makes the panel end sooner, what is milled off later makes it end further out.
        Edge::Front if job.shop.band.on == BandState::AfterBoring => {
            set_up.setting.total() + job.shop.band.thickness - job.shop.band.pre_mill
        }
        Edge::Front => set_up.setting.total(),
    };
    let from_end = match &set_up.holes {
        Holes::ByTape(from_end) => from_end.clone(),
        Holes::Runs(runs) => runs
            .iter()
            .flat_map(|&(first, last)| first..=last)
            .map(|hole| {
                let index = i32::from(set_up.rest.index(hole));
                set_up.rest.stop + Length::PITCH * (index - 1) - set_up.rest.packer
            })
            .collect(),
    };
    let z = from_end.into_iter().map(|it| match set_up.rest.end {
        End::Foot => it,
        End::Head => length - it,
    });
    let z = z.map(|z| z - set_up.off);
    z.map(|z| (x, z, set_up.tool.diameter, set_up.tool.depth))
        .collect()
}

fn keys(job: &Job) -> Vec<Key> {
    job.cabinets.iter().map(|it| it.key).collect()
}

/// The hand the foot is on, by the right-hand rule: right is forward times up.
///
/// Axes: u to the right, x to the back, z up; u times x is z. The edge that is worked is toward you, so forward is away from it.
fn foot_by_right_hand_rule(toward: Hand, edge: Edge) -> Hand {
    let sign_forward = if edge == Edge::Front { 1 } else { -1 };
    let sign_up = if toward == Hand::Right { 1 } else { -1 };
    // x times u is -z: the foot, which is at -z, lies to the right when both signs agree.
    if sign_forward * sign_up == 1 {
        Hand::Right
    } else {
        Hand::Left
    }
}

proptest! {
    #[test]
    fn every_hole_is_bored_once_and_nothing_else(job in job()) {
        let (mut wanted_all, mut bored) = (Bored::new(), Bored::new());
        for cabinet in &job.cabinets {
            for copy in &cabinet.copies {
                wanted(&job, cabinet, copy, &mut wanted_all);
            }
        }
        for it in &plan(&job, &keys(&job), &Times::default()).set_ups {
            let cabinet = job.cabinet(it.cabinet).unwrap();
            let copy = cabinet.copies.iter().find(|copy| copy.key == it.copy).unwrap();
            let layout = Layout::of(&cabinet.built_as(copy), &job);
            let upright = layout.uprights.iter().find(|up| up.id == it.face.panel).unwrap();
            bored.entry((it.cabinet, it.copy, it.face)).or_default().extend(bore(it, upright, copy, &job));
        }
        for all in [&mut wanted_all, &mut bored] {
            all.values_mut().for_each(|bores| bores.sort());
        }
        prop_assert_eq!(wanted_all, bored);
    }

    #[test]
    fn no_row_is_off_by_more_than_a_length_may_be(job in job()) {
        let plan = plan(&job, &keys(&job), &Times::default());
        prop_assert!(plan.set_ups.iter().all(|it| it.off.abs() <= LENGTH_OFF));
        prop_assert!(plan.rocks.iter().all(|it| it.rock() <= LENGTH_OFF * 2));
    }

    #[test]
    fn the_foot_is_where_the_right_hand_rule_has_it(job in job()) {
        for it in &plan(&job, &keys(&job), &Times::default()).set_ups {
            prop_assert_eq!(it.foot_to, foot_by_right_hand_rule(it.face.toward, it.edge));
        }
    }

    #[test]
    fn one_stop_is_on_the_left(mut job in job()) {
        job.shop.reference = Reference::OneStop;
        for it in &plan(&job, &keys(&job), &Times::default()).set_ups {
            let left = if it.foot_to == Hand::Left { End::Foot } else { End::Head };
            prop_assert_eq!(it.rest.end, left);
        }
    }

    #[test]
    fn checks_stand_with_the_last_set_up_of_their_face(job in job()) {
        let plan = plan(&job, &keys(&job), &Times::default());
        let mut last: BTreeMap<(Key, Key, FaceId), usize> = BTreeMap::new();
        for (at, it) in plan.set_ups.iter().enumerate() {
            last.insert((it.cabinet, it.copy, it.face), at);
        }
        for (at, it) in plan.set_ups.iter().enumerate() {
            if last.get(&(it.cabinet, it.copy, it.face)) != Some(&at) {
                prop_assert_eq!(&it.checks, &vec![]);
            }
        }
    }
}
