//! Where a person stands on the front of a cabinet, and what is next to it.

use gablerow_core::elevation::{Elevation, What};
use gablerow_core::job::{Division, FaceId, Hand, Key, Opening, PanelId};
use gablerow_core::layout::{BayLayout, FrontLayout, Span};
use gablerow_core::measure::Length;

use super::{Scene, Spot};
use crate::app::{App, Screen};

/// What a person stands on, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Thing {
    /// An opening: a bay, or one that is divided.
    Opening(Key),
    /// A front, or a drawer behind one.
    Front(Key),
    /// A partition.
    Partition(Key),
    /// A fixed shelf.
    FixedShelf(Key),
}

/// The thing under the cursor of the front screen, and what it belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FrontSpot {
    /// The cabinet.
    pub cabinet: Key,
    /// What the cursor stands on.
    pub at: Thing,
    /// The opening it is, closes or divides.
    pub opening: Key,
    /// The bay in that opening that is nearest to its middle.
    pub bay: Key,
}

/// A cabinet seen from the front.
pub struct FrontScene<'a> {
    /// The cabinet laid out and checked.
    pub scene: Scene<'a>,
    /// The cabinet as shapes.
    pub elevation: Elevation,
    stops: Vec<Stop>,
}

/// A direction on the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Toward {
    /// To one side.
    Side(Hand),
    /// To the head.
    Up,
    /// To the foot.
    Down,
}

/// A thing one can stand on, and where it is.
#[derive(Clone, Copy, Debug)]
struct Stop {
    thing: Thing,
    across: Span,
    z: Span,
    /// Whether no front hides it.
    is_seen: bool,
    /// Whether it is an opening that is divided: it holds others that arrows go to.
    is_divided: bool,
}

/// How far a front may end short of the middle of a board that two fronts hide together.
const GAP_MOST: Length = Length::from_mm(4);

/// The thing under the cursor of the front screen; `None` on every other screen.
#[must_use]
pub fn front_spot(app: &App) -> Option<FrontSpot> {
    if app.screen != Screen::Front {
        return None;
    }
    FrontScene::at(app)?.spot(app.front.at)
}

impl Thing {
    /// Its key.
    #[must_use]
    pub fn key(self) -> Key {
        match self {
            Self::Opening(key)
            | Self::Front(key)
            | Self::Partition(key)
            | Self::FixedShelf(key) => key,
        }
    }

    fn of(what: What) -> Option<Self> {
        Some(match what {
            What::Opening(key) | What::Bay(key) => Self::Opening(key),
            What::Front(leaf) => Self::Front(leaf.key),
            What::Behind(key) => Self::Front(key),
            What::Upright(PanelId::Partition(key)) => Self::Partition(key),
            What::Panel(_, Some(key)) => Self::FixedShelf(key),
            _ => return None,
        })
    }
}

impl<'a> FrontScene<'a> {
    /// The cabinet of the spot; `None` when the job has none.
    #[must_use]
    pub fn at(app: &'a App) -> Option<Self> {
        Some(Self::of(Scene::at(&app.desk.job, &app.spot)?))
    }

    /// A scene, seen from the front.
    #[must_use]
    pub fn of(scene: Scene<'a>) -> Self {
        let elevation = Elevation::of(scene.cabinet, &scene.layout);
        let mut stops: Vec<Stop> = Vec::new();
        for shape in &elevation.shapes {
            let Some(thing) = Thing::of(shape.what) else {
                continue;
            };
            if stops.iter().any(|stop| stop.thing == thing) {
                continue;
            }
            let around = elevation.around(thing.key());
            let (across, z) = around.unwrap_or((shape.across, shape.z));
            stops.push(Stop {
                thing,
                across,
                z,
                is_seen: matches!(shape.what, What::Front(_))
                    || !is_hidden(&elevation, thing, across, z),
                is_divided: matches!(shape.what, What::Opening(_)),
            });
        }
        Self {
            scene,
            elevation,
            stops,
        }
    }

    /// The place of a key; the first thing there is when this cabinet has nothing of that key to stand on.
    #[must_use]
    pub fn spot(&self, key: Key) -> Option<FrontSpot> {
        let stop = self.stop(key)?;
        let opening = self.opening_of(stop.thing);
        Some(FrontSpot {
            cabinet: self.scene.cabinet.key,
            at: stop.thing,
            opening,
            bay: self.nearest_bay(opening, stop)?.key,
        })
    }

    /// The front of a key, laid out; of a pair its left leaf.
    #[must_use]
    pub fn front(&self, key: Key) -> Option<&FrontLayout> {
        self.scene
            .layout
            .fronts
            .iter()
            .find(|front| front.key == key)
    }

    /// The bay of a key, and its number: from left to right and from the foot up.
    #[must_use]
    pub fn bay(&self, key: Key) -> Option<(usize, &BayLayout)> {
        let mut bays = (1..).zip(&self.scene.layout.bays);
        bays.find(|(_, bay)| bay.key == key)
    }

