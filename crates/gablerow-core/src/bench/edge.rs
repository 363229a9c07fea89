//! The long edge each row is worked from: few settings, none that the arms cannot reach.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::vec::Vec;

use super::work::Line;
use crate::job::{Edge, Job, Reference};
use crate::measure::Length;

/// Chooses an edge for every line.
///
/// With one stop the edge decides which end rests on it, so each row is worked from the edge it is nearer to; of a panel that
/// was cut too long or too short from the edge that has its foot on the stop, where the arms reach. Otherwise the settings are chosen greedily: again and again the one that serves most lines left over, of those the least.
pub(super) fn choose(mut lines: Vec<Line>, job: &Job) -> Vec<Line> {
    let reach = job.shop.rail.as_ref().and_then(|id| job.cards.rail(id));
    let reaches = |setting: Length| {
        reach.is_none_or(|rail| (rail.reach_least.value..=rail.reach_most.value).contains(&setting))
    };
    if job.shop.reference == Reference::OneStop {
        for line in &mut lines {
            let on_foot = line.edge_with_foot_left();
            let rests_anew = line.is_off() && reaches(line.setting(on_foot, job).total());
            line.edge = if rests_anew { on_foot } else { nearer(line) };
        }
        return lines;
    }
    let mut by_setting: BTreeMap<Length, BTreeSet<usize>> = BTreeMap::new();
    let mut ways: Vec<Vec<(Length, Edge)>> = Vec::with_capacity(lines.len());
    for (at, line) in lines.iter().enumerate() {
        let near = nearer(line);
        let both = [near, near.other()].map(|edge| (line.setting(edge, job).total(), edge));
        let mut ways_of: Vec<_> = both.into_iter().filter(|(it, _)| reaches(*it)).collect();
        if ways_of.is_empty() {
            // Nothing reaches it; it is said, and worked from where it is nearer.
            ways_of.push(both[0]);
        }
        for (setting, _) in &ways_of {
            by_setting.entry(*setting).or_default().insert(at);
        }
        ways.push(ways_of);
    }
    while let Some(setting) = best(&by_setting) {
        for at in by_setting.remove(&setting).unwrap_or_default() {
            let Some(way) = ways.get(at) else { continue };
            for (other, edge) in way {
                if *other == setting {
                    lines[at].edge = *edge;
                } else if let Some(left) = by_setting.get_mut(other) {
                    left.remove(&at);
                }
            }
        }
        by_setting.retain(|_, left| !left.is_empty());
    }
    lines
}

/// The setting that serves most lines, of those the least; `None` when no line is left.
fn best(by_setting: &BTreeMap<Length, BTreeSet<usize>>) -> Option<Length> {
    let most = by_setting.values().map(BTreeSet::len).max()?;
    by_setting
        .iter()
        .find(|(_, lines)| lines.len() == most)
        .map(|(setting, _)| *setting)
}

fn nearer(line: &Line) -> Edge {
    if line.is_in_front() {
        Edge::Front
    } else {
        Edge::Back
    }
}
