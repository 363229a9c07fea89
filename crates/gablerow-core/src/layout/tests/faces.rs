//! What ends up on one face: free rows and holes, joint bores, shared places, places the grid does not have.

use proptest::prelude::*;

use super::{face, missing, rows};
use crate::arbitrary::*;
use crate::job::{
    Cabinet, Depth, Edge, End, FaceId, Fastener, Fit, FreeHole, FreeRow, Hand, HolePlace, Joint,
    JointBore, Key, Label, ShelfHeight, TopKind, Zone,
};
use crate::layout::{Layout, OpenPoint, RowName, Use};
use crate::measure::Length;

fn free_row(key: u32, face: FaceId, edge: Edge, setback: i32, holes: (i16, i16)) -> FreeRow {
    FreeRow {
        key: Key(key),
        face,
        purpose: Label::known("end panel screws"),
        edge,
        setback: mm(setback),
        first: HolePlace::foot(holes.0),
        last: HolePlace::foot(holes.1),
        diameter: mm(4),
        depth: Depth::Through,
    }
}

fn free_hole(key: u32, face: FaceId, end: End, height: i32) -> FreeHole {
    FreeHole {
        key: Key(key),
        face,
        purpose: Label::known("lock"),
        edge: Edge::Front,
        setback: mm(37),
        end,
        height: mm(height),
        diameter: mm(16),
        depth: Depth::Blind(mm(11)),
    }
}

#[test]
fn free_rows_stand_on_outside_faces_too() {
    let outside = LEFT_INSIDE.behind();
    let job = cabinet_with(|cabinet| {
        cabinet.free_rows = vec![
            free_row(20, outside, Edge::Front, 60, (3, 5)),
            free_row(21, outside, Edge::Back, 60, (3, 5)),
        ];
    });
    let layout = lay_out(&job);
    assert_eq!(rows(&layout, outside), ["free 60: 3-5", "free 500: 3-5"]);
    let hole = &face(&layout, outside).holes(&layout)[0];
    assert_eq!((hole.diameter, hole.depth), (mm(4), None));
    assert_eq!(hole.users, [(Use::Free, Key(20))]);
    assert_eq!(layout.mate(outside, layout.height(1)), None);
}

#[test]
fn free_row_in_the_front_row_is_the_front_row() {
    let job = cabinet_with(|cabinet| {
        cabinet.opening = bay(1, |bay| bay.zones = vec![zone(3, 11..=16)]);
        cabinet.free_rows = vec![free_row(20, LEFT_INSIDE, Edge::Front, 37, (16, 18))];
    });
    let layout = lay_out(&job);
    assert_eq!(
        rows(&layout, LEFT_INSIDE),
        ["front 37: 11-18", "back 503: 11-16"]
    );
    let holes = face(&layout, LEFT_INSIDE).holes(&layout);
    let shared = holes.iter().find(|hole| hole.number == Some(16)).unwrap();
    // The widest and the deepest of what was asked for; through is deepest.
    assert_eq!((shared.diameter, shared.depth), (mm(5), None));
    assert_eq!(shared.users, [(Use::Pin, Key(3)), (Use::Free, Key(20))]);
}

#[test]
fn shared_hole_is_as_deep_as_the_deepest_of_its_users() {
    let deep = |first: i32, second: i32| {
        let zones = [(3, first), (4, second)].map(|(key, depth)| Zone {
            depth: Depth::Blind(mm(depth)),
            ..zone(key, 11..=11)
        });
        let layout = lay_out(&bay_with(|bay| bay.zones = zones.into()));
        face(&layout, LEFT_INSIDE).holes(&layout)[0].depth
    };
    assert_eq!([deep(8, 10), deep(10, 8)], [Some(mm(10)); 2]);
}

#[test]
fn free_holes_are_counted_from_either_end_of_their_own_panel() {
    let partition_left = partition_face(9, Hand::Left);
    let job = cabinet_x(|job| {
        job.cabinets[0].free_holes = vec![
            free_hole(20, partition_left, End::Foot, 100),
            free_hole(21, partition_left, End::Head, 100),
        ];
    });
    let layout = lay_out(&job);
    let holes = face(&layout, partition_left).holes(&layout);
    let places: Vec<_> = holes
        .iter()
        .map(|hole| (hole.row, hole.z, hole.number))
        .collect();
    // 18.6 + 100 = 118.6;  800 - 18.6 - 100 = 681.4
    assert_eq!(
        places,
        [(None, um(118_600), None), (None, um(681_400), None)]
    );
}

