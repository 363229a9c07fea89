//! What things are called that are seen from the front.

use gablerow_core::job::Key;

use super::{FrontScene, Thing};

impl FrontScene<'_> {
    /// What a front is called at the bench; empty when there is none of this key.
    #[must_use]
    pub fn name(&self, front: Key) -> String {
        let mut name = String::new();
        self.scene.cabinet.opening.each(&mut |opening| {
            if let Some(found) = opening.fronts.iter().find(|found| found.key == front) {
                name = found.name.to_string();
            }
        });
        name
    }

    /// What an opening is called by its bays: `bay 2`, or `bays 2-4`, both ends included.
    #[must_use]
    pub fn opening_name(&self, opening: Key) -> String {
        let numbers = self.numbers(opening);
        match (numbers.first(), numbers.last()) {
            (Some(first), Some(last)) if first != last => format!("bays {first}-{last}"),
            (Some(number), _) => format!("bay {number}"),
            (None, _) => "opening".to_owned(),
        }
    }

    /// What the thing of a key is called: `D1`, `bay 2`, `partition`, `fixed shelf`.
    #[must_use]
    pub fn thing_name(&self, thing: Thing) -> String {
        match thing {
            Thing::Front(key) => self.name(key),
            Thing::Opening(key) => self.opening_name(key),
            Thing::Partition(_) => "partition".to_owned(),
            Thing::FixedShelf(_) => "fixed shelf".to_owned(),
        }
    }

    /// The names of the fronts that close an opening, or one that it is a part of.
    #[must_use]
    pub fn closed_by(&self, opening: Key) -> Vec<String> {
        let fronts = self.scene.layout.fronts.iter();
        let closing = fronts.filter(|front| {
            front.kind.is_seen() && self.keys_within(front.opening).contains(&opening)
        });
        let mut names: Vec<String> = closing.map(|front| self.name(front.key)).collect();
        names.dedup();
        names
    }

    /// The numbers of the bays in an opening.
    fn numbers(&self, opening: Key) -> Vec<usize> {
        let within = self.keys_within(opening);
        let bays = (1..).zip(&self.scene.layout.bays);
        bays.filter(|(_, bay)| within.contains(&bay.key))
            .map(|(number, _)| number)
            .collect()
    }
}
