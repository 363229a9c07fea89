//! How far shelves will be from level, where panels were cut longer or shorter and some rows rest on the head, or out of square.

use alloc::collections::BTreeMap;
use alloc::vec::Vec;

use super::{Holes, Panel, SetUp, lean, shift};
use crate::job::{FaceId, Key, PanelId};
use crate::layout::{BayLayout, Layout, Use};
use crate::measure::Length;

/// A bay whose four lines of pins are not alike in height.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rock {
    /// The cabinet.
    pub cabinet: Key,
    /// Which of its copies.
    pub copy: Key,
    /// The bay, as the copy has it.
    pub bay: Key,
    /// How far above their place the pins come to be, counted from the front of the foot of their panel: left front, left back, right front, right back.
    pub pins: [Length; 4],
    /// Whether that is so because some of its rows rest on a head that is not where it was planned.
    pub is_by_length: bool,
    /// Whether that is so because an end is out of square.
    pub is_by_lean: bool,
}

impl Rock {
    /// How far one corner of a shelf stands off when the other three are down. Geometry: twist alone rocks.
    #[must_use]
    pub fn rock(&self) -> Length {
        let [left_front, left_back, right_front, right_back] = self.pins;
        (left_front - left_back - right_front + right_back).abs()
    }

    /// How much higher a shelf is on the right than on the left.
    #[must_use]
    pub fn to_the_right(&self) -> Length {
        let [left_front, left_back, right_front, right_back] = self.pins;
        (right_front + right_back - left_front - left_back).half()
    }

    /// How much higher a shelf is at the back than at the front.
    #[must_use]
    pub fn to_the_back(&self) -> Length {
        let [left_front, left_back, right_front, right_back] = self.pins;
        (left_back + right_back - left_front - right_front).half()
    }
}

/// How far off the holes of each row of each face are.
type Offs = BTreeMap<(Key, Key, FaceId, Length), Length>;

/// The bays of these copies whose shelves will rock or slope.
pub(super) fn of(layouts: &[(Key, Key, Layout)], panels: &[Panel], set_ups: &[SetUp]) -> Vec<Rock> {
    let row = |it: &SetUp| ((it.cabinet, it.copy, it.face, it.row), it.off);
    // What is put there by tape is where it belongs, and holds no shelf.
    let by_rail = |it: &&SetUp| matches!(it.holes, Holes::Runs(_));
    let offs: Offs = set_ups.iter().filter(by_rail).map(row).collect();
    let panels: BTreeMap<(Key, Key, PanelId), &Panel> = panels
        .iter()
        .map(|it| ((it.cabinet, it.copy, it.panel), it))
        .collect();
    let bays = layouts.iter().flat_map(|(cabinet, copy, layout)| {
        layout
            .bays
            .iter()
            .map(move |bay| (*cabinet, *copy, layout, bay))
    });
    let rock = |(cabinet, copy, layout, bay): (Key, Key, &Layout, &BayLayout)| {
        let [left, right] = [bay.left, bay.right].map(|wall| {
            let panel = panels.get(&(cabinet, copy, wall.panel));
            let off = |row, depth| {
                // What goes right through a partition was bored from its other face.
                let of_face = |face| offs.get(&(cabinet, copy, face, row)).copied();
                let off = of_face(wall).or_else(|| of_face(wall.behind()))?;
                Some(RowOff {
                    length: off,
                    lean: panel.map_or(Length::ZERO, |it| it.out_of_square(row, depth)),
                })
            };
            wall_off(wall, bay, layout, off)
        });
        let ([left_front, left_back], [right_front, right_back]) = (left?, right?);
        let rows = [left_front, left_back, right_front, right_back];
        let pins = rows.map(|it| it.length + it.lean);
        let rock = Rock {
            cabinet,
            copy,
            bay: bay.key,
            pins,
            is_by_length: rows.iter().any(|it| it.length != Length::ZERO),
            is_by_lean: rows.iter().any(|it| it.lean != Length::ZERO),
        };
        pins.iter().any(|off| *off != pins[0]).then_some(rock)
    };
    bays.filter_map(rock).collect()
}

/// How far above its place a row comes to be, and why.
#[derive(Clone, Copy)]
struct RowOff {
    length: Length,
    lean: Length,
}

/// How far off the pins of a bay are on one wall, in their front row and in their back row; `None` without two rows.
fn wall_off(
    wall: FaceId,
    bay: &BayLayout,
    layout: &Layout,
    off: impl Fn(Length, Length) -> Option<RowOff>,
) -> Option<[RowOff; 2]> {
    let upright = layout.upright(wall.panel)?;
    let holes = layout.face(wall)?.holes(layout);
    let of_pins = holes
        .iter()
        .filter(|hole| hole.users.iter().any(|(use_, _)| *use_ == Use::Pin))
        .filter(|hole| bay.spans(hole.z));
    let rows: Vec<Length> = of_pins.map(|hole| hole.x - upright.front.total()).collect();
    let (front, back) = (*rows.iter().min()?, *rows.iter().max()?);
    let depth = upright.depth();
    (front != back).then_some([off(front, depth)?, off(back, depth)?])
}

impl Panel {
    /// How much higher than at the front of its foot a row comes to be, by the diagonals that were measured.
    fn out_of_square(&self, row: Length, depth: Length) -> Length {
        let apart = self.cut.and_then(|cut| cut.diagonals);
        let lean = lean(apart.unwrap_or(Length::ZERO), self.length, depth);
        shift(lean, row, depth)
    }
}
