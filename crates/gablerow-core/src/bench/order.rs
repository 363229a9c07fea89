//! The order of set-ups: bits, depths and stops outermost, then as few changes of setting and as few loads as can be.
//!
//! Few set-ups are put in the best order there is. Of many, those of one bit, depth and stop stay together, and go panel by
//! panel or setting by setting, each beginning with what the one before it ended with.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::vec;
use alloc::vec::Vec;

use super::SetUp;
use crate::job::{Bit, End, FaceId, Key, Times, WorkOrder};
use crate::measure::Length;

/// The most things whose best order is found exactly: set-ups of a plan, groups of one bit, depth and stop, set-ups of a group.
const EXACT: usize = 10;

/// What lies on the bench: a panel, one of its faces up. To spin it is nothing.
type Up = (Key, Key, FaceId);

/// What stays put while a group of set-ups is worked: bit, depth and stop.
type Group = ((Bit, Length), Option<Length>, (End, Length));

/// What of a set-up costs time when the one before it is unlike.
#[derive(Clone, Copy)]
struct Stage {
    group: Group,
    setting: Length,
    up: Up,
}

impl Stage {
    fn of(set_up: &SetUp) -> Self {
        let (tool, rest) = (&set_up.tool, &set_up.rest);
        Self {
            group: ((tool.bit, tool.diameter), tool.depth, (rest.end, rest.stop)),
            setting: set_up.setting.total(),
            up: (set_up.cabinet, set_up.copy, set_up.face),
        }
    }
}

impl Times {
    /// What these set-ups take in their order.
    #[must_use]
    pub fn of(&self, set_ups: &[SetUp]) -> u32 {
        let stages: Vec<Stage> = set_ups.iter().map(Stage::of).collect();
        let order: Vec<usize> = (0..stages.len()).collect();
        let holes = |it: &SetUp| u32::try_from(it.holes.count()).unwrap_or(u32::MAX);
        let each = |it: &SetUp| self.placement + self.hole.saturating_mul(holes(it));
        self.of_order(&stages, &order) + set_ups.iter().map(each).sum::<u32>()
    }

    fn of_order(&self, stages: &[Stage], order: &[usize]) -> u32 {
        let before = core::iter::once(None).chain(order.iter().map(|at| stages.get(*at)));
        let next = order.iter().filter_map(|at| stages.get(*at));
        before
            .zip(next)
            .map(|(before, next)| self.between(before, next))
            .sum()
    }

    /// What has to be changed for the next.
    fn between(&self, before: Option<&Stage>, next: &Stage) -> u32 {
        self.of_group(before.map(|it| it.group), next.group)
            + changed(before.map(|it| it.setting), next.setting, self.setting)
            + changed(before.map(|it| it.up), next.up, self.load)
    }

    fn of_group(&self, before: Option<Group>, (bit, depth, stop): Group) -> u32 {
        changed(before.map(|it| it.0), bit, self.bit)
            + changed(before.map(|it| it.1), depth, self.depth)
            + changed(before.map(|it| it.2), stop, self.stop)
    }
}

fn changed<T: PartialEq + Copy>(before: Option<T>, next: T, seconds: u32) -> u32 {
    if before == Some(next) { 0 } else { seconds }
}

/// No order of these takes less, without laying the rail on and without the holes.
///
/// ```text
/// B, D, S   bits, depths and stops there are        G   groups of one bit, depth and stop
/// f, s, n   faces, settings, set-ups of a group     L, C   loads and changes of setting within it
/// B * bit + D * depth + S * stop + load + setting + sum over G of the least of L * load + C * setting
///     where L >= f - 1, C >= s - 1, L + C >= n - 1
/// ```
/// Within a group each face comes up once, each setting is set once, and no two set-ups that follow each other agree in both.
#[must_use]
pub fn order_bound(set_ups: &[SetUp], times: &Times) -> u32 {
    let stages: Vec<Stage> = set_ups.iter().map(Stage::of).collect();
    if stages.is_empty() {
        return 0;
    }
    let outer = times.bit * distinct(&stages, |it| it.group.0)
        + times.depth * distinct(&stages, |it| it.group.1)
        + times.stop * distinct(&stages, |it| it.group.2);
    let mut groups: BTreeMap<Group, Vec<Stage>> = BTreeMap::new();
    for stage in stages {
        groups.entry(stage.group).or_default().push(stage);
    }
    let inner = groups.into_values().map(|group| {
        let faces = distinct(&group, |it| it.up) - 1;
        let settings = distinct(&group, |it| it.setting) - 1;
        let steps = distinct(&group, |it| (it.setting, it.up)) - 1;
        // Of what must change one way or the other, the cheaper changes.
        let more = steps.saturating_sub(faces + settings) * times.load.min(times.setting);
        faces * times.load + settings * times.setting + more
    });
    outer + times.load + times.setting + inner.sum::<u32>()
}

