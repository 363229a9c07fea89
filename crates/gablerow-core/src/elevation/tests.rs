//! A cabinet from the front, against its layout.

use proptest::prelude::*;

use super::*;
use crate::arbitrary::*;
use crate::job::{Front, FrontHeight, Job, Label};
use crate::parts::Parts;

fn elevation(job: &Job) -> Elevation {
    Elevation::of(&job.cabinets[0], &lay_out(job))
}

fn found(elevation: &Elevation, what: What) -> (Span, Span) {
    let shape = elevation.shapes.iter().find(|shape| shape.what == what);
    shape.map(|shape| (shape.across, shape.z)).unwrap()
}

fn span(from: Length, to: Length) -> Span {
    Span::new(from, to)
}

// Common practice: a plate along the row takes 28 either way of its middle, 96 for one on holes 3 and 4; it stands 15 proud.
#[test]
fn a_plate_stands_before_its_own_wall() {
    let job = bay_with(|bay| {
        bay.plates
            .extend([plate(3, Hand::Left, 3), plate(4, Hand::Right, 3)]);
    });
    let elevation = elevation(&job);
    let (left, z) = found(&elevation, What::Plate(Key(3), Hand::Left));
    assert_eq!((left, z), (span(mm(18), mm(33)), span(mm(68), mm(124))));
    let (right, _) = found(&elevation, What::Plate(Key(4), Hand::Right));
    assert_eq!(right, span(mm(600 - 33), mm(600 - 18)));
}

#[test]
fn a_loose_shelf_lies_on_the_pins_of_its_hole() {
    let job = bay_with(|bay| bay.shelves.push(shelf(3, 11)));
    // Hole 11 is at 16 + 10 * 32 = 336; the pin lifts the shelf by 2.5; it ends 1 short of either wall.
    let (across, z) = found(&elevation(&job), What::Shelf(Key(3)));
    assert_eq!(across, span(mm(19), mm(581)));
    assert_eq!(z, span(um(338_500), um(356_500)));
}

#[test]
fn leaves_of_a_pair_are_hung_on_either_hand() {
    let job = cabinet_with(|cabinet| {
        let name = Label::known("P1");
        let pair = Front::plain(Key(20), name, FrontKind::Pair);
        cabinet.opening.fronts.push(pair);
    });
    let elevation = elevation(&job);
    let leaf = |hand| {
        let look = Look::Hung(hand);
        found(
            &elevation,
            What::Front(Leaf {
                key: Key(20),
                opening: Key(1),
                look,
            }),
        )
        .0
    };
    // 600 less a reveal of 1.5 at either edge, with a gap of 3 in the middle.
    assert_eq!(leaf(Hand::Left), span(um(1_500), um(298_500)));
    assert_eq!(leaf(Hand::Right), span(um(301_500), um(598_500)));
    let (around, _) = elevation.around(Key(20)).unwrap();
    assert_eq!(around, span(um(1_500), um(598_500)));
}

#[test]
fn the_room_of_a_box_ends_below_the_runners_above_and_behind_its_own_front() {
    let job = bay_with(|bay| {
        let serving = |key, hole, front| crate::job::Runner {
            serves: Some(Key(front)),
            ..runner(key, hole, 500)
        };
        bay.runners
            .extend([serving(3, 2, 20), serving(4, 10, 21), serving(5, 17, 22)]);
    });
    let mut job = job;
    let drawer = |key, modules| Front {
        height: FrontHeight::Modules(modules),
        ..Front::plain(Key(key), Label::known("W"), FrontKind::Drawer)
    };
    job.cabinets[0].opening.fronts = vec![drawer(20, 8), drawer(21, 7), drawer(22, 7)];
    let elevation = elevation(&job);
    let room = |key| found(&elevation, What::Box(Key(key)));
    // Runners take 14 below and 22 above their holes, and 21 before the wall; hole 2 is at 48, hole 10 at 304.
    assert_eq!(room(3).0, span(mm(39), mm(561)));
    assert_eq!(room(3).1, span(mm(34), um(254_500)));
    // The ceiling is at 704 - 18; the head of the highest front is above it.
    assert_eq!(room(5).1, span(mm(514), mm(686)));
}

