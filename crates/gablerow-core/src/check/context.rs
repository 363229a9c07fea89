//! What every check looks at, and how it names things.

use alloc::format;
use alloc::string::{String, ToString};

use super::{Place, Strand};
use crate::cards::PlateShape;
use crate::job::{Bay, Cabinet, Division, Job, Key, Limits, Plate, Shop};
use crate::layout::{BoreSpec, Face, Layout, Upright, Use};

/// One cabinet, what it goes by, and what it comes to.
#[derive(Clone, Copy)]
pub(super) struct Context<'a> {
    pub(super) job: &'a Job,
    pub(super) cabinet: &'a Cabinet,
    pub(super) layout: &'a Layout,
}

/// Something of a cabinet in words, and the bay it belongs to.
struct Named {
    words: String,
    bay: Option<Key>,
}

impl<'a> Context<'a> {
    pub(super) fn shop(&self) -> &'a Shop {
        &self.job.shop
    }

    pub(super) fn limits(&self) -> &'a Limits {
        &self.job.shop.limits
    }

    /// The whole cabinet as a place.
    pub(super) fn here(&self) -> Place {
        Place::of(self.cabinet.key)
    }

    /// Every face, and the upright it is on.
    pub(super) fn faces(&self) -> impl Iterator<Item = (&'a Upright, &'a Face)> {
        let of = |upright: &'a Upright| upright.faces.iter().map(move |face| (upright, face));
        self.layout.uprights.iter().flat_map(of)
    }

    /// Whose holes two are, the bay said once when it is the same.
    pub(super) fn owners(&self, a: &BoreSpec, b: &BoreSpec) -> String {
        self.both(self.owner_named(a), self.owner_named(b))
    }

    fn both(&self, a: Named, b: Named) -> String {
        if a.bay == b.bay {
            let words = format!("{} and {}", a.words, b.words);
            return self.with_bay(Named { words, bay: a.bay });
        }
        format!("{} and {}", self.with_bay(a), self.with_bay(b))
    }

    /// A cabinet of one bay need not name it.
    fn with_bay(&self, named: Named) -> String {
        match named.bay {
            Some(bay) if self.layout.bays.len() > 1 => format!("{} in bay {bay}", named.words),
            _ => named.words,
        }
    }

    fn owner_named(&self, spec: &BoreSpec) -> Named {
        let joint = |words: &str| Named {
            words: words.to_string(),
            bay: None,
        };
        match spec.use_ {
            Use::Dowel => joint("joint dowel"),
            Use::Connector => joint("joint connector"),
            Use::Pin | Use::Plate | Use::Runner | Use::Free => self.named(spec.owner),
        }
    }

    fn named(&self, key: Key) -> Named {
        let mut found = None;
        self.cabinet
            .opening
            .each(&mut |opening| match &opening.division {
                Division::Bay(bay) => {
                    let words = self.in_bay(bay, key);
                    found = found.take().or(words.map(|words| Named {
                        words,
                        bay: Some(opening.key),
                    }));
                }
                Division::Stacked(parts) => {
                    if parts.rest.iter().any(|(shelf, _)| shelf.key == key) {
                        found = Some(Named {
                            words: format!("fixed shelf {key}"),
                            bay: None,
                        });
                    }
                }
                Division::SideBySide(_) => {}
            });
        found.unwrap_or_else(|| Named {
            words: self.free(key),
            bay: None,
        })
    }

    fn in_bay(&self, bay: &Bay, key: Key) -> Option<String> {
        let last = self.layout.last;
        if let Some(zone) = bay.zones.iter().find(|zone| zone.key == key) {
            return Some(format!(
                "pins {}",
                range(zone.first.number(last), zone.last.number(last))
            ));
        }
        if let Some(shelf) = bay.shelves.iter().find(|shelf| shelf.key == key) {
            return Some(format!("shelf on {}", shelf.hole.number(last)));
        }
        if let Some(plate) = bay.plates.iter().find(|plate| plate.key == key) {
            return Some(format!("hinge plate on {}", self.plate_holes(plate)));
        }
        let runner = bay.runners.iter().find(|runner| runner.key == key)?;
        Some(format!("runner on {}", runner.hole.number(last)))
    }

    fn plate_holes(&self, plate: &Plate) -> String {
        let first = plate.hole.number(self.layout.last);
        let card = self.job.cards.hinge(&plate.card);
        let along = card.is_some_and(|card| card.plate == PlateShape::AlongRow);
        range(first, first + i16::from(along))
    }

    fn free(&self, key: Key) -> String {
        if let Some(row) = self.cabinet.free_rows.iter().find(|row| row.key == key) {
            return format!("free row \"{}\"", row.purpose);
        }
        let hole = self.cabinet.free_holes.iter().find(|hole| hole.key == key);
        hole.map_or_else(
            || "joint".to_string(),
            |hole| format!("free hole \"{}\"", hole.purpose),
        )
    }
}

/// `3-4`, or `3` when both are one; in whichever order they come.
pub(super) fn range(a: i16, b: i16) -> String {
    if a == b {
        a.to_string()
    } else {
        format!("{}-{}", a.min(b), a.max(b))
    }
}

/// `hole 3`, `holes 3-4`, or where a single bore is.
pub(super) fn holes(strand: &Strand) -> String {
    match strand.holes {
        Some((first, last)) if first == last => format!("hole {first}"),
        Some((first, last)) => format!("holes {}", range(first, last)),
        None => format!("the hole at x {}, z {}", strand.x.mm_1(), strand.low.mm_1()),
    }
}
