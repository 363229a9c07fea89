//! Rows as arithmetic progressions: which holes of two rows, or of a row over a box, meet.

use super::sweep::Item;
use super::{Holes, Meeting};
use crate::layout::Span;
use crate::measure::Length;

pub(super) const PITCH: i32 = Length::PITCH.counts();

/// A row as the search compares it: all in counts.
#[derive(Clone, Copy, Debug)]
pub(super) struct Row {
    pub(super) place: usize,
    pub(super) x: i32,
    pub(super) low: i32,
    pub(super) count: i32,
    pub(super) diameter: i32,
    pub(super) u: Span,
}

impl Row {
    pub(super) fn new(place: usize, holes: &Holes) -> Self {
        Self {
            place,
            x: holes.x.counts(),
            low: holes.low.counts(),
            count: holes.count,
            diameter: holes.diameter.counts(),
            u: holes.u,
        }
    }
}

/// How far along a thing may be that is so far aside, when twice the distance must stay below `sum`; `None` when it is
/// far enough aside.
fn reach(aside: i32, sum: i32) -> Option<i32> {
    if aside == 0 {
        return (sum > 0).then_some((sum - 1) / 2);
    }
    let left = square(sum) - 4 * square(aside);
    // In whole counts twice a distance is even, and below the root it stays when it is not above the root of one less.
    (left > 0)
        .then(|| (left - 1).isqrt() / 2)
        .and_then(|reach| i32::try_from(reach).ok())
}

pub(super) fn square(counts: i32) -> i64 {
    i64::from(counts) * i64::from(counts)
}

/// The least whole number of pitches not below so many counts.
fn pitches_up(counts: i32) -> i32 {
    -(-counts).div_euclid(PITCH)
}

/// Every two rows that meet, and every row whose own holes do. The rows come front to back; none is wider than `widest`.
pub(super) fn beside_each_other(rows: &[Row], widest: i32, found: &mut impl FnMut(Meeting)) {
    for (at, one) in rows.iter().enumerate() {
        if one.diameter > PITCH {
            with_itself(one, found);
        }
        let far = one.diameter + widest;
        for other in &rows[at + 1..] {
            if 2 * (other.x - one.x) >= far {
                break;
            }
            two_rows(one, other, found);
        }
    }
}

/// Holes of one row that are wider than they are apart.
fn with_itself(row: &Row, found: &mut impl FnMut(Meeting)) {
    if row.u.from >= row.u.to {
        return;
    }
    for shift in 1..=((row.diameter - 1) / PITCH).min(row.count - 1) {
        found(Meeting::Holes {
            one: row.place,
            other: row.place,
            first: 0,
            last: row.count - 1 - shift,
            shift,
        });
    }
}

/// The holes of two rows that meet, once for each shift between their numbers.
fn two_rows(one: &Row, other: &Row, found: &mut impl FnMut(Meeting)) {
    let (one, other) = if one.place < other.place {
        (one, other)
    } else {
        (other, one)
    };
    let sum = one.diameter + other.diameter;
    let up = other.low - one.low;
    let apart = (up - PITCH * (one.count - 1)).max(-up - PITCH * (other.count - 1));
    if 2 * apart >= sum || one.u.overlap(other.u) <= Length::ZERO {
        return;
    }
    let Some(reach) = reach(other.x - one.x, sum) else {
        return;
    };
    // Hole i of one is i pitches up, hole i + shift of the other is `up` and i + shift pitches up.
    for shift in pitches_up(-reach - up)..=(reach - up).div_euclid(PITCH) {
        let (first, last) = (0.max(-shift), (one.count - 1).min(other.count - 1 - shift));
        if first <= last {
            found(Meeting::Holes {
                one: one.place,
                other: other.place,
                first,
                last,
                shift,
            });
        }
    }
}

/// Every row that meets a short one, which is not among them.
pub(super) fn beside_short(
    rows: &[Row],
    short: &Row,
    widest: i32,
    found: &mut impl FnMut(Meeting),
) {
    let far = short.diameter + widest;
    let begins = rows.partition_point(|row| 2 * (short.x - row.x) >= far);
    let near = rows[begins..]
        .iter()
        .take_while(|row| 2 * (row.x - short.x) < far);
    near.for_each(|row| two_rows(row, short, found));
}

/// Every row that meets a box.
pub(super) fn over_space(rows: &[Row], item: &Item, widest: i32, found: &mut impl FnMut(Meeting)) {
    let Some(place) = item.space() else {
        return;
    };
    let ([x_from, z_from], [x_to, z_to]) = (item.from, item.to);
    let begins = rows.partition_point(|row| 2 * (x_from - row.x) >= widest);
    for row in &rows[begins..] {
        if 2 * (row.x - x_to) >= widest {
            break;
        }
        let high = row.low + PITCH * (row.count - 1);
        let apart = (row.low - z_to).max(z_from - high);
        if 2 * apart >= row.diameter || row.u.overlap(item.u) <= Length::ZERO {
            continue;
        }
        let aside = (x_from - row.x).max(row.x - x_to).max(0);
        let Some(reach) = reach(aside, row.diameter) else {
            continue;
        };
        let first = pitches_up(z_from - reach - row.low).max(0);
        let last = (z_to + reach - row.low)
            .div_euclid(PITCH)
            .min(row.count - 1);
        if first <= last {
            found(Meeting::HolesAndSpace {
                holes: row.place,
                space: place,
                first,
                last,
            });
        }
    }
}
