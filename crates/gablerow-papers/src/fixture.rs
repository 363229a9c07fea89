//! Small jobs to test with.

use gablerow_core::job::{
    Depth, Division, Edge, FaceId, FreeRow, HolePlace, Job, Joint, Key, Label, Opening, Part,
    PartWidth, Partition, SideBySide, Zone,
};
use gablerow_core::measure::Length;

use crate::Signs;

pub(crate) const SIGNS: Signs = Signs {
    hole_empty: '.',
    hole_pin: 'o',
    hole_plate: 'x',
    hole_runner: '=',
    hole_free: '*',
    hole_shared: '&',
    edge_level: '-',
    edge_back: '|',
    edge_front: '#',
    corners: ['+'; 4],
    fixed_panel: '/',
    keep_out: ':',
    diameter: 'D',
};

pub(crate) fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

fn zone(depth: Depth) -> Zone {
    Zone {
        key: Key(7),
        first: HolePlace::foot(9),
        last: HolePlace::foot(10),
        depth,
    }
}

/// A cabinet 600 x 704 x 560 with a shelf zone on holes 9-10.
pub(crate) fn job() -> Job {
    let mut job = Job::plain(Label::new("glaze store").unwrap());
    if let Division::Bay(bay) = &mut job.cabinets[0].opening.division {
        bay.zones.push(zone(Depth::Shop));
    }
    job
}

/// The same with a partition in the middle, key 9, and the zone in both bays.
pub(crate) fn two_bays(depth: Depth) -> Job {
    let mut job = job();
    let part = |key, zone_key| {
        let mut opening = Opening::empty_bay(Key(key));
        if let Division::Bay(bay) = &mut opening.division {
            bay.zones.push(Zone {
                key: Key(zone_key),
                ..zone(depth)
            });
        }
        Part {
            width: PartWidth::Equal,
            opening,
        }
    };
    let partition = Partition {
        key: Key(9),
        board: job.shop.board.clone(),
        recess: Length::ZERO,
        foot: Joint::default(),
        head: Joint::default(),
    };
    job.cabinets[0].opening.division = Division::SideBySide(
        SideBySide {
            first: part(10, 12),
            rest: vec![(partition, part(11, 13))],
        }
        .into(),
    );
    job
}

/// A row of holes 8-10 through the whole panel, at the front setback.
pub(crate) fn through_row(face: FaceId) -> FreeRow {
    FreeRow {
        key: Key(30),
        face,
        purpose: Label::new("end panel screws").unwrap(),
        edge: Edge::Front,
        setback: mm(37),
        first: HolePlace::foot(8),
        last: HolePlace::foot(10),
        diameter: mm(5),
        depth: Depth::Through,
    }
}
