//! The walk through the openings of a cabinet: each space has two walls, a floor and a ceiling.

use alloc::vec::Vec;

use super::fixed::FixedPanel;
use super::fronts::{self, Edge, Laps};
use super::{
    BayLayout, Face, House, Item, Layout, OpenPoint, OpeningLayout, Span, Upright, fittings, free,
    rows,
};
use crate::cards::CardId;
use crate::grid::{Grid, Mismatch};
use crate::job::{
    Cabinet, Division, FaceId, FixedShelf, Hand, Joint, Key, Names, Opening, PanelId, Part,
    PartWidth, Partition, ShelfHeight, SideBySide, Stacked,
};
use crate::measure::Length;
use crate::sum::Sum;

/// The space of one opening.
#[derive(Clone, Copy)]
pub(super) struct Space {
    pub(super) left: FaceId,
    pub(super) right: FaceId,
    /// From the outer face of the left side to its left wall.
    pub(super) across: Length,
    pub(super) width: Length,
    /// How far its fronts lap over what is around it.
    pub(super) laps: Laps,
    /// Top of what is below, and how thick that is.
    pub(super) floor: Sum,
    pub(super) floor_thickness: Length,
    /// Underside of what is above, and how thick that is.
    pub(super) ceiling: Sum,
    pub(super) ceiling_thickness: Length,
    /// The panels it lies between: the one below, the one above, the second stretcher above.
    pub(super) panels: [Option<FixedPanel>; 4],
}

/// A layout in the making.
pub(super) struct Walk<'a> {
    pub(super) cabinet: &'a Cabinet,
    pub(super) house: House<'a>,
    pub(super) layout: Layout,
    pub(super) inner_depth: Sum,
}

pub(super) fn lay_out(cabinet: &Cabinet, house: House) -> Layout {
    let grid = Grid {
        first: cabinet.offsets.foot,
    };
    let mut walk = Walk {
        cabinet,
        house,
        layout: Layout {
            last: Layout::last_hole(cabinet, house.shop),
            grid,
            uprights: Vec::with_capacity(4),
            openings: Vec::new(),
            front_thickness: house.front_thickness(None),
            bays: Vec::new(),
            fronts: Vec::new(),
            panels: Vec::new(),
            names: Names::of(&cabinet.opening),
            open_points: Vec::new(),
        },
        inner_depth: rows::inner_depth(cabinet),
    };
    let space = walk.carcass();
    walk.opening(&cabinet.opening, &space);
    free::lay_out(&mut walk);
    walk.layout.panels.sort_by_key(|panel| panel.z.from);
    walk.move_right(1);
    let last = walk.layout.last;
    for upright in &mut walk.layout.uprights {
        upright.number(cabinet, house.shop, grid, last);
    }
    walk.layout
}

