//! The mirror image of a layout, made without the code that lays out.

use crate::job::Names;
use crate::layout::{Layout, Upright};

/// The layout with everything in an order that left and right have no part in.
pub(super) fn in_one_order(mut layout: Layout) -> Layout {
    layout.uprights.sort_by_key(|upright| upright.id);
    layout.bays.sort_by_key(|bay| bay.key);
    // Names are counted from the left, so they are not what they were.
    layout.names = Names::default();
    layout.open_points.sort_by_key(|point| format!("{point:?}"));
    layout
}

/// Left and right change places.
pub(super) fn mirror_of(mut layout: Layout) -> Layout {
    for upright in &mut layout.uprights {
        let Upright { id, faces, .. } = upright;
        faces.swap(0, 1);
        faces
            .iter_mut()
            .for_each(|face| face.id = face.id.mirrored());
        *id = faces[0].id.panel;
    }
    for bay in &mut layout.bays {
        (bay.left, bay.right) = (bay.right.mirrored(), bay.left.mirrored());
    }
    in_one_order(layout)
}