    /// The first bay of an opening, from the left and from the foot; itself when it is not divided.
    #[must_use]
    pub fn first_within(&self, opening: Key) -> Option<Key> {
        let within = self.keys_within(opening);
        let mut bays = self.scene.layout.bays.iter();
        bays.find(|bay| within.contains(&bay.key))
            .map(|bay| bay.key)
    }

    /// What lies next in a direction: of what is seen among that, of what is behind among all that is behind.
    #[must_use]
    pub fn step(&self, from: Key, toward: Toward) -> Option<Key> {
        let own = self.stop(from)?;
        let is_front = |stop: &Stop| matches!(stop.thing, Thing::Front(_)) && stop.is_seen;
        let candidates = self.stops.iter().filter(|stop| match own.is_seen {
            true => stop.is_seen,
            false => !is_front(stop),
        });
        let next = candidates
            .filter(|stop| stop.thing != own.thing && !stop.is_divided)
            .filter_map(|stop| Some((away(own, stop, toward)?, stop.thing.key())));
        next.min().map(|(_, key)| key)
    }

    /// What a thing stands before: of a front its bay, of anything else the opening around it, of the outermost the first
    /// thing there is.
    #[must_use]
    pub fn behind(&self, from: Key) -> Option<Key> {
        let spot = self.spot(from)?;
        let next = match spot.at {
            Thing::Front(_) => Some(spot.bay),
            Thing::Opening(key) => parent(&self.scene.cabinet.opening, key),
            Thing::Partition(_) | Thing::FixedShelf(_) => Some(spot.opening),
        };
        next.or_else(|| Some(self.first()?.thing.key()))
    }

    /// Where one stands on the front, coming from a face: on the front that the fitting there carries, else on the front
    /// that hides the place, else on the bay.
    #[must_use]
    pub fn entered(&self, spot: &Spot) -> Option<Key> {
        let layout = &self.scene.layout;
        let z = layout.height(spot.hole);
        let (bay, _) = layout.bay_at(spot.face, z)?;
        let row = self.scene.row(spot.row)?.x;
        let dot = self.scene.drawing.dot_at(row, spot.hole);
        let owners = dot.into_iter().flat_map(|dot| &dot.hole.users);
        let mut served = owners.filter_map(|&(_, owner)| self.served_by(owner));
        let middle = bay.width_span().middle();
        let hides = |stop: &&Stop| {
            matches!(stop.thing, Thing::Front(_))
                && stop.is_seen
                && holds(stop.across, middle)
                && holds(stop.z, z)
        };
        let hiding = || self.stops.iter().find(hides).map(|stop| stop.thing.key());
        served
            .find(|&key| self.has(key))
            .or_else(hiding)
            .or(Some(bay.key))
    }

    /// The place on a wall that a thing leads to: its lowest fitting, else a hole of its bay at its height.
    #[must_use]
    pub fn place(&self, key: Key, wall: Hand) -> Option<Spot> {
        let spot = self.spot(key)?;
        let stop = self.stop(key)?;
        let (_, bay) = self.bay(spot.bay)?;
        let layout = &self.scene.layout;
        let face = match spot.at {
            Thing::Partition(key) => FaceId {
                panel: PanelId::Partition(key),
                toward: wall,
            },
            _ => bay.wall(wall),
        };
        let wanted = match spot.at {
            Thing::Front(front) => self.lowest_hole(front),
            _ => None,
        };
        let floor = bay.floor.total();
        let inside = (1..=layout.last).filter(|&hole| layout.height(hole) >= floor);
        let middle = stop.z.middle();
        let nearest = inside.min_by_key(|&hole| (layout.height(hole) - middle).abs());
        Some(Spot {
            cabinet: spot.cabinet,
            face,
            row: bay.front_row.total(),
            hole: wanted.or(nearest)?,
        })
    }

    /// The plates and runners that carry a front, each with its hole number; lowest first. Those that say of no front that
    /// they carry it are of the front they stand behind: on the wall it hangs on, in the bay its drawer is in.
    #[must_use]
    pub fn carriers(&self, front: Key) -> Vec<(i16, Key)> {
        let Scene {
            cabinet, layout, ..
        } = &self.scene;
        let leaves = layout.fronts.iter().filter(|leaf| leaf.key == front);
        let mut found: Vec<(i16, Key)> = leaves
            .flat_map(|leaf| layout.carriers(cabinet, leaf))
            .map(|carrier| (carrier.hole, carrier.key))
            .collect();
        found.sort_unstable();
        found
    }

    fn lowest_hole(&self, front: Key) -> Option<i16> {
        let last = self.scene.layout.last;
        let lowest = self.carriers(front).first().map(|(hole, _)| *hole);
        lowest.filter(|hole| (1..=last).contains(hole))
    }

    /// The front that a fitting carries.
    fn served_by(&self, fitting: Key) -> Option<Key> {
        let Scene {
            cabinet, layout, ..
        } = &self.scene;
        layout.carried_by(cabinet, fitting).map(|front| front.key)
    }

