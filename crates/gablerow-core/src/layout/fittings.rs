//! What a bay asks of its two walls: holes for its fittings, and the space they need.

use super::space::Walk;
use super::{BayLayout, BoreSpec, Item, KeepOut, OffGrid, RowName, Run, Span, Use, rows};
use crate::cards::PlateShape;
use crate::job::{Bay, Depth, FaceId, Hand, HolePlace, Key, PinRows, Plate, Runner, Shelf, Zone};
use crate::measure::Length;
use crate::sum::Sum;

/// How far a loose shelf ends before the back panel; a house default.
pub const SHELF_TO_BACK: Length = Length::from_mm(2);
/// How much shorter than its bay a loose shelf is when nobody has said otherwise; a house default.
pub const SHELF_SHORTER: Length = Length::from_mm(2);

/// How far a loose shelf stands behind the bay's front when nobody has said otherwise; a house default.
pub const SHELF_SETBACK: Length = Length::from_mm(12);
/// The least room from the top of a loose shelf to the fixed panel over it for it to be lifted in; a house default.
pub const LIFT_ROOM: Length = Length::from_mm(25);

const WALLS: [Hand; 2] = [Hand::Left, Hand::Right];

/// Asks for everything the bay owns.
pub(super) fn ask(walk: &mut Walk, bay: &Bay, made: &BayLayout) {
    bay.zones
        .iter()
        .for_each(|zone| ask_zone(walk, bay, made, zone));
    bay.shelves
        .iter()
        .for_each(|shelf| ask_shelf(walk, bay, made, shelf));
    bay.plates
        .iter()
        .for_each(|plate| ask_plate(walk, bay, made, plate));
    bay.runners
        .iter()
        .for_each(|runner| ask_runner(walk, bay, made, runner));
}

/// A run of holes that somebody wants, before it is cut to the grid.
#[derive(Clone, Copy)]
pub(super) struct Wanted {
    pub(super) first: HolePlace,
    pub(super) last: HolePlace,
    pub(super) spec: BoreSpec,
}

impl Wanted {
    fn one(hole: HolePlace, spec: BoreSpec) -> Self {
        Self {
            first: hole,
            last: hole,
            spec,
        }
    }
}

impl Walk<'_> {
    /// Puts what is wanted into a row of a face, as far as the grid goes, and keeps the rest to be said.
    pub(super) fn want(&mut self, face: FaceId, name: RowName, x: Sum, wanted: Wanted) {
        let last = self.layout.last;
        let (from, to) = (wanted.first.number(last), wanted.last.number(last));
        let Some(face) = self.face(face) else { return };
        let spec = wanted.spec;
        let ends = [(wanted.first, from), (wanted.last, to)];
        let ends = if from == to { &ends[..1] } else { &ends[..] };
        for &(place, number) in ends
            .iter()
            .filter(|(_, number)| !(1..=last).contains(number))
        {
            let off = OffGrid {
                use_: spec.use_,
                owner: spec.owner,
                place,
                number,
            };
            if !face.off_grid.contains(&off) {
                face.off_grid.push(off);
            }
        }
        let (first, last) = (from.min(to).max(1), from.max(to).min(last));
        if first <= last {
            face.ask(name, x, Run { first, last, spec });
        }
    }

    /// How deep a bore is; `None` is through.
    pub(super) fn depth(&self, depth: Depth) -> Option<Length> {
        match depth {
            Depth::Shop => Some(self.house.shop.depth),
            Depth::Blind(depth) => Some(depth),
            Depth::Through => None,
        }
    }

    fn pin(&self, owner: Key, bay: Key, depth: Depth) -> BoreSpec {
        let pen = self
            .house
            .cards
            .pin(&self.house.shop.pin)
            .map(|pin| pin.pen);
        BoreSpec {
            use_: Use::Pin,
            owner,
            bay: Some(bay),
            diameter: self.house.shop.diameter,
            depth: self.depth(depth),
            pen: pen.map_or(Length::ZERO, |pen| pen.value),
            pen_unproved: pen.is_some_and(|pen| pen.origin.is_unproved()),
        }
    }

    fn keep_out(&mut self, face: FaceId, keep_out: KeepOut) {
        if let Some(face) = self.face(face) {
            face.keep_outs.push(keep_out);
        }
    }
}

/// Pin holes on both walls, in the front row, the back row and, for six pins, the row midway.
fn ask_pins(walk: &mut Walk, bay: &Bay, made: &BayLayout, wanted: Wanted) {
    let middle = rows::middle_row(made.front_row, made.back_row);
    let pin_rows: &[(RowName, Sum)] = match bay.pin_rows {
        PinRows::Two => &[
            (RowName::Front, made.front_row),
            (RowName::Back, made.back_row),
        ],
        PinRows::Three => &[
            (RowName::Front, made.front_row),
            (RowName::Middle, middle),
            (RowName::Back, made.back_row),
        ],
    };
    for wall in WALLS {
        for &(name, x) in pin_rows {
            walk.want(made.wall(wall), name, x, wanted);
        }
    }
}

