//! Openings found by their names.

use proptest::prelude::*;

use crate::arbitrary;
use crate::job::{Division, Key};

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
    fn free_key_is_nobodys(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let free = cabinet.free_key();
            let mut taken = false;
            cabinet.each_key(&mut |key| taken |= key == free);
            prop_assert!(!taken);
        }
    }
}
