//! Dividing, uniting, closing: what edits of openings come to.

use crate::arbitrary::*;
use crate::edit::{Edit, PartChoice, PartMeasure, Way, part_lines};
use crate::job::{Division, FrontHeight, FrontKind, Hand, Job, Key};
use crate::layout::Layout;
use crate::measure::Length;

const CABINET: Key = Key(1);

#[track_caller]
fn make(job: &mut Job, edit: &Edit) -> String {
    let step = edit
        .apply(job)
        .unwrap_or_else(|refusal| panic!("{refusal}"));
    step.apply(job);
    assert_eq!(job.validate(), Ok(()));
    step.label
}

#[track_caller]
fn refused(job: &Job, edit: &Edit) -> String {
    edit.apply(job).unwrap_err().0
}

fn divide(opening: u32, way: Way, parts: u16) -> Edit {
    Edit::Divide {
        cabinet: CABINET,
        opening: Key(opening),
        way,
        parts,
    }
}

/// The plain cabinet, its bay in three with partitions between.
fn three_bays() -> (Job, Layout) {
    let mut job = job_with(|_| ());
    let label = make(&mut job, &divide(1, Way::SideBySide, 3));
    assert_eq!(label, "2 times a partition in bay 1");
    let layout = lay_out(&job);
    (job, layout)
}

#[test]
fn bays_and_partitions_fill_the_cabinet_exactly() {
    let (_, layout) = three_bays();
    // 600 - 4 * 18 = 528, a third is 176.
    let widths: Vec<Length> = layout.bays.iter().map(|bay| bay.width).collect();
    assert_eq!(widths, [mm(176); 3]);
    assert_eq!(layout.uprights.len(), 4);
}

#[test]
fn what_a_bay_held_stays_in_its_first_part() {
    let mut job = bay_with(|bay| bay.zones = vec![zone(30, 5..=9)]);
    make(&mut job, &divide(1, Way::SideBySide, 2));
    let layout = lay_out(&job);
    let held = |at: usize| {
        let bay = job.cabinets[0].opening.bay(layout.bays[at].key).unwrap();
        bay.zones.len()
    };
    assert_eq!((held(0), held(1)), (1, 0));
}

#[test]
fn a_part_divided_the_same_way_adds_to_the_row() {
    let (mut job, layout) = three_bays();
    let middle = layout.bays[1].key;
    make(&mut job, &divide(middle.0, Way::SideBySide, 2));
    let Division::SideBySide(row) = &job.cabinets[0].opening.division else {
        panic!("no row");
    };
    assert_eq!(row.parts().count(), 4);
    let layout = lay_out(&job);
    // 600 - 5 * 18 = 510 in four: 127.5.
    assert!(layout.bays.iter().all(|bay| bay.width == um(127_500)));
}

#[test]
fn new_parts_are_made_like_their_neighbours() {
    let inset = Some(crate::job::Inset {
        front: Some(mm(20)),
        set_in: mm(1),
    });
    let mut job = bay_with(|bay| bay.inset = inset);
    make(&mut job, &divide(1, Way::SideBySide, 2));
    partition_of(&mut job).foot.housing = mm(5);
    let right = lay_out(&job).bays[1].key;
    make(&mut job, &divide(right.0, Way::SideBySide, 2));
    let layout = lay_out(&job);
    for bay in &layout.bays {
        let opening = &job.cabinets[0].opening;
        assert_eq!(opening.bay(bay.key).unwrap().inset, inset);
        // 37 and an inset front of 20, set in by 1.
        assert_eq!(bay.front_row.total(), mm(58));
    }
    // Both let in 5 into the bottom of 18.
    let feet = layout.uprights[1..3].iter().map(|it| it.foot.total());
    assert_eq!(feet.collect::<Vec<_>>(), [mm(13), mm(13)]);
    let door = Edit::Door {
        cabinet: CABINET,
        opening: right,
    };
    make(&mut job, &door);
    let layout = lay_out(&job);
    let door = &layout.fronts[0];
    assert_eq!(door.thickness, mm(20));
    let read = PartMeasure::FrontThickness.read(&job.cabinets[0], &layout, door.key);
    assert_eq!(read, Some(mm(20)), "the sizes say what is laid out");
}

#[test]
fn fixed_shelves_stand_on_holes_and_share_out_the_fittings() {
    let mut job = bay_with(|bay| bay.zones = vec![zone(30, 3..=5), zone(31, 15..=18)]);
    make(&mut job, &divide(1, Way::Stacked, 2));
    let layout = lay_out(&job);
    // 18 to 686 is 668 high; half of it is 352, which is hole 11 or 12 at 336 and 368: the lower.
    assert_eq!(layout.panels[1].z.from + mm(9), mm(336));
    let zones = |at: usize| {
        let bay = job.cabinets[0].opening.bay(layout.bays[at].key).unwrap();
        bay.zones.iter().map(|zone| zone.key).collect::<Vec<_>>()
    };
    assert_eq!((zones(0), zones(1)), (vec![Key(30)], vec![Key(31)]));
}

