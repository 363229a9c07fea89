//! Fronts: how far they lap over the edges around an opening, and how they divide its height.
//!
//! ```text
//!      side   partition    side            lap of each front over an upright:
//!     |#|      |#|          |#|            outer side    its thickness less the reveal
//!    |-------||---------------|            shared        half the partition less half the gap
//!      door      drawer                    not shared    its thickness less the reveal
//! ```

use alloc::vec::Vec;

use super::OpenPoint;
use super::space::{Space, Walk};
use crate::job::{
    Division, FaceId, Front, FrontHeight, FrontKind, FrontRules, Hand, Inset, Key, Opening,
};
use crate::measure::Length;
use crate::sum::Sum;

/// A front, or the room of a drawer behind one: where it is, seen from the front of the cabinet.
///
/// `across` runs to the right from the outer face of the left side, `z` up from the carcass underside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FrontLayout {
    /// The wish it comes from; both leaves of a pair have the same.
    pub key: Key,
    /// The opening it closes.
    pub opening: Key,
    /// What it is.
    pub kind: FrontKind,
    /// The hand it is hung on; `None` when it does not hang.
    pub hung: Option<Hand>,
    /// Its left edge, across.
    pub left: Length,
    /// Its width.
    pub width: Sum,
    /// Its lower edge, z.
    pub foot: Length,
    /// Its height.
    pub height: Sum,
    /// Its thickness.
    pub thickness: Length,
    /// How far its face stands behind the carcass front; `None` for a front that laps over the edges.
    pub set_in: Option<Length>,
    /// How far it laps over the upright on its left; negative for the gap of one that stands inside.
    pub lap_left: Sum,
    /// How far it laps over the upright on its right.
    pub lap_right: Sum,
    /// The face its opening sees on the left.
    pub wall_left: FaceId,
    /// The face its opening sees on the right.
    pub wall_right: FaceId,
}

impl FrontLayout {
    /// Its right edge, across.
    #[must_use]
    pub fn right(&self) -> Length {
        self.left + self.width.total()
    }

    /// Its upper edge, z.
    #[must_use]
    pub fn head(&self) -> Length {
        self.foot + self.height.total()
    }

    /// How far it laps over the upright it is hung on.
    #[must_use]
    pub fn lap_hung(&self) -> Option<Sum> {
        self.hung.map(|hand| match hand {
            Hand::Left => self.lap_left,
            Hand::Right => self.lap_right,
        })
    }

    /// The face its plates are on.
    #[must_use]
    pub fn wall_hung(&self) -> Option<FaceId> {
        self.hung.map(|hand| match hand {
            Hand::Left => self.wall_left,
            Hand::Right => self.wall_right,
        })
    }
}

/// How far fronts of an opening that is open all around would lap over what is around it.
#[derive(Clone, Copy)]
pub(super) struct Laps {
    pub(super) left: Sum,
    pub(super) right: Sum,
    pub(super) foot: Sum,
    pub(super) head: Sum,
}

impl Laps {
    /// Over the whole edge of a board but the reveal.
    pub(super) fn whole(words: &'static str, board: Length, reveal: Length) -> Sum {
        Sum::of(words, board).less("reveal", reveal)
    }

    /// Over half the edge of a board, with half the gap to the front that has the other half.
    fn shared(words: &'static str, board: Length, rules: &FrontRules) -> Sum {
        Sum::of(words, board.half()).less("half the gap", rules.gap.half())
    }

    /// Over the edge of a board between two openings, where the other one has fronts before that edge or has not.
    pub(super) fn between(
        words: [&'static str; 2],
        board: Length,
        (other, edge): (&Opening, Edge),
        rules: &FrontRules,
    ) -> Sum {
        if laps_over(other, edge) {
            Self::shared(words[0], board, rules)
        } else {
            Self::whole(words[1], board, rules.reveal_side)
        }
    }
}

/// One of the four edges around an opening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Edge {
    Left,
    Right,
    Foot,
    Head,
}

/// Whether any front of an opening, or of one within it that reaches this edge, stands before that edge.
fn laps_over(opening: &Opening, edge: Edge) -> bool {
    let seen = opening.fronts.iter().any(|front| front.kind.is_seen());
    if seen && inset_of(opening).is_none() {
        return true;
    }
    let over = |part: &Opening| laps_over(part, edge);
    match &opening.division {
        Division::Bay(_) => false,
        Division::SideBySide(row) => {
            let last = row.rest.last().map_or(&row.first, |(_, part)| part);
            match edge {
                Edge::Left => over(&row.first.opening),
                Edge::Right => over(&last.opening),
                Edge::Foot | Edge::Head => row.parts().any(|part| over(&part.opening)),
            }
        }
        Division::Stacked(stack) => {
            let last = stack.rest.last().map_or(&stack.first, |(_, part)| part);
            let mut above = stack.rest.iter();
            match edge {
                Edge::Foot => over(&stack.first),
                Edge::Head => over(last),
                Edge::Left | Edge::Right => over(&stack.first) || above.any(|(_, part)| over(part)),
            }
        }
    }
}

