//! What carries a front: the plates a door hangs on, the runners a drawer rides on.

use alloc::vec::Vec;

use super::{FrontLayout, Layout};
use crate::job::{Cabinet, FrontKind, Hand, Key};
use crate::measure::Length;

/// A plate or a pair of runners that carries a front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Carrier {
    /// The plate or the runner.
    pub key: Key,
    /// Its bay.
    pub bay: Key,
    /// The wall a plate is on; `None` for runners, which are on both.
    pub wall: Option<Hand>,
    /// Its hole; of a plate along the row the lower of its two.
    pub hole: i16,
    /// Whether it says that it serves this front; otherwise only its place tells.
    pub says_so: bool,
}

impl Layout {
    /// What ends the box of the highest drawer of a kind over an opening, z, before what is fixed may: behind a door the
    /// head of its room, otherwise the head of its front where another front stands over that; `None` where nothing does.
    #[must_use]
    pub fn box_end(&self, front: &FrontLayout) -> Option<Length> {
        let over = |other: &FrontLayout| {
            other.opening == front.opening && other.kind.is_seen() && other.foot >= front.head()
        };
        let ends = front.kind == FrontKind::Inner || self.fronts.iter().any(over);
        ends.then(|| front.head())
    }

    /// What carries a front, or one leaf of a pair, from the foot up: what says that it serves it, and of what serves
    /// nothing, plates on the wall the door is hung on and runners in the drawer's bay, within its height. A pair of
    /// runners carries one drawer: where one behind a door is at the same height as one with a front, the latter.
    #[must_use]
    pub fn carriers(&self, cabinet: &Cabinet, front: &FrontLayout) -> Vec<Carrier> {
        let mut found = Vec::new();
        for made in &self.bays {
            let Some(bay) = cabinet.opening.bay(made.key) else {
                continue;
            };
            let within = |hole: i16| {
                let z = self.height(hole);
                front.foot <= z && z <= front.head()
            };
            if front.kind.is_hung() {
                found.extend(bay.plates.iter().filter_map(|plate| {
                    let hole = plate.hole.number(self.last);
                    let on_wall = front.wall_hung() == Some(made.wall(plate.wall));
                    let serves = plate
                        .serves
                        .map_or(within(hole), |served| served == front.key);
                    (on_wall && serves).then_some(Carrier {
                        key: plate.key,
                        bay: made.key,
                        wall: Some(plate.wall),
                        hole,
                        says_so: plate.serves.is_some(),
                    })
                }));
            }
            if front.kind.is_drawer() {
                found.extend(bay.runners.iter().filter_map(|runner| {
                    let hole = runner.hole.number(self.last);
                    let served = runner.serves.or_else(|| self.drawer_at(made.key, hole));
                    let serves = served == Some(front.key);
                    serves.then_some(Carrier {
                        key: runner.key,
                        bay: made.key,
                        wall: None,
                        hole,
                        says_so: runner.serves.is_some(),
                    })
                }));
            }
        }
        found.sort_by_key(|carrier| (carrier.hole, carrier.key));
        found
    }

    /// The drawer of a bay at the height of a hole, those with a front first; where two meet, the upper one.
    fn drawer_at(&self, bay: Key, hole: i16) -> Option<Key> {
        let z = self.height(hole);
        let of = |kind: FrontKind| {
            let mut fronts = self.fronts.iter().rev();
            fronts.find(|front| {
                let there = front.opening == bay && front.kind == kind;
                there && front.foot <= z && z <= front.head()
            })
        };
        let found = of(FrontKind::Drawer).or_else(|| of(FrontKind::Inner));
        found.map(|front| front.key)
    }

    /// The runners that the box of a drawer runs on: the lowest that say so, or else the lowest that carry it.
    #[must_use]
    pub fn box_carrier(&self, cabinet: &Cabinet, front: &FrontLayout) -> Option<Carrier> {
        let carriers = self.carriers(cabinet, front).into_iter();
        let runners = carriers.filter(|carrier| carrier.wall.is_none());
        runners.min_by_key(|carrier| (!carrier.says_so, carrier.hole, carrier.key))
    }

    /// The front, or the leaf of a pair, that a plate or a pair of runners carries.
    #[must_use]
    pub fn carried_by(&self, cabinet: &Cabinet, fitting: Key) -> Option<&FrontLayout> {
        self.fronts.iter().find(|front| {
            let mut carriers = self.carriers(cabinet, front).into_iter();
            carriers.any(|carrier| carrier.key == fitting)
        })
    }
}

#[cfg(test)]
mod tests;
