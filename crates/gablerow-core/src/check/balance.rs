//! Balance: what a panel that is off balance does to rows that rest on different ends.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::grid::{Ends, FourPins, balancing_offsets};
use crate::job::{End, Hand, Reference};
use crate::layout::{BayLayout, Face, Upright};
use crate::measure::Length;

/// A cabinet off balance whose rows all rest on the foot: nothing is wrong as long as no panel is turned.
pub(super) fn unbalanced(cx: &Context, found: &mut Vec<Finding>) {
    let ends = ends(cx);
    if ends.mismatch().is_balanced() || cx.shop().reference != Reference::Foot {
        return;
    }
    let message = format!(
        "{}; keep every row on the foot, or {}",
        out(ends),
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
                out.mm_1(),
                taken(ends)
            )
        } else {
            out(ends)
        };
        let message = format!(
            "{what}; {}; rows from one end, or {}",
            rests.words(ends),
            cure(cx, ends)
        );
        found.push(Finding::new(rule, cx.here().on(face.id), message));
    }
}

fn ends(cx: &Context) -> Ends {
    cx.cabinet.offsets.ends(cx.cabinet.size.height)
}

/// `672.0 high is 13.0 out: holes from the head fall above those from the foot`
fn out(ends: Ends) -> String {
    let (height, size) = (ends.height.mm_1(), ends.mismatch().size().mm_1());
    let way = match ends.mismatch().signed() {
        Some(up) if up > Length::ZERO => "above",
        Some(_) => "below",
        None => "midway between",
    };
    format!("{height} high is {size} out, holes from the head fall {way} those from the foot")
}

fn taken(ends: Ends) -> String {
    if ends.foot == ends.head {
        return format!("{} is taken from each end", ends.foot.mm_1());
    }
    let (foot, head) = (ends.foot.mm_1(), ends.head.mm_1());
    format!("{foot} and {head} are taken from foot and head")
}

/// The balanced heights either side, and the offsets that balance this one.
fn cure(cx: &Context, ends: Ends) -> String {
    let heights = ends.balanced_heights();
    let above = heights.above.mm_1();
    let heights = match heights.below {
        Some(below) => format!("{} or {above} high", below.mm_1()),
        None => format!("{above} high"),
    };
    let offsets = balancing_offsets(ends.height, cx.limits().to_end);
    let [near, far] = offsets.map(|offset| offset.usable.then(|| offset.offset.mm_1()));
    match (near, far) {
        (Some(near), Some(far)) => format!("{heights}, offsets {near} or {far}"),
        (Some(only), None) | (None, Some(only)) => format!("{heights}, offsets {only}"),
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

/// Rows of one face that rest on both ends, or shelves on it that do.
enum Rests {
    /// The rows of the face alone.
    Rows(Hand),
    /// The four pins of a bay: how many of them rest on the head, as left front, left back, right front, right back.
    Pins([End; 4]),
}

impl Rests {
    fn of(cx: &Context, upright: &Upright, face: &Face) -> Option<Self> {
        let pins = cx.layout.bays_at(face.id).map(|(bay, _)| pins(cx, bay));
        let both = |pins: &[End; 4]| pins.contains(&End::Foot) && pins.contains(&End::Head);
        if face.rows.is_empty() {
            return None;
        }
        if let Some(pins) = pins.flatten().find(both) {
            return Some(Self::Pins(pins));
        }
        let in_front = |x: Length| is_in_front(upright, x);
        let mut rows = face.rows.iter().map(|row| in_front(row.x.total()));
        let first = rows.next()?;
        rows.any(|next| next != first)
            .then_some(Self::Rows(face.id.toward))
    }

    /// Which rows rest on which end, and what that does.
    fn words(&self, ends: Ends) -> String {
        match self {
            Self::Rows(toward) => {
                let (front, back) = (end_of(*toward, true), end_of(*toward, false));
                format!(
                    "front rows rest on the {}, back rows on the {}",
                    word(front),
                    word(back)
                )
            }
            Self::Pins(pins) => {
                let (on, does) = (on_head(*pins), effect(*pins, ends.mismatch().wrapped()));
                format!("{on} rest on the head, so shelves {does}")
            }
        }
    }
}

fn word(end: End) -> &'static str {
    match end {
        End::Foot => "foot",
        End::Head => "head",
    }
}

/// The ends that the pins of a bay rest on; `None` when it has no pins.
fn pins(cx: &Context, bay: &BayLayout) -> Option<[End; 4]> {
    let asked = cx.cabinet.opening.bay(bay.key)?;
    if asked.zones.is_empty() && asked.shelves.is_empty() {
        return None;
    }
    let of = |hand: Hand, x: Length| {
        let face = bay.wall(hand);
        let upright = cx.layout.upright(face.panel)?;
        Some(end_of(face.toward, is_in_front(upright, x)))
    };
    let (front, back) = (bay.front_row.total(), bay.back_row.total());
    Some([
        of(Hand::Left, front)?,
        of(Hand::Left, back)?,
        of(Hand::Right, front)?,
        of(Hand::Right, back)?,
    ])
}

/// `left front and right back`
fn on_head(pins: [End; 4]) -> String {
    let names = ["left front", "left back", "right front", "right back"];
    let on: Vec<_> = names
        .into_iter()
        .zip(pins)
        .filter(|(_, end)| *end == End::Head)
        .map(|(name, _)| name)
        .collect();
    on.join(" and ")
}

/// What pins that rest on the head do to a shelf, each of them so far up.
fn effect(pins: [End; 4], up: Length) -> String {
    let [left_front, left_back, right_front, right_back] =
        pins.map(|end| if end == End::Head { up } else { Length::ZERO });
    let pins = FourPins {
        left_front,
        left_back,
        right_front,
        right_back,
    };
    let (across, along) = (
        pins.slope_side_to_side().abs(),
        pins.slope_front_to_back().abs(),
    );
    if pins.rock() > Length::ZERO {
        format!("rock {}", pins.rock().mm_1())
    } else if across > Length::ZERO {
        format!("slope {} from side to side", across.mm_1())
    } else {
        format!("slope {} from front to back", along.mm_1())
    }
}

#[cfg(test)]
mod tests;