/// How the fronts of an opening stand inside it, set in from the carcass front; of several bays the one with the lowest key
/// says so for all.
fn inset_of(opening: &Opening) -> Option<Inset> {
    let mut lowest: Option<(Key, Option<Inset>)> = None;
    opening.each(&mut |part| {
        if let Division::Bay(bay) = &part.division
            && lowest.is_none_or(|(key, _)| part.key < key)
        {
            // A recessed bay takes its fronts back with it, as it does its rows.
            let behind_carcass = |inset: Inset| Inset {
                set_in: bay.recess + inset.set_in,
                ..inset
            };
            lowest = Some((part.key, bay.inset.map(behind_carcass)));
        }
    });
    lowest.and_then(|(_, inset)| inset)
}

/// The gap between the fronts of an opening, which is also what one of whole modules is shorter than them.
pub(crate) fn gap_of(rules: &FrontRules, opening: &Opening) -> Length {
    match inset_of(opening) {
        Some(_) => rules.gap_inset,
        None => rules.gap,
    }
}

/// Where fronts are before they are divided: both edges, the height they share, the gap between them.
struct Field {
    left: Length,
    width: Sum,
    foot: Length,
    height: Sum,
    gap: Length,
    set_in: Option<Length>,
    /// The thickness that an inset opening is made for, where it was typed.
    inset_front: Option<Length>,
    laps: [Sum; 2],
}

/// Lays out the fronts of one opening, and the rooms of drawers behind them.
pub(super) fn lay_out(walk: &mut Walk, opening: &Opening, space: &Space) {
    if opening.fronts.is_empty() {
        return;
    }
    let field = field(&walk.house.shop.fronts, opening, space);
    let seen = |front: &&Front| front.kind.is_seen();
    let (before, behind): (Vec<&Front>, Vec<&Front>) = opening.fronts.iter().partition(seen);

    let shared = Shared {
        of: field.height,
        gap: field.gap,
        module_less: field.gap,
        filled: true,
    };
    let mut foot = field.foot;
    for (front, height) in before
        .iter()
        .zip(shared.heights(walk, opening.key, &before))
    {
        leaves(walk, opening.key, front, space, &field, foot, height);
        foot += height.total() + field.gap;
    }

    let clear = Sum::of("clear height", space.ceiling.total() - space.floor.total());
    let room = Shared {
        of: clear,
        gap: Length::ZERO,
        module_less: Length::ZERO,
        filled: false,
    };
    let mut foot = space.floor.total();
    for (front, height) in behind.iter().zip(room.heights(walk, opening.key, &behind)) {
        let thickness = walk.front_thickness(front.thickness);
        walk.layout.fronts.push(FrontLayout {
            key: front.key,
            opening: opening.key,
            kind: front.kind,
            hung: None,
            left: space.across,
            width: Sum::of("clear width", space.width),
            foot,
            height,
            thickness,
            set_in: None,
            lap_left: Sum::default(),
            lap_right: Sum::default(),
            wall_left: space.left,
            wall_right: space.right,
        });
        foot += height.total();
    }
}

fn field(rules: &FrontRules, opening: &Opening, space: &Space) -> Field {
    let gap = gap_of(rules, opening);
    let clear = Sum::of("clear width", space.width);
    let (floor, ceiling) = (space.floor.total(), space.ceiling.total());
    if let Some(inset) = inset_of(opening) {
        let inside = Sum::default().less("gap", gap);
        return Field {
            left: space.across + gap,
            width: clear.less("gap left", gap).less("gap right", gap),
            foot: floor + gap,
            height: Sum::of("clear height", ceiling - floor)
                .less("gap at the foot", gap)
                .less("gap at the head", gap),
            gap,
            set_in: Some(inset.set_in),
            inset_front: inset.front,
            laps: [inside; 2],
        };
    }
    let Laps {
        left,
        right,
        foot,
        head,
    } = space.laps;
    Field {
        left: space.across - left.total(),
        width: clear
            .plus("lap left", left.total())
            .plus("lap right", right.total()),
        foot: floor - foot.total(),
        height: Sum::of("clear height", ceiling - floor)
            .plus("lap at the foot", foot.total())
            .plus("lap at the head", head.total()),
        gap,
        set_in: None,
        inset_front: None,
        laps: [left, right],
    }
}

