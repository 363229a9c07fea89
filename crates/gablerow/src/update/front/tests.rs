//! Proof of where a person can walk on a front, and where it leads.

use std::collections::HashSet;

use gablerow_core::elevation::What;
use proptest::prelude::*;

use super::super::tests::{app, fronts, press_all};
use super::*;
use crate::job_file::arbitrary;
use crate::key::Key as Press;
use crate::scene::{Thing, front_spot};

/// The fronts of a cabinet of the job, by its place.
fn on(cabinet: usize) -> App {
    let mut app = app(fronts());
    let keys = std::iter::once(Press::Char('v')).chain((0..cabinet).map(|_| Press::Char('n')));
    press_all(&mut app, &keys.collect::<Vec<_>>());
    app
}

fn at(app: &App) -> Thing {
    front_spot(app).unwrap().at
}

fn after(app: &mut App, keys: &[Press]) -> Thing {
    press_all(app, keys);
    at(app)
}

const FRONT: fn(u32) -> Thing = |key| Thing::Front(Key(key));
const OPENING: fn(u32) -> Thing = |key| Thing::Opening(Key(key));

#[test]
fn arrows_go_over_what_is_seen() {
    let mut app = on(0);
    assert_eq!(at(&app), FRONT(30));
    // The middle one of three drawers is next to the middle of the door.
    assert_eq!(after(&mut app, &[Press::Right]), FRONT(32));
    assert_eq!(after(&mut app, &[Press::Up]), FRONT(33));
    assert_eq!(after(&mut app, &[Press::Up]), FRONT(33));
    assert_eq!(after(&mut app, &[Press::Down, Press::Down]), FRONT(31));
    assert_eq!(after(&mut app, &[Press::Left]), FRONT(30));
}

#[test]
fn behind_a_front_is_its_bay_then_all_that_is_around_it() {
    let mut app = on(0);
    assert_eq!(after(&mut app, &[Press::SPACE]), OPENING(2));
    assert_eq!(after(&mut app, &[Press::Right]), Thing::Partition(Key(20)));
    assert_eq!(after(&mut app, &[Press::Right]), OPENING(3));
    assert_eq!(after(&mut app, &[Press::SPACE]), OPENING(1));
    assert_eq!(after(&mut app, &[Press::SPACE]), FRONT(30));
}

#[test]
fn a_partition_beside_an_open_bay_is_seen() {
    let mut app = on(1);
    assert_eq!(
        after(&mut app, &[Press::Up, Press::Left]),
        Thing::Partition(Key(21))
    );
    assert_eq!(after(&mut app, &[Press::Left]), OPENING(4));
    let spot = front_spot(&app).unwrap();
    assert_eq!((spot.opening, spot.bay), (Key(4), Key(4)));
}

/// How many fronts close an opening of the cabinet one is in.
fn closed_by(app: &App, opening: u32) -> usize {
    let mut count = 0;
    let cabinet = app.desk.job.cabinet(app.spot.cabinet).unwrap();
    cabinet.opening.each(&mut |it| {
        if it.key == Key(opening) {
            count = it.fronts.len();
        }
    });
    count
}

#[test]
fn a_door_on_a_partition_is_refused_and_hangs_on_the_bay_beside_it() {
    let mut app = on(1);
    press_all(&mut app, &[Press::Up, Press::Left]);
    let before = app.desk.job.clone();
    press_all(&mut app, &[Press::Char('d')]);
    assert_eq!(app.desk.job, before);
    assert!(app.notice.is_some());
    assert_eq!(after(&mut app, &[Press::Left]), OPENING(4));
    press_all(&mut app, &[Press::Char('d')]);
    assert_eq!(closed_by(&app, 4), 1);
}

#[test]
fn a_door_over_all_that_a_partition_divides_hangs_behind_it() {
    let mut app = on(1);
    press_all(&mut app, &[Press::Up, Press::Left]);
    let Thing::Opening(all) = after(&mut app, &[Press::SPACE]) else {
        panic!("an opening is behind a partition");
    };
    let before = closed_by(&app, all.0);
    press_all(&mut app, &[Press::Char('d')]);
    assert_ne!(closed_by(&app, all.0), before);
}

#[test]
fn a_drawer_behind_a_door_is_reached_from_its_bay() {
    let mut app = on(1);
    assert_eq!(after(&mut app, &[Press::SPACE, Press::Down]), FRONT(31));
    assert_eq!(front_spot(&app).unwrap().bay, Key(2));
}

