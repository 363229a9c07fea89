//! Cabinets for tests: plain, but for what a test is about.

use std::string::String;
use std::vec::Vec;

use super::{Finding, Rule, of_job};
use crate::job::{
    Bay, Cabinet, CardId, Depth, Edge, FaceId, FreeRow, Hand, HolePlace, Job, Key, Label, Plate,
    Runner, Shop, Spacers, Zone,
};
use crate::measure::Length;

pub(super) const LEFT: Hand = Hand::Left;

pub(super) fn mm(value: i32) -> Length {
    Length::from_mm(value)
}

/// In thousandths of a millimetre.
pub(super) fn um(value: i32) -> Length {
    Length::from_um(value)
}

pub(super) fn card(id: &str) -> CardId {
    CardId::new(id).unwrap()
}

/// A job of one plain cabinet (600 x 704 x 560, 22 holes a row, back in a groove 20 from the edge), to be changed.
pub(super) struct Case {
    pub(super) job: Job,
}

impl Case {
    pub(super) fn new() -> Self {
        Self {
            job: Job::plain(Label::new("Glaze store").unwrap()),
        }
    }

    pub(super) fn shop(&mut self) -> &mut Shop {
        &mut self.job.shop
    }

    pub(super) fn cabinet(&mut self) -> &mut Cabinet {
        &mut self.job.cabinets[0]
    }

    /// The bay with this key; the plain cabinet's one bay is 1.
    pub(super) fn bay(&mut self, key: u32) -> &mut Bay {
        self.cabinet().opening.bay_mut(Key(key)).unwrap()
    }

    fn key(&mut self) -> Key {
        self.cabinet().free_key()
    }

    pub(super) fn pins(&mut self, bay: u32, first: i16, last: i16) -> &mut Zone {
        let (first, last) = (HolePlace::foot(first), HolePlace::foot(last));
        let zone = Zone {
            key: self.key(),
            first,
            last,
            depth: Depth::Shop,
        };
        let zones = &mut self.bay(bay).zones;
        zones.push(zone);
        zones.last_mut().unwrap()
    }

    pub(super) fn plate(&mut self, bay: u32, wall: Hand, hole: i16) -> &mut Plate {
        let (hole, card) = (HolePlace::foot(hole), card("hinge-plain"));
        let plate = Plate {
            key: self.key(),
            wall,
            hole,
            card,
            serves: None,
        };
        let plates = &mut self.bay(bay).plates;
        plates.push(plate);
        plates.last_mut().unwrap()
    }

    pub(super) fn runner(&mut self, bay: u32, hole: i16, length: i32) -> &mut Runner {
        let runner = Runner {
            key: self.key(),
            hole: HolePlace::foot(hole),
            card: card("runner-under"),
            length: mm(length),
            set_back: 0,
            spacers: Spacers::default(),
            serves: None,
        };
        let runners = &mut self.bay(bay).runners;
        runners.push(runner);
        runners.last_mut().unwrap()
    }

    /// A row so far from the front edge of a panel.
    pub(super) fn row(
        &mut self,
        face: FaceId,
        setback: Length,
        first: i16,
        last: i16,
    ) -> &mut FreeRow {
        let row = FreeRow {
            key: self.key(),
            face,
            purpose: Label::new("cable").unwrap(),
            edge: Edge::Front,
            setback,
            first: HolePlace::foot(first),
            last: HolePlace::foot(last),
            diameter: mm(5),
            depth: Depth::Shop,
        };
        let rows = &mut self.cabinet().free_rows;
        rows.push(row);
        rows.last_mut().unwrap()
    }
}

/// The findings of a rule in a plain cabinet so changed.
pub(super) fn found(rule: Rule, change: impl FnOnce(&mut Case)) -> Vec<Finding> {
    let mut case = Case::new();
    change(&mut case);
    assert_eq!(case.job.validate(), Ok(()));
    of_job(&case.job)
        .into_iter()
        .filter(|finding| finding.rule == rule)
        .collect()
}

/// What a rule says of a plain cabinet so changed, each sentence once.
pub(super) fn said(rule: Rule, change: impl FnOnce(&mut Case)) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for finding in found(rule, change) {
        if !said.contains(&finding.message) {
            said.push(finding.message);
        }
    }
    said
}