impl Walk<'_> {
    fn opening(&mut self, opening: &Opening, space: &Space) {
        self.layout.openings.push(OpeningLayout {
            key: opening.key,
            across: space.across,
            width: space.width,
            floor: space.floor.total(),
            ceiling: space.ceiling.total(),
        });
        fronts::lay_out(self, opening, space);
        let height = space.ceiling.total() - space.floor.total();
        if space.width.min(height).min(self.inner_depth.total()) <= Length::ZERO {
            self.layout.open_points.push(OpenPoint::NoSpace {
                opening: opening.key,
            });
        }
        match &opening.division {
            Division::Bay(bay) => {
                let front_row = rows::front_row(bay, self.house);
                let made = BayLayout {
                    key: opening.key,
                    across: space.across,
                    left: space.left,
                    right: space.right,
                    width: space.width,
                    floor: space.floor,
                    ceiling: space.ceiling,
                    inner_depth: self.inner_depth,
                    front_row,
                    back_row: rows::back_row(self.cabinet, front_row, self.house),
                };
                self.layout.bays.push(made);
                fittings::ask(self, bay, &made);
            }
            Division::SideBySide(parts) => self.side_by_side(opening.key, parts, space),
            Division::Stacked(parts) => self.stacked(parts, space),
        }
    }

    fn side_by_side(&mut self, opening: Key, parts: &SideBySide, space: &Space) {
        let boards: Length = parts
            .rest
            .iter()
            .map(|(partition, _)| self.thickness(&partition.board))
            .sum();
        let (widths, left_over) = widths(parts, space.width - boards);
        if left_over != Length::ZERO {
            self.layout
                .open_points
                .push(OpenPoint::Widths { opening, left_over });
        }
        let rules = self.house.shop.fronts;
        let words = ["half the partition", "partition"];
        let (mut left, mut across, mut lap) = (space.left, space.across, space.laps.left);
        let mut part = &parts.first;
        for ((partition, next), width) in parts.rest.iter().zip(&widths) {
            let made = self.layout.uprights.len();
            let thickness = self.thickness(&partition.board);
            self.partition(partition, across + *width, space);
            let face = |toward| FaceId {
                panel: PanelId::Partition(partition.key),
                toward,
            };
            self.opening(
                &part.opening,
                &Space {
                    left,
                    right: face(Hand::Left),
                    across,
                    width: *width,
                    laps: Laps {
                        left: lap,
                        right: Laps::between(words, thickness, (&next.opening, Edge::Left), &rules),
                        ..space.laps
                    },
                    ..*space
                },
            );
            self.move_right(made);
            lap = Laps::between(words, thickness, (&part.opening, Edge::Right), &rules);
            across += *width + thickness;
            (left, part) = (face(Hand::Right), next);
        }
        let width = widths.last().copied().unwrap_or(space.width);
        self.opening(
            &part.opening,
            &Space {
                left,
                across,
                width,
                laps: Laps {
                    left: lap,
                    ..space.laps
                },
                ..*space
            },
        );
    }

    /// Moves an upright behind all that were made after it: it was needed as their right wall, and people read from
    /// left to right.
    fn move_right(&mut self, made: usize) {
        if let Some(from_it_on @ [_, ..]) = self.layout.uprights.get_mut(made..) {
            from_it_on.rotate_left(1);
        }
    }

    fn partition(&mut self, partition: &Partition, across: Length, space: &Space) {
        let Partition {
            key,
            board,
            recess,
            foot,
            head,
        } = partition;
        let thickness = self.thickness(board);
        let past = |joint: &Joint, thickness| {
            if joint.runs_past {
                thickness
            } else {
                joint.housing
            }
        };
        let id = PanelId::Partition(*key);
        self.layout.uprights.push(Upright {
            id,
            thickness,
            across,
            front: Sum::default().plus("recess", *recess),
            back: self.inner_depth,
            foot: space
                .floor
                .less("let in at the foot", past(foot, space.floor_thickness)),
            head: space
                .ceiling
                .plus("let in at the head", past(head, space.ceiling_thickness)),
            back_taken: Length::ZERO,
            notch: None,
            exposed: false,
            holes: (1, 0),
            mismatch: Mismatch::default(),
            faces: Upright::faces_of(id),
        });
        for toward in [Hand::Left, Hand::Right] {
            self.meet(FaceId { panel: id, toward }, space.width, &space.panels);
        }
        if !(foot.bores.is_empty() && head.bores.is_empty()) {
            self.layout
                .open_points
                .push(OpenPoint::JointBores { owner: *key });
        }
    }

    fn stacked(&mut self, parts: &Stacked, space: &Space) {
        let rules = self.house.shop.fronts;
        let words = ["half the fixed shelf", "fixed shelf"];
        let mut below = &parts.first;
        let mut left = *space;
        for (shelf, above) in &parts.rest {
            let thickness = self.thickness(&shelf.board);
            let underside = self.underside(shelf, thickness);
            let panel = self.fixed_shelf(shelf, underside.total(), thickness, space);
            let lap = |other| Laps::between(words, thickness, other, &rules);
            let lap_below = lap((above, Edge::Foot));
            let lap_above = lap((below, Edge::Head));
            self.opening(
                below,
                &Space {
                    ceiling: underside,
                    ceiling_thickness: thickness,
                    panels: [left.panels[0], Some(panel), None, None],
                    laps: Laps {
                        head: lap_below,
                        ..left.laps
                    },
                    ..left
                },
            );
            left.laps.foot = lap_above;
            left.floor = underside.plus("fixed shelf", thickness);
            left.floor_thickness = thickness;
            left.panels[0] = Some(panel);
            below = above;
        }
        self.opening(below, &left);
    }

    fn underside(&self, shelf: &FixedShelf, thickness: Length) -> Sum {
        match shelf.at {
            ShelfHeight::Underside(z) => Sum::of("underside of the fixed shelf", z),
            ShelfHeight::Hole(place) => Sum::of(
                "hole of the fixed shelf",
                self.layout.height(place.number(self.layout.last)),
            )
            .less("half its thickness", thickness.half()),
        }
    }

    fn fixed_shelf(
        &mut self,
        shelf: &FixedShelf,
        underside: Length,
        thickness: Length,
        space: &Space,
    ) -> FixedPanel {
        let panel = FixedPanel {
            item: Item::FixedShelf,
            owner: Some(shelf.key),
            x: Span::new(shelf.recess, self.inner_depth.total()),
            z: Span::new(underside, underside + thickness),
        };
        self.fix(space, &[Some(panel)]);
        let housing = self.let_in(&shelf.joint, &self.cabinet.carcass.sides.board);
        let made = self.panel_between(space, panel, &shelf.board, housing);
        self.layout.panels.push(made);
        self.join(space, shelf.key, &shelf.joint, underside + thickness.half());
        panel
    }

    /// Puts fixed panels on both walls of a space.
    pub(super) fn fix(&mut self, space: &Space, panels: &[Option<FixedPanel>]) {
        for wall in [space.left, space.right] {
            self.meet(wall, space.width, panels);
        }
    }

    /// Puts fixed panels on a face they meet.
    fn meet(&mut self, face: FaceId, width: Length, panels: &[Option<FixedPanel>]) {
        if let Some(face) = self.face(face) {
            let panels = panels.iter().flatten();
            face.keep_outs
                .extend(panels.map(|panel| panel.keep_out(width)));
        }
    }

    /// Puts the bores of a joint on both walls of a space, at one height.
    pub(super) fn join(&mut self, space: &Space, owner: Key, joint: &Joint, z: Length) {
        for wall in [space.left, space.right] {
            let Some(face) = self.face(wall) else {
                continue;
            };
            face.bores.extend(
                joint
                    .bores
                    .iter()
                    .map(|bore| free::joint_bore(bore, owner, z)),
            );
        }
    }

    pub(super) fn face(&mut self, id: FaceId) -> Option<&mut Face> {
        let upright = self
            .layout
            .uprights
            .iter_mut()
            .find(|upright| upright.id == id.panel)?;
        Some(upright.face_mut(id.toward))
    }

    /// The measured thickness of a board; a card that is not there is said, and counts as no thickness.
    pub(super) fn thickness(&mut self, board: &CardId) -> Length {
        match self.house.cards.board(board) {
            Some(card) => card.thickness.value,
            None => {
                self.no_card(board);
                Length::ZERO
            }
        }
    }

    pub(super) fn front_thickness(&self, typed: Option<Length>) -> Length {
        self.house.front_thickness(typed)
    }

    pub(super) fn no_card(&mut self, card: &CardId) {
        self.layout
            .open_points
            .push(OpenPoint::NoCard { card: card.clone() });
    }
}

