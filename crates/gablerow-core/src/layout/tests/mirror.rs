//! The mirror image of a layout, made without the code that lays out.

use crate::job::{FrontKind, Hand, Names};
use crate::layout::{Layout, OpenPoint, Upright};
use crate::measure::Length;
use crate::sum::Sum;

/// The layout with everything in an order that left and right have no part in.
///
/// Widths of fronts lose their terms, which name left and right in turn. Where parts do not add up to the width, what is
/// left over is on the right in the image too, so places across say nothing.
pub(super) fn in_one_order(mut layout: Layout) -> Layout {
    let spoiled = |point: &OpenPoint| matches!(point, OpenPoint::Widths { .. });
    let spoiled = layout.open_points.iter().any(spoiled);
    for front in &mut layout.fronts {
        front.width = Sum::of("width", front.width.total());
    }
    if spoiled {
        let uprights = layout.uprights.iter_mut().map(|it| &mut it.across);
        let bays = layout.bays.iter_mut().map(|it| &mut it.across);
        let openings = layout.openings.iter_mut().map(|it| &mut it.across);
        let fronts = layout.fronts.iter_mut().map(|it| &mut it.left);
        let panels = layout.panels.iter_mut().map(|it| &mut it.across);
        uprights
            .chain(bays)
            .chain(openings)
            .chain(fronts)
            .chain(panels)
            .for_each(|across| *across = Length::ZERO);
    }
    layout
        .fronts
        .sort_by_key(|front| (front.key, front.hung, front.left));
    layout.uprights.sort_by_key(|upright| upright.id);
    layout.bays.sort_by_key(|bay| bay.key);
    layout.openings.sort_by_key(|opening| opening.key);
    layout.panels.sort_by_key(|panel| {
        (
            panel.owner,
            panel.item,
            panel.z.from,
            panel.x.from,
            panel.across,
        )
    });
    // Names are counted from the left, so they are not what they were.
    layout.names = Names::default();
    layout.open_points.sort_by_key(|point| format!("{point:?}"));
    layout
}

/// Left and right change places.
pub(super) fn mirror_of(mut layout: Layout, width: Length) -> Layout {
    for upright in &mut layout.uprights {
        let Upright { id, faces, .. } = upright;
        faces.swap(0, 1);
        faces
            .iter_mut()
            .for_each(|face| face.id = face.id.mirrored());
        *id = faces[0].id.panel;
        upright.across = width - upright.across - upright.thickness;
    }
    for opening in &mut layout.openings {
        opening.across = width - opening.across - opening.width;
    }
    for bay in &mut layout.bays {
        (bay.left, bay.right) = (bay.right.mirrored(), bay.left.mirrored());
        bay.across = width - bay.across - bay.width;
    }
    for front in &mut layout.fronts {
        front.left = width - front.right();
        front.hung = front.hung.map(Hand::other);
        if let FrontKind::Door(hand) = &mut front.kind {
            *hand = hand.other();
        }
        (front.lap_left, front.lap_right) = (front.lap_right, front.lap_left);
        (front.wall_left, front.wall_right) =
            (front.wall_right.mirrored(), front.wall_left.mirrored());
    }
    for panel in &mut layout.panels {
        panel.across = width - panel.across - panel.length.total();
    }
    in_one_order(layout)
}
