//! A shelf zone that is clean on both walls.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::Proposal;
use super::walls::{Fastener, Wall};
use crate::edit::{BayRun, Edit};
use crate::grid::HoleNumber;
use crate::job::{Cabinet, Datum, Hand, Job};
use crate::layout::{
    BayLayout, Item, Layout, SHELF_SETBACK, SHELF_SHORTER, SHELF_TO_BACK, Span, Use,
};
use crate::measure::Length;
use crate::parts::strength;
use crate::strength::{board_rests_on, sag_rests_on, tip_rests_on};

/// The fewest holes worth a zone.
const HOLES_LEAST: i16 = 2;

/// The longest run of holes that shelves may stand on, on both walls; `None` where the bay has pins already, or no such run.
pub(super) fn zone(
    job: &Job,
    cabinet: &Cabinet,
    layout: &Layout,
    bay: &BayLayout,
) -> Option<Proposal> {
    let facts = cabinet.opening.bay(bay.key)?;
    if !facts.zones.is_empty() {
        return None;
    }
    let clean = clean_holes(job, layout, bay);
    let (first, last) = longest_run(&clean)?;
    let show = |length: Length| length.show(job.unit);
    let pin = job.cards.pin(&job.shop.pin);
    let rise = pin.map_or(Length::ZERO, |pin| pin.rise.value);
    let board = job.cards.board(&job.shop.board)?;
    let below = layout.height(first) + rise - bay.floor.total();
    let above = bay.ceiling.total() - layout.height(last) - rise - board.thickness.value;
    let lost = (1..=layout.last)
        .filter(|&hole| bay.spans(layout.height(hole)) && !clean.contains(&hole))
        .count();
    let mut why: Vec<String> = [
        format!("{} clear under a shelf on hole {first}", show(below)),
        format!("{} clear over one on hole {last}", show(above)),
    ]
    .into();
    if let Some(text) = bears(job, bay) {
        why.push(text);
        why.extend([sag_rests_on(), tip_rests_on(), board_rests_on(board)]);
    }
    if lost > 0 {
        why.push(format!(
            "{lost} holes of this bay are taken, barred or without room for a shelf"
        ));
    }
    Some(Proposal {
        fronts: Vec::new(),
        title: format!("shelf holes {first}-{last}: clean on both walls"),
        why,
        edit: Some(Edit::Pins(BayRun {
            cabinet: cabinet.key,
            bay: bay.key,
            first,
            last,
            datum: Datum::Foot,
        })),
        already: false,
    })
}

/// What a shelf of the shop's board would bear in this bay, where its stiffness is known.
fn bears(job: &Job, bay: &BayLayout) -> Option<String> {
    let board = job.cards.board(&job.shop.board)?;
    let length = bay.width - SHELF_SHORTER;
    let depth = bay.depth_behind_fronts(&job.shop) - SHELF_SETBACK - SHELF_TO_BACK;
    if length.min(depth) <= Length::ZERO {
        return None;
    }
    let overhang = job.shop.setback_front - SHELF_SETBACK;
    let pins = 4;
    let of = strength(board, [length, depth], None, overhang, pins);
    let (longest, limit) = of.longest?;
    let mut text = format!(
        "with {} kg (house guess) it sags {:.1} mm, {:.1} after years; up to {:.0} long within {}",
        of.load_kg,
        of.now?,
        of.later?,
        // A length that is said to be the most is rounded down.
        libm::floor(longest),
        limit.words
    );
    if let (Some(tip), Some(pin)) = (of.tip_kg, of.pin_kg) {
        text += &format!("; {tip:.1} kg on its front edge tip it, a pin bears {pin:.1}");
    }
    Some(text)
}

/// The holes on which a shelf meets nothing on either wall, from the foot up.
fn clean_holes(job: &Job, layout: &Layout, bay: &BayLayout) -> Vec<i16> {
    let pen = job
        .cards
        .pin(&job.shop.pin)
        .map_or(Length::ZERO, |pin| pin.pen.value);
    let rise = job
        .cards
        .pin(&job.shop.pin)
        .map_or(Length::ZERO, |pin| pin.rise.value);
    let thickness = job
        .cards
        .board(&job.shop.board)
        .map_or(Length::ZERO, |board| board.thickness.value);
    let fastener = Fastener {
        use_: Use::Pin,
        pen,
    };
    let shelf_depth = Span::new(Length::ZERO, bay.inner_depth.total());
    let (mut taken, mut spaces) = (Vec::new(), Vec::new());
    for hand in [Hand::Left, Hand::Right] {
        let wall = Wall {
            job,
            layout,
            face: bay.wall(hand),
            gone: &[],
        };
        for x in [bay.front_row.total(), bay.back_row.total()] {
            taken.extend(wall.taken(x, fastener));
        }
        spaces.extend(
            wall.spaces(shelf_depth, Span::new(Length::ZERO, bay.width), |item| {
                item != Item::Shelf
            }),
        );
    }
    let clean = |&hole: &i16| {
        let number = u16::try_from(hole)
            .ok()
            .and_then(|hole| HoleNumber::new(hole).ok());
        let z = layout.height(hole);
        let underside = z + rise;
        let body = crate::solve::Interval::new(underside, underside + thickness);
        let on_both = [Hand::Left, Hand::Right].into_iter().all(|hand| {
            let upright = layout.upright(bay.wall(hand).panel);
            upright.is_some_and(|upright| upright.holes.0 <= hole && hole <= upright.holes.1)
        });
        on_both
            && bay.floor.total() <= z
            && underside + thickness <= bay.ceiling.total()
            && number.is_some_and(|hole| !taken.iter().any(|run| run.contains(hole)))
            && !spaces.iter().any(|space| space.meets(body))
    };
    (1..=layout.last).filter(clean).collect()
}

/// The longest run of neighbours, the lower of two alike; `None` when none is worth it.
fn longest_run(holes: &[i16]) -> Option<(i16, i16)> {
    let mut best: Option<(i16, i16)> = None;
    let mut run: Option<(i16, i16)> = None;
    for &hole in holes {
        run = match run {
            Some((first, last)) if last + 1 == hole => Some((first, hole)),
            _ => Some((hole, hole)),
        };
        let longer = |a: (i16, i16), b: (i16, i16)| a.1 - a.0 > b.1 - b.0;
        if let Some(now) = run
            && best.is_none_or(|best| longer(now, best))
        {
            best = Some(now);
        }
    }
    best.filter(|(first, last)| last - first + 1 >= HOLES_LEAST)
}
