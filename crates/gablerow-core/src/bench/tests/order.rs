//! The order of set-ups: the least time there is where it is exact, near its bound where it is not.

use super::*;
use crate::bench::order::put;
use crate::job::WorkOrder;
use proptest::prelude::*;

/// The least time of any order at all.
fn brute_force(set_ups: &mut Vec<SetUp>, from: usize, times: &Times) -> u32 {
    if from + 1 >= set_ups.len() {
        return times.of(set_ups);
    }
    let mut least = u32::MAX;
    for at in from..set_ups.len() {
        set_ups.swap(from, at);
        least = least.min(brute_force(set_ups, from + 1, times));
        set_ups.swap(from, at);
    }
    least
}

/// The sheet as it was written by hand: row by row, panels in the order that reads well.
const BY_HAND: [&str; 10] = [
    "37.0 back, partition left",
    "37.0 front, partition left",
    "37.0 front, partition right",
    "37.0 front, right side left",
    "37.0 front, left side right",
    "57.0 back, left side right",
    "261.0 front, right side left",
    "261.0 front, partition right",
    "453.0 front, partition right",
    "453.0 front, right side left",
];

#[test]
fn glaze_store_takes_no_longer_than_its_sheet() {
    let mut job = glaze_store();
    job.shop.rail = None;
    let (plan, times) = (planned(&job), Times::default());
    let by_hand: Vec<SetUp> = BY_HAND
        .iter()
        .map(|line| {
            let found = plan.set_ups.iter().find(|it| said(it).starts_with(line));
            found.cloned().unwrap()
        })
        .collect();
    assert!(
        plan.seconds <= times.of(&by_hand),
        "{} {}",
        plan.seconds,
        times.of(&by_hand)
    );
    assert!(plan.seconds <= plan.orders.panel_first.min(plan.orders.setting_first));
}

/// Ten runs of four cabinets, each a hand's breadth deeper: settings that differ, panels that do not share them.
#[test]
fn forty_cabinets_take_little_more_than_their_bound() {
    let mut job = glaze_store();
    let first = job.cabinets[0].clone();
    job.cabinets = (0..40)
        .map(|at| {
            let mut cabinet = first.clone();
            cabinet.key = Key(10_000 + at);
            cabinet.size.depth += Length::from_mm(10) * i32::try_from(at / 4).unwrap();
            cabinet
        })
        .collect();
    let keys: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
    let times = Times::default();
    let plan = plan(&job, &keys, &times);
    let changed = order_seconds(&plan.set_ups, &times);
    let bound = order_bound(&plan.set_ups, &times);
    assert!(bound <= changed);
    assert!(changed * 10 <= bound * 11, "{changed} over {bound}");
}

/// What order can change: without laying the rail on, and without the holes.
fn order_seconds(set_ups: &[SetUp], times: &Times) -> u32 {
    let free = Times {
        placement: 0,
        hole: 0,
        ..*times
    };
    free.of(set_ups)
}

proptest! {
    #[test]
    fn no_order_is_quicker_where_it_is_exact(job in job(), setting in 0..90_u32, load in 0..90_u32) {
        let times = Times { setting, load, ..Times::default() };
        let keys: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
        let mut few = plan(&job, &keys, &times).set_ups;
        few.truncate(6);
        put(&mut few, &times, WorkOrder::Least);
        let found = times.of(&few);
        prop_assert_eq!(found, brute_force(&mut few, 0, &times));
    }

    #[test]
    fn no_order_is_under_its_bound(job in job()) {
        let times = Times::default();
        let keys: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
        let plan = plan(&job, &keys, &times);
        prop_assert!(plan.orders.least <= plan.orders.panel_first.min(plan.orders.setting_first));
        let wished = match job.shop.bench.order {
            WorkOrder::Least => plan.orders.least,
            WorkOrder::PanelFirst => plan.orders.panel_first,
            WorkOrder::SettingFirst => plan.orders.setting_first,
        };
        prop_assert_eq!(plan.seconds, wished);
        prop_assert!(order_bound(&plan.set_ups, &times) <= order_seconds(&plan.set_ups, &times));
    }
}
