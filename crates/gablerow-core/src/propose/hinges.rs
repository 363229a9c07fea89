//! Hinge plates for a door, or for both leaves of a pair.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::ground::Ground;
use super::walls::Wall;
use super::{Bays, Proposal, name_of};
use crate::cards::{Hinge, PlateShape};
use crate::job::{Cabinet, Datum, Hand, HolePlace, Job, Key, Plate};
use crate::layout::{Carrier, FrontLayout, Layout};
use crate::measure::{Length, Unit};
use crate::parts::Leaf;
use crate::solve::hinges::{
    Count, Door, DoorCups, END_LEAST, LegalCentre, NoOpposed, chart_of, cups, opposed, place,
};

/// A door being hung.
struct Hanging<'a> {
    job: &'a Job,
    cabinet: &'a Cabinet,
    layout: &'a Layout,
    leaf: &'a FrontLayout,
    card: &'a Hinge,
    gone: &'a [Key],
}

/// Plates for a door; `None` when there is no such door, or no hinge card.
pub(super) fn propose(job: &Job, cabinet: Key, front: Key) -> Option<Proposal> {
    let found = job.cabinet(cabinet)?;
    let layout = Layout::of(found, job);
    let card = job.cards.hinge(&job.shop.hinge)?;
    let leaves = || layout.fronts.iter().filter(|leaf| leaf.key == front);
    let gone: Vec<Key> = leaves()
        .flat_map(|leaf| layout.carriers(found, leaf))
        .map(|carrier| carrier.key)
        .collect();
    let mut key = job.free_key(cabinet);
    let (mut bays, mut made) = (Bays::default(), Vec::new());
    let name = name_of(found, front);
    for leaf in leaves() {
        let hanging = Hanging {
            job,
            cabinet: found,
            layout: &layout,
            leaf,
            card,
            gone: &gone,
        };
        let (centres, why) = hanging.place()?;
        if centres.is_empty() {
            let title = format!("{name}: no hole finds room for a plate");
            return Some(Proposal {
                fronts: [front].into(),
                title,
                why,
                ..Proposal::default()
            });
        }
        let mut holes = Vec::new();
        for centre in &centres {
            let number = i16::try_from(centre.hole.get()).ok()?;
            let (bay, wall) = layout.bay_at(leaf.wall_hung()?, centre.centre)?;
            holes.push(hanging.holes(number));
            let wanted = Plate {
                key,
                wall,
                hole: counted(number, layout.last),
                card: card.id.clone(),
                serves: Some(front),
            };
            bays.of(bay.key).plates.push(hanging.kept(bay.key, wanted));
            key = key.next();
        }
        made.push((leaf.hung?, holes.join(", "), why));
    }
    let (what, why) = said_of(made);
    let taken = (cabinet, gone, bays);
    Some(Proposal::of((&name, &what), [front].into(), why, taken))
}

/// What a door comes to, or both leaves of a pair, and the reasons: said once when they are alike.
fn said_of(leaves: Vec<(Hand, String, Vec<String>)>) -> (String, Vec<String>) {
    if let [(_, holes, why)] = &leaves[..] {
        return (format!("plates on {holes}"), why.clone());
    }
    if let [(_, holes, why), (_, others, reasons)] = &leaves[..]
        && (holes, why) == (others, reasons)
    {
        return (format!("both leaves, plates on {holes}"), why.clone());
    }
    let (mut titles, mut all) = (Vec::new(), Vec::new());
    for (hand, holes, why) in leaves {
        titles.push(format!("{} leaf, plates on {holes}", hand.word()));
        all.push(format!("{} leaf:", hand.word()));
        all.extend(why);
    }
    (titles.join("; "), all)
}

/// In the upper half counted from the head, so that a taller cabinet takes its top hinge along.
fn counted(number: i16, last: i16) -> HolePlace {
    let datum = if number * 2 > last + 1 {
        Datum::Head
    } else {
        Datum::Foot
    };
    HolePlace::of(number, datum, last)
}

