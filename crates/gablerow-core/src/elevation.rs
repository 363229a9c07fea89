//! The cabinet from the front as shapes: decided once, and only projected by every screen and paper.
//!
//! Shapes are rectangles seen from the front: `across` to the right from the outer face of the left side, `z` up from the
//! carcass underside. They are listed in the order they are painted, so that what comes later stands before it.

use alloc::vec::Vec;

use crate::job::{Cabinet, Division, FrontKind, Hand, Key, Opening, PanelId};
use crate::layout::{BayLayout, FrontLayout, Item, KeepOut, Layout, Span};
use crate::measure::Length;

/// Everything to be drawn of a cabinet from the front.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Elevation {
    /// From the leftmost to the rightmost edge of all boards and fronts.
    pub across: Span,
    /// From the lowest to the highest edge of all boards and fronts.
    pub z: Span,
    /// What there is, hindmost first.
    pub shapes: Vec<Shape>,
}

/// One thing, where it is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shape {
    /// What it is.
    pub what: What,
    /// Left to right.
    pub across: Span,
    /// Foot to head.
    pub z: Span,
}

/// What a shape is. The order of these is the order of painting.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum What {
    /// The space of an opening that is divided.
    Opening(Key),
    /// The clear space of a bay.
    Bay(Key),
    /// A panel between uprights or across them; the fixed shelf it is, if it is one.
    Panel(Item, Option<Key>),
    /// A side or a partition.
    Upright(PanelId),
    /// A loose shelf on its pins.
    Shelf(Key),
    /// The room of a drawer behind what closes its opening; its front's key.
    Behind(Key),
    /// A front, or one leaf of a pair.
    Front(Leaf),
    /// The room that a pair of runners leaves for its box; the key of the runners.
    Box(Key),
    /// A runner on the wall of that hand.
    Runner(Key, Hand),
    /// A hinge plate on the wall of that hand.
    Plate(Key, Hand),
}

/// A front, or one leaf of a pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Leaf {
    /// The front's key; both leaves of a pair have the same.
    pub key: Key,
    /// The opening it closes.
    pub opening: Key,
    /// How it looks: as a door, as a drawer, as neither.
    pub look: Look,
}

/// How a front looks from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Look {
    /// A door or a leaf, hung on this hand.
    Hung(Hand),
    /// The front of a drawer.
    Drawer,
    /// A front that does not open.
    False,
}

impl Elevation {
    /// Draws a cabinet from its layout.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::elevation::{Elevation, What};
    /// use gablerow_core::job::{Job, Label};
    /// use gablerow_core::layout::Layout;
    /// use gablerow_core::measure::Length;
    ///
    /// let job = Job::plain(Label::new("glaze store").unwrap());
    /// let layout = Layout::of(&job.cabinets[0], &job);
    /// let elevation = Elevation::of(&job.cabinets[0], &layout);
    /// let bay = elevation.shapes.iter().find(|shape| matches!(shape.what, What::Bay(_)));
    /// assert_eq!(bay.unwrap().across.from, Length::from_mm(18));
    /// ```
    #[must_use]
    pub fn of(cabinet: &Cabinet, layout: &Layout) -> Self {
        let mut shapes = Vec::new();
        spaces(&mut shapes, cabinet, layout);
        boards(&mut shapes, layout);
        fronts(&mut shapes, layout);
        for bay in &layout.bays {
            fittings(&mut shapes, layout, bay, cabinet);
        }
        // Equal shapes stay in the order of the layout.
        shapes.sort_by_key(|shape| shape.what.depth());
        let seen = shapes.iter().filter(|shape| shape.what.is_solid());
        let (mut across, mut z) = (
            Span::new(Length::ZERO, cabinet.size.width),
            Span::new(Length::ZERO, cabinet.size.height),
        );
        for shape in seen {
            (across, z) = (across.with(shape.across), z.with(shape.z));
        }
        Self { across, z, shapes }
    }

    /// The rectangle around all shapes of one key: an opening, a front with both its leaves, a partition, a fixed shelf.
    #[must_use]
    pub fn around(&self, key: Key) -> Option<(Span, Span)> {
        let own = self
            .shapes
            .iter()
            .filter(|shape| shape.what.stop() == Some(key));
        own.map(|shape| (shape.across, shape.z))
            .reduce(|(across, z), (more, high)| (across.with(more), z.with(high)))
    }
}

impl What {
    /// The key that a person can stand on: of an opening, a front, a partition or a fixed shelf.
    #[must_use]
    pub fn stop(self) -> Option<Key> {
        match self {
            Self::Opening(key)
            | Self::Bay(key)
            | Self::Behind(key)
            | Self::Panel(_, Some(key))
            | Self::Upright(PanelId::Partition(key)) => Some(key),
            Self::Front(leaf) => Some(leaf.key),
            _ => None,
        }
    }

    /// Whether it is a board or a front, and no space within them.
    #[must_use]
    pub fn is_solid(self) -> bool {
        matches!(self, Self::Panel(..) | Self::Upright(_) | Self::Front(_))
    }