    fn has(&self, key: Key) -> bool {
        self.stops.iter().any(|stop| stop.thing.key() == key)
    }

    fn stop(&self, key: Key) -> Option<&Stop> {
        let own = self.stops.iter().find(|stop| stop.thing.key() == key);
        own.or_else(|| self.first())
    }

    /// The lowest thing on the left that is seen.
    fn first(&self) -> Option<&Stop> {
        let seen = self
            .stops
            .iter()
            .filter(|stop| stop.is_seen && !stop.is_divided);
        seen.min_by_key(|stop| (stop.across.middle(), stop.z.middle(), stop.thing.key()))
            .or(self.stops.first())
    }

    fn opening_of(&self, thing: Thing) -> Key {
        let mut found = self.scene.cabinet.opening.key;
        self.scene.cabinet.opening.each(&mut |opening| {
            let is_own = match thing {
                Thing::Opening(key) => opening.key == key,
                Thing::Front(key) => opening.fronts.iter().any(|front| front.key == key),
                Thing::Partition(key) => match &opening.division {
                    Division::SideBySide(parts) => {
                        parts.rest.iter().any(|(partition, _)| partition.key == key)
                    }
                    _ => false,
                },
                Thing::FixedShelf(key) => match &opening.division {
                    Division::Stacked(parts) => {
                        parts.rest.iter().any(|(shelf, _)| shelf.key == key)
                    }
                    _ => false,
                },
            };
            if is_own {
                found = opening.key;
            }
        });
        found
    }

    /// The keys of an opening and of all within it.
    pub(super) fn keys_within(&self, opening: Key) -> Vec<Key> {
        let mut within = Vec::new();
        self.scene.cabinet.opening.each(&mut |outer| {
            if outer.key == opening {
                outer.each(&mut |inner| within.push(inner.key));
            }
        });
        within
    }

    fn nearest_bay(&self, opening: Key, stop: &Stop) -> Option<&BayLayout> {
        let within = self.keys_within(opening);
        let bays = self.scene.layout.bays.iter();
        bays.filter(|bay| within.contains(&bay.key))
            .min_by_key(|bay| {
                let across = outside(bay.width_span(), stop.across.middle());
                across.max(outside(bay.height_span(), stop.z.middle()))
            })
    }
}

/// The opening that an opening is a part of.
fn parent(outermost: &Opening, key: Key) -> Option<Key> {
    let mut found = None;
    outermost.each(&mut |outer| {
        let mut has = false;
        outer.each(&mut |inner| has |= inner.key == key);
        // Inner ones come later, so the last that holds it is the nearest.
        if has && outer.key != key {
            found = Some(outer.key);
        }
    });
    found
}

/// How far a place lies outside a span; 0 within it.
fn outside(span: Span, at: Length) -> Length {
    (span.from - at).max(at - span.to).max(Length::ZERO)
}

fn holds(span: Span, at: Length) -> bool {
    span.from <= at && at <= span.to
}

/// Whether fronts hide a thing: the middle of a space, both edges of a board.
fn is_hidden(elevation: &Elevation, thing: Thing, across: Span, z: Span) -> bool {
    let covered = |x: Length, y: Length, slack: (Length, Length)| {
        elevation.shapes.iter().any(|shape| {
            matches!(shape.what, What::Front(_))
                && outside(shape.across, x) <= slack.0
                && outside(shape.z, y) <= slack.1
        })
    };
    let (middle, level, none) = (across.middle(), z.middle(), Length::ZERO);
    match thing {
        Thing::Opening(_) | Thing::Front(_) => covered(middle, level, (GAP_MOST, GAP_MOST)),
        Thing::Partition(_) => {
            let slack = (none, GAP_MOST);
            covered(across.from, level, slack) && covered(across.to, level, slack)
        }
        Thing::FixedShelf(_) => {
            let slack = (GAP_MOST, none);
            covered(middle, z.from, slack) && covered(middle, z.to, slack)
        }
    }
}

/// How far one thing is from another in a direction: the way along, then the way aside; `None` when it lies elsewhere.
fn away(own: &Stop, other: &Stop, toward: Toward) -> Option<(Length, Length)> {
    let ((along, other_along), (aside, other_aside), is_forward) = match toward {
        Toward::Side(hand) => (
            (own.across, other.across),
            (own.z, other.z),
            hand == Hand::Right,
        ),
        Toward::Up | Toward::Down => (
            (own.z, other.z),
            (own.across, other.across),
            toward == Toward::Up,
        ),
    };
    let beyond = match is_forward {
        true => other_along.middle() > along.middle(),
        false => other_along.middle() < along.middle(),
    };
    let gap = match is_forward {
        true => other_along.from - along.to,
        false => along.from - other_along.to,
    };
    let meets = aside.overlap(other_aside) > Length::ZERO;
    let off = (aside.middle() - other_aside.middle()).abs();
    (beyond && meets).then(|| (gap.max(Length::ZERO), off))
}
