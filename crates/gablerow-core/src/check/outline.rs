//! Holes and the outline of their panel: ends, long edges, toe notch, groove of the back.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::is;
use super::strand::reach;
use super::{Context, Finding, Rule, Strand};
use crate::job::{Back, Limits, PanelName};
use crate::layout::{Face, OffGrid, Upright};
use crate::measure::Length;

const COUNT: Length = Length::from_counts(1);

/// One of the four sides of an upright's outline.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    Foot,
    Head,
    Front,
    Back,
}

impl Side {
    const EDGES: [Self; 2] = [Self::Front, Self::Back];
    const ENDS: [Self; 2] = [Self::Foot, Self::Head];

    fn word(self) -> &'static str {
        match self {
            Self::Foot => "foot",
            Self::Head => "head",
            Self::Front => "front edge",
            Self::Back => "back edge",
        }
    }

    /// The words for what lies beyond it.
    fn beyond(self) -> &'static str {
        match self {
            Self::Foot => "below the foot",
            Self::Head => "above the head",
            Self::Front => "before the front edge",
            Self::Back => "behind the back edge",
        }
    }

    /// The way that leads inward.
    fn inward(self) -> &'static str {
        match self {
            Self::Foot => "up",
            Self::Head => "down",
            Self::Front => "back",
            Self::Back => "forward",
        }
    }

    fn limit(self, limits: &Limits) -> Length {
        match self {
            Self::Foot | Self::Head => limits.to_end,
            Self::Front | Self::Back => limits.to_edge,
        }
    }

    /// The holes less than `limit` inward from this side, and how far inward the outermost is; negative beyond it.
    fn closer<'a>(
        self,
        strand: Strand<'a>,
        upright: &Upright,
        limit: Length,
    ) -> Option<(Strand<'a>, Length)> {
        let (foot, head) = (upright.foot.total(), upright.head.total());
        let (part, inward) = match self {
            Self::Foot => {
                let part = strand.within(strand.low, foot + limit - COUNT)?;
                (part, part.low - foot)
            }
            Self::Head => {
                let part = strand.within(head - limit + COUNT, strand.high)?;
                (part, head - part.high)
            }
            Self::Front => (strand, strand.x - upright.front.total()),
            Self::Back => (strand, upright.back.total() - strand.x),
        };
        (inward < limit).then_some((part, inward))
    }
}

/// Places the grid does not have, holes outside their panel, and holes of faces that are not there.
pub(super) fn hole_off_panel(cx: &Context, found: &mut Vec<Finding>) {
    for (_, face) in cx.faces() {
        let off_grid = face.off_grid.iter().map(|off| off_grid(cx, face, off));
        found.extend(off_grid);
    }
    for (upright, face, strand) in cx.strands() {
        let beyond = |side: Side| Some((side, side.closer(strand, upright, Length::ZERO)?));
        let mut beyond_edge = Side::EDGES.into_iter().filter_map(beyond).peekable();
        let ends = Side::ENDS.into_iter().filter_map(beyond);
        let sides: Vec<_> = match beyond_edge.peek() {
            Some(_) => beyond_edge.collect(),
            None => ends.collect(),
        };
        for (side, (part, inward)) in sides {
            let (subject, is, by) = (cx.subject(&part), is(&part), (-inward).show(cx.unit));
            let cure = cure(cx, upright, side, &part, inward);
            let message = format!("{subject} {is} {by} {}; {cure}", side.beyond());
            let place = cx.here().on(face.id).at(&part);
            let finding = Finding::new(Rule::HoleOffPanel, place, message);
            found.push(finding.about(strand.spec.owner));
        }
    }
    lost_faces(cx, found);
}

fn off_grid(cx: &Context, face: &Face, off: &OffGrid) -> Finding {
    let (number, last, owner) = (off.number, cx.layout.last, cx.fitting(off.owner));
    let limit = match (number > last, last) {
        (_, 0) => "not one hole fits this height".into(),
        (true, _) => format!(
            "the grid ends at hole {last}; bring it {} down",
            number - last
        ),
        (false, _) => format!("the grid begins at hole 1; bring it {} up", 1 - number),
    };
    let message = format!("{owner}: there is no hole {number}, {limit}");
    let place = cx.here().on(face.id).holes((number, number));
    Finding::new(Rule::HoleOffPanel, place, message).about(off.owner)
}

/// Free rows and holes on a panel that the cabinet no longer has.
fn lost_faces(cx: &Context, found: &mut Vec<Finding>) {
    let rows = cx.cabinet.free_rows.iter().map(|row| (row.key, row.face));
    let holes = cx
        .cabinet
        .free_holes
        .iter()
        .map(|hole| (hole.key, hole.face));
    let lost = rows
        .chain(holes)
        .filter(|(_, face)| cx.layout.face(*face).is_none());
    found.extend(lost.map(|(key, face)| {
        let owner = cx.fitting(key);
        let panel = cx.layout.names.panel(face.panel);
        let why = match panel {
            PanelName::Gone => "",
            _ => ", which has no room",
        };
        let message = format!("{owner} is on {panel}{why}; move it, or take it out");
        Finding::new(Rule::HoleOffPanel, cx.here(), message).about(key)
    }));
}

