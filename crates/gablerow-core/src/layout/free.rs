//! What faces and joints own themselves.

use super::fittings::Wanted;
use super::space::Walk;
use super::{BoreSpec, RowName, SingleBore, Use};
use crate::job::{Edge, End, FaceId, Fastener, FreeHole, FreeRow, JointBore, Key};
use crate::measure::Length;
use crate::sum::Sum;

/// Puts the cabinet's free rows and free holes on their faces.
pub(super) fn lay_out(walk: &mut Walk) {
    let cabinet = walk.cabinet;
    cabinet.free_rows.iter().for_each(|row| free_row(walk, row));
    cabinet
        .free_holes
        .iter()
        .for_each(|hole| free_hole(walk, hole));
}

fn free_row(walk: &mut Walk, row: &FreeRow) {
    let Some(x) = from_edge(walk, row.face, row.edge, row.setback) else {
        return;
    };
    let spec = BoreSpec {
        use_: Use::Free,
        owner: row.key,
        bay: None,
        diameter: row.diameter,
        depth: walk.depth(row.depth),
        pen: Length::ZERO,
        pen_unproved: false,
    };
    walk.want(
        row.face,
        RowName::Free,
        x,
        Wanted {
            first: row.first,
            last: row.last,
            spec,
        },
    );
}

fn free_hole(walk: &mut Walk, hole: &FreeHole) {
    let Some(x) = from_edge(walk, hole.face, hole.edge, hole.setback) else {
        return;
    };
    let Some(upright) = walk.layout.upright(hole.face.panel) else {
        return;
    };
    let z = match hole.end {
        End::Foot => upright.foot.total() + hole.height,
        End::Head => upright.head.total() - hole.height,
    };
    let spec = BoreSpec {
        use_: Use::Free,
        owner: hole.key,
        bay: None,
        diameter: hole.diameter,
        depth: walk.depth(hole.depth),
        pen: Length::ZERO,
        pen_unproved: false,
    };
    if let Some(face) = walk.face(hole.face) {
        face.bores.push(SingleBore {
            x: x.total(),
            z,
            spec,
        });
    }
}

/// From the carcass front to what is measured from an edge of a panel.
fn from_edge(walk: &Walk, face: FaceId, edge: Edge, setback: Length) -> Option<Sum> {
    let upright = walk.layout.upright(face.panel)?;
    Some(match edge {
        Edge::Front => upright.front.plus("setback from the front edge", setback),
        Edge::Back => upright.back.less("setback from the back edge", setback),
    })
}

/// One bore of a joint, at the height of the joint.
pub(super) fn joint_bore(bore: &JointBore, owner: Key, z: Length) -> SingleBore {
    let spec = BoreSpec {
        use_: match bore.fastener {
            Fastener::Dowel => Use::Dowel,
            Fastener::Connector => Use::Connector,
        },
        owner,
        bay: None,
        diameter: bore.diameter,
        depth: bore.depth,
        pen: bore.depth.unwrap_or(Length::ZERO),
        pen_unproved: false,
    };
    SingleBore { x: bore.x, z, spec }
}
