//! What somebody at the bench has before them: the plan of what was left on beginning, and how far it has come.

use gablerow_core::bench::{Plan, SetUp, plan_left};
use gablerow_core::job::{Job, Key};

use crate::app::Walk;
use crate::released::Released;

/// The plan somebody walks through.
#[derive(Clone, Debug)]
pub struct AtBench {
    /// What was left on beginning, in order. It stays as it is while it is worked through.
    pub plan: Plan,
    /// How many of its set-ups are done.
    pub done: usize,
    /// The cabinets that an open stop holds back.
    pub held: Vec<Key>,
}

impl AtBench {
    /// What is before somebody who began there.
    #[must_use]
    pub fn of(job: &Job, walk: &Walk) -> Self {
        let since = walk.since.min(job.bored.len());
        let (before, after) = job.bored.split_at(since);
        let (free, held) = Released::of(job).keys();
        let plan = plan_left(job, before, &free, &job.shop.bench.times);
        // Set-ups are recorded whole and in order, and taken back the same way.
        let taken_back = after.iter().filter(|it| it.taken_back).count();
        let mut holes = (after.len() - taken_back).saturating_sub(taken_back);
        let is_done = |set_up: &&SetUp| {
            let count = set_up.holes.count();
            let is_done = holes >= count;
            holes = holes.saturating_sub(count);
            is_done
        };
        let done = plan.set_ups.iter().take_while(is_done).count();
        Self { plan, done, held }
    }

    /// The set-up that is to be bored now; `None` when all are.
    #[must_use]
    pub fn set_up(&self) -> Option<&SetUp> {
        self.plan.set_ups.get(self.done)
    }

    /// The one before it.
    #[must_use]
    pub fn before(&self) -> Option<&SetUp> {
        self.plan.set_ups.get(self.done.checked_sub(1)?)
    }

    /// What the set-up that is bored now was planned to take, in seconds, with all that is changed for it.
    #[must_use]
    pub fn planned(&self, job: &Job) -> u32 {
        let times = &job.shop.bench.times;
        let until = |count: usize| times.of(&self.plan.set_ups[..count]);
        let next = (self.done + 1).min(self.plan.set_ups.len());
        until(next).saturating_sub(until(self.done))
    }

    /// What all that is left was planned to take, in seconds.
    #[must_use]
    pub fn left(&self, job: &Job) -> u32 {
        let times = &job.shop.bench.times;
        self.plan
            .seconds
            .saturating_sub(times.of(&self.plan.set_ups[..self.done]))
    }
}
