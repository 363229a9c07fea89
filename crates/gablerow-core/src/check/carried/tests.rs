//! Proof of `carried`.

use super::super::fixture::*;
use super::*;
use crate::job::{Front, FrontHeight, Hand, Key, Label};

fn front(key: u32, kind: FrontKind, height: FrontHeight) -> Front {
    Front {
        height,
        ..Front::plain(Key(key), Label::new("F").unwrap(), kind)
    }
}

const SHARE: FrontHeight = FrontHeight::Ratio(1);

// Geometry: under a drawer of 4 modules the door ends at 574.5; the plate on 19-20 has its middle at 608.
#[test]
fn a_cup_lies_on_its_door() {
    let said = |drawers: u16| {
        said(Rule::CupOffDoor, move |case| {
            let door = front(30, FrontKind::Door(Hand::Left), SHARE);
            let drawer = front(31, FrontKind::Drawer, FrontHeight::Modules(4));
            let fronts = [door, drawer].into_iter();
            case.cabinet().opening.fronts = fronts.take(1 + usize::from(drawers)).collect();
            case.plate(1, Hand::Left, 3).serves = Some(Key(30));
            case.plate(1, Hand::Left, 19).serves = Some(Key(30));
        })
    };
    assert_eq!(said(0), Vec::<String>::new());
    assert_eq!(
        said(1),
        [
            "hinge plate on 19-20: its cup would be 33.5 past the head of F, but a whole one is 17.5 from it at least; \
            move it, or stand on the front and take what is proposed"
        ]
    );
}

// Geometry: a plate on 17-18 has its middle at 544; a door that ends at 561.5 leaves just the cup's radius of 17.5.
#[test]
fn a_cup_may_touch_the_end_of_its_door() {
    let found = |drawer| {
        found(Rule::CupOffDoor, move |case| {
            let height = FrontHeight::Fixed(drawer);
            case.cabinet().opening.fronts = vec![
                front(30, FrontKind::Door(Hand::Left), SHARE),
                front(31, FrontKind::Drawer, height),
            ];
            case.plate(1, Hand::Left, 17).serves = Some(Key(30));
        })
        .len()
    };
    // 704 - 1.5 - 3 - 561.5 = 138.
    assert_eq!((found(mm(138)), found(um(138_001))), (0, 1));
}

// Geometry: the front of a cabinet 704 high starts at 1.5; the runner's line is 12, so hole 3 at 80 has its box at 68, hole 2
// at 36, hole 1 at 4.
#[test]
fn a_box_stands_a_little_above_the_foot_of_its_front() {
    let said = |hole| {
        said(Rule::BoxOffFront, move |case| {
            case.cabinet().opening.fronts = vec![front(30, FrontKind::Drawer, SHARE)];
            case.runner(1, hole, 500);
        })
    };
    assert_eq!(said(2), Vec::<String>::new());
    assert_eq!(
        said(3),
        [
            "runner on 3: its box stands 66.5 above the foot of F, but 18.0-54.0 above it is what the shop has; \
            move it, or stand on the front and take what is proposed"
        ]
    );
    assert!(said(1)[0].contains("2.5 above the foot of F"));
}

// Geometry: 64 higher, the lowest front takes all of it, and D2 starts at 561.5 where its box stands at 548.
#[test]
fn a_box_below_its_front_is_said_after_the_height_has_changed() {
    let said = |height| {
        said(Rule::BoxOffFront, move |case| {
            case.cabinet().size.height = mm(height);
            let modules = FrontHeight::Modules(11);
            case.cabinet().opening.fronts = vec![
                front(30, FrontKind::Drawer, modules),
                front(31, FrontKind::Drawer, modules),
            ];
            case.runner(1, 2, 500).serves = Some(Key(30));
            case.runner(1, 13, 500).serves = Some(Key(31));
        })
    };
    assert_eq!(said(704), Vec::<String>::new());
    assert_eq!(said(768).len(), 1);
    assert!(said(768)[0].starts_with("runner on 13: its box stands 29.5 below the foot of F"));
}
