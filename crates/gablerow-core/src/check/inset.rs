//! Fronts that stand inside an opening, and the uprights they stand between.
//!
//! ```text
//!   carcass front  -----------------------------
//!     |s|  +-------------+           |s| side
//!     |s|  |  the front  |  +-+      |s|
//!     |s|  +-------------+  |p|      |s|        a partition recessed behind the back of the front: no edge beside it
//! ```

use alloc::format;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};

/// Fronts inside an opening that stand before a partition instead of beside its edge.
pub(super) fn inset_before_edge(cx: &Context, found: &mut Vec<Finding>) {
    for front in &cx.layout.fronts {
        let Some(set_in) = front.set_in else {
            continue;
        };
        let back = set_in + front.thickness;
        for wall in [front.wall_left, front.wall_right] {
            let Some(upright) = cx.layout.upright(wall.panel) else {
                continue;
            };
            let recess = upright.front.total();
            let Some(partition) = wall.panel.partition().filter(|_| recess >= back) else {
                continue;
            };
            let name = cx.cabinet.opening.front(front.key);
            let message = format!(
                "{} stands inside, {} behind the carcass front, but the edge of {} is {} behind it; recess that less, or let the front lap over",
                name.map_or("a front", |front| front.name.as_str()),
                cx.span(set_in, back),
                cx.layout.names.panel(wall.panel),
                recess.show(cx.unit),
            );
            let finding = Finding::new(Rule::InsetBeforeEdge, cx.here().on(wall), message);
            found.push(finding.about_both((Some(front.key), Some(partition))));
        }
    }
}

#[cfg(test)]
mod tests;
