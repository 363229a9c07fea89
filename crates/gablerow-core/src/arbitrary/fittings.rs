//! Edits of fittings as proposals and fixes make them, of whatever cabinet is at hand.

use super::edits::{Wish, any_of, free_things, things};
use crate::edit::{Adjust, Edit, Furnish, Furnishing};
use crate::job::{
    Cabinet, CardId, Depth, Division, Hand, HolePlace, Job, Key, Plate, Runner, Spacers,
};
use crate::layout::{BayLayout, FrontLayout, Layout};
use crate::measure::Length;

impl Wish {
    /// A fitting, a free row, a free hole or a fixed shelf moved or made otherwise; mostly of a kind that can be so, now and
    /// then one that is not there.
    pub(super) fn of_adjust(&self, job: &Job, cabinet: Key, known: Option<&Cabinet>) -> Edit {
        let things = known.map(Adjustable::of).unwrap_or_default();
        let sign = match self.hand {
            Hand::Left => -1,
            Hand::Right => 1,
        };
        let (adjust, things) = match self.more {
            0 => (
                Adjust::Without([(self.first, self.first + 2)].into()),
                things.bored,
            ),
            1 => (
                Adjust::Depth(match self.hand {
                    Hand::Left => Depth::Through,
                    Hand::Right => Depth::Blind(self.value),
                }),
                things.bored,
            ),
            2 => {
                let by = Length::from_mm(self.first.into()) * sign;
                (Adjust::In(by), things.set_back)
            }
            3 => {
                let lengths = job.cards.runners.iter().flat_map(|card| &card.lengths);
                let lengths: Vec<Length> = lengths.map(|it| it.name).collect();
                let at = usize::from(self.first.unsigned_abs()) % lengths.len().max(1);
                let length = lengths.get(at).copied().unwrap_or(self.value);
                (Adjust::Runner(length), things.runners)
            }
            _ => (Adjust::Up(self.first), things.all),
        };
        Edit::Adjust {
            cabinet,
            thing: any_of(self.thing, &things),
            adjust,
        }
    }

    /// What would carry one of the fronts, in place of what does; now and then what is there does not go, or what comes is
    /// for a front, a bay or a card that is not there.
    pub(super) fn of_furnish(&self, job: &Job, cabinet: Key, known: Option<&Cabinet>) -> Edit {
        let mut wanted = Furnish {
            cabinet,
            gone: Vec::new(),
            bays: Vec::new(),
            label: "hardware".into(),
        };
        let Some(known) = known else {
            return Edit::Furnish(wanted);
        };
        let layout = Layout::of(known, job);
        let at = self.thing.index(layout.fronts.len().max(1));
        let Some(front) = layout.fronts.get(at) else {
            wanted.gone.push(Key(777_777));
            return Edit::Furnish(wanted);
        };
        if self.more != 3 {
            let carriers = layout.carriers(known, front).into_iter();
            wanted.gone.extend(carriers.map(|carrier| carrier.key));
        }
        let new = job.free_key(cabinet);
        wanted.bays.extend(self.carrying(job, &layout, front, new));
        Edit::Furnish(wanted)
    }

    fn carrying(
        &self,
        job: &Job,
        layout: &Layout,
        front: &FrontLayout,
        new: Key,
    ) -> Option<Furnishing> {
        let of_wall = |bay: &&BayLayout| match front.wall_hung() {
            Some(wall) => [bay.left, bay.right].contains(&wall),
            None => bay.key == front.opening,
        };
        let bay = layout.bays.iter().find(of_wall).or(layout.bays.first())?;
        let serves = (self.more != 4).then_some(front.key);
        let hole = HolePlace::of(self.first, self.datum, layout.last);
        let mut made = Furnishing {
            bay: bay.key,
            plates: Vec::new(),
            runners: Vec::new(),
        };
        if front.kind.is_drawer() {
            made.runners.push(Runner {
                key: new,
                hole,
                card: job.shop.runner.clone(),
                length: self.value,
                set_back: 0,
                spacers: Spacers::default(),
                serves,
            });
        } else {
            let card = match self.more {
                5 => CardId::known("no-such-card"),
                _ => job.shop.hinge.clone(),
            };
            made.plates.push(Plate {
                key: new,
                wall: front.hung.unwrap_or(self.hand),
                hole,
                card,
                serves,
            });
        }
        Some(made)
    }
}

/// The things of a cabinet by what can become of them.
#[derive(Default)]
struct Adjustable {
    /// Shelf zones, free rows and free holes.
    bored: Vec<Key>,
    /// Loose shelves, free rows and free holes.
    set_back: Vec<Key>,
    /// Pairs of runners.
    runners: Vec<Key>,
    /// Whatever has a key.
    all: Vec<Key>,
}

impl Adjustable {
    fn of(cabinet: &Cabinet) -> Self {
        let free = free_things(cabinet);
        let mut found = Self {
            bored: free.clone(),
            set_back: free,
            runners: Vec::new(),
            all: things(cabinet),
        };
        cabinet.opening.each(&mut |opening| {
            if let Division::Bay(bay) = &opening.division {
                found.bored.extend(bay.zones.iter().map(|zone| zone.key));
                let shelves = bay.shelves.iter().map(|shelf| shelf.key);
                found.set_back.extend(shelves);
                found.runners.extend(bay.runners.iter().map(|it| it.key));
            }
        });
        found
    }
}