/// The clear width of each part, and what they leave over.
///
/// Equal parts share what the fixed ones leave. Counts that do not divide, less than one a part, go to the equal part
/// whose opening has the lowest key, so that the widths add up exactly and the mirror image has the same ones.
fn widths(parts: &SideBySide, clear: Length) -> (Vec<Length>, Length) {
    let all = || core::iter::once(&parts.first).chain(parts.rest.iter().map(|(_, part)| part));
    let fixed = |part: &Part| match part.width {
        PartWidth::Fixed(width) => Some(width),
        PartWidth::Equal => None,
    };
    let left = clear - all().filter_map(fixed).sum::<Length>();
    let equal = || all().filter(|part| part.width == PartWidth::Equal);
    let Some(first_named) = equal().map(|part| part.opening.key).min() else {
        return (all().filter_map(fixed).collect(), left);
    };
    let shares = i32::try_from(equal().count()).unwrap_or(i32::MAX);
    let share = Length::from_counts(left.counts().div_euclid(shares));
    let odd = left - share * shares;
    let width = |part: &Part| match part.width {
        PartWidth::Fixed(width) => width,
        PartWidth::Equal if part.opening.key == first_named => share + odd,
        PartWidth::Equal => share,
    };
    (all().map(width).collect(), Length::ZERO)
}
