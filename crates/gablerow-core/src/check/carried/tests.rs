//! Proof of `carried`.

use super::super::fixture::*;
use super::*;
use crate::job::{FrontHeight, FrontKind, Hand, Key};

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