#[test]
fn dividing_and_uniting_leaves_the_bay_as_it_was() {
    let before = bay_with(|bay| bay.zones = vec![zone(30, 5..=9)]);
    for way in [Way::SideBySide, Way::Stacked] {
        let mut job = before.clone();
        make(&mut job, &divide(1, way, 2));
        let layout = lay_out(&job);
        let shelf = layout.panels.iter().find_map(|panel| panel.owner);
        let partition = layout.uprights.iter().find_map(|up| up.id.partition());
        let divider = partition.or(shelf).unwrap();
        let edit = Edit::Unite {
            cabinet: CABINET,
            divider,
        };
        make(&mut job, &edit);
        assert_eq!(job, before, "{way:?}");
    }
}

/// Which bays, from the left, have plates, and on which wall.
fn plated(job: &Job) -> Vec<(usize, Hand)> {
    let layout = lay_out(job);
    let bays = layout.bays.iter().enumerate().flat_map(|(at, made)| {
        let bay = job.cabinets[0].opening.bay(made.key).unwrap();
        bay.plates.iter().map(move |plate| (at, plate.wall))
    });
    bays.collect()
}

// Seen by a door hung right over a bay that is divided later: its plates stood on the new partition.
#[test]
fn plates_stay_on_their_wall_when_a_bay_is_divided() {
    let both = [plate(30, Hand::Left, 3), plate(31, Hand::Right, 3)];
    let mut job = bay_with(|bay| bay.plates = both.to_vec());
    make(&mut job, &divide(1, Way::SideBySide, 3));
    assert_eq!(plated(&job), [(0, Hand::Left), (2, Hand::Right)]);
    let last = lay_out(&job).bays[2].key;
    make(&mut job, &divide(last.0, Way::SideBySide, 2));
    assert_eq!(plated(&job), [(0, Hand::Left), (3, Hand::Right)]);
}

#[test]
fn plates_go_with_a_partition_out_of_every_bay_beside_it() {
    let mut job = job_with(|_| ());
    make(&mut job, &divide(1, Way::SideBySide, 2));
    let left = lay_out(&job).bays[0].key;
    make(&mut job, &divide(left.0, Way::Stacked, 2));
    let layout = lay_out(&job);
    let divider = layout.uprights[1].id.partition().unwrap();
    let upper = layout.bays[1].key;
    let hinged = [plate(30, Hand::Left, 15), plate(31, Hand::Right, 15)];
    job.cabinets[0].opening.bay_mut(upper).unwrap().plates = hinged.to_vec();
    let cabinet = CABINET;
    make(&mut job, &Edit::Unite { cabinet, divider });
    assert_eq!(plated(&job), [(1, Hand::Left)]);
}

#[test]
fn a_division_that_cannot_be_is_refused_in_words() {
    let job = job_with(|_| ());
    assert_eq!(
        refused(&job, &divide(1, Way::SideBySide, 1)),
        "one part is no division; 2 or more divide it"
    );
    assert_eq!(
        refused(&job, &divide(1, Way::Stacked, 40)),
        "40 parts, but 668.0 high has no hole for each shelf; take fewer"
    );
    let (job, _) = three_bays();
    assert_eq!(
        refused(&job, &divide(1, Way::Stacked, 2)),
        "bays 1-3 is divided already; stand in one of its bays"
    );
}

#[test]
fn a_door_changes_hands_and_goes() {
    let mut job = job_with(|_| ());
    let door = Edit::Door {
        cabinet: CABINET,
        opening: Key(1),
    };
    let labels: Vec<String> = (0..4).map(|_| make(&mut job, &door)).collect();
    assert_eq!(
        labels,
        [
            "door, hung left on bay 1",
            "door, hung right on bay 1",
            "pair of doors on bay 1",
            "no door on bay 1"
        ]
    );
    assert_eq!(job, job_with(|_| ()));
}

fn heights(job: &Job) -> Vec<FrontHeight> {
    let fronts = job.cabinets[0].opening.fronts.iter();
    fronts.map(|front| front.height).collect()
}

// Geometry: 704 with split reveals is 22 modules; in three the lowest gets 8: fronts 253, 221, 221.
#[test]
fn drawers_share_whole_modules_the_lowest_ones_the_taller() {
    let mut job = job_with(|_| ());
    let drawers = |count| Edit::Drawers {
        cabinet: CABINET,
        opening: Key(1),
        count,
    };
    make(&mut job, &drawers(3));
    assert_eq!(heights(&job), [8, 7, 7].map(FrontHeight::Modules));
    let made: Vec<Length> = lay_out(&job)
        .fronts
        .iter()
        .map(|front| front.height.total())
        .collect();
    assert_eq!(made, [mm(253), mm(221), mm(221)]);
    make(&mut job, &drawers(4));
    assert_eq!(heights(&job), [6, 6, 5, 5].map(FrontHeight::Modules));
    assert_eq!(make(&mut job, &drawers(4)), "no drawers on bay 1");
    assert!(
        refused(&job, &drawers(23)).ends_with("a drawer front takes one module of 32 at least")
    );
}