fn ask_zone(walk: &mut Walk, bay: &Bay, made: &BayLayout, zone: &Zone) {
    let spec = walk.pin(zone.key, made.key, zone.depth);
    ask_pins(
        walk,
        bay,
        made,
        Wanted {
            first: zone.first,
            last: zone.last,
            spec,
        },
    );
}

/// A shelf asks for the holes of its own pins; a zone that has them anyway shares them.
fn ask_shelf(walk: &mut Walk, bay: &Bay, made: &BayLayout, shelf: &Shelf) {
    let spec = walk.pin(shelf.key, made.key, Depth::Shop);
    ask_pins(walk, bay, made, Wanted::one(shelf.hole, spec));

    let rise = walk
        .house
        .cards
        .pin(&walk.house.shop.pin)
        .map_or(Length::ZERO, |pin| pin.rise.value);
    let underside = walk.layout.height(shelf.hole.number(walk.layout.last)) + rise;
    let thickness = walk.thickness(&shelf.board);
    let front = rows::bay_front(bay, walk.house).total() + shelf.setback_front;
    let keep_out = KeepOut {
        item: Item::Shelf,
        owner: Some(shelf.key),
        x: Span::new(front, made.inner_depth.total() - SHELF_TO_BACK),
        z: Span::new(underside, underside + thickness),
        u: Span::new(shelf.shorter.half(), made.width - shelf.shorter.half()),
    };
    WALLS
        .into_iter()
        .for_each(|wall| walk.keep_out(made.wall(wall), keep_out));
}

fn ask_plate(walk: &mut Walk, bay: &Bay, made: &BayLayout, plate: &Plate) {
    let Some(card) = walk.house.cards.hinge(&plate.card) else {
        return walk.no_card(&plate.card);
    };
    let spec = BoreSpec {
        use_: Use::Plate,
        owner: plate.key,
        bay: Some(made.key),
        diameter: walk.house.shop.diameter,
        depth: Some(walk.house.shop.depth),
        pen: card.pen.value,
        pen_unproved: card.pen.origin.is_unproved(),
    };
    let wall = made.wall(plate.wall);
    let number = plate.hole.number(walk.layout.last);
    let centre = walk.layout.height(number) + card.plate.rise();
    match card.plate {
        PlateShape::AlongRow => {
            let upper = HolePlace::of(number + 1, plate.hole.datum, walk.layout.last);
            walk.want(
                wall,
                RowName::Front,
                made.front_row,
                Wanted {
                    first: plate.hole,
                    last: upper,
                    spec,
                },
            );
        }
        PlateShape::InLine => {
            walk.want(
                wall,
                RowName::Front,
                made.front_row,
                Wanted::one(plate.hole, spec),
            );
            walk.want(
                wall,
                RowName::InLine,
                rows::in_line_row(made.front_row),
                Wanted::one(plate.hole, spec),
            );
        }
    }
    let front = rows::bay_front(bay, walk.house).total();
    walk.keep_out(
        wall,
        KeepOut {
            item: Item::Hinge,
            owner: Some(plate.key),
            x: Span::new(front, front + card.reach.value),
            z: Span::new(centre - card.half_zone.value, centre + card.half_zone.value),
            u: Span::new(Length::ZERO, card.proud.value),
        },
    );
}

fn ask_runner(walk: &mut Walk, bay: &Bay, made: &BayLayout, runner: &Runner) {
    let card = walk.house.cards.runner(&runner.card);
    let Some((card, length)) = card.and_then(|card| Some((card, card.length(runner.length)?)))
    else {
        return walk.no_card(&runner.card);
    };
    let spec = BoreSpec {
        use_: Use::Runner,
        owner: runner.key,
        bay: Some(made.key),
        diameter: walk.house.shop.diameter,
        depth: Some(walk.house.shop.depth),
        pen: card.pen.value,
        pen_unproved: card.pen.origin.is_unproved(),
    };
    let first = rows::runner_first(card, bay, runner.set_back, walk.house);
    let front_end = first.total() - card.first_hole.value;
    let line = walk.layout.height(runner.hole.number(walk.layout.last));
    for hand in WALLS {
        for x in rows::runner_rows(first, length) {
            let (name, x) = row_at(made, x);
            walk.want(made.wall(hand), name, x, Wanted::one(runner.hole, spec));
        }
        let packed = runner.spacers.on(hand);
        walk.keep_out(
            made.wall(hand),
            KeepOut {
                item: Item::Runner,
                owner: Some(runner.key),
                x: Span::new(front_end, front_end + runner.length),
                z: Span::new(line - card.below.value, line + card.above.value),
                u: Span::new(packed, packed + card.width.value),
            },
        );
    }
}

/// The row that runner screws at this setback are in: one of the bay's own where they fall on it, whether or not that
/// has pins at the moment.
fn row_at(made: &BayLayout, x: Sum) -> (RowName, Sum) {
    let own = [
        (RowName::Front, made.front_row),
        (RowName::Back, made.back_row),
    ];
    own.into_iter()
        .find(|(_, row)| row.total() == x.total())
        .unwrap_or((RowName::Runner, x))
}
