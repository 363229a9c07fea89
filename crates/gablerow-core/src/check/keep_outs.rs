//! The space that fittings and fixed panels need before a face.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::context::{doubt, range};
use super::meet::{Search, Space};
use super::pairs::{ON_FACE, spaces_that_meet};
use super::{Context, Finding, Place, Rule, spaces};
use crate::cards::Hinge;
use crate::job::Key;
use crate::layout::{Face, Item, KeepOut, Span};
use crate::measure::Length;
use crate::parts::CLEAR_OF_DOOR;

/// Pairs of keep-outs of one face that meet, or nearly.
pub(super) fn keep_outs(cx: &Context, found: &mut Vec<Finding>) {
    let mut search = Search::default();
    for (_, face) in cx.faces() {
        let all = spaces::of_face(cx, face);
        let mut said: Vec<(Rule, [Option<Key>; 2])> = Vec::new();
        for (rule, a, b) in in_each_others_way(&mut search, &all, cx.limits().close) {
            let pair = Pair { cx, face, a, b };
            let finding = Finding::new(rule, pair.place(), pair.sentence(rule));
            let finding = finding.about_both((a.owner, b.owner));
            // A box meets most of what its runners meet; those come first and are said alone.
            let is_box = [a.item, b.item].contains(&Item::Box);
            let what = (rule, finding.about);
            if !is_box || !said.contains(&what) {
                said.push(what);
                found.push(finding);
            }
        }
    }
}

/// Two keep-outs of one face that break a rule, the items in their own order.
pub(super) fn in_each_others_way<'a>(
    search: &mut Search,
    all: &'a [KeepOut],
    close: Length,
) -> Vec<(Rule, &'a KeepOut, &'a KeepOut)> {
    let longer = |span: Span| Span {
        to: span.to + close,
        ..span
    };
    let room = |keep_out: &KeepOut| Space {
        x: longer(keep_out.x),
        z: longer(keep_out.z),
        // How far out from the face counts for some pairs and not for others.
        u: ON_FACE,
    };
    let rooms: Vec<Space> = all.iter().map(room).collect();
    spaces_that_meet(search, &rooms)
        .into_iter()
        .filter_map(|(one, other)| {
            let (one, other) = (&all[one], &all[other]);
            let (a, b) = if one.item <= other.item {
                (one, other)
            } else {
                (other, one)
            };
            Some((broken(a, b, close)?, a, b))
        })
        .collect()
}

/// Which rule two keep-outs break, the items in their own order; `None` when they are clear of each other.
///
/// | first | second | | broken when they overlap in |
/// | --- | --- | --- | --- |
/// | any | the same owner | may | |
/// | fixed panel | fixed panel | may: parts of the carcass | |
/// | hinge | fixed panel | plate-on-fixed-panel | x and z |
/// | hinge | runner | inner-drawer-fouls | x and z: what packs the runner out is there too |
/// | hinge | drawer box | inner-drawer-fouls | x and z, in u with less than its clearance between |
/// | hinge | loose shelf | shelf-at-hinge | x, z and u |
/// | open door | runner, drawer box | inner-drawer-fouls | z, in u with less than its clearance between |
/// | open door | any other | may: it is before the cabinet | |
/// | drawer box | back rail | may: box-behind-blocked says it | |
/// | any other pair | | keep-outs-meet | x, z and u |
fn broken(a: &KeepOut, b: &KeepOut, close: Length) -> Option<Rule> {
    let fixed = |keep_out: &KeepOut| keep_out.item.is_fixed_panel();
    let same_owner = a.owner.is_some() && a.owner == b.owner;
    if same_owner || fixed(a) && fixed(b) {
        return None;
    }
    let zero = Length::ZERO;
    let side_by_side = a.x.overlap(b.x) > zero && a.z.overlap(b.z) > zero;
    let passes = side_by_side && a.u.overlap(b.u) > -CLEAR_OF_DOOR;
    match (a.item, b.item) {
        (Item::Hinge, _) if fixed(b) && side_by_side => Some(Rule::PlateOnFixedPanel),
        (Item::Hinge, Item::Runner) if side_by_side => Some(Rule::InnerDrawerFouls),
        (Item::Hinge, Item::Box) => passes.then_some(Rule::InnerDrawerFouls),
        (Item::OpenDoor, Item::Runner | Item::Box) => passes.then_some(Rule::InnerDrawerFouls),
        (Item::OpenDoor, _) | (_, Item::OpenDoor) | (Item::Box, Item::BackRail) => None,
        (Item::Hinge, Item::Shelf) if a.meets(b) => Some(Rule::ShelfAtHinge),
        _ if a.meets(b) => Some(Rule::KeepOutsMeet),
        _ => gap(a, b)
            .filter(|&(gap, _)| gap < close)
            .map(|_| Rule::KeepOutsClose),
    }
}

