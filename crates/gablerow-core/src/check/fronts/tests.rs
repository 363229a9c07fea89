//! Proof of `fronts`.

use super::super::fixture::*;
use super::*;
use crate::job::{FrontHeight, Hand, Key, Label};

fn front(key: u32, name: &str, kind: FrontKind) -> Front {
    Front::plain(Key(key), Label::new(name).unwrap(), kind)
}

fn door(key: u32) -> Front {
    front(key, "door 1", FrontKind::Door(Hand::Left))
}

#[test]
fn a_door_hangs_on_two_plates_at_least() {
    let plates = |holes: &'static [i16]| {
        said(Rule::FrontNotCarried, move |case| {
            case.cabinet().opening.fronts = vec![door(30)];
            for &hole in holes {
                case.plate(1, LEFT, hole);
            }
        })
    };
    assert_eq!(
        plates(&[]),
        ["door 1 has no hinge plate yet; set one, or take what is proposed"]
    );
    assert_eq!(
        plates(&[3]),
        ["door 1 has one hinge plate; a door hangs on two at least"]
    );
    assert_eq!(plates(&[3, 15]), Vec::<String>::new());
}

#[test]
fn plates_on_the_other_wall_or_of_another_door_carry_nothing() {
    let said = said(Rule::FrontNotCarried, |case| {
        case.cabinet().opening.fronts = vec![door(30)];
        case.plate(1, RIGHT, 3);
        case.plate(1, LEFT, 15).serves = Some(Key(31));
    });
    assert_eq!(said.len(), 1);
}

#[test]
fn each_leaf_of_a_pair_has_plates_of_its_own() {
    let said = said(Rule::FrontNotCarried, |case| {
        case.cabinet().opening.fronts = vec![front(30, "doors", FrontKind::Pair)];
        case.plate(1, LEFT, 3);
        case.plate(1, LEFT, 15);
    });
    assert_eq!(
        said,
        ["the right leaf of doors has no hinge plate yet; set one, or take what is proposed"]
    );
}

#[test]
fn a_drawer_runs_on_runners() {
    let said = said(Rule::FrontNotCarried, |case| {
        let drawer = |key, name| Front {
            height: FrontHeight::Ratio(1),
            ..front(key, name, FrontKind::Drawer)
        };
        case.cabinet().opening.fronts = vec![drawer(30, "D1"), drawer(31, "D2")];
        case.runner(1, 2, 500);
    });
    assert_eq!(
        said,
        ["D2 has no runner yet; set one, or take what is proposed"]
    );
}

#[test]
fn a_door_is_wider_than_its_hinge_reaches() {
    let width = |width| {
        said(Rule::FrontTooSmall, move |case| {
            case.cabinet().size.width = width;
            case.cabinet().opening.fronts = vec![front(30, "doors", FrontKind::Pair)];
        })
    };
    // Two leaves of 70: 2 * 70 + 3 between and 1.5 at either side are 146.
    assert_eq!(width(mm(146)), Vec::<String>::new());
    let said = width(um(145_998));
    assert_eq!(said.len(), 1);
    assert!(
        said[0].ends_with("but its hinge reaches 70.0 back from the front; hang no door here"),
        "{said:?}"
    );
}

#[test]
fn a_front_without_size_is_said() {
    let said = said(Rule::FrontTooSmall, |case| {
        let tall = Front {
            height: FrontHeight::Modules(60),
            ..front(30, "D1", FrontKind::Drawer)
        };
        case.cabinet().opening.fronts = vec![tall, front(31, "D2", FrontKind::Drawer)];
    });
    assert_eq!(said.len(), 1);
    assert!(said[0].starts_with("D2 would be 597.0 x 0.0;"), "{said:?}");
}

#[test]
fn no_front_stands_behind_another() {
    let both = |kind| {
        said(Rule::FrontBehindFront, move |case| {
            case.part_in_two();
            case.cabinet().opening.fronts = vec![door(30)];
            let mut first = true;
            case.cabinet().opening.each_mut(&mut |opening| {
                if matches!(opening.division, Division::Bay(_)) && first {
                    opening.fronts = vec![front(31, "D1", kind)];
                    first = false;
                }
            });
        })
    };
    assert_eq!(
        both(FrontKind::Drawer),
        ["D1 stands behind door 1; make it a drawer behind, or take one of them away"]
    );
    assert_eq!(both(FrontKind::Inner), Vec::<String>::new());
}

#[test]
fn a_drawer_is_in_one_bay() {
    let said = said(Rule::DrawerOverBays, |case| {
        case.part_in_two();
        case.cabinet().opening.fronts = vec![front(30, "D1", FrontKind::Drawer)];
    });
    assert_eq!(
        said,
        [
            "D1 is a drawer over bays 1-2, but a box runs between two walls; put it on one bay, or make it a false front"
        ]
    );
}

#[test]
fn a_drawer_behind_needs_a_door_to_stand_behind() {
    let with = |fronts: fn() -> Vec<Front>| {
        said(Rule::InnerWithoutDoor, move |case| {
            case.cabinet().opening.fronts = fronts();
        })
    };
    assert_eq!(
        with(|| vec![front(30, "D1", FrontKind::Inner)]),
        ["D1 stands behind no door; hang one, or give it a front"]
    );
    let behind = with(|| vec![door(29), front(30, "D1", FrontKind::Inner)]);
    assert_eq!(behind, Vec::<String>::new());
}
