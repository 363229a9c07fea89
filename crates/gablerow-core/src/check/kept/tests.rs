//! Proof that what is kept is what a check from nothing says, whatever is changed, taken back and made again.

use proptest::prelude::*;

use super::Checked;
use crate::arbitrary::{self, Wish, bay_with, job_with, mm, wish, zone};
use crate::check;
use crate::edit::{Edit, Measure, PartChoice};
use crate::history::Change;
use crate::job::{Job, Key};
use crate::label::Label;
use crate::measure::Unit;

/// Makes an edit and follows it; how many cabinets were checked.
fn follow(job: &mut Job, checked: &mut Checked, edit: &Edit) -> usize {
    let step = edit.apply(job).unwrap();
    step.apply(job);
    let count = checked.follow(job, &step.change);
    assert_eq!(*checked, Checked::of(job));
    count
}

#[test]
fn as_many_cabinets_are_checked_as_a_change_touches() {
    let mut job = bay_with(|bay| bay.zones = [zone(12, 3..=10)].into());
    let mut checked = Checked::of(&job);
    let name = |text: &str| Label::new(text).unwrap();
    let copy = |text| Edit::Duplicate {
        cabinet: Key(1),
        name: name(text),
    };
    assert_eq!(follow(&mut job, &mut checked, &copy("A2")), 1);
    assert_eq!(follow(&mut job, &mut checked, &copy("A3")), 1);
    let height = Edit::Measure {
        cabinet: Key(1),
        measure: Measure::Height,
        value: mm(700),
    };
    assert_eq!(follow(&mut job, &mut checked, &height), 3);
    let remove = Edit::Remove { cabinet: Key(1) };
    assert_eq!(follow(&mut job, &mut checked, &remove), 2);
    assert_eq!(checked.cabinets().count(), 2);
    job.unit = Unit::Inch;
    let unit = Change::Unit {
        before: Unit::Millimetre,
        after: Unit::Inch,
    };
    assert_eq!(checked.follow(&job, &unit), 2);
}

/// With no holes in the first cabinet, the second is the one the third is compared with.
#[test]
fn a_change_of_the_cabinet_that_others_are_compared_with_is_one_of_all() {
    let mut job = job_with(|_| {});
    let name = |text: &str| Label::new(text).unwrap();
    for (key, text) in [(1, "A2"), (2, "A3")] {
        let copy = Edit::Duplicate {
            cabinet: Key(key),
            name: name(text),
        };
        copy.apply(&job).unwrap().apply(&mut job);
    }
    for cabinet in &mut job.cabinets[1..] {
        cabinet.opening.bay_mut(Key(1)).unwrap().zones = [zone(12, 3..=10)].into();
    }
    let mut checked = Checked::of(&job);
    let inset = Edit::PartChoose {
        cabinet: job.cabinets[1].key,
        part: Key(1),
        choice: PartChoice::Inset,
    };
    assert_eq!(follow(&mut job, &mut checked, &inset), 3);
}

proptest! {
    #[test]
    fn what_is_kept_is_what_a_check_from_nothing_says(
        start in arbitrary::job(),
        wishes in prop::collection::vec((wish(), any::<bool>()), 0..12),
    ) {
        let mut job = start;
        let mut checked = Checked::of(&job);
        for (wish, is_taken_back) in wishes {
            let wish: Wish = wish;
            let Ok(step) = wish.of(&job).apply(&job) else {
                continue;
            };
            step.apply(&mut job);
            checked.follow(&job, &step.change);
            prop_assert_eq!(&checked, &Checked::of(&job));
            if is_taken_back {
                step.revert(&mut job);
                checked.follow(&job, &step.change.reversed());
                prop_assert_eq!(&checked, &Checked::of(&job));
            }
        }
        let all: Vec<_> = checked.cabinets().flatten().cloned().collect();
        prop_assert_eq!(all, check::of_job(&job));
    }
}
