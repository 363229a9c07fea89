//! Hinge plates for a door, or for both leaves of a pair.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::walls::{Fastener, Wall};
use super::{Bays, Proposal, name_of};
use crate::cards::{Hinge, PlateShape};
use crate::job::{Cabinet, Datum, Hand, HolePlace, Job, Key, Plate};
use crate::layout::{BayLayout, FrontLayout, Item, Layout, Span, Use};
use crate::measure::{Length, Unit};
use crate::parts::arm_of;
use crate::solve::hinges::{
    Count, Door, DoorCups, DoorFacts, END_LEAST, HingeRow, LegalCentre, NoOpposed, OverlayCard,
    chart_of, count, cups, fit_overlay, opposed, place,
};
use crate::strength::mass_kg;

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
        Door {
            foot: self.leaf.foot,
            height: self.leaf.height.total(),
        }
    }

    /// The bay whose front row the plates are in: the one at the middle of the door.
    fn bay(&self) -> Option<&BayLayout> {
        let middle = self.leaf.foot + self.leaf.height.total().half();
        let (bay, _) = self.layout.bay_at(self.leaf.wall_hung()?, middle)?;
        Some(bay)
    }

    fn mass(&self) -> Option<f64> {
        let board = self.job.cards.board(self.job.shop.front_board())?;
        let (width, height) = (self.leaf.width.total(), self.leaf.height.total());
        let density = f64::from(board.density.value);
        Some(mass_kg(width, height, self.leaf.thickness, density))
    }

    fn asked(&self) -> Option<Count> {
        let facts = DoorFacts {
            width: self.leaf.width.total(),
            height: self.leaf.height.total(),
            cabinet_height: self.cabinet.size.height,
            mass_kg: self.mass()?,
        };
        Some(count(chart_of(self.card.chart), &facts))
    }

    /// The places for the plates, from the foot up, and why they are there.
    fn place(&self) -> Option<(Vec<LegalCentre>, Vec<String>)> {
        let asked = self.asked()?;
        let row = Ground::of(self, self.leaf)?;
        let mut why = alloc::vec![format!(
            "{} hinges {}: {} x {}, {:.1} kg",
            asked.hinges,
            self.card.chart.words(),
            self.show(self.leaf.width.total()),
            self.show(self.leaf.height.total()),
            self.mass()?,
        )];
        let centres = match self
            .behind()
            .map(|behind| self.opposed(&row, behind, asked))
        {
            Some(Some(centres)) => {
                why.push("staggered: one drilling serves the door behind it too".to_string());
                centres
            }
            _ => {
                let placed = place(&row.row(self.card), self.door(), asked.hinges, END_LEAST);
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

    /// The door that hangs on the other face of the same partition at the same height, when nothing carries it yet.
    fn behind(&self) -> Option<&FrontLayout> {
        let wall = self.leaf.wall_hung()?.behind();
        let alike = |other: &&FrontLayout| {
            other.wall_hung() == Some(wall)
                && (other.foot, other.height.total()) == (self.leaf.foot, self.leaf.height.total())
        };
        let other = self.layout.fronts.iter().find(alike)?;
        self.layout
            .carriers(self.cabinet, other)
            .is_empty()
            .then_some(other)
    }

    /// Places that leave the mirrored ones to the door behind.
    fn opposed(
        &self,
        row: &Ground,
        behind: &FrontLayout,
        asked: Count,
    ) -> Option<Vec<LegalCentre>> {
        let other = Ground::of(self, behind)?;
        let (left, right) = (row.row(self.card), other.row(self.card));
        match opposed(&left, &right, self.door(), asked.hinges, END_LEAST) {
            Ok(pair) => Some(pair.left),
            Err(NoOpposed::OffGrid { .. } | NoOpposed::NoRoom { .. }) => None,
        }
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
        let wanted = self.leaf.lap_hung().unwrap_or_default();
        let (word, arm) = arm_of(self.card, self.layout, self.leaf);
        let card = OverlayCard {
            arm,
            tab_least: self.card.tabs.least.value,
            tab_most: self.card.tabs.most.value,
            tab_step: self.card.tabs.step,
            plates: &self.card.plates,
            cup: self.card.cup.value,
        };
        let laps = wanted.show(self.unit());
        match fit_overlay(&card, wanted.total()) {
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

/// What bars which holes of the wall a door hangs on.
struct Ground {
    grid: crate::grid::Grid,
    holes: crate::grid::Run,
    taken: Vec<crate::grid::Run>,
    barred: Vec<crate::solve::Interval>,
}

impl Ground {
    fn of(hanging: &Hanging, leaf: &FrontLayout) -> Option<Self> {
        let card = hanging.card;
        let wall = Wall {
            job: hanging.job,
            layout: hanging.layout,
            face: leaf.wall_hung()?,
            gone: hanging.gone,
        };
        let bay = hanging.bay()?;
        let fastener = Fastener {
            use_: Use::Plate,
            pen: card.pen.value,
        };
        let front_row = bay.front_row.total();
        let mut taken = wall.taken(front_row, fastener);
        if card.plate == PlateShape::InLine {
            taken.extend(wall.taken(front_row + Length::PITCH, fastener));
        }
        let front = front_row - hanging.job.shop.setback_front;
        let (x, u) = (
            Span::new(front, front + card.reach.value),
            Span::new(Length::ZERO, card.proud.value),
        );
        Some(Self {
            grid: hanging.layout.grid,
            holes: wall.holes()?,
            taken,
            barred: wall.spaces(x, u, |item| item != Item::Shelf),
        })
    }

    fn row(&self, card: &Hinge) -> HingeRow<'_> {
        HingeRow {
            grid: self.grid,
            holes: self.holes,
            taken: &self.taken,
            barred: &self.barred,
            plate: card.plate,
            half_zone: card.half_zone.value,
        }
    }
}
