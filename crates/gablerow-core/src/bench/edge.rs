//! The long edge each row is worked from: few settings, none that the arms cannot reach.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::vec::Vec;
use core::cmp::Reverse;

use super::work::Line;
use crate::job::{Edge, Job, Reference};
use crate::measure::Length;

/// Chooses an edge for every line.
///
/// With one stop the edge decides which end rests on it, so each row is worked from the edge it is nearer to, unless the arms reach
/// it from the other alone; where an end is asked for, as of rows bored from both, from the edge that has it; of a panel that was cut too long or too short from the edge that has its foot on the stop, where the arms reach. Otherwise the settings are
/// chosen greedily: again and again the one that serves most lines left over, of those the least.
///
/// A row that the arms reach from neither edge is worked from the nearer; its set-up says so.
pub(super) fn choose(mut lines: Vec<Line>, job: &Job) -> Vec<Line> {
    let reaches = |line: &Line, edge| job.rail().is_none_or(|rail| line.is_reached(edge, rail));
    if job.shop.reference == Reference::OneStop {
        for line in &mut lines {
            let on_foot = line.edge_with_foot_left();
            let near = line.nearer();
            let ways = [near, near.other()];
            let reached = ways.into_iter().find(|edge| reaches(line, *edge));
            let rests_anew = line.is_off() && reaches(line, on_foot);
            let habit = if rests_anew {
                on_foot
            } else {
                reached.unwrap_or(near)
            };
            line.edge = line.edge_asked().unwrap_or(habit);
        }
        return lines;
    }
    let mut ways: Vec<Vec<(Length, Edge)>> = Vec::with_capacity(lines.len());
    let mut left: BTreeMap<Length, BTreeSet<usize>> = BTreeMap::new();
    for (at, line) in lines.iter().enumerate() {
        let near = line.nearer();
        let mut edges = [near, near.other()].to_vec();
        edges.retain(|edge| reaches(line, *edge));
        if edges.is_empty() {
            edges.push(near);
        }
        let ways_of: Vec<_> = edges
            .iter()
            .map(|edge| (line.setting(*edge), *edge))
            .collect();
        for (setting, _) in &ways_of {
            left.entry(*setting).or_default().insert(at);
        }
        ways.push(ways_of);
    }
    // Settings by how many lines are left that they serve, the least of them last.
    let mut queue: BTreeSet<(usize, Reverse<Length>)> = BTreeSet::new();
    queue.extend(
        left.iter()
            .map(|(setting, of)| (of.len(), Reverse(*setting))),
    );
    while let Some((_, Reverse(setting))) = queue.pop_last() {
        for at in left.remove(&setting).unwrap_or_default() {
            for (other, edge) in &ways[at] {
                if *other == setting {
                    lines[at].edge = *edge;
                } else if let Some(of) = left.get_mut(other) {
                    queue.remove(&(of.len(), Reverse(*other)));
                    of.remove(&at);
                    if !of.is_empty() {
                        queue.insert((of.len(), Reverse(*other)));
                    }
                }
            }
        }
    }
    lines
}
