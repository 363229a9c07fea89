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
    /// nothing, plates on the wall the door is hung on and runners in the drawer's bay, within its height.
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
                    })
                }));
            }
            if front.kind.is_drawer() {
                found.extend(bay.runners.iter().filter_map(|runner| {
                    let hole = runner.hole.number(self.last);
                    let own = made.key == front.opening && within(hole);
                    let serves = runner.serves.map_or(own, |served| served == front.key);
                    serves.then_some(Carrier {
                        key: runner.key,
                        bay: made.key,
                        wall: None,
                        hole,
                    })
                }));
            }
        }
        found.sort_by_key(|carrier| (carrier.hole, carrier.key));
        found
    }
}
