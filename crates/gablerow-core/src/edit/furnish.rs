//! Fittings that were proposed, set all at once.

use alloc::string::String;
use alloc::vec::Vec;

use super::{Refusal, change};
use crate::history::Step;
use crate::job::{Bay, Job, Key, Plate, Runner};

/// What a proposal sets in one bay.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Furnishing {
    /// The bay.
    pub bay: Key,
    /// Hinge plates it gets.
    pub plates: Vec<Plate>,
    /// Pairs of runners it gets.
    pub runners: Vec<Runner>,
}

/// Plates and runners of a cabinet that come, and those that go for them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Furnish {
    /// The cabinet.
    pub cabinet: Key,
    /// Plates and runners that go.
    pub gone: Vec<Key>,
    /// What comes, bay by bay.
    pub bays: Vec<Furnishing>,
    /// What is done, in a few words.
    pub label: String,
}

/// Takes away what goes and sets what comes.
pub(super) fn furnish(job: &Job, wanted: &Furnish) -> Result<Step, Refusal> {
    let Furnish {
        cabinet,
        gone,
        bays,
        label,
    } = wanted;
    let last = super::cabinet(job, *cabinet)
        .map(|(_, found)| crate::layout::Layout::last_hole(found, &job.shop))?;
    change(job, *cabinet, |edited| {
        edited.opening.each_bay_mut(&mut |bay: &mut Bay| {
            bay.plates.retain(|plate| !gone.contains(&plate.key));
            bay.runners.retain(|runner| !gone.contains(&runner.key));
        });
        for made in bays {
            let bay = edited
                .opening
                .bay_mut(made.bay)
                .ok_or_else(|| Refusal("a bay of this proposal is gone; ask again".into()))?;
            bay.plates.extend(made.plates.iter().cloned());
            bay.runners.extend(made.runners.iter().cloned());
            bay.plates.sort_by_key(|plate| plate.hole.number(last));
            bay.runners.sort_by_key(|runner| runner.hole.number(last));
        }
        Ok(label.clone())
    })
}
