//! What stands before each face: what the layout has there, the boxes of drawers, the doors that stand open.

use alloc::vec::Vec;

use super::Context;
use crate::cards::Hinge;
use crate::layout::{Face, FrontLayout, Item, KeepOut, Span};
use crate::measure::Length;

/// The keep-outs of a face. A box belongs to its runners, an open door to its front.
pub(super) fn of_face(cx: &Context, face: &Face) -> Vec<KeepOut> {
    let mut all = face.keep_outs.clone();
    for fit in cx.boxes.iter().filter(|fit| fit.has_room()) {
        for (_, hand) in cx
            .layout
            .bays_at(face.id)
            .filter(|(bay, _)| *bay == fit.bay)
        {
            all.push(KeepOut {
                item: Item::Box,
                owner: Some(fit.runner.key),
                x: fit.x,
                z: fit.z(),
                u: fit.before(hand),
            });
        }
    }
    let doors = cx.layout.fronts.iter();
    for door in doors.filter(|door| door.wall_hung() == Some(face.id)) {
        let Some(card) = hinge_of(cx, door) else {
            continue;
        };
        // Whatever is in the bay passes it on its way out, however far back it stands.
        let depth = cx
            .layout
            .bays_at(face.id)
            .map(|(bay, _)| bay.inner_depth.total());
        all.push(KeepOut {
            item: Item::OpenDoor,
            owner: Some(door.key),
            x: Span::new(-door.width.total(), depth.max().unwrap_or_default()),
            z: Span::new(door.foot, door.head()),
            u: Span::new(Length::ZERO, card.intrusion.value),
        });
    }
    all
}

/// The hinge a door hangs on, or else the one of the shop.
pub(super) fn hinge_of<'a>(cx: &Context<'a>, door: &FrontLayout) -> Option<&'a Hinge> {
    let carriers = cx.layout.carriers(cx.cabinet, door);
    let card = carriers.first().and_then(|carrier| {
        let plates = &cx.cabinet.opening.bay(carrier.bay)?.plates;
        Some(&plates.iter().find(|plate| plate.key == carrier.key)?.card)
    });
    cx.job.cards.hinge(card.unwrap_or(&cx.shop().hinge))
}