#[test]
fn the_front_goes_back_where_one_came_from() {
    let mut app = app(fronts());
    press_all(&mut app, &[Press::Char('m'), Press::Char('v'), Press::Esc]);
    assert_eq!(app.screen, Screen::Book);
    assert_eq!(front_spot(&app), None);
    press_all(&mut app, &[Press::Char('j'), Press::Down, Press::Char('v')]);
    assert_eq!((app.screen, app.spot.cabinet), (Screen::Front, Key(2)));
    press_all(&mut app, &[Press::Esc]);
    assert_eq!(app.screen, Screen::Job(Key(2)));
}

#[test]
fn every_front_that_is_carried_leads_to_its_carrier_and_back() {
    for cabinet in 0..4 {
        let app = on(cabinet);
        let scene = FrontScene::at(&app).unwrap();
        for front in scene.scene.layout.fronts.iter().map(|front| front.key) {
            for (key, hand) in [(Press::Enter, Hand::Left), (Press::Char('m'), Hand::Right)] {
                let carriers = scene.carriers(front);
                let shapes = &scene.elevation.shapes;
                let is_there = shapes.iter().any(|shape| match shape.what {
                    What::Plate(own, wall) | What::Runner(own, wall) => {
                        wall == hand && carriers.iter().any(|(_, carrier)| *carrier == own)
                    }
                    _ => false,
                });
                let mut app = app.clone();
                app.front.at = front;
                press_all(&mut app, &[key]);
                assert_eq!(app.screen, Screen::Face);
                let face = app.spot.face;
                let bays = scene.scene.layout.bays_at(face);
                assert!(bays.into_iter().any(|(_, wall)| wall == hand), "{face:?}");
                press_all(&mut app, &[Press::Char('v')]);
                if is_there {
                    assert_eq!(at(&app), Thing::Front(front));
                }
            }
        }
    }
}

#[test]
fn plates_that_name_no_door_carry_the_one_that_hangs_on_their_wall() {
    let text = include_bytes!("../../../../../tests/jobs/door_over_two_bays.json");
    let app = app(crate::job_file::read(text).unwrap());
    let scene = FrontScene::at(&app).unwrap();
    // Holes 3 and 22 - 4 + 1 on the left wall.
    assert_eq!(scene.carriers(Key(30)), [(3, Key(13)), (19, Key(14))]);
}

#[test]
fn whatever_is_seen_can_be_walked_to() {
    for cabinet in 0..4 {
        let app = on(cabinet);
        let scene = FrontScene::at(&app).unwrap();
        let first = scene.spot(Key(u32::MAX)).unwrap().at.key();
        let mut reached = HashSet::from([first]);
        let mut new = vec![first];
        let ways = [
            Toward::Up,
            Toward::Down,
            Toward::Side(Hand::Left),
            Toward::Side(Hand::Right),
        ];
        while let Some(key) = new.pop() {
            let next = ways.into_iter().filter_map(|way| scene.step(key, way));
            new.extend(next.filter(|&key| reached.insert(key)));
        }
        let seen = scene.scene.layout.fronts.iter();
        for front in seen.filter(|front| front.kind.is_seen()) {
            assert!(reached.contains(&front.key), "{:?} of {cabinet}", front.key);
        }
    }
}

proptest! {
    #[test]
    fn the_person_always_stands_on_something(
        job in arbitrary::job(),
        keys in prop::collection::vec(0..8_usize, 0..20),
    ) {
        let mut app = app(job);
        press_all(&mut app, &[Press::Char('v')]);
        let ways = [
            Press::Up, Press::Down, Press::Left, Press::Right, Press::SPACE,
            Press::Char('n'), Press::Char('p'), Press::Char('b'),
        ];
        for key in keys {
            press_all(&mut app, &[ways[key]]);
            let spot = front_spot(&app).unwrap();
            prop_assert_eq!(spot.at.key(), app.front.at);
            let cabinet = app.desk.job.cabinet(spot.cabinet).unwrap();
            prop_assert!(cabinet.opening.bay(spot.bay).is_some());
            let mut keys = Vec::new();
            cabinet.each_key(&mut |key| keys.push(key));
            prop_assert!(keys.contains(&spot.at.key()) && keys.contains(&spot.opening));
        }
    }
}