// Geometry: 704 is 22 modules; a false front of 4 leaves 18, so 9 and 9: 285 + 285 + 125 and two gaps of 3 are 701.
#[test]
fn drawers_stand_under_a_false_front_whichever_comes_first() {
    let (cabinet, opening, count) = (CABINET, Key(1), 2);
    let drawers = Edit::Drawers {
        cabinet,
        opening,
        count,
    };
    let false_front = Edit::FalseFront { cabinet, opening };
    let shares = [9, 9, 4].map(FrontHeight::Modules);
    for edits in [[&drawers, &false_front], [&false_front, &drawers]] {
        let mut job = job_with(|_| ());
        for edit in edits {
            make(&mut job, edit);
        }
        assert_eq!(heights(&job), shares);
        let last = job.cabinets[0].opening.fronts.last();
        assert_eq!(last.unwrap().kind, FrontKind::False);
        assert_eq!(lay_out(&job).open_points, []);
    }
}

#[test]
fn a_false_front_taken_away_gives_its_height_back() {
    let (cabinet, opening, count) = (CABINET, Key(1), 3);
    let mut job = job_with(|_| ());
    let drawers = Edit::Drawers {
        cabinet,
        opening,
        count,
    };
    make(&mut job, &drawers);
    let before = heights(&job);
    let false_front = Edit::FalseFront { cabinet, opening };
    make(&mut job, &false_front);
    make(&mut job, &false_front);
    assert_eq!(heights(&job), before);
}

#[test]
fn drawers_over_a_door_and_behind_it() {
    let mut job = job_with(|_| ());
    let (cabinet, opening) = (CABINET, Key(1));
    make(&mut job, &Edit::Door { cabinet, opening });
    let count = 2;
    make(
        &mut job,
        &Edit::Drawers {
            cabinet,
            opening,
            count,
        },
    );
    make(
        &mut job,
        &Edit::InnerDrawers {
            cabinet,
            opening,
            count,
        },
    );
    let kinds: Vec<FrontKind> = job.cabinets[0]
        .opening
        .fronts
        .iter()
        .map(|front| front.kind)
        .collect();
    let (drawer, inner) = (FrontKind::Drawer, FrontKind::Inner);
    assert_eq!(
        kinds,
        [FrontKind::Door(Hand::Left), drawer, drawer, inner, inner]
    );
    assert_eq!(heights(&job)[3..], [10, 10].map(FrontHeight::Modules));
}

#[test]
fn every_line_of_a_part_can_be_read_and_stepped_or_typed() {
    let mut job = cabinet_with(|cabinet| {
        let shelf = fixed_shelf(13, crate::job::ShelfHeight::Underside(mm(343)));
        let mut right = stacked(5, empty(11), shelf, empty(12));
        right.fronts = vec![door(20, Hand::Left)];
        let left = bay(4, |bay| bay.inset = Some(crate::job::Inset::default()));
        cabinet.opening = side_by_side(1, left, [(partition(9), right)]);
    });
    let mut count = 0;
    for part in [4, 5, 9, 11, 13, 20].map(Key) {
        for line in part_lines(&job.cabinets[0], part) {
            count += 1;
            let cabinet = CABINET;
            let before = job.clone();
            match line {
                crate::edit::PartLine::Measure(measure) => {
                    let layout = lay_out(&job);
                    let value = measure.read(&job.cabinets[0], &layout, part);
                    let Some(value) = value else {
                        assert!(matches!(
                            measure,
                            PartMeasure::InsetFront | PartMeasure::SetIn
                        ));
                        continue;
                    };
                    let value = value + mm(5);
                    let edit = Edit::PartMeasure {
                        cabinet,
                        part,
                        measure,
                        value,
                    };
                    make(&mut job, &edit);
                    let read = measure.read(&job.cabinets[0], &lay_out(&job), part);
                    assert_eq!(read, Some(value), "{measure:?} of {part}");
                }
                crate::edit::PartLine::Choice(choice) => {
                    let value = |job: &Job| choice.value(&job.cabinets[0], part, job.unit).unwrap();
                    let now = value(&job);
                    make(
                        &mut job,
                        &Edit::PartChoose {
                            cabinet,
                            part,
                            choice,
                        },
                    );
                    assert_ne!(value(&job), now, "{choice:?} of {part}");
                }
            }
            job = before;
        }
    }
    assert!(count >= 20, "{count}");
    assert_eq!(
        PartChoice::Board.value(&job.cabinets[0], Key(4), job.unit),
        None
    );
}
