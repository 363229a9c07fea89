//! Keys: what has which, what names which, and how high they go.

use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Checked, Fault};
use crate::job::{Bay, Cabinet, Division, Key, Opening, PanelId};

/// A key with which a new thing can still follow.
pub(super) fn key(field: &str, key: Key) -> Checked {
    if key <= Key::HIGHEST {
        return Ok(());
    }
    let problem = format!("{key}, but a key is at most {}", Key::HIGHEST);
    Err(Fault::new(field, problem))
}

/// The key of a panel, where it has one.
pub(super) fn panel(field: &str, panel: PanelId) -> Checked {
    panel.partition().map_or(Ok(()), |named| key(field, named))
}

/// No two things of a cabinet have one key, and none is too high to be followed.
pub(super) fn of_things(cabinet: &Cabinet) -> Checked {
    let (mut seen, mut wrong) = (BTreeSet::new(), None);
    cabinet.each_key(&mut |found| {
        if wrong.is_none() && (!seen.insert(found) || found > Key::HIGHEST) {
            wrong = Some(found);
        }
    });
    let Some(wrong) = wrong else { return Ok(()) };
    // Places are written out only now that one of them has to be said.
    let mut places = Places::default();
    places.cabinet(cabinet);
    let said = places.0.iter().rfind(|(_, found)| *found == wrong);
    let field = said.map_or("key", |(place, _)| place);
    key(field, wrong)?;
    let problem = format!("{wrong}, but another thing of the cabinet has that already");
    Err(Fault::new(field, problem))
}

/// The key of each thing and where it stands, in the order of the job file.
#[derive(Default)]
struct Places(Vec<(String, Key)>);

impl Places {
    fn put(&mut self, thing: &str, key: Key) {
        self.0.push((format!("{thing}.key"), key));
    }

    fn list<T>(&mut self, name: &str, list: &[T], key: impl Fn(&T) -> Key) {
        for (at, thing) in list.iter().enumerate() {
            self.put(&format!("{name}[{at}]"), key(thing));
        }
    }

    fn cabinet(&mut self, cabinet: &Cabinet) {
        self.opening("opening", &cabinet.opening);
        self.list("free_rows", &cabinet.free_rows, |row| row.key);
        self.list("free_holes", &cabinet.free_holes, |hole| hole.key);
        self.list("copies", &cabinet.copies, |copy| copy.key);
    }

    fn opening(&mut self, place: &str, opening: &Opening) {
        self.put(place, opening.key);
        let within = |more: &str| format!("{place}.{more}");
        self.list(&within("fronts"), &opening.fronts, |front| front.key);
        match &opening.division {
            Division::Bay(bay) => self.bay(&within("bay"), bay),
            Division::SideBySide(parts) => {
                let first = within("side_by_side.first.opening");
                self.opening(&first, &parts.first.opening);
                for (at, (partition, part)) in parts.rest.iter().enumerate() {
                    let pair = within(&format!("side_by_side.rest[{at}]"));
                    self.put(&format!("{pair}.partition"), partition.key);
                    self.opening(&format!("{pair}.part.opening"), &part.opening);
                }
            }
            Division::Stacked(parts) => {
                self.opening(&within("stacked.first"), &parts.first);
                for (at, (shelf, opening)) in parts.rest.iter().enumerate() {
                    let pair = within(&format!("stacked.rest[{at}]"));
                    self.put(&format!("{pair}.shelf"), shelf.key);
                    self.opening(&format!("{pair}.opening"), opening);
                }
            }
        }
    }

    fn bay(&mut self, place: &str, bay: &Bay) {
        let within = |more: &str| format!("{place}.{more}");
        self.list(&within("zones"), &bay.zones, |zone| zone.key);
        self.list(&within("shelves"), &bay.shelves, |shelf| shelf.key);
        self.list(&within("plates"), &bay.plates, |plate| plate.key);
        self.list(&within("runners"), &bay.runners, |runner| runner.key);
    }
}
