//! What people call the parts of a cabinet.

use proptest::prelude::*;

use crate::arbitrary::*;
use crate::job::{Division, Hand, Key, Names, PanelId, PanelName, ShelfHeight};
use crate::layout::Layout;

#[test]
fn parts_are_counted_from_left_to_right_and_from_the_foot_up() {
    let shelf = fixed_shelf(26, ShelfHeight::Underside(mm(300)));
    let above = side_by_side(60, empty(14), [(partition(9), empty(13))]);
    let right = stacked(12, empty(20), shelf, above);
    let opening = side_by_side(1, empty(11), [(partition(40), right)]);
    let names = Names::of(&opening);
    let said = |key| names.opening(Key(key)).unwrap().to_string();
    assert_eq!(
        [11, 20, 14, 13, 60, 12, 1].map(said),
        [
            "bay 1", "bay 2", "bay 3", "bay 4", "bays 3-4", "bays 2-4", "bays 1-4"
        ]
    );
    let panel = |key| names.panel(PanelId::Partition(Key(key))).to_string();
    assert_eq!(
        [40, 9, 7].map(panel),
        [
            "partition 1",
            "partition 2",
            "a partition that is not there"
        ]
    );
    assert_eq!((names.shelf(Key(26)), names.shelf(Key(9))), (Some(1), None));
    assert_eq!(names.face(LEFT_INSIDE).to_string(), "left side, inside");
}

proptest! {
    #[test]
    fn names_follow_the_layout(job in job()) {
        for cabinet in &job.cabinets {
            let (names, layout) = (Names::of(&cabinet.opening), Layout::of(cabinet, &job));
            prop_assert_eq!(&names, &layout.names);
            let numbers = layout.uprights.iter().filter_map(|upright| match names.panel(upright.id) {
                PanelName::Partition(number) => Some(number),
                PanelName::Side(_) | PanelName::Gone => None,
            });
            let numbers: Vec<u16> = numbers.collect();
            prop_assert!(numbers.is_sorted_by(|one, next| one < next), "{:?}", numbers);
            prop_assert!(matches!(names.panel(PanelId::Side(Hand::Left)), PanelName::Side(_)));
            let mut bays = 0;
            cabinet.opening.each(&mut |opening| {
                if let Division::Bay(_) = opening.division {
                    bays += 1;
                }
            });
            prop_assert_eq!(names.bays(), bays);
        }
    }
}