/// Whether nothing before a face is in the way of a space that something new would need there.
pub(super) fn is_clear_of(space: &KeepOut, face: &Face) -> bool {
    !face.keep_outs.iter().any(|other| {
        let (a, b) = if space.item <= other.item {
            (space, other)
        } else {
            (other, space)
        };
        broken(a, b, Length::ZERO).is_some()
    })
}

/// How far apart two keep-outs are in the one direction that keeps them apart, and that direction; `None` when they
/// touch, or are clear in more than one.
fn gap(a: &KeepOut, b: &KeepOut) -> Option<(Length, &'static str)> {
    let all = [
        (a.x.overlap(b.x), "front to back"),
        (a.z.overlap(b.z), "in height"),
        (a.u.overlap(b.u), "out from the face"),
    ];
    let mut apart = all.into_iter().filter(|(over, _)| *over <= Length::ZERO);
    let (over, way) = apart.next()?;
    (over < Length::ZERO && apart.next().is_none()).then_some((-over, way))
}

/// Two keep-outs that are in each other's way, in the order of their items.
#[derive(Clone, Copy)]
struct Pair<'a> {
    cx: &'a Context<'a>,
    face: &'a Face,
    a: &'a KeepOut,
    b: &'a KeepOut,
}

impl Pair<'_> {
    /// At the holes of the first that has some on the grid.
    fn place(&self) -> Place {
        let place = self.cx.here().on(self.face.id);
        let of = |owner| {
            let (first, last) = self.cx.fitting_holes(owner)?;
            (first >= 1 && last <= self.cx.layout.last).then_some((first, last))
        };
        let mut owners = [self.a.owner, self.b.owner].into_iter().flatten();
        owners
            .find_map(of)
            .map_or(place, |holes| place.holes(holes))
    }

    fn sentence(&self, rule: Rule) -> String {
        let Self { a, b, .. } = self;
        let too_much = a.z.overlap(b.z).show(self.cx.unit);
        let doubt = doubt(self.leans_on_guess());
        match rule {
            Rule::PlateOnFixedPanel => format!(
                "{doubt}{} needs {}, {} takes {}: {too_much} too much; {}",
                self.name(a),
                self.heights(a),
                self.name(b),
                self.heights(b),
                self.clear_holes(a, |other| other.item.is_fixed_panel())
            ),
            Rule::InnerDrawerFouls if self.is_beside() => {
                let (have, need) = (b.u.from, a.u.to + CLEAR_OF_DOOR);
                format!(
                    "{doubt}{} stands {} off the wall, {} needs {} and {} clear of it: {} too little; pack it out",
                    self.name(b),
                    have.show(self.cx.unit),
                    self.name(a),
                    a.u.to.show(self.cx.unit),
                    CLEAR_OF_DOOR.show(self.cx.unit),
                    (need - have).show(self.cx.unit),
                )
            }
            Rule::InnerDrawerFouls => format!(
                "{doubt}{} needs {}, {} {}: {too_much} too much; {}",
                self.name(b),
                self.heights(b),
                self.name(a),
                self.heights(a),
                self.clear_holes(b, |other| other.item == Item::Hinge)
            ),
            Rule::ShelfAtHinge => format!(
                "{} ({}) meets {} ({}); {}set it back {}",
                self.name(b),
                self.heights(b),
                self.name(a),
                self.heights(a),
                self.lost_holes(),
                (a.x.to - a.x.from).show(self.cx.unit)
            ),
            Rule::KeepOutsClose => {
                let (gap, way) = gap(a, b).unwrap_or_default();
                format!("{} are {} apart {way}", self.both(), gap.show(self.cx.unit))
            }
            _ => format!(
                "{doubt}{} need the same space, {too_much} in height; move one of them",
                self.both()
            ),
        }
    }

    /// The heights it takes.
    fn heights(&self, keep_out: &KeepOut) -> String {
        self.cx.span(keep_out.z.from, keep_out.z.to)
    }

    /// Whether it is about how far out from the wall a drawer passes a hinge or an open door.
    fn is_beside(&self) -> bool {
        self.a.item == Item::OpenDoor || self.b.item == Item::Box
    }

    fn leans_on_guess(&self) -> bool {
        let cx = self.cx;
        let mut owners = [self.a.owner, self.b.owner].into_iter().flatten();
        if self.a.item == Item::OpenDoor {
            let mut doors = cx.layout.fronts.iter();
            let door = doors.find(|door| Some(door.key) == self.a.owner);
            let card = door.and_then(|door| spaces::hinge_of(cx, door));
            return card.is_some_and(|card| card.intrusion.origin.is_unproved());
        }
        if (self.a.item, self.b.item) == (Item::Hinge, Item::Box) {
            return owners.any(|owner| {
                let proud = |hinge: &Hinge| hinge.proud.origin.is_unproved();
                cx.is_guess(owner, proud, |runner| runner.deduct.origin.is_unproved())
            });
        }
        owners.any(|owner| cx.height_is_guess(owner))
    }

    fn name(&self, keep_out: &KeepOut) -> String {
        match (keep_out.item, keep_out.owner) {
            (Item::Box, Some(owner)) => self.cx.drawer_box(owner),
            (Item::OpenDoor, Some(owner)) => format!("open door {}", self.cx.front(owner)),
            (_, Some(owner)) => self.cx.fitting(owner),
            (item, None) => format!("the {}", item.word()),
        }
    }

    fn both(&self) -> String {
        let is_box = |keep_out: &KeepOut| keep_out.item == Item::Box;
        match (self.a.owner, self.b.owner) {
            (Some(a), Some(b)) if is_box(self.a) => self.cx.drawer_box_and(a, b, is_box(self.b)),
            (Some(a), Some(b)) if is_box(self.b) => self.cx.drawer_box_and(b, a, false),
            (Some(a), Some(b)) => self.cx.fittings(a, b),
            _ => format!("{} and {}", self.name(self.a), self.name(self.b)),
        }
    }

    /// The nearest holes either way where the keep-out is clear of the others of its face it must not meet.
    fn clear_holes(&self, moved: &KeepOut, bars: impl Fn(&KeepOut) -> bool) -> String {
        let Some((first, last)) = moved.owner.and_then(|owner| self.cx.fitting_holes(owner)) else {
            return "move it".to_string();
        };
        let is_clear = |&up: &i16| {
            let z = shifted(moved.z, up);
            let in_way = |other: &&KeepOut| {
                bars(other)
                    && other.x.overlap(moved.x) > Length::ZERO
                    && other.z.overlap(z) > Length::ZERO
            };
            !self.face.keep_outs.iter().any(|other| in_way(&other))
        };
        let words = |up: i16| range(first + up, last + up);
        let below = (1 - first..0).rev().find(is_clear).map(words);
        let above = (1..=self.cx.layout.last - last).find(is_clear).map(words);
        match (below, above) {
            (Some(below), Some(above)) => format!("clear on {below} and on {above}"),
            (Some(clear), None) | (None, Some(clear)) => format!("clear on {clear}"),
            (None, None) => "clear on no hole".to_string(),
        }
    }

    /// The holes on which this shelf would meet this hinge.
    fn lost_holes(&self) -> String {
        let hole = self.b.owner.and_then(|owner| self.cx.fitting_holes(owner));
        let Some((hole, _)) = hole else {
            return String::new();
        };
        let meets =
            |number: &i16| shifted(self.b.z, number - hole).overlap(self.a.z) > Length::ZERO;
        let mut lost = (1..=self.cx.layout.last).filter(meets);
        match (lost.next(), lost.next_back()) {
            (Some(first), Some(last)) => format!("holes {first}-{last} are lost to it, or "),
            (Some(only), None) => format!("hole {only} is lost to it, or "),
            _ => String::new(),
        }
    }
}

/// An interval of heights so many holes up.
fn shifted(z: Span, holes: i16) -> Span {
    let up = Length::PITCH * i32::from(holes);
    Span::new(z.from + up, z.to + up)
}

#[cfg(test)]
mod tests;