/// Holes on their panel whose centre is too near an end or a long edge.
pub(super) fn hole_near_edge(cx: &Context, found: &mut Vec<Finding>) {
    for (upright, face, strand) in cx.strands() {
        let on_panel = (upright.front.total()..=upright.back.total()).contains(&strand.x);
        let strand = strand.within(upright.foot.total(), upright.head.total());
        let Some(strand) = strand.filter(|_| on_panel) else {
            continue;
        };
        for side in Side::ENDS.into_iter().chain(Side::EDGES) {
            let limit = side.limit(cx.limits());
            let Some((part, inward)) = side.closer(strand, upright, limit) else {
                continue;
            };
            if side == Side::Back && into_groove(cx, upright, &part).is_some() {
                continue;
            }
            let message = format!(
                "{} {} {} from the {}, at least {}; {}",
                cx.subject(&part),
                is(&part),
                inward.show(cx.unit),
                side.word(),
                limit.show(cx.unit),
                cure(cx, upright, side, &part, inward)
            );
            let place = cx.here().on(face.id).at(&part);
            let finding = Finding::new(Rule::HoleNearEdge, place, message);
            found.push(finding.about(strand.spec.owner));
        }
    }
}

/// Where a run may start or end instead, or how far to move.
fn cure(cx: &Context, upright: &Upright, side: Side, part: &Strand, inward: Length) -> String {
    let (grid, limit) = (cx.layout.grid, side.limit(cx.limits()));
    let at = match side {
        Side::Foot => grid
            .first_from(upright.foot.total() + limit)
            .map(|hole| format!("start at hole {hole}")),
        Side::Head => grid
            .last_to(upright.head.total() - limit)
            .map(|hole| format!("end at hole {hole}")),
        Side::Front | Side::Back => None,
    };
    at.filter(|_| part.holes.is_some()).unwrap_or_else(|| {
        let by = (limit - inward).show(cx.unit);
        format!("move {by} {}", side.inward())
    })
}

/// Holes in the toe notch, or too near it.
pub(super) fn toe_notch_eats_row(cx: &Context, found: &mut Vec<Finding>) {
    for (upright, face, strand) in cx.strands() {
        let Some(notch) = upright.notch else { continue };
        let behind = (strand.x - upright.front.total() - notch.depth).max(Length::ZERO);
        let Some(up) = reach(behind, cx.limits().to_edge) else {
            continue;
        };
        let top = upright.foot.total() + notch.height;
        let Some(part) = strand.within(strand.low.min(top), top + up) else {
            continue;
        };
        let cure = match part.holes {
            Some((_, last)) => format!("start at hole {}", last + 1),
            None => format!(
                "move {} up",
                (top + cx.limits().to_edge - part.low).show(cx.unit)
            ),
        };
        let message = format!(
            "{} {} in the toe notch, {} deep and {} high, or under {} from it; {cure}",
            cx.subject(&part),
            is(&part),
            notch.depth.show(cx.unit),
            notch.height.show(cx.unit),
            cx.limits().to_edge.show(cx.unit)
        );
        let place = cx.here().on(face.id).at(&part);
        let finding = Finding::new(Rule::ToeNotchEatsRow, place, message);
        found.push(finding.about(strand.spec.owner));
    }
}

/// Holes too near the groove or rabbet of the back, or in it.
pub(super) fn back_row_in_groove(cx: &Context, found: &mut Vec<Finding>) {
    let cut = match cx.cabinet.carcass.back {
        Back::Groove { .. } => "groove",
        Back::Rabbet { .. } => "rabbet",
        Back::Planted | Back::Open => return,
    };
    for (upright, face, strand) in cx.strands() {
        let Some(left) = into_groove(cx, upright, &strand) else {
            continue;
        };
        let (to_edge, taken) = (upright.back.total() - strand.x, upright.back_taken);
        let rest = if left < Length::ZERO {
            format!("{} inside it", (-left).show(cx.unit))
        } else {
            format!(
                "{} left, at least {}",
                left.show(cx.unit),
                cx.limits().to_back.show(cx.unit)
            )
        };
        let message = format!(
            "{} {} {} from the back edge, the {cut} takes {}: {rest}; move {} forward",
            cx.subject(&strand),
            is(&strand),
            to_edge.show(cx.unit),
            taken.show(cx.unit),
            (cx.limits().to_back - left).show(cx.unit)
        );
        let place = cx.here().on(face.id).at(&strand);
        let finding = Finding::new(Rule::BackRowInGroove, place, message);
        found.push(finding.about(strand.spec.owner));
    }
}

/// What is left between a hole's centre and the groove's front wall, when it is too little; negative in the groove.
fn into_groove(cx: &Context, upright: &Upright, strand: &Strand) -> Option<Length> {
    let back = upright.back.total();
    let left = back - upright.back_taken - strand.x;
    let bars = upright.back_taken > Length::ZERO && strand.x <= back;
    (bars && left < cx.limits().to_back).then_some(left)
}

#[cfg(test)]
mod tests;