fn distinct<K: Ord>(stages: &[Stage], key: impl Fn(&Stage) -> K) -> u32 {
    let keys: BTreeSet<K> = stages.iter().map(key).collect();
    u32::try_from(keys.len()).unwrap_or(u32::MAX)
}

/// What the set-ups take in one order or another, in seconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seconds {
    /// In the order that takes least, as far as it was found.
    pub least: u32,
    /// Panel by panel.
    pub panel_first: u32,
    /// Setting by setting.
    pub setting_first: u32,
}

/// Puts the set-ups in order.
pub(super) fn put(set_ups: &mut Vec<SetUp>, times: &Times, wish: WorkOrder) -> Seconds {
    let stages: Vec<Stage> = set_ups.iter().map(Stage::of).collect();
    let [mut by_panel, mut by_setting, mut best] = [const { Vec::new() }; 3];
    for group in groups(&stages, times) {
        by_panel.extend(panel_by_panel(&stages, &group, by_panel.last()));
        by_setting.extend(setting_by_setting(&stages, &group, by_setting.last()));
        best.extend(best_of_group(&stages, group, best.last(), times));
    }
    if stages.len() <= EXACT {
        best = least_order(stages.len(), |before, next| {
            times.between(before.and_then(|at| stages.get(at)), &stages[next])
        });
    }
    // What is the same whatever the order: rail and holes.
    let changes = |order: &[usize]| times.of_order(&stages, order);
    let rest = times.of(set_ups) - changes(&(0..stages.len()).collect::<Vec<_>>());
    let least = [&best, &by_panel, &by_setting]
        .into_iter()
        .min_by_key(|order| changes(order))
        .unwrap_or(&best);
    let order = match wish {
        WorkOrder::Least => least,
        WorkOrder::PanelFirst => &by_panel,
        WorkOrder::SettingFirst => &by_setting,
    };
    let seconds = |order: &[usize]| changes(order) + rest;
    let all = Seconds {
        least: seconds(least),
        panel_first: seconds(&by_panel),
        setting_first: seconds(&by_setting),
    };
    let mut taken: Vec<Option<SetUp>> = set_ups.drain(..).map(Some).collect();
    set_ups.extend(order.iter().filter_map(|at| taken.get_mut(*at)?.take()));
    all
}

/// The set-ups of each bit, depth and stop; the groups in the order that takes least, as far as it is found.
fn groups(stages: &[Stage], times: &Times) -> Vec<Vec<usize>> {
    let mut groups: BTreeMap<Group, Vec<usize>> = BTreeMap::new();
    for (at, stage) in stages.iter().enumerate() {
        groups.entry(stage.group).or_default().push(at);
    }
    if groups.len() > EXACT {
        return groups.into_values().collect();
    }
    let keys: Vec<Group> = groups.keys().copied().collect();
    let order = least_order(keys.len(), |before, next| {
        times.of_group(before.and_then(|at| keys.get(at)).copied(), keys[next])
    });
    let group = |at: usize| groups.remove(keys.get(at)?);
    order.into_iter().filter_map(group).collect()
}

fn best_of_group(
    stages: &[Stage],
    group: Vec<usize>,
    before: Option<&usize>,
    times: &Times,
) -> Vec<usize> {
    let before = before.copied();
    let between = |before: Option<usize>, next: usize| {
        times.between(before.and_then(|at| stages.get(at)), &stages[next])
    };
    if group.len() <= EXACT {
        let order = least_order(group.len(), |last, next| {
            between(last.map(|at| group[at]).or(before), group[next])
        });
        return order.into_iter().map(|at| group[at]).collect();
    }
    let seconds = |order: &[usize]| {
        let last = core::iter::once(before).chain(order.iter().copied().map(Some));
        let steps = last.zip(order);
        steps.map(|(last, next)| between(last, *next)).sum::<u32>()
    };
    let simple = [
        panel_by_panel(stages, &group, before.as_ref()),
        setting_by_setting(stages, &group, before.as_ref()),
    ];
    let quicker = simple.into_iter().min_by_key(|order| seconds(order));
    quicker.unwrap_or(group)
}