    /// Its place in the order of painting.
    fn depth(self) -> usize {
        match self {
            Self::Opening(_) => 0,
            Self::Bay(_) => 1,
            Self::Panel(Item::BackRail, _) => 2,
            Self::Panel(..) => 3,
            Self::Upright(_) => 4,
            Self::Shelf(_) => 5,
            Self::Behind(_) => 6,
            Self::Front(_) => 7,
            Self::Box(_) => 8,
            Self::Runner(..) | Self::Plate(..) => 9,
        }
    }
}

fn spaces(shapes: &mut Vec<Shape>, cabinet: &Cabinet, layout: &Layout) {
    cabinet.opening.each(&mut |opening| {
        let what = match opening.division {
            Division::Bay(_) => What::Bay(opening.key),
            _ => What::Opening(opening.key),
        };
        let bays = bays_of(opening, layout)
            .into_iter()
            .map(|bay| (bay.width_span(), bay.height_span()));
        let around = bays.reduce(|(across, z), (more, high)| (across.with(more), z.with(high)));
        if let Some((across, z)) = around {
            shapes.push(Shape { what, across, z });
        }
    });
}

/// The bays within an opening, itself when it is one.
fn bays_of<'a>(opening: &Opening, layout: &'a Layout) -> Vec<&'a BayLayout> {
    let mut bays = Vec::new();
    opening.each(&mut |part| {
        bays.extend(layout.bays.iter().filter(|bay| bay.key == part.key));
    });
    bays
}

fn boards(shapes: &mut Vec<Shape>, layout: &Layout) {
    shapes.extend(layout.uprights.iter().map(|upright| Shape {
        what: What::Upright(upright.id),
        across: Span::new(upright.across, upright.across + upright.thickness),
        z: Span::new(upright.foot.total(), upright.head.total()),
    }));
    shapes.extend(layout.panels.iter().map(|panel| Shape {
        what: What::Panel(panel.item, panel.owner),
        across: Span::new(panel.across, panel.across + panel.length.total()),
        z: panel.z,
    }));
}

fn fronts(shapes: &mut Vec<Shape>, layout: &Layout) {
    shapes.extend(layout.fronts.iter().map(|front| {
        let look = match (front.kind, front.hung) {
            (_, Some(hand)) => Look::Hung(hand),
            (FrontKind::Drawer, None) => Look::Drawer,
            (_, None) => Look::False,
        };
        let what = match front.kind {
            FrontKind::Inner => What::Behind(front.key),
            _ => What::Front(Leaf {
                key: front.key,
                opening: front.opening,
                look,
            }),
        };
        Shape {
            what,
            across: Span::new(front.left, front.right()),
            z: Span::new(front.foot, front.head()),
        }
    }));
}

/// The shelves, plates and runners of a bay, by the space they take before its walls.
fn fittings(shapes: &mut Vec<Shape>, layout: &Layout, bay: &BayLayout, cabinet: &Cabinet) {
    let Some(facts) = cabinet.opening.bay(bay.key) else {
        return;
    };
    let space = |wall: Hand, item: Item, owner: Key| {
        let face = layout.face(bay.wall(wall))?;
        let mut own = face.keep_outs.iter();
        own.find(|space| space.item == item && space.owner == Some(owner))
    };
    let seen = |what, wall, space: &KeepOut| Shape {
        what,
        across: from_wall(bay, wall, space.u),
        z: space.z,
    };
    for shelf in &facts.shelves {
        let found = space(Hand::Left, Item::Shelf, shelf.key);
        shapes.extend(found.map(|space| seen(What::Shelf(shelf.key), Hand::Left, space)));
    }
    for plate in &facts.plates {
        let found = space(plate.wall, Item::Hinge, plate.key);
        let what = What::Plate(plate.key, plate.wall);
        shapes.extend(found.map(|space| seen(what, plate.wall, space)));
    }
    let mut pairs = Vec::new();
    for runner in &facts.runners {
        let both = [Hand::Left, Hand::Right].map(|wall| {
            let found = space(wall, Item::Runner, runner.key);
            found.map(|space| seen(What::Runner(runner.key, wall), wall, space))
        });
        if let [Some(left), Some(right)] = both {
            shapes.extend([left, right]);
            pairs.push((runner, left, right));
        }
    }
    // The room of a box ends below the next pair above it, behind the head of its own front, at the latest at the ceiling.
    for (runner, left, right) in &pairs {
        let above = pairs.iter().map(|(_, other, _)| other.z.from);
        let above = above.filter(|&z| z > left.z.from).min();
        let carried = layout.carried_by(cabinet, runner.key);
        let head = carried.map(FrontLayout::head);
        let ends = [above, head].into_iter().flatten();
        let end = ends.fold(bay.ceiling.total(), Length::min);
        shapes.push(Shape {
            what: What::Box(runner.key),
            across: Span::new(left.across.to, right.across.from),
            z: Span::new(left.z.from, end),
        });
    }
}

/// Where something stands that is measured out from a wall of a bay.
fn from_wall(bay: &BayLayout, wall: Hand, u: Span) -> Span {
    let Span { from, to } = bay.width_span();
    match wall {
        Hand::Left => Span::new(from + u.from, from + u.to),
        Hand::Right => Span::new(to - u.to, to - u.from),
    }
}

#[cfg(test)]
mod tests;
