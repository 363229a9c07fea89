//! Hinge plates for a door, or for both leaves of a pair.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::walls::{Fastener, Wall};
use super::{Bays, Proposal, name_of};
use crate::cards::{Hinge, PlateShape};
use crate::edit::{Edit, Furnish};
use crate::job::{Cabinet, Datum, Hand, HolePlace, Job, Key, Plate};
use crate::layout::{BayLayout, FrontLayout, Item, Layout, Span};
use crate::measure::{Length, Unit};
use crate::parts::Leaf;
use crate::solve::hinges::{
    Count, Door, DoorCups, END_LEAST, HingeRow, LegalCentre, NoOpposed, cups, opposed, place,
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
                edit: None,
            });
        }
        let mut holes = Vec::new();
        for centre in &centres {
            let number = i16::try_from(centre.hole.get()).ok()?;
            let (bay, wall) = layout.bay_at(leaf.wall_hung()?, centre.centre)?;
            holes.push(hanging.holes(number));
            bays.of(bay.key).plates.push(Plate {
                key,
                wall,
                hole: counted(number, layout.last),
                card: card.id.clone(),
                serves: Some(front),
            });
            key = key.next();
        }
        made.push((leaf.hung?, holes.join(", "), why));
    }
    let (title, why) = said_of(&name, made);
    Some(Proposal {
        fronts: [front].into(),
        title: title.clone(),
        why,
        edit: Some(Edit::Furnish(Furnish {
            cabinet,
            gone,
            bays: bays.0,
            label: title,
        })),
    })
}

/// Title and reasons of a door, or of both leaves of a pair: said once when they are alike.
fn said_of(name: &str, leaves: Vec<(Hand, String, Vec<String>)>) -> (String, Vec<String>) {
    if let [(_, holes, why)] = &leaves[..] {
        return (format!("{name}: plates on {holes}"), why.clone());
    }
    if let [(_, holes, why), (_, others, reasons)] = &leaves[..]
        && (holes, why) == (others, reasons)
    {
        return (
            format!("{name}: both leaves, plates on {holes}"),
            why.clone(),
        );
    }
    let (mut titles, mut all) = (Vec::new(), Vec::new());
    for (hand, holes, why) in leaves {
        titles.push(format!("{} leaf, plates on {holes}", hand.word()));
        all.push(format!("{} leaf:", hand.word()));
        all.extend(why);
    }
    (format!("{name}: {}", titles.join("; ")), all)
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

    /// The bay whose front row the plates are in: the one at the middle of the door.
    fn bay(&self) -> Option<&BayLayout> {
        let middle = self.leaf.foot + self.leaf.height.total().half();
        let (bay, _) = self.layout.bay_at(self.leaf.wall_hung()?, middle)?;
        Some(bay)
    }

    fn hung(&self) -> Leaf<'_> {
        Leaf::of(self.job, self.cabinet, self.layout, self.leaf)
    }

    /// The places for the plates, from the foot up, and why they are there.
    fn place(&self) -> Option<(Vec<LegalCentre>, Vec<String>)> {
        let asked = self.hung().asked(self.card)?;
        let row = Ground::of(self, self.leaf)?;
        let mut why = alloc::vec![format!(
            "{} hinges {}: {} x {}, {:.1} kg",
            asked.hinges,
            self.card.chart.words(),
            self.show(self.leaf.width.total()),
            self.show(self.leaf.height.total()),
            self.hung().mass_kg()?,
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
        let (word, _) = self.hung().arm(self.card);
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
            depth: hanging.job.shop.depth,
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
