//! Openings found by their names, and names that are free.

use proptest::prelude::*;

use crate::arbitrary;
use crate::job::{AsCut, Bored, Division, FaceId, Hand, Key, PanelId};

proptest! {
    #[test]
    fn every_bay_is_found_by_its_key(mut job in arbitrary::job()) {
        let opening = &mut job.cabinets[0].opening;
        let mut bays = Vec::new();
        opening.each(&mut |opening| {
            if let Division::Bay(bay) = &opening.division {
                bays.push((opening.key, bay.clone()));
            }
        });
        for (key, bay) in &bays {
            prop_assert_eq!(opening.bay(*key), Some(bay));
            prop_assert_eq!(opening.bay_mut(*key).cloned(), Some(bay.clone()));
        }
        let mut count = 0;
        opening.each_bay_mut(&mut |_| count += 1);
        prop_assert_eq!(count, bays.len());
        let nobody = Key(0x1_0000);
        prop_assert_eq!(opening.bay(nobody), None);
        prop_assert_eq!(opening.bay_mut(nobody), None);
    }

    #[test]
    fn free_key_is_above_all_that_something_has_or_names(
        mut job in arbitrary::job(), served in 1..0x10000_u32, panel in 1..0x10000_u32, copy in 1..0x10000_u32,
    ) {
        let cabinet = &mut job.cabinets[0];
        let cut = AsCut::of(PanelId::Partition(Key(panel)));
        cabinet.copies[0].as_cut.push(cut);
        cabinet.opening.each_bay_mut(&mut |bay| {
            bay.plates.iter_mut().for_each(|plate| plate.serves = Some(Key(served)));
            bay.runners.iter_mut().for_each(|runner| runner.serves = Some(Key(served)));
        });
        let (key, free) = (cabinet.key, cabinet.free_key());
        let mut highest = Key(0);
        cabinet.each_key(&mut |key| highest = highest.max(key));
        prop_assert!(free > highest && free > Key(panel));
        let mut serves = false;
        cabinet.opening.each_bay_mut(&mut |bay| serves |= !bay.plates.is_empty() || !bay.runners.is_empty());
        prop_assert!(!serves || free > Key(served));
        let face = FaceId { panel: PanelId::Partition(Key(panel + 1)), toward: Hand::Left };
        job.bored = vec![Bored { cabinet: key, copy: Key(copy), ..arbitrary::bored_hole(face) }];
        prop_assert!(job.free_key(key) >= free.max(Key(panel + 2)).max(Key(copy + 1)));
        job.bored[0].cabinet = Key(0x20000);
        prop_assert!(job.free_key(Key(0x20000)) > Key(panel + 1), "of a cabinet that is gone as well");
    }
}