fn panel_by_panel(stages: &[Stage], group: &[usize], before: Option<&usize>) -> Vec<usize> {
    let table = |at: &usize| (stages[*at].up, stages[*at].setting, *at);
    chained(group.iter().map(table), before.map(table))
}

fn setting_by_setting(stages: &[Stage], group: &[usize], before: Option<&usize>) -> Vec<usize> {
    let table = |at: &usize| (stages[*at].setting, stages[*at].up, *at);
    chained(group.iter().map(table), before.map(table))
}

/// One outer value after the other, like dominoes: of each the inner value that is there already comes first, and last one
/// that most of those left over have too. What has no other inner value than the one that is there is done before it goes.
fn chained<O: Ord + Copy, I: Ord + Copy>(
    all: impl Iterator<Item = (O, I, usize)>,
    before: Option<(O, I, usize)>,
) -> Vec<usize> {
    let mut parts: BTreeMap<O, BTreeMap<I, Vec<usize>>> = BTreeMap::new();
    for (outer, inner, at) in all {
        parts
            .entry(outer)
            .or_default()
            .entry(inner)
            .or_default()
            .push(at);
    }
    // Which outer values are left that have this inner one; those with no other inner value first.
    let mut left: BTreeMap<I, BTreeSet<(bool, O)>> = BTreeMap::new();
    for (outer, part) in &parts {
        for inner in part.keys() {
            left.entry(*inner)
                .or_default()
                .insert((part.len() > 1, *outer));
        }
    }
    let mut order = Vec::new();
    let mut there = before.map(|(_, inner, _)| inner);
    let mut next = before
        .map(|(outer, _, _)| outer)
        .filter(|outer| parts.contains_key(outer));
    while let Some(outer) = next.or_else(|| parts.keys().next().copied()) {
        let Some(mut part) = parts.remove(&outer) else {
            break;
        };
        for inner in part.keys() {
            if let Some(others) = left.get_mut(inner) {
                others.remove(&(part.len() > 1, outer));
            }
        }
        let others = |inner: &I| left.get(inner).map_or(0, BTreeSet::len);
        let first = there.and_then(|inner| part.remove(&inner));
        let last = part.keys().copied().max_by_key(others);
        let last = last.and_then(|inner| Some((inner, part.remove(&inner)?)));
        order.extend(first.into_iter().flatten());
        order.extend(part.into_values().flatten());
        if let Some((inner, set_ups)) = last {
            order.extend(set_ups);
            there = Some(inner);
        }
        let beside = there.and_then(|inner| left.get(&inner)?.first());
        next = beside.map(|(_, outer)| *outer);
    }
    order
}

/// The order of so many things that costs least, by going through every subset: which have been done, and which last. `cost`
/// is of a thing after another, or of the first. At most [`EXACT`] things.
fn least_order(count: usize, cost: impl Fn(Option<usize>, usize) -> u32) -> Vec<usize> {
    if count == 0 {
        return Vec::new();
    }
    let all = (1_usize << count) - 1;
    // For each subset and its last: the least cost, and which came before the last.
    let mut least = vec![(u32::MAX, None); (all + 1) * count];
    for at in 0..count {
        least[(1 << at) * count + at] = (cost(None, at), None);
    }
    for done in 1..=all {
        for last in (0..count).filter(|last| done & (1 << last) != 0) {
            let (so_far, _) = least[done * count + last];
            for next in (0..count).filter(|next| done & (1 << next) == 0) {
                let sum = so_far.saturating_add(cost(Some(last), next));
                let place = &mut least[(done | 1 << next) * count + next];
                if sum < place.0 {
                    *place = (sum, Some(last));
                }
            }
        }
    }
    let mut last = (0..count).min_by_key(|last| least[all * count + last].0);
    let (mut done, mut order) = (all, Vec::with_capacity(count));
    while let Some(at) = last {
        order.push(at);
        last = least[done * count + at].1;
        done &= !(1 << at);
    }
    order.reverse();
    order
}
