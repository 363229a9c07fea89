//! Balance: what a panel that is off balance does to rows that rest on different ends.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::grid::{Ends, FourPins, balancing_offsets};
use crate::job::{End, Hand, Reference};
use crate::layout::{BayLayout, Face, Run, Upright, Use};
use crate::measure::Length;

/// A cabinet off balance whose rows all rest on the foot: nothing is wrong as long as no panel is turned.
pub(super) fn unbalanced(cx: &Context, found: &mut Vec<Finding>) {
    let ends = ends(cx);
    if ends.mismatch().is_balanced() || cx.shop().reference != Reference::Foot {
        return;
    }
    let message = format!(
        "{}, holes from the head fall {}; keep every row on the foot, or {}",
        out(cx, ends),
        way(ends),
        cure(cx, ends)
    );
    found.push(Finding::new(Rule::Unbalanced, cx.here(), message));
}

/// Faces off balance whose rows rest on both ends, or whose shelves do.
pub(super) fn unbalanced_turned(cx: &Context, found: &mut Vec<Finding>) {
    turned(cx, Rule::UnbalancedTurned, found);
}

/// The same, hidden behind a height of whole pitches.
pub(super) fn height_multiple_only(cx: &Context, found: &mut Vec<Finding>) {
    turned(cx, Rule::HeightMultipleOnly, found);
}

fn turned(cx: &Context, rule: Rule, found: &mut Vec<Finding>) {
    let ends = ends(cx);
    if ends.mismatch().is_balanced() || cx.shop().reference != Reference::OneStop {
        return;
    }
    let whole = ends.height.rem_floor(Length::PITCH) == Length::ZERO;
    if whole != (rule == Rule::HeightMultipleOnly) {
        return;
    }
    for (upright, face) in cx.faces() {
        let Some(rests) = Rests::of(cx, upright, face) else {
            continue;
        };
        let what = if whole {
            let (pitches, out) = (ends.height.div_floor(Length::PITCH), ends.mismatch().size());
            format!(
                "{pitches} whole pitches, but {} out once {}",
                out.show(cx.unit),
                taken(cx, ends)
            )
        } else {
            out(cx, ends)
        };
        let message = format!(
            "{what}: {}; rows from one end, or {}",
            rests.words(cx, ends),
            cure(cx, ends)
        );
        found.push(Finding::new(rule, cx.here().on(face.id), message));
    }
}

fn ends(cx: &Context) -> Ends {
    cx.cabinet.offsets.ends(cx.cabinet.size.height)
}

/// `672.0 high is 13.0 out`
fn out(cx: &Context, ends: Ends) -> String {
    let (height, size) = (
        ends.height.show(cx.unit),
        ends.mismatch().size().show(cx.unit),
    );
    format!("{height} high is {size} out")
}

/// Where holes counted from the head fall.
fn way(ends: Ends) -> &'static str {
    match ends.mismatch().signed() {
        Some(up) if up > Length::ZERO => "above those from the foot",
        Some(_) => "below those from the foot",
        None => "midway between",
    }
}

fn taken(cx: &Context, ends: Ends) -> String {
    if ends.foot == ends.head {
        return format!("{} is taken from each end", ends.foot.show(cx.unit));
    }
    let (foot, head) = (ends.foot.show(cx.unit), ends.head.show(cx.unit));
    format!("{foot} and {head} are taken from foot and head")
}

/// The balanced heights either side, and the offsets that balance this one.
fn cure(cx: &Context, ends: Ends) -> String {
    let heights = ends.balanced_heights();
    let above = heights.above.show(cx.unit);
    let heights = match heights.below {
        Some(below) => format!("{} or {above} high", below.show(cx.unit)),
        None => format!("{above} high"),
    };
    let offsets = balancing_offsets(ends.height, cx.limits().to_end);
    let [near, far] = offsets.map(|offset| offset.usable.then(|| offset.offset.show(cx.unit)));
    match (near, far) {
        (Some(near), Some(far)) => format!("{heights}, or offsets {near} or {far}"),
        (Some(only), None) | (None, Some(only)) => format!("{heights}, or offsets {only}"),
        (None, None) => heights,
    }
}

/// On which end rows of a face in the front half and in the back half rest, with one stop.
///
/// The panel lies with the face up and the edge in work nearest, the stop is on the left. What is to the left then is
/// the head for the front edge of a face toward the right, and for the back edge of a face toward the left.
fn end_of(toward: Hand, in_front: bool) -> End {
    if (toward == Hand::Right) == in_front {
        End::Head
    } else {
        End::Foot
    }
}