/// One front, or both leaves of a pair with the gap between them.
fn leaves(
    walk: &mut Walk,
    opening: Key,
    front: &Front,
    space: &Space,
    field: &Field,
    foot: Length,
    height: Sum,
) {
    let one = FrontLayout {
        key: front.key,
        opening,
        kind: front.kind,
        hung: match front.kind {
            FrontKind::Door(hand) => Some(hand),
            _ => None,
        },
        left: field.left,
        width: field.width,
        foot,
        height,
        thickness: walk.front_thickness(front.thickness.or(field.inset_front)),
        set_in: field.set_in,
        lap_left: field.laps[0],
        lap_right: field.laps[1],
        wall_left: space.left,
        wall_right: space.right,
    };
    if front.kind != FrontKind::Pair {
        walk.layout.fronts.push(one);
        return;
    }
    let whole = field.width.total();
    let leaf = (whole - field.gap).half();
    let width = Sum::of("half the width", whole.half()).less("half the gap", whole.half() - leaf);
    for hand in [Hand::Left, Hand::Right] {
        walk.layout.fronts.push(FrontLayout {
            hung: Some(hand),
            left: match hand {
                Hand::Left => field.left,
                Hand::Right => field.left + whole - leaf,
            },
            width,
            ..one
        });
    }
}

/// A height that several fronts share.
struct Shared {
    of: Sum,
    gap: Length,
    /// What a front of whole modules is shorter than them.
    module_less: Length,
    /// Whether nothing of it may be left over.
    filled: bool,
}

impl Shared {
    /// Shares are rounded to half a millimetre.
    const STEP: Length = Length::from_um(500);

    /// The height of each front, from the foot up; they and their gaps add up to the whole wherever that can be.
    ///
    /// What shares leave over by rounding goes to the lowest share; where no front has a share, what is left over goes to
    /// the lowest of whole modules. What nobody can take is said; rooms behind a door may leave some over.
    fn heights(&self, walk: &mut Walk, opening: Key, fronts: &[&Front]) -> Vec<Sum> {
        if fronts.is_empty() {
            return Vec::new();
        }
        let gaps: Length = fronts.iter().skip(1).map(|_| self.gap).sum();
        let mut heights: Vec<Sum> = fronts
            .iter()
            .map(|front| match front.height {
                FrontHeight::Modules(count) => {
                    Sum::of("modules of 32", Length::PITCH * i32::from(count))
                        .less("gap", self.module_less)
                }
                FrontHeight::Fixed(height) => Sum::of("height as typed", height),
                FrontHeight::Ratio(_) => Sum::default(),
            })
            .collect();
        let taken: Length = heights.iter().map(Sum::total).sum();
        let left = self.of.total() - gaps - taken;
        let share = |front: &Front| match front.height {
            FrontHeight::Ratio(share) => i32::from(share),
            _ => 0,
        };
        let shares: i32 = fronts.iter().map(|front| share(front)).sum();
        let lowest = |wanted: fn(&Front) -> bool| fronts.iter().position(|front| wanted(front));
        let lowest = lowest(|front| matches!(front.height, FrontHeight::Ratio(_)))
            .or_else(|| lowest(|front| matches!(front.height, FrontHeight::Modules(_))));
        let mut rest = left;
        for (front, height) in fronts.iter().zip(&mut heights) {
            if share(front) > 0 && left > Length::ZERO {
                let part = Self::part(left, share(front), shares);
                *height = Sum::of("share of what is left", part);
                rest -= part;
            }
        }
        let wanted = self.filled || rest < Length::ZERO || shares > 0;
        match lowest.filter(|_| wanted).and_then(|at| heights.get_mut(at)) {
            Some(height) if rest >= Length::ZERO && left > Length::ZERO => {
                *height = if fronts.len() == 1 && shares > 0 {
                    self.of
                } else {
                    height.plus("what is left over", rest)
                };
            }
            _ if wanted && rest != Length::ZERO => {
                walk.layout.open_points.push(OpenPoint::Heights {
                    opening,
                    left_over: rest,
                });
            }
            _ => {}
        }
        heights
    }

    /// A share of a length, down to half a millimetre.
    fn part(whole: Length, share: i32, shares: i32) -> Length {
        let counts = i64::from(whole.counts()) * i64::from(share) / i64::from(shares);
        let step = i64::from(Self::STEP.counts());
        Length::from_counts(i32::try_from(counts / step * step).unwrap_or(0))
    }
}
