//! What holds of the plan of any job: bored literally, it gives the holes of the layout and no others.

use super::*;
use crate::cards::Cards;
use crate::job::LENGTH_OFF;
use crate::job::{BandState, Cabinet, Copy, End, Hand, Reference};
use crate::layout::{Layout, Upright, Use};
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
    let length = upright.length()
        + copy
            .longer(upright.id, upright.length())
            .unwrap_or(Length::ZERO);
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
        Holes::Runs(_) => set_up
            .positions
            .iter()
            .flat_map(|at| at.runs.iter().flat_map(|run| run.0..=run.1))
            .map(|hole| from_end(set_up, hole))
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

/// From the end on the stop to a hole, as the rail has it.
fn from_end(set_up: &SetUp, hole: i16) -> Length {
    let index = i32::from(set_up.rest.index(hole));
    set_up.rest.stop + Length::PITCH * (index - 1) - set_up.rest.packer
}

/// The hole numbers of one place of the rail.
fn numbers(at: &Position) -> impl Iterator<Item = i16> + '_ {
    at.runs.iter().flat_map(|run| run.0..=run.1)
}

/// A job whose cabinets are bored with its first rail, that one covering so many holes.
fn with_rail(job: &mut Job, holes: u32) -> i16 {
    let mut rail = Cards::starter().rails.swap_remove(0);
    rail.index_holes.value = holes;
    job.shop.rail = Some(rail.id.clone());
    job.cards.rails = [rail].into();
    job.rail().unwrap().covers()
}

/// The lowest and the highest hole of each hinge plate of a copy, where it has several in one row.
fn plates(job: &Job, cabinet: Key, copy: Key) -> Vec<(FaceId, Length, i16, i16)> {
    let cabinet = job.cabinet(cabinet).unwrap();
    let copy = cabinet.copies.iter().find(|it| it.key == copy).unwrap();
    let layout = Layout::of(&cabinet.built_as(copy), job);
    let mut plates: BTreeMap<(FaceId, Length, Key), (i16, i16)> = BTreeMap::new();
    for upright in &layout.uprights {
        for (face, holes) in upright.bored(&layout) {
            for hole in holes {
                let Some(number) = hole.number else { continue };
                for (_, owner) in hole.users.iter().filter(|user| user.0 == Use::Plate) {
                    let key = (face, hole.x - upright.front.total(), *owner);
                    let plate = plates.entry(key).or_insert((number, number));
                    *plate = (plate.0.min(number), plate.1.max(number));
                }
            }
        }
    }
    let plates = plates.into_iter();
    plates
        .map(|((face, row, _), (low, high))| (face, row, low, high))
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
    fn no_row_is_off_by_more_than_a_length_may_be(mut job in job()) {
        let copies = job.cabinets.iter_mut().flat_map(|it| &mut it.copies);
        copies.flat_map(|it| &mut it.as_cut).for_each(|cut| cut.diagonals = None);
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

    #[test]
    fn a_rail_bores_what_it_covers_and_is_pinned_in_holes_bored_before(
        mut job in job(), holes in 2..30_u32,
    ) {
        let covers = with_rail(&mut job, holes);
        for it in &plan(&job, &keys(&job), &Times::default()).set_ups {
            let mut bored: Vec<i16> = Vec::new();
            for at in &it.positions {
                let index = |hole: i16| it.rest.index(hole) - at.moved;
                // A hole that lies off the panel is a stop, and nobody bores it.
                let on_panel = |hole: &i16| from_end(it, *hole) > Length::ZERO;
                prop_assert!(numbers(at).all(|hole| index(hole) <= covers));
                prop_assert!(numbers(at).filter(on_panel).all(|hole| it.rest.index(hole) >= 1));
                match at.held {
                    Held::Stop => prop_assert_eq!(at.moved, 0),
                    Held::Pins(pins) => for pin in pins {
                        prop_assert!(bored.contains(&pin) && (1..=covers).contains(&index(pin)));
                    },
                    Held::Tape(at_first) => prop_assert_eq!(
                        at_first + Length::PITCH * i32::from(index(numbers(at).next().unwrap()) - 1),
                        from_end(it, numbers(at).next().unwrap())
                    ),
                }
                bored.extend(numbers(at));
            }
            bored.sort();
            let all: Vec<i16> = match &it.holes {
                Holes::Runs(runs) => runs.iter().flat_map(|run| run.0..=run.1).collect(),
                Holes::ByTape(_) => Vec::new(),
            };
            prop_assert_eq!(bored, all);
        }
    }

    #[test]
    fn no_plate_and_no_runner_pair_straddles_a_junction_bored_from_two_ends(
        mut job in job(), holes in 2..30_u32,
    ) {
        job.shop.reference = Reference::Foot;
        with_rail(&mut job, holes);
        let plan = plan(&job, &keys(&job), &Times::default());
        // Of each copy: the highest number from the foot, the lowest from the head.
        let mut ends: BTreeMap<(Key, Key), (i16, i16)> = BTreeMap::new();
        for it in &plan.set_ups {
            let ends = ends.entry((it.cabinet, it.copy)).or_insert((i16::MIN, i16::MAX));
            for hole in it.positions.iter().flat_map(numbers) {
                match it.rest.end {
                    End::Foot => ends.0 = ends.0.max(hole),
                    End::Head => ends.1 = ends.1.min(hole),
                }
            }
        }
        for ((cabinet, copy), (below, above)) in ends {
            // One height parts the copy, so what is at one number of all its walls comes from one end.
            prop_assert!(below < above);
            for (face, row, low, high) in plates(&job, cabinet, copy) {
                prop_assert!(high <= below || low >= above, "{:?} {:?} {}-{}", face, row, low, high);
            }
        }
    }

    #[test]
    fn left_and_right_are_bored_as_a_pair_at_one_setting(mut job in job()) {
        for copy in job.cabinets.iter_mut().flat_map(|cabinet| &mut cabinet.copies) {
            copy.as_cut.clear();
        }
        let plan = plan(&job, &keys(&job), &Times::default());
        let inside = |it: &SetUp, hand| it.face == FaceId::inside(hand) && !it.is_parted;
        let left = plan.set_ups.iter().filter(|it| inside(it, Hand::Left));
        for one in left {
            let mate = |it: &&SetUp| {
                inside(it, Hand::Right)
                    && (it.cabinet, it.copy, it.row, it.tool) == (one.cabinet, one.copy, one.row, one.tool)
            };
            for mate in plan.set_ups.iter().filter(mate) {
                prop_assert_eq!((mate.edge, mate.setting.total()), (one.edge, one.setting.total()));
            }
        }
    }
}