/// A row in the front half of its panel is worked from the front edge.
fn is_in_front(upright: &Upright, x: Length) -> bool {
    x - upright.front.total() <= upright.back.total() - x
}

/// Rows that rest on both ends.
enum Rests {
    /// Rows of one face, the one toward this hand.
    Rows(Hand),
    /// What lies on both walls of a bay.
    Corners(Corners),
}

impl Rests {
    fn of(cx: &Context, upright: &Upright, face: &Face) -> Option<Self> {
        if face.rows.is_empty() {
            return None;
        }
        let corners = cx
            .layout
            .bays_at(face.id)
            .filter_map(|(bay, _)| Corners::of(cx, bay))
            .find(Corners::rest_on_both_ends);
        if let Some(corners) = corners {
            return Some(Self::Corners(corners));
        }
        let mut rows = face
            .rows
            .iter()
            .map(|row| is_in_front(upright, row.x.total()));
        let first = rows.next()?;
        rows.any(|next| next != first)
            .then_some(Self::Rows(face.id.toward))
    }

    /// Which rows rest on which end, and what that does.
    fn words(&self, cx: &Context, ends: Ends) -> String {
        match self {
            Self::Rows(toward) => {
                let [front, back] = [true, false].map(|front| match end_of(*toward, front) {
                    End::Foot => "foot",
                    End::Head => "head",
                });
                format!("front rows rest on the {front}, back rows on the {back}")
            }
            Self::Corners(corners) => format!(
                "{} rest on the head, {} {}",
                corners.on_head(),
                corners.what,
                corners.effect(cx, ends.mismatch().wrapped())
            ),
        }
    }
}

/// The four corners of what lies on both walls of a bay.
struct Corners {
    /// Shelves or drawers.
    what: &'static str,
    /// The end each rests on: left front, left back, right front, right back.
    ends: [End; 4],
}

impl Corners {
    /// Shelves of the bay, or else its drawers; `None` when it has neither.
    fn of(cx: &Context, bay: &BayLayout) -> Option<Self> {
        let asked = cx.cabinet.opening.bay(bay.key)?;
        let (what, front, back) = if asked.zones.is_empty() && asked.shelves.is_empty() {
            let rows = runner_rows(cx, bay);
            ("drawers", rows.clone().min()?, rows.max()?)
        } else {
            ("shelves", bay.front_row.total(), bay.back_row.total())
        };
        let end = |hand: Hand, x: Length| {
            let face = bay.wall(hand);
            let upright = cx.layout.upright(face.panel)?;
            Some(end_of(face.toward, is_in_front(upright, x)))
        };
        let ends = [
            end(Hand::Left, front)?,
            end(Hand::Left, back)?,
            end(Hand::Right, front)?,
            end(Hand::Right, back)?,
        ];
        Some(Self { what, ends })
    }

    fn rest_on_both_ends(&self) -> bool {
        self.ends.contains(&End::Foot) && self.ends.contains(&End::Head)
    }

    /// `left front and right back`
    fn on_head(&self) -> String {
        let names = ["left front", "left back", "right front", "right back"];
        let corners = names.into_iter().zip(self.ends);
        let on: Vec<_> = corners
            .filter(|(_, end)| *end == End::Head)
            .map(|(name, _)| name)
            .collect();
        on.join(" and ")
    }

    /// What it does when the corners on the head are so far up.
    fn effect(&self, cx: &Context, up: Length) -> String {
        let height = |end| if end == End::Head { up } else { Length::ZERO };
        let [left_front, left_back, right_front, right_back] = self.ends.map(height);
        let pins = FourPins {
            left_front,
            left_back,
            right_front,
            right_back,
        };
        let (across, along) = (pins.slope_side_to_side(), pins.slope_front_to_back());
        if pins.rock() > Length::ZERO {
            format!("rock {}", pins.rock().show(cx.unit))
        } else if across != Length::ZERO {
            format!("slope {} from side to side", across.abs().show(cx.unit))
        } else {
            format!("slope {} from front to back", along.abs().show(cx.unit))
        }
    }
}

/// The setbacks of a bay's runner rows; both walls have the same.
fn runner_rows(cx: &Context, bay: &BayLayout) -> impl Iterator<Item = Length> + Clone {
    let rows = cx.layout.face(bay.left).map_or(&[][..], |face| &face.rows);
    let key = bay.key;
    let is_of_bay = move |run: &Run| run.spec.use_ == Use::Runner && run.spec.bay == Some(key);
    rows.iter()
        .filter(move |row| row.runs.iter().any(is_of_bay))
        .map(|row| row.x.total())
}

#[cfg(test)]
mod tests;