// Geometry: fronts of 11 modules are 349 high; the lower ends at 1.5 + 349.
#[test]
fn runners_set_by_hand_carry_the_same_front_in_drawing_and_parts() {
    let mut job = bay_with(|bay| bay.runners = vec![runner(3, 2, 500), runner(4, 6, 500)]);
    let drawer = |key, kind| Front {
        height: FrontHeight::Modules(11),
        ..Front::plain(Key(key), Label::known("W"), kind)
    };
    let (seen, behind) = (FrontKind::Drawer, FrontKind::Inner);
    job.cabinets[0].opening.fronts = vec![drawer(20, seen), drawer(21, seen), drawer(22, behind)];
    let room = found(&elevation(&job), What::Box(Key(4)));
    assert_eq!(room.1.to, um(350_500));
    let layout = lay_out(&job);
    let parts = Parts::of(&job.cabinets[0], &layout, &job);
    let boxes: Vec<_> = parts.boxes.iter().map(|it| (it.front, it.runner)).collect();
    assert_eq!(boxes, [(Key(20), Key(3))]);
}

#[test]
fn a_divided_opening_is_all_of_its_bays() {
    let job = cabinet_x(|_| ());
    let (across, z) = found(&elevation(&job), What::Opening(Key(1)));
    assert_eq!(across, span(um(18_600), um(921_400)));
    assert_eq!(z, span(um(18_600), um(781_400)));
}

proptest! {
    #[test]
    fn every_part_of_a_layout_is_drawn_once(job in job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            let elevation = Elevation::of(cabinet, &layout);
            let count = |is: fn(What) -> bool| {
                elevation.shapes.iter().filter(|shape| is(shape.what)).count()
            };
            prop_assert_eq!(count(|what| matches!(what, What::Upright(_))), layout.uprights.len());
            prop_assert_eq!(count(|what| matches!(what, What::Panel(..))), layout.panels.len());
            prop_assert_eq!(count(|what| matches!(what, What::Bay(_))), layout.bays.len());
            let fronts = count(|what| matches!(what, What::Front(_) | What::Behind(_)));
            prop_assert_eq!(fronts, layout.fronts.len());
        }
    }

    #[test]
    fn whatever_is_solid_lies_within_the_whole(job in job()) {
        for cabinet in &job.cabinets {
            let elevation = Elevation::of(cabinet, &Layout::of(cabinet, &job));
            for shape in elevation.shapes.iter().filter(|shape| shape.what.is_solid()) {
                prop_assert_eq!(elevation.across.with(shape.across), elevation.across);
                prop_assert_eq!(elevation.z.with(shape.z), elevation.z);
            }
        }
    }

    #[test]
    fn every_fitting_that_has_its_card_is_drawn(job in job()) {
        for cabinet in &job.cabinets {
            let elevation = Elevation::of(cabinet, &Layout::of(cabinet, &job));
            let drawn = |key: Key| {
                elevation.shapes.iter().filter(|shape| match shape.what {
                    What::Shelf(own) | What::Plate(own, _) | What::Runner(own, _) => own == key,
                    _ => false,
                }).count()
            };
            let (cards, mut wrong) = (&job.cards, Vec::new());
            cabinet.opening.each(&mut |opening| {
                let Division::Bay(bay) = &opening.division else { return };
                let runs = |runner: &crate::job::Runner| {
                    cards.runner(&runner.card).and_then(|card| card.length(runner.length)).is_some()
                };
                let shelves = bay.shelves.iter().map(|shelf| (shelf.key, 1));
                let plates = bay.plates.iter().filter(|plate| cards.hinge(&plate.card).is_some());
                let plates = plates.map(|plate| (plate.key, 1));
                let runners = bay.runners.iter().filter(|runner| runs(runner));
                let runners = runners.map(|runner| (runner.key, 2));
                let all = shelves.chain(plates).chain(runners);
                wrong.extend(all.filter(|&(key, count)| drawn(key) != count));
            });
            prop_assert_eq!(wrong, []);
        }
    }
}