impl Hanging<'_> {
    /// The plate that is there already, when it is like the one wanted; that one otherwise. It serves this front from now on,
    /// so that no other front takes it away.
    fn kept(&self, bay: Key, wanted: Plate) -> Plate {
        let bay = self.cabinet.opening.bay(bay);
        let mut there = bay.into_iter().flat_map(|bay| &bay.plates);
        let last = self.layout.last;
        let alike = |old: &&Plate| {
            self.gone.contains(&old.key)
                && old.hole.number(last) == wanted.hole.number(last)
                && old.serves.is_none_or(|front| Some(front) == wanted.serves)
                && (old.wall, &old.card) == (wanted.wall, &wanted.card)
        };
        match there.find(alike) {
            Some(old) => Plate {
                serves: wanted.serves,
                ..old.clone()
            },
            None => wanted,
        }
    }

    fn unit(&self) -> Unit {
        self.job.unit
    }

    fn show(&self, length: Length) -> String {
        length.show(self.unit()).to_string()
    }

    /// The holes a plate takes from its lowest one.
    fn holes(&self, lowest: i16) -> String {
        match self.card.plate {
            PlateShape::AlongRow => format!("{lowest}-{}", lowest + 1),
            PlateShape::InLine => lowest.to_string(),
        }
    }

    fn door(&self) -> Door {
        self.hung().door()
    }

    fn hung(&self) -> Leaf<'_> {
        self.leaf(self.leaf)
    }

    fn leaf<'s>(&'s self, front: &'s FrontLayout) -> Leaf<'s> {
        Leaf::of(self.job, self.cabinet, self.layout, front)
    }

    /// The places for the plates, from the foot up, and why they are there.
    fn place(&self) -> Option<(Vec<LegalCentre>, Vec<String>)> {
        let asked = self.hung().asked(self.card)?;
        let ground = self.ground(self.leaf)?;
        let mut why = alloc::vec![format!(
            "{} hinges {} ({}): {} x {}, {:.1} kg",
            asked.hinges,
            self.card.chart.words(),
            chart_of(self.card.chart).standing.words(),
            self.show(self.leaf.width.total()),
            self.show(self.leaf.height.total()),
            self.hung().mass_kg()?,
        )];
        let centres = match self.with_behind(&ground, asked) {
            Some((centres, said)) => {
                why.push(said.to_string());
                centres
            }
            None => {
                let placed = place(&ground.row(), self.door(), asked.hinges, END_LEAST);
                if placed.plates.len() < usize::from(asked.hinges) {
                    why.push(format!(
                        "only {} of {} find room between what is fixed and taken",
                        placed.plates.len(),
                        asked.hinges
                    ));
                }
                placed.plates.iter().map(|plate| plate.at).collect()
            }
        };
        let middles: Vec<Length> = centres.iter().map(|at| at.centre).collect();
        why.extend(self.spacing(&middles));
        why.push(self.drilling(&cups(self.door(), &middles)));
        why.push(self.overlay());
        Some((centres, why))
    }

    fn ground(&self, leaf: &FrontLayout) -> Option<Ground<'_>> {
        let wall = Wall {
            job: self.job,
            layout: self.layout,
            face: leaf.wall_hung()?,
            gone: self.gone,
        };
        Ground::of(wall, self.card)
    }

    /// Places that go with the door behind, so that one drilling serves both, and how that is said; `None` where there is
    /// no such door, or no such places.
    fn with_behind(
        &self,
        ground: &Ground,
        asked: Count,
    ) -> Option<(Vec<LegalCentre>, &'static str)> {
        let behind = self.behind(asked)?;
        let there = self.layout.carriers(self.cabinet, behind);
        match (there.is_empty(), self.would_meet(behind)) {
            (true, false) => None,
            (true, true) => {
                let centres = self.staggered(ground, behind, asked)?;
                Some((
                    centres,
                    "staggered, so that one drilling can serve the door behind it too",
                ))
            }
            (false, meets) => {
                let centres = self.mirrored(ground, &there, asked)?;
                let said = if meets {
                    "staggered: one drilling serves the door behind it too, turned end for end"
                } else {
                    "one drilling serves the door behind it too, turned end for end"
                };
                Some((centres, said))
            }
        }
    }

    /// The door on the other face of the same partition that one drilling could serve: as high, as thick, with as many
    /// hinges and cups as far from its edge.
    fn behind(&self, asked: Count) -> Option<&FrontLayout> {
        let wall = self.leaf.wall_hung()?.behind();
        let size = |leaf: &FrontLayout| (leaf.foot, leaf.height.total(), leaf.thickness);
        let other = self
            .layout
            .fronts
            .iter()
            .find(|other| other.wall_hung() == Some(wall) && size(other) == size(self.leaf))?;
        let other_leaf = self.leaf(other);
        let tab = |leaf: &Leaf| leaf.fit(self.card).map(|fit| fit.tab);
        let alike = other_leaf.asked(self.card)?.hinges == asked.hinges
            && tab(&other_leaf) == tab(&self.hung());
        alike.then_some(other)
    }

    /// Whether plates of both doors would meet in the board where they are back to back.
    fn would_meet(&self, behind: &FrontLayout) -> bool {
        let (Some(wall), Some(other)) = (self.leaf.wall_hung(), behind.wall_hung()) else {
            return false;
        };
        let middle = self.leaf.foot + self.leaf.height.total().half();
        let row = |wall| {
            let (bay, _) = self.layout.bay_at(wall, middle)?;
            Some(bay.front_row.total())
        };
        let (Some(upright), Some(row), Some(other)) =
            (self.layout.upright(wall.panel), row(wall), row(other))
        else {
            return false;
        };
        let shop = &self.job.shop;
        let (pen, depth) = (self.card.pen.value, shop.depth);
        let meets = pen * 2 > upright.thickness - shop.limits.spare
            || depth * 2 > upright.thickness - shop.limits.web;
        meets && (row - other).abs() < shop.diameter
    }

    /// Places that leave the mirrored ones to the door behind, when nothing carries that yet.
    fn staggered(
        &self,
        ground: &Ground,
        behind: &FrontLayout,
        asked: Count,
    ) -> Option<Vec<LegalCentre>> {
        let other = self.ground(behind)?;
        let pair = opposed(
            &ground.row(),
            &other.row(),
            self.door(),
            asked.hinges,
            END_LEAST,
        );
        match pair {
            Ok(pair) => Some(pair.left),
            Err(NoOpposed::OffGrid { .. } | NoOpposed::NoRoom { .. }) => None,
        }
    }

    /// The places of the door behind, counted from the other end, when all of them can be had on this side.
    fn mirrored(
        &self,
        ground: &Ground,
        there: &[Carrier],
        asked: Count,
    ) -> Option<Vec<LegalCentre>> {
        let door = self.door();
        let end = self.card.half_zone.value.min(END_LEAST);
        let legal = ground.row().legal(door.foot + end, door.head() - end);
        let mirror = |carrier: &Carrier| {
            let mut plates = self.cabinet.opening.bay(carrier.bay)?.plates.iter();
            let plate = plates.find(|plate| plate.key == carrier.key)?;
            let centre = self.layout.height(carrier.hole) + self.card.plate.rise();
            let at = legal
                .binary_search_by_key(&door.mirror(centre), |place| place.centre)
                .ok()?;
            (plate.card == self.card.id).then(|| legal[at])
        };
        let centres: Vec<LegalCentre> =
            there.iter().rev().map(mirror).collect::<Option<Vec<_>>>()?;
        let apart = ground.row().apart();
        let clear = centres
            .windows(2)
            .all(|pair| pair[1].centre - pair[0].centre >= apart);
        (clear && centres.len() == usize::from(asked.hinges)).then_some(centres)
    }

    fn spacing(&self, middles: &[Length]) -> Option<String> {
        let (first, last) = (middles.first()?, middles.last()?);
        let apart: Vec<String> = middles
            .windows(2)
            .map(|pair| self.show(pair[1] - pair[0]))
            .collect();
        (first != last).then(|| {
            format!(
                "middles at {}; {} apart",
                middles
                    .iter()
                    .map(|&z| self.show(z))
                    .collect::<Vec<_>>()
                    .join(", "),
                apart.join(", ")
            )
        })
    }

    fn drilling(&self, cups: &DoorCups) -> String {
        let from = |of: fn(&crate::solve::hinges::Cup) -> Length| {
            let all: Vec<String> = cups.cups.iter().map(|cup| self.show(of(cup))).collect();
            all.join(", ")
        };
        let handed = if cups.handed { "HANDED" } else { "not handed" };
        format!(
            "cups {} from the foot, {} from the head: {handed}",
            from(|cup| cup.from_foot.total()),
            from(|cup| cup.from_head.total())
        )
    }

    fn overlay(&self) -> String {
        let (word, _) = self.hung().arm(self.card);
        let wanted = self.leaf.lap_hung().unwrap_or_default();
        let laps = wanted.show(self.unit());
        match self.hung().fit(self.card) {
            Some(fit) => format!(
                "laps {laps}: {} arm, tab {}, plate {}, {} left to adjust; cup {} from the hinge edge",
                word.word(),
                self.show(fit.tab),
                self.show(fit.plate),
                self.show(fit.residual),
                self.show(fit.cup_centre.total()),
            ),
            None => format!("laps {laps}, but no plate is in stock"),
        }
    }
}