#[test]
fn free_hole_at_the_height_of_a_hole_has_its_number() {
    let job = cabinet_with(|cabinet| {
        cabinet.free_holes = vec![free_hole(20, LEFT_INSIDE, End::Foot, 336)];
    });
    let layout = lay_out(&job);
    let hole = &face(&layout, LEFT_INSIDE).holes(&layout)[0];
    assert_eq!((hole.row, hole.number), (None, Some(11)));
}

#[test]
fn free_hole_on_a_hole_of_a_row_is_one_hole_with_it() {
    let job = cabinet_with(|cabinet| {
        cabinet.opening = bay(1, |bay| bay.zones = vec![zone(3, 11..=12)]);
        cabinet.free_holes = vec![free_hole(20, LEFT_INSIDE, End::Foot, 336)];
    });
    let layout = lay_out(&job);
    let holes = face(&layout, LEFT_INSIDE).holes(&layout);
    assert_eq!(holes.len(), 4);
    assert_eq!(holes[0].row, Some(RowName::Front));
    assert_eq!(holes[0].users, [(Use::Pin, Key(3)), (Use::Free, Key(20))]);
    assert_eq!((holes[0].diameter, holes[0].depth), (mm(16), Some(mm(12))));
}

#[test]
fn what_a_face_owns_on_a_panel_that_is_gone_is_left_out() {
    let job = cabinet_with(|cabinet| {
        let gone = partition_face(99, Hand::Left);
        cabinet.free_rows = vec![free_row(20, gone, Edge::Front, 37, (3, 5))];
        cabinet.free_holes = vec![free_hole(21, gone, End::Foot, 100)];
    });
    assert_eq!(lay_out(&job).uprights.len(), 2);
}

fn dowelled() -> Joint {
    let bore = |x: i32, fastener| JointBore {
        x: mm(x),
        diameter: mm(8),
        depth: Some(mm(12)),
        fastener,
    };
    Joint {
        bores: vec![bore(50, Fastener::Dowel), bore(82, Fastener::Connector)],
        ..Joint::default()
    }
}

/// Heights of the joint bores of both walls, lowest first; both walls have the same.
#[track_caller]
fn joint_heights(change: impl FnOnce(&mut Cabinet)) -> Vec<Length> {
    let layout = lay_out(&cabinet_with(change));
    let bores = |wall| {
        let bores = face(&layout, wall).bores.iter();
        bores
            .map(|bore| (bore.x, bore.z, bore.spec.use_))
            .collect::<Vec<_>>()
    };
    assert_eq!(bores(LEFT_INSIDE), bores(RIGHT_INSIDE));
    for pair in bores(LEFT_INSIDE).chunks(2) {
        let kinds: Vec<_> = pair.iter().map(|&(x, _, use_)| (x, use_)).collect();
        assert_eq!(kinds, [(mm(50), Use::Dowel), (mm(82), Use::Connector)]);
    }
    bores(LEFT_INSIDE)
        .iter()
        .step_by(2)
        .map(|&(_, z, _)| z)
        .collect()
}

#[test]
fn joint_bores_are_at_the_middle_of_the_boards_thickness() {
    let heights = joint_heights(|cabinet| {
        cabinet.carcass.bottom.joint = dowelled();
        cabinet.carcass.top.joint = dowelled();
    });
    assert_eq!(heights, [mm(9), mm(695)]);
    let shelf = joint_heights(|cabinet| {
        let mut shelf = fixed_shelf(8, ShelfHeight::Hole(HolePlace::foot(11)));
        shelf.joint = dowelled();
        cabinet.opening = stacked(1, empty(11), shelf, empty(12));
    });
    assert_eq!(shelf, [mm(336)]);
}

#[test]
fn panels_across_the_ends_of_the_sides_have_no_bores_in_their_faces() {
    let heights = joint_heights(|cabinet| {
        cabinet.carcass.bottom.joint = dowelled();
        cabinet.carcass.bottom.fit = Fit::Across;
        cabinet.carcass.top.joint = dowelled();
        cabinet.carcass.top.kind = TopKind::Panel(Fit::Across);
    });
    assert_eq!(heights, []);
}

