//! What people call the parts of a cabinet: counted from left to right and from the foot up, never by their keys.

use alloc::vec::Vec;
use core::fmt;

use super::{Division, FaceId, Hand, Key, Opening, PanelId};

/// The names of a cabinet's partitions, bays and fixed shelves. They follow what stands where, so a new partition on the
/// left makes the next one partition 2; keys do not.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Names {
    partitions: Vec<Key>,
    shelves: Vec<Key>,
    openings: Vec<(Key, OpeningName)>,
    bays: u16,
}

/// What an upright is called: `left side`, `right side` or `partition 2`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PanelName {
    /// The outer panel on the given hand.
    Side(Hand),
    /// The partition of that number, from the left; of openings above each other the lower ones come first.
    Partition(u16),
    /// A partition that is named and not there.
    Gone,
}

/// What a face is called: `left side, inside` or `partition 2, right face`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct FaceName {
    /// Its panel.
    pub panel: PanelName,
    /// Which of its faces: `inside`, `right face`.
    pub word: &'static str,
}

/// What an opening is called by the bays in it: `bay 2`, or `bays 2-4`, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct OpeningName {
    first: u16,
    last: u16,
}

impl Names {
    /// The names in an opening and all that it holds; of a cabinet it is the outermost.
    #[must_use]
    pub fn of(opening: &Opening) -> Self {
        let mut names = Self::default();
        names.walk(opening);
        names
    }

    fn walk(&mut self, opening: &Opening) {
        let first = self.bays + 1;
        match &opening.division {
            Division::Bay(_) => self.bays += 1,
            Division::SideBySide(parts) => {
                self.walk(&parts.first.opening);
                for (partition, part) in &parts.rest {
                    self.partitions.push(partition.key);
                    self.walk(&part.opening);
                }
            }
            Division::Stacked(parts) => {
                self.walk(&parts.first);
                for (shelf, above) in &parts.rest {
                    self.shelves.push(shelf.key);
                    self.walk(above);
                }
            }
        }
        let last = self.bays;
        self.openings
            .push((opening.key, OpeningName { first, last }));
    }

    /// What an upright is called.
    #[must_use]
    pub fn panel(&self, panel: PanelId) -> PanelName {
        match panel {
            PanelId::Side(hand) => PanelName::Side(hand),
            PanelId::Partition(key) => {
                number(&self.partitions, key).map_or(PanelName::Gone, PanelName::Partition)
            }
        }
    }

    /// What a face is called.
    #[must_use]
    pub fn face(&self, face: FaceId) -> FaceName {
        FaceName {
            panel: self.panel(face.panel),
            word: face.word(),
        }
    }

    /// What a bay or another opening is called; `None` when there is none of this key.
    #[must_use]
    pub fn opening(&self, key: Key) -> Option<OpeningName> {
        let found = self.openings.iter().find(|(opening, _)| *opening == key);
        found.map(|(_, name)| *name)
    }

    /// The number of a fixed shelf, from the foot up; `None` when there is none of this key.
    #[must_use]
    pub fn shelf(&self, key: Key) -> Option<u16> {
        number(&self.shelves, key)
    }

    /// How many bays there are; one alone needs no name.
    #[must_use]
    pub fn bays(&self) -> u16 {
        self.bays
    }
}

/// The place of a key in a list, the first being 1.
fn number(list: &[Key], key: Key) -> Option<u16> {
    let at = list.iter().position(|listed| *listed == key)?;
    u16::try_from(at + 1).ok()
}

impl fmt::Display for PanelName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Side(hand) => write!(f, "{} side", hand.word()),
            Self::Partition(number) => write!(f, "partition {number}"),
            Self::Gone => f.write_str("a partition that is not there"),
        }
    }
}

impl fmt::Display for FaceName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, {}", self.panel, self.word)
    }
}

impl fmt::Display for OpeningName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.first == self.last {
            write!(f, "bay {}", self.first)
        } else {
            write!(f, "bays {}-{}", self.first, self.last)
        }
    }
}
