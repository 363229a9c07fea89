//! The box: sides, bottom, top or stretchers, back rail, and the space between them.

use super::fixed::{self, FixedPanel, PanelLayout};
use super::fronts::Laps;
use super::space::{Space, Walk};
use super::{Item, Upright};
use crate::cards::CardId;
use crate::grid::Mismatch;
use crate::job::{Cabinet, FaceId, Fit, Hand, Joint, PanelId, TopKind};
use crate::measure::Length;
use crate::sum::Sum;

impl Walk<'_> {
    /// Makes both sides, the bottom and the top, and gives the space between them.
    pub(super) fn carcass(&mut self) -> Space {
        let Cabinet { size, carcass, .. } = self.cabinet;
        let side = self.thickness(&carcass.sides.board);
        let bottom = self.thickness(&carcass.bottom.board);
        let top = self.thickness(&carcass.top.board);
        let (top_words, top_taken) = fixed::top_taken(carcass.top.kind, top);

        for hand in [Hand::Left, Hand::Right] {
            self.side(hand, side, bottom, top);
        }
        let inner_depth = self.inner_depth.total();
        let [above, behind] = fixed::top(carcass.top.kind, top, size.height, inner_depth);
        let rail = self.back_rail(size.height - top_taken);
        let rules = &self.house.shop.fronts;
        let at_side = Laps::whole("side", side, rules.reveal_side);
        let space = Space {
            left: FaceId::inside(Hand::Left),
            right: FaceId::inside(Hand::Right),
            across: side,
            width: size.width - side - side,
            laps: Laps {
                left: at_side,
                right: at_side,
                foot: Laps::whole("bottom", bottom, rules.reveal_foot),
                head: Laps::whole(top_words, top_taken, rules.reveal_head),
            },
            floor: Sum::of("bottom", bottom),
            floor_thickness: bottom,
            ceiling: Sum::of("height", size.height).less(top_words, top_taken),
            ceiling_thickness: top_taken,
            panels: [
                Some(fixed::bottom(bottom, inner_depth)),
                above,
                behind,
                rail,
            ],
        };
        self.fix(&space, &space.panels);
        self.carcass_panels(&space);
        if carcass.bottom.fit == Fit::Between {
            self.join(
                &space,
                self.cabinet.opening.key,
                &carcass.bottom.joint,
                bottom.half(),
            );
        }
        if carcass.top.kind != TopKind::Panel(Fit::Across) {
            self.join(
                &space,
                self.cabinet.opening.key,
                &carcass.top.joint,
                size.height - top_taken.half(),
            );
        }
        space
    }

    fn back_rail(&mut self, ceiling: Length) -> Option<FixedPanel> {
        let rail = self.cabinet.carcass.rail.as_ref()?;
        let thickness = self.thickness(&rail.board);
        let inner_depth = self.inner_depth.total();
        Some(fixed::rail(thickness, rail.height, ceiling, inner_depth))
    }

    /// Lists the panels of the carcass between the sides, or across them.
    fn carcass_panels(&mut self, space: &Space) {
        let Cabinet { size, carcass, .. } = self.cabinet;
        let rail = carcass.rail.as_ref().map(|rail| &rail.board);
        for panel in space.panels.iter().flatten() {
            let (board, across, joint) = match panel.item {
                Item::Bottom => {
                    let bottom = &carcass.bottom;
                    (&bottom.board, bottom.fit == Fit::Across, &bottom.joint)
                }
                Item::BackRail => (
                    rail.unwrap_or(&carcass.top.board),
                    false,
                    &carcass.top.joint,
                ),
                _ => (
                    &carcass.top.board,
                    carcass.top.kind == TopKind::Panel(Fit::Across),
                    &carcass.top.joint,
                ),
            };
            let made = if across {
                PanelLayout {
                    across: Length::ZERO,
                    length: Sum::of("width", size.width),
                    ..self.panel_between(space, *panel, board, Length::ZERO)
                }
            } else {
                let housing = if panel.item == Item::BackRail {
                    Length::ZERO
                } else {
                    self.let_in(joint, &carcass.sides.board)
                };
                self.panel_between(space, *panel, board, housing)
            };
            self.layout.panels.push(made);
        }
    }

    /// How far the ends of a panel go into the uprights beside it.
    pub(super) fn let_in(&mut self, joint: &Joint, upright: &CardId) -> Length {
        if joint.runs_past {
            self.thickness(upright)
        } else {
            joint.housing
        }
    }

    #[must_use]
    pub(super) fn panel_between(
        &self,
        space: &Space,
        panel: FixedPanel,
        board: &CardId,
        housing: Length,
    ) -> PanelLayout {
        PanelLayout {
            item: panel.item,
            owner: panel.owner,
            board: board.clone(),
            across: space.across - housing,
            length: Sum::of("clear width", space.width)
                .plus("let in on the left", housing)
                .plus("let in on the right", housing),
            x: panel.x,
            z: panel.z,
        }
    }

    fn side(&mut self, hand: Hand, thickness: Length, bottom: Length, top: Length) {
        let Cabinet { size, carcass, .. } = self.cabinet;
        let foot = match carcass.bottom.fit {
            Fit::Between => Sum::default().less("side runs below", carcass.sides.below),
            Fit::Across => Sum::default().plus("bottom under the sides", bottom),
        };
        let head = Sum::of("height", size.height);
        let id = PanelId::Side(hand);
        self.layout.uprights.push(Upright {
            id,
            thickness,
            across: match hand {
                Hand::Left => Length::ZERO,
                Hand::Right => size.width - thickness,
            },
            front: Sum::default(),
            back: Sum::of("depth", size.depth),
            foot,
            head: match carcass.top.kind {
                TopKind::Panel(Fit::Across) => head.less("top over the sides", top),
                _ => head,
            },
            back_taken: carcass.back.taken(),
            notch: carcass.sides.notch,
            exposed: match hand {
                Hand::Left => carcass.sides.exposed_left,
                Hand::Right => carcass.sides.exposed_right,
            },
            holes: (1, 0),
            mismatch: Mismatch::default(),
            faces: Upright::faces_of(id),
        });
    }
}
