//! Mirror images.

use proptest::prelude::*;

use crate::arbitrary::{
    self, LEFT_INSIDE, RIGHT_INSIDE, bay, cabinet_with, door, mm, partition, partition_face, plate,
    runner, side_by_side,
};
use crate::job::{Bay, Cabinet, Division, FrontKind, Hand, Key, Spacers};

proptest! {
    #[test]
    fn turning_twice_is_identity(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            prop_assert_eq!(&cabinet.mirrored().mirrored(), cabinet);
        }
    }

    #[test]
    fn mirror_image_of_what_a_job_holds_can_be_held_too(mut job in arbitrary::job()) {
        job.cabinets = job.cabinets.iter().map(Cabinet::mirrored).collect();
        prop_assert_eq!(job.validate(), Ok(()));
    }
}

#[test]
fn faces_look_the_other_way_in_the_mirror() {
    assert_eq!(LEFT_INSIDE.mirrored(), RIGHT_INSIDE);
    assert_eq!(LEFT_INSIDE.behind().mirrored(), RIGHT_INSIDE.behind());
    let partition = |hand| partition_face(9, hand);
    assert_eq!(partition(Hand::Left).mirrored(), partition(Hand::Right));
}

/// A cabinet whose left bay has a door hung left with its plate, and a packed runner; its left outside is seen.
fn handed() -> Cabinet {
    let job = cabinet_with(|cabinet| {
        cabinet.carcass.sides.exposed_left = true;
        let mut left = bay(11, |bay| {
            bay.plates = vec![plate(3, Hand::Left, 3)];
            let mut packed = runner(4, 9, 500);
            packed.spacers.left = mm(8);
            bay.runners = vec![packed];
        });
        left.fronts = vec![door(5, Hand::Left)];
        let right = bay(12, |_| ());
        cabinet.opening = side_by_side(1, left, [(partition(9), right)]);
    });
    job.cabinets[0].clone()
}

#[test]
fn left_and_right_change_places_and_names_stay() {
    let mirror = handed().mirrored();
    let sides = &mirror.carcass.sides;
    assert_eq!((sides.exposed_left, sides.exposed_right), (false, true));
    let Division::SideBySide(parts) = &mirror.opening.division else {
        panic!("no parts");
    };
    let (partition, right) = &parts.rest[0];
    let keys = [parts.first.opening.key, partition.key, right.opening.key];
    assert_eq!(keys, [Key(12), Key(9), Key(11)]);
    assert_eq!(right.opening.fronts[0].kind, FrontKind::Door(Hand::Right));
    let bay: &Bay = mirror.opening.bay(Key(11)).unwrap();
    assert_eq!(bay.plates[0].wall, Hand::Right);
    let packed = Spacers {
        right: mm(8),
        ..Spacers::default()
    };
    assert_eq!(bay.runners[0].spacers, packed);
}
