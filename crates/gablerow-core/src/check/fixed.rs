//! Fixed shelves and the boards around them: a board is where no other board is, but for its joints.
//!
//! ```text
//!        top       |=======|            the back rail under the top
//!                  |  |rail|
//!   ===============|==|====| shelf      into the rail;  a partition through the shelf;  an end past its wall
//!        partition |
//! ```

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::job::{Division, FixedShelf, Hand, Key, Opening, PanelId};
use crate::layout::{Item, PanelLayout, Span, Upright};
use crate::measure::Length;

/// Fixed shelves that run into another board, or past the walls between which they stand.
pub(super) fn shelf_through_board(cx: &Context, found: &mut Vec<Finding>) {
    let sides = [Hand::Left, Hand::Right].map(PanelId::Side);
    within(cx, &cx.cabinet.opening, sides, found);
}

/// Visits every fixed shelf of an opening between two walls.
fn within(cx: &Context, opening: &Opening, walls: [PanelId; 2], found: &mut Vec<Finding>) {
    match &opening.division {
        Division::Bay(_) => {}
        Division::SideBySide(row) => {
            let mut left = walls[0];
            let mut part = &row.first;
            for (partition, next) in &row.rest {
                let right = PanelId::Partition(partition.key);
                within(cx, &part.opening, [left, right], found);
                (left, part) = (right, next);
            }
            within(cx, &part.opening, [left, walls[1]], found);
        }
        Division::Stacked(stack) => {
            within(cx, &stack.first, walls, found);
            for (shelf, above) in &stack.rest {
                one(cx, shelf, walls, found);
                within(cx, above, walls, found);
            }
        }
    }
}

fn one(cx: &Context, shelf: &FixedShelf, walls: [PanelId; 2], found: &mut Vec<Finding>) {
    let mut made = cx.layout.panels.iter();
    let Some(made) = made.find(|it| it.owner == Some(shelf.key)) else {
        return;
    };
    let mut say = |other: Option<Key>, what: String| {
        let message = format!("{} {what}", name(cx, shelf.key));
        let finding = Finding::new(Rule::ShelfThroughBoard, cx.here(), message);
        found.push(finding.about_both((Some(shelf.key), other)));
    };
    if made.x.to <= made.x.from {
        let [recess, inside] = [made.x.from, made.x.to].map(|x| x.show(cx.unit));
        let what = format!("is recessed {recess}, but it is {inside} deep inside; recess it less");
        say(None, what);
        return;
    }
    for (past, wall) in past_walls(cx, made, walls) {
        let (past, board) = (past.show(cx.unit), cx.layout.names.panel(wall));
        let the = if wall.partition().is_some() {
            ""
        } else {
            "the "
        };
        let what = format!("runs {past} past {the}{board}; let its ends in less");
        say(wall.partition(), what);
    }
    for upright in cx
        .layout
        .uprights
        .iter()
        .filter(|it| !walls.contains(&it.id))
    {
        if goes_through(upright, made) {
            let what = format!(
                "lies where {} runs past it; let the partition end on the shelf",
                cx.layout.names.panel(upright.id)
            );
            say(upright.id.partition(), what);
        }
    }
    for other in &cx.layout.panels {
        // Of two fixed shelves the upper one says it.
        let is_said =
            other.owner.is_some() && (other.z.from, other.owner) >= (made.z.from, made.owner);
        if is_said
            || !meet(&made.z, &other.z)
            || !meet(&made.x, &other.x)
            || !meet(&across(made), &across(other))
        {
            continue;
        }
        let (z, over) = (made.z, other.z);
        let board = other
            .owner
            .map_or_else(|| board(other.item), |key| name(cx, key));
        let what = format!(
            "lies at {}, and runs into {board} at {}; move one of them, or let it in less",
            cx.span(z.from, z.to),
            cx.span(over.from, over.to)
        );
        say(other.owner, what);
    }
}

fn board(item: Item) -> String {
    format!("the {}", item.word())
}

fn name(cx: &Context, shelf: Key) -> String {
    let number = cx.layout.names.shelf(shelf);
    number.map_or_else(
        || "a fixed shelf".to_string(),
        |number| format!("fixed shelf {number}"),
    )
}

/// How far the ends go past the far faces of the walls, where they do.
fn past_walls(
    cx: &Context,
    made: &PanelLayout,
    [left, right]: [PanelId; 2],
) -> impl Iterator<Item = (Length, PanelId)> {
    let Span { from, to } = across(made);
    let left_past = cx.layout.upright(left).map(|it| it.across - from);
    let right_past = cx
        .layout
        .upright(right)
        .map(|it| to - (it.across + it.thickness));
    [(left_past, left), (right_past, right)]
        .into_iter()
        .filter_map(|(past, wall)| Some((past?, wall)))
        .filter(|(past, _)| *past > Length::ZERO)
}

/// Whether an upright takes the whole thickness of a shelf away somewhere between its walls; one that is let in takes less.
fn goes_through(upright: &Upright, made: &PanelLayout) -> bool {
    let wide = Span::new(upright.across, upright.across + upright.thickness);
    let deep = Span::new(upright.front.total(), upright.back.total());
    let high = Span::new(upright.foot.total(), upright.head.total());
    meet(&wide, &across(made))
        && meet(&deep, &made.x)
        && high.from <= made.z.from
        && made.z.to <= high.to
}

fn across(made: &PanelLayout) -> Span {
    Span::new(made.across, made.across + made.length.total())
}

fn meet(one: &Span, other: &Span) -> bool {
    one.overlap(*other) > Length::ZERO
}

#[cfg(test)]
mod tests;