#[test]
fn bores_in_a_panel_that_is_not_laid_out_yet_are_said() {
    let job = cabinet_x(|job| partition_of(job).foot = dowelled());
    assert_eq!(
        lay_out(&job).open_points,
        [OpenPoint::JointBores { owner: Key(9) }]
    );
}

// rule-672. Common practice.
#[test]
fn side_672_high_has_21_holes_and_hole_11_in_the_middle() {
    let job = cabinet_with(|cabinet| cabinet.size.height = mm(672));
    let layout = lay_out(&job);
    assert_eq!((layout.last, layout.height(11)), (21, mm(336)));
    assert_eq!(mm(672) - layout.height(21), mm(16));
    assert_eq!(HolePlace::middle(0).number(layout.last), 11);
    // With 9.5 it is 13 out: 672 - 2 * 9.5 = 653 = 20 * 32 + 13.
    let mut offsets = job.cabinets[0].offsets;
    (offsets.foot, offsets.head) = (um(9_500), um(9_500));
    assert_eq!(offsets.ends(mm(672)).mismatch().signed(), Some(mm(13)));
}

/// A plain cabinet of 22 holes with one zone.
fn with_zone(first: HolePlace, last: HolePlace) -> Layout {
    let mut zone = zone(3, 1..=1);
    (zone.first, zone.last) = (first, last);
    lay_out(&bay_with(|bay| bay.zones = vec![zone]))
}

#[test]
fn places_off_the_grid_are_kept_to_be_said() {
    let foot = HolePlace::foot;
    let layout = with_zone(foot(20), foot(25));
    for wall in [LEFT_INSIDE, RIGHT_INSIDE] {
        assert_eq!(rows(&layout, wall), ["front 37: 20-22", "back 503: 20-22"]);
        assert_eq!(missing(face(&layout, wall)), [(foot(25), 25)]);
    }
    let layout = with_zone(foot(24), foot(25));
    assert_eq!(rows(&layout, LEFT_INSIDE), Vec::<String>::new());
    assert_eq!(
        missing(face(&layout, LEFT_INSIDE)),
        [(foot(24), 24), (foot(25), 25)]
    );
    let layout = with_zone(HolePlace::head(23), HolePlace::head(21));
    assert_eq!(
        missing(face(&layout, LEFT_INSIDE)),
        [(HolePlace::head(23), 0)]
    );
    assert_eq!(rows(&layout, LEFT_INSIDE)[0], "front 37: 1-2");
}

#[test]
fn plate_half_off_the_grid_keeps_the_hole_it_has() {
    let layout = lay_out(&bay_with(|bay| bay.plates = vec![plate(3, Hand::Left, 22)]));
    assert_eq!(rows(&layout, LEFT_INSIDE), ["front 37: 22"]);
    assert_eq!(
        missing(face(&layout, LEFT_INSIDE)),
        [(HolePlace::foot(23), 23)]
    );
}

#[test]
fn zone_whose_ends_have_passed_each_other_runs_between_them() {
    // On 22 holes the eighth from the head is 15.
    let layout = with_zone(HolePlace::foot(17), HolePlace::head(8));
    assert_eq!(rows(&layout, LEFT_INSIDE)[0], "front 37: 15-17");
}

#[test]
fn grid_without_a_hole_bores_nothing() {
    let job = cabinet_with(|cabinet| {
        cabinet.size.height = mm(100);
        cabinet.offsets.foot = mm(150);
        cabinet.opening = bay(1, |bay| bay.zones = vec![zone(3, 1..=4)]);
    });
    let layout = lay_out(&job);
    assert_eq!(layout.last, 0);
    assert_eq!(face(&layout, LEFT_INSIDE).rows, []);
    assert_eq!(face(&layout, LEFT_INSIDE).off_grid.len(), 2);
}

proptest! {
    #[test]
    fn every_place_asked_for_is_bored_or_said(place in place(), last_place in place()) {
        let layout = with_zone(place, last_place);
        let wall = face(&layout, LEFT_INSIDE);
        let bored: Vec<i16> = wall.holes(&layout).iter().filter_map(|hole| hole.number).collect();
        for asked in [place, last_place] {
            let number = asked.number(layout.last);
            let said = wall.off_grid.iter().any(|off| off.number == number);
            prop_assert!(said != bored.contains(&number), "{asked}");
        }
    }
}
